/** Measures what the site promises of speed. Prints; judges nothing, since machines differ. `npm run bench -- lock-order` looks at that calculator alone. */
import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { calculatorById, calculators, evaluate } from '../../src/calculators/index.ts';
import { launch } from '../browser/browser.ts';
import { serve } from '../browser/server.ts';
import { wakeAll } from '../browser/wake.ts';
import { demoInputs } from '../sweep/sample.ts';
import { timeBoreSearch } from './bore-search.ts';

const dist = new URL('../../dist/', import.meta.url);

const asked = process.argv.slice(2);
const looked = asked.length === 0 ? calculators : asked.map(calculatorById);

const began = performance.now();
if (spawnSync('astro', ['build'], { stdio: 'ignore' }).status !== 0) throw new Error('build: expected success, found failure');
console.log(`build: ${((performance.now() - began) / 1000).toFixed(1)} s`);

console.log('\none evaluation, microseconds');
// The sweep keeps what it knows from the last one: other mounts under the body make nearly every pair new.
const anew = 'clearance-sweep';
for (const record of looked) {
  const inputs = demoInputs(record);
  const [both, times] = record.id === anew ? [[inputs, { ...inputs, mountMovement: 0.011 }], 100] : [[inputs, inputs], 2000];
  for (let k = 0; k < times / 4; k++) evaluate(record, both[k % 2] as typeof inputs);
  const start = performance.now();
  for (let k = 0; k < times; k++) evaluate(record, both[k % 2] as typeof inputs);
  console.log(`  ${record.id.padEnd(22)}${(((performance.now() - start) / times) * 1000).toFixed(1).padStart(8)}`);
}

const [browser, site] = await Promise.all([launch(), serve()]);
console.log(`\nbore search alone, processor slowed 4 times, ms: ${await timeBoreSearch(browser, demoInputs(calculatorById('bore-finder')) as Record<string, number>)}`);

console.log('\nkB, gzip / brotli: page, styles, scripts, words (JSON), total; as loaded, then with every calculator alive');
for (const slug of readdirSync(new URL('guides/', dist)).filter((name) => !name.includes('.'))) {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
  const files = new Map<string, Buffer>();
  page.on('response', (response) => {
    const path = new URL(response.url()).pathname.replace(/\/$/, '/index.html');
    if (/\.(html|css|js|json)$/.test(path)) files.set(path, readFileSync(new URL(`.${path}`, dist)));
  });
  const sum = (kind: RegExp, size: (b: Buffer) => number): number => [...files].filter(([path]) => kind.test(path)).reduce((total, [, body]) => total + size(body), 0) / 1000;
  const both = (kind: RegExp): string => `${sum(kind, (b) => gzipSync(b, { level: 9 }).length).toFixed(1)} / ${sum(kind, (b) => brotliCompressSync(b).length).toFixed(1)}`.padEnd(14);
  const line = (): string => [/html$/, /css$/, /\.js$/, /json$/, /./].map(both).join('  ');
  await page.goto(`${site.origin}/guides/${slug}/`, { waitUntil: 'networkidle' });
  console.log(`  ${slug.padEnd(22)}${line()}`);
  await wakeAll(page);
  console.log(`  ${''.padEnd(22)}${line()}`);
  await page.close();
}

console.log('\nkeystroke to next paint, ms, median and worst of 40: plain, processor slowed 4 times');
for (const record of looked) {
  const times: string[] = [];
  for (const rate of [1, 4]) {
    const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
    await page.goto(`${site.origin}/calculators/${record.id}/`);
    await page.waitForSelector('[data-live]');
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Emulation.setCPUThrottlingRate', { rate });
    const samples = await page.evaluate(async (mounts) => {
      const input = document.querySelector<HTMLInputElement>(mounts ? '[id$=-mountMovement]' : '.entry input');
      const results: number[] = [];
      if (!input) return results;
      input.focus({ preventScroll: true });
      const text = input.value;
      for (let k = 0; k < 40; k++) {
        await new Promise((resolve) => setTimeout(resolve, 30));
        const start = performance.now();
        input.value = k % 2 ? text : `${text}${text.includes('.') ? '1' : '.1'}`;
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await Promise.resolve();
        const work = performance.now() - start;
        // Then style, layout and paint of the next frame, without the wait for the screen to be due.
        const frame = await new Promise<number>((resolve) => requestAnimationFrame(() => {
          const due = performance.now();
          const channel = new MessageChannel();
          channel.port1.onmessage = () => resolve(performance.now() - due);
          channel.port2.postMessage(0);
        }));
        results.push(work + frame);
      }
      return results.sort((a, b) => a - b);
    }, record.id === anew);
    times.push(`${samples[20]?.toFixed(1)} ${samples.at(-1)?.toFixed(1)}`);
    await page.close();
  }
  console.log(`  ${record.id.padEnd(22)}${times.join('   ')}`);
}
console.log('\nprocessor slowed 4 times, ms, least of 5: how sure, then turned round; work in all, longest slice, from the last keystroke to the words (0.3 s of it is waiting)');
for (const record of looked) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.addInitScript(() => {
    const slices: number[] = [];
    const real = window.setTimeout;
    // Slices are the page's only timers without a delay.
    const timed = (work: (argument: unknown) => void, delay: number, argument: unknown): number => real(() => {
      const start = performance.now();
      work(argument);
      if (!delay) slices.push(performance.now() - start);
    }, delay);
    Object.assign(window, { setTimeout: timed, slices });
  });
  await page.goto(`${site.origin}/calculators/${record.id}/`);
  await page.waitForSelector('[data-live]');
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const least = await page.evaluate(async () => {
    const { slices } = window as unknown as { slices: number[] };
    const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
    const type = (input: HTMLInputElement, text: string): void => {
      input.value = text;
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    };
    /** Types five times and waits each time until the words have gone and come back. */
    const measure = async (input: HTMLInputElement, place: Element, busy: () => boolean): Promise<number[]> => {
      const results: number[][] = [];
      const text = input.value;
      for (let k = 1; k <= 5; k++) {
        slices.length = 0;
        const start = performance.now();
        type(input, `${text}${/[./]/.test(text) ? '' : '.'}${k}`);
        place.scrollIntoView();
        while (!busy() && slices.length === 0) await sleep(5); // or it was over before the next look
        while (busy()) await sleep(5);
        results.push([slices.reduce((a, b) => a + b, 0), Math.max(...slices), performance.now() - start]);
      }
      type(input, text);
      return [0, 1, 2].map((column) => Math.min(...results.map((result) => result[column] as number)));
    };
    const panel = document.querySelector('.how-sure') as HTMLElement;
    const turn = document.querySelector<HTMLDetailsElement>('.turn-round');
    const sure = await measure(document.querySelector('.entry input') as HTMLInputElement, panel, () => panel.getAttribute('aria-busy') === 'true');
    if (!turn) return sure;
    turn.open = true;
    while (!turn.querySelector('input')) await sleep(5);
    const turned = await measure(turn.querySelector('input') as HTMLInputElement, turn, () => turn.querySelector('.turned')?.textContent === 'Looking for it …');
    return [...sure, ...turned];
  });
  console.log(`  ${record.id.padEnd(22)}${least.map((x) => x.toFixed(1).padStart(9)).join('')}`);
  await page.close();
}
await browser.close();
await site.close();
