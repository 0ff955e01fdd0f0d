import { createReadStream, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.json': 'application/json', '.svg': 'image/svg+xml', '.woff2': 'font/woff2', '.txt': 'text/plain', '.webmanifest': 'application/manifest+json',
};

export interface Served {
  readonly origin: string;
  close(): Promise<void>;
}

/** Serves the built site as a static host does: directories as index.html, the rules of `_headers`, the 404 page. */
export async function serve(root = fileURLToPath(new URL('../../dist/', import.meta.url))): Promise<Served> {
  const rules = readHeaders(join(root, '_headers'));
  const server: Server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname);
    const wanted = normalize(join(root, path.endsWith('/') ? `${path}index.html` : path));
    const file = wanted.startsWith(root) && isFile(wanted) ? wanted : undefined;
    for (const [prefix, name, value] of rules) if (path.startsWith(prefix)) response.setHeader(name, value);
    response.setHeader('content-type', types[file ? extname(file) : '.html'] ?? 'application/octet-stream');
    response.statusCode = file ? 200 : 404;
    createReadStream(file ?? join(root, '404.html')).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { origin: `http://127.0.0.1:${port}`, close: () => new Promise((resolve) => { server.closeAllConnections(); server.close(() => resolve()); }) };
}

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}

function readHeaders(path: string): [prefix: string, name: string, value: string][] {
  const rules: [string, string, string][] = [];
  let prefix = '/';
  for (const line of readFileSync(path, 'utf8').split('\n')) {
    if (line.startsWith('/')) prefix = line.trim().replace(/\*$/, '');
    else if (line.includes(':')) rules.push([prefix, line.slice(0, line.indexOf(':')).trim(), line.slice(line.indexOf(':') + 1).trim()]);
  }
  return rules;
}
