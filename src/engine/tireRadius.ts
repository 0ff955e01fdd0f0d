import { lockOrder } from './lockOrder.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * What other tires change: braking, balance, brake torque and speedometer. Front and rear may differ.
 *
 *   q = R_old/R_new per axle           brake force at the same pressure is T/R, so it goes as q
 *   z' = z [(1 − Φ) q_f + Φ q_r]       Φ' = Φ q_r/[(1 − Φ) q_f + Φ q_r]
 *   torque for the same brake force: 1/q per axle        foot force for the same z: z/z'
 *   h' = h + (1 − ψ) ΔR_f + ψ ΔR_r     the CG rides on the line between the axle centers
 *   true speed = indicated speed × R_new/R_old of the axle that drives the speedometer; distance likewise
 *
 * Equal change on both axles leaves Φ; a smaller front tire or a larger rear one takes brake force from the rear. The critical
 * rate (ψ − Φ)/χ and the first axle to lock come from lockOrder.ts, for old and new.
 *
 * frontBefore, rearBefore, frontAfter, rearAfter (m): loaded radii, axle center to ground with the driver in, not the size on the
 * sidewall. rate z (0–1.2) and rearBrakeFraction Φ (0–1) with the old tires; rearFraction ψ, cgHeight h (m, old), wheelbase L
 * (m), grip μ as lockOrder. speedometerAxle: the driven one, for a gearbox drive.
 *
 * Neglected: return springs and push-out (so "same pressure" is "same foot"); grip of the new tire, its mass; the change of ψ by
 * the lean of the truck (a degree moves it by less than χ/57); that a tire rolls on a little more than its loaded radius, by
 * nearly the same factor old and new.
 *
 * Impossible as lockOrder; 'cg-below-ground' where h' is 0 or less, by −h' (m).
 * @throws RangeError if a radius, h or L is not above 0, z is negative; as lockOrder
 * Source: derived. Worked value: reference truck A (0.810, Φ 0.240), both tires from 300 to 330 mm → 0.736, Φ 0.240, 60 shown is 66.
 */
export interface TireChange {
  readonly frontBefore: number;
  readonly rearBefore: number;
  readonly frontAfter: number;
  readonly rearAfter: number;
  readonly rate: number;
  readonly rearBrakeFraction: number;
  readonly rearFraction: number;
  readonly cgHeight: number;
  readonly wheelbase: number;
  readonly grip: number;
  readonly speedometerAxle: 'front' | 'rear';
}

export interface Balance {
  readonly rate: number;
  readonly rearBrakeFraction: number;
  readonly cgHeight: number;
  readonly criticalRate: number;
  readonly first: 'front' | 'rear' | 'together';
}

export function tireRadius(p: TireChange):
  | {
      readonly before: Balance;
      readonly after: Balance;
      readonly rateFactor: number;
      readonly controlForceFactor: number;
      readonly frontTorqueFactor: number;
      readonly rearTorqueFactor: number;
      readonly trueOverIndicated: number;
      readonly shareChange: number;
      readonly criticalRateChange: number;
    }
  | Impossible {
  const { frontBefore, rearBefore, frontAfter, rearAfter, rate, rearBrakeFraction, rearFraction, cgHeight, wheelbase, grip } = p;
  requirePositive({ frontBefore, rearBefore, frontAfter, rearAfter, cgHeight, wheelbase });
  requireNonNegative({ rate });
  const height = cgHeight + (1 - rearFraction) * (frontAfter - frontBefore) + rearFraction * (rearAfter - rearBefore);
  if (height <= 0) return { impossible: 'cg-below-ground', by: -height };
  const front = (1 - rearBrakeFraction) * (frontBefore / frontAfter);
  const rear = rearBrakeFraction * (rearBefore / rearAfter);
  const rateFactor = front + rear;
  const balance = (at: Omit<Balance, 'criticalRate' | 'first'>): Balance | Impossible => {
    const lock = lockOrder({ rearBrakeFraction: at.rearBrakeFraction, rearFraction, heightRatio: at.cgHeight / wheelbase, grip });
    return isImpossible(lock) ? lock : { ...at, criticalRate: lock.criticalRate, first: lock.first };
  };
  const before = balance({ rate, rearBrakeFraction, cgHeight });
  if (isImpossible(before)) return before;
  const after = balance({ rate: rate * rateFactor, rearBrakeFraction: rear / rateFactor, cgHeight: height });
  if (isImpossible(after)) return after;
  return {
    before,
    after,
    rateFactor,
    controlForceFactor: 1 / rateFactor,
    frontTorqueFactor: frontAfter / frontBefore,
    rearTorqueFactor: rearAfter / rearBefore,
    trueOverIndicated: p.speedometerAxle === 'front' ? frontAfter / frontBefore : rearAfter / rearBefore,
    shareChange: after.rearBrakeFraction - before.rearBrakeFraction,
    criticalRateChange: after.criticalRate - before.criticalRate,
  };
}
