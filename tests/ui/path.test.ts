import fc from 'fast-check';
import { expect, test } from 'vitest';
import { n, pointsOf, thinned } from '../../src/ui/path.ts';

type At = readonly [number, number];

function distance([x, y]: At, [a, b]: readonly [At, At]): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const part = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square));
  return Math.hypot(x - a[0] - part * dx, y - a[1] - part * dy);
}

test('a straight line needs its ends and no more; a corner needs its point', () => {
  expect(thinned([[0, 0], [1, 1], [2, 2], [3, 3]])).toEqual([[0, 0], [3, 3]]);
  expect(thinned([[0, 0], [5, 0], [5, 5]])).toEqual([[0, 0], [5, 0], [5, 5]]);
  expect(thinned([[0, 0], [9, 0], [4, 0]])).toEqual([[0, 0], [9, 0], [4, 0]]); // there and part of the way back
});

test('no point left out of any line lies farther from what is drawn than a tenth of a stroke, and the ends stay', () => {
  const coordinate = fc.double({ min: -400, max: 400, noNaN: true });
  fc.assert(fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: 60 }), fc.boolean(), (points, closed) => {
    const line: At[] = closed ? [...points, points[0] as At] : points;
    const kept = thinned(line);
    expect([kept[0], kept.at(-1)]).toEqual([line[0], line.at(-1)]);
    const pieces = kept.slice(1).map((point, k) => [kept[k] as At, point] as const);
    for (const point of line) expect(Math.min(...pieces.map((piece) => distance(point, piece)), ...(pieces.length === 0 ? [0] : []))).toBeLessThanOrEqual(0.15);
  }));
});

test('a smooth curve keeps a fraction of its points, each to a tenth of a picture unit', () => {
  const arc = Array.from({ length: 101 }, (_, k): At => [180 - 150 * Math.cos((k * Math.PI) / 100), 200 - 150 * Math.sin((k * Math.PI) / 100)]);
  expect(thinned(arc).length).toBeLessThan(40);
  expect(pointsOf(arc)).toMatch(/^30,200( [\d.]+,[\d.]+)+ 330,200$/);
  expect([n(1 / 3), n(46), n(-0.04), n(-2.25)]).toEqual(['0.3', '46', '0', '-2.2']);
});
