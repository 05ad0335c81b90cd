import type { PartId } from '../../shared/base/ids.ts';
import { useEngine, useView } from '../engine/use-engine.ts';
import { Button } from '../kit/button.tsx';
import { giveFigures } from './lines.ts';

/** The way from a part whose material lacks a value to where it is written. */
export function GiveFigures({ part }: { readonly part: PartId }) {
  const engine = useEngine();
  const lines = useView('materials', null);
  const material = useView('summary', null)?.parts.find(({ id }) => id === part)?.material;
  if (lines === undefined || material === undefined) return null;
  return <Button onClick={() => void giveFigures(engine, lines, material)}>Give Its Figures…</Button>;
}
