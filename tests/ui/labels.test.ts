import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxOf, dashesFor, placeLabels } from '../../src/ui/labels.ts';
import type { Box, Label } from '../../src/ui/labels.ts';

const within: Box = { left: 48, top: 26, right: 358, bottom: 206 };
const inside = (box: Box): boolean => box.left >= within.left - 1e-9 && box.right <= within.right + 1e-9 && box.top >= within.top - 1e-9 && box.bottom <= within.bottom + 1e-9;
const apart = (a: Box, b: Box): boolean => a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;

const label: fc.Arbitrary<Label> = fc.record({
  text: fc.constantFrom('you', 'you, front', 'front tires slide', 'run-out', '0.8 g', 'half stroke 6.21', 'center of gravity', 'load', ''),
  x: fc.double({ min: -100, max: 500, noNaN: true }), y: fc.double({ min: -100, max: 400, noNaN: true }),
  anchor: fc.constantFrom('start' as const, 'middle' as const, 'end' as const), size: fc.constantFrom(11, 12, 13),
});
const crowd = fc.array(label, { maxLength: 40 });
const marks = fc.array(fc.tuple(fc.integer({ min: 48, max: 358 }), fc.integer({ min: 26, max: 206 })).map(([x, y]) => ({ left: x - 6, top: y - 6, right: x + 6, bottom: y + 6 })), { maxLength: 8 });

describe('the words of a drawing', () => {
  test('never leave it and never touch each other, wherever they want to be', () => {
    fc.assert(fc.property(crowd, marks, (wanted, keepOff) => {
      const boxes = placeLabels(wanted, within, keepOff).flatMap((found) => (found ? [boxOf(found)] : []));
      return boxes.every(inside) && boxes.every((a, i) => boxes.every((b, k) => i === k || apart(a, b)));
    }), { numRuns: 500 });
  });

  test('all find room while there are no more of them than a chart has, and keep off its marks', () => {
    fc.assert(fc.property(fc.array(label, { maxLength: 6 }), fc.array(marks, { maxLength: 1 }), (wanted, [keepOff = []]) => {
      const placed = placeLabels(wanted, within, keepOff.slice(0, 6));
      return placed.every((found, k) => (found === undefined) === (wanted[k]?.text === '')) && placed.every((found) => !found || keepOff.slice(0, 6).every((mark) => apart(mark, boxOf(found))));
    }), { numRuns: 500 });
  });

  test('stand where they want to as long as nothing is in the way', () => {
    const wanted: Label[] = [{ text: 'you', x: 100, y: 100, anchor: 'start', size: 13 }, { text: 'front tires slide', x: 300, y: 60, anchor: 'end', size: 13 }];
    expect(placeLabels(wanted, within)).toEqual(wanted);
  });

  test('give way by no more than it takes: two of one place stand a line apart', () => {
    const you: Label = { text: 'you', x: 200, y: 100, anchor: 'start', size: 13 };
    const [first, second] = placeLabels([you, you], within);
    expect(first).toEqual(you);
    expect(Math.hypot((second?.x ?? 0) - 200, (second?.y ?? 0) - 100)).toBeLessThan(20);
  });

  test('one that is wider than the drawing is left out', () => {
    expect(placeLabels([{ text: 'w'.repeat(60), x: 100, y: 100, anchor: 'start', size: 13 }], within)).toEqual([undefined]);
  });
});

describe('the lines of a chart', () => {
  test('are dashed each in its own way, front solid and rear dash-dot where both are there', () => {
    const tones = ['body', 'rear', 'front', 'ghost', 'ghost'];
    const dashes = dashesFor(tones);
    expect(new Set(dashes).size).toBe(tones.length);
    expect([dashes[2], dashes[1]]).toEqual([0, 2]);
    fc.assert(fc.property(fc.array(fc.constantFrom('plain', 'front', 'rear', 'body', 'frame', 'ghost', 'ground', 'accent', 'alert'), { maxLength: 7 }), (all) => new Set(dashesFor(all)).size === all.length));
  });
});
