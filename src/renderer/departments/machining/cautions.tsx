import { useState } from 'react';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { CautionIcon } from '../../kit/icons.tsx';

const cautions: readonly string[] = [
  'Turn the work round by hand, through the whole way of the saddle, before the power goes on.',
  'Take the key out of the chuck before your hand leaves it.',
  'Guards on, sleeves rolled, rings and gloves off, hair tied back.',
  'Eyes covered: for cast iron, brass and every cut that comes off in pieces.',
  'Work that is out of balance starts slowly, with a counterweight, and never faster than its speed limit here.',
  'Every clamp, bolt and weight on a face plate is held by more than friction, and looked at again after the first cut.',
  'Measure, reach in and clear chips only when all stands still.',
];

/** The usual cautions for work that goes round, always in sight, never in the way. */
export function Cautions() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <p className="machining-caution">
        <CautionIcon />
        <span className="ellipsis">Turn it round by hand first. Key out, guards on, eyes covered.</span>
        <Button look="quiet" onClick={() => setOpen(true)}>
          Cautions…
        </Button>
      </p>
      {open && (
        <Dialog
          title="Before it turns"
          onClose={() => setOpen(false)}
          actions={
            <Button look="main" onClick={() => setOpen(false)}>
              Close
            </Button>
          }
        >
          <ul className="caution-list">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
          <p className="soft">
            A verdict of this program is arithmetic on what was drawn and written. The machine’s own manual, its maker’s
            limits and the rules of the place you work in come first.
          </p>
        </Dialog>
      )}
    </>
  );
}
