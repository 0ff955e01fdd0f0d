import { expect, test } from 'vitest';
import links from '../golden/links.json' with { type: 'json' };
import { openSite } from './open.ts';

const site = openSite();

test('what the gauges say goes into the truck with one press, says that it replaces, and can be undone', async () => {
  const page = await site.page({ viewport: { width: 390, height: 844 } });
  await page.goto(`${site.origin()}/calculators/gauge-fit/`);
  await page.waitForSelector('[data-live=yes] .carries');
  await page.getByRole('button', { name: /Use as mine: front share/ }).click();
  await page.getByRole('button', { name: /Use as mine: linkage efficiency/ }).click();
  expect(await page.locator('.carries .used').innerText()).toMatch(/linkage efficiency: 84\.\d\d\s?% is in its field now/);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);

  await page.goto(`${site.origin()}/calculators/line-pressure/`);
  await page.waitForSelector('[data-live=yes]');
  expect(await page.locator('[id="line-pressure-linkageEfficiency"]').inputValue()).toMatch(/^84\./);
  const field = page.locator('.field', { has: page.locator('[id="line-pressure-frontShare"]') });
  expect(await field.locator('input').inputValue()).toMatch(/^61\./);
  expect(await field.locator('.echo').innerText()).toMatch(/^replaces the computed one/);
  await field.locator('input').focus();
  await field.getByRole('button', { name: /undo mine/ }).click();
  expect(await field.locator('input').inputValue()).toBe('62');
  expect(await field.locator('.echo').innerText()).toMatch(/^computed/);

  await page.goto(`${site.origin()}/calculators/gauge-fit/`);
  await page.waitForSelector('[data-live=yes] .carries');
  await page.getByRole('button', { name: 'Undo: linkage efficiency' }).click();
  await page.goto(`${site.origin()}/calculators/line-pressure/`);
  await page.waitForSelector('[data-live=yes]');
  expect(await page.locator('[id="line-pressure-linkageEfficiency"]').inputValue()).toBe('85');
  await page.context().close();
});

test('numbers of a link are somebody else’s truck: they are not carried over', async () => {
  const page = await site.page();
  await page.goto(`${site.origin()}/calculators/gauge-fit/${links.find(({ calculator }) => calculator === 'gauge-fit')?.query}#gauge-fit`);
  await page.waitForSelector('[data-live=yes] .link-note');
  expect(await page.locator('.carries').innerText()).toMatch(/keep them as yours first/);
  expect(await page.locator('.carries button').count()).toBe(0);
  await page.context().close();
});

test('the lists to tick show the demo truck’s numbers, then the reader’s, and what is still not his', async () => {
  const page = await site.page();
  await page.goto(`${site.origin()}/sheets/first-drive/`);
  const front = page.locator('#standing [data-number^="braking-rate:frontPressure | controlForce = 50"]');
  const before = await front.innerText();
  const valve = page.locator('#standing [data-if="rearValve=fitted"]');
  expect(await valve.isVisible()).toBe(false);
  expect(await page.locator('#standing [data-whose]').innerText()).toMatch(/demo truck/);
  await page.evaluate(() => localStorage.setItem('build', JSON.stringify({ schema: 1, values: { pedalRatio: { text: '3.1', unit: '', system: 'us' }, rearValve: { text: 'fitted', unit: '', system: 'us' } } })));
  await page.reload();
  await expect.poll(() => page.locator('#standing [data-whose]').innerText(), { timeout: 20_000 }).toMatch(/what you have typed/);
  // Half the ratio, half the pressure.
  expect(parseFloat(await front.innerText()) / parseFloat(before)).toBeCloseTo(0.5, 2);
  await expect.poll(() => valve.isVisible()).toBe(true);
  expect(await page.locator('#again [data-if="parkingKind=caliper"]').isVisible()).toBe(true);
  expect(await page.locator('#again [data-if="parkingKind=shoe"]').isVisible()).toBe(false);
  await expect.poll(() => page.locator('#standing [data-whose]').innerText()).toMatch(/still the demo truck’s, and so not yours: .*linkage efficiency/);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('header.site, footer.site, [data-print]').evaluateAll((all) => all.filter((e) => e.checkVisibility()).length)).toBe(0);
  await page.context().close();
});
