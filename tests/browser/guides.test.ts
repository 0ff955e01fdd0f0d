import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { openSite } from './open.ts';
import { pages } from './pages.ts';

const site = openSite();
const guides = pages.filter((path) => /^\/guides\/.+/.test(path));

/**
 * Words of prose a reader sees in a guide: title, question, headings, paragraphs, lists, margin notes and cautions, the
 * sources and the links at the end among them. Not counted: calculators, contents and other navigation, drawings and
 * their captions, tables, formulas, lists to tick, buttons to sheets, and what only paper shows. A word has a letter or
 * a figure in it; a number and its unit are two.
 */
function proseIn(article: HTMLElement): number {
  for (const part of article.querySelectorAll('.calculator, nav, figure, table, math, .equation, .checklist, .sheet-link')) part.remove();
  return article.innerText.match(/\S*[\p{L}\p{N}]\S*/gu)?.length ?? 0;
}

test('there are guides to count', () => {
  expect(guides.length).toBeGreaterThanOrEqual(14);
});

test('words are counted as a reader would: no word of a calculator, a table or a hidden part', async () => {
  const page = await site.page();
  await page.setContent('<article><h1>One two</h1><nav>no</nav><section class="calculator">no</section><p>three 4\u00a0in – <b>(six)</b> <span hidden>no</span></p><figure>no</figure><table><td>no</td></table><aside>seven</aside></article>');
  expect(await page.locator('article').evaluate(proseIn)).toBe(7);
  await page.context().close();
});

test.each(guides)('%s has 1,200 to 2,500 words of prose', async (path) => {
  const page = await site.page();
  await page.goto(site.origin() + path);
  const words = await page.locator('article.guide').evaluate(proseIn);
  expect(words).toBeGreaterThanOrEqual(1200);
  expect(words).toBeLessThanOrEqual(2500);
  await page.context().close();
});

test.each(guides)('%s loads with at most 60 kB of page, styles and script, and no calculator’s code before one is touched', async (path) => {
  const page = await site.page();
  const weights = new Map<string, number>();
  const arriving: Promise<unknown>[] = [];
  page.on('response', (response) => {
    if (/\.(js|css)$|\/$/.test(new URL(response.url()).pathname)) arriving.push(response.body().then((body) => weights.set(response.url(), gzipSync(body, { level: 9 }).length)));
  });
  const sum = (kind: RegExp): number => [...weights].filter(([url]) => kind.test(url)).reduce((total, [, weight]) => total + weight, 0);
  await page.goto(site.origin() + path, { waitUntil: 'networkidle' });
  await Promise.all(arriving);
  expect(sum(/\/$/)).toBeGreaterThan(10_000);
  expect(sum(/./)).toBeLessThan(60_000);
  expect(sum(/js$/)).toBeLessThan(3_000);
  await page.locator('[data-calculator]').first().hover();
  await page.waitForSelector('[data-calculator][data-live=yes]');
  await Promise.all(arriving);
  expect(sum(/js$/)).toBeGreaterThan(20_000);
  await page.context().close();
});
