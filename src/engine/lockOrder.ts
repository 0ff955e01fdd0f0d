import { standardGravity } from './constants.ts';
import { requireLoadRatios } from './distribution.ts';
import type { Impossible } from './outcome.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';
import type { BarAndBrakes, PerRodForce } from './valve.ts';
import { brakesPerRodForce, requireSlope, valveOutlet } from './valve.ts';

/**
 * Which axle locks first on a given grip, and at what braking rate, with a fixed split of brake force.
 *
 * Free body of a wheel about to lock: the road can push it back with μ N. Rolling resistance f N is part of that
 * push, so the brake may make (μ − f) N before the wheel stops turning. Truck: the brakes' total is B, the road's
 * total is z W = B + f W, and the loads are those of axleLoads at z. Put together, per axle:
 *
 *   (1 − Φ)(z − f) = (μ − f)(1 − ψ + χ z)  →  z_f = [(μ − f)(1 − ψ) + (1 − Φ) f]/[(1 − Φ) − (μ − f) χ]
 *   Φ (z − f)      = (μ − f)(ψ − χ z)      →  z_r = [(μ − f) ψ + Φ f]/[Φ + (μ − f) χ]
 *
 * Both at once gives z = μ and Φ = ψ − χ μ, so the front locks first exactly where μ < z_crit = (ψ − Φ)/χ. No split
 * stops the truck harder than μ: that is the limit which f has to respect.
 * A denominator of 0 or less means that axle never locks: the front gains load faster than brake force.
 *
 * rearBrakeFraction Φ (0–1) of brake force; rearFraction ψ, heightRatio χ: see idealDistribution; grip μ (0.1–1.2,
 * same at both axles); rollingResistance f (0–0.03, 0 if left out).
 *
 * frontLockRate, rearLockRate: undefined for an axle that never locks. Only the smaller is reached with the split
 * intact; it is bestRate, the hardest stop with every wheel still turning. The other is where that axle would lock
 * if the first had not slipped. margin = z_crit − μ, positive where the front locks first.
 *
 * Neglected: as axleLoads; grip that changes with load; a bend, where the inner rear locks earlier (keep 0.05–0.10
 * more in hand, common practice, no source); engine drag, which adds to the driven axle.
 *
 * Impossible 'grip-not-above-rolling-resistance', by f − μ; 'rear-axle-lifts' (Φ = 0 only: the truck would tip before
 * its front wheels lock), by how much μ is past the rear lift rate ψ/χ.
 * @throws RangeError if Φ is outside 0–1, ψ not between 0 and 1, χ or μ not above 0, f negative
 * Source: statics. Wong's printed example uses other terms in f: see tests/published/bias.test.ts.
 * Worked value: Φ 0.24, ψ 0.42, χ 0.58/2.743 → z_crit 0.851; μ 0.7: z_f 0.663, z_r 0.758, front first.
 */
export type First = 'front' | 'rear' | 'together';

export function lockOrder(p: {
  readonly rearBrakeFraction: number;
  readonly rearFraction: number;
  readonly heightRatio: number;
  readonly grip: number;
  readonly rollingResistance?: number;
}):
  | {
      readonly frontLockRate: number | undefined;
      readonly rearLockRate: number | undefined;
      readonly first: First;
      readonly bestRate: number;
      readonly criticalRate: number;
      readonly margin: number;
    }
  | Impossible {
  const { rearBrakeFraction, rearFraction, heightRatio, grip, rollingResistance = 0 } = p;
  requireLoadRatios({ rearFraction, heightRatio });
  if (!areNonNegative(rearBrakeFraction, rollingResistance)) requireNonNegative({ rearBrakeFraction, rollingResistance });
  if (!arePositive(grip)) requirePositive({ grip });
  if (rearBrakeFraction > 1) throw new RangeError(`rearBrakeFraction: expected at most 1, found ${rearBrakeFraction}`);
  const free = grip - rollingResistance;
  if (free <= 0) return { impossible: 'grip-not-above-rolling-resistance', by: -free };
  const frontBrakeFraction = 1 - rearBrakeFraction;
  const frontGap = frontBrakeFraction - free * heightRatio;
  const frontLockRate =
    frontGap > 0 ? (free * (1 - rearFraction) + frontBrakeFraction * rollingResistance) / frontGap : undefined;
  // Without a rear brake the rear formula still gives ψ/χ, where the axle lifts: that is not locking.
  const rearLockRate =
    rearBrakeFraction > 0
      ? (free * rearFraction + rearBrakeFraction * rollingResistance) / (rearBrakeFraction + free * heightRatio)
      : undefined;
  const criticalRate = (rearFraction - rearBrakeFraction) / heightRatio;
  const bestRate = Math.min(frontLockRate ?? Infinity, rearLockRate ?? Infinity);
  // With any rear brake at all the rear locks before it lifts; without one the truck may tip instead.
  const liftRate = rearFraction / heightRatio;
  if (bestRate > liftRate) return { impossible: 'rear-axle-lifts', by: grip - liftRate };
  return {
    frontLockRate,
    rearLockRate,
    first: firstOf({ front: frontLockRate, rear: rearLockRate }),
    bestRate,
    criticalRate,
    margin: criticalRate - grip,
  };
}

/**
 * The same with a balance bar, two bores and a proportioning valve, and the push at which each axle locks.
 *
 * Brake forces rise with the rod force T as c_f T and C_r p_out(c_i T), so "force minus grip × load" is two straight
 * pieces for each axle, joined at the knee. It starts below 0 and bends up once (front) or stays rising (rear), so
 * it passes 0 at most once; each piece is solved and the one that holds its own root is kept. No search is needed.
 *
 *   front   (c_f − μ χ (c_f + r)) T = μ [W (1 − ψ) + χ e]
 *   rear    (r + μ χ (c_f + r)) T + (1 + μ χ) e = μ W ψ
 *   with r = c_r, e = 0 up to the knee and r = m c_r, e = (1 − m) C_r p_k above it
 *
 * BarAndBrakes: see brakesPerRodForce. knee (Pa), slope: see valveOutlet (slope 1: no valve). mass (kg as driven);
 * rearFraction, heightRatio, grip as lockOrder. rodForce T (N) on the bar: divide by pedal ratio and efficiency for
 * the foot. frontPressure, rearPressure (Pa) at the brakes, rearPressure after the valve.
 * front: undefined where the front never locks. rodForce, frontPressure, bestRate: at the first lock.
 *
 * Neglected: as lockOrder (rolling resistance 0) and brakesPerRodForce.
 * @throws RangeError if the knee is not above 0; as brakesPerRodForce, valveOutlet and lockOrder
 * Source: derived. Worked value: the truck above, bar and brakes of
 * brakesPerRodForce, 1340 kg, knee 20 bar, slope 0.43, μ 0.8 → front first at z 0.721 with 2510 N and 62.7 bar.
 */
export interface LockPoint {
  readonly rate: number;
  readonly rodForce: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly valveReducing: boolean;
}

export interface InstalledBrakes extends BarAndBrakes {
  /** What brakesPerRodForce makes of the same bar and brakes, where it is at hand. */
  readonly perRodForce?: PerRodForce;
  readonly knee: number;
  readonly slope: number;
  readonly mass: number;
  readonly rearFraction: number;
  readonly heightRatio: number;
}

export function lockOrderWithValve(p: InstalledBrakes & { readonly grip: number }): {
  readonly front: LockPoint | undefined;
  readonly rear: LockPoint;
  readonly first: First;
  readonly bestRate: number;
  readonly rodForce: number;
  readonly frontPressure: number;
} {
  const { grip, knee, slope, mass, rearFraction, heightRatio } = p;
  requireInstalled(p);
  if (!arePositive(grip)) requirePositive({ grip });
  const c = p.perRodForce ?? brakesPerRodForce(p);
  const weight = mass * standardGravity;
  const lean = grip * heightRatio;
  const kneeRodForce = knee / c.rearInlet;
  const below: Piece = { rise: c.rear, step: 0 };
  const above: Piece = { rise: slope * c.rear, step: (1 - slope) * p.rearGain * knee };

  const frontRoot = ({ rise, step }: Piece): number => {
    const gap = c.front - lean * (c.front + rise);
    return gap > 0 ? (grip * weight * (1 - rearFraction) + lean * step) / gap : Infinity;
  };
  const rearRoot = ({ rise, step }: Piece): number =>
    (grip * weight * rearFraction - (1 + lean) * step) / (rise + lean * (c.front + rise));
  const pick = (root: (piece: Piece) => number): number => {
    const early = root(below);
    return early <= kneeRodForce ? early : root(above);
  };
  const pointAt = (rodForce: number): LockPoint => {
    const { outlet, reducing } = valveOutlet({ inlet: c.rearInlet * rodForce, knee, slope });
    return {
      rate: (c.front * rodForce + p.rearGain * outlet) / weight,
      rodForce,
      frontPressure: c.frontPressure * rodForce,
      rearPressure: outlet,
      valveReducing: reducing,
    };
  };

  const frontRodForce = pick(frontRoot);
  const front = frontRodForce < Infinity ? pointAt(frontRodForce) : undefined;
  const rear = pointAt(pick(rearRoot));
  const first = firstOf({ front: front?.rodForce, rear: rear.rodForce });
  const lead = first === 'rear' || front === undefined ? rear : front;
  return { front, rear, first, bestRate: lead.rate, rodForce: lead.rodForce, frontPressure: lead.frontPressure };
}

/** One straight piece of the rear brake force: rise per newton on the bar, step the force it would start from. */
interface Piece {
  readonly rise: number;
  readonly step: number;
}

/**
 * The rates at which the installed split crosses the ideal one, in rising order, up to rear lift.
 *
 * Installed minus ideal rear force over weight is, below the knee rate z_k, z (Φ − ψ + χ z), and above it
 * χ z² − (ψ − Φ_m) z + B with B = (1 − Φ_m)(1 − m) C_r p_k/W. So one crossing can lie below the knee and up to two
 * above. `above` says which axle works harder just past the crossing: 'rear' is the dangerous side. With a valve
 * the truck can pass from front to rear, back to front, and to rear again. startsWith: the harder axle at low rates.
 *
 * A curve that only touches the ideal is no crossing and is left out. Neglected and thrown: as lockOrderWithValve.
 * Source: derived.
 */
export interface Crossing {
  readonly rate: number;
  readonly above: 'front' | 'rear';
}

export function criticalRateWithValve(p: InstalledBrakes): {
  readonly crossings: readonly Crossing[];
  readonly startsWith: 'front' | 'rear';
  readonly kneeRate: number;
} {
  requireInstalled(p);
  const { knee, slope, mass, rearFraction, heightRatio } = p;
  const c = p.perRodForce ?? brakesPerRodForce(p);
  const weight = mass * standardGravity;
  const liftRate = rearFraction / heightRatio;
  const kneeRate = (knee * (c.front + c.rear)) / (c.rearInlet * weight);
  const shareAbove = (slope * c.rear) / (c.front + slope * c.rear);
  const step = ((1 - shareAbove) * (1 - slope) * p.rearGain * knee) / weight;

  const rates: number[] = [];
  const plain = (rearFraction - c.rearBrakeFraction) / heightRatio;
  if (plain > 0 && plain <= kneeRate) rates.push(plain);
  const half = (rearFraction - shareAbove) / (2 * heightRatio);
  const disc = half ** 2 - step / heightRatio;
  if (disc > 0 && half > 0) {
    const far = half + Math.sqrt(disc);
    // The product of the roots is B/χ: dividing keeps the small one exact where subtraction would not.
    const near = step / (heightRatio * far);
    if (near > kneeRate) rates.push(near);
    if (far > kneeRate) rates.push(far);
  }

  const side = (rate: number): 'front' | 'rear' => {
    const share = rate <= kneeRate ? c.rearBrakeFraction : shareAbove + step / rate;
    return share > rearFraction - heightRatio * rate ? 'rear' : 'front';
  };
  const startsWith = side((rates[0] ?? liftRate) / 2);
  const crossings: Crossing[] = [];
  let before = startsWith;
  for (let i = 0; i < rates.length; i += 1) {
    const rate = rates[i] as number;
    const above = side((rate + (rates[i + 1] ?? liftRate)) / 2);
    if (above !== before) crossings.push({ rate, above });
    before = above;
  }
  return { crossings, startsWith, kneeRate };
}

/** Equal to one part in 10⁹ counts as together: no truck is built closer. */
function firstOf({ front, rear }: { readonly front: number | undefined; readonly rear: number | undefined }): First {
  if (rear === undefined) return 'front';
  if (front === undefined) return 'rear';
  if (Math.abs(front - rear) <= 1e-9 * Math.max(front, rear)) return 'together';
  return front < rear ? 'front' : 'rear';
}

function requireInstalled(p: InstalledBrakes): void {
  requireLoadRatios({ rearFraction: p.rearFraction, heightRatio: p.heightRatio });
  if (!arePositive(p.mass, p.knee)) requirePositive({ mass: p.mass, knee: p.knee });
  requireSlope(p.slope);
}
