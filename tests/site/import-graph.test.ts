import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const src = fileURLToPath(new URL('../../src/', import.meta.url));

/** What each part may import from. Data flows one way: units and engine at the bottom, the page on top. */
const may: Readonly<Record<string, readonly string[]>> = {
  engine: ['engine'],
  units: ['units'],
  calculators: ['calculators', 'engine', 'units', 'content'],
  build: ['build', 'calculators', 'units', 'content'],
  ui: ['ui', 'build', 'calculators', 'units'],
  layouts: ['layouts', 'ui', 'build', 'calculators', 'content', 'styles'],
  pages: ['pages', 'layouts', 'ui', 'build', 'calculators', 'content'],
  integrations: ['integrations'],
  styles: ['styles'],
};

interface Step {
  readonly file: string;
  readonly from: string;
  readonly to: string;
  readonly target: string;
}

function steps(): Step[] {
  return (readdirSync(src, { recursive: true }) as string[]).filter((file) => /\.(ts|tsx|astro)$/.test(file) && file.includes('/')).flatMap((file) => {
    const text = readFileSync(join(src, file), 'utf8');
    return [...text.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']+)'/g)].map((match) => {
      const target = relative(src, normalize(join(src, dirname(file), match[1] as string)));
      return { file, from: file.split('/')[0] as string, to: target.startsWith('../content') ? 'content' : (target.split('/')[0] as string), target: match[1] as string };
    });
  });
}

test('imports never step backwards', () => {
  const all = steps();
  expect(all.length).toBeGreaterThan(100);
  expect(all.filter(({ from, to }) => !may[from]?.includes(to)).map(({ file, target }) => `${file} imports ${target}`)).toEqual([]);
});

test('relative imports carry their ending, so that plain Node runs them', () => {
  expect(steps().filter(({ target }) => !/\.(ts|tsx|astro|json|css|svg)$/.test(target)).map(({ file, target }) => `${file} imports ${target}`)).toEqual([]);
});

test('the engine imports no package, and nothing below the page knows a framework', () => {
  const outside = (readdirSync(src, { recursive: true }) as string[]).filter((file) => /^(engine|units|calculators|build)\/.*\.ts$/.test(file)).flatMap((file) =>
    [...readFileSync(join(src, file), 'utf8').matchAll(/^(?:import|export)\b(?:[^'\n]*\bfrom)?\s*'([^.'][^']*)'/gm)].map((match) => `${file} imports ${match[1]}`));
  expect(outside).toEqual([]);
});
