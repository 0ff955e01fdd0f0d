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

/** Golden sections fore and aft, sideways, up: the inner ones finer than the outer. First over the whole box, then closer. */
const passes = [{ part: 1, rounds: [12, 14, 16] }, { part: 0.04, rounds: [13, 15, 17] }] as const; // 0.618^13 of 4 % is 1e-4 of the box

export function bestBearing(p: BearingRegion): BestBearing | Impossible {
  const { low, high, jointLength } = p;
  requirePositive({ jointLength });
  for (const axis of ['x', 'y', 'z'] as const) {
    if (!(low[axis] <= high[axis])) throw new RangeError(`low: expected ${axis} at or below that of high, found ${low[axis]} over ${high[axis]}`);
  }
  const worth = worthOf(p);
  let at: Point = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2, z: (low.z + high.z) / 2 };
  for (const { part, rounds } of passes) {
    const from = (axis: 'x' | 'y' | 'z'): number => Math.max(low[axis], at[axis] - (part * (high[axis] - low[axis])) / 2);
    const to = (axis: 'x' | 'y' | 'z'): number => Math.min(high[axis], at[axis] + (part * (high[axis] - low[axis])) / 2);
    const [y0, y1, z0, z1] = [from('y'), to('y'), from('z'), to('z')];
    const upFor = (x: number, y: number): Least => least((z) => worth(x, y, z), z0, z1, rounds[2]);
    const sidewaysFor = (x: number): Least => least((y) => upFor(x, y).value, y0, y1, rounds[1]);
    const x = least((station) => sidewaysFor(station).value, from('x'), to('x'), rounds[0]).at;
    const y = sidewaysFor(x).at;
    at = { x, y, z: upFor(x, y).at };
  }
  const line = shaftLine({ ...p, joints: 3, middle: at });
  if (isImpossible(line)) return { impossible: 'no-place', by: line.by };
  return { at, line, largest: Math.max(line.upperAngle, line.middleAngle, line.lowerAngle) };
}

/**
 * Minus the cosine of the largest angle: it orders places as the angle does and costs no arc, for a function that is
 * asked some six thousand times. Where a shaft is too short, more than any cosine, and the more the shorter.
 */
function worthOf({ column, box, jointLength }: BearingRegion): (x: number, y: number, z: number) => number {
  const { at: c, axis: a } = column;
  const { at: b, axis: d } = box;
  return (x, y, z) => {
    const ux = x - c.x;
    const uy = y - c.y;
    const uz = z - c.z;
    const lx = b.x - x;
    const ly = b.y - y;
    const lz = b.z - z;
    const upper = Math.sqrt(ux * ux + uy * uy + uz * uz);
    const lower = Math.sqrt(lx * lx + ly * ly + lz * lz);
    const short = jointLength - Math.min(upper, lower);
    if (short > 0) return 1 + short;
    return -Math.min((ux * a.x + uy * a.y + uz * a.z) / upper, (ux * lx + uy * ly + uz * lz) / (upper * lower), (lx * d.x + ly * d.y + lz * d.z) / lower);
  };
}

interface Least {
  readonly at: number;
  readonly value: number;
}

const golden = (Math.sqrt(5) - 1) / 2;

/** The lowest place of a function with one valley, by golden sections; its ends are tried too. */
function least(f: (x: number) => number, low: number, high: number, count: number): Least {
  let best: Least = { at: low, value: f(low) };
  const ask = (x: number): number => {
    const value = f(x);
    if (value < best.value) best = { at: x, value };
    return value;
  };
  if (low === high) return best;
  ask(high);
  let a = low;
  let b = high;
  let c = b - golden * (b - a);
  let d = a + golden * (b - a);
  let fc = ask(c);
  let fd = ask(d);
  for (let k = 0; k < count; k += 1) {
    if (fc <= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - golden * (b - a);
      fc = ask(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + golden * (b - a);
      fd = ask(d);
    }
  }
  return best;
}
