import type { Point } from './capsule.ts';
import { requireFinite } from './require.ts';
import { cross, dot, turned, unit } from './vector.ts';

function requireBend(bend: number): void {
  if (!(bend >= 0 && bend < Math.PI / 2)) throw new RangeError(`bend: expected an angle of 0 or more and below 90°, found ${bend} rad`);
}

/**
 * Speed out of one universal joint over speed in.
 *
 *   ω_out/ω_in = cos β/(1 − sin²β cos²θ)        extremes 1/cos β (θ = 0) and cos β (θ = 90°)
 *
 * bend β (rad, below 90°); turn θ (rad): of the INPUT fork's pins from the plane of the bend. Texts that count θ from
 * the square to that plane print sin² instead.
 * The output leads and lags by at most δ, tan δ = (1 − cos β)/(2 √cos β), 45° from those places. The mean over a turn
 * is 1: both shafts turn once.
 *
 * Neglected: play, wear, flex. @throws RangeError if β is negative or 90° and more, or θ is not finite
 * Source: standard texts (Bevan, Theory of Machines, chapter 4; Khurmi and Gupta, chapter 9), derived again.
 * Worked value: 20° → 1.0642 and 0.9397, δ 1.78°.
 */
export function jointRatio({ bend, turn }: { readonly bend: number; readonly turn: number }): {
  readonly ratio: number;
  readonly highest: number;
  readonly lowest: number;
  readonly lag: number;
} {
  requireBend(bend);
  requireFinite({ turn });
  const k = Math.cos(bend);
  return { ratio: k / (1 - (Math.sin(bend) * Math.cos(turn)) ** 2), highest: 1 / k, lowest: k, lag: Math.atan((1 - k) / (2 * Math.sqrt(k))) };
}

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
 * For teaching: each joint as an arrow, the chain as their sum.
 *
 * To first order a joint's output is off by tan²(β/2) sin 2θ: the first term of the exact series. Draw it as an arrow of
 * length tan²(β/2) at twice the angle of the joint's pins. Each joint turns the pins by 90°, so its neighbor's arrow
 * points the other way: two equal joints in step cancel.
 *
 *   |Σ (−1)^k tan²(β_k/2) e^(2i e_k)| = tan²(β_eq/2)        e_k: clockings less twists, summed down to joint k
 *
 * Exact for one joint and for two that cancel; for others good to a few parts in a hundred up to 30°. The exact answer
 * is in clocking.ts. (Texts write β² for 4 tan²(β/2); at 20° that is 2 % less.)
 *
 * @throws RangeError if there is not one less error than bends, or a bend is out of range
 * Source: series of the joint's equation. Worked value: 20° and 20° a quarter turn out of step: β_eq 28.0°; exact 28.0°.
 */
export function phasorSum({ bends, errors }: { readonly bends: readonly number[]; readonly errors: readonly number[] }): { readonly equivalent: number } {
  bends.forEach(requireBend);
  if (errors.length !== bends.length - 1) throw new RangeError(`errors: expected ${bends.length - 1} for ${bends.length} bends, found ${errors.length}`);
  let [re, im, at, sign] = [0, 0, 0, 1];
  bends.forEach((bend, k) => {
    const size = sign * Math.tan(bend / 2) ** 2;
    re += size * Math.cos(2 * at);
    im += size * Math.sin(2 * at);
    at += errors[k] ?? 0;
    sign = -sign;
  });
  return { equivalent: 2 * Math.atan(Math.sqrt(Math.hypot(re, im))) };
}
