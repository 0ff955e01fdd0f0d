import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openSite } from './open.ts';

const site = openSite();

async function open(id: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await site.page({ viewport: { width: 1280, height: 900 }, ...options });
  page.on('pageerror', (error) => { throw error; });
  await page.goto(`${site.origin()}/calculators/${id}/`);
  if (options.javaScriptEnabled !== false) await page.waitForSelector('[data-live=yes]');
  return page;
}
const panel = (page: Page) => page.locator('.how-sure');
/** Types, which brings the field into view. */
const type = (page: Page, id: string, key: string, text: string) => page.locator(`[id="${id}-${key}"]`).fill(text);
const lookAt = (page: Page) => panel(page).scrollIntoViewIfNeeded();
const range = /between [−\d.]+\sg and [−\d.]+\sg/;

describe('how sure', () => {
  test('the demo truck’s stands in the page without scripts, and stays when they come', async () => {
    const paper = await open('lock-order', { javaScriptEnabled: false });
    const built = await panel(paper).locator('p').first().textContent();
    expect(built).toMatch(range);
    await paper.context().close();
    const page = await open('lock-order');
    const drawn: string[] = [];
    page.on('request', (request) => drawn.push(request.url()));
    await lookAt(page);
    await page.waitForTimeout(600);
    expect(await panel(page).locator('p').first().textContent()).toBe(built);
    expect(drawn).toEqual([]);
    await page.context().close();
  });

  test('no number stands there while the truck has changed and the new one is not drawn', async () => {
    const page = await open('lock-order');
    const before = await panel(page).textContent();
    await lookAt(page);
    await type(page, 'lock-order', 'cgHeight', '26');
    expect(await panel(page).locator('p').allTextContents()).toEqual([expect.stringMatching(/^How sure\. Drawing trucks/)]);
    expect(await panel(page).getAttribute('aria-busy')).toBe('true');
    expect(await panel(page).locator('.bars').count()).toBe(0);
    await lookAt(page);
    await expect.poll(() => panel(page).textContent()).toMatch(range);
    expect(await panel(page).textContent()).not.toBe(before);
    expect(await panel(page).getAttribute('aria-busy')).toBe('false');
    await type(page, 'lock-order', 'cgHeight', '23');
    await lookAt(page);
    await expect.poll(() => panel(page).textContent()).toBe(before);
    await page.context().close();
  });

  test('a truck out of sight is not drawn until it is looked at', async () => {
    const page = await open('lock-order', { viewport: { width: 390, height: 700 } });
    await type(page, 'lock-order', 'cgHeight', '26');
    await page.waitForTimeout(900);
    expect(await panel(page).textContent()).toMatch(/Drawing trucks/);
    await lookAt(page);
    await expect.poll(() => panel(page).textContent()).toMatch(range);
    await page.context().close();
  });

  test('paper gets the sentence even of a truck that was never looked at', async () => {
    const page = await open('lock-order', { viewport: { width: 390, height: 700 } });
    await type(page, 'lock-order', 'cgHeight', '26');
    await page.waitForTimeout(900);
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await expect.poll(() => panel(page).textContent(), { timeout: 300 }).toMatch(range);
    await page.emulateMedia({ media: 'print' });
    expect(await panel(page).locator('p').first().isVisible()).toBe(true);
    await page.context().close();
  });

  test('nothing is said beside a result that is blank, nor of the last truck when it comes back', async () => {
    const page = await open('lock-order');
    await lookAt(page);
    await type(page, 'lock-order', 'cgHeight', 'high');
    await expect.poll(() => panel(page).isVisible()).toBe(false);
    expect(await panel(page).locator('p').count()).toBe(0);
    await type(page, 'lock-order', 'cgHeight', '30');
    await lookAt(page);
    await expect.poll(() => panel(page).textContent()).toMatch(range);
    await page.context().close();
  });

  test('one compound front and rear narrows the lock order, by keyboard too', async () => {
    const page = await open('lock-order');
    await lookAt(page);
    const ends = async () => ((await panel(page).locator('p').first().textContent()) ?? '').match(/between ([\d.]+)\sg and ([\d.]+)\sg/)?.slice(1).map(Number) as [number, number];
    const [low, high] = await ends();
    await page.getByLabel('Brake pad compounds').focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => panel(page).textContent()).toMatch(/mostly off together/);
    const [lowSame, highSame] = await ends();
    expect(highSame - lowSame).toBeLessThan(0.85 * (high - low));
    await page.context().close();
  });

  test('on a slow phone the longest drawing never holds the page as long as it takes', async () => {
    const page = await open('pedal-ratio');
    await (await page.context().newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await page.evaluate(() => {
      const times: number[] = [];
      Object.assign(globalThis, { longTasks: times });
      new PerformanceObserver((list) => times.push(...list.getEntries().map((entry) => entry.duration))).observe({ type: 'longtask' });
    });
    await type(page, 'pedal-ratio', 'padArm', '12');
    const began = Date.now();
    await lookAt(page);
    await expect.poll(() => panel(page).textContent(), { timeout: 20_000 }).toMatch(/9 of 10/);
    const took = Date.now() - began;
    // What is left is the page's own drawing of a keystroke; the trucks alone take several times as long.
    for (const task of await page.evaluate(() => (globalThis as unknown as { longTasks: number[] }).longTasks)) expect(task).toBeLessThan(took / 3);
    await page.context().close();
  });
});
