import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { fewFiles } from './src/integrations/few-files.ts';
import { headers } from './src/integrations/headers.ts';
import { offline } from './src/integrations/offline.ts';
import { pageData } from './src/integrations/page-data.ts';
import { typeset } from './src/integrations/typeset.ts';

export default defineConfig({
  integrations: [mdx(), preact(), headers(), offline()],
  markdown: { syntaxHighlight: false },
  trailingSlash: 'always',
  build: { inlineStylesheets: 'never' },
  security: { csp: true },
  devToolbar: { enabled: false },
  vite: { plugins: [typeset(), pageData(), fewFiles()], build: { assetsInlineLimit: 0 } },
});
