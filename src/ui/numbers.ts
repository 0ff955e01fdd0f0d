import { applies, asked } from '../build/asked.ts';
import type { Asked } from '../build/asked.ts';
import { readRecord } from '../build/fields.ts';
import type { Reading } from '../build/fields.ts';
import { inBoth } from '../build/number-text.ts';
import { entryOf } from '../calculators/evaluate.ts';
import type { Feed } from '../calculators/record.ts';
import { isQuantity } from '../calculators/vocabulary/index.ts';
import { unitFor } from '../units/index.ts';
import { recordById } from './live.ts';
import { session } from './page-session.ts';

const records = new Map<string, Promise<Feed>>();
const record = (id: string): Promise<Feed> => {
  const coming = records.get(id) ?? recordById(id);
  records.set(id, coming);
  return coming;
};

/** Puts the reader's numbers in place of the demo truck's in the lists to tick, and says which are still the demo truck's. */
export async function fill(): Promise<void> {
  if (Object.keys(session.build.save().values).length === 0) return;
  for (const item of document.querySelectorAll<HTMLElement>('[data-if]')) {
    // The demo truck's own choice is in the built page only.
    item.hidden = session.build.get(item.dataset.if?.split('=')[0] ?? '') ? !applies(item.dataset.if, (key) => session.build.get(key)?.text) : item.dataset.demo === 'hidden';
  }
  const places = [...document.querySelectorAll<HTMLElement>('[data-number]')];
  const unknown = new Set<string>();
  for (const place of places) place.textContent = '…'; // not the demo truck's while his own are on their way
  for (const place of places) {
    try {
      const number = asked(place.dataset.number ?? '');
      place.textContent = wordsOf(number, await readingOf(number, unknown));
    } catch {
      place.textContent = '– (not loaded)'; // better no number than the demo truck's
    }
  }
  const named = [...unknown].slice(0, 12).join('; ');
  const whose = unknown.size === 0
    ? 'All numbers are computed from what you have typed on this device.'
    : `Computed from what you have typed on this device. But ${unknown.size} of the values behind these numbers are still the demo truck’s, and so not yours: ${named}${unknown.size > 12 ? `; and ${unknown.size - 12} more` : ''}.`;
  for (const note of document.querySelectorAll<HTMLElement>('[data-whose]')) note.textContent = whose;
}

let timer: ReturnType<typeof setTimeout> | undefined;
session.subscribe(() => {
  clearTimeout(timer);
  timer = setTimeout(() => void fill(), 500);
});

async function readingOf({ calculator, set }: Asked, unknown: Set<string>): Promise<Reading> {
  const lookup = (key: string) => (Object.hasOwn(set, key) ? { text: set[key] as string, unit: unitOrNone(key), system: 'us' as const } : session.build.get(key));
  const ask = (of: Feed): Reading => {
    const reading = readRecord(of, lookup, 'us');
    for (const { origin, key, from } of reading.fields) {
      if (origin === 'demo') unknown.add(entryOf(key).name);
      if (from) ask(from);
    }
    return reading;
  };
  return ask(await record(calculator));
}

function wordsOf({ of }: Asked, reading: Reading): string {
  const entry = entryOf(of);
  const value = reading.state === 'ok' ? reading.values[of] : undefined;
  return isQuantity(entry) && typeof value === 'number' ? inBoth(value, entry.dimension) : '– (no result: see the calculator)';
}

function unitOrNone(key: string): string {
  const entry = entryOf(key);
  return isQuantity(entry) ? unitFor(entry.dimension, 'us') : '';
}
