/** Times the whole bore search alone in a browser whose processor is slowed four times: cold, and as the page does it, warmed first. */
import { readFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import type { Browser } from 'playwright-core';
import type { FinderValues } from '../../src/calculators/helpers/bore-search.ts';

const root = new URL('../../', import.meta.url);

export async function timeBoreSearch(browser: Browser, inputs: Readonly<Record<string, number | string>>): Promise<string> {
  const cold: number[] = [];
  const pieces: number[] = [];
  const firsts: number[] = [];
  const laters: number[] = [];
  for (let k = 0; k < 10; k++) {
    const warmed = k % 2 === 0;
    const page = await browser.newPage();
    await page.route('http://bench.test/**', (route) => {
      const { pathname } = new URL(route.request().url());
      if (pathname === '/') return route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>bench</title>' });
      return route.fulfill({ contentType: 'text/javascript', body: stripTypeScriptTypes(readFileSync(new URL(`.${pathname}`, root), 'utf8')) });
    });
    await page.goto('http://bench.test/');
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    const times = await page.evaluate(async ({ values, warmFirst }) => {
      const path = '/src/calculators/helpers/bore-search.ts';
      const { search, warmSearch } = (await import(path)) as { search: (v: FinderValues) => unknown; warmSearch: (v: FinderValues) => Generator<void> };
      const all: number[] = [];
      const warm: number[] = [];
      for (const steps = warmSearch(values as never); warmFirst;) {
        const start = performance.now();
        if (steps.next().done) break;
        warm.push(performance.now() - start);
        await new Promise((resolve) => setTimeout(resolve));
      }
      for (let n = 0; n < 40; n++) {
        const v = { ...values, driverForce: (values['driverForce'] as number) + n } as unknown as FinderValues;
        const start = performance.now();
        search(v);
        all.push(performance.now() - start);
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      return { all, warm };
    }, { values: inputs, warmFirst: warmed });
    (warmed ? firsts : cold).push(times.all[0] as number);
    pieces.push(...times.warm);
    laters.push(...times.all.slice(1));
    await page.close();
  }
  const range = (x: number[]): string => {
    x.sort((a, b) => a - b);
    return [x[0], x[x.length >> 1], x.at(-1)].map((ms) => (ms ?? 0).toFixed(1)).join(' ');
  };
  return `least, median, most: cold ${range(cold)}; pieces that warm ${range(pieces)}, first after them ${range(firsts)}; later ${range(laters)}`;
}
