import type { DimensionId } from '../../../../shared/base/ids.ts';
import { notifyOutcome } from '../../../app/notices.ts';
import { useEngine } from '../../../engine/use-engine.ts';
import { Button } from '../../../kit/button.tsx';

/** An assumed dimension keeps gates shut until someone says where its value really comes from. */
export function ConfirmAssumed({ dimension }: { readonly dimension: DimensionId }) {
  const engine = useEngine();
  const confirm = (source: 'drawn' | 'measured') =>
    void engine.run('dimension-set', { changes: [{ dimension, set: { source } }] }).then(notifyOutcome);
  return (
    <div className="trace-confirm">
      <span className="soft">Sketched in, not confirmed.</span>
      <Button onClick={() => confirm('drawn')}>It Is as Drawn</Button>
      <Button onClick={() => confirm('measured')}>I Measured It</Button>
    </div>
  );
}
