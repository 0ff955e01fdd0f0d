import type { Point } from './capsule.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { lineSlack } from './lineSlack.ts';
import { areFinite, requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * How far apart the two ends of a hose come, from the frame to a wheel that steers and rides up and down.
 *
 *   wheel's end   W(δ, a) = K + R(δ) (W − K) − (0, 0, a)       R: turn by δ about the line of the two ball joints
 *   distance      d = |W(δ, a) − F|
 *   slack         e = L − d
 *
 * Axes x forward, y left, z up (m), of the frame, at drive height and steering straight. δ (rad) + is a turn to the left:
 * counterclockwise seen from above. a: frame over the axle against drive height (m), + is up, so the wheel's end goes
 * down in the axes of the frame.
 *
 * states: 3 heights (aired out, drive, lifted) × 3 places of the steering (full right, straight, full left). Between them
 * nothing is missed: at any height d² is a + b cos δ + c sin δ, so its greatest and least lie at a lock or at
 * tan δ = c/b; over the heights d² is a parabola that opens upward, so the greatest lies at one end of the travel, and the
 * least at an end or at its bottom. The least is taken over the two together by closing in on both in turn from all nine.
 *
 * Neglected: camber, toe and caster that change with ride height; the arc of the arms; flex of fittings; any bracket
 * between the ends (one stretch at a time).
 *
 * Impossible: 'ball-joints-coincide' (by, m), 'heights-crossed' (by, m).
 * @throws RangeError if a number is not finite, L ≤ 0 or a lock negative
 * Source: derived. Worked value: F at the kingpin line, W 0.1 m beside it: d the same at every lock.
 */
export interface HosePlace {
  /** Turn of the wheel (rad, + left) and ride height (m). */
  readonly steer: number;
  readonly height: number;
  readonly distance: number;
}

export interface HoseState extends HosePlace {
  readonly slack: number;
  readonly gentlestRadius?: number;
}

export interface SteeredHose {
  readonly frame: Point;
  readonly wheel: Point;
  readonly low: Point;
  readonly high: Point;
  readonly lockLeft: number;
  readonly lockRight: number;
  readonly airedOut: number;
  readonly lifted: number;
  readonly length: number;
}

export function hoseSlack(p: SteeredHose): { /** Aired out, drive, lifted; in each full right, straight, full left. */ readonly states: readonly HoseState[]; readonly farthest: HoseState; readonly nearest: HoseState } | Impossible {
  const far = farthestApart(p);
  if (isImpossible(far)) return far;
  const { states, turning, farthest } = far;
  const closed = [...states, ...turning].map((from) => closeIn(p, from));
  const nearest = [...states, ...turning, ...closed].reduce((least, state) => (state.distance < least.distance - 1e-9 ? state : least));
  const hung = (place: HosePlace): HoseState => ({ ...place, ...lineSlack({ length: p.length, distance: place.distance }) });
  return { states: states.map(hung), farthest: hung(farthest), nearest: hung(nearest) };
}

/** Where the ends are farthest apart, and the places it is found among: the nine, and those where the distance turns. */
export function farthestApart(p: SteeredHose): { readonly states: readonly HosePlace[]; readonly turning: readonly HosePlace[]; readonly farthest: HosePlace } | Impossible {
  const { lockLeft, lockRight, airedOut, lifted, length } = p;
  requirePositive({ length });
  requireNonNegative({ lockLeft, lockRight });
  requireFinite({ airedOut, lifted });
  for (const name of ['frame', 'wheel', 'low', 'high'] as const) {
    const { x, y, z } = p[name];
    if (!areFinite(x, y, z)) requireFinite({ [`${name}.x`]: x, [`${name}.y`]: y, [`${name}.z`]: z });
  }
  const apart = Math.hypot(p.high.x - p.low.x, p.high.y - p.low.y, p.high.z - p.low.z);
  if (apart < 0.01) return { impossible: 'ball-joints-coincide', by: apart };
  if (lifted < airedOut) return { impossible: 'heights-crossed', by: airedOut - lifted };
  const at = (steer: number, height: number): HosePlace => ({ steer, height, distance: distanceAt(p, steer, height) });
  const steers = [-lockRight, 0, lockLeft];
  const heights = [airedOut, 0, lifted];
  const states = heights.flatMap((height) => steers.map((steer) => at(steer, height)));
  const turning = heights.flatMap((height) => turningPoints(p, height).map((steer) => at(steer, height)));
  const farthest = [...states, ...turning].reduce((most, state) => (state.distance > most.distance ? state : most));
  return { states, turning, farthest };
}

/** Where the wheel's end is, by Rodrigues' formula: along the line, in the plane, and square to both. */
export function wheelEnd(p: Pick<SteeredHose, 'wheel' | 'low' | 'high'>, steer: number, height: number): Point {
  const { along, flat, square } = split(p);
  const [c, s] = [Math.cos(steer), Math.sin(steer)];
  return { x: along.x + flat.x * c + square.x * s, y: along.y + flat.y * c + square.y * s, z: along.z + flat.z * c + square.z * s - height };
}

function split({ wheel, low, high }: Pick<SteeredHose, 'wheel' | 'low' | 'high'>): { readonly along: Point; readonly flat: Point; readonly square: Point } {
  // The axis points up, whichever joint was called the upper one, so that + is a turn to the left.
  const up = high.z >= low.z ? 1 : -1;
  const run = { x: up * (high.x - low.x), y: up * (high.y - low.y), z: up * (high.z - low.z) };
  const size = Math.hypot(run.x, run.y, run.z);
  const e = { x: run.x / size, y: run.y / size, z: run.z / size };
  const d = { x: wheel.x - low.x, y: wheel.y - low.y, z: wheel.z - low.z };
  const k = d.x * e.x + d.y * e.y + d.z * e.z;
  const flat = { x: d.x - k * e.x, y: d.y - k * e.y, z: d.z - k * e.z };
  return { along: { x: low.x + k * e.x, y: low.y + k * e.y, z: low.z + k * e.z }, flat, square: { x: e.y * flat.z - e.z * flat.y, y: e.z * flat.x - e.x * flat.z, z: e.x * flat.y - e.y * flat.x } };
}

function distanceAt(p: SteeredHose, steer: number, height: number): number {
  const end = wheelEnd(p, steer, height);
  return Math.hypot(end.x - p.frame.x, end.y - p.frame.y, end.z - p.frame.z);
}

/** Angles inside the locks at which the distance stops growing or shrinking: tan δ = c/b. */
function turningPoints(p: SteeredHose, height: number): number[] {
  const { along, flat, square } = split(p);
  const from = { x: along.x - p.frame.x, y: along.y - p.frame.y, z: along.z - height - p.frame.z };
  const b = from.x * flat.x + from.y * flat.y + from.z * flat.z;
  const c = from.x * square.x + from.y * square.y + from.z * square.z;
  if (b === 0 && c === 0) return [];
  const first = Math.atan2(c, b);
  return [first - Math.PI, first, first + Math.PI].filter((steer) => steer > -p.lockRight && steer < p.lockLeft);
}

/** Down to the least distance near a state: best height for the angle, best angle for the height, in turn. */
function closeIn(p: SteeredHose, from: HosePlace): HosePlace {
  let best = from;
  for (let round = 0; round < 60; round++) {
    const before = best.distance;
    const level = Math.min(p.lifted, Math.max(p.airedOut, wheelEnd(p, best.steer, 0).z - p.frame.z));
    for (const turn of [best.steer, ...turningPoints(p, level)]) {
      const next = { steer: turn, height: level, distance: distanceAt(p, turn, level) };
      if (next.distance < best.distance) best = next;
    }
    if (before - best.distance < 1e-9) break;
  }
  return best;
}
