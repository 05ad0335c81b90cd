import { setImmediate as pause, setTimeout as sleep } from 'node:timers/promises';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { CommitError, OpenError, OpenedBuild, Request, Response, Saved } from '../../shared/ipc/contract.ts';
import { warnOfBackup } from '../app/back-up.ts';
import type { BuildWindow, OpenBuild } from '../app/build-window.ts';
import type { Opening } from '../app/opening.ts';
import { recoverBeside } from '../app/recovering.ts';
import type { Windows } from '../app/windows.ts';
import { identityOf } from '../files/file-identity.ts';
import type { KeptViews } from '../files/kept-views.ts';
import type { Places } from '../files/places.ts';
import type { Store } from '../store/store.ts';

/** The build of a window that waits for none. Edits without a build are refused like edits of a read-only one. */
const noBuild: CommitError = { code: 'read-only' };

/** However long a page that paints what was kept may take to ask. */
const VERIFIED_AFTER_MS = 2_000;

/** Noticed before writing: what is written to a file whose name is gone is written for nobody. */
async function whyNotWritable({ path: file, store, identity }: OpenBuild): Promise<CommitError | undefined> {
  if (store.readOnly !== undefined || identity === undefined || (await identityOf(file)) === identity) return undefined;
  const detail =
    'the file was moved, deleted or replaced outside Waywright. Put it back in its place, or close this window and open the build anew';
  return { code: 'unwritable', detail };
}

/** Answers what the window asks about its build, its issues and its recovery. */
export function buildHandlers(windows: Windows, opening: Opening, places: Places, kept: KeptViews) {
  /** What was found when the rows of a build were looked through; a page that is loaded again hears it again. */
  const verdicts = new WeakMap<Store, Promise<Result<undefined, OpenError>>>();

  /** To be called when a page asks for what is being found out. */
  const asked = new WeakMap<Store, () => void>();
  const whenAsked = (store: Store): Promise<void> => new Promise((go) => asked.set(store, go));
  /** Key of the records that a page was last given to work their views out. */
  const wanted = new WeakMap<BuildWindow, string>();

  /** Opened, but some row is not what a build holds: lets go of it, so that it can be recovered. */
  const letGo = async (window: BuildWindow, store: Store, error: OpenError): Promise<void> => {
    if (window.build?.store !== store) return;
    window.build = undefined;
    window.broken = error;
    windows.refresh(window);
    await store.close();
  };
  /**
   * Looks through what was read, after the page has it: it works out the build meanwhile.
   * @param start what to wait for
   */
  const verifyLater = async (window: BuildWindow, store: Store, read: OpenedBuild, start: Promise<unknown>) => {
    await start;
    const verdict = await store.verify(read);
    if (!verdict.ok) await letGo(window, store, verdict.error);
    else {
      store.backUpSoon();
      warnOfBackup(window, places.backups).catch((error: unknown) => console.error(error));
    }
    return verdict;
  };

  /** Counts an edit on its way to the disk, so that title, quitting and closing know of it. */
  const saving = async <T extends Saved>(
    sender: number,
    write: (store: Store) => Promise<Result<T, CommitError>>,
  ): Promise<Result<T, CommitError>> => {
    const window = windows.ofSender(sender);
    const { build } = window;
    if (build === undefined) return err(noBuild);
    window.pending++;
    windows.refresh(window);
    try {
      const obstacle = await whyNotWritable(build);
      const result = obstacle === undefined ? await write(build.store) : err(obstacle);
      if (result.ok) {
        window.failed = undefined;
        window.edited = true;
      }
      return result;
    } finally {
      window.pending--;
      windows.refresh(window);
    }
  };

  return {
    async load(_: undefined, sender: number): Promise<Response<'build:load'>> {
      const window = windows.ofSender(sender);
      await window.busy;
      window.told = true;
      window.failed = undefined;
      if (window.broken !== undefined) return err(window.broken);
      if (window.build === undefined) return ok(undefined);
      const { store } = window.build;
      asked.get(store)?.();
      const verdict = await verdicts.get(store);
      if (verdict?.ok === false) return verdict;
      const read = await store.read();
      if (!read.ok && read.error.code === 'damaged') await letGo(window, store, read.error);
      if (!read.ok) return read;
      const keptViews = kept.find(kept.keyOf(read.value.records));
      if (!verdicts.has(store)) {
        // A page that has something to paint is let paint it first.
        const start =
          keptViews === undefined
            ? pause()
            : Promise.race([whenAsked(store), sleep(VERIFIED_AFTER_MS, undefined, { ref: false })]);
        verdicts.set(store, verifyLater(window, store, read.value, start));
      }
      return ok({ ...read.value, keptViews });
    },
    async verify(_: undefined, sender: number): Promise<Response<'build:verify'>> {
      const window = windows.ofSender(sender);
      if (window.broken !== undefined) return err(window.broken);
      if (window.build !== undefined) asked.get(window.build.store)?.();
      return (window.build && (await verdicts.get(window.build.store))) ?? ok(undefined);
    },
    async viewsWanted(_: undefined, sender: number): Promise<Response<'views:wanted'>> {
      const window = windows.ofSender(sender);
      const store = window.build?.store;
      // Only of what is known to be sound.
      if (store === undefined || (await verdicts.get(store))?.ok !== true) return undefined;
      const read = await store.read();
      if (!read.ok) return undefined;
      const { records } = read.value;
      const key = kept.keyOf(records);
      if (kept.has(key)) return undefined;
      wanted.set(window, key);
      return { records };
    },
    async keepViews({ views }: Request<'views:keep'>, sender: number): Promise<Response<'views:keep'>> {
      const window = windows.ofSender(sender);
      const key = wanted.get(window);
      wanted.delete(window);
      if (key !== undefined) kept.keep(key, views);
    },
    async commit(
      { revision, label, diff }: Request<'build:commit'>,
      sender: number,
    ): Promise<Response<'build:commit'>> {
      const result = await saving(sender, (store) => store.commit(revision, label, diff));
      // A step that failed leaves nothing to lose; an edit that failed is now only in the window.
      if (!result.ok && (result.error.code === 'disk-full' || result.error.code === 'unwritable')) {
        const window = windows.ofSender(sender);
        window.failed = result.error;
        windows.refresh(window);
      }
      return result;
    },
    step({ revision, direction }: Request<'build:step'>, sender: number): Promise<Response<'build:step'>> {
      return saving(sender, (store) => store.step(direction, revision));
    },
    async issues(_: undefined, sender: number): Promise<Response<'issue:list'>> {
      return (await windows.ofSender(sender).build?.store.issues()) ?? [];
    },
    async makeIssue(words: Request<'issue:make'>, sender: number): Promise<Response<'issue:make'>> {
      const { build } = windows.ofSender(sender);
      if (build === undefined) return err(noBuild);
      const obstacle = await whyNotWritable(build);
      return obstacle === undefined ? build.store.makeIssue(words) : err(obstacle);
    },
    async recover(_: undefined, sender: number): Promise<Response<'files:recover'>> {
      const window = windows.ofSender(sender);
      const broken = window.broken;
      if (broken === undefined) return err(noBuild);
      const recovered = await recoverBeside(broken.path, places);
      if (!recovered.ok) return recovered;
      window.broken = undefined;
      const opened = await opening.openInto(window, recovered.value.path);
      return opened.ok ? ok({ path: recovered.value.path, lost: recovered.value.lost.length }) : opened;
    },
  };
}
