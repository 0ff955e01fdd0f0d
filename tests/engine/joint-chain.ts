import type { Point } from '../../src/engine/capsule.ts';
import { cross, dot, mix, unit } from '../../src/engine/vector.ts';

/**
 * What src/engine/clocking.ts is held against: the textbook formula of one joint, and a chain of joints stepped around with
 * cross products. Neither knows the closed form that is tested.
 *
 *   ω_out/ω_in = cos β/(1 − sin²β cos²θ)        θ: of the INPUT fork's pins from the plane of the bend
 *
 * Texts that count θ from the square to that plane print sin² instead. Bevan, Theory of Machines, chapter 4; Khurmi and
 * Gupta, chapter 9, derived again.
 */
export const jointRatio = ({ bend, turn }: { readonly bend: number; readonly turn: number }): number => Math.cos(bend) / (1 - (Math.sin(bend) * Math.cos(turn)) ** 2);

/**
 * Any chain of joints, turned through one turn, with nothing but cross products.
 *
 *   pins out  b = u_out × a          square to both the shaft they are on and the pins they meet in the cross
 *   speed     u_in · u_out/(1 − (a · u_out)²)      the joint's formula, in vectors
 *   next      a' = b turned about u_out by the clocking
 *
 * axes: the directions from the column to the box, at least two, each joint bent by less than 90°. clockings: for each
 * shaft between two joints, from the pins of its upper fork to those of its lower fork, clockwise seen from its upper
 * end (rad; 0: forks in line). firstPins: the direction of the column fork's pins at rim angle 0; what of it lies along
 * the column is dropped. steps: rim angles 0, 2π/steps, ….
 * turns: out: how far the last shaft has turned (rad), exact to whole turns because each step follows from the last;
 * take steps of 10° or less. ratio: speed out over speed in, there.
 *
 * @throws RangeError if the number of clockings is not two less than that of axes, a joint is bent by 90° or more,
 *   steps is below 36, or firstPins has no direction across the column
 * Source: derived. Worked value: two equal joints in one plane, forks in line: ratio 1 all the way round.
 */
export function sweepChain(p: { readonly axes: readonly Point[]; readonly clockings: readonly number[]; readonly firstPins: Point; readonly steps: number }): readonly {
  readonly rim: number;
  readonly ratio: number;
  readonly out: number;
}[] {
  const { axes, clockings, steps } = p;
  if (clockings.length !== axes.length - 2) throw new RangeError(`clockings: expected ${axes.length - 2} for ${axes.length} axes, found ${clockings.length}`);
  if (!Number.isInteger(steps) || steps < 36) throw new RangeError(`steps: expected a whole number of 36 or more, found ${steps}`);
  const column = axes[0] as Point;
  const start = unit(cross(cross(column, p.firstPins), column));
  let last: Point | undefined;
  let out = 0;
  return Array.from({ length: steps }, (_, k) => {
    const rim = (2 * Math.PI * k) / steps;
    const { pins, ratio } = through(axes, clockings, turned(start, column, rim));
    const box = axes[axes.length - 1] as Point;
    if (last) out += Math.atan2(dot(box, cross(last, pins)), dot(last, pins));
    last = pins;
    return { rim, ratio, out };
  });
}

/** The pins of the last fork and the speed of the last shaft, from the pins of the first fork. */
function through(axes: readonly Point[], clockings: readonly number[], first: Point): { readonly pins: Point; readonly ratio: number } {
  let pins = first;
  let ratio = 1;
  for (let k = 1; k < axes.length; k += 1) {
    const [into, out] = [axes[k - 1] as Point, axes[k] as Point];
    const cosine = dot(into, out);
    if (!(cosine > 0)) throw new RangeError(`axes: expected joints bent by less than 90°, found a cosine of ${cosine}`);
    const arm = k === 1 ? pins : turned(pins, into, clockings[k - 2] as number);
    ratio *= cosine / (1 - dot(arm, out) ** 2);
    pins = unit(cross(out, arm));
  }
  return { pins, ratio };
}

/**
 * p turned about the direction `about` by `angle` (rad), clockwise for who looks along it: the right-hand rule.
 *
 *   p cos a + (about × p) sin a + about (about · p)(1 − cos a)
 */
export function turned(p: Point, about: Point, angle: number): Point {
  const across = mix(Math.cos(angle), p, Math.sin(angle), cross(about, p));
  return mix(1, across, (1 - Math.cos(angle)) * dot(about, p), about);
}
