import type { PartState } from '../../../../shared/solid/placed.ts';
import type { SolidModel } from '../../../engine/views/solid.ts';
import { SeverityMark } from '../../../kit/marks.tsx';

/** Volume, mass, box and centre of the part in the state on show. */
export function FiguresStrip({ model, state }: { readonly model: SolidModel; readonly state: PartState }) {
  const figures = model.figures[state];
  if (figures.length === 0 && model.missing === 0) return null;
  return (
    <dl className="solid-figures" aria-label={`Figures ${state}`}>
      {figures.map(({ name, value, warns }) => (
        <div key={name}>
          <dt className="lettering soft">{name}</dt>
          <dd className={warns === true ? 'figure soft' : 'figure'}>{value}</dd>
        </div>
      ))}
      {model.missing > 0 && (
        <div>
          <dt className="lettering soft">Without</dt>
          <dd className="mark caution">
            <SeverityMark severity="caution" />
            {model.missing === 1 ? '1 body that lacks something' : `${model.missing} bodies that lack something`}
          </dd>
        </div>
      )}
    </dl>
  );
}
