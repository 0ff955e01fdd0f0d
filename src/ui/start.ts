/**
 * The only script a page loads by itself. A reader of prose needs no calculator code: what is printed is the demo
 * truck, finished. The code comes when it is wanted: a link, saved values or another unit system at once, a
 * calculator when it is pointed at, touched or focused.
 */
type Live = typeof import('./live.ts');

const places = [...document.querySelectorAll<HTMLElement>('[data-calculator]')];
const units = document.querySelector<HTMLElement>('[data-units]');
let live: Promise<Live> | undefined;
const load = (): Promise<Live> => {
  live ??= import('./live.ts');
  live.catch(() => { live = undefined; }); // no network: the next touch tries again
  return live;
};

/** Without its code a calculator must not show the demo truck's result beside what was typed. */
function failed(place: HTMLElement): void {
  const answer = place.querySelector('.answer output');
  if (answer) answer.textContent = '–';
  const note = document.createElement('p');
  note.className = 'blank';
  note.textContent = 'This calculator could not be loaded, so nothing here is computed from your numbers. Reload the page when there is a network.';
  if (!place.querySelector(':scope > .blank')) place.prepend(note);
}
const bring = (place: HTMLElement): Promise<void> => load().then((it) => it.bring(place)).catch((error: unknown) => { failed(place); throw error; });

function remembers(): boolean {
  try {
    return localStorage.getItem('unit-system') === 'si' || (localStorage.getItem('build')?.includes('"text"') ?? false);
  } catch {
    return false; // storage forbidden: nothing can be remembered
  }
}

if (places.length > 0 && (location.search.length > 1 || remembers() || document.querySelector('[data-eager]'))) load().then((it) => it.start(places)).catch(() => places.forEach(failed));

for (const place of places) {
  for (const kind of ['pointerenter', 'pointerdown', 'focusin']) place.addEventListener(kind, () => { if (place.dataset.live !== 'yes') bring(place).catch(() => undefined); });
  // A press that came before the code is pressed again after it.
  place.addEventListener('click', (event) => {
    const button = (event.target as Element).closest('button');
    if (!button || place.dataset.live === 'yes') return;
    event.stopImmediatePropagation();
    bring(place).then(() => button.click(), () => undefined);
  }, { capture: true });
}

function press(system: string): void {
  for (const button of units?.querySelectorAll('button') ?? []) button.setAttribute('aria-pressed', String(button.value === system));
}
units?.addEventListener('click', (event) => {
  const { value } = event.target as HTMLButtonElement;
  if (value !== 'us' && value !== 'si') return;
  press(value);
  load().then((it) => {
    it.session.setSystem(value);
    return it.start(places);
  }).catch(() => places.forEach(failed));
});
if (remembers()) load().then((it) => press(it.session.system)).catch(() => undefined);

// Numbers in lists to tick are the demo truck's until something is typed.
if (document.querySelector('[data-number]') && remembers()) import('./numbers.ts').then((it) => it.fill()).catch(() => {
  for (const number of document.querySelectorAll('[data-number]')) number.textContent = '– (not loaded)';
});

// On paper an address needs its host; a calculator that is awake prints its own, with its numbers.
addEventListener('beforeprint', () => {
  for (const address of document.querySelectorAll('.address')) if (address.textContent?.startsWith('/')) address.textContent = location.origin + address.textContent;
});

if ('serviceWorker' in navigator && import.meta.env.PROD) void navigator.serviceWorker.register('/sw.js').catch(() => undefined);

for (const button of document.querySelectorAll<HTMLElement>('[data-print]')) {
  button.hidden = false;
  button.addEventListener('click', () => print());
}

/** The offline worker has taken away the `hidden` of a page that it served from its store. */
const copyNote = document.querySelector<HTMLElement>('[data-offline]');
const saved = copyNote?.hidden === false;
function showOffline(): void {
  if (copyNote) copyNote.hidden = navigator.onLine && !saved;
}
addEventListener('online', showOffline);
addEventListener('offline', showOffline);
showOffline();
