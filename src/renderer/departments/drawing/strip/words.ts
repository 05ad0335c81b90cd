import type { StripArc, StripModel, StripStation } from '../../../engine/views/strip.ts';

const nameOf = (model: StripModel, id: string): string =>
  model.stations.find((station) => station.id === id)?.name ?? '';

/** A tick in words: for the tip and for the ear. */
export function wordsOfStation(model: StripModel, station: StripStation): string {
  if (station.datum) return `${station.name}: ${station.form}, the datum of ${model.axis}`;
  const origin = model.stations.find(({ group, at }) => group === station.group && at === 0)?.name ?? '';
  const from = origin === '' || origin === station.name ? '' : ` from ${origin}`;
  const band = station.minus === 0 && station.plus === 0 ? '' : `\nmay stray by ${station.bandText} at worst`;
  const loose = station.group === 0 && model.datum !== undefined ? '' : '\nno dimension ties it to the datum';
  return `${station.name}: ${station.form}\n${station.atText}${from}${band}${loose}`;
}

const roles: Readonly<Record<StripArc['role'], string>> = {
  placing: '',
  closing: '\nclosed by other dimensions: dimensioned twice',
  conflict: '\ncannot hold together with the others of its loop',
  'no value': '\nthe drawing gives no value',
};

/** An arc in words. */
export const wordsOfArc = (model: StripModel, arc: StripArc): string =>
  `${arc.name}: ${arc.text} (${arc.source})\n${nameOf(model, arc.from)} → ${nameOf(model, arc.to)}${roles[arc.role]}`;
