import { useEffect, useState } from 'react';
import { unreachable } from '../../shared/base/assert.ts';
import type { OpenError, RecentFile } from '../../shared/ipc/contract.ts';
import { Banner } from '../kit/banner.tsx';
import { Button } from '../kit/button.tsx';
import { notify } from './notices.ts';
import { shell } from './shell.ts';

const nameOf = (path: string): string => path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);

/** The window without a build: how to begin. */
export function NoBuild() {
  const [recent, setRecent] = useState<readonly RecentFile[]>([]);
  useEffect(() => {
    void shell.invoke('files:recent', undefined).then(setRecent);
  }, []);
  return (
    <main className="start" data-pane tabIndex={-1} aria-label="Start">
      <div className="start-sheet">
        <header>
          <h1>Waywright</h1>
          <p className="lettering soft">Plan, check and build whole machines from your own castings</p>
        </header>
        <section className="start-block">
          <h2 className="lettering">Begin</h2>
          <p className="soft">
            A build is one machine: its parts, their stations and dimensions, in one file. It is on disk from the first
            moment, and every edit is saved as you make it.
          </p>
          <div className="start-actions">
            <Button look="main" onClick={() => void shell.invoke('files:new', undefined)}>
              New Build…
            </Button>
            <Button onClick={() => void shell.invoke('files:open', { recent: undefined })}>Open…</Button>
          </div>
        </section>
        <section className="start-block">
          <h2 className="lettering">Learn on the bench filing machine</h2>
          <p className="soft">
            The same machine twice: as it was first drawn, with every kind of fault a drawing can have, and as
            corrected.
          </p>
          <div className="start-actions">
            <Button onClick={() => void shell.invoke('files:open-example', { state: 'as-first-drawn' })}>
              As First Drawn
            </Button>
            <Button onClick={() => void shell.invoke('files:open-example', { state: 'as-corrected' })}>
              As Corrected
            </Button>
          </div>
        </section>
        {recent.length > 0 && (
          <section className="start-block start-recent">
            <h2 className="lettering">Recent</h2>
            <ul>
              {recent.map(({ path, missing }) => (
                <li key={path}>
                  <button
                    type="button"
                    className="start-file"
                    disabled={missing}
                    onClick={() => void shell.invoke('files:open', { recent: path })}
                  >
                    <span>{nameOf(path)}</span>
                    <span className="soft ellipsis">{missing ? 'not found any more' : path}</span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
    </main>
  );
}

function openErrorWords(error: OpenError): string {
  switch (error.code) {
    case 'not-found':
      return `There is no file ${error.path} any more. Open it from where it is now.`;
    case 'not-a-build':
      return `${error.path} is not a build file. Choose a file that ends in .wayw, or import its contents into a new build.`;
    case 'newer-version':
      return `${error.path} was made by a newer version of the program (format ${error.version}; this one reads up to ${error.newest}). It was not touched. Bring the program up to date to open it.`;
    case 'damaged':
      return `${error.path} is damaged: ${error.detail}. What can be read can be recovered into a new file; the damaged one stays as it is.`;
    case 'unreadable':
      return `${error.path} cannot be read: ${error.detail}. See to the folder's permissions or the drive, then open it again.`;
    default:
      return unreachable(error);
  }
}

/** The build of this window could not be opened: what is the matter, and the ways on. */
export function OpenFailed({ error }: { readonly error: OpenError }) {
  const recover = async () => {
    const answer = await shell.invoke('files:recover', undefined);
    if (answer.ok)
      notify({
        sentence: `Recovered into ${answer.value.path}. ${answer.value.lost} records could not be read.`,
        isRefusal: false,
      });
    else
      notify({ sentence: 'It could not be recovered: the new file could not be written beside it.', isRefusal: true });
  };
  return (
    <div className="failed">
      <Banner
        severity="stop"
        actions={error.code === 'damaged' && <Button onClick={() => void recover()}>Recover into a New File</Button>}
      >
        {openErrorWords(error)}
      </Banner>
      <NoBuild />
    </div>
  );
}
