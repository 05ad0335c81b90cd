import { useCallback, useEffect, useState } from 'react';
import { addPart } from '../../app/adding.ts';
import { placeNow, usePlace } from '../../app/place.ts';
import { useEngine, useIsEditable, useView } from '../../engine/use-engine.ts';
import type { PartLink } from '../../engine/views/links.ts';
import type { ReachParams, Way } from '../../engine/views/reach.ts';
import type { PartLine } from '../../engine/views/summary.ts';
import { FindingsPane } from '../../findings/findings-pane.tsx';
import { announce } from '../../kit/announcer.tsx';
import { Button } from '../../kit/button.tsx';
import { Empty } from '../../kit/empty.tsx';
import { Pane } from '../../kit/pane.tsx';
import { Split } from '../../kit/split.tsx';
import { Tabs } from '../../kit/tabs.tsx';
import { ListForm } from './list/list-form.tsx';
import { DependencyMap } from './map/dependency-map.tsx';
import { SearchBox } from './search-box.tsx';
import { light, lightAll, showForm, useWorksState } from './works-state.ts';

const noParts: readonly PartLine[] = [];
const nothingLit: ReachParams = { id: 'part:none' as ReachParams['id'], way: 'touches' };

/** The Works: how the parts of the build hang on one another, and beside it every finding. */
export function WorksRoom() {
  return (
    <Split
      id="works-findings"
      direction="across"
      sized="second"
      label="Width of the findings"
      initial={320}
      min={240}
      max={640}
    >
      <MapPane />
      <FindingsPane />
    </Split>
  );
}

/** Lights up how far the selected dimension, station or part reaches. */
function lightSelected(way: Way): void {
  const { part, subject } = placeNow();
  light(subject ?? part, way);
}

function MapPane() {
  const summary = useView('summary', null);
  const links = useView('links', null);
  const { form, lit } = useWorksState();
  const reach = useView('reach', lit ?? nothingLit);
  const { part } = usePlace();
  const [shown, setShown] = useState({ count: 0 });
  const parts = summary?.parts ?? noParts;
  const sentence = reach?.sentence;
  useEffect(() => {
    if (sentence !== undefined) announce(sentence);
  }, [sentence]);
  // What was lit may have been removed.
  const gone =
    lit !== undefined && parts.length > 0 && lit.id.startsWith('part:') && !parts.some(({ id }) => id === lit.id);
  useEffect(() => {
    if (gone) lightAll();
  }, [gone]);

  /** T, H and Esc do the same in map and list. @returns whether the key was one of them. */
  const onLightKey = useCallback((event: React.KeyboardEvent): boolean => {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const key = event.key.toLowerCase();
    if (key === 't') lightSelected('touches');
    else if (key === 'h') lightSelected('hangs on');
    else if (key === 'escape') lightAll();
    else return false;
    event.preventDefault();
    return true;
  }, []);

  const lightButton = (way: Way, words: string, key: string) => (
    <Button look="quiet" pressed={lit?.way === way} disabled={part === undefined} onClick={() => lightSelected(way)}>
      {words} <kbd>{key}</kbd>
    </Button>
  );
  return (
    <Pane
      title="Dependency map"
      className="works"
      beside={
        <Tabs
          label="Form"
          panel="works-form"
          value={form}
          onChange={showForm}
          tabs={[
            { value: 'map', label: 'Map' },
            { value: 'list', label: 'List' },
          ]}
        />
      }
      actions={
        <>
          {lightButton('touches', 'Touches', 'T')}
          {lightButton('hangs on', 'Hangs on', 'H')}
          <SearchBox onChosen={() => setShown(({ count }) => ({ count: count + 1 }))} />
        </>
      }
    >
      <div id="works-form" className="works-form" role="tabpanel" aria-label={form === 'map' ? 'Map' : 'List'}>
        {summary === undefined || links === undefined ? null : parts.length === 0 ? (
          <NoParts />
        ) : form === 'map' ? (
          <DependencyMap parts={parts} links={links} reach={reach} shown={shown.count} onLightKey={onLightKey} />
        ) : (
          <ListForm parts={parts} links={links} reach={reach} onLightKey={onLightKey} />
        )}
      </div>
      {parts.length > 0 && links !== undefined && <Says sentence={sentence} links={links} />}
    </Pane>
  );
}

/** One line under the map: what is lit up in words, or how to read the map. */
function Says({ sentence, links }: { readonly sentence: string | undefined; readonly links: readonly PartLink[] }) {
  if (sentence !== undefined) {
    return (
      <p className="works-says lit">
        <span className="grow">{sentence}</span>
        <Button look="quiet" onClick={lightAll}>
          Light everything <kbd>Esc</kbd>
        </Button>
      </p>
    );
  }
  return (
    <p className="works-says">
      {links.length === 0
        ? 'No formula names a dimension of another part yet. Write one, such as  bore of column + 0.2 mm,  and its line appears here.'
        : 'An arrow runs from the part whose dimension is named to the part whose formula names it.'}
    </p>
  );
}

function NoParts() {
  const engine = useEngine();
  const editable = useIsEditable();
  return (
    <Empty
      title="No parts yet"
      actions={
        editable && (
          <Button look="main" onClick={() => void addPart(engine)}>
            Add a Part
          </Button>
        )
      }
    >
      <p>
        Each part of the machine stands here as a title block; a line joins it to every part whose dimensions its
        formulas name.
      </p>
    </Empty>
  );
}
