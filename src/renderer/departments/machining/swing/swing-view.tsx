import './swing.css';
import { useMemo, useRef, useState } from 'react';
import { drawSetup } from '../../../../shared/machining/picture/draw-setup.ts';
import type { PictureSide, PictureView, SetupPicture } from '../../../../shared/machining/picture/picture.ts';
import type { Cut, SeenWork, SetupScene } from '../../../../shared/machining/picture/scene.ts';
import { toolRange } from '../../../../shared/machining/picture/zones.ts';
import type { SetupModel, VerdictRow } from '../../../engine/machining/models.ts';
import { roundedLength } from '../../../engine/machining/rounded-length.ts';
import { useSize } from '../../../kit/use-size.ts';
import { type Board, layOut, stack } from './board.ts';
import { SetupDrawing } from './setup-drawing.tsx';
import { ZoneStrip } from './zone-strip.tsx';

export type SwingLook = 'end' | 'above';

interface SwingViewProps {
  readonly model: SetupModel;
  readonly scene: SetupScene;
  /** The verdict that is measured. */
  readonly verdict: VerdictRow | undefined;
  readonly second: SwingLook;
  readonly work: Readonly<Partial<Record<PictureSide, SeenWork>>>;
}

const STEPS = 200;

/** Room about the drawing, px. */
const EDGE = 12;

/** A set-up drawn to scale, with the saddle where the reader puts it. */
export function SwingView({ model, scene, verdict, second, work }: SwingViewProps) {
  const sheet = useRef<HTMLDivElement>(null);
  const size = useSize(sheet);
  const [chosen, setChosen] = useState<number>();
  const ofVerdict = verdict?.operation?.id;
  const [picked, setPicked] = useState<string>();
  const cut = cutOf(scene, picked ?? ofVerdict);
  const range = rangeOf(scene, cut);
  const tool = clamp(chosen ?? startOf(scene, cut, verdict), range);
  const picture = useMemo(() => drawSetup(scene, { tool, cut, shown: verdict?.shown }), [scene, tool, cut, verdict]);
  const views = useMemo(() => viewsOf(picture, second), [picture, second]);
  const boards = useMemo(() => {
    const [front, other, third] = views;
    if (front === undefined || other === undefined || size.width === 0) return undefined;
    const [width, height] = [size.width - 2 * EDGE, size.height - 2 * EDGE];
    if (other.side === 'above') return stack(front.box, other.box, width, height);
    return layOut(front.box, other.box, third?.box, width, height);
  }, [views, size]);
  const move = (px: number, board: Board) => setChosen(clamp(board.along(px - EDGE), range));
  const place = placeWords(model, tool);
  const canMove = range[1] > range[0];
  return (
    <div className="swing-frame">
      <div className="swing-board" ref={sheet}>
        {boards !== undefined && (
          <svg
            className="swing-svg"
            width={size.width}
            height={size.height}
            role="img"
            aria-label={pictureWords(model, verdict)}
            onPointerDown={(event) => {
              if (!canMove || event.button !== 0) return;
              event.currentTarget.setPointerCapture(event.pointerId);
              move(event.nativeEvent.offsetX, boards[0]);
            }}
            onPointerMove={(event) => {
              if (event.currentTarget.hasPointerCapture(event.pointerId)) move(event.nativeEvent.offsetX, boards[0]);
            }}
          >
            <g transform={`translate(${EDGE} ${EDGE})`}>
              {views.map((view, i) => {
                const board = boards[i];
                return (
                  board !== undefined && (
                    <SetupDrawing key={view.side} view={view} board={board} work={work[view.side]} unit={model.unit} />
                  )
                );
              })}
            </g>
          </svg>
        )}
      </div>
      <div className="swing-scrub">
        {scene.cuts.length > 1 && (
          <select
            className="input swing-cut"
            aria-label="Cut"
            value={cut?.operation ?? ''}
            onChange={(event) => {
              setPicked(event.target.value);
              setChosen(undefined);
            }}
          >
            {scene.cuts.map(({ operation, name }) => (
              <option key={operation ?? name} value={operation ?? ''}>
                {name}
              </option>
            ))}
          </select>
        )}
        <label className="swing-slider">
          <span className="lettering soft">{scene.is === 'lathe' ? 'Edge of the tool' : 'Tool'}</span>
          <input
            type="range"
            data-pane-entry={canMove ? '' : undefined}
            min={range[0]}
            max={range[1]}
            step={(range[1] - range[0]) / STEPS || 1}
            value={tool}
            disabled={!canMove}
            aria-valuetext={place}
            onChange={(event) => setChosen(Number(event.target.value))}
          />
        </label>
        <output className="figure swing-place">{place}</output>
      </div>
      {scene.is === 'lathe' && (
        <ZoneStrip scene={scene} tool={tool} cut={cut} verdicts={model.verdicts} unit={model.unit} />
      )}
    </div>
  );
}

/** The front first, beside it what is asked for, then what else there is. */
function viewsOf({ views }: SetupPicture, second: SwingLook): readonly PictureView[] {
  const rank = (side: PictureSide) => (side === 'front' ? 0 : side === second ? 1 : 2);
  return [...views].sort((a, b) => rank(a.side) - rank(b.side));
}

const clamp = (at: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, at));

const cutOf = ({ cuts }: SetupScene, operation: string | undefined): Cut | undefined =>
  cuts.find((cut) => cut.operation !== undefined && cut.operation === operation) ?? cuts[0];

function rangeOf(scene: SetupScene, cut: Cut | undefined): readonly [number, number] {
  if (cut !== undefined) return [Math.min(cut.from, cut.to), Math.max(cut.from, cut.to)];
  return scene.is === 'lathe' ? toolRange(scene) : scene.size.along;
}

/** Where the saddle stands at first: for a verdict of its own place as near to that as the cut lets it come. */
function startOf(scene: SetupScene, cut: Cut | undefined, verdict: VerdictRow | undefined): number {
  const [low, high] = rangeOf(scene, cut);
  return verdict?.shown.at ?? (low + high) / 2;
}

/** `41 mm along X`: measured as the drawing measures, from the part's datum. */
function placeWords({ from, record, unit }: SetupModel, tool: number): string {
  return `${roundedLength(from.at + from.sign * tool, unit)} along ${record.line.axis}`;
}

function pictureWords({ record, part }: SetupModel, verdict: VerdictRow | undefined): string {
  const of = `${record.name}: ${part} in the machine, drawn to scale.`;
  if (verdict === undefined) return of;
  return `${of} ${verdict.title}: ${verdict.state}${verdict.margin === undefined ? '' : `, ${verdict.margin}`}.`;
}
