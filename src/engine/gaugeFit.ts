import { brokenLine, lineFit } from './brokenLine.ts';
import type { BrokenLine, Line } from './brokenLine.ts';
import { circleArea } from './circle.ts';
import { standardGravity } from './constants.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { linePressure } from './pressure.ts';
import { requireNonNegative, requirePositive } from './require.ts';
import { valveOutlet } from './valve.ts';

/**
 * What two gauges and a scale between foot and pad say about bar, linkage and rear valve of a truck that stands.
 *
 *   p = m (F − F_0) for each circuit and direction       i η = m_f A_f + m_r A_r       s = m_f A_f/(i η)
 *
 * The bar gives s F i η − F_s = A_f p_f and (1 − s) F i η − F_s = A_r p_r: springs move the lines, not their slopes.
 * u = m_f A_f, v = m_r A_r; errors are one standard deviation from the readings' scatter about the lines:
 *   δη = √(σ_u² + σ_v² + 2 σ_uv)/i       δs = √(v² σ_u² + u² σ_v² − 2 u v σ_uv)/(u + v)²
 * σ_uv = A_f A_r Σ e_f e_r/((n − 2) Σ (F − F̄)²): a scale read wrong moves both gauges alike, and cancels in s but not in η.
 *
 * knee: the bend of rear over front pressure, rising (brokenLine.ts). It is taken as a valve's where one line would scatter as
 * much with a chance below 0.05, the slope drops below 0.8 of what it was, and one line misses by more than 0.2 % of the
 * highest rear pressure (root mean square). On invented readings with 1 % of noise that finds a usual valve with 5, 6, 8 readings in 30,
 * 90, 100 % of cases, and one that is not there in at most 4 % (up to 16 readings): five readings can hardly tell.
 * With a knee the rear lines use only readings below it: above, the slope is the valve's and not the bar's.
 * knee.pressure: at the valve's outlet, equal to its inlet there. knee.slope: m of the valve, after over before.
 *
 * hysteresis at hysteresisForce (N, 50 lbf), between the readings on either side: (p_down − p_up)/(p_down + p_up), half the
 * difference over the mean. drag: the same of the whole push A_f p_f + A_r p_r (pivot, seals). share: half the change of s,
 * which is the bar's friction alone; undefined above the knee. barSwingsFree: front and rear both below 5 %.
 *
 * readings: controlForce F (N, 45–490), pressures (Pa, at the calipers), each pumped and held; direction of the foot before
 * it. A pressure of 0 says only that F < F_0: such readings are left out. Needed: five rising; and none or five falling.
 * pedalRatio i where the pedal stands then (pedal.ts). paper: the sheet's bar, linkage and valve. agreesWithPaper: every rising
 * reading within 7 % of it; falling ones hold more by twice the friction. shareOff: measured less paper; above 0.03 a bar is bound.
 * efficiencyDoubt: above 0.97 or below 0.70 distrust ratio, bores, gauges or scale first. Limits: common practice, no source.
 *
 * Neglected: gauges that are wrong by a fixed part (2 % of a gauge is 0.5 points of share), error of bores and ratio, a foot
 * off the pad's tangent (scale reads high by 1/cos).
 *
 * Impossible 'too-few-rising-readings', 'too-few-falling-readings' by how many are missing; 'forces-all-alike';
 * 'front-pressure-does-not-rise', 'rear-pressure-does-not-rise' by the slope. hysteresis: 'no-falling-readings' or
 * 'force-not-bracketed', by N. @throws RangeError if a force, bore or ratio is not above 0 or a pressure negative
 * Source: derived. Worked value: reference truck A's pressures at 25, 50, 75, 100, 110 lbf → s 0.620, η 0.850, no knee.
 */
export interface GaugeReading {
  readonly controlForce: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly direction: 'rising' | 'falling';
}

export interface DirectionFit {
  readonly front: Line & { readonly offsetForce: number };
  readonly rear: Line & { readonly offsetForce: number };
  readonly frontShare: number;
  readonly shareError: number;
  readonly leverage: number;
  readonly efficiency: number;
  readonly efficiencyError: number;
  /** readings less two, of the shorter line: what a t-table asks for */
  readonly freedom: number;
}

export interface Hysteresis {
  readonly front: number;
  readonly rear: number;
  readonly frontError: number;
  readonly rearError: number;
  readonly drag: number;
  readonly share: number | undefined;
}

export interface Paper {
  readonly frontShare: number;
  readonly efficiency: number;
  readonly springForce: number;
  readonly valve?: { readonly knee: number; readonly slope: number } | undefined;
}

export const neededReadings = 5;
const fiftyPounds = 50 * 0.45359237 * standardGravity;

export function gaugeFit({ readings, frontBore, rearBore, pedalRatio, paper, hysteresisForce = fiftyPounds }: {
  readonly readings: readonly GaugeReading[];
  readonly frontBore: number;
  readonly rearBore: number;
  readonly pedalRatio: number;
  readonly paper?: Paper | undefined;
  readonly hysteresisForce?: number;
}) {
  requirePositive({ pedalRatio, hysteresisForce });
  for (const { controlForce, frontPressure, rearPressure } of readings) {
    requirePositive({ controlForce });
    requireNonNegative({ frontPressure, rearPressure });
  }
  const used = readings.filter((r) => r.frontPressure > 0 && r.rearPressure > 0);
  const up = used.filter((r) => r.direction === 'rising');
  const down = used.filter((r) => r.direction === 'falling');
  if (up.length < neededReadings) return no('too-few-rising-readings', neededReadings - up.length);
  if (readings.some((r) => r.direction === 'falling') && down.length < neededReadings) {
    return no('too-few-falling-readings', neededReadings - down.length);
  }
  const frontArea = circleArea({ diameter: frontBore }).area;
  const rearArea = circleArea({ diameter: rearBore }).area;
  const { bend, bendChance } = valveBend(up);
  const fit = (list: readonly GaugeReading[]) => fitDirection({ list, frontArea, rearArea, pedalRatio, upTo: bend?.kneeX ?? Infinity });
  const rising = fit(up);
  if (isImpossible(rising)) return rising;
  const back = down.length > 0 ? fit(down) : no('no-falling-readings');
  if (isImpossible(back) && back.impossible.endsWith('does-not-rise')) return back;
  const falling = isImpossible(back) ? undefined : back; // a knee may leave too few readings below it
  const hysteresis = hysteresisAt({ force: hysteresisForce, up, down, frontArea, rearArea, rising, falling, knee: bend?.kneeY });
  const off = paper && worstDeviation({ up, paper, frontBore, rearBore, pedalRatio });
  return {
    rising,
    falling,
    frontShare: rising.frontShare,
    shareError: rising.shareError,
    efficiency: rising.efficiency,
    efficiencyError: rising.efficiencyError,
    efficiencyDoubt: rising.efficiency > 0.97 ? 'too-high' as const : rising.efficiency < 0.7 ? 'too-low' as const : undefined,
    knee: bend && {
      pressure: bend.kneeY, pressureError: bend.kneeYError, frontPressure: bend.kneeX, slope: bend.slopeAfter / bend.slopeBefore,
      slopeError: Math.hypot(bend.slopeAfterError ?? 0, (bend.slopeAfter * (bend.slopeBeforeError ?? 0)) / bend.slopeBefore) / bend.slopeBefore,
    },
    bendChance,
    hysteresis,
    barSwingsFree: isImpossible(hysteresis) ? undefined : Math.max(Math.abs(hysteresis.front), Math.abs(hysteresis.rear)) < 0.05,
    worstDeviation: off,
    agreesWithPaper: off && Math.abs(off.part) <= 0.07,
    shareOff: paper && rising.frontShare - paper.frontShare,
    residuals: used.map((r) => residual(r, r.direction === 'rising' ? rising : falling, bend)),
  };
}

const no = (impossible: string, by?: number): Impossible => (by === undefined ? { impossible } : { impossible, by });

function valveBend(up: readonly GaugeReading[]): { readonly bend: BrokenLine | undefined; readonly bendChance: number | undefined } {
  const points = up.map((r) => ({ x: r.frontPressure, y: r.rearPressure }));
  const one = lineFit({ points });
  const two = brokenLine({ points });
  if (two === undefined || isImpossible(one)) return { bend: undefined, bendChance: undefined };
  const highest = Math.max(...up.map((r) => r.rearPressure));
  const seen = Math.sqrt(one.squares / points.length) > 0.002 * highest;
  const reduces = two.slopeBefore > 0 && two.slopeAfter < 0.8 * two.slopeBefore;
  return { bend: seen && reduces && two.chance < 0.05 ? two : undefined, bendChance: two.chance };
}

function fitDirection({ list, frontArea, rearArea, pedalRatio, upTo }: {
  readonly list: readonly GaugeReading[];
  readonly frontArea: number;
  readonly rearArea: number;
  readonly pedalRatio: number;
  readonly upTo: number;
}): DirectionFit | Impossible {
  const below = list.filter((r) => r.frontPressure <= upTo);
  if (below.length < 3) return no('forces-all-alike');
  const front = lineFit({ points: list.map((r) => ({ x: r.controlForce, y: r.frontPressure })) });
  const rear = lineFit({ points: below.map((r) => ({ x: r.controlForce, y: r.rearPressure })) });
  if (isImpossible(front) || isImpossible(rear)) return no('forces-all-alike');
  if (!(front.slope > 0)) return no('front-pressure-does-not-rise', -front.slope);
  if (!(rear.slope > 0)) return no('rear-pressure-does-not-rise', -rear.slope);
  // Both slopes are sums over the same forces; with fewer of them behind, the shared part is still 1/Σ(F − F̄)² of the front.
  const shared = below.reduce((sum, r) => sum + off(front, r.controlForce, r.frontPressure) * off(rear, r.controlForce, r.rearPressure), 0);
  const u = front.slope * frontArea;
  const v = rear.slope * rearArea;
  const du = (front.slopeError ?? 0) * frontArea;
  const dv = (rear.slopeError ?? 0) * rearArea;
  const duv = (shared / (below.length - 2) / front.spreadX) * frontArea * rearArea;
  return {
    front: { ...front, offsetForce: -front.intercept / front.slope },
    rear: { ...rear, offsetForce: -rear.intercept / rear.slope },
    frontShare: u / (u + v),
    shareError: Math.sqrt(Math.max(0, (v * du) ** 2 + (u * dv) ** 2 - 2 * u * v * duv)) / (u + v) ** 2,
    leverage: u + v,
    efficiency: (u + v) / pedalRatio,
    efficiencyError: Math.sqrt(Math.max(0, du ** 2 + dv ** 2 + 2 * duv)) / pedalRatio,
    freedom: Math.min(front.count, rear.count) - 2,
  };
}

function off(line: Line, x: number, y: number): number {
  return y - line.intercept - line.slope * x;
}

function residual(r: GaugeReading, fit: DirectionFit | undefined, bend: BrokenLine | undefined) {
  const { controlForce, direction, frontPressure, rearPressure } = r;
  const above = bend !== undefined && frontPressure > bend.kneeX;
  const rearAbove = bend && direction === 'rising' ? rearPressure - bend.kneeY - bend.slopeAfter * (frontPressure - bend.kneeX) : undefined;
  return {
    controlForce, direction,
    front: fit && off(fit.front, controlForce, frontPressure),
    rear: above ? rearAbove : fit && off(fit.rear, controlForce, rearPressure),
  };
}

function hysteresisAt({ force, up, down, frontArea, rearArea, rising, falling, knee = Infinity }: {
  readonly force: number;
  readonly up: readonly GaugeReading[];
  readonly down: readonly GaugeReading[];
  readonly frontArea: number;
  readonly rearArea: number;
  readonly rising: DirectionFit;
  readonly falling: DirectionFit | undefined;
  readonly knee?: number | undefined;
}): Hysteresis | Impossible {
  if (down.length === 0) return no('no-falling-readings');
  const a = readAt(up, force);
  const b = readAt(down, force);
  if ('missing' in a || 'missing' in b) return no('force-not-bracketed', Math.max('missing' in a ? a.missing : 0, 'missing' in b ? b.missing : 0));
  const part = (lo: number, hi: number): number => (hi - lo) / (hi + lo);
  const push = (x: { readonly front: number; readonly rear: number }): number => x.front * frontArea + x.rear * rearArea;
  const error = (circuit: 'front' | 'rear'): number => {
    const [below, above] = [rising[circuit].scatter ?? 0, (falling ?? rising)[circuit].scatter ?? 0];
    return Math.sqrt(below ** 2 * a.weight + above ** 2 * b.weight) / (a[circuit] + b[circuit]);
  };
  return {
    front: part(a.front, b.front), rear: part(a.rear, b.rear), frontError: error('front'), rearError: error('rear'), drag: part(push(a), push(b)),
    share: Math.max(a.rear, b.rear) > knee ? undefined : ((b.front * frontArea) / push(b) - (a.front * frontArea) / push(a)) / 2,
  };
}

/** Pressures at a force on the straight line between the nearest readings; weight: how much of one reading's variance is left. */
function readAt(list: readonly GaugeReading[], force: number) {
  const lo = Math.max(...list.filter((r) => r.controlForce <= force).map((r) => r.controlForce));
  const hi = Math.min(...list.filter((r) => r.controlForce >= force).map((r) => r.controlForce));
  if (lo === -Infinity) return { missing: hi - force };
  if (hi === Infinity) return { missing: force - lo };
  const mean = (at: number) => {
    const here = list.filter((r) => r.controlForce === at);
    const sum = (key: 'frontPressure' | 'rearPressure') => here.reduce((s, r) => s + r[key], 0) / here.length;
    return { front: sum('frontPressure'), rear: sum('rearPressure'), count: here.length };
  };
  const [a, b] = [mean(lo), mean(hi)];
  if (lo === hi) return { front: a.front, rear: a.rear, weight: 1 / a.count };
  const t = (force - lo) / (hi - lo);
  return { front: a.front + t * (b.front - a.front), rear: a.rear + t * (b.rear - a.rear), weight: (1 - t) ** 2 / a.count + t ** 2 / b.count };
}

function worstDeviation({ up, paper, ...pedal }: {
  readonly up: readonly GaugeReading[];
  readonly paper: Paper;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly pedalRatio: number;
}) {
  let worst: { readonly controlForce: number; readonly circuit: 'front' | 'rear'; readonly part: number } | undefined;
  for (const r of up) {
    const line = linePressure({ ...pedal, ...paper, controlForce: r.controlForce });
    const rear = paper.valve ? valveOutlet({ inlet: line.rearPressure, ...paper.valve }).outlet : line.rearPressure;
    for (const [circuit, read, sheet] of [['front', r.frontPressure, line.frontPressure], ['rear', r.rearPressure, rear]] as const) {
      const part = read / sheet - 1; // Infinity where the sheet has no pressure yet and the gauge has
      if (worst === undefined || Math.abs(part) > Math.abs(worst.part)) worst = { controlForce: r.controlForce, circuit, part };
    }
  }
  return worst;
}
