import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url);

test.each(['DEVELOPERS.md', 'README.md'])('every path that %s names exists', (file) => {
  const paths = [...readFileSync(new URL(file, root), 'utf8').matchAll(/`((?:src|content|tests|public|\.ci)\/[^`<>…* ]*)`/g)].map((match) => match[1] as string);
  expect(paths.length).toBeGreaterThan(0);
  expect(paths.filter((path) => !existsSync(fileURLToPath(new URL(path, root))))).toEqual([]);
});

test('the commands of the README exist, and the same test command runs in CI', () => {
  const readme = readFileSync(new URL('README.md', root), 'utf8');
  const { scripts } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as { scripts: Record<string, string> };
  for (const [, name] of readme.matchAll(/npm (?:run )?(start|test|dev|bench)\b/g)) expect(Object.keys(scripts)).toContain(name);
  const command = 'npm ci --loglevel=error && npm test';
  expect(readme).toContain(command);
  expect(readFileSync(new URL('.ci/run', root), 'utf8')).toContain(command);
});
