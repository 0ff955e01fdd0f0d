import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../dist/', import.meta.url));

/** The address of every built page. */
export const pages: readonly string[] = (readdirSync(root, { recursive: true }) as string[]).filter((file) => file.endsWith('.html')).map((file) => `/${file.replace(/(^|\/)index\.html$/, '$1')}`).sort();
