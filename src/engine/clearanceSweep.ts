import { capsuleGap, lessError } from './capsule.ts';
import type { Point } from './capsule.ts';
import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative } from './require.ts';
import { placeTable } from './sweepGrid.ts';
import type { PlaceTable } from './sweepGrid.ts';
import { leastOfPair } from './sweepPair.ts';
import type { Motions, SweepPart, SweepState } from './sweepMotion.ts';
import { motionNames, reachOf, sampled, shaftLine } from './sweepMotion.ts';

/** The nearest two parts come to each other in all states. */
export interface PairSweep {
  /** Numbers of the parts in the list. */
  readonly a: number;
  readonly b: number;
  readonly gap: number;
  readonly gapError: number;
  readonly gapLessError: number;
  /** Nearest places on the center lines, and how far along each part. */
  readonly onA: Point;
  readonly onB: Point;
  readonly s: number;
  readonly t: number;
  readonly state: SweepState;
  /** The motions that change this gap; all others leave it alone. None for two parts that ride together. */
  readonly dependsOn: readonly (keyof SweepState)[];
  /** The least gap at the samples themselves, before the search between them. */
  readonly sampledGap: number;
  /** No state at all has a smaller gap than this, also between the samples. */
  readonly floor: number;
}

/**
 * The least gap of every pair of parts through every combination of movements.
 *
 *   gap = min over states of |A − B| − r_A − r_B
 *
 * states: 3 ride heights at each axle × 13 angles of the steering over a full turn × 11 places of the pedal × 5 angles of
 * engine roll × 3 × 3 × 3 places on the rubber mounts. A part's place depends on its own movements alone, so a pair's gap is
 * looked for over the movements of those two; two that shift with the same body do not see the mounts. That is the
 * minimum over all 173,745 combinations, not an estimate of it.
 *
 * Between the samples the search goes on: from the nearest state, golden section on one movement after the other, each
 * between the neighboring samples, until nothing is gained; then from other valleys of the samples that could be deeper,
 * six at most. What stays unsearched is a valley between samples that are all higher. There no point is farther from a
 * sampled place than reach × step/2 for each turn and step/2 for each shift, so
 *
 *   floor = sampledGap − Σ reach × step/2 − Σ step/2
 *
 * is below all of it: a guarantee, and a gloomy one. Where parts only shift there is no second valley, since the distance
 * of two convex parts is convex in a shift, and the floor is the gap itself. Measured: of 896 pairs thrown together within
 * a hand's breadth, random trials found a nearer state for one, by 0.15 mm.
 *
 * Not compared: a part and the one that it is meant to touch; two that ride together and are meant to touch the same part.
 *
 * measurementError: as capsuleGap. Lengths m, angles rad. Pairs come sorted, the least gap less error first.
 * Neglected: the engine moving forward and back on its mounts; errors of the pivots and lines that parts turn about; bent parts; arcs of the suspension; steered wheels;
 * two pedals that swing apart.
 *
 * Impossible: 'too-few-parts' (by how many are missing), 'no-such-part', 'touches-itself' (by: the part's number),
 * 'steering-points-coincide', 'heights-crossed-front', 'heights-crossed-rear' (by, m), 'nothing-to-compare'.
 * @throws RangeError if a number is not finite, a radius, range or error negative
 * Source: derived. Worked value: a capsule 30 mm off a vertical line, radius 5, and a rod 50 mm off it, radius 10: 5 mm.
 */
export function clearanceSweep(p: {
  readonly parts: readonly SweepPart[];
  readonly motions: Motions;
  readonly measurementError: number;
  /** A pair that is known from before, its two parts and all that moves them unchanged: it is not looked for again, whatever the error was then. */
  readonly known?: (a: number, b: number) => PairSweep | undefined;
}): { readonly pairs: readonly PairSweep[]; readonly states: number } | Impossible {
  const { parts, motions, measurementError } = p;
  requireAll(p);
  const impossible = cannotSweep(parts, motions);
  if (impossible) return impossible;
  const line = shaftLine(motions);
  const reach = parts.map((part) => reachOf(part, motions, line));
  const samples = sampled(motions);
  const tables = parts.map((part) => placeTable(part, motions, line, samples));
  const pairs: PairSweep[] = [];
  for (let b = 1; b < parts.length; b++) {
    for (let a = 0; a < b; a++) {
      const [A, B] = [parts[a] as SweepPart, parts[b] as SweepPart];
      if (meantToTouch(A, B, a, b)) continue;
      const known = p.known?.(a, b);
      pairs.push(known ? { ...known, ...lessError({ ...known, measurementError }) } : sweepPair({
        a, b, A, B, motions, line, samples, measurementError,
        reachA: reach[a] as number, reachB: reach[b] as number, tableA: tables[a] as PlaceTable, tableB: tables[b] as PlaceTable,
      }));
    }
  }
  if (pairs.length === 0) return { impossible: 'nothing-to-compare' };
  pairs.sort((x, y) => x.gapLessError - y.gapLessError);
  return { pairs, states: samples.reduce((product, one) => product * one.length, 1) };
}

function sweepPair({ a, b, measurementError, ...pair }: Parameters<typeof leastOfPair>[0] & { readonly a: number; readonly b: number; readonly measurementError: number }): PairSweep {
  const { A, B } = pair;
  const least = leastOfPair(pair);
  const { gap, gapError, gapLessError, onA, onB, s, t } = capsuleGap({ ...least.ends, radiusA: A.radius, radiusB: B.radius, measurementError });
  const sampledGap = least.sampledDistance - A.radius - B.radius;
  return {
    a, b, gap, gapError, gapLessError, onA, onB, s, t, state: least.state, dependsOn: least.dependsOn.map((k) => motionNames[k] as keyof SweepState),
    sampledGap, floor: least.shiftsOnly ? gap : sampledGap - least.betweenSamples,
  };
}

function meantToTouch(A: SweepPart, B: SweepPart, a: number, b: number): boolean {
  return A.touches === b || B.touches === a || (A.touches !== undefined && A.touches === B.touches && A.rides === B.rides);
}

function cannotSweep(parts: readonly SweepPart[], m: Motions): Impossible | undefined {
  if (parts.length < 2) return { impossible: 'too-few-parts', by: 2 - parts.length };
  for (const [k, { touches }] of parts.entries()) {
    if (touches === k) return { impossible: 'touches-itself', by: k };
    if (touches !== undefined && parts[touches] === undefined) return { impossible: 'no-such-part', by: k };
  }
  const has = (rides: SweepPart['rides']): boolean => parts.some((part) => part.rides === rides);
  const { length } = shaftLine(m);
  // Two joints nearer than a shaft's own thickness give no direction to turn about.
  if (has('steering') && length < 0.01) return { impossible: 'steering-points-coincide', by: length };
  if (has('front-axle') && m.liftedFront < m.airedOutFront) return { impossible: 'heights-crossed-front', by: m.airedOutFront - m.liftedFront };
  if (has('rear-axle') && m.liftedRear < m.airedOutRear) return { impossible: 'heights-crossed-rear', by: m.airedOutRear - m.liftedRear };
  return undefined;
}

function requireAll({ parts, motions, measurementError }: Parameters<typeof clearanceSweep>[0]): void {
  const { columnEnd, box, ...numbers } = motions;
  requireFinite({ ...numbers, columnX: columnEnd.x, columnY: columnEnd.y, columnZ: columnEnd.z, boxX: box.x, boxY: box.y, boxZ: box.z });
  requireNonNegative({ measurementError, roll: motions.roll, mountUp: motions.mountUp, mountSideways: motions.mountSideways, mountForeAft: motions.mountForeAft });
  for (const { start, end, radius } of parts) {
    requireNonNegative({ radius });
    requireFinite({ startX: start.x, startY: start.y, startZ: start.z, endX: end.x, endY: end.y, endZ: end.z });
  }
}
