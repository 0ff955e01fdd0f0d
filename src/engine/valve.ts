import { circleArea } from './circle.ts';
import { standardGravity } from './constants.ts';
import { requireLoadRatios } from './distribution.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * Outlet pressure of a proportioning valve while the pedal is going down.
 *
 *   p_out = p                    for p ≤ p_k
 *   p_out = p_k + m (p − p_k)    above
 *
 * Above the knee the valve's stepped piston is in balance: a rise at the inlet acts on the smaller area, so only
 * the part m of it reaches the outlet. It is a bend, not a multiplier: below the knee nothing is taken off.
 *
 * inlet p (Pa, 0 or more); knee p_k (Pa, 7e5–7e6; the knob moves this); slope m (0–1; common adjustable valves
 * about 0.25–0.60, common practice, no source; the knob does not move it; 1 is no valve).
 *
 * Neglected: hysteresis on release (the outlet lags and stays high for a moment), seal friction, fast stabs.
 *
 * @throws RangeError if the inlet or knee is negative or m is outside 0–1
 * Source: derived. Worked value: inlet 60, knee 40, slope 0.43 → 48.6 (any unit of pressure).
 */
export function valveOutlet({ inlet, knee, slope }: {
  readonly inlet: number;
  readonly knee: number;
  readonly slope: number;
}): { readonly outlet: number; readonly reducing: boolean } {
  if (!areNonNegative(inlet, knee)) requireNonNegative({ inlet, knee });
  requireSlope(slope);
  const reducing = inlet > knee;
  return { outlet: reducing ? knee + slope * (inlet - knee) : inlet, reducing };
}

/**
 * What one newton on the bar makes at each axle, and the rear brake fraction with the valve wide open.
 *
 *   c_f = C_f s/A_f     c_i = (1 − s)/A_r     c_r = C_r c_i     Φ = c_r/(c_f + c_r)
 *
 * frontShare s of the rod force (between 0 and 1: the pivot stands between the clevises); bores (m); frontGain, rearGain C (N/Pa, axle force per Pa: see discAxle).
 * Dimensionless c_f, c_r (N per N); c_i in Pa per N is the pressure at the valve's inlet.
 * Neglected: return springs and push-out, about 1 bar together, which take a little off both axles.
 *
 * @throws RangeError if s is not between 0 and 1, or a bore or gain is not above 0
 * Source: statics. Worked value: s 0.62, both 17.78 mm, 122.84 and 63.40 N/bar → Φ 0.240.
 */
export interface BarAndBrakes {
  readonly frontShare: number;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly frontGain: number;
  readonly rearGain: number;
}

export interface PerRodForce {
  readonly front: number;
  readonly rear: number;
  readonly frontPressure: number;
  readonly rearInlet: number;
  readonly rearBrakeFraction: number;
}

export function brakesPerRodForce(p: BarAndBrakes): PerRodForce {
  if (!arePositive(p.frontShare, p.frontGain, p.rearGain)) requirePositive({ frontShare: p.frontShare, frontGain: p.frontGain, rearGain: p.rearGain });
  if (!(p.frontShare < 1)) throw new RangeError(`frontShare: expected less than 1, found ${p.frontShare}`);
  const frontPressure = p.frontShare / circleArea({ diameter: p.frontBore }).area;
  const rearInlet = (1 - p.frontShare) / circleArea({ diameter: p.rearBore }).area;
  const front = p.frontGain * frontPressure;
  const rear = p.rearGain * rearInlet;
  return { front, rear, frontPressure, rearInlet, rearBrakeFraction: rear / (front + rear) };
}

/**
 * The highest knee that keeps the rear brake share a margin below the ideal at every rate up to a limit.
 *
 * `margin` is in share points of the total (0.04 is four points): rear share ≤ ψ − χ z − margin for 0 < z ≤ rateLimit.
 * Points, not a fraction of the ideal, because the errors it has to cover (pads, bar friction, CG) move the
 * installed share by about the same number of points at every rate.
 *
 * With a total T = z W the rear brakes with
 *   below the knee   Φ T
 *   above            Φ_m T + (1 − Φ_m)(1 − m) C_r p_k      Φ_m = m c_r/(c_f + m c_r)
 * The first line is met as long as the knee comes no later than z* = (ψ − margin − Φ)/χ. Over the second, allowed
 * minus installed is concave in z, so it is enough to look at its two ends, the knee and rateLimit. Hence
 *   p_k ≤ z* W c_i/(c_f + c_r)     and     p_k ≤ [(ψ − margin − Φ_m) z − χ z²] W/[(1 − Φ_m)(1 − m) C_r] at rateLimit
 *
 * Use the loads of the EMPTY truck: it is the one whose rear locks. need:
 *   'set'   knee is the answer; limitedBy says which of the two bounds; kneeRate is z where it bends
 *   'none needed'  the bar alone keeps the margin; knee undefined
 *   'none helps'   no knee does: the bar gives too much rear at low rates (z* ≤ 0) or the slope is too steep for
 *                  rateLimit; move the bar to the front first; knee undefined
 *
 * Neglected: as brakesPerRodForce and valveOutlet.
 * @throws RangeError if m is 1 or more (no valve), a margin or mass out of range, or as brakesPerRodForce
 * Source: derived. Worked value: bar and brakes of brakesPerRodForce, 1340 kg, ψ 0.42, χ 0.58/2.743, slope 0.43, margin
 * 0.04, rateLimit 1.0 → knee 20.2 bar, where z is 0.405.
 */
export function kneeForMargin(
  p: BarAndBrakes & {
    readonly slope: number;
    readonly mass: number;
    readonly rearFraction: number;
    readonly heightRatio: number;
    readonly margin: number;
    readonly rateLimit: number;
  },
): {
  readonly need: 'set' | 'none needed' | 'none helps';
  readonly knee: number | undefined;
  readonly kneeRate: number | undefined;
  readonly limitedBy: 'knee' | 'rate limit' | undefined;
} {
  const { slope, mass, rearFraction, heightRatio, margin, rateLimit } = p;
  requireLoadRatios({ rearFraction, heightRatio });
  requireNonNegative({ margin });
  requirePositive({ mass, rateLimit });
  requireSlope(slope);
  if (slope === 1) throw new RangeError('slope: expected less than 1 (at 1 there is no valve), found 1');
  const c = brakesPerRodForce(p);
  const weight = mass * standardGravity;
  const none = { knee: undefined, kneeRate: undefined, limitedBy: undefined };
  const latestKneeRate = (rearFraction - margin - c.rearBrakeFraction) / heightRatio;
  if (latestKneeRate >= rateLimit) return { need: 'none needed', ...none };
  if (latestKneeRate <= 0) return { need: 'none helps', ...none };
  const shareAbove = (slope * c.rear) / (c.front + slope * c.rear);
  const room = (rearFraction - margin - shareAbove) * rateLimit - heightRatio * rateLimit ** 2;
  const byKnee = (latestKneeRate * weight * c.rearInlet) / (c.front + c.rear);
  const byLimit = (room * weight) / ((1 - shareAbove) * (1 - slope) * p.rearGain);
  const knee = Math.min(byKnee, byLimit);
  if (!(knee > 0)) return { need: 'none helps', ...none };
  return {
    need: 'set',
    knee,
    kneeRate: (knee * (c.front + c.rear)) / (c.rearInlet * weight),
    limitedBy: byKnee <= byLimit ? 'knee' : 'rate limit',
  };
}

export function requireSlope(slope: number): void {
  if (!(slope >= 0 && slope <= 1)) throw new RangeError(`slope: expected 0 to 1, found ${slope}`);
}
