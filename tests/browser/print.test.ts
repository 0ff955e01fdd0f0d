import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openSite } from './open.ts';
import { pages } from './pages.ts';

const site = openSite();

async function sheets(page: Page): Promise<number> {
  return (await page.pdf({ format: 'Letter', margin: { top: '0.5in', bottom: '0.5in', left: '0.5in', right: '0.5in' } })).toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

test('a calculator’s sheet has every number in full, the steps, the address that brings them back, and nothing to press', async () => {
  const page = await site.page({ viewport: { width: 390, height: 844 } });
  await page.goto(`${site.origin()}/calculators/braking-rate/`);
  await page.waitForSelector('[data-live=yes]');
  await page.locator('[id="braking-rate-controlForce"]').fill('95');
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const field = (key: string) => page.locator('.field', { has: page.locator(`[id="braking-rate-${key}"]`) }).locator('.printed');
  expect(await field('controlForce').innerText()).toMatch(/^95\slbf = 422\.6\sN$/);
  expect(await field('pedalRatio').innerText()).toBe('6.2, demo');
  expect(await field('barStopAngle').innerText()).toBe('12°, demo');
  const words = await page.locator('[id="braking-rate-rearValve"] option:checked').textContent();
  expect(await field('rearValve').innerText()).toBe(`${words}, demo`);
  const cut = await page.evaluate(() => [...document.querySelectorAll<HTMLElement>('.printed')].filter((e) => e.checkVisibility() && e.scrollWidth > e.clientWidth + 1).map((e) => e.textContent));
  expect(cut).toEqual([]);
  expect(await page.evaluate(() => [...document.querySelectorAll<HTMLElement>('button, input, select, textarea, summary')].filter((e) => e.checkVisibility() && e.getBoundingClientRect().width > 1).map((e) => e.outerHTML.slice(0, 80)))).toEqual([]);
  const address = await page.locator('.address').innerText();
  expect(address).toMatch(/https?:\/\/.*\/calculators\/braking-rate\/\?v=1&control-force=95lbf&.*#braking-rate$/);
  await expect.poll(() => page.locator('.working .equation').count()).toBeGreaterThan(10);
  expect(await sheets(page)).toBeLessThanOrEqual(5);
  await page.context().close();
});

test('a guide prints its text and compact calculators', async () => {
  const page = await site.page();
  await page.goto(`${site.origin()}/guides/bias/`);
  await page.emulateMedia({ media: 'print' });
  for (const part of ['.field .printed', '.answer output', '.results dl', '.cautions li', '.working .equation']) expect(await page.locator(`#lock-order ${part}`).first().isVisible(), part).toBe(true);
  // Eight calculators and the text between them.
  expect(await sheets(page)).toBeLessThanOrEqual(15);
  await page.context().close();
});

// A sheet of paper is not scrolled: what is wider makes the browser print the whole page smaller, or is cut.
test('on letter paper no page is wider than the sheet, no formula and no list', { timeout: 120_000 }, async () => {
  const page = await site.page({ viewport: { width: 700, height: 900 } }); // 8.5 in less margins of 0.6 in
  await page.emulateMedia({ media: 'print' });
  const wide: string[] = [];
  let formulas = 0;
  for (const path of pages) {
    await page.goto(site.origin() + path);
    const found = await page.evaluate(() => {
      const shown = [...document.querySelectorAll<HTMLElement>('math, table, td, p, svg, textarea')].filter((e) => e.getClientRects().length > 0);
      return { formulas: shown.filter((e) => e.tagName === 'math').length, wide: shown.filter((e) => e.getBoundingClientRect().right > innerWidth + 1).map((e) => `${e.tagName} ${(e.textContent ?? '').slice(0, 40)}`) };
    });
    formulas += found.formulas;
    wide.push(...found.wide.map((what) => `${path}: ${what}`));
  }
  expect(wide).toEqual([]);
  expect(formulas).toBeGreaterThan(300);
  await page.context().close();
});
