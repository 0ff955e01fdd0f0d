import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launch } from './browser.ts';
import { serve } from './server.ts';
import type { Served } from './server.ts';

/** A browser and the built site for the tests of one file. */
export function openSite(): { readonly origin: () => string; readonly page: (options?: BrowserContextOptions) => Promise<Page> } {
  let browser: Browser;
  let site: Served;
  beforeAll(async () => {
    [browser, site] = await Promise.all([launch(), serve()]);
  });
  afterAll(async () => {
    await browser.close();
    await site.close();
  });
  return {
    origin: () => site.origin,
    page: async (options) => (await browser.newContext(options)).newPage(),
  };
}
