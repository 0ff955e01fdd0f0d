import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openSite } from './open.ts';
import { wakeAll } from './wake.ts';

const site = openSite();

interface Stop {
  readonly is: string;
  readonly wrong: string;
}

/** Where the keys are now, and what is wrong with it. Undefined once they have left the page. */
function stop(page: Page): Promise<Stop | undefined> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (!(at instanceof HTMLElement) || at === document.body) return undefined;
    (window as unknown as { been: Set<Element> }).been.add(at);
    // A file is chosen by a button that is drawn in place of the browser's own.
    const seen = at.classList.contains('visually-hidden') ? (at.closest('.button') as HTMLElement) : at;
    const { left, top, width, height, bottom } = seen.getBoundingClientRect();
    const under = document.elementFromPoint(left + width / 2, top + height / 2);
    const { outlineStyle, outlineWidth } = getComputedStyle(seen);
    const wrong = [
      ...(outlineStyle === 'none' || parseFloat(outlineWidth) < 2 ? ['has no outline'] : []),
      ...(width < 2 || height < 2 || bottom <= 0 || top >= innerHeight ? ['is out of sight'] : under && (seen.contains(under) || under.contains(seen)) ? [] : ['is covered']),
    ].join(', ');
    return { is: `${at.tagName} ${at.id} ${(at.textContent ?? '').trim().slice(0, 30)} ${Math.round(top + scrollY)}`, wrong };
  });
}

test.each(['/calculators/drop-points/', '/calculators/lock-order/', '/guides/first-drive/'])('%s is walked through by the Tab key, there and back, with every stop in sight and none that holds it', { timeout: 120_000 }, async (path) => {
  const page = await site.page({ viewport: { width: 390, height: 844 } });
  await page.goto(site.origin() + path);
  await wakeAll(page);
  await page.evaluate(() => { for (const fold of document.querySelectorAll('details')) fold.open = true; });
  await page.locator('.turned').first().waitFor();
  const wrong: string[] = [];
  for (const key of ['Tab', 'Shift+Tab']) {
    await page.evaluate(() => {
      (window as unknown as { been: Set<Element> }).been = new Set();
      (document.activeElement as HTMLElement | null)?.blur();
    });
    let steps = 0;
    let before = '';
    for (; steps < 600; steps++) {
      await page.keyboard.press(key);
      const now = await stop(page);
      if (!now) break;
      if (now.wrong) wrong.push(`${key}: ${now.is} ${now.wrong}`);
      if (now.is === before) wrong.push(`${key}: ${now.is} holds the keys`);
      before = now.is;
    }
    expect(steps).toBeGreaterThan(30);
    expect(steps).toBeLessThan(600);
    // What stood there from the start; a field's help opens as one comes to it, and with it more.
    const missed = await page.evaluate(() => [...document.querySelectorAll<HTMLElement>('a[href], button, input:not([type=radio]), select, textarea, summary, [tabindex="0"]')].filter((e) => !(window as unknown as { been: Set<Element> }).been.has(e) && !e.closest('.help') && e.tabIndex >= 0 && e.getClientRects().length > 0).map((e) => `${e.tagName} ${e.id} ${(e.textContent ?? '').trim().slice(0, 30)}`));
    if (key === 'Tab') expect(missed).toEqual([]);
  }
  expect(wrong).toEqual([]);
  await page.context().close();
});
