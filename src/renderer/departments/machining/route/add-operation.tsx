import { type Process, processes } from '../../../../shared/build/operation.ts';
import { Button } from '../../../kit/button.tsx';

/** One button for each process, in the order in which a casting usually meets them. */
export function AddOperation({ onAdd }: { readonly onAdd: (process: Process) => void }) {
  return (
    <fieldset className="route-add">
      <legend className="unseen">Add an operation</legend>
      {processes.map((process) => (
        <Button key={process} look="quiet" onClick={() => onAdd(process)}>
          {process}
        </Button>
      ))}
    </fieldset>
  );
}
