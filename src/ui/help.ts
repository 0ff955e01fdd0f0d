import type { helpData } from '../build/page-data.ts';
import { vocabulary } from '../calculators/vocabulary/index.ts';

let asked: Promise<void> | undefined;

/** Fetches the help of all fields, once, when the first one is touched. Without a network the fields work as before. */
export function loadHelp(): Promise<void> {
  asked ??= fetch('/help.json').then(async (response) => {
    const help = (await response.json()) as ReturnType<typeof helpData>;
    for (const [key, entry] of Object.entries(vocabulary as Readonly<Record<string, { measure?: string }>>)) entry.measure = help[key];
  }).catch(() => {
    asked = undefined; // try again at the next touch
  });
  return asked;
}
