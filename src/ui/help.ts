import type { helpData } from '../build/page-data.ts';
import type { Entry } from '../calculators/vocabulary/index.ts';
import { vocabulary } from '../calculators/vocabulary/index.ts';


/** The same entry as it stands before its help has come. */
interface Fillable {
  measure?: string;
  readonly usual?: { source: string };
  readonly hard?: { reason: string };
}

let asked: Promise<void> | undefined;

/** Fetches the help of all fields, once, when the first one is touched. Without a network the fields work as before. */
export function loadHelp(): Promise<void> {
  asked ??= fetch('/help.json').then(async (response) => {
    const help = (await response.json()) as ReturnType<typeof helpData>;
    for (const [key, entry] of Object.entries(vocabulary as Readonly<Record<string, Entry>>) as [string, Fillable][]) {
      const words = help[key];
      entry.measure = words?.measure;
      if (entry.usual) entry.usual.source = words?.usual ?? '';
      if (entry.hard) entry.hard.reason = words?.hard ?? '';
    }
  }).catch(() => {
    asked = undefined; // try again at the next touch
  });
  return asked;
}
