import { calculatorById } from '../calculators/index.ts';
import { drawSure } from './how-sure.ts';
import { readRecord } from './fields.ts';
import { computedKeys } from './sure-words.ts';
import type { Sure } from './sure-words.ts';

const drawn = new Map<string, Sure | undefined>();

/** How sure the demo truck's result is: drawn once, while the pages are built, however many pages show it. */
export function demoSure(id: string): Sure | undefined {
  if (drawn.has(id)) return drawn.get(id);
  const record = calculatorById(id);
  const reading = readRecord(record, () => undefined, 'us');
  if (reading.state === 'blank') return undefined;
  const drawing = drawSure(record, reading.values, false, computedKeys(reading.fields));
  let step = drawing.next();
  while (!step.done) step = drawing.next();
  drawn.set(id, step.value);
  return step.value;
}
