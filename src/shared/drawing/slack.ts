/**
 * What every dimension of a closed chain may stray beyond its limits before the chain counts as not closing: 1e-6 mm,
 * a thousandth of what any workshop measures and a thousand times what float64 loses on a chain of a hundred metres.
 * It is granted per dimension, so that a chain's verdict follows from those of its dimensions (see `constraints.ts`).
 */
export const LENGTH_SLACK_MM = 1e-6;
