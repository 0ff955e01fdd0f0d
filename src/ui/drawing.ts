import { drawSure } from '../build/how-sure.ts';
import type { Sure } from '../build/sure-words.ts';
import type { AnyCalculator, Values } from '../calculators/record.ts';
import { inSlices } from './slices.ts';

/** Draws a record's trucks once `place` comes into view, or at once for the printer. Returns how to stop it. */
export function drawing(record: AnyCalculator, values: Values, samePads: boolean, computed: readonly string[], place: Element, done: (sure: Sure | undefined) => void): () => void {
  let work: ReturnType<typeof inSlices> | undefined;
  const begin = (): void => { work ??= inSlices(() => drawSure(record, values, samePads, computed), (sure) => { stop(); done(sure); }); };
  const watch = new IntersectionObserver(([entry]) => { if (entry?.isIntersecting) begin(); });
  const print = (): void => { begin(); work?.finish(); };
  const stop = (): void => {
    watch.disconnect();
    removeEventListener('beforeprint', print);
    work?.stop();
  };
  watch.observe(place);
  addEventListener('beforeprint', print);
  return stop;
}
