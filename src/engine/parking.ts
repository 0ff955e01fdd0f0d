import { standardGravity } from './constants.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';
import { singleAxleSlip } from './singleAxleSlip.ts';

/**
 * What holding still on a hill asks of two braked rear wheels.
 *
 *   X = M g sin θ      T = X R/2 per wheel      θ = atan(grade)
 *
 * mass M (kg, as parked); grade (rise over run, 0–0.35, either way); loadedRadius R (m).
 * Neglected: a gearbox in gear and a chock, which belong there as well; rolling resistance, which helps by 1–2 % of M g.
 * @throws RangeError if mass or radius is not above 0 or the grade is negative
 * Source: statics. Worked value: 1340 kg, 20 %, 0.300 m → 2577 N, 387 N·m per wheel; 30 % → 566 N·m.
 */
export function parkingDemand({ mass, grade, loadedRadius }: {
  readonly mass: number;
  readonly grade: number;
  readonly loadedRadius: number;
}): {
  readonly gradeForce: number;
  readonly torquePerWheel: number;
} {
  if (!arePositive(mass, loadedRadius)) requirePositive({ mass, loadedRadius });
  if (!areNonNegative(grade)) requireNonNegative({ grade });
  const gradeForce = (mass * standardGravity * grade) / Math.hypot(1, grade);
  return { gradeForce, torquePerWheel: (gradeForce * loadedRadius) / 2 };
}

/**
 * Tension at each rear wheel for a pull on the lever.
 *
 *   F_1 = F i_h e^(−μ φ_1)      front run      F_2 = (F_1/2) i_m e^(−μ φ_2)      each rear run
 *
 * leverForce F (N) where the hand pulls; leverRatio i_h (5–12), hand travel over cable travel; frontWrap, rearWrap φ
 * (rad): ALL bends of a run added up, whichever way they turn; cableFriction μ (0.1–0.2); intermediateRatio i_m of a
 * lever after the equalizer (1: none). The equalizer halves the pull. Ranges: common practice, no source.
 *
 * A cable on a bend through dφ presses on its sheath with F dφ, so dF = −μ F dφ, and the radius drops out.
 * efficiency: part of the pull that friction leaves. Neglected: springs, stretch, a sheath that gives.
 * @throws RangeError if a ratio is not above 0, or another value negative
 * Source: derived. Worked value: 300 N, 8, 180° front, 270° rear, μ 0.15 → 1498 N after the front run, 369 N per wheel.
 */
export function parkingCable(p: {
  readonly leverForce: number;
  readonly leverRatio: number;
  readonly frontWrap: number;
  readonly rearWrap: number;
  readonly cableFriction: number;
  readonly intermediateRatio: number;
}): { readonly frontTension: number; readonly wheelTension: number; readonly efficiency: number } {
  const { leverForce, leverRatio, frontWrap, rearWrap, cableFriction, intermediateRatio } = p;
  if (!arePositive(leverRatio, intermediateRatio)) requirePositive({ leverRatio, intermediateRatio });
  if (!areNonNegative(leverForce, frontWrap, rearWrap, cableFriction)) requireNonNegative({ leverForce, frontWrap, rearWrap, cableFriction });
  const frontTension = leverForce * leverRatio * Math.exp(-cableFriction * frontWrap);
  return {
    frontTension,
    wheelTension: (frontTension / 2) * intermediateRatio * Math.exp(-cableFriction * rearWrap),
    efficiency: Math.exp(-cableFriction * (frontWrap + rearWrap)),
  };
}

/**
 * Torque with which one wheel's parking brake resists, each way.
 *
 *   lever on the caliper   N = F_w G η      T = 2 μ N r_e                     the same both ways
 *   shoes in the hat       F_s = F_w G η    T = BF F_s r                      forward and reverse BF differ
 *
 * wheelTension F_w (N); gain G, force at the pads or shoe tip per unit of cable force: lever × ramp of a caliper, lever of
 * a shoe; efficiency η (0–1); friction μ, at rest (0.30–0.40, 0.2 on new pads); effectiveRadius r_e (m); forwardFactor,
 * reverseFactor BF (2–4 and more), drumRadius r (m).
 *
 * forward: against a wheel that would roll forward (nose down); reverse: nose up. clampForce N or F_s (N).
 * @throws RangeError if a size or factor is not above 0, η is above 1 or the tension is negative
 * Source: statics. Worked value: clamp 4931 N, μ 0.35, r_e 0.112 m → 387 N·m; tip force 1137 N, BF 4, r 0.085 m → 387 N·m.
 */
export type WheelParkingBrake = { readonly wheelTension: number; readonly gain: number; readonly efficiency: number } & (
  | { readonly kind: 'caliper'; readonly friction: number; readonly effectiveRadius: number }
  | { readonly kind: 'shoe'; readonly forwardFactor: number; readonly reverseFactor: number; readonly drumRadius: number }
);

export function parkingTorque(p: WheelParkingBrake): { readonly clampForce: number; readonly forward: number; readonly reverse: number } {
  const { wheelTension, gain, efficiency } = p;
  if (!areNonNegative(wheelTension)) requireNonNegative({ wheelTension });
  if (!arePositive(gain, efficiency)) requirePositive({ gain, efficiency });
  if (efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${efficiency}`);
  const clampForce = wheelTension * gain * efficiency;
  if (p.kind === 'caliper') {
    requirePositive({ friction: p.friction, effectiveRadius: p.effectiveRadius });
    const torque = 2 * p.friction * clampForce * p.effectiveRadius;
    return { clampForce, forward: torque, reverse: torque };
  }
  if (!arePositive(p.forwardFactor, p.reverseFactor, p.drumRadius)) requirePositive({ forwardFactor: p.forwardFactor, reverseFactor: p.reverseFactor, drumRadius: p.drumRadius });
  const torque = clampForce * p.drumRadius;
  return { clampForce, forward: p.forwardFactor * torque, reverse: p.reverseFactor * torque };
}

/**
 * The steepest hill a rear-wheel parking brake holds, nose up and nose down.
 *
 *   by the brake   sin θ = 2 T/(M g R)
 *   by the tires   nose up   tan θ = μ ψ/(1 − μ χ)      nose down   tan θ = μ ψ/(1 + μ χ)
 *
 * Parked, the road gives X = M g sin θ at the rear wheels alone. Moments about the front contact give
 * N_r = M g (ψ cos θ ± χ sin θ): + nose up, where the hill leans the truck on its rear wheels, − nose down. X ≤ μ N_r
 * gives both lines. So tan θ stands where a stop has its rate z: nose down is a stop on the rear brakes alone, and nose
 * up is one going backward, in which the braked axle gains load; singleAxleSlip has both, with ψ counted from the other
 * end. limitedBy 'front-lift': nose up at tan θ = (1 − ψ)/χ, where the front wheels leave the road.
 *
 * forwardTorque, reverseTorque T (N·m per wheel, as parkingTorque); coolingLoss (0–1; 0.10–0.20 for a caliper set hot,
 * common practice: the rotor shrinks out of the clamp; a drum shrinks onto its shoes, 0); rearLoadFraction ψ, cgHeight h,
 * wheelbase L (m), grip μ, as parked and loaded; loadedRadius R (m).
 * byBrake is undefined where the brake would hold a wall. grade, gradeCooled: the lesser of brake and tires, warm and cold.
 *
 * Neglected: as parkingDemand; one wheel on ice; a truck that rocks; creep of the cable.
 * @throws RangeError as singleAxleSlip, if mass or radius is not above 0, a torque is negative or the loss is outside 0–1
 * Source: derived. Worked value: μ 0.7, ψ 0.42, χ 0.58/2.743 → tires hold 34.5 % nose up, 25.6 % nose down.
 */
export interface GradeHeld {
  readonly byBrake: number | undefined;
  readonly byBrakeCooled: number | undefined;
  readonly byTires: number;
  readonly grade: number;
  readonly gradeCooled: number;
  readonly limitedBy: 'brake' | 'tires' | 'front-lift';
  readonly limitedByCooled: 'brake' | 'tires' | 'front-lift';
}

export function gradeHeld(p: {
  readonly forwardTorque: number;
  readonly reverseTorque: number;
  readonly coolingLoss: number;
  readonly mass: number;
  readonly loadedRadius: number;
  readonly rearLoadFraction: number;
  readonly cgHeight: number;
  readonly wheelbase: number;
  readonly grip: number;
}): { readonly noseUp: GradeHeld; readonly noseDown: GradeHeld } {
  const { forwardTorque, reverseTorque, coolingLoss, mass, loadedRadius, rearLoadFraction, cgHeight, wheelbase, grip } = p;
  if (!areNonNegative(forwardTorque, reverseTorque, coolingLoss)) requireNonNegative({ forwardTorque, reverseTorque, coolingLoss });
  if (!arePositive(mass, loadedRadius)) requirePositive({ mass, loadedRadius });
  if (coolingLoss > 1) throw new RangeError(`coolingLoss: expected at most 1, found ${coolingLoss}`);
  const down = singleAxleSlip({ axle: 'rear', grip, rearLoadFraction, cgHeight, wheelbase });
  const up = singleAxleSlip({ axle: 'front', grip, rearLoadFraction: 1 - rearLoadFraction, cgHeight, wheelbase });
  const held = (torque: number, byTires: number, road: 'tires' | 'front-lift'): GradeHeld => {
    const byBrake = gradeForTorque({ torque, mass, loadedRadius });
    const byBrakeCooled = gradeForTorque({ torque: torque * (1 - coolingLoss), mass, loadedRadius });
    return {
      byBrake,
      byBrakeCooled,
      byTires,
      grade: Math.min(byBrake ?? Infinity, byTires),
      gradeCooled: Math.min(byBrakeCooled ?? Infinity, byTires),
      limitedBy: (byBrake ?? Infinity) < byTires ? 'brake' : road,
      limitedByCooled: (byBrakeCooled ?? Infinity) < byTires ? 'brake' : road,
    };
  };
  return {
    noseUp: held(reverseTorque, up.rate, up.limitedBy === 'rear-lift' ? 'front-lift' : 'tires'),
    noseDown: held(forwardTorque, down.rate, 'tires'),
  };
}

function gradeForTorque({ torque, mass, loadedRadius }: {
  readonly torque: number;
  readonly mass: number;
  readonly loadedRadius: number;
}): number | undefined {
  const sin = (2 * torque) / (mass * standardGravity * loadedRadius);
  return sin < 1 ? sin / Math.sqrt(1 - sin ** 2) : undefined;
}
