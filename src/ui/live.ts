import { h, hydrate } from 'preact';
import { readRecord } from '../build/fields.ts';
import { readLink } from '../build/links.ts';
import { builtRows } from '../build/rows.ts';
import { entryOf } from '../calculators/evaluate.ts';
import { inputKeys } from '../calculators/record.ts';
import type { AnyCalculator } from '../calculators/record.ts';
import { isRows } from '../calculators/vocabulary/index.ts';
import type { Rows } from '../calculators/vocabulary/index.ts';
import { Calculator } from './calculator.tsx';
import { complete } from './page-data.ts';
import { session } from './page-session.ts';

export { session };

const records = import.meta.glob<AnyCalculator>('../calculators/records/*.ts', { import: 'default' });
const brought = new Map<HTMLElement, Promise<void>>();

/** A record with its words and numbers. */
export async function recordById(id: string): Promise<AnyCalculator> {
  const script = records[`../calculators/records/${id}.ts`];
  if (!script) throw new RangeError(`calculator: expected the id of a record, found ${id}`);
  return complete(script(), id);
}

async function recordOf(place: HTMLElement): Promise<AnyCalculator> {
  const record = await recordById(place.dataset.calculator ?? '');
  if (inputKeys(record).some((key) => isRows(entryOf(key)))) await import('./rows-field.tsx');
  return record;
}

/** What was typed or chosen before the script came: fields that no longer hold the built page's value. */
function takeTyped(place: HTMLElement, record: AnyCalculator): void {
  for (const field of place.querySelectorAll<Entered>('form .field input, form .field select')) if (changed(field)) session.type(record, field.id.slice(record.id.length + 1), field.value, field.dataset.unit);
  for (const list of place.querySelectorAll<HTMLElement>('[data-rows]')) {
    const rows = [...list.querySelectorAll('tr[data-row]')].map((row) => [...row.querySelectorAll<Entered>('td input, td select')]);
    if (rows.flat().some(changed)) session.type(record, list.dataset.rows as string, builtRows(entryOf(list.dataset.rows as string) as Rows, rows.map((row) => row.map(({ value }) => value)), session.system));
  }
}

/** Between two pieces the page answers to what is typed, which takeTyped picks up. */
async function warm(record: AnyCalculator): Promise<void> {
  if (!record.warm) return;
  const inputs = readRecord({ ...record, compute: () => ({}) }, session.lookup(record), session.system);
  if (inputs.state === 'ok') for (const _piece of record.warm(inputs.values as never)) await new Promise((resolve) => setTimeout(resolve));
}

type Entered = HTMLInputElement | HTMLSelectElement;

function changed(field: Entered): boolean {
  const built = field instanceof HTMLInputElement ? field.defaultValue : field.querySelector<HTMLOptionElement>('option[selected]')?.value;
  return built !== undefined && field.value !== built;
}

/** What moves a picture and was moved before the script came. The function moves it again. */
function takeMoved(place: HTMLElement): () => void {
  const moved = [...place.querySelectorAll<HTMLInputElement>('.states input, .motion input')].filter((input) => (input.type === 'radio' ? input.checked && !input.defaultChecked : input.value !== input.defaultValue));
  const values = moved.map((input) => input.value);
  return () => moved.forEach((input, k) => {
    if (input.type === 'radio') input.checked = true;
    else input.value = values[k] as string;
    input.dispatchEvent(new Event(input.type === 'radio' ? 'change' : 'input'));
  });
}

/** Brings one calculator to life, once. */
export function bring(place: HTMLElement, linked = false): Promise<void> {
  let coming = brought.get(place);
  if (!coming) {
    coming = recordOf(place).then(async (record) => {
      if (linked) session.openLink(record, location.search);
      await warm(record);
      takeTyped(place, record);
      place.querySelector(':scope > .blank')?.remove(); // said while the code was missing
      const move = takeMoved(place);
      hydrate(h(Calculator, { record, session, own: place.dataset.eager !== undefined }), place);
      place.dataset.live = 'yes';
      follow();
      move();
      if (linked) place.closest('section')?.scrollIntoView();
    });
    brought.set(place, coming);
    coming.catch(() => brought.delete(place)); // no network: the next touch tries again
  }
  return coming;
}

let following = false;

/** From the reader's first number on, no calculator in sight goes on showing the demo truck's. */
function follow(): void {
  if (following) return;
  following = true;
  const stop = session.subscribe(() => {
    stop();
    watch([...document.querySelectorAll<HTMLElement>('[data-calculator]')]);
  });
}

/**
 * The calculator a link speaks to: the one its fragment names if the link carries all of it; else the first one it
 * carries whole; else, for a link that was cut, the named one or the one it carries most of. Never what the page
 * wrote itself.
 */
async function linkedPlace(places: readonly HTMLElement[]): Promise<HTMLElement | undefined> {
  if (location.search.length < 2 || (history.state as { own?: boolean } | null)?.own) return undefined;
  const named = location.hash.slice(1).replace(/-cautions$/, '');
  const read = (await Promise.all(places.map(async (place) => {
    const values = [...(readLink(await recordOf(place), location.search)?.values.values() ?? [])];
    const carried = values.filter((typed) => typed.text !== '').length;
    return { place, named: place.dataset.calculator === named, carried, whole: carried > 0 && carried === values.length };
  }))).filter((found) => found.carried > 0);
  const best = (a: (typeof read)[number], b: (typeof read)[number]): number => Number(b.whole) - Number(a.whole) || Number(b.named) - Number(a.named) || b.carried - a.carried;
  return read.sort(best)[0]?.place;
}

/** Brings the calculator of the link, then each one as it comes near the window. */
export async function start(places: readonly HTMLElement[]): Promise<void> {
  const first = await linkedPlace(places);
  if (first) await bring(first, true);
  watch(places);
}

function watch(places: readonly HTMLElement[]): void {
  const near = new IntersectionObserver((entries) => {
    for (const entry of entries) if (entry.isIntersecting) void bring(entry.target as HTMLElement).catch(() => undefined);
  }, { rootMargin: '800px' });
  for (const place of places) if (place.dataset.live !== 'yes') near.observe(place);
}
