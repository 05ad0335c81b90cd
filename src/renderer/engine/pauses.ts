/** What is left to do after a piece of work: more of what someone waits for, only what no one looks at, or nothing. */
export type Left = 'more' | 'unseen' | 'nothing';

export interface Pauses {
  /** There is work that can wait. */
  wake(): void;
  /** A message came: what no one looks at waits anew. */
  disturb(): void;
}

/** Runs something after so long at the earliest, and after the messages that wait. @returns what calls it off. */
export type Later = (run: () => void, afterMs: number) => () => void;

/** Work that no one looks at begins only when the window has been quiet for so long: a piece of it may take a while. */
const QUIET_MS = 300;

/** Does work in the pauses between messages, a piece at a time. @param piece does one, asked for unseen ones when it is quiet. */
export function createPauses(later: Later, piece: (isQuiet: boolean) => Left): Pauses {
  let callOff: (() => void) | undefined;
  let isUnseen = false;
  const plan = (unseen: boolean) => {
    callOff?.();
    isUnseen = unseen;
    callOff = later(
      () => {
        callOff = undefined;
        const left = piece(unseen);
        // The piece itself may have woken us.
        if (left !== 'nothing' && callOff === undefined) plan(left === 'unseen');
      },
      unseen ? QUIET_MS : 0,
    );
  };
  return {
    wake: () => {
      if (callOff === undefined || isUnseen) plan(false);
    },
    disturb: () => {
      if (callOff !== undefined && isUnseen) plan(true);
    },
  };
}
