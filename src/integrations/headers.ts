import { writeFile } from 'node:fs/promises';
import type { AstroIntegration } from 'astro';

/** What a page's own policy cannot say: no framing, no sniffing, no referrer. For hosts that read `_headers`. */
const lines = `/*
  Content-Security-Policy: frame-ancestors 'none'
  X-Content-Type-Options: nosniff
  Referrer-Policy: no-referrer
  Permissions-Policy: camera=(), microphone=(), geolocation=()

/_astro/*
  Cache-Control: public, max-age=31536000, immutable
`;

export function headers(): AstroIntegration {
  return {
    name: 'headers',
    hooks: { 'astro:build:done': ({ dir }) => writeFile(new URL('_headers', dir), lines) },
  };
}
