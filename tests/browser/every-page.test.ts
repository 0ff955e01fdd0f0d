import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openSite } from './open.ts';
import { wakeAll } from './wake.ts';
import { pages } from './pages.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const site = openSite();

interface Visit {
  readonly page: Page;
  readonly said: string[];
  readonly asked: string[];
}

async function visit(path: string, width: number, colorScheme: 'light' | 'dark', awake = true): Promise<Visit> {
  const page = await site.page({ viewport: { width, height: 900 }, colorScheme });
  const said: string[] = [];
  const asked: string[] = [];
  page.on('console', (message) => said.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => said.push(`thrown: ${error.message}`));
  page.on('request', (request) => asked.push(request.url()));
  await page.addInitScript(() => document.addEventListener('securitypolicyviolation', (event) => console.error(`CSP: ${event.violatedDirective} ${event.blockedURI}`)));
  await page.goto(site.origin() + path, { waitUntil: 'load' });
  if (awake) await wakeAll(page);
  return { page, said, asked };
}

test('all kinds of pages are there', () => {
  for (const path of ['/', '/404.html', '/safety/', '/sources/', '/truck/', '/guides/', '/calculators/', '/guides/bias/', '/calculators/line-pressure/']) expect(pages).toContain(path);
});

describe.each(pages)('%s', (path) => {
  test.each([['light', 390], ['dark', 1280]] as const)('%s at %i px: silent console, no stranger asked, no cookie, nothing for axe', async (scheme, width) => {
    const { page, said, asked } = await visit(path, width, scheme);
    expect(said.filter((line) => !/favicon/.test(line))).toEqual([]);
    expect(asked.filter((address) => !address.startsWith(site.origin()))).toEqual([]);
    expect(await page.context().cookies()).toEqual([]);
    expect(await page.evaluate(() => document.querySelectorAll('meta[http-equiv="content-security-policy" i]').length)).toBe(1);
    const cdp = await page.context().newCDPSession(page);
    // Through the debugger, since the page's own policy rightly refuses to run a stranger.
    await cdp.send('Runtime.evaluate', { expression: axe });
    const { result } = await cdp.send('Runtime.evaluate', {
      expression: `axe.run(document, { resultTypes: ['violations'] }).then((r) => JSON.stringify(r.violations.map((v) => v.id + ': ' + v.nodes.slice(0, 3).map((n) => n.target.join(' ') + ' ' + (n.any[0]?.message ?? '')).join(' | '))))`,
      awaitPromise: true,
      returnByValue: true,
    });
    expect(JSON.parse(result.value as string)).toEqual([]);
    await page.context().close();
  });

  test('at 320 px scrolls in one direction only, and every control is large enough for a thumb', async () => {
    const { page } = await visit(path, 320, 'light');
    const wide = await page.evaluate(() => [...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest('.scroll, .skip, .visually-hidden')).map((e) => `${e.tagName} ${e.className}`).slice(0, 3));
    expect(wide).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    const small = await page.evaluate(() => [...document.querySelectorAll('main button, main select, main input, header button, header a, summary, .related a, .help a, .answer > a')].map((e) => ({ e, box: e.getBoundingClientRect() })).filter(({ e, box }) => box.width > 0 && !(e as HTMLInputElement).type?.match(/radio|file/) && (box.height < 43.5 || box.width < 30)).map(({ e, box }) => `${e.tagName} ${e.className} ${Math.round(box.width)}×${Math.round(box.height)}`).slice(0, 5));
    expect(small).toEqual([]);
    await page.context().close();
  });

  test('has one title, one first heading, headings in order, and links that lead somewhere', async () => {
    const { page } = await visit(path, 1280, 'light', false);
    expect(await page.locator('h1').count()).toBe(1);
    const levels = await page.evaluate(() => [...document.querySelectorAll('main h1, main h2, main h3, main h4')].map((h) => Number(h.tagName[1])));
    levels.forEach((level, k) => expect(level - (levels[k - 1] ?? 0), `heading ${k + 1} of ${levels.join()}`).toBeLessThanOrEqual(1));
    const links = await page.evaluate(() => [...document.querySelectorAll('a[href]')].map((a) => (a as HTMLAnchorElement).href));
    for (const link of new Set(links)) {
      const url = new URL(link);
      expect(url.origin, link).toBe(site.origin());
      if (url.pathname === new URL(page.url()).pathname && url.hash) {
        expect(await page.evaluate((id) => document.getElementById(id) !== null, decodeURIComponent(url.hash.slice(1))), link).toBe(true);
      } else {
        const target = await fetch(url);
        expect(target.status, link).toBe(200);
        if (url.hash) expect(await target.text(), link).toContain(`id="${decodeURIComponent(url.hash.slice(1))}"`);
        else await target.body?.cancel();
      }
    }
    await page.context().close();
  });
});
