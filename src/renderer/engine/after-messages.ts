/**
 * Puts work off until the messages that wait are handled: a timer of nothing would wait longer than it is told to. One piece
 * of work waits at a time; a new one takes the place of the one before.
 *
 * @returns what puts work off, and gives back what calls it off again.
 */
export function afterMessages(): (run: () => void) => () => void {
  const turns = new MessageChannel();
  let waiting: (() => void) | undefined;
  turns.port1.onmessage = () => {
    const run = waiting;
    waiting = undefined;
    run?.();
  };
  return (run) => {
    waiting = run;
    turns.port2.postMessage(undefined);
    return () => {
      waiting = undefined;
    };
  };
}
