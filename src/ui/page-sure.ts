import type { Sure } from '../build/sure-words.ts';

/** In the browser: how sure the demo truck's results are, of the calculators brought so far. */
export const sures: Record<string, Sure | undefined> = {};

export function demoSure(id: string): Sure | undefined {
  return sures[id];
}
