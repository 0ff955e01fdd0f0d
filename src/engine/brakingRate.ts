import { standardGravity } from './constants.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * Braking rate of the truck from the line pressures, while both axles still grip.
 *
 *   F_f = C_f p_f    F_r = C_r p_r    z = (F_f + F_r)/(M g)    Φ = F_r/(F_f + F_r)
 *
 * frontGain, rearGain C (N/Pa, axle force per Pa, as from discAxle); frontPressure, rearPressure (Pa, less any
 * push-out); mass M (kg, as driven). z is in units of g: 0.8 means 7.8 m/s². Φ is the rear share of the brake
 * *force*, which is not the rear share of the pressure nor of the rod force; undefined when there is no force.
 *
 * Neglected: the tires' limit (pressure can ask for more than they hold), rolling and air drag, the wheels'
 * inertia, grade.
 *
 * @throws RangeError if a value is negative or not finite, or the mass is not above 0
 * Source: Newton's second law. Worked value: 122.84 and 63.40 N/bar, 65.8 and 40.3 bar, 1340 kg → z 0.810, Φ 0.240.
 */
export function brakingRate(p: {
  readonly frontGain: number;
  readonly rearGain: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly mass: number;
}): {
  readonly frontForce: number;
  readonly rearForce: number;
  readonly rate: number;
  readonly rearFraction: number | undefined;
} {
  const { frontGain, rearGain, frontPressure, rearPressure, mass } = p;
  if (!areNonNegative(frontGain, rearGain, frontPressure, rearPressure)) requireNonNegative({ frontGain, rearGain, frontPressure, rearPressure });
  if (!arePositive(mass)) requirePositive({ mass });
  const frontForce = frontGain * frontPressure;
  const rearForce = rearGain * rearPressure;
  const total = frontForce + rearForce;
  return {
    frontForce,
    rearForce,
    rate: total / (mass * standardGravity),
    rearFraction: total > 0 ? rearForce / total : undefined,
  };
}
