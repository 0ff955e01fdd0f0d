import fc from 'fast-check';
import { Line3, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { segmentDistance } from '../../src/engine/capsule.ts';
import type { Point } from '../../src/engine/capsule.ts';
import { clearanceSweep } from '../../src/engine/clearanceSweep.ts';
import type { PairSweep } from '../../src/engine/clearanceSweep.ts';
import { goldenSection } from '../../src/engine/goldenSection.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import { nearestSquared } from '../../src/engine/segmentPair.ts';
import { sampled } from '../../src/engine/sweepMotion.ts';
import type { Motions, Rides, SweepPart } from '../../src/engine/sweepMotion.ts';
import { randomFrom } from '../sweep/sample.ts';

const deg = Math.PI / 180;
const mm = 1e-3;
const point = (x: number, y: number, z: number): Point => ({ x, y, z });
const still: Motions = {
  roll: 0, rollY: 0, rollZ: 0.3, mountUp: 0, mountSideways: 0, mountForeAft: 0, pivotX: -0.5, pivotZ: 0.6, swing: 0, columnEnd: point(-0.5, 0.36, 0.53), box: point(0.05, 0.43, 0.23),
  airedOutFront: 0, liftedFront: 0, airedOutRear: 0, liftedRear: 0,
};
const lively: Motions = { ...still, roll: 4 * deg, mountUp: 10 * mm, mountSideways: 4 * mm, mountForeAft: 6 * mm, swing: 27 * deg, airedOutFront: -80 * mm, liftedFront: 70 * mm, airedOutRear: -100 * mm, liftedRear: 60 * mm };
const rides: readonly Rides[] = ['frame', 'body', 'engine', 'pedal', 'rod', 'steering', 'front-axle', 'rear-axle'];

const sweep = (parts: readonly SweepPart[], motions: Motions, measurementError = 0) => {
  const found = clearanceSweep({ parts, motions, measurementError });
  if (isImpossible(found)) throw new Error(`expected a result, found ${found.impossible}`);
  return found;
};
const code = (parts: readonly SweepPart[], motions = lively) => {
  const found = clearanceSweep({ parts, motions, measurementError: 0 });
  return isImpossible(found) ? found : undefined;
};

/** Where three puts both ends of a part: its own rotation about an axis, its own vectors. */
function placedByThree(part: SweepPart, m: Motions, [roll, up, sideways, steering, pedal, front, rear, foreAft]: readonly number[]): Line3 {
  const shift = new Vector3(foreAft, sideways, up);
  const about = (p: Point, on: Vector3, axis: Vector3, angle: number) => vector(p).sub(on).applyAxisAngle(axis, angle).add(on);
  const end = (p: Point, last: boolean): Vector3 => {
    const [pivot, box, column] = [new Vector3(m.pivotX, 0, m.pivotZ), vector(m.box), vector(m.columnEnd)];
    switch (part.rides) {
      case 'frame': return vector(p);
      case 'body': return vector(p).add(shift);
      case 'engine': return about(p, new Vector3(0, m.rollY, m.rollZ), new Vector3(1, 0, 0), roll as number);
      case 'pedal': return about(p, pivot, new Vector3(0, 1, 0), -(pedal as number)).add(shift);
      case 'rod': return (last ? vector(p) : about(p, pivot, new Vector3(0, 1, 0), -(pedal as number))).add(shift);
      case 'front-axle': return vector(p).sub(new Vector3(0, 0, front));
      case 'rear-axle': return vector(p).sub(new Vector3(0, 0, rear));
      case 'steering': {
        const run = column.clone().sub(box);
        const part01 = Math.min(1, Math.max(0, vector(p).sub(box).dot(run) / run.dot(run)));
        // Clockwise for the eye at the column's end, which the line box to column points at.
        return about(p, box, run.clone().normalize(), -(steering as number)).add(new Vector3(part01 * (foreAft as number), part01 * (sideways as number), part01 * (up as number)));
      }
    }
  };
  return new Line3(end(part.start, false), end(part.end, true));
}
const vector = ({ x, y, z }: Point) => new Vector3(x, y, z);

function product(lists: readonly (readonly number[])[]): number[][] {
  return lists.reduce<number[][]>((all, list) => all.flatMap((head) => list.map((x) => [...head, x])), [[]]);
}

/** Every pair in every one of the states, no thought for what depends on what. */
function bruteForce(parts: readonly SweepPart[], motions: Motions, states: readonly (readonly number[])[]): number[][] {
  const least = parts.map(() => parts.map(() => Infinity));
  for (const state of states) {
    const lines = parts.map((part) => placedByThree(part, motions, state));
    for (let a = 0; a < parts.length; a++) for (let b = a + 1; b < parts.length; b++) least[a]![b] = Math.min(least[a]![b]!, lines[a]!.distanceSqToLine3(lines[b]!));
  }
  return least.map((row) => row.map(Math.sqrt));
}

/** Parts within a hand's breadth of each other, so that every movement can bring them together. */
function randomParts(random: () => number, kinds: readonly Rides[] = rides): SweepPart[] {
  const near = (x: number, y: number, z: number, size: number): Point => point(x + size * (random() - 0.5), y + size * (random() - 0.5), z + size * (random() - 0.5));
  return kinds.map((kind): SweepPart => {
    const start = near(-0.35, 0.36, 0.42, 0.35);
    return { rides: kind, start, end: near(start.x, start.y, start.z, 0.5), radius: 0.012 * random() };
  });
}

const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPoint = fc.record({ x: range(-1, 1), y: range(-1, 1), z: range(-1, 1) });
const packed = (p: Point, q: Point) => Float64Array.of(p.x, p.y, p.z, q.x, q.y, q.z);

describe('the quick distance of two pieces', () => {
  test('is that of the careful one, and s and t are places at that distance, for any pieces, parallel and of no length too', () => {
    fc.assert(fc.property(anyPoint, anyPoint, anyPoint, anyPoint, fc.constantFrom('any', 'parallel', 'point', 'points', 'nearly'), (a1, a2, b1, other, kind) => {
      const run = { x: a2.x - a1.x, y: a2.y - a1.y, z: a2.z - a1.z };
      const b2 = kind === 'parallel' ? point(b1.x + run.x, b1.y + run.y, b1.z + run.z) : kind === 'nearly' ? point(b1.x - run.x, b1.y - run.y, b1.z - run.z + 1e-7 * other.z) : kind === 'point' || kind === 'points' ? b1 : other;
      const end = kind === 'points' ? a1 : a2;
      const found = new Float64Array(2);
      const d = Math.sqrt(nearestSquared(packed(a1, end), packed(b1, b2), found));
      // Turned by 1e-7 against each other, pieces have a bottom so flat that rounding alone moves it by some nanometers.
      const digits = kind === 'nearly' ? 7 : 9;
      expect(d).toBeCloseTo(segmentDistance({ a1, a2: end, b1, b2 }).distance, digits);
      const on = (p: Point, q: Point, k: number) => [p.x + k * (q.x - p.x), p.y + k * (q.y - p.y), p.z + k * (q.z - p.z)] as const;
      const [p, q] = [on(a1, end, found[0]!), on(b1, b2, found[1]!)];
      expect(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])).toBeCloseTo(d, 9);
    }), { numRuns: 2000 });
  });

  test('gives 15.651394495590 for the sample pair, as three does, and not the 15.826771 that is often copied', () => {
    const [a1, a2, b1, b2] = [point(27.83, 31.74, -26.6), point(13.43, 21.77, 46.81), point(77.54, 7.53, 6.22), point(26.99, 12.39, 11.18)];
    const d = Math.sqrt(nearestSquared(packed(a1, a2), packed(b1, b2), new Float64Array(2)));
    expect(d).toBeCloseTo(15.65139449559, 11);
    expect(d).toBeCloseTo(Math.sqrt(new Line3(vector(a1), vector(a2)).distanceSqToLine3(new Line3(vector(b1), vector(b2)))), 11);
  });
});

describe('a pair known from before', () => {
  test('needs no other sweep when only the tape reads otherwise', () => {
    const parts = randomParts(randomFrom(3));
    const before = sweep(parts, lively, 3 * mm).pairs;
    const known = (a: number, b: number) => before.find((pair) => pair.a === a && pair.b === b);
    expect(clearanceSweep({ parts, motions: lively, measurementError: 8 * mm, known })).toEqual(sweep(parts, lively, 8 * mm));
  });
});

describe('golden section', () => {
  test('finds the bottom of a valley, or the lower end of a slope', () => {
    expect(goldenSection((x) => (x - 0.3) ** 2, 0, 1, 30).x).toBeCloseTo(0.3, 5);
    expect(goldenSection((x) => 2 - x, 0, 1, 10)).toEqual({ x: 1, y: 1 });
    expect(goldenSection((x) => 2 + x, 0, 1, 10)).toEqual({ x: 0, y: 2 });
  });
});

describe('the sweep over all states', () => {
  test('gives for every pair what brute force over the whole product of movements gives, with the rotations and distances of three', () => {
    const states = product(sampled(lively));
    expect(states.length).toBe(3 * 3 * 13 * 11 * 5 * 3 * 3 * 3);
    const random = randomFrom(31);
    // The ends of the two axles ride alike: one of each is in the list, two of those that turn.
    const parts = randomParts(random);
    const brute = bruteForce(parts, lively, states);
    const found = sweep(parts, lively);
    expect(found.states).toBe(states.length);
    expect(found.pairs.length).toBe(28);
    for (const { a, b, sampledGap } of found.pairs) {
      const [A, B] = [parts[a]!, parts[b]!];
      expect(sampledGap + A.radius + B.radius, `${A.rides}, ${B.rides}`).toBeCloseTo(brute[a]![b]!, 8);
    }
  });

  test('the same for lists of one kind and many, on a thinner grid of states', () => {
    const random = randomFrom(77);
    // Every second state of each movement is enough to see a wrong dependence; the grid of the sweep holds them all.
    const thin = product(sampled(lively).map((list) => list.filter((_, k) => k % 4 === 0 || k === list.length - 1)));
    for (let k = 0; k < 12; k++) {
      const kinds = Array.from({ length: 6 }, () => rides[Math.floor(random() * rides.length)] as Rides);
      const parts = randomParts(random, kinds);
      const brute = bruteForce(parts, lively, thin);
      for (const { a, b, sampledGap, dependsOn } of sweep(parts, lively).pairs) {
        const [A, B] = [parts[a]!, parts[b]!];
        const kept = sampledGap + A.radius + B.radius;
        // Two steering parts keep their distance but for the lean of their line, which the sweep neglects.
        const lean = A.rides === 'steering' && B.rides === 'steering' ? 11 * mm : 1e-8;
        expect(kept, `${A.rides}, ${B.rides}`).toBeLessThan(brute[a]![b]! + lean);
        if (dependsOn.length === 0) expect(kept).toBeCloseTo(Math.sqrt(placedByThree(A, lively, [0, 0, 0, 0, 0, 0, 0, 0]).distanceSqToLine3(placedByThree(B, lively, [0, 0, 0, 0, 0, 0, 0, 0]))), 8);
      }
    }
  });

  test('no state between the samples is nearer than what the search found by more than half a millimeter, 99 in 100 by a hundredth, and none is below the floor', () => {
    const random = randomFrom(6);
    let [tried, missed, worst] = [0, 0, 0];
    const limits = sampled(lively).map((list) => [Math.min(...list), Math.max(...list)] as const);
    for (let k = 0; k < 8; k++) {
      const parts = randomParts(random);
      const found = sweep(parts, lively);
      // Half of the states anywhere, half close to what the search gave: that is where it would stop too early.
      const anywhere = Array.from({ length: 1500 }, () => limits.map(([low, high]) => low + random() * (high - low)));
      const far = bruteForce(parts, lively, anywhere);
      for (const pair of found.pairs) {
        const [A, B] = [parts[pair.a]!, parts[pair.b]!];
        if (A.rides === 'steering' && B.rides === 'steering') continue;
        const close = near(pair, limits, random, 150);
        const d = Math.min(far[pair.a]![pair.b]!, ...close.map((state) => Math.sqrt(placedByThree(A, lively, state).distanceSqToLine3(placedByThree(B, lively, state)))));
        const gap = d - A.radius - B.radius;
        expect(gap).toBeGreaterThan(pair.floor - 0.01 * mm);
        tried++;
        if (gap < pair.gap - 0.01 * mm) missed++;
        worst = Math.max(worst, pair.gap - gap);
      }
    }
    expect(tried).toBe(8 * 28);
    expect(missed).toBeLessThanOrEqual(tried / 100);
    expect(worst).toBeLessThan(0.5 * mm);
  });

  test('refining never gives a larger gap than the samples, and more movement never a larger one than less', () => {
    const random = randomFrom(9);
    for (let k = 0; k < 10; k++) {
      const parts = randomParts(random);
      const least = (motions: Motions) => new Map(sweep(parts, motions).pairs.map((pair) => [`${pair.a} ${pair.b}`, pair]));
      const [none, all] = [least(still), least(lively)];
      for (const [name, pair] of all) {
        expect(pair.gap).toBeLessThanOrEqual(pair.sampledGap + 1e-12);
        expect(pair.gap).toBeLessThanOrEqual((none.get(name) as PairSweep).gap + 1e-6);
      }
    }
  });
});

function near(pair: PairSweep, limits: readonly (readonly [number, number])[], random: () => number, count: number): number[][] {
  const at = Object.values(pair.state);
  return Array.from({ length: count }, () => at.map((x, k) => {
    const [low, high] = limits[k]!;
    const moved = x + (random() - 0.5) * 0.1 * random() ** 3 * (high - low);
    return k === 3 ? moved : Math.min(high, Math.max(low, moved));
  }));
}

describe('each kind of movement', () => {
  const upright: Motions = { ...still, columnEnd: point(0, 0, 0.5), box: point(0, 0, 0) };
  const fixed = (at: Point, end = at, radius = 0): SweepPart => ({ rides: 'frame', start: at, end, radius });

  test('an ear 30 mm off its line, radius 5 mm, passes a rod of radius 10 mm 50 mm off the line by 5 mm, whatever way it was drawn', () => {
    for (const drawn of [0, 47, 100, 180, 271]) {
      const ear: SweepPart = { rides: 'steering', start: point(30 * mm * Math.cos(drawn * deg), 30 * mm * Math.sin(drawn * deg), 0.2), end: point(30 * mm * Math.cos(drawn * deg), 30 * mm * Math.sin(drawn * deg), 0.23), radius: 5 * mm };
      const [pair] = sweep([ear, fixed(point(50 * mm, 0, 0), point(50 * mm, 0, 0.5), 10 * mm)], upright).pairs;
      expect(pair?.gap).toBeCloseTo(5 * mm, 6);
      // Clockwise from the column's end, above: the ear goes from its angle back to 0.
      expect(Math.cos((pair as PairSweep).state.steering)).toBeCloseTo(Math.cos(drawn * deg), 2);
    }
  });

  test('a shaft on its own line does not see the steering turn', () => {
    const shaft: SweepPart = { rides: 'steering', start: upright.columnEnd, end: upright.box, radius: 9 * mm };
    const [pair] = sweep([shaft, fixed(point(0.1, 0, 0.2))], upright).pairs;
    expect(pair).toMatchObject({ dependsOn: [] });
    expect(pair?.gap).toBeCloseTo(91 * mm, 12);
    expect(pair?.floor).toBe(pair?.gap);
  });

  test('the column’s end of the shaft shifts with the body, the box’s end stays', () => {
    const m = { ...upright, mountSideways: 10 * mm };
    const at = (z: number) => sweep([{ rides: 'steering', start: upright.columnEnd, end: upright.box, radius: 0 }, fixed(point(0, 0.1, z))], m).pairs[0]?.gap as number;
    // The line leans by 10 in 500: square to it the middle comes nearer by 5 mm.
    expect(at(0.25)).toBeCloseTo(95 * mm, 4);
    expect(at(0)).toBeCloseTo(100 * mm, 4);
    expect(at(0.499)).toBeCloseTo(90 * mm, 4);
  });

  test('a master that the body carries forward comes nearer to what stands ahead of it by as much, a lever on the frame does not', () => {
    const m = { ...still, mountForeAft: 7 * mm };
    const wall = fixed(point(-0.2, 0.25, 0.5));
    const [pair] = sweep([{ rides: 'body', start: point(-0.4, 0.25, 0.5), end: point(-0.3, 0.25, 0.5), radius: 20 * mm }, wall], m).pairs;
    expect(pair?.gap).toBeCloseTo(73 * mm, 12);
    expect(pair?.state.foreAft).toBeCloseTo(7 * mm, 12);
    expect(pair?.floor).toBe(pair?.gap);
    expect(sweep([fixed(point(-0.4, 0.25, 0.5), point(-0.3, 0.25, 0.5), 20 * mm), wall], m).pairs[0]?.gap).toBeCloseTo(80 * mm, 12);
  });

  test('rolled with the left side up, a pipe on the left rises by its distance times the sine, and comes nearest at the end of the roll', () => {
    const m = { ...still, roll: 3 * deg, rollZ: 0 };
    const pipe: SweepPart = { rides: 'engine', start: point(0, 0.25, 0), end: point(-0.5, 0.25, 0), radius: 0 };
    const [pair] = sweep([pipe, fixed(point(-0.2, 0.25, 0.1))], m).pairs;
    expect(pair?.state.roll).toBeCloseTo(3 * deg, 6);
    expect(pair?.gap).toBeCloseTo(Math.hypot(0.25 * (1 - Math.cos(3 * deg)), 0.1 - 0.25 * Math.sin(3 * deg)), 9);
  });

  test('a hanging pedal swings its pad forward, and comes nearest to what it passes on the way, between two samples', () => {
    const m = { ...still, swing: 26 * deg };
    const arm: SweepPart = { rides: 'pedal', start: point(-0.5, 0, 0.6), end: point(-0.5, 0, 0.3), radius: 0 };
    // A ball 0.31 m from the pivot in the direction the arm has after 14 degrees; samples lie 2.6 degrees apart.
    const [pair] = sweep([arm, fixed(point(-0.5 + 0.31 * Math.sin(14 * deg), 0, 0.6 - 0.31 * Math.cos(14 * deg)))], m).pairs;
    expect(pair?.gap).toBeCloseTo(10 * mm, 6);
    expect((pair?.state.pedal as number) / deg).toBeCloseTo(14, 1);
    expect(pair?.sampledGap).toBeGreaterThan(10.4 * mm);
  });

  test('a pushrod keeps its end at the master, moves the other with the pedal, and what rides on the body does not see the mounts', () => {
    const m = { ...still, swing: 30 * deg, mountUp: 10 * mm };
    const rod: SweepPart = { rides: 'rod', start: point(-0.5, 0, 0.55), end: point(-0.4, 0, 0.55), radius: 0 };
    const master: SweepPart = { rides: 'body', start: point(-0.4, 0.05, 0.55), end: point(-0.3, 0.05, 0.55), radius: 0 };
    const [pair] = sweep([rod, master], m).pairs;
    expect(pair?.gap).toBeCloseTo(50 * mm, 9);
    expect(pair?.dependsOn).toEqual(['pedal']);
  });

  test('aired out, the frame comes down and an axle’s part goes up against it by the same', () => {
    const m = { ...still, airedOutFront: -80 * mm, liftedFront: 60 * mm };
    const tieRod: SweepPart = { rides: 'front-axle', start: point(0, 0.2, 0), end: point(0, 0.6, 0), radius: 10 * mm };
    const rail = fixed(point(-1, 0.4, 0.15), point(1, 0.4, 0.15), 50 * mm);
    const [pair] = sweep([tieRod, rail], m).pairs;
    expect(pair?.gap).toBeCloseTo(10 * mm, 9);
    expect(pair?.state.frontHeight).toBeCloseTo(-80 * mm, 12);
    // A rail inside the travel is met on the way, though at none of the three heights.
    expect(sweep([tieRod, fixed(point(-1, 0.4, 0.03), point(1, 0.4, 0.03))], m).pairs[0]?.gap).toBeCloseTo(-10 * mm, 6);
  });
});

describe('what is compared', () => {
  const at = (z: number, kind: Rides, touches?: number): SweepPart => ({ rides: kind, start: point(-0.3, 0.3, z), end: point(-0.2, 0.3, z), radius: 5 * mm, ...(touches === undefined ? {} : { touches }) });

  test('two parts that ride together keep their gap whatever moves', () => {
    for (const kind of rides.filter((one) => one !== 'rod')) {
      const [pair] = sweep([at(0.3, kind), at(0.4, kind)], lively).pairs;
      expect(pair?.gap, kind).toBeCloseTo(90 * mm, 12);
      expect(pair?.dependsOn).toEqual([]);
    }
  });

  test('a part and the one it is meant to touch are left out, and so are two that ride together and touch the same one', () => {
    const pairs = sweep([at(0.3, 'steering'), at(0.305, 'steering', 0), at(0.31, 'steering', 0), at(0.5, 'body', 1), at(0.6, 'frame')], lively).pairs;
    expect(pairs.map(({ a, b }) => `${a} ${b}`).sort()).toEqual(['0 3', '0 4', '1 4', '2 3', '2 4', '3 4']);
  });

  test('ends at one place are a ball, a part without radius is a line, and twice the measuring error comes off', () => {
    const ball: SweepPart = { rides: 'frame', start: point(0, 0, 0), end: point(0, 0, 0), radius: 20 * mm };
    const wire: SweepPart = { rides: 'frame', start: point(-1, 0, 0.1), end: point(1, 0, 0.1), radius: 0 };
    const [pair] = sweep([ball, wire], still, 3 * mm).pairs;
    expect(pair?.gap).toBeCloseTo(80 * mm, 12);
    expect(pair?.gapLessError).toBeCloseTo(80 * mm - 2 * (pair?.gapError as number), 12);
    expect(pair?.gapError).toBeCloseTo(3 * mm * Math.sqrt(0.5 + 1), 9);
  });

  test('numbers that make no truck are named, with the amount', () => {
    expect(code([at(0.3, 'frame')])).toEqual({ impossible: 'too-few-parts', by: 1 });
    expect(code([at(0.3, 'frame'), at(0.4, 'frame', 1)])).toEqual({ impossible: 'touches-itself', by: 1 });
    expect(code([at(0.3, 'frame'), at(0.4, 'frame', 5)])).toEqual({ impossible: 'no-such-part', by: 1 });
    expect(code([at(0.3, 'frame'), at(0.4, 'frame', 0)])).toEqual({ impossible: 'nothing-to-compare' });
    expect(code([at(0.3, 'frame'), at(0.4, 'steering')], { ...lively, columnEnd: lively.box })).toEqual({ impossible: 'steering-points-coincide', by: 0 });
    expect(code([at(0.3, 'frame'), at(0.4, 'body')], { ...lively, columnEnd: lively.box })).toBeUndefined();
    expect(code([at(0.3, 'frame'), at(0.4, 'front-axle')], { ...lively, airedOutFront: 0.1 })).toMatchObject({ impossible: 'heights-crossed-front' });
    expect(code([at(0.3, 'frame'), at(0.4, 'rear-axle')], { ...lively, airedOutRear: 0.1 })).toMatchObject({ impossible: 'heights-crossed-rear' });
  });

  test('a coordinate that is no number, or a negative radius, is a programmer’s error', () => {
    expect(() => code([at(0.3, 'frame'), at(NaN, 'frame')])).toThrow(RangeError);
    expect(() => code([at(0.3, 'frame'), { ...at(0.4, 'frame'), radius: -1 }])).toThrow(RangeError);
    expect(() => code([at(0.3, 'frame'), at(0.4, 'frame')], { ...lively, roll: -0.1 })).toThrow(RangeError);
  });
});
