/** Stages of opening a build, in their order. */
export type Stage =
  /** The page's script runs. */
  | 'script'
  /** The shell has handed over the build. */
  | 'read'
  /** The engine has worked it out, and what it shows has come. */
  | 'worked out'
  /** A frame with the findings is on the screen. */
  | 'findings'
  /** A frame with the table of the first part is on the screen. */
  | 'table';

/** Marks a stage on the page's own clock, the first time that it is reached: `npm run bench -- opening` reads them there. */
export function markStage(stage: Stage): void {
  if (performance.getEntriesByName(stage, 'mark').length === 0) performance.mark(stage);
}

/** A window that is not seen paints no frame. */
const LONGEST_FRAME_MS = 250;

/** Resolves when the frame is painted that shows what was just put into the page, or there is none for long. */
export const painted = (): Promise<void> =>
  new Promise((go) => {
    setTimeout(go, LONGEST_FRAME_MS);
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => go();
      port2.postMessage(undefined);
    });
  });

/** Marks a stage when the frame is painted that shows what React has just put into the page. */
export function markPainted(stage: Stage): void {
  if (performance.getEntriesByName(stage, 'mark').length > 0) return;
  requestAnimationFrame(() => {
    // Frames are painted between the callbacks for them and the next message.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => markStage(stage);
    port2.postMessage(undefined);
  });
}
