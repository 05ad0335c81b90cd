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
