import type { Impossible } from './outcome.ts';
import { areFinite, arePositive, requireFinite, requirePositive } from './require.ts';

/** Side view: x forward, z up, m. */
export interface Flat {
  readonly x: number;
  readonly z: number;
}

/**
 * Knee and ankle of a driver, from where the hip, the heel and the ball of the foot are.
 *
 *   sole    from heel to ball
 *   ankle   over the heel, square to the sole
 *   knee    cos κ = (t² + s² − d²)/(2 t s),  d from hip to ankle, above the line between them
 *   ankle angle   between shin and sole
 *   sole lean     tan λ = forward/up from heel to ball: 0 upright, π/2 flat on the floor
 *
 * hip, heel, ball (m); thigh t, shin s (m): hip joint to knee, knee to ankle joint; ankleHeight (m): ankle joint over the
 * sole, shoe on. knee and ankle in rad: π is a straight knee; π/2 a shin square to the sole. sole (m): heel to ball.
 *
 * Neglected: a knee that falls outward, soft seats and soles. The hip joint moves with every cushion.
 *
 * Impossible: 'no-foot' where heel and ball coincide; 'too-far', by what the leg lacks (m); 'too-near', by what it is
 * folded beyond (m).
 * @throws RangeError if a length is not above 0 or a place not finite
 * Source: derived, the law of cosines. Worked value: thigh and shin 0.40 m, hip to ankle 0.5657 m → a knee of 90°.
 */
export function legAngles({ hip, heel, ball, thigh, shin, ankleHeight }: {
  readonly hip: Flat;
  readonly heel: Flat;
  readonly ball: Flat;
  readonly thigh: number;
  readonly shin: number;
  readonly ankleHeight: number;
}): { readonly knee: number; readonly ankle: number; readonly sole: number; readonly lean: number; readonly anklePoint: Flat; readonly kneePoint: Flat } | Impossible {
  if (!(areFinite(hip.x, hip.z, heel.x, heel.z) && areFinite(ball.x, ball.z))) requireFinite({ hipX: hip.x, hipZ: hip.z, heelX: heel.x, heelZ: heel.z, ballX: ball.x, ballZ: ball.z });
  if (!arePositive(thigh, shin, ankleHeight)) requirePositive({ thigh, shin, ankleHeight });
  const sole = Math.hypot(ball.x - heel.x, ball.z - heel.z);
  if (sole < 1e-3) return { impossible: 'no-foot' };
  const along = { x: (ball.x - heel.x) / sole, z: (ball.z - heel.z) / sole };
  const anklePoint = { x: heel.x - along.z * ankleHeight, z: heel.z + along.x * ankleHeight };
  const reach = { x: anklePoint.x - hip.x, z: anklePoint.z - hip.z };
  const d = Math.hypot(reach.x, reach.z);
  if (d > thigh + shin) return { impossible: 'too-far', by: d - thigh - shin };
  if (d < Math.abs(thigh - shin) || d === 0) return { impossible: 'too-near', by: Math.abs(thigh - shin) - d };
  const knee = Math.acos(clamp((thigh * thigh + shin * shin - d * d) / (2 * thigh * shin)));
  const atHip = Math.acos(clamp((thigh * thigh + d * d - shin * shin) / (2 * thigh * d)));
  const line = Math.atan2(reach.z, reach.x) + atHip;
  const kneePoint = { x: hip.x + thigh * Math.cos(line), z: hip.z + thigh * Math.sin(line) };
  const up = { x: (kneePoint.x - anklePoint.x) / shin, z: (kneePoint.z - anklePoint.z) / shin };
  return { knee, ankle: Math.acos(clamp(up.x * along.x + up.z * along.z)), sole, lean: Math.atan2(along.x, along.z), anklePoint, kneePoint };
}


/**
 * How far the line of a leg's push stands off the way a hung pad moves.
 *
 *   push line   from the hip to the ball of the foot, down by ω = atan((z_hip − z_ball)/(x_ball − x_hip))
 *   pad's way   square to its arm: up by φ, or down while the arm still hangs back (φ below 0)
 *   off = ω + φ
 *
 * hip, ball (m); armAngle φ (rad): pivot to pad, + forward of straight down. off (rad): + where the leg pushes below the
 * pad's way. The part that turns the pedal is cos(off) of the push; the rest slides the foot along the pad.
 *
 * A straight leg pushes along that line; a bent one can steer its push, so this is a guide and no law.
 * @throws RangeError if something is not finite, or hip and ball are in one place
 * Source: derived, plane geometry. Worked value: hip 0.60 m behind and 0.16 above the ball, arm 10° forward → 14.9 + 10 = 24.9°.
 */
export function pushOffPath({ hip, ball, armAngle }: { readonly hip: Flat; readonly ball: Flat; readonly armAngle: number }): { readonly off: number } {
  requireFinite({ hipX: hip.x, hipZ: hip.z, ballX: ball.x, ballZ: ball.z, armAngle });
  requirePositive({ distance: Math.hypot(ball.x - hip.x, ball.z - hip.z) });
  return { off: Math.atan2(hip.z - ball.z, ball.x - hip.x) + armAngle };
}

const clamp = (x: number): number => Math.max(-1, Math.min(1, x));
