import { createHash } from 'node:crypto';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

/**
 * Writes the service worker once the site is built, with the list of everything it keeps on the phone. Its version
 * is a digest of those files, so that a corrected page always brings a new worker.
 */
export function offline(): AstroIntegration {
  return {
    name: 'offline',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const root = fileURLToPath(dir);
        const files = (await readdir(root, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile()).map((entry) => `${entry.parentPath}/${entry.name}`.slice(root.length).replace(/^\//, '')).filter((file) => file !== '_headers' && file !== 'sw.js').sort();
        const digest = createHash('sha256');
        for (const file of files) digest.update(file).update(await readFile(`${root}/${file}`));
        const addresses = files.map((file) => `/${file.replace(/(^|\/)index\.html$/, '$1')}`);
        const template = await readFile(new URL('./service-worker.js', import.meta.url), 'utf8');
        await writeFile(new URL('sw.js', dir), template.replace("'VERSION'", `'${digest.digest('hex').slice(0, 12)}'`).replace('[/* ADDRESSES */]', JSON.stringify(addresses)));
      },
    },
  };
}
