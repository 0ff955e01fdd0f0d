import type { Point } from './capsule.ts';
import type { Impossible } from './outcome.ts';
import { requirePositive } from './require.ts';
import { isImpossible } from './outcome.ts';
import { shaftLine } from './shaftLine.ts';
import type { ShaftEnds, ShaftLine } from './shaftLine.ts';
import { dot, length, minus, mix } from './vector.ts';

/**
 * Where the middle joint of a three-joint shaft bends the joints least: the place, inside a box that a bearing can be
 * bolted in, at which the largest of the three angles is smallest.
 *
 *   least over M in the box of max(β_upper, β_middle, β_lower)
 *
 * Why the angle and not the ripple: with three joints and two clockings to choose, the ripple can be brought to
 * nothing wherever no joint outweighs the other two (clocking.ts), so it picks no place. Nearly equal angles are always
 * among those, and no joint works near its limit.
 *
 * Where each angle is at most some β below 90° is a cone about the column's axis, a cone about the box's and a lens
 * between the ends: all convex, and so is what they share. So the largest angle has one valley, and its slope at a place
 * says on which side every better place lies. An ellipsoid around all that can still be best is cut through its center
 * again and again. (A grid drawn closer and closer fails here: the valley is a narrow crease, oblique to any grid.)
 * Where several places are equally good, one of them is given.
 * The sum of the three is at least the angle between column and box, so a third of that is the floor.
 *
 * low, high: two opposite corners of the box (m, low ≤ high in each axis; equal fixes that axis). Column, box,
 * jointLength: as shaftLine. A place that leaves a shaft shorter than jointLength is passed over; where such places hide
 * the valley's floor, the one found beside them can be short of the best by a hair.
 *
 * Impossible 'no-place', by how much a shaft is shorter than its joints at the best place seen.
 * Neglected: what is in the way. Ask clearance.
 * @throws RangeError as shaftLine, or if low is above high
 * Source: derived; checked against a random search. Worked value: C (0,0,0) level, B (400,0,−300)
 * falling at 70°, a wide box: 23.33° at all three joints, a third of 70°.
 */
export type BearingRegion = Omit<ShaftEnds, 'joints' | 'middle'> & { readonly low: Point; readonly high: Point };

export interface BestBearing {
  readonly at: Point;
  readonly line: ShaftLine;
  readonly largest: number;
}

const cuts = 440; // each takes an eighth of the volume off: what is left is 1e-8 of the box along each edge

export function bestBearing(p: BearingRegion): BestBearing | Impossible {
  const { low, high, jointLength } = p;
  requirePositive({ jointLength });
  for (const axis of ['x', 'y', 'z'] as const) {
    if (!(low[axis] <= high[axis])) throw new RangeError(`low: expected ${axis} at or below that of high, found ${low[axis]} over ${high[axis]}`);
  }
  const inside = (at: Point): Point => ({ x: Math.min(high.x, Math.max(low.x, at.x)), y: Math.min(high.y, Math.max(low.y, at.y)), z: Math.min(high.z, Math.max(low.z, at.z)) });
  let shape = around(low, high);
  let center = mix(0.5, low, 0.5, high);
  let best: { readonly at: Point; readonly worth: number } | undefined;
  let short = Infinity;
  for (let k = 0; k < cuts; k += 1) {
    const at = inside(center);
    const seen = look(p, at);
    if (seen.short > 0) short = Math.min(short, seen.short);
    else if (!best || seen.worth < best.worth) best = { at, worth: seen.worth };
    // Outside the box the way back in is the cut; inside it, the way to smaller angles.
    const out = minus(center, at);
    const cut = cutAway(shape, center, dot(out, out) > 0 ? out : seen.uphill);
    if (!cut) break;
    ({ shape, center } = cut);
  }
  if (!best) return { impossible: 'no-place', by: short };
  const line = shaftLine({ ...p, joints: 3, middle: best.at });
  if (isImpossible(line)) return { impossible: 'no-place', by: line.by };
  return { at: best.at, line, largest: Math.max(line.upperAngle, line.middleAngle, line.lowerAngle) };
}

/**
 * One place: minus the cosine of its largest angle, which orders places as the angle does, and a direction such that
 * every better place lies on its other side. That is the slope of the worst angle below 90°. Above it the better places
 * are ahead of the column, behind the box or inside the ball over the two. By how much a shaft is too short, else 0.
 */
function look({ column, box, jointLength }: BearingRegion, at: Point): { readonly worth: number; readonly uphill: Point; readonly short: number } {
  const up = minus(at, column.at);
  const down = minus(box.at, at);
  const [upper, lower] = [length(up), length(down)];
  const short = jointLength - Math.min(upper, lower);
  if (short > 0) return { worth: 1, short, uphill: upper < lower ? mix(-1, column.axis, 0, column.axis) : box.axis };
  const [u, l] = [mix(1 / upper, up, 0, up), mix(1 / lower, down, 0, down)];
  const cosines = [dot(u, column.axis), dot(u, l), dot(l, box.axis)] as const;
  const least = Math.min(...cosines);
  const worst = cosines.indexOf(least);
  const away = (from: Point, toward: Point, cosine: number, size: number): Point => mix(1 / size, toward, -cosine / size, from); // slope of a cosine along `from`'s far end
  if (worst === 0) return { worth: -least, short: 0, uphill: least > 0 ? mix(-1, away(u, column.axis, least, upper), 0, u) : mix(-1, column.axis, 0, u) };
  if (worst === 2) return { worth: -least, short: 0, uphill: least > 0 ? away(l, box.axis, least, lower) : box.axis };
  const slope = mix(-1, away(u, l, least, upper), 1, away(l, u, least, lower));
  return { worth: -least, short: 0, uphill: least > 0 ? slope : minus(at, mix(0.5, column.at, 0.5, box.at)) };
}

/** An ellipsoid around everything that can still be best: center, and its shape as rows of the matrix P, (y − c)ᵀ P⁻¹ (y − c) ≤ 1. */
type Shape = readonly [Point, Point, Point];

function around(low: Point, high: Point): Shape {
  const size = minus(high, low);
  return [{ x: 0.75 * size.x ** 2, y: 0, z: 0 }, { x: 0, y: 0.75 * size.y ** 2, z: 0 }, { x: 0, y: 0, z: 0.75 * size.z ** 2 }];
}

/** The smallest ellipsoid around the half of this one that lies downhill of its center. Nothing left to cut: undefined. */
function cutAway(shape: Shape, center: Point, uphill: Point): { readonly shape: Shape; readonly center: Point } | undefined {
  const reach: Point = { x: dot(shape[0], uphill), y: dot(shape[1], uphill), z: dot(shape[2], uphill) };
  const across = dot(reach, uphill);
  if (!(across > 0)) return undefined;
  const step = mix(1 / Math.sqrt(across), reach, 0, reach);
  const row = (of: Point, part: number): Point => mix(9 / 8, of, (-9 / 16) * part, step);
  return { center: mix(1, center, -1 / 4, step), shape: [row(shape[0], step.x), row(shape[1], step.y), row(shape[2], step.z)] };
}
