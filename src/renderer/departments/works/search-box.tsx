import { useEffect, useId, useRef, useState } from 'react';
import { goTo } from '../../app/place.ts';
import type { Found } from '../../engine/asks/find.ts';
import { useEngine } from '../../engine/use-engine.ts';
import { setOpened } from './works-state.ts';

const MOST = 12;
const none: readonly Found[] = [];

/** Finds a part, station or dimension by name and shows it on the map or in the list. */
export function SearchBox({ onChosen }: { readonly onChosen: () => void }) {
  const engine = useEngine();
  const list = useId();
  const box = useRef<HTMLDivElement>(null);
  const [text, setText] = useState('');
  const [found, setFound] = useState(none);
  const [active, setActive] = useState(0);
  const [open, setOpen] = useState(false);
  useEffect(() => {
    let latest = true;
    if (text.trim() === '') setFound(none);
    else
      void engine.ask('find', { text }).then((answer) => {
        if (!latest) return;
        setFound((answer ?? none).slice(0, MOST));
        setActive(0);
      });
    return () => {
      latest = false;
    };
  }, [engine, text]);

  const choose = (to: Found | undefined) => {
    if (to === undefined) return;
    if (to.kind === 'part') goTo({ part: to.part });
    else {
      setOpened(to.part, true);
      goTo({ part: to.part, subject: to.id });
    }
    setText('');
    setOpen(false);
    onChosen();
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.key === 'Enter') choose(found[active]);
    else if (event.key === 'Escape' && text !== '') setText('');
    else if ((event.key === 'ArrowDown' || event.key === 'ArrowUp') && found.length > 0)
      setActive((active + (event.key === 'ArrowDown' ? 1 : -1) + found.length) % found.length);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const showing = open && text.trim() !== '';
  return (
    <div className="works-search" ref={box}>
      <input
        className="input"
        role="combobox"
        aria-label="Find on the map"
        aria-autocomplete="list"
        aria-controls={list}
        aria-expanded={showing}
        aria-activedescendant={showing && found.length > 0 ? `${list}-${active}` : undefined}
        placeholder="Find on the map"
        value={text}
        onFocus={() => setOpen(true)}
        onBlur={(event) => !box.current?.contains(event.relatedTarget) && setOpen(false)}
        onChange={(event) => {
          setOpen(true);
          setText(event.target.value);
        }}
        onKeyDown={onKeyDown}
      />
      <ul id={list} role="listbox" aria-label="Found" className="works-found" hidden={!showing || found.length === 0}>
        {found.map((each, i) => (
          <li
            key={each.id}
            id={`${list}-${i}`}
            role="option"
            aria-selected={i === active}
            tabIndex={-1}
            className="list-row"
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => choose(each)}
          >
            <span className="lettering soft">{each.kind}</span>
            <span className="ellipsis grow">{each.name}</span>
            {each.kind !== 'part' && <span className="soft ellipsis">{each.partName}</span>}
          </li>
        ))}
      </ul>
      {showing && found.length === 0 && (
        <p className="works-found works-none soft">Nothing of that name in this build.</p>
      )}
    </div>
  );
}
