import { Dialog } from '../kit/dialog.tsx';
import { shell } from './shell.ts';

type Group = readonly [title: string, keys: readonly (readonly [key: string, does: string])[]];

const groups: readonly Group[] = [
  [
    'Everywhere',
    [
      ['F6 / Shift+F6', 'next / previous pane'],
      ['Mod+F', 'find a part, station or dimension'],
      ['Mod+Z', 'undo the last edit'],
      ['Mod+Y', 'redo'],
      ['Mod+,', 'build settings'],
      ['F1', 'these keys'],
      ['Esc', 'close, cancel'],
    ],
  ],
  [
    'Builds and departments',
    [
      ['Mod+N / Mod+O', 'new build / open a build'],
      ['Mod+S', 'make a drawing issue (edits save themselves)'],
      ['Mod+Shift+S', 'save a copy'],
      ['Mod+W', 'close the window'],
      ['Mod+1 / Mod+2', 'Works / Drawing Office'],
      ['Mod+5', 'Machine Shop'],
      ['Mod+Shift+P / T / D', 'new part / station / dimension'],
    ],
  ],
  [
    'List of parts',
    [
      ['↑ ↓ Home End', 'choose a part; letters jump to a name'],
      ['F2', 'rename'],
      ['Insert', 'add a part'],
      ['Delete', 'remove the part (undo brings it back)'],
      ['Alt+↑ / Alt+↓', 'move the part in the list'],
    ],
  ],
  [
    'Tables of dimensions and stations',
    [
      ['↑ ↓ ← →', 'move from cell to cell'],
      ['typing', 'writes the cell anew'],
      ['F2 or Enter', 'edits what is there'],
      ['Enter / Tab', 'done: down / right'],
      ['Esc', 'leaves the cell as it was'],
      ['Delete', 'clears the cell'],
      ['Shift+arrows', 'selects a block'],
      ['Mod+C / Mod+V', 'block to and from a spreadsheet'],
      ['Insert', 'adds a row'],
      ['Mod+Delete', 'removes the row'],
    ],
  ],
  [
    'Chain strip',
    [
      ['← →', 'next station'],
      ['↑ ↓', 'dimensions at this station'],
      ['Enter', 'goes to its row'],
      ['+ − 0', 'closer, farther, fit'],
    ],
  ],
  [
    'List and form of bodies',
    [
      ['↑ ↓', 'choose a body'],
      ['Enter', 'changes it; in the form: draws it'],
      ['Insert', 'draws a block'],
      ['Alt+↑ / Alt+↓', 'acts earlier / later'],
      ['Delete', 'removes it; stations and sizes stay'],
    ],
  ],
  [
    'Sheet',
    [
      ['← →', 'next dimension, station or body'],
      ['Shift+arrows', 'moves the paper'],
      ['+ − 0 P', 'closer, farther, fit, whole paper'],
    ],
  ],
  [
    'Solid',
    [
      ['arrows', 'turn it'],
      ['Shift+arrows', 'move it'],
      ['F B L R T U S', 'front, back, left, right, top, underneath, slantwise'],
      ['PgUp / PgDn', 'previous / next body'],
      ['+ − 0', 'closer, farther, fit'],
    ],
  ],
  [
    'Set-ups, machines, operations',
    [
      ['↑ ↓', 'choose one; letters jump to a name'],
      ['Insert', 'adds a set-up, a machine'],
      ['Alt+↑ / Alt+↓', 'moves the set-up or operation in its list'],
      ['Delete', 'removes it (undo brings it back)'],
    ],
  ],
  [
    'Swing view',
    [
      ['← →', 'moves the saddle along the cut'],
      ['PgUp / PgDn', 'moves it farther'],
      ['Home / End', 'to the ends of the cut'],
    ],
  ],
  [
    'Dependency map',
    [
      ['↑ ↓ ← →', 'next part that way; in an opened part, row by row'],
      ['Space', 'opens or closes the part in place'],
      ['Enter', 'goes to the Drawing Office'],
      ['T', 'what does this touch'],
      ['H', 'what does this hang on'],
      ['Esc', 'light everything again'],
      ['+ − 0', 'closer, farther, fit'],
    ],
  ],
];

const named = (key: string): string => key.replaceAll('Mod', shell.platform === 'darwin' ? 'Cmd' : 'Ctrl');

export function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  return (
    <Dialog title="Keys" wide onClose={onClose}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be scrolled by keys */}
      <div className="keys" role="group" aria-label="Keys by place" tabIndex={0}>
        {groups.map(([title, keys]) => (
          <section key={title}>
            <h3 className="lettering">{title}</h3>
            <dl>
              {keys.map(([key, does]) => (
                <div key={key}>
                  <dt>
                    <kbd>{named(key)}</kbd>
                  </dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
    </Dialog>
  );
}
