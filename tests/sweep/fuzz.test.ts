import { describe, expect, test } from 'vitest';
import { forumText } from '../../src/build/forum-text.ts';
import { readRecord, sayIn } from '../../src/build/fields.ts';
import type { Typed } from '../../src/build/fields.ts';
import { calculators, evaluate, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import type { Picture, Shape } from '../../src/calculators/show.ts';
import { drawSure } from '../../src/build/how-sure.ts';
import { sureWords } from '../../src/build/sure-words.ts';
import { allOf, anywhere, near, randomFrom } from './sample.ts';

const bad = /NaN|Infinity|undefined|\[object/;
const say = sayIn('si');

function numbersIn(shape: Shape): number[] {
  return Object.values(shape).flat(3).filter((x): x is number => typeof x === 'number');
}

/** Everything a page would show for these values. */
function shown(record: AnyCalculator, v: Values): { texts: string[]; numbers: number[] } {
  const at = v as never;
  const texts = [record.summary(at, say)];
  const numbers: number[] = [];
  for (const caution of record.cautions) if (caution.when?.(at) ?? true) texts.push(typeof caution.words === 'string' ? caution.words : caution.words(at, say));
  for (const table of record.tables ?? []) for (const row of table.rows(at, say)) for (const cell of row) {
    if (typeof cell === 'string') texts.push(cell);
    else texts.push(say(cell.value, cell.dimension, cell.digits));
  }
  for (const chart of record.charts ?? []) {
    texts.push(chart.describe(at, say));
    for (const series of chart.series(at)) numbers.push(...series.points.flat());
    for (const mark of chart.marks?.(at, say) ?? []) numbers.push(...mark.at);
  }
  if (record.picture) for (const moment of moments(record.picture as Picture<never>, at)) {
    const scene = record.picture.scene(at, moment, say);
    texts.push(record.picture.describe(at, say, moment), record.picture.motion?.say?.(at, moment, say) ?? '');
    numbers.push(...scene.box, ...scene.shapes.flatMap(numbersIn));
    expect(scene.box[2]).toBeGreaterThan(scene.box[0]);
    expect(scene.box[3]).toBeGreaterThan(scene.box[1]);
  }
  return { texts, numbers };
}

function moments(picture: Picture<never>, v: never): number[] {
  if (picture.states) return picture.states.names.map((_, k) => k);
  if (!picture.motion) return [0];
  const [low, high] = picture.motion.range(v);
  expect(high).toBeGreaterThan(low);
  return [low, (low + high) / 2, high, picture.motion.start(v)];
}

describe.each(calculators.map((c) => [c.id, c] as const))('record %s', (_id, record) => {
  test('gives a finite answer or a refusal in words for anything inside the hard ranges', () => {
    const random = randomFrom(7);
    let answered = 0;
    for (let k = 0; k < 1500; k++) {
      const inputs = anywhere(record, random);
      const result = evaluate(record, inputs);
      if (!result.ok) {
        const words = result.refusal.refused(say);
        expect(words).not.toMatch(bad);
        expect(words.length).toBeGreaterThan(15);
        continue;
      }
      answered++;
      const { texts, numbers } = shown(record, result.values);
      for (const text of texts) expect(text, JSON.stringify(inputs)).not.toMatch(bad);
      expect(numbers.every(Number.isFinite), JSON.stringify(inputs)).toBe(true);
    }
    expect(answered).toBeGreaterThan(0);
  });

  test('says how sure it is in words and finite numbers, with a list that ends', () => {
    const random = randomFrom(8);
    const few = { ...record, howSure: { ...record.howSure, draws: 60 } };
    for (let k = 0; k < (['pedal-ratio', 'clearance-sweep'].includes(record.id) ? 3 : 30); k++) {
      const result = evaluate(record, k % 2 ? anywhere(record, random) : near(record, random));
      if (!result.ok) continue;
      const sure = allOf(drawSure(few, result.values, k % 3 === 0));
      for (const text of sureWords(few, result.values, say, sure)) expect(text).not.toMatch(bad);
      for (const bar of sure?.bars ?? []) expect(bar.high).toBeGreaterThanOrEqual(bar.low);
      expect(sure?.bars.length ?? 0).toBeLessThanOrEqual(5);
    }
  });

  // Reads every field some twenty times over: a record with many takes seconds on a busy machine.
  test('never throws on what a reader types, and never shows a number beside an unreadable field', { timeout: 60_000 }, () => {
    const nonsense = ['', ' ', '-', '7/', '1-', '3,000', '7/0', '1e999', 'NaN', 'Infinity', 'abc', '<script>alert(1)</script>', '9'.repeat(10_000), '12 psi', '12 furlongs', '--3', '0', '-5', '1e300', '½', '7/8"', '__proto__', 'constructor'];
    for (const key of inputKeys(record)) {
      for (const text of nonsense) {
        const typed: Typed = { text, unit: text.length % 2 ? 'in' : '', system: 'us' };
        const reading = readRecord(record, (name) => (name === key ? typed : undefined), 'us');
        const field = reading.fields.find((f) => f.key === key);
        expect(field?.text).toBe(text);
        if (reading.state === 'blank') expect(reading.reason).not.toMatch(bad);
        else expect(field?.problem).toBeUndefined();
        expect(forumText(record, reading, 'us', 'https://example.org/').replaceAll(text || ' ', ' ')).not.toMatch(bad);
      }
    }
  });
});
