import type { Point } from './capsule.ts';
import { requireFinite } from './require.ts';

/**
 * The direction of a shaft from the two angles a home builder can read, as a unit vector that points forward along it.
 *
 *   plan ψ   seen from above, from straight ahead, + to the left going forward (string or plumb bobs to the floor)
 *   fall ε   of the shaft itself against the level of the frame, + falling going forward
 *
 *   u = (cos ε cos ψ, cos ε sin ψ, −sin ε)
 *
 * What an angle finder reads depends on how it is held, and the two readings differ as soon as ψ is not 0:
 *
 *   'along'  laid on the shaft. Its edge is the shaft, so it reads ε.
 *   'side'   read in true side view: a photograph square to the truck, a protractor held fore and aft. The shaft's
 *            shadow on the plane x–z falls sin ε over cos ε cos ψ, so tan(reading) = tan ε / cos ψ: always the steeper
 *            of the two, and ε = atan(tan(reading) cos ψ).
 *
 * Taken for each other at 40° of fall and 20° of plan they are 1.8° apart, at 10° of plan 0.4°.
 *
 * The finder is zeroed on the rail. If the rail is not level by τ, zeroing is exact for a shaft in the same plane and
 * leaves τ (1 − cos ψ) otherwise: 0.1° at 2° and 20°. A truck that leans sideways by ρ adds ρ sin ψ: level it.
 *
 * fall, plan (rad, inside ±90°: the shaft runs forward). slope: the true fall ε, whatever was read.
 * @throws RangeError if an angle is not finite or not inside ±90°
 * Source: derived. Worked value: read 40° in side view at 20° of plan → ε 38.26°, u = (0.738, 0.269, −0.619).
 */
export type AngleReading = 'along' | 'side';

export function shaftAxis({ reading, fall, plan }: { readonly reading: AngleReading; readonly fall: number; readonly plan: number }): {
  readonly axis: Point;
  readonly slope: number;
} {
  requireFinite({ fall, plan });
  for (const [name, angle] of Object.entries({ fall, plan })) {
    if (Math.abs(angle) >= Math.PI / 2) throw new RangeError(`${name}: expected an angle inside ±90°, found ${angle} rad`);
  }
  const slope = reading === 'along' ? fall : Math.atan(Math.tan(fall) * Math.cos(plan));
  return { axis: { x: Math.cos(slope) * Math.cos(plan), y: Math.cos(slope) * Math.sin(plan), z: -Math.sin(slope) }, slope };
}

/**
 * Back from a direction to the two angles: fall ε = −asin u_z (from −90° to 90°), plan ψ = atan2(u_y, u_x). What an
 * angle finder laid on a shaft, and a string along it on the floor, must then read.
 *
 * @throws RangeError if the direction is not of length 1
 */
export function axisAngles({ axis }: { readonly axis: Point }): { readonly slope: number; readonly plan: number } {
  const { x, y, z } = axis;
  if (!(Math.abs(Math.hypot(x, y, z) - 1) < 1e-9)) throw new RangeError(`axis: expected a direction of length 1, found ${x}, ${y}, ${z}`);
  return { slope: Math.atan2(-z, Math.hypot(x, y)), plan: Math.atan2(y, x) };
}

/**
 * A direction on the body after the body has turned over the frame by `pitch` (rad, + nose up; see bodyDrop.ts).
 * A column falling forward at ε falls by pitch less: u_x cos θ − u_z sin θ, u_y, u_x sin θ + u_z cos θ.
 *
 * @throws RangeError if the pitch is not finite
 */
export function pitchedAxis({ axis, pitch }: { readonly axis: Point; readonly pitch: number }): { readonly axis: Point } {
  requireFinite({ pitch });
  const [c, s] = [Math.cos(pitch), Math.sin(pitch)];
  return { axis: { x: axis.x * c - axis.z * s, y: axis.y, z: axis.x * s + axis.z * c } };
}
