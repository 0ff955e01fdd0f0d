import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openSite } from './open.ts';
import { wakeAll } from './wake.ts';

const site = openSite();
const path = '/calculators/lock-order/';
const field = (page: Page, key: string) => page.locator(`#lock-order-${key}`);
const answer = (page: Page) => page.locator('.answer output').first();

async function awake(page: Page): Promise<void> {
  await page.goto(site.origin() + path);
  await page.waitForSelector('[data-live=yes]');
}

test('two tabs of one browser show one truck, in one system of units', async () => {
  const first = await site.page({ viewport: { width: 390, height: 844 } });
  const second = await first.context().newPage();
  for (const page of [first, second]) await awake(page);
  const demo = await answer(second).textContent();
  await field(first, 'frontAxleLoad').fill('1500');
  await expect.poll(() => field(second, 'frontAxleLoad').inputValue()).toBe('1500');
  await expect.poll(() => answer(second).textContent()).not.toBe(demo);
  await field(second, 'wheelbase').fill('100');
  await expect.poll(() => field(first, 'wheelbase').inputValue()).toBe('100');
  expect(await field(first, 'frontAxleLoad').inputValue()).toBe('1500');
  await first.getByRole('button', { name: 'mm · N' }).click();
  await expect.poll(() => field(second, 'wheelbase').inputValue()).toBe('2540');
  expect(await answer(second).textContent()).toBe(await answer(first).textContent());
  await first.context().close();
});

test('a number left half typed is still half typed, and without a result, after a reload, Back and Forward', async () => {
  const page = await site.page({ viewport: { width: 390, height: 844 } });
  await awake(page);
  await field(page, 'wheelbase').fill('100 1/');
  await expect.poll(() => answer(page).textContent()).toBe('–');
  const still = async (): Promise<void> => {
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => field(page, 'wheelbase').inputValue()).toBe('100 1/');
    await expect.poll(() => answer(page).textContent()).toBe('–');
  };
  await page.reload();
  await still();
  await page.goto(`${site.origin()}/guides/bias/`);
  await page.goBack();
  await still();
  await page.goForward();
  await page.goBack();
  await still();
  await page.context().close();
});

test('a network lost while a page is open leaves no number that is not the reader’s, and says so', async () => {
  const page = await site.page({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
  await page.goto(`${site.origin()}/guides/bias/`);
  await page.context().setOffline(true);
  await page.evaluate(() => document.querySelector('[data-calculator]')?.dispatchEvent(new Event('pointerenter')));
  await page.evaluate(() => { for (const fold of document.querySelectorAll('details')) fold.open = true; });
  await page.locator('.entry input').first().fill('2');
  await expect.poll(() => page.getByText('could not be loaded, so nothing here is computed from your numbers').first().isVisible()).toBe(true);
  await expect.poll(() => answer(page).textContent()).toBe('–');
  await page.context().close();
});

test('a page that lost the network once its calculators live goes on computing', async () => {
  const page = await site.page({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
  await awake(page);
  await wakeAll(page);
  await page.context().setOffline(true);
  const before = await answer(page).textContent();
  await field(page, 'wheelbase').fill('90');
  await expect.poll(() => answer(page).textContent()).not.toBe(before);
  expect(await answer(page).textContent()).toMatch(/g$/);
  await page.locator('.turn-round summary').click();
  await expect.poll(() => page.locator('.turn-round').textContent()).toMatch(/could not be loaded|Result to fix/);
  await page.context().close();
});
