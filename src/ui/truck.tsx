import type { VNode } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';
import { knowsUnit } from '../build/fields.ts';
import type { Typed } from '../build/fields.ts';
import { decodeRows } from '../build/rows.ts';
import { readSaved } from '../build/store.ts';
import type { SavedBuild } from '../build/store.ts';
import { entryOf } from '../calculators/evaluate.ts';
import { isChoice, isRows, vocabulary } from '../calculators/vocabulary/index.ts';
import { echo, parseQuantity } from '../units/index.ts';
import type { Session } from './session.ts';

/** What the reader has typed, with a way to a file and back. */
export function Truck({ session }: { session: Session }): VNode {
  const [, redraw] = useState(0);
  const [said, say] = useState('');
  const [forgotten, setForgotten] = useState<SavedBuild | undefined>();
  useLayoutEffect(() => session.subscribe(() => redraw((k) => k + 1)), []);
  const { build } = session;
  const saved = build.save();
  const keys = Object.keys(saved.values).filter((key) => Object.hasOwn(vocabulary, key));

  const toFile = (): void => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([JSON.stringify(saved, null, 1)], { type: 'application/json' }));
    link.download = 'truck.json';
    link.click();
    URL.revokeObjectURL(link.href);
  };
  const fromFile = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const found = readSaved(file.size < 1e6 ? await file.text() : null);
    if (!found) return say(`${file.name} is not a truck saved here. Nothing was changed.`);
    build.setAll(Object.entries(found.values));
    const count = Object.keys(found.values).length;
    say(`${count} ${count === 1 ? 'value' : 'values'} read from ${file.name}.${build.kept ? '' : ' This browser does not keep them: they are gone when you leave this page.'}`);
  };

  const forget = (): void => {
    setForgotten(saved);
    build.clear();
    say('All values are the demo truck’s again. Until you leave this page you can bring yours back.');
  };
  const bringBack = (): void => {
    build.setAll(Object.entries(forgotten?.values ?? {}));
    setForgotten(undefined);
    say('Your values are back.');
  };

  return (
    <>
      {keys.length === 0 ? <p>Nothing typed yet: every page shows the demo truck. Start where the whole chain is: <a href="/calculators/braking-rate/">Braking rate, from foot to road</a>.</p> : (
        <table>
          <caption>{keys.length === 1 ? 'One value is yours' : `${keys.length} values are yours`}</caption>
          <thead><tr><th scope="col">Quantity</th><th scope="col">Yours</th><th scope="col"><span class="visually-hidden">Undo</span></th></tr></thead>
          <tbody>
            {keys.map((key) => <tr key={key}><th scope="row">{entryOf(key).name}</th><td>{words(key, saved.values[key] as Typed)}</td><td><button type="button" aria-label={`undo ${entryOf(key).name}`} onClick={() => build.set(key, undefined)}>undo</button></td></tr>)}
          </tbody>
        </table>
      )}
      <p class="buttons">
        {keys.length > 0 && <button type="button" onClick={toFile}>Save to a file</button>}
        <label class="button file">Read a file<input class="visually-hidden" type="file" accept="application/json,.json" onChange={(event) => { void fromFile(event.currentTarget.files?.[0]); event.currentTarget.value = ''; }} /></label>
        {(keys.length > 0 || forgotten) && <button type="button" key="forget" onClick={keys.length > 0 ? forget : bringBack}>{keys.length > 0 ? 'Forget all of mine' : 'Bring mine back'}</button>}
      </p>
      <p role="status">{said}</p>
    </>
  );
}

function words(key: string, { text, unit }: Typed): string {
  const entry = entryOf(key);
  if (isChoice(entry)) return Object.hasOwn(entry.options, text) ? (entry.options[text] as string) : text;
  if (isRows(entry)) return countOf(decodeRows(text).filter((cells) => cells.some((cell) => cell.trim() !== '')).length);
  if (!knowsUnit(entry, unit)) return `${text} ${unit}`;
  const parsed = parseQuantity(text, entry.dimension, unit);
  return (parsed.ok && echo(parsed, entry.dimension)) || `${text} ${unit}`.trim();
}

const countOf = (rows: number): string => (rows === 1 ? '1 row' : `${rows} rows`);
