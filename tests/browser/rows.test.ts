import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openSite } from './open.ts';

const site = openSite();

async function open(path = '/calculators/drop-points/', options: BrowserContextOptions = {}): Promise<Page> {
  const page = await site.page({ viewport: { width: 390, height: 844 }, permissions: ['clipboard-read', 'clipboard-write'], ...options });
  page.on('pageerror', (error) => { throw error; });
  await page.goto(site.origin() + path);
  if (options.javaScriptEnabled !== false) await page.waitForSelector('[data-live=yes]');
  return page;
}

const answer = (page: Page) => page.locator('.answer output').first();
const list = (page: Page, key = 'truckPoints') => page.locator(`[data-rows=${key}]`);
const cell = (page: Page, row: number, column: string, key = 'truckPoints') => page.locator(`[id="drop-points-${key}-${row - 1}-${column}"]`);
const rowCount = (page: Page, key = 'truckPoints') => list(page, key).locator('tr[data-row]').count();

describe('a list', () => {
  test('without scripts shows the demo truck’s rows', async () => {
    const page = await open('/calculators/drop-points/', { javaScriptEnabled: false });
    expect(await rowCount(page)).toBe(14);
    expect(await cell(page, 10, 'z').inputValue()).toBe('27-1/2');
    await page.context().close();
  });

  test('has a name and a row for every field, at 390 px and at 1280', async () => {
    for (const width of [390, 1280]) {
      const page = await open(undefined, { viewport: { width, height: 900 } });
      const field = page.getByLabel('z, up, in, row 10', { exact: true });
      expect(await field.inputValue()).toBe('27-1/2');
      expect(await field.isVisible()).toBe(true);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      await page.context().close();
    }
  });

  test('changes the result as a cell is typed, and keeps a unit typed in it', async () => {
    const page = await open();
    const before = await answer(page).textContent();
    await cell(page, 10, 'z').fill('500 mm');
    await expect.poll(() => answer(page).textContent()).toBe(before); // a gap straight up loses the drop, wherever it begins
    await cell(page, 9, 'on').selectOption('frame');
    await expect.poll(() => answer(page).textContent()).not.toBe(before);
    expect(await cell(page, 10, 'z').inputValue()).toBe('500 mm');
    await cell(page, 10, 'z').focus();
    await expect.poll(() => list(page).locator('[id="drop-points-truckPoints-9-said"]').textContent()).toMatch(/500\smm = 19\.69\sin.*Tape up/);
    await page.context().close();
  });

  test('keeps both of two changes that come before the page is drawn again', async () => {
    const page = await open();
    await page.evaluate(() => {
      for (const [id, text] of [['0-x', '-21'], ['1-y', '18']]) {
        const input = document.getElementById(`drop-points-truckPoints-${id}`) as HTMLInputElement;
        input.value = text as string;
        input.dispatchEvent(new Event('input', { bubbles: true }));
      }
    });
    await expect.poll(() => cell(page, 2, 'y').inputValue()).toBe('18');
    await expect.poll(() => page.evaluate(() => JSON.parse(localStorage.getItem('build') ?? '{}').values.truckPoints.text.slice(0, 57))).toBe('column end_body_-21_14_24,steering box_frame_2_18_9,front');
    await page.context().close();
  });

  test('names row and column of what cannot be read, blanks the result and keeps what was typed', async () => {
    const page = await open();
    await cell(page, 3, 'x').fill('3,000');
    await expect.poll(() => answer(page).textContent()).toBe('–');
    expect(await list(page).locator('> .echo').textContent()).toMatch(/^Row 3, x, forward: 3,000 can mean/);
    expect(await cell(page, 3, 'x').getAttribute('aria-invalid')).toBe('true');
    expect(await cell(page, 3, 'x').inputValue()).toBe('3,000');
    await cell(page, 3, 'x').fill('');
    await expect.poll(() => list(page).locator('> .echo').textContent()).toMatch(/Row 3 still lacks x, forward/);
    await page.context().close();
  });

  test('is lengthened, shortened, and given back what was removed', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Add a pair' }).click();
    await expect.poll(() => rowCount(page, 'pointPairs')).toBe(8);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('drop-points-pointPairs-7-from');
    expect(await answer(page).textContent()).toMatch(/in$/); // an empty row does not count
    await page.getByRole('button', { name: 'remove row 6, hood' }).click();
    await expect.poll(() => rowCount(page, 'pointPairs')).toBe(7);
    const without = await answer(page).textContent();
    await page.getByRole('button', { name: 'Undo that' }).click();
    await expect.poll(() => rowCount(page, 'pointPairs')).toBe(8);
    expect(await answer(page).textContent()).not.toBe(without);
    await page.context().close();
  });

  test('takes the pairs along when a point is given another name', async () => {
    const page = await open();
    await cell(page, 9, 'name').fill('hood skin');
    await cell(page, 9, 'name').blur();
    await expect.poll(() => cell(page, 6, 'from', 'pointPairs').inputValue()).toBe('hood skin');
    await expect.poll(() => answer(page).textContent()).toMatch(/in$/);
    await page.context().close();
  });

  test('means the same after a change of units, there and back, and after a reload', async () => {
    const page = await open();
    await cell(page, 1, 'x').fill('-20-1/2');
    const inches = await answer(page).textContent();
    await page.locator('[data-units] button[value=si]').click();
    await expect.poll(() => cell(page, 1, 'x').inputValue()).toBe('-520.7');
    await page.reload();
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => cell(page, 1, 'x').inputValue()).toBe('-520.7');
    await cell(page, 2, 'y').fill('431.8');
    await page.locator('[data-units] button[value=us]').click();
    await expect.poll(() => cell(page, 1, 'x').inputValue()).toBe('-20.5'); // above 4 in, halves stay decimal
    expect(await answer(page).textContent()).toBe(inches);
    await page.context().close();
  });

  test('travels in a link, which leaves the reader’s own list alone', async () => {
    const page = await open();
    await cell(page, 10, 'z').fill('29');
    await page.getByRole('button', { name: 'Copy link' }).click();
    await page.locator('.share span').filter({ hasText: 'copied' }).waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    const other = await open(new URL(link).pathname + new URL(link).search + new URL(link).hash);
    await expect.poll(() => cell(other, 10, 'z').inputValue()).toBe('29');
    expect(await answer(other).textContent()).toBe(await answer(page).textContent());
    await other.getByRole('button', { name: 'Show mine' }).click();
    await expect.poll(() => cell(other, 10, 'z').inputValue()).toBe('27-1/2');
    await page.context().close();
    await other.context().close();
  });

  test('goes to a spreadsheet and comes back, and a bad paste changes nothing', async () => {
    const page = await open();
    const panel = list(page).locator('.csv');
    await panel.locator('summary').click();
    await panel.getByRole('button', { name: 'Copy as CSV' }).click();
    await panel.locator('[role=status]').filter({ hasText: 'copied' }).waitFor();
    const csv = await page.evaluate(() => navigator.clipboard.readText());
    expect(csv.split('\r\n')[1]).toBe('column end,body,-20,14,24');
    await panel.locator('textarea').fill(csv.replace('engine top,frame,-4,2,27.5', 'engine top,frame,-4,2,30'));
    await panel.getByRole('button', { name: 'Read the box' }).click();
    await expect.poll(() => cell(page, 10, 'z').inputValue()).toBe('30');
    await panel.locator('textarea').fill('name,on\n1,2');
    await panel.getByRole('button', { name: 'Read the box' }).click();
    await expect.poll(() => panel.locator('.notes').textContent()).toMatch(/Line 1: the column x, forward is missing/);
    expect(await cell(page, 10, 'z').inputValue()).toBe('30');
    await list(page).getByRole('button', { name: 'Undo that' }).click();
    await expect.poll(() => cell(page, 10, 'z').inputValue()).toBe('27-1/2');
    await page.context().close();
  });

  test('of 2,000 pasted rows none is read, in words and at once, and list and box stay as they were', async () => {
    const page = await open();
    const panel = list(page).locator('.csv');
    await panel.locator('summary').click();
    const pasted = ['name,on,x,y,z', ...Array.from({ length: 2000 }, (_, k) => `p${k},body,${k},1,2`)].join('\n');
    await page.evaluate((text) => navigator.clipboard.writeText(text), pasted);
    await panel.locator('textarea').focus();
    await page.keyboard.press('Control+V');
    await panel.getByRole('button', { name: 'Read the box' }).click();
    await expect.poll(() => panel.locator('.notes').textContent()).toMatch(/2000 rows in it, and points of the truck can be 40 at most: none was read/);
    expect(await panel.locator('textarea').inputValue()).toBe(pasted);
    expect(await rowCount(page)).toBe(14);
    expect(await answer(page).textContent()).toMatch(/in$/);
    await page.context().close();
  });

  test('typed into before its script has come keeps what was typed, in inches for a reader of millimeters too', async () => {
    for (const system of ['us', 'si']) {
      const page = await site.page({ viewport: { width: 390, height: 844 } });
      await page.addInitScript((value) => localStorage.setItem('unit-system', value), system);
      let free = (): void => undefined;
      const held = new Promise<void>((go) => { free = go; });
      await page.route(/live.*\.js$/, async (route) => { await held; await route.continue(); });
      await page.goto(`${site.origin()}/calculators/drop-points/`);
      await cell(page, 1, 'x').fill('-30');
      free();
      await page.waitForSelector('[data-live=yes]');
      await expect.poll(() => cell(page, 1, 'x').inputValue()).toMatch(system === 'us' ? /^-30$/ : /^-30 in$|^-762$/);
      await page.context().close();
    }
  });

  test('prints as a table', async () => {
    const page = await open();
    await page.setViewportSize({ width: 720, height: 900 });
    await page.emulateMedia({ media: 'print' });
    expect(await list(page).locator('table').evaluate((e) => getComputedStyle(e).display)).toBe('table');
    expect(await list(page).locator('.csv').isVisible()).toBe(false);
    expect(await cell(page, 10, 'z').isVisible()).toBe(true);
    await page.context().close();
  });
});
