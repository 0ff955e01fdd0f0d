import { expect, test } from 'vitest';
import { calculators } from '../../src/calculators/index.ts';
import { openSite } from './open.ts';
import { pages } from './pages.ts';
import { wakeAll } from './wake.ts';

const site = openSite();

/** Runs in the page: words of drawings that leave them or run into each other, as this browser's letters come out. */
function collisions(): string[] {
  const found: string[] = [];
  for (const svg of document.querySelectorAll<SVGSVGElement>('figure.chart > svg, svg.scene, figure.drawing svg')) {
    const { width, height } = svg.viewBox.baseVal;
    const words = [...svg.querySelectorAll('text')].filter((text) => text.textContent).map((text) => ({ said: text.textContent as string, box: text.getBBox(), size: parseFloat(getComputedStyle(text).fontSize) })).map(({ said, box, size }) => ({ said, left: box.x, right: box.x + box.width, top: box.y + box.height / 2 - size * 0.4, bottom: box.y + box.height / 2 + size * 0.4 }));
    for (const word of words) if (word.left < -0.5 || word.right > width + 0.5 || word.top < -0.5 || word.bottom > height + 0.5) found.push(`${word.said} leaves the drawing`);
    words.forEach((a, k) => words.slice(k + 1).forEach((b) => {
      if (a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5) found.push(`${a.said} × ${b.said}`);
    }));
  }
  return found;
}

test('no words in any drawing run into each other or out of it, wherever the slider stands', async () => {
  const page = await site.page({ viewport: { width: 320, height: 844 } });
  const found: string[] = [];
  let looked = 0;
  for (const { id } of calculators) {
    await page.goto(`${site.origin()}/calculators/${id}/`);
    await page.waitForSelector('[data-live=yes]');
    for (const unit of ['in · lbf', 'mm · N']) {
      await page.getByRole('button', { name: unit }).click();
      for (const at of [0, 0.3, 0.7, 1]) {
        await page.evaluate((part) => {
          for (const slider of document.querySelectorAll<HTMLInputElement>('.motion input')) {
            slider.value = String(Number(slider.min) + part * (Number(slider.max) - Number(slider.min)));
            slider.dispatchEvent(new Event('input', { bubbles: true }));
          }
          const states = document.querySelectorAll<HTMLInputElement>('.states input');
          states[Math.round(part * (states.length - 1))]?.click();
        }, at);
        await page.waitForTimeout(30);
        found.push(...(await page.evaluate(collisions)).map((words) => `${id}, ${unit}, ${at}: ${words}`));
      }
    }
    looked += await page.locator('svg.scene text').count();
    await page.getByRole('button', { name: 'in · lbf' }).click();
  }
  expect(found).toEqual([]);
  expect(looked).toBeGreaterThan(2 * calculators.length); // else nothing was looked at
  await page.context().close();
}, 180_000);

test.each([320, 390])('at %i px no words in any drawing are smaller than 11 px, run into each other or leave it', { timeout: 240_000 }, async (width) => {
  const page = await site.page({ viewport: { width, height: 844 } });
  const found: string[] = [];
  let looked = 0;
  for (const path of pages) {
    await page.goto(site.origin() + path);
    await wakeAll(page);
    await page.evaluate(() => { for (const fold of document.querySelectorAll('details')) fold.open = true; });
    const sizes = await page.evaluate(() => [...document.querySelectorAll<SVGTextElement>('figure svg text')].filter((text) => text.textContent).map((text) => ({ said: text.textContent as string, size: parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM() as DOMMatrix).a })));
    looked += sizes.length;
    found.push(...sizes.filter(({ size }) => size < 11).map(({ said, size }) => `${path}: ${said} is ${size.toFixed(1)} px`));
    found.push(...(await page.evaluate(collisions)).map((words) => `${path}: ${words}`));
    if (await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)) found.push(`${path} is wider than the screen`);
  }
  expect(found).toEqual([]);
  expect(looked).toBeGreaterThan(600); // else nothing was looked at
  await page.context().close();
});

test.each(['light', 'dark'] as const)('in a %s room the words of drawings stand out from what is behind them', async (colorScheme) => {
  const page = await site.page({ viewport: { width: 390, height: 844 }, colorScheme });
  const dim: string[] = [];
  let looked = 0;
  for (const path of ['/guides/bias/', '/guides/two-circuits/', '/guides/body-drop-clearance/', '/calculators/lock-order/', '/calculators/circuit-failure/']) {
    await page.goto(site.origin() + path);
    await wakeAll(page);
    // Every word has a rim in the color of its ground, which keeps lines off it.
    const pairs = await page.evaluate(() => [...document.querySelectorAll('figure svg text')].map((text) => [text.textContent, getComputedStyle(text).fill, getComputedStyle(text).stroke] as const));
    for (const [said, fill, ground] of pairs) {
      const [a, b] = [fill, ground].map((color) => {
        const [red, green, blue] = (color.match(/[\d.]+/g) ?? []).map((part) => (Number(part) / 255 <= 0.03928 ? Number(part) / 255 / 12.92 : ((Number(part) / 255 + 0.055) / 1.055) ** 2.4)) as [number, number, number];
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05;
      }) as [number, number];
      looked++;
      if (!(Math.max(a, b) / Math.min(a, b) >= 4.5)) dim.push(`${path}: ${said}, ${fill} on ${ground}`);
    }
  }
  expect(dim).toEqual([]);
  expect(looked).toBeGreaterThan(80);
  await page.context().close();
});
