import type { Impossible } from './outcome.ts';
import { requireFinite, requirePositive } from './require.ts';

/** Side view: x forward, z up, m. */
export interface Flat {
  readonly x: number;
  readonly z: number;
}

/**
 * Knee and ankle of a driver whose heel rests on the floor and whose ball of the foot is on the pad.
 *
 *   heel    on the floor at the foot's length from the pad, toward the driver
 *   ankle   over the heel, square to the sole
 *   knee    cos κ = (t² + s² − d²)/(2 t s),  d from hip to ankle, above the line between them
 *   ankle angle   between shin and sole
 *
 * hip and pad (m); floor height (m); thigh t, shin s (m): hip joint to knee, knee to ankle joint; foot (m): heel to ball;
 * ankleHeight (m): ankle joint over the sole, shoe on. knee and ankle angles in rad: π is a straight knee; π/2 is a shin
 * square to the sole. heel and kneePoint say where they are.
 *
 * Neglected: a heel that lifts, a knee that falls outward, soft seats and soles. The hip joint moves with every cushion.
 *
 * Impossible: 'pad-too-high' for a heel on the floor, by how much (m); 'too-far', by what the leg lacks (m); 'too-near',
 * by what it is folded beyond (m).
 * @throws RangeError if a length is not above 0 or a place not finite
 * Source: derived, the law of cosines. Worked value: thigh and shin 0.40 m, hip to ankle 0.5657 m → a knee of 90°.
 */
export function legAngles({ hip, pad, floor, thigh, shin, foot, ankleHeight }: {
  readonly hip: Flat;
  readonly pad: Flat;
  readonly floor: number;
  readonly thigh: number;
  readonly shin: number;
  readonly foot: number;
  readonly ankleHeight: number;
}): { readonly knee: number; readonly ankle: number; readonly heel: Flat; readonly anklePoint: Flat; readonly kneePoint: Flat } | Impossible {
  requireFinite({ hipX: hip.x, hipZ: hip.z, padX: pad.x, padZ: pad.z, floor });
  requirePositive({ thigh, shin, foot, ankleHeight });
  const rise = pad.z - floor;
  if (Math.abs(rise) > foot) return { impossible: 'pad-too-high', by: Math.abs(rise) - foot };
  const heel = { x: pad.x - Math.sqrt(foot * foot - rise * rise), z: floor };
  const sole = { x: (pad.x - heel.x) / foot, z: rise / foot };
  const anklePoint = { x: heel.x - sole.z * ankleHeight, z: heel.z + sole.x * ankleHeight };
  const reach = { x: anklePoint.x - hip.x, z: anklePoint.z - hip.z };
  const d = Math.hypot(reach.x, reach.z);
  if (d > thigh + shin) return { impossible: 'too-far', by: d - thigh - shin };
  if (d < Math.abs(thigh - shin) || d === 0) return { impossible: 'too-near', by: Math.abs(thigh - shin) - d };
  const knee = Math.acos(clamp((thigh * thigh + shin * shin - d * d) / (2 * thigh * shin)));
  const atHip = Math.acos(clamp((thigh * thigh + d * d - shin * shin) / (2 * thigh * d)));
  const line = Math.atan2(reach.z, reach.x) + atHip;
  const kneePoint = { x: hip.x + thigh * Math.cos(line), z: hip.z + thigh * Math.sin(line) };
  const up = { x: (kneePoint.x - anklePoint.x) / shin, z: (kneePoint.z - anklePoint.z) / shin };
  return { knee, ankle: Math.acos(clamp(up.x * sole.x + up.z * sole.z)), heel, anklePoint, kneePoint };
}

const clamp = (x: number): number => Math.max(-1, Math.min(1, x));
