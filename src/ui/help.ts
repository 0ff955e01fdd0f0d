import type { Help } from '../build/page-data.ts';
import { vocabulary } from '../calculators/vocabulary/index.ts';

/** An entry as it stands before its help has come. */
interface Fillable {
  measure?: string;
  readonly columns?: Readonly<Record<string, Fillable>>;
}

function fill(entry: Fillable, words: Help | undefined): void {
  entry.measure = words?.measure;
  for (const [key, column] of Object.entries(entry.columns ?? {})) fill(column, words?.columns?.[key]);
}

let asked: Promise<void> | undefined;

/** Fetches the help of all fields, once, when the first one is touched. Without a network the fields work as before. */
export function loadHelp(): Promise<void> {
  asked ??= fetch('/help.json').then(async (response) => {
    const help = (await response.json()) as Readonly<Record<string, Help>>;
    for (const [key, entry] of Object.entries(vocabulary as Readonly<Record<string, Fillable>>)) fill(entry, help[key]);
  }).catch(() => {
    asked = undefined; // try again at the next touch
  });
  return asked;
}
