import type { BodyPreview } from '../../../engine/asks/body-preview.ts';
import { CautionIcon, StopIcon } from '../../../kit/icons.tsx';

interface PreviewListProps {
  readonly preview: BodyPreview | undefined;
  /** Why the last try was refused. */
  readonly refused: string | undefined;
  readonly isNew: boolean;
}

/** What the form would make, before it is accepted. */
export function PreviewList({ preview, refused, isNew }: PreviewListProps) {
  const refusal = refused ?? preview?.refusal;
  return (
    <section className="body-preview" aria-label="What will be made" aria-live="polite">
      <h3 className="lettering soft">{isNew ? 'Will be made' : 'Will be'}</h3>
      {refusal !== undefined && (
        <p className="mark stop body-words">
          <StopIcon />
          <span>{refusal}</span>
        </p>
      )}
      {preview !== undefined && preview.refusal === undefined && (
        <>
          <p className="figure">{preview.extent ?? 'no solid yet'}</p>
          {preview.problem !== undefined && (
            <p className="mark caution body-words">
              <CautionIcon />
              <span>{preview.problem}</span>
            </p>
          )}
          <ul className="body-made-list">
            {preview.made.map((line) => (
              <li key={`${line.kind} ${line.name}`} className={line.unreadable === true ? 'unreadable' : undefined}>
                <span className="soft">{line.kind}</span> <span>{line.name}</span>{' '}
                <span className={line.unreadable === true ? 'mark stop body-words' : 'figure soft'}>{line.words}</span>
              </li>
            ))}
            {preview.made.length === 0 && <li className="soft">no new stations or dimensions</li>}
          </ul>
        </>
      )}
    </section>
  );
}
