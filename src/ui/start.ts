import { h, hydrate } from 'preact';
import { readLink } from '../build/links.ts';
import type { AnyCalculator } from '../calculators/record.ts';
import { Calculator } from './calculator.tsx';
import { completed } from './page-data.ts';
import { session } from './page-session.ts';

const records = import.meta.glob<AnyCalculator>('../calculators/records/*.ts', { import: 'default' });

const places = [...document.querySelectorAll<HTMLElement>('[data-calculator]')];

async function recordOf(place: HTMLElement): Promise<AnyCalculator> {
  const record = await records[`../calculators/records/${place.dataset.calculator}.ts`]?.();
  if (!record) throw new RangeError(`calculator: expected the id of a record, found ${place.dataset.calculator}`);
  return completed(record);
}

/** What was typed before the script came: fields whose value is no longer the built page's. */
function takeTyped(place: HTMLElement, record: AnyCalculator): void {
  for (const input of place.querySelectorAll('input[type=text]') as NodeListOf<HTMLInputElement>) {
    if (input.value === input.defaultValue) continue;
    session.type(record, input.id.slice(record.id.length + 1), input.value, input.dataset.unit);
  }
}

async function bring(place: HTMLElement, linked = false): Promise<void> {
  if (place.dataset.live !== undefined) return;
  place.dataset.live = '';
  const record = await recordOf(place);
  if (linked) session.openLink(record, location.search);
  takeTyped(place, record);
  hydrate(h(Calculator, { record, session }), place);
  if (linked) place.closest('section')?.scrollIntoView();
}

/** The calculator a link speaks to: the one its fragment names, else the one whose inputs it carries. */
async function linkedPlace(): Promise<HTMLElement | undefined> {
  if (location.search.length < 2) return undefined;
  const named = places.find((place) => place.dataset.calculator === location.hash.slice(1));
  if (named) return named;
  for (const place of places) {
    const read = readLink(await recordOf(place), location.search);
    if (read && [...read.values.values()].every((typed) => typed.text !== '')) return place;
  }
  return undefined;
}

async function start(): Promise<void> {
  const first = await linkedPlace();
  if (first) await bring(first, true);
  const watch = new IntersectionObserver((entries) => {
    for (const entry of entries) if (entry.isIntersecting) void bring(entry.target as HTMLElement);
  }, { rootMargin: '800px' });
  for (const place of places) watch.observe(place);
}

const units = document.querySelector<HTMLElement>('[data-units]');
function showSystem(): void {
  for (const button of units?.querySelectorAll('button') ?? []) button.setAttribute('aria-pressed', String(button.value === session.system));
}
units?.addEventListener('click', (event) => {
  const value = (event.target as HTMLButtonElement).value;
  if (value === 'us' || value === 'si') session.build.setSystem(value);
  showSystem();
});
showSystem();
void start();

// The page reloads no one: a new worker takes over at the next visit.
if ('serviceWorker' in navigator && import.meta.env.PROD) void navigator.serviceWorker.register('/sw.js').catch(() => undefined);

const copyNote = document.querySelector<HTMLElement>('[data-offline]');
function showOffline(): void {
  if (copyNote) copyNote.hidden = navigator.onLine;
}
addEventListener('online', showOffline);
addEventListener('offline', showOffline);
showOffline();
