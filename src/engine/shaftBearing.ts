import type { Point } from './capsule.ts';
import type { Impossible } from './outcome.ts';
import { requirePositive } from './require.ts';
import { shaftLine } from './shaftLine.ts';
import type { ShaftEnds, ShaftLine } from './shaftLine.ts';
import { isImpossible } from './outcome.ts';

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
 * between the ends: all convex, and so is what they share. So the largest angle has one valley, also when the best height is taken for
 * each place in plan and the best sideways place for each station: golden sections, one inside the other, find its
 * floor. (A grid drawn closer and closer does not: the valley is a narrow crease, oblique to any grid.) Where several
 * places are equally good, one of them is given.
 * The sum of the three is at least the angle between column and box, so a third of that is the floor.
 *
 * low, high: two opposite corners of the box (m, low ≤ high in each axis; equal fixes that axis). Column, box,
 * jointLength: as shaftLine. A place that leaves a shaft shorter than jointLength is passed over.
 *
 * Impossible 'no-place', by how much a shaft is shorter than its joints at the best place found.
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

const rounds = [22, 26, 30] as const; // fore and aft, sideways, up: 0.618^22 of the box is 3e-5 of it; the inner ones finer than the outer

export function bestBearing(p: BearingRegion): BestBearing | Impossible {
  const { low, high, jointLength } = p;
  requirePositive({ jointLength });
  for (const axis of ['x', 'y', 'z'] as const) {
    if (!(low[axis] <= high[axis])) throw new RangeError(`low: expected ${axis} at or below that of high, found ${low[axis]} over ${high[axis]}`);
  }
  const place = (x: number, y: number, z: number): number => worth(p, x, y, z);
  const upFor = (x: number, y: number) => least((z) => place(x, y, z), low.z, high.z, rounds[2]);
  const sidewaysFor = (x: number) => least((y) => upFor(x, y).value, low.y, high.y, rounds[1]);
  const x = least((at) => sidewaysFor(at).value, low.x, high.x, rounds[0]).at;
  const y = sidewaysFor(x).at;
  const at = { x, y, z: upFor(x, y).at };
  const line = shaftLine({ ...p, joints: 3, middle: at });
  if (isImpossible(line)) return { impossible: 'no-place', by: line.by };
  return { at, line, largest: Math.max(line.upperAngle, line.middleAngle, line.lowerAngle) };
}

/**
 * Minus the cosine of the largest angle: it orders places as the angle does and costs no arc, for a function that is
 * asked twenty thousand times. Where a shaft is too short, more than any cosine, and the more the shorter.
 */
function worth(p: BearingRegion, x: number, y: number, z: number): number {
  const { column, box, jointLength } = p;
  const [ux, uy, uz] = [x - column.at.x, y - column.at.y, z - column.at.z];
  const [lx, ly, lz] = [box.at.x - x, box.at.y - y, box.at.z - z];
  const upper = Math.sqrt(ux * ux + uy * uy + uz * uz);
  const lower = Math.sqrt(lx * lx + ly * ly + lz * lz);
  const short = jointLength - Math.min(upper, lower);
  if (short > 0) return 1 + short;
  return -Math.min(
    (ux * column.axis.x + uy * column.axis.y + uz * column.axis.z) / upper,
    (ux * lx + uy * ly + uz * lz) / (upper * lower),
    (lx * box.axis.x + ly * box.axis.y + lz * box.axis.z) / lower,
  );
}

const golden = (Math.sqrt(5) - 1) / 2;

/** The lowest place of a function with one valley, by golden sections; its ends are tried too. */
function least(f: (x: number) => number, low: number, high: number, count: number): { readonly at: number; readonly value: number } {
  if (low === high) return { at: low, value: f(low) };
  let [a, b] = [low, high];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  for (let k = 0; k < count; k += 1) {
    if (fc <= fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return [{ at: c, value: fc }, { at: d, value: fd }, { at: low, value: f(low) }, { at: high, value: f(high) }].reduce((best, one) => (one.value < best.value ? one : best));
}
