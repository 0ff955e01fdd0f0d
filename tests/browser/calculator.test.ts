import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openSite } from './open.ts';
import { wakeAll } from './wake.ts';

const site = openSite();

async function open(path: string, options: BrowserContextOptions = {}): Promise<Page> {
  const page = await site.page({ viewport: { width: 390, height: 844 }, permissions: ['clipboard-read', 'clipboard-write'], ...options });
  page.on('pageerror', (error) => { throw error; });
  await page.goto(site.origin() + path);
  if (options.javaScriptEnabled !== false) await page.waitForSelector('[data-live=yes]');
  return page;
}

const pressure = '/calculators/line-pressure/';
const field = (page: Page, key: string) => page.locator(`[id="line-pressure-${key}"]`);
const echo = (page: Page, key: string) => page.locator(`[id="line-pressure-${key}-echo"]`);
const answer = (page: Page) => page.locator('.answer output').first();

describe('typing', () => {
  test.each([
    ['13/16', '13/16 in = 20.64 mm'], ['1-1/16"', '1-1/16 in = 26.99 mm'], ['1 1/16', '1-1/16 in = 26.99 mm'], ['22.2 mm', '22.2 mm = 0.874 in'], ['0,875', '0.875 in = 22.23 mm'], ['⅞', '7/8 in = 22.23 mm'],
  ])('%s in an inch field is understood as %s', async (text, understood) => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').fill(text);
    await expect.poll(() => echo(page, 'frontMasterBore').textContent()).toMatch(new RegExp(understood.replace(/ /g, '\\s').replace(/[.+*?^$()[\]{}|\\/]/g, (c) => (c === '\\' ? c : `\\${c}`)).replace(/\\\\s/g, '\\s')));
    expect(await answer(page).textContent()).toMatch(/^\d+\spsi$/);
    await page.context().close();
  });

  test.each([['3,000', /three thousand|3000/], ['', /type/i], ['12 psi', /pressure/], ['7/', /./], ['-1', /./], ['1e9', /./], ['<script>alert(1)</script>', /./]])('%s blanks the result, names the fix and keeps what was typed', async (text, fix) => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').fill(text);
    await expect.poll(() => answer(page).textContent()).toBe('–');
    expect(await echo(page, 'frontMasterBore').textContent()).toMatch(fix);
    expect(await field(page, 'frontMasterBore').inputValue()).toBe(text);
    expect(await field(page, 'frontMasterBore').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.results dl').count()).toBe(0);
    expect(await page.locator('main').textContent()).not.toMatch(/NaN|Infinity|undefined/);
    await field(page, 'frontMasterBore').fill('3/4');
    await expect.poll(() => answer(page).textContent()).toMatch(/psi/);
    await page.context().close();
  });

  test('a value outside the usual range is computed, with a note', async () => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').fill('1-1/8');
    await expect.poll(() => echo(page, 'frontMasterBore').textContent()).toMatch(/Outside the usual/);
    expect(await answer(page).textContent()).toMatch(/psi/);
    await page.context().close();
  });

  test.each([390, 1280])('slowly, at %i px, moves neither the text nor the field under the fingers', async (width) => {
    const page = await open(pressure, { viewport: { width, height: 844 } });
    for (const [key, text, left] of [['frontMasterBore', '1-1/8', '1-1/8'], ['frontMasterBore', '22.2 mm', '22.2'], ['frontShare', '62 %', '62'], ['controlForce', '1,000', '1,000']] as const) {
      const input = field(page, key);
      await input.focus();
      await expect.poll(() => page.locator('.help').first().textContent()).toMatch(/\w{4}/);
      await page.keyboard.press('Control+A');
      const top = await input.evaluate((e) => e.getBoundingClientRect().top);
      let typed = '';
      for (const letter of text) {
        await page.keyboard.type(letter);
        typed += letter;
        await page.waitForTimeout(50);
        const now = await input.evaluate((e: HTMLInputElement) => ({ text: e.value, caret: e.selectionStart, top: e.getBoundingClientRect().top }));
        expect([now.text, now.caret]).toEqual([typed, typed.length]);
        expect(Math.abs(now.top - top), typed).toBeLessThan(2);
      }
      await input.blur();
      await expect.poll(() => input.inputValue()).toBe(left);
    }
    await page.context().close();
  });

  test('steps of a sixteenth and the standard bores need no slash key', async () => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').fill('3/4');
    await page.getByRole('button', { name: '+ 1/16 in: front master cylinder bore' }).click();
    expect(await field(page, 'frontMasterBore').inputValue()).toBe('13/16');
    const bores = page.getByLabel('standard bores for front master cylinder bore');
    expect(await bores.inputValue()).toBe('13/16');
    await bores.selectOption('5/8');
    expect(await field(page, 'frontMasterBore').inputValue()).toBe('5/8');
    await field(page, 'frontMasterBore').fill('0.68');
    await expect.poll(() => bores.inputValue()).toBe('');
    await bores.selectOption('5/8');
    expect(await field(page, 'frontMasterBore').inputValue()).toBe('5/8');
    expect(await echo(page, 'frontMasterBore').textContent()).toMatch(/15\.88/);
    await page.context().close();
  });

  test('a unit typed in the field becomes the field’s unit when it is left, and the button shows the other', async () => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').fill('20 mm');
    await field(page, 'frontMasterBore').blur();
    await expect.poll(() => field(page, 'frontMasterBore').inputValue()).toBe('20');
    const unit = page.locator('.field', { has: field(page, 'frontMasterBore') }).locator('button.unit');
    expect(await unit.textContent()).toBe('mm');
    await unit.click();
    expect(await unit.textContent()).toBe('in');
    expect(await field(page, 'frontMasterBore').inputValue()).toBe('0.787401575');
    await page.context().close();
  });

  test('help says how to measure once a field is touched', async () => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').focus();
    await expect.poll(() => page.locator('.help').textContent()).toMatch(/calipers/);
    await page.context().close();
  });
});

describe('the unit system', () => {
  test('switches every field and result, is remembered, and changes no truck', async () => {
    const page = await open(pressure);
    await field(page, 'frontMasterBore').fill('13/16');
    const before = await answer(page).textContent();
    await page.getByRole('button', { name: 'mm · N' }).click();
    await expect.poll(() => field(page, 'frontMasterBore').inputValue()).toBe('20.6375');
    expect(await answer(page).textContent()).toMatch(/bar$/);
    await page.reload();
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => answer(page).textContent()).toMatch(/bar$/);
    await page.getByRole('button', { name: 'in · lbf' }).click();
    await expect.poll(() => answer(page).textContent()).toBe(before);
    expect(await field(page, 'frontMasterBore').inputValue()).toBe('13/16');
    await page.context().close();
  });
});

describe('one truck', () => {
  test('a value typed on one page stands on the next, and on every calculator of a page', async () => {
    const page = await open(pressure);
    await field(page, 'controlForce').fill('70');
    await page.goto(`${site.origin()}/calculators/balance-bar/`);
    await expect.poll(() => page.locator('[id="balance-bar-controlForce"]').inputValue()).toBe('70');
    await page.goto(`${site.origin()}/truck/`);
    await expect.poll(() => page.locator('table').textContent()).toMatch(/control force/);
    await page.getByRole('button', { name: 'Forget all of mine' }).click();
    await expect.poll(() => page.locator('main').textContent()).toMatch(/Nothing typed yet/);
    await page.getByRole('button', { name: 'Bring mine back' }).click();
    await expect.poll(() => page.locator('table').textContent()).toMatch(/control force.*70\slbf/);
    await page.getByRole('button', { name: 'Forget all of mine' }).click();
    await page.goto(site.origin() + pressure);
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('90');
    await page.context().close();
  });

  test('reaches a calculator farther down that nobody has touched', async () => {
    const page = await site.page({ viewport: { width: 390, height: 844 } });
    await page.goto(`${site.origin()}/guides/firewall/`);
    const answer = page.locator('#firewall-brace .answer output');
    const before = await answer.textContent();
    const field = page.locator('#firewall-plate-panicForce');
    await page.locator('#firewall-plate summary').first().click();
    await field.fill('300');
    await page.locator('#firewall-brace').scrollIntoViewIfNeeded();
    await page.waitForFunction((was) => document.querySelector('#firewall-brace .answer output')?.textContent !== was, before);
    expect(await page.locator('#firewall-brace-panicForce').inputValue()).toBe('300');
    await page.context().close();
  });

  test('survives a storage that somebody else has written into', async () => {
    const page = await open(pressure);
    await page.evaluate(() => localStorage.setItem('build', '{"schema":1,"values":{"controlForce":{"text":5},"x":'));
    await page.reload();
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('90');
    await page.context().close();
  });

  test('goes to a file and comes back on another device', async () => {
    const page = await open(pressure);
    await field(page, 'controlForce').fill('71');
    await page.goto(`${site.origin()}/truck/`);
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save to a file' }).click()]);
    const path = await download.path();
    const other = await open('/truck/'.replace('/truck/', pressure));
    await other.goto(`${site.origin()}/truck/`);
    await other.locator('input[type=file]').setInputFiles(path);
    await expect.poll(() => other.locator('[role=status]').textContent()).toMatch(/^1 value read from/);
    await other.goto(site.origin() + pressure);
    await expect.poll(() => field(other, 'controlForce').inputValue()).toBe('71');
    await page.context().close();
    await other.context().close();
  });
});

test.each([
  ['full', 'Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };'],
  ['blocked', 'Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } });'],
])('with %s storage the page works and says that it keeps nothing, where numbers are typed and on the truck’s page', async (_kind, script) => {
  const page = await site.page({ viewport: { width: 390, height: 844 } });
  await page.addInitScript(script);
  await page.goto(site.origin() + pressure);
  await page.waitForSelector('[data-live=yes]');
  expect(await page.locator('main').textContent()).not.toMatch(/keeps nothing/);
  const before = await answer(page).textContent();
  await field(page, 'controlForce').fill('60');
  await expect.poll(() => answer(page).textContent()).not.toBe(before);
  expect(await page.locator('.link-note').textContent()).toMatch(/keeps nothing for this page/);
  await page.goto(`${site.origin()}/truck/`);
  await expect.poll(() => page.locator('.lead').textContent()).toMatch(/keeps nothing for this site/);
  expect(await page.locator('main').textContent()).not.toMatch(/kept on this device/);
  await page.context().close();
});

describe('links', () => {
  const query = '?v=1&control-force=100lbf&pedal-ratio=6&linkage-efficiency=85%25&front-share=60%25&front-master-bore=3/4in&rear-master-bore=3/4in&master-spring=0lbf';

  test('open with the sender’s numbers, say so, and leave the reader’s build alone', async () => {
    const page = await open(pressure);
    await field(page, 'controlForce').fill('55');
    await page.goto(`${site.origin()}${pressure}${query}#line-pressure`);
    await expect.poll(() => answer(page).textContent()).toMatch(/^693/);
    expect(await page.locator('.link-note').textContent()).toMatch(/not yours/);
    await page.getByRole('button', { name: 'Show mine' }).click();
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('55');
    await page.context().close();
  });

  test('take back what was typed over them to their own number, in the address too, and keep the focus there', async () => {
    const page = await open(pressure);
    await field(page, 'controlForce').fill('55');
    await page.goto(`${site.origin()}${pressure}${query}#line-pressure`);
    await expect.poll(() => answer(page).textContent()).toMatch(/^693/);
    await field(page, 'controlForce').focus();
    expect(await page.locator('.help button', { hasText: /back|undo/ }).count()).toBe(0);
    await field(page, 'controlForce').fill('120');
    await expect.poll(() => page.url()).toContain('control-force=120lbf');
    await page.getByRole('button', { name: 'back to the link’s: control force' }).click();
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('100');
    expect(await answer(page).textContent()).toMatch(/^693/);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('line-pressure-controlForce');
    await expect.poll(() => page.url()).toContain('control-force=100lbf');
    await page.getByRole('button', { name: 'Show mine' }).click();
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('55');
    await field(page, 'controlForce').focus();
    await page.getByRole('button', { name: 'undo mine: control force' }).click();
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('90');
    await page.context().close();
  });

  test('on a guide scroll to their calculator and can be kept', async () => {
    const page = await open(`/guides/manual-or-boosted/${query}#line-pressure`);
    await expect.poll(() => page.evaluate(() => Math.abs(document.getElementById('line-pressure')!.getBoundingClientRect().top))).toBeLessThan(200);
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('100');
    await page.getByRole('button', { name: 'Keep these as mine' }).click();
    await page.goto(`${site.origin()}${pressure}`);
    await expect.poll(() => answer(page).textContent()).toMatch(/^693/);
    await page.context().close();
  });

  test('that lost their fragment still find their calculator', async () => {
    const page = await open(`/guides/manual-or-boosted/${query}`);
    await expect.poll(() => page.locator('#line-pressure .answer output').textContent()).toMatch(/^693/);
    await page.context().close();
  });

  test('copied from one device compute the same on another, and the address keeps what is foreign', async () => {
    const page = await open(`${pressure}?from=thread`);
    await field(page, 'frontMasterBore').fill('15/16');
    const mine = await answer(page).textContent();
    await expect.poll(() => page.url()).toMatch(/front-master-bore=15\/16in.*from=thread#line-pressure/);
    await page.getByRole('button', { name: 'Copy link' }).click();
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toContain('front-master-bore=15/16in');
    const link = await page.evaluate(() => navigator.clipboard.readText());
    const told = page.locator('.share [role=status]');
    expect(await told.textContent()).toBe('Link copied.');
    await field(page, 'frontMasterBore').fill('7/8');
    await expect.poll(() => told.textContent()).toBe('');
    await page.evaluate(() => { navigator.clipboard.writeText = () => Promise.reject(new Error('no')); });
    await page.getByRole('button', { name: 'Copy link' }).click();
    await expect.poll(() => page.locator('.share textarea').inputValue()).toContain('front-master-bore=7/8in');
    await field(page, 'frontMasterBore').fill('15/16');
    await expect.poll(() => page.locator('.share textarea').count()).toBe(0);
    await page.evaluate(() => { delete (navigator.clipboard as { writeText?: unknown }).writeText; });
    const other = await open(link.slice(site.origin().length));
    await expect.poll(() => answer(other).textContent()).toBe(mine);
    await page.getByRole('button', { name: 'Copy as text' }).click();
    await expect.poll(() => page.evaluate(() => navigator.clipboard.readText())).toMatch(/^Line pressure\n[\s\S]*15\/16 in = 23\.81 mm[\s\S]*NOTICE[\s\S]*https?:/);
    await page.context().close();
    await other.context().close();
  });

  test.each([
    ['broken', query.replace('3/4in', '3/in')], ['missing', query.replace('&pedal-ratio=6', '')], ['given twice', `${query}&pedal-ratio=9`],
    ['hostile', query.replace('100lbf', encodeURIComponent('"><img src=x onerror=alert(1)>'))], ['very long', query.replace('100lbf', '9'.repeat(10_000))], ['wrong in kind', query.replace('100lbf', '100psi')],
  ])('%s: an error at the field, never a number', async (_kind, text) => {
    const page = await open(`${pressure}${text}#line-pressure`);
    await expect.poll(() => answer(page).textContent()).toBe('–');
    expect(await page.locator('.field.wrong').count()).toBe(1);
    expect(await page.locator('main img').count()).toBe(0);
    await page.context().close();
  });
});

test('a link value beyond what is possible says why at once, without the help', async () => {
  const page = await site.page();
  await page.route('**/help.json', (route) => route.abort());
  await page.goto(`${site.origin()}${pressure}?v=1&control-force=100lbf&pedal-ratio=6&linkage-efficiency=85%25&front-share=60%25&front-master-bore=3in&rear-master-bore=1-1/8in&master-spring=0lbf#line-pressure`);
  await expect.poll(() => answer(page).textContent()).toBe('–');
  expect(await echo(page, 'frontMasterBore').textContent()).toMatch(/between 12 and 30 mm/);
  expect(await echo(page, 'rearMasterBore').textContent()).toMatch(/Outside the usual .* \(.+\)\./);
  await page.context().close();
});

test('a wrong number in another calculator is named once, with the way to its field', async () => {
  const page = await open('/calculators/disc-torque/');
  await page.locator('[id="disc-torque-frontPadFriction"]').fill('0,4,4');
  await page.goto(`${site.origin()}/calculators/adhesion/`);
  await expect.poll(() => page.locator('.results .blank').textContent()).toMatch(/^No result until front brake pad friction in “[^”]*” is put right: 0,4,4 .*\. Put it right$/);
  await page.locator('.results .blank a').click();
  await page.waitForURL(/calculators\/disc-torque\/#disc-torque-frontPadFriction$/);
  await page.locator('[id="disc-torque-frontPadFriction"]').fill('0.4');
  // Where the field stands on the same page, also in a folded form, the way leads there.
  await page.goto(`${site.origin()}/guides/bias/`);
  await wakeAll(page);
  await page.locator('#balance-bar summary').first().click();
  await page.locator('[id="balance-bar-frontMasterBore"]').fill('3,000');
  await page.locator('#balance-bar summary').first().click();
  const way = page.locator('#ideal-distribution .results .blank a');
  const target = page.locator(`[id="${(await way.getAttribute('href'))!.slice(1)}"]`);
  expect(await target.inputValue()).toBe('3,000');
  await way.click();
  await expect.poll(() => target.evaluate((e) => { const box = e.getBoundingClientRect(); return document.activeElement === e && box.top > 0 && box.bottom < innerHeight; })).toBe(true);
  await page.context().close();
});

test('a danger in another calculator is said at the field it feeds and beside the answer, with the way to it', async () => {
  const page = await open('/calculators/balance-bar/');
  await page.locator('[id="balance-bar-barStopAngle"]').fill('9');
  await page.goto(`${site.origin()}/calculators/lock-order/`);
  const beside = page.locator('.answer .alarm');
  await expect.poll(() => beside.textContent()).toBe('Balance bar says DANGER: the bar is at its stop or close to it.');
  expect(await page.locator('[id="lock-order-frontShare-echo"] .alarm').textContent()).toBe(await beside.textContent());
  await page.locator('.answer .alarm a').click();
  await page.waitForURL(/calculators\/balance-bar\/#balance-bar-cautions$/);
  await page.goto(`${site.origin()}/guides/bias/`);
  await wakeAll(page);
  expect(await page.locator('#lock-order .answer .alarm a').getAttribute('href')).toBe('#balance-bar-cautions');
  await page.goto(`${site.origin()}/calculators/lock-order/`);
  await page.waitForSelector('[data-live=yes]'); // before that 62 is what stands there anyway
  await page.locator('[id="lock-order-frontShare"]').fill('62');
  await expect.poll(() => page.locator('.alarm').count()).toBe(0);
  await page.context().close();
});

describe('the reader’s own numbers', () => {
  test('stay his own after a reload and after Back, and typing goes on counting', async () => {
    const page = await open(pressure);
    await field(page, 'controlForce').fill('70');
    await expect.poll(() => page.url()).toContain('control-force=70lbf');
    await page.reload();
    await page.waitForSelector('[data-live=yes]');
    expect(await page.locator('.link-note').count()).toBe(0);
    await field(page, 'controlForce').fill('75');
    await page.goto(`${site.origin()}/calculators/balance-bar/`);
    await expect.poll(() => page.locator('[id="balance-bar-controlForce"]').inputValue()).toBe('75');
    await page.locator('[id="balance-bar-controlForce"]').fill('80');
    await page.goBack();
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => field(page, 'controlForce').inputValue()).toBe('80');
    expect(await page.locator('.link-note').count()).toBe(0);
    await page.context().close();
  });

  test('a kept link is no link any more after a reload', async () => {
    const page = await open(`${pressure}?v=1&control-force=100lbf&pedal-ratio=6&linkage-efficiency=85%25&front-share=60%25&front-master-bore=3/4in&rear-master-bore=3/4in&master-spring=0lbf&from=thread#line-pressure`);
    await page.getByRole('button', { name: 'Keep these as mine' }).click();
    await expect.poll(() => new URL(page.url()).search).toBe('?from=thread');
    await page.reload();
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => answer(page).textContent()).toMatch(/^693/);
    expect(await page.locator('.link-note').count()).toBe(0);
    await page.context().close();
  });

  test('a computed value shown in another unit stays computed', async () => {
    const page = await open('/calculators/braking-rate/');
    const gain = page.locator('.field', { has: page.locator('[id="braking-rate-frontBrakeGain"]') });
    const before = await page.locator('.answer output').first().textContent();
    await gain.locator('button.unit').click();
    await expect.poll(() => gain.locator('button.unit').textContent()).toBe('N/bar');
    expect(await gain.locator('.echo').textContent()).toMatch(/^computed/);
    expect(await page.locator('.answer output').first().textContent()).toBe(before);
    expect(await page.evaluate(() => localStorage.getItem('build') ?? '')).not.toContain('frontBrakeGain');
    await page.context().close();
  });

  test('a value typed in one unit comes back the same after a look in the other', async () => {
    const page = await open('/calculators/load-transfer/');
    const input = page.locator('[id="load-transfer-payload"]');
    const unit = page.locator('.field', { has: input }).locator('button.unit');
    await input.fill('751');
    await unit.click();
    await unit.click();
    await expect.poll(() => input.inputValue()).toBe('751');
    await page.context().close();
  });
});

test('a link that was cut says what is missing instead of showing the demo truck', async () => {
  const page = await open(`${pressure}?v=1&control-force=50lbf&pedal-ratio=5`);
  await expect.poll(() => answer(page).textContent()).toBe('–');
  expect(await page.locator('.link-note').count()).toBe(1);
  await page.context().close();
});

test('a link with an absurd version opens at once', async () => {
  const page = await open(`${pressure}?v=-1e12&control-force=50lbf`);
  await expect.poll(() => answer(page).textContent()).toBe('–');
  await page.context().close();
});

test('without the calculator’s code nothing is shown beside what was typed', async () => {
  const page = await site.page();
  await page.route('**/_astro/live.*.js', (route) => route.abort());
  await page.goto(`${site.origin()}/guides/manual-or-boosted/`);
  await page.locator('[id="line-pressure-controlForce"]').fill('33');
  await expect.poll(() => page.locator('#line-pressure .answer output').textContent()).toBe('–');
  expect(await page.locator('#line-pressure .blank').first().textContent()).toMatch(/could not be loaded/);
  await page.context().close();
});

test('the truck page survives a saved unit that does not exist', async () => {
  const page = await open(pressure);
  await page.evaluate(() => localStorage.setItem('build', '{"schema":1,"values":{"controlForce":{"text":"70","unit":"furlong","system":"us"}}}'));
  await page.goto(`${site.origin()}/truck/`);
  await expect.poll(() => page.locator('table').textContent()).toMatch(/70 furlong/);
  await page.getByRole('button', { name: 'Forget all of mine' }).click();
  await expect.poll(() => page.locator('main').textContent()).toMatch(/Nothing typed yet/);
  await page.context().close();
});

test('a tap on the signal word brings the first caution into sight below the answer', async () => {
  const page = await open('/calculators/circuit-failure/');
  await page.locator('.answer a').click();
  await expect.poll(() => page.evaluate(() => {
    const bar = document.querySelector('.answer')!.getBoundingClientRect();
    const list = document.querySelector('ul.cautions')!.getBoundingClientRect();
    return list.top >= bar.bottom - 1 && list.top < 300;
  })).toBe(true);
  await page.context().close();
});

describe('without a script', () => {
  test('the calculator shows its result and working for the demo truck', async () => {
    const page = await open(pressure, { javaScriptEnabled: false });
    expect(await answer(page).textContent()).toMatch(/psi/);
    expect(await page.locator('.working math').count()).toBeGreaterThan(2);
    expect(await page.locator('.cautions').count()).toBeGreaterThan(0);
    await page.context().close();
  });

  test('what was typed before the script came is kept', async () => {
    const page = await site.page();
    let letGo: () => void = () => undefined;
    const hold = new Promise<void>((resolve) => { letGo = resolve; });
    await page.route('**/_astro/*.js', async (route) => { await hold; await route.continue(); });
    await page.goto(site.origin() + pressure, { waitUntil: 'commit' });
    await field(page, 'controlForce').fill('77');
    letGo();
    await page.waitForSelector('[data-live=yes]');
    await expect.poll(() => echo(page, 'controlForce').textContent()).toMatch(/77/);
    expect(await field(page, 'controlForce').inputValue()).toBe('77');
    await page.context().close();
  });
});

describe('without a network', () => {
  test('every page and link still opens once the site has been visited, and a correction arrives on the next visit', async () => {
    const page = await open(pressure);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.reload();
    await page.context().setOffline(true);
    await page.goto(`${site.origin()}/guides/bias/`);
    expect(await page.locator('h1').textContent()).toBe('Bias');
    await page.goto(`${site.origin()}${pressure}?v=1&control-force=100lbf&pedal-ratio=6&linkage-efficiency=85%25&front-share=60%25&front-master-bore=3/4in&rear-master-bore=3/4in&master-spring=0lbf#line-pressure`);
    await expect.poll(() => answer(page).textContent()).toMatch(/^693/);
    expect(await page.locator('[data-offline]').isVisible()).toBe(true);
    await page.context().setOffline(false);
    await page.context().close();
  });
});

describe('the picture', () => {
  test('moves with the slider and says what it shows', async () => {
    const page = await open('/calculators/circuit-failure/');
    const slider = page.locator('.motion input');
    const words = page.locator('.picture .describe');
    const before = await words.textContent();
    await slider.focus();
    // To the very end of its range, by key as by thumb, and in words for who cannot see it.
    await page.keyboard.press('End');
    await expect.poll(() => slider.inputValue()).toBe(await slider.getAttribute('max'));
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/5\.5\sin.*carpet/);
    expect(await page.locator('.motion label').textContent()).toContain(await slider.getAttribute('aria-valuetext'));
    await page.keyboard.press('Home');
    await expect.poll(() => words.textContent()).not.toBe(before);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(() => slider.inputValue().then(Number), { timeout: 8000 }).toBeGreaterThan(Number(await slider.getAttribute('max')) * 0.98);
    await page.context().close();
  });

  test('moved before the code came stays where it was put', async () => {
    const page = await site.page();
    let letGo: () => void = () => undefined;
    const hold = new Promise<void>((resolve) => { letGo = resolve; });
    await page.route('**/_astro/*.js', async (route) => { await hold; await route.continue(); });
    await page.goto(`${site.origin()}/calculators/lock-order/`, { waitUntil: 'commit' });
    const loaded = page.getByRole('radio', { name: 'loaded' });
    await loaded.check();
    letGo();
    await page.waitForSelector('[data-live=yes]');
    await page.locator('[id="lock-order-payload"]').fill('751');
    expect(await loaded.isChecked()).toBe(true);
    await expect.poll(() => page.locator('.picture svg text', { hasText: /^load$/ }).count()).toBe(1);
    await page.context().close();
  });
});
