import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSite } from './open.ts';

const site = openSite();

/** A host in front of the site that can die, hang or fail while the device still believes it has a network. */
let state: 'well' | 'hanging' | 'failing' = 'well';
let host: Server;
let origin = '';

async function raise(port = 0): Promise<void> {
  host = createServer((request, response) => {
    if (state === 'hanging') return;
    if (state === 'failing') return void response.writeHead(503).end('out of order');
    void fetch(site.origin() + request.url).then(async (found) => {
      response.writeHead(found.status, Object.fromEntries([...found.headers].filter(([name]) => /content-(type|security)/.test(name)))).end(Buffer.from(await found.arrayBuffer()));
    });
  });
  await new Promise<void>((resolve) => host.listen(port, '127.0.0.1', resolve));
  origin = `http://127.0.0.1:${(host.address() as AddressInfo).port}`;
}
async function stop(): Promise<void> {
  host.closeAllConnections();
  await new Promise((resolve) => host.close(resolve));
}
beforeAll(() => raise());
afterAll(stop);

async function visited(): Promise<Page> {
  const page = await site.page({ viewport: { width: 390, height: 844 } });
  await page.goto(`${origin}/calculators/line-pressure/`);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  return page;
}

const note = (page: Page) => page.locator('[data-offline]');

test('a page out of the store says that it is a saved copy, whatever the device thinks of its network', async () => {
  const page = await visited();
  expect(await note(page).isVisible()).toBe(false);
  const online = () => page.evaluate(() => navigator.onLine);

  state = 'failing';
  await page.goto(`${origin}/guides/bias/`);
  expect(await page.locator('h1').textContent()).toBe('Bias');
  expect([await online(), await note(page).isVisible()]).toEqual([true, true]);

  state = 'hanging';
  await page.goto(`${origin}/calculators/line-pressure/?v=1&control-force=100lbf&pedal-ratio=6&linkage-efficiency=85%25&front-share=60%25&front-master-bore=3/4in&rear-master-bore=3/4in&master-spring=0lbf#line-pressure`);
  await expect.poll(() => page.locator('.answer output').first().textContent(), { timeout: 20_000 }).toMatch(/^693/);
  expect([await online(), await note(page).isVisible()]).toEqual([true, true]);
  expect(await note(page).textContent()).toMatch(/copy saved on your device, built \d{4}-\d\d-\d\d/);

  state = 'well';
  const port = Number(new URL(origin).port);
  await stop();
  await page.goto(`${origin}/calculators/stopping-distance/`);
  await page.waitForSelector('[data-live=yes]');
  expect([await online(), await note(page).isVisible()]).toEqual([true, true]);
  await page.goto(`${origin}/nothing-here/`);
  expect(await note(page).isVisible()).toBe(true);

  await raise(port);
  await page.reload();
  await page.goto(`${origin}/guides/bias/`);
  expect(await note(page).isVisible()).toBe(false);
  await page.context().close();
});
