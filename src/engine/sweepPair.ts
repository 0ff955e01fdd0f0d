import type { Point } from './capsule.ts';
import { goldenSection } from './goldenSection.ts';
import { nearestSquared } from './segmentPair.ts';
import type { PlaceTable, Samples } from './sweepGrid.ts';
import { sampleAll } from './sweepGrid.ts';
import type { Motions, Rides, SweepPart, SweepState, shaftLine } from './sweepMotion.ts';
import { motionNames, mountShifts, movedBy, placeEnds } from './sweepMotion.ts';

const [steering, turns] = [3, [0, 3, 4]];
/** A third of a micrometer, squared: the center lines cross. */
const nothing = 1e-13;
const onTheBody: readonly Rides[] = ['body', 'pedal', 'rod'];

interface Pair {
  readonly A: SweepPart;
  readonly B: SweepPart;
  readonly motions: Motions;
  readonly line: ReturnType<typeof shaftLine>;
  /** Values to try of every motion. */
  readonly samples: Samples;
  readonly reachA: number;
  readonly reachB: number;
  readonly tableA: PlaceTable;
  readonly tableB: PlaceTable;
}

/** Which motions can change the distance of two parts. */
export function motionsOf({ A, B, samples, reachA, reachB }: Pick<Pair, 'A' | 'B' | 'samples' | 'reachA' | 'reachB'>): readonly number[] {
  const rigid = A.rides === B.rides && A.rides !== 'rod';
  if (rigid) return [];
  const together = onTheBody.includes(A.rides) && onTheBody.includes(B.rides);
  const moves = (part: SweepPart, reach: number): number[] => movedBy[part.rides].filter((k) => !turns.includes(k) || reach > 1e-6);
  return [...new Set([...moves(A, reachA), ...moves(B, reachB)])].filter((k) => !(together && mountShifts.includes(k)) && (samples[k] as readonly number[]).length > 1).sort();
}

/**
 * The state in which two parts are nearest: all samples of the motions that count for them, then a search between the
 * samples. See clearanceSweep for what it can miss. A state that ties with rest is given as rest.
 */
export function leastOfPair(pair: Pair): {
  readonly ends: { readonly a1: Point; readonly a2: Point; readonly b1: Point; readonly b2: Point };
  readonly state: SweepState;
  readonly dependsOn: readonly number[];
  readonly sampledDistance: number;
  readonly betweenSamples: number;
  /** Nothing but straight shifts: then the distance has one valley, and the search has its bottom. */
  readonly shiftsOnly: boolean;
} {
  const { A, B, motions, line, samples } = pair;
  const dependsOn = motionsOf(pair);
  const [a, b, found] = [new Float64Array(6), new Float64Array(6), new Float64Array(2)];
  const state = new Float64Array(motionNames.length);
  /** Of the state as it is now; `k` is all that has changed since it was last asked. */
  const distance = (k?: number): number => {
    if (k === undefined || movedBy[A.rides].includes(k)) placeEnds(A, motions, line, state, a);
    if (k === undefined || movedBy[B.rides].includes(k)) placeEnds(B, motions, line, state, b);
    return nearestSquared(a, b, found);
  };
  // Rest first: it stands unless another state is really nearer.
  let least = distance();
  const best = state.slice();
  const grid = sampleAll(dependsOn, pair);
  for (let index = 0; index < grid.squared.length; index++) {
    if (grid.squared[index]! >= least * (1 - 1e-12)) continue;
    least = grid.squared[index]!;
    grid.set(index, best);
  }
  const sampledDistance = Math.sqrt(least);
  const betweenSamples = halfSteps(pair, dependsOn);
  const refine = (from: Float64Array): void => {
    state.set(from);
    const found = descend(dependsOn, samples, state, distance);
    if (found < least * (1 - 1e-9)) {
      least = found;
      best.set(state);
    }
  };
  refine(best);
  // Other valleys that could still be deeper, the lowest first; more than a few are copies of one another.
  const others = least > nothing ? grid.valleys((Math.sqrt(least) + betweenSamples) ** 2).sort((x, y) => grid.squared[x]! - grid.squared[y]!) : [];
  for (const index of others.slice(0, 6)) {
    grid.set(index, state);
    refine(state.slice());
  }
  state.set(best);
  distance();
  return {
    ends: { a1: pointOf(a, 0), a2: pointOf(a, 3), b1: pointOf(b, 0), b2: pointOf(b, 3) },
    state: Object.fromEntries(motionNames.map((name, k) => [name, state[k]!])) as unknown as SweepState,
    dependsOn, sampledDistance, betweenSamples, shiftsOnly: !dependsOn.some((k) => turns.includes(k)) && !(dependsOn.length > 0 && (A.rides === 'steering' || B.rides === 'steering')),
  };
}

/** No point of one part, seen from the other, is farther than this from where a sample has it: reach times half a step of each turn, half a step of each shift. */
function halfSteps({ A, B, samples, reachA, reachB }: Pair, dependsOn: readonly number[]): number {
  return dependsOn.reduce((sum, k) => {
    const half = widest(samples[k] as readonly number[]) / 2;
    const reach = (movedBy[A.rides].includes(k) ? reachA : 0) + (movedBy[B.rides].includes(k) ? reachB : 0);
    return sum + half * (turns.includes(k) ? reach : 1);
  }, 0);
}

/** Golden section on one motion after the other until nothing is gained; leaves the state there. */
function descend(dependsOn: readonly number[], samples: Samples, state: Float64Array, distance: (k?: number) => number): number {
  let least = distance();
  for (let round = 0; round < 30 && least > nothing; round++) {
    const before = least;
    for (const k of dependsOn) {
      const rest = state[k]!;
      const [low, high] = between(samples[k] as readonly number[], rest, k === steering);
      const f = (at: number): number => ((state[k] = at), distance(k));
      // At an end of the range that rises inward there is nothing to look for.
      const atEnd = rest === low ? 1 : rest === high ? -1 : 0;
      const rises = atEnd !== 0 && f(rest + atEnd * 0.02 * (high - low)) >= least;
      const { x, y } = rises ? { x: rest, y: least } : goldenSection(f, low, high, 14);
      const better = y < least * (1 - 1e-9);
      if (better) least = y;
      f(better ? x : rest);
    }
    if (least > before * (1 - 1e-5)) break;
  }
  return least;
}

/** One sample to either side; a full turn has no ends. */
function between(samples: readonly number[], at: number, endless: boolean): readonly [number, number] {
  const [first, last] = [samples[0] as number, samples.at(-1) as number];
  const [low, high] = [Math.min(first, last), Math.max(first, last)];
  const step = widest(samples);
  return endless ? [at - step, at + step] : [Math.max(low, at - step), Math.min(high, at + step)];
}

const widest = (samples: readonly number[]): number => Math.max(...samples.slice(1).map((x, k) => Math.abs(x - (samples[k] as number))));

const pointOf = (ends: Float64Array, at: number): Point => ({ x: ends[at]!, y: ends[at + 1]!, z: ends[at + 2]! });
