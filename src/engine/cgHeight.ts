import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Height of the center of gravity from lifting the rear axle with the front on scales.
 *
 * Free body, suspension locked, wheels free to roll: only vertical forces, and each goes through its axle's center.
 * The CG lies b ahead of the rear axle along the line through the centers and h − R above that line. Turned nose
 * down by θ, moments about the rear axle give N_f L cos θ = M [b cos θ + (h − R) sin θ]. The first term is the level
 * reading, so the gain is
 *
 *   ΔN = (M (h − R)/L) tan θ     sin θ = H/L     h = R + k L/M,  k the slope of ΔN against tan θ
 *
 * The line goes through zero: no lift, no gain. Least squares with each lift weighted by 1/σ²,
 *   k = Σ w t ΔN/Σ w t²     σ² = σ_N² + (k sec²θ σ_θ)²,
 * since an error σ_θ in the angle looks like one of k sec²θ σ_θ in the gain. k enters its own weights, so it is
 * found once without and twice with them, after which it no longer moves by anything that matters.
 *
 * spread (1 sigma, m) of h: (σ_k L/M)² + σ_R², with σ_k² = 1/Σ w t² + (σ_N Σ w t/Σ w t²)². The second part is the level
 * reading, which sits in every gain: more lifts do not average it away. For one lift and σ_θ = 0 that makes √2 σ_N on
 * the gain; the usual formula's δN is the error of the *difference*.
 * residual: scatter of the gains about the line, √(Σ(ΔN − k t)²/(n − 1)), kg; undefined for one lift. If it is well
 * above scaleError the suspension moved or the brakes dragged.
 *
 * frontLoad, rearLoad (kg, level); wheelbase L (m); loadedRadius R (m, axle center over ground; where the axles
 * differ, R_f b/L + R_r a/L with a, b the CG's distances to front and rear axle). lifts, one or more, three is good
 * practice (ISO 10392:2011, 6.2): lift H (m, rise of the rear axle center over level, 0.10–0.25 of L), frontReading
 * (kg, front axle). scaleError σ_N (kg), angleError σ_θ (rad; from a height, σ_H/(L cos θ)), radiusError σ_R (m): each 1
 * sigma of one reading.
 *
 * Neglected: tires squashing more on the front, fuel running forward, error of the wheelbase (0.1 % makes 0.2 %
 * of h − R), scale errors proportional to load (they cancel almost wholly).
 *
 * Impossible 'lift-not-below-wheelbase', by m; 'reading-above-total', by kg; 'cg-not-above-ground', by m.
 * @throws RangeError if there is no lift, a length or load is not above 0, an error is negative
 * Source: statics and least squares; ISO 10392:2011 asks for load against tan θ.
 * Worked value: 1340 kg, L 2.743, R 0.300, H 0.600 and a gain of 30.66 kg → θ 12.64°, h 0.580 m.
 */
export function cgByAxleLift(p: {
  readonly frontLoad: number;
  readonly rearLoad: number;
  readonly wheelbase: number;
  readonly loadedRadius: number;
  readonly lifts: readonly { readonly lift: number; readonly frontReading: number }[];
  readonly scaleError: number;
  readonly angleError: number;
  readonly radiusError: number;
}):
  | {
      readonly cgHeight: number;
      readonly slope: number;
      readonly residual: number | undefined;
      readonly spread: number;
      readonly perLift: readonly LiftResult[];
    }
  | Impossible {
  const { frontLoad, rearLoad, wheelbase, loadedRadius, lifts, scaleError, angleError, radiusError } = p;
  requirePositive({ frontLoad, rearLoad, wheelbase, loadedRadius });
  requireNonNegative({ scaleError, angleError, radiusError });
  if (lifts.length < 1) throw new RangeError('lifts: expected one or more, found none');
  const mass = frontLoad + rearLoad;
  const perLift: LiftResult[] = [];
  for (const { lift, frontReading } of lifts) {
    requirePositive({ lift, frontReading });
    if (lift >= wheelbase) return { impossible: 'lift-not-below-wheelbase', by: lift - wheelbase };
    if (frontReading > mass) return { impossible: 'reading-above-total', by: frontReading - mass };
    const angle = Math.asin(lift / wheelbase);
    const tangent = Math.tan(angle);
    const gain = frontReading - frontLoad;
    perLift.push({ angle, tangent, gain, cgHeight: loadedRadius + (gain * wheelbase) / (mass * tangent) });
  }
  let { slope, slopeSpread } = lineThroughZero({ perLift, scaleError, angleError: 0, slope: 0 });
  for (let pass = 0; pass < 2; pass += 1) {
    ({ slope, slopeSpread } = lineThroughZero({ perLift, scaleError, angleError, slope }));
  }
  const cgHeight = loadedRadius + (slope * wheelbase) / mass;
  if (cgHeight <= 0) return { impossible: 'cg-not-above-ground', by: -cgHeight };
  const squares = perLift.reduce((sum, { gain, tangent }) => sum + (gain - slope * tangent) ** 2, 0);
  return {
    cgHeight,
    slope,
    residual: perLift.length > 1 ? Math.sqrt(squares / (perLift.length - 1)) : undefined,
    spread: Math.hypot((slopeSpread * wheelbase) / mass, radiusError),
    perLift,
  };
}

export interface LiftResult {
  readonly angle: number;
  readonly tangent: number;
  readonly gain: number;
  readonly cgHeight: number;
}

function lineThroughZero({ perLift, scaleError, angleError, slope }: {
  readonly perLift: readonly LiftResult[];
  readonly scaleError: number;
  readonly angleError: number;
  readonly slope: number;
}): { slope: number; slopeSpread: number } {
  const variances = perLift.map(({ tangent }) => scaleError ** 2 + (slope * (1 + tangent ** 2) * angleError) ** 2);
  // With no error given every lift counts alike and the spread is 0.
  const exact = variances.some((v) => v === 0);
  let wt = 0;
  let wtt = 0;
  let wty = 0;
  perLift.forEach(({ tangent, gain }, i) => {
    const weight = exact ? 1 : 1 / (variances[i] as number);
    wt += weight * tangent;
    wtt += weight * tangent ** 2;
    wty += weight * tangent * gain;
  });
  const own = exact ? 0 : 1 / wtt;
  return { slope: wty / wtt, slopeSpread: Math.sqrt(own + ((scaleError * wt) / wtt) ** 2) };
}

/**
 * Height of the CG after a body drop and a lower suspension.
 *
 *   Δh = −[m_b D + m_s S]/M     S = S_f (1 − ψ) + S_r ψ
 *
 * First moment of mass about the ground: only what moved counts. A body drop brings the body down over the frame;
 * engine, frame and axles stay where they were. A lower suspension brings all of the sprung mass down, body and all.
 *
 * Weights of S: the frame comes down by S_f over the front axle and S_r over the rear, and by the straight line
 * between them in between. At a distance a behind the front axle that is S_f (L − a)/L + S_r a/L. With a of the whole
 * truck, a/L = ψ, so the front drop counts with the *front* load share, the rear drop with the rear one.
 *
 * mass M (kg, the truck that stockCgHeight h belongs to); frontLoad, rearLoad (kg, scale readings; they give ψ);
 * bodyMass m_b (kg: cab, front sheet metal, bed if it was dropped, and in a stock-floor drop the driver and seats too; in
 * a channeled one floor, seats and driver stay at their height and do NOT count); bodyDrop D (m, at the body's own
 * CG); sprungMass m_s (kg, M less wheels, hubs, axle and half the springs; includes m_b); S_f, S_r (m at the axles).
 * Negative drops raise. change is negative where the CG comes down; byBody + bySuspension = change.
 *
 * Neglected: the sprung CG lies a little off that of the whole truck (a few percent of S_f − S_r); pitch; a lower tire
 * radius (that moves all of M: take it off h itself).
 *
 * Impossible 'body-above-sprung-mass' or 'sprung-above-total-mass', by kg; 'cg-not-above-ground', by m.
 * @throws RangeError if a mass or h is not above 0, bodyMass or sprungMass negative, a drop not finite
 * Source: derived. Worked value: 430 kg by 3 in of 1340 kg → 0.96 in; 1180 kg by 5 in → 4.40 in.
 */
export function cgAfterDrop(p: {
  readonly mass: number;
  readonly stockCgHeight: number;
  readonly bodyMass: number;
  readonly bodyDrop: number;
  readonly sprungMass: number;
  readonly frontSuspensionDrop: number;
  readonly rearSuspensionDrop: number;
  readonly frontLoad: number;
  readonly rearLoad: number;
}):
  | { readonly cgHeight: number; readonly change: number; readonly byBody: number; readonly bySuspension: number }
  | Impossible {
  const { mass, stockCgHeight, bodyMass, bodyDrop, sprungMass, frontSuspensionDrop, rearSuspensionDrop } = p;
  requirePositive({ mass, stockCgHeight, frontLoad: p.frontLoad, rearLoad: p.rearLoad });
  requireNonNegative({ bodyMass, sprungMass });
  requireFinite({ bodyDrop, frontSuspensionDrop, rearSuspensionDrop });
  if (bodyMass > sprungMass) return { impossible: 'body-above-sprung-mass', by: bodyMass - sprungMass };
  if (sprungMass > mass) return { impossible: 'sprung-above-total-mass', by: sprungMass - mass };
  const rearFraction = p.rearLoad / (p.frontLoad + p.rearLoad);
  const suspensionDrop = frontSuspensionDrop * (1 - rearFraction) + rearSuspensionDrop * rearFraction;
  const byBody = -(bodyMass * bodyDrop) / mass;
  const bySuspension = -(sprungMass * suspensionDrop) / mass;
  const change = byBody + bySuspension;
  const cgHeight = stockCgHeight + change;
  if (cgHeight <= 0) return { impossible: 'cg-not-above-ground', by: -cgHeight };
  return { cgHeight, change, byBody, bySuspension };
}
