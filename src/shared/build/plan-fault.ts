/** One way in which a plan does not fit the build that it stands in. */
export interface PlanFault {
  readonly code:
    | 'part-missing'
    | 'machine-missing'
    | 'station-missing'
    | 'dimension-missing'
    | 'body-missing'
    | 'setup-missing'
    | 'operation-missing'
    | 'pattern-missing'
    | 'pour-missing'
    | 'of-other-part'
    | 'not-poured'
    | 'named-twice'
    | 'station-of-other-axis'
    | 'size-does-not-fit'
    | 'turn-mirrors'
    | 'part-not-held'
    | 'after-itself';
  /** Field within the record, parts joined by `/`. */
  readonly field: string;
  /** What is wrong, a clause without a full stop. */
  readonly what: string;
  /** What to do, one sentence. */
  readonly remedy: string;
}
