import type { Plugin } from 'vite';

/**
 * Which code travels together. What every calculator needs is one file, and so is what a dozen of them share: a phone
 * waits for few files in a row, and code compresses better together. Nothing is fetched ahead of its use: Vite would
 * put a table of all files into the first one to do so.
 */
export function fewFiles(): Plugin {
  return {
    name: 'few-files',
    configEnvironment(name) {
      if (name !== 'client') return undefined;
      const groups = [
        // What the first script of a page needs must not bring the rest.
        { name: 'load', test: /vite.preload-helper/, priority: 1 },
        { name: 'core', test: /src.(ui.live|engine.(require|outcome|constants|circle))\.ts$/ },
        { name: 'shared', test: /src.(engine|calculators)/, minShareCount: 13 },
      ];
      return { build: { modulePreload: { polyfill: false, resolveDependencies: () => [] }, rolldownOptions: { output: { codeSplitting: { groups } } } } };
    },
    // What is left of Vite's helper for late imports when it fetches nothing ahead.
    load: {
      filter: { id: /^\0vite\/preload-helper/ },
      handler: () => 'export const __vitePreload = (load) => load();',
    },
  };
}
