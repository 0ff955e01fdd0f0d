import { expect, test } from 'vitest';
import { sayIn } from '../../src/build/fields.ts';
import { calculatorById, evaluate } from '../../src/calculators/index.ts';
import type { At } from '../../src/calculators/show.ts';
import { anywhere, demoInputs, near, randomFrom } from '../sweep/sample.ts';

test('the picture holds the whole ellipse of the pad’s error, however long it is', () => {
  const record = calculatorById('pad-place');
  const random = randomFrom(3);
  let longest = 0;
  let seen = 0;
  for (let k = 0; k < 300; k++) {
    const inputs = k < 3 ? { ...demoInputs(record), padMethod: ['space', 'plane', 'floor'][k] as string } : k % 2 ? anywhere(record, random) : near(record, random);
    const result = evaluate(record, inputs);
    if (!result.ok) continue;
    for (const at of [0, 1]) {
      const { box: [left, low, right, high], shapes } = record.picture!.scene(result.values as never, at, sayIn('us'));
      for (const shape of shapes) if ('line' in shape && shape.tone === 'alert') {
        seen++;
        const points = shape.line as readonly At[];
        for (const [x, y] of points) {
          expect(x).toBeGreaterThan(left);
          expect(x).toBeLessThan(right);
          expect(y).toBeGreaterThan(low);
          expect(y).toBeLessThan(high);
        }
        longest = Math.max(longest, (Math.max(...points.map((p) => p[0])) - Math.min(...points.map((p) => p[0]))) / (right - left));
      }
    }
  }
  expect(seen).toBeGreaterThan(50);
  expect(longest).toBeGreaterThan(0.6); // some ellipses are longer than the marks are apart
});
