import type { Cut, LatheScene } from '../../../../shared/machining/picture/scene.ts';
import { readZones, type ZoneRead } from '../../../../shared/machining/picture/zones.ts';
import type { VerdictState } from '../../../../shared/machining/setup-check.ts';
import type { LengthUnit } from '../../../../shared/quantity/kind.ts';
import type { VerdictRow } from '../../../engine/machining/models.ts';
import { clearanceWords } from '../../../engine/machining/rounded-length.ts';
import { VerdictMark } from '../verdict-mark.tsx';

interface ZoneStripProps {
  readonly scene: LatheScene;
  readonly tool: number;
  readonly cut: Cut | undefined;
  readonly verdicts: readonly VerdictRow[];
  readonly unit: LengthUnit;
}

const titles: Readonly<Record<ZoneRead['kind'], string>> = {
  'over-bed': 'Over bed',
  'in-gap': 'In gap',
  'over-saddle': 'Over saddle',
  'over-cross-slide': 'Over cross slide',
};

/** How the work passes each part of the lathe with the saddle where it stands now. */
export function ZoneStrip({ scene, tool, cut, verdicts, unit }: ZoneStripProps) {
  const zones = worstOfEach(readZones(scene, tool, cut));
  return (
    <dl className="swing-zones" aria-label="With the saddle here">
      {zones.map((zone) => (
        <div key={zone.kind}>
          <dt className="lettering soft">{titles[zone.kind]}</dt>
          <dd className="figure">
            <VerdictMark state={stateOf(zone, verdicts)} /> {clearanceWords(zone.margin, unit)}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** A bed on both sides of a gap is one thing to say. */
function worstOfEach(zones: readonly ZoneRead[]): readonly ZoneRead[] {
  const worst = new Map<ZoneRead['kind'], ZoneRead>();
  for (const zone of zones) {
    const held = worst.get(zone.kind);
    if (held === undefined || zone.margin < held.margin) worst.set(zone.kind, zone);
  }
  return [...worst.values()];
}

/** Limits are known for the worst place of a verdict; elsewhere they can take no more than there. */
function stateOf({ kind, margin }: ZoneRead, verdicts: readonly VerdictRow[]): VerdictState {
  if (margin < 0) return 'hits';
  const takes = verdicts.filter((row) => row.shown.kind === kind).map((row) => row.bandMinus);
  return margin + Math.min(0, ...takes) < 0 ? 'at the limit' : 'clears';
}
