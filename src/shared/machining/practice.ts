/**
 * Rules of thumb that set-ups are judged by. All of them: common practice, no source. What a machine or its makers say holds
 * before them.
 */

/** Length that stands free of the jaws, in lengths of the grip, without anything at its far end. */
export const FREE_PER_GRIP = 3;
/** The same with a centre in the far end. */
export const FREE_PER_GRIP_CENTRED = 10;

/** An arbor stands so far past the driven face of its work, in its own diameters, for the dog (or the jaws) to hold it. */
export const ARBOR_PAST_DRIVEN_FACE = 1;
/** And so far past the other face, for the centre hole and for the tool to run out. */
export const ARBOR_PAST_FREE_FACE = 0.25;

/** The out-of-balance force may come to this share of the weight of all that turns before a light lathe begins to walk. */
export const LARGEST_FORCE_SHARE = 0.25;

/** Where a counterweight is bolted on, as a share of the face plate's radius: its outer slots. */
export const COUNTERWEIGHT_PLACE = 0.75;

/** Standard gravity, m/s² (3rd General Conference on Weights and Measures, 1901). */
export const GRAVITY = 9.806_65;

/** What a surface on the face plate is looked at over, mm from its seat. */
export const SEAT_DEPTH_MM = 1;
