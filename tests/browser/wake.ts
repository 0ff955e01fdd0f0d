import type { Page } from 'playwright-core';

/** Brings every calculator of a page to life, as pointing at each would, and waits for it. */
export async function wakeAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const place of document.querySelectorAll('[data-calculator]')) place.dispatchEvent(new Event('pointerenter'));
  });
  await page.waitForFunction(() => [...document.querySelectorAll<HTMLElement>('[data-calculator]')].every((place) => place.dataset.live === 'yes'));
}
