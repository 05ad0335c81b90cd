import { useEffect, useId, useState } from 'react';
import type { Found } from '../engine/asks/find.ts';
import { useEngine } from '../engine/use-engine.ts';
import { Dialog } from '../kit/dialog.tsx';
import { goTo } from './place.ts';

/** Finds parts, stations and dimensions by name and goes there. */
export function FindDialog({ onClose }: { readonly onClose: () => void }) {
  const engine = useEngine();
  const list = useId();
  const [text, setText] = useState('');
  const [found, setFound] = useState<readonly Found[]>([]);
  const [active, setActive] = useState(0);
  useEffect(() => {
    let latest = true;
    void engine.ask('find', { text }).then((answer) => {
      if (!latest) return;
      setFound(answer ?? []);
      setActive(0);
    });
    return () => {
      latest = false;
    };
  }, [engine, text]);
  const go = (to: Found | undefined) => {
    if (to === undefined) return;
    onClose();
    goTo(to.kind === 'part' ? { part: to.part } : { department: 'drawing', part: to.part, subject: to.id });
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (event.key === 'Enter') go(found[active]);
    if (step === 0 || found.length === 0) return;
    event.preventDefault();
    const next = (active + step + found.length) % found.length;
    setActive(next);
    document.getElementById(`${list}-${next}`)?.scrollIntoView({ block: 'nearest' });
  };
  return (
    <Dialog title="Find" onClose={onClose}>
      <input
        className="input"
        role="combobox"
        aria-label="Name of a part, station or dimension"
        aria-controls={list}
        aria-expanded={found.length > 0}
        aria-activedescendant={found.length > 0 ? `${list}-${active}` : undefined}
        placeholder="Name of a part, station or dimension"
        value={text}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={onKeyDown}
      />
      {text.trim() !== '' && found.length === 0 && <p className="soft">Nothing of that name in this build.</p>}
      <ul className="found" id={list} role="listbox" aria-label="Found">
        {found.map((each, i) => (
          <li
            key={each.id}
            id={`${list}-${i}`}
            role="option"
            aria-selected={i === active}
            tabIndex={-1}
            className="list-row"
            onClick={() => go(each)}
          >
            <span className="lettering soft found-kind">{each.kind}</span>
            <span className="ellipsis grow">{each.name}</span>
            {each.kind !== 'part' && <span className="soft ellipsis">{each.partName}</span>}
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
