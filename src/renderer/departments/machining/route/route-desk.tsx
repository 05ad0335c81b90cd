import { Pane } from '../../../kit/pane.tsx';

export function RouteDesk() {
  return <Pane title="Route">{null}</Pane>;
}
