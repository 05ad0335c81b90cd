declare const brand: unique symbol;

/**
 * A record's identity: `<kind>:<ten base-32 characters>`, for example `part:k3m9x2p7qa`.
 * It is given once, never reused, and survives export, import and renaming.
 */
export type Id<K extends string> = `${K}:${string}` & { readonly [brand]: K };

export type PartId = Id<'part'>;
export type StationId = Id<'station'>;
export type DimensionId = Id<'dimension'>;
export type AcceptanceId = Id<'acceptance'>;
export type BodyId = Id<'body'>;
/** A mesh brought in from outside. */
export type SolidId = Id<'solid'>;
export type MaterialId = Id<'material'>;
/** A machine of the shop; the same id in the user's own shop and in every build that has it. */
export type MachineId = Id<'machine'>;
export type SetupId = Id<'setup'>;
export type OperationId = Id<'operation'>;
export type AlloyId = Id<'alloy'>;
export type CastingId = Id<'casting'>;
/** A pattern that was made, or is in the making. */
export type PatternId = Id<'pattern'>;
export type PourId = Id<'pour'>;
/** There is exactly one record of build settings in a build. */
export type SettingsId = Id<'settings'>;

/** Draws ids from a source of randomness handed in by the caller (the engine itself has none). */
export type IdSource = <K extends string>(kind: K) => Id<K>;

// Without i, l, o, u: ids are read aloud and typed in a workshop.
const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';
const LENGTH = 10;

/**
 * @param random32 returns uniformly distributed unsigned 32-bit integers.
 * @returns a source whose ids carry 50 random bits: among 100 000 records a clash is less likely than 1 in 200 000.
 */
export function idSource(random32: () => number): IdSource {
  return <K extends string>(kind: K) => {
    let text = '';
    for (let i = 0; i < LENGTH; i++) text += ALPHABET[random32() & 31];
    return `${kind}:${text}` as Id<K>;
  };
}
