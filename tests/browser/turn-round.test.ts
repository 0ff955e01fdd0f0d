import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openSite } from './open.ts';

const site = openSite();

async function open(id: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await site.page({ viewport: { width: 390, height: 844 }, ...options });
  page.on('pageerror', (error) => { throw error; });
  await page.goto(`${site.origin()}/calculators/${id}/`);
  await page.waitForSelector('[data-live=yes]');
  return page;
}
const panel = (page: Page) => page.locator('.turn-round');
const answer = (page: Page) => panel(page).locator('.turned');

async function ask(page: Page, fix: string, target: string, input: string): Promise<void> {
  if (!(await panel(page).evaluate((details: HTMLDetailsElement) => details.open))) await panel(page).locator('summary').click();
  await page.getByLabel('Result to fix').selectOption({ label: fix });
  await page.getByLabel('Input to find').selectOption({ label: input });
  await panel(page).locator('input').fill(target);
}

describe('turned round', () => {
  test('its code comes when it is opened, not before', async () => {
    const page = await open('line-pressure');
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await panel(page).scrollIntoViewIfNeeded();
    await page.waitForTimeout(300);
    expect(asked.filter((address) => /turn/.test(address))).toEqual([]);
    await panel(page).locator('summary').click();
    await page.getByLabel('Result to fix').waitFor();
    expect(asked.filter((address) => /turn-panel/.test(address)).length).toBeGreaterThan(0);
    await page.context().close();
  });

  test('a front bore for 900 psi: in both systems, with the standard bores, and typed by a press', async () => {
    const page = await open('line-pressure');
    await ask(page, 'front line pressure', '900', 'front master cylinder bore');
    await expect.poll(() => answer(page).textContent()).toMatch(/front master cylinder bore 0\.64499\sin \(16\.38\smm\): front line pressure 900\spsi/);
    expect(await answer(page).textContent()).toMatch(/standard bores on either side:.*5\/8\sin \(15\.88\smm\).*0\.70\sin/s);
    await answer(page).getByRole('button', { name: /^Use it: 0\.64499/ }).click();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/is in its field now/);
    await expect.poll(() => page.locator('.answer output').textContent()).toMatch(/^900\spsi$/);
    expect(await page.locator('[id="line-pressure-frontMasterBore"]').inputValue()).toMatch(/^0\.64499$/);
    await expect.poll(() => answer(page).textContent()).toMatch(/yours now/);
    await page.context().close();
  });

  test('the target takes other units and refuses what it cannot read, at its field', async () => {
    const page = await open('line-pressure');
    await ask(page, 'front line pressure', '60 bar', 'control force (foot on the pedal)');
    await expect.poll(() => answer(page).textContent()).toMatch(/lbf \(\d+(\.\d+)?\sN\): front line pressure 870\.2\spsi/);
    await panel(page).locator('input').fill('6,000');
    expect(await panel(page).locator('.field.wrong').count()).toBe(1);
    await expect.poll(() => answer(page).textContent()).toMatch(/^Type above/);
    await page.context().close();
  });

  test('no answer stands there once a number has changed, until it is found anew', async () => {
    const page = await open('line-pressure');
    await ask(page, 'front line pressure', '900', 'control force (foot on the pedal)');
    await expect.poll(() => answer(page).textContent()).toMatch(/900\spsi/);
    const before = await answer(page).textContent();
    await page.locator('[id="line-pressure-pedalRatio"]').fill('5');
    expect(await answer(page).textContent()).toBe('Looking for it …');
    await expect.poll(() => answer(page).textContent()).toMatch(/900\spsi/);
    expect(await answer(page).textContent()).not.toBe(before);
    await page.locator('[id="line-pressure-pedalRatio"]').fill('five');
    await expect.poll(() => answer(page).textContent()).toBe('First put the fields above right.');
    await page.context().close();
  });

  test('what cannot be reached gives the nearest, and what moves nothing says so', async () => {
    const page = await open('lock-order');
    await ask(page, 'critical braking rate, empty', '5', 'front share of the rod force');
    await expect.poll(() => answer(page).textContent()).toMatch(/No value in the possible range.*The nearest:/s);
    await page.getByLabel('Input to find').selectOption({ label: 'grip of tire on road' });
    await expect.poll(() => answer(page).textContent()).toMatch(/grip of tire on road does not move/);
    await page.context().close();
  });

  test('a dangerous answer carries its caution', async () => {
    const page = await open('lock-order');
    await ask(page, 'critical braking rate, empty', '0.6', 'front share of the rod force');
    await expect.poll(() => answer(page).textContent()).toMatch(/DANGER.*rear locks first/s);
    await page.context().close();
  });

  test('in millimeters and newtons too, and after the systems are switched', async () => {
    const page = await open('line-pressure');
    await ask(page, 'front line pressure', '900', 'front master cylinder bore');
    await expect.poll(() => answer(page).textContent()).toMatch(/0\.64499/);
    await page.getByRole('button', { name: 'mm · N' }).click();
    await expect.poll(() => panel(page).locator('input').inputValue()).toBe('62.0528');
    await expect.poll(() => answer(page).textContent()).toMatch(/16\.38\d?\smm \(0\.645\d*\sin\): front line pressure 62\.05\sbar/);
    await page.context().close();
  });

  test('open, it is no wider than a narrow phone, large enough for a thumb, and worked by keys alone', async () => {
    const page = await open('circuit-failure', { viewport: { width: 320, height: 700 } });
    await panel(page).locator('summary').focus();
    await page.keyboard.press('Enter');
    await page.getByLabel('Result to fix').waitFor();
    for (let k = 0; k < 2; k++) await page.keyboard.press('Tab');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('0.25');
    await expect.poll(() => answer(page).getByRole('button').first().isVisible()).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    for (const box of await panel(page).locator('button, select, input, summary').evaluateAll((all) => all.map((e) => e.getBoundingClientRect().height))) expect(box).toBeGreaterThanOrEqual(43.5);
    await page.context().close();
  });

  test('the question stays out of the address', async () => {
    const page = await open('line-pressure');
    await ask(page, 'front line pressure', '900', 'front master cylinder bore');
    await expect.poll(() => answer(page).textContent()).toMatch(/0\.64499/);
    await page.waitForTimeout(600);
    expect(new URL(page.url()).search).toBe('');
    await page.context().close();
  });
});
