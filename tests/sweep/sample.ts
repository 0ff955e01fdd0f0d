import { readRecord } from '../../src/build/fields.ts';
import { entryOf, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { isChoice } from '../../src/calculators/vocabulary/index.ts';

/** Repeatable numbers between 0 and 1 (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** The demo truck's values for every input, computed ones included. */
export function demoInputs(record: AnyCalculator): Record<string, number | string> {
  const reading = readRecord(record, () => undefined, 'us');
  return Object.fromEntries(reading.fields.map((field) => {
    if (field.value === undefined) throw new RangeError(`${record.id}, ${field.key}: expected a demo value, found ${field.problem}`);
    return [field.key, field.value];
  }));
}

/** Inputs spread around the demo truck's, inside the usual and the hard range; choices at random. */
export function near(record: AnyCalculator, random: () => number, width = 0.35): Values {
  const demo = demoInputs(record);
  return Object.fromEntries(inputKeys(record).map((key) => {
    const entry = entryOf(key);
    if (isChoice(entry)) return [key, pick(Object.keys(entry.options), random)];
    const at = demo[key] as number;
    const { min, max } = entry.hard ?? { min: -Infinity, max: Infinity };
    if (entry.dimension === 'count') return [key, Math.min(max, Math.max(min, at + Math.floor(random() * 3) - 1))];
    const reach = entry.usual ? entry.usual.max - entry.usual.min : Math.abs(at);
    return [key, Math.min(max, Math.max(min, at + width * (random() - 0.5) * (at === 0 ? reach : Math.abs(at))))];
  }));
}

/** Anything inside the hard ranges, their ends more often than chance. */
export function anywhere(record: AnyCalculator, random: () => number): Values {
  return Object.fromEntries(inputKeys(record).map((key) => {
    const entry = entryOf(key);
    if (isChoice(entry)) return [key, pick(Object.keys(entry.options), random)];
    const { min, max } = entry.hard ?? { min: -1e3, max: 1e3 };
    const dice = random();
    const x = dice < 0.1 ? min : dice < 0.2 ? max : dice < 0.3 && min <= 0 && max >= 0 ? 0 : dice < 0.6 ? min + random() ** 3 * (max - min) : min + random() * (max - min);
    return [key, entry.dimension === 'count' ? Math.round(x) : x];
  }));
}

/** What a generator returns once all its steps are done. */
export function allOf<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function pick<T>(list: readonly T[], random: () => number): T {
  return list[Math.floor(random() * list.length)] as T;
}

