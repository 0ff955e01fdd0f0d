import type { Point } from './capsule.ts';
import type { Impossible } from './outcome.ts';
import { requirePositive } from './require.ts';
import { angleBetween, cross, dot, length, minus, mix, unit } from './vector.ts';

/**
 * The line of a steering shaft from the column to the steering box: how far each joint bends, how long each shaft is,
 * and how the planes of the bends stand to each other.
 *
 *   one joint    at the box. The shaft is the column's own, carried on: it lies where the column points.
 *   two joints   at the column's end C and at the box B.
 *   three        at C, at the middle M (held by the support bearing) and at B.
 *
 *   s = (next − last)/|next − last|     β = angle(direction in, direction out)     L = |next − last|
 *
 * Points are joint centers, where the two pins of the cross meet. Directions point from the rim toward the box: the
 * column's toward its lower end, the box's into the box. So a straight joint is 0.
 *
 * twist: seen down a shaft from its upper end, the angle clockwise from the plane of the bend at its upper joint to
 * the plane of the bend at its lower joint. A plane has no front and back, so it runs from −90° to 90°. With p the
 * plane's direction square to the shaft, tan(twist) = s · (p_upper × p_lower)/(p_upper · p_lower). 0 where a joint is
 * straight: no bend, no plane.
 *
 * miss: how far the column's center line passes from the box's joint. One joint cannot take any: the axes must meet
 * in it. Two joints exist to take it up.
 *
 * jointLength (m, 0.05–0.10): end to end of one joint; half of it stands on each side of the center, so between two
 * centers there must be at least one of them.
 *
 * Impossible 'upper-shaft-too-short' or 'lower-shaft-too-short', by how much L is below jointLength; with L = 0 the
 * two points are one.
 * Neglected: play, flex, the small offset between the pins of real crosses.
 * @throws RangeError if jointLength is not above 0, three joints lack a middle, or a direction is not of length 1
 * Source: derived. Worked value: C (0,0,0), B (400,0,−300), column and box level: 36.87° and 36.87°, 500, twist 0.
 */
export interface ShaftEnds {
  readonly column: { readonly at: Point; readonly axis: Point };
  readonly box: { readonly at: Point; readonly axis: Point };
  readonly joints: 1 | 2 | 3;
  readonly middle?: Point;
  readonly jointLength: number;
}

export interface ShaftLine {
  /** 0 where there is no such joint. */
  readonly upperAngle: number;
  readonly middleAngle: number;
  readonly lowerAngle: number;
  readonly upperTwist: number;
  readonly lowerTwist: number;
  readonly upperLength: number;
  readonly lowerLength: number;
  /** The directions the turn passes through, column and box included. */
  readonly axes: readonly Point[];
  readonly miss: number;
}

export function shaftLine(p: ShaftEnds): ShaftLine | Impossible {
  const { column, box, joints, middle, jointLength } = p;
  requirePositive({ jointLength });
  if (joints === 3 && !middle) throw new RangeError('middle: expected a point for three joints, found none');
  const second = joints === 3 ? (middle as Point) : box.at;
  const upperLength = length(minus(second, column.at));
  if (upperLength < jointLength) return { impossible: 'upper-shaft-too-short', by: jointLength - upperLength };
  const lowerLength = joints === 3 ? length(minus(box.at, second)) : 0;
  if (joints === 3 && lowerLength < jointLength) return { impossible: 'lower-shaft-too-short', by: jointLength - lowerLength };

  const upper = unit(minus(second, column.at));
  const axes = joints === 1 ? [column.axis, box.axis] : joints === 2 ? [column.axis, upper, box.axis] : [column.axis, upper, unit(minus(box.at, second)), box.axis];
  const bends = axes.slice(1).map((axis, k) => angleBetween(axes[k] as Point, axis));
  const twists = axes.slice(2).map((axis, k) => twistAbout(axes[k] as Point, axes[k + 1] as Point, axis));
  return {
    upperAngle: joints === 1 ? 0 : (bends[0] as number),
    middleAngle: joints === 3 ? (bends[1] as number) : 0,
    lowerAngle: bends[bends.length - 1] as number,
    upperTwist: twists[0] ?? 0,
    lowerTwist: twists[1] ?? 0,
    upperLength,
    lowerLength,
    axes,
    miss: length(cross(minus(box.at, column.at), column.axis)),
  };
}

/** Below this bend (rad) a joint is straight and its plane is noise: what it does to the speed is below 1e-12. */
const straight = 1e-6;

/** From the plane of the bend `before` → `shaft` to that of `shaft` → `after`, clockwise down the shaft, within ±90°. */
function twistAbout(before: Point, shaft: Point, after: Point): number {
  if (length(cross(before, shaft)) < straight || length(cross(shaft, after)) < straight) return 0;
  const p = mix(1, before, -dot(before, shaft), shaft);
  const q = mix(1, after, -dot(after, shaft), shaft);
  const angle = Math.atan2(dot(shaft, cross(p, q)), dot(p, q));
  return angle - Math.PI * Math.round(angle / Math.PI);
}
