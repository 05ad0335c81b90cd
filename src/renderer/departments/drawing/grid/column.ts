import type { ReactNode } from 'react';

/** A name or word offered while writing. */
export interface Offer {
  readonly text: string;
  readonly beside: string;
}

/** What stands under a cell while it is written: what it comes to, or what is amiss and where. */
export interface Under {
  readonly shown?: string | undefined;
  readonly problem?: { readonly sentence: string; readonly start: number; readonly end: number } | undefined;
}

/** One column of a table of rows `R`. */
export interface Column<R> {
  readonly id: string;
  readonly title: string;
  /** Explains the column; shown as a tip on its head. */
  readonly about?: string;
  readonly width: number;
  /** Takes its share of the room that a wide window leaves. */
  readonly grows?: boolean;
  /** Set in figures: at the right, or at the left where texts are longer than numbers. */
  readonly figure?: 'left' | 'right';
  /** The text as edited and copied. */
  readonly text: (row: R) => string;
  /** What is shown instead of the text, if that differs. */
  readonly show?: (row: R) => ReactNode;
  /** Read aloud after the text, e.g. what is amiss. */
  readonly aside?: (row: R) => string | undefined;
  readonly problem?: (row: R) => string | undefined;
  /** Undefined: it is computed and cannot be written. */
  readonly edit?: {
    /** A closed list of words, chosen from; otherwise free text. */
    readonly choices?: readonly string[];
    readonly offers?: (row: R | undefined, text: string, caret: number) => Promise<readonly Offer[]>;
    /** How an offer is put into the text; by default it replaces all. */
    readonly take?: (text: string, caret: number, offer: Offer) => { readonly text: string; readonly caret: number };
    readonly preview?: (row: R | undefined, text: string) => Promise<Under | undefined>;
  };
}
