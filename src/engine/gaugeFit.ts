import { brokenLine, lineFit } from './brokenLine.ts';
import type { BrokenLine, Line } from './brokenLine.ts';
import { circleArea } from './circle.ts';
import { standardGravity } from './constants.ts';
import { gaugeHysteresis } from './gaugeHysteresis.ts';
import type { GaugeReading } from './gaugeHysteresis.ts';
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
 * Errors are one standard deviation, from the readings' scatter about the lines; u = m_f A_f, v = m_r A_r:
 *   δη = √(σ_u² + σ_v² + 2 σ_uv)/i       δs = √(v² σ_u² + u² σ_v² − 2 u v σ_uv)/(u + v)²
 *   σ_uv = A_f A_r Σ e_f e_r/((n − 2) Σ (F − F̄)²): a scale read wrong moves both gauges alike, which cancels in s, not in η
 *
 * knee: the bend of rear over front pressure, pressed on (brokenLine.ts). It counts as a valve's where its chance is below
 * 0.05, the slope drops below 0.8 of what it was, and one line misses by more than 0.2 % of the highest rear pressure (root
 * mean square). On invented readings with 1 % of noise in scale and gauges that finds a usual valve with 5, 6, 8 readings in
 * about 30, 90, 100 of 100 cases, and one that is not there in at most 4 of 100 (up to 12 readings): five can hardly tell.
 * With a knee the rear lines use only readings below it: above, the slope is the valve's and not the bar's.
 *
 * steepening: the same with the slope above 1.4 times what it was. No valve does that. A bar on its stop does, since from
 * there both pistons advance alike and the stiffer circuit, usually the rear, gains more pressure: of the push that is added
 * the rear gets k_f A_r²/(k_f A_r² + k_r A_f²), k the compliances. So does a front master at its end. Above it the share is
 * no longer the bar's. Where the chance is below 0.01 (`cut`) no line of either circuit uses those readings; between 0.01 and
 * 0.05 the lines stay whole, since a line cut short for nothing errs by more than it saves. With 2 % of noise in all three, eight
 * readings to 110 lbf show a bar that stops at 75 or 90 in 95 of 100 cases, and one that does not in 2.
 * knee.pressure: outlet, equal to the inlet there. knee.slope: rear over front after the knee, over the same before it.
 *
 * hysteresis at hysteresisForce (N, 50 lbf): see gaugeHysteresis.ts. barSwingsFree: front and rear both within 5 %.
 *
 * readings: controlForce F (N, 45–490) square on the pad, pressures (Pa) at the calipers, each held for three seconds. A
 * pressure of 0 says only that F is below F_0: such readings are left out. Needed: five rising; and none or five falling.
 * pedalRatio i where the pedal then stands (pedal.ts). paper: bar, linkage and valve of the sheet. worstDeviation: of a
 * rising reading from it, as a part of the sheet's pressure; agreesWithPaper within 7 %. Falling ones hold more by twice
 * the friction and are not asked. shareOff: measured less paper; above 0.03 suspect a bound bar. efficiencyDoubt: above 0.97
 * or below 0.70 suspect ratio, bores, gauges or scale. All these limits: common practice, no source.
 *
 * Neglected: a gauge wrong by a fixed part (2 % of one gauge is half a point of share); errors of bores and ratio.
 *
 * Impossible 'too-few-rising-readings', 'too-few-falling-readings' by how many are missing; 'forces-all-alike';
 * 'front-pressure-does-not-rise', 'rear-pressure-does-not-rise' by how steeply it falls (Pa/N).
 * @throws RangeError if a force, bore or ratio is not above 0 or a pressure is negative
 * Source: derived. Worked value: reference truck A's own pressures at 25, 50, 75, 100, 110 lbf → s 0.620, η 0.850, no knee.
 */
export interface DirectionFit {
  readonly front: Line & { readonly offsetForce: number };
  readonly rear: Line & { readonly offsetForce: number };
  readonly frontShare: number;
  readonly shareError: number;
  readonly leverage: number;
  readonly efficiency: number;
  readonly efficiencyError: number;
  /** readings of the shorter line less two: what a table of Student's t asks for */
  readonly freedom: number;
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
  const frontArea = circleArea({ diameter: frontBore }).area;
  const rearArea = circleArea({ diameter: rearBore }).area;
  const used = readings.filter((r) => r.frontPressure > 0 && r.rearPressure > 0);
  const up = used.filter((r) => r.direction === 'rising');
  const down = used.filter((r) => r.direction === 'falling');
  if (up.length < neededReadings) return no('too-few-rising-readings', neededReadings - up.length);
  if (down.length < neededReadings && readings.some((r) => r.direction === 'falling')) {
    return no('too-few-falling-readings', neededReadings - down.length);
  }
  const { knee, steepening, kneeChance } = bendOf(up);
  const cut = steepening && steepening.chance < 0.01 ? steepening.kneeX : Infinity;
  const free = (list: readonly GaugeReading[]) => list.filter((r) => r.frontPressure <= cut);
  const fit = (list: readonly GaugeReading[]) => fitDirection({ list: free(list), frontArea, rearArea, pedalRatio, upTo: knee?.kneeX ?? Infinity });
  const rising = fit(up);
  if (isImpossible(rising)) return rising;
  const back = down.length > 0 ? fit(down) : undefined;
  if (isImpossible(back) && back.impossible !== 'too-few-below-knee') return back;
  const falling = isImpossible(back) ? undefined : back;
  const scatterOf = (f: DirectionFit) => ({ front: f.front.scatter ?? 0, rear: f.rear.scatter ?? 0 });
  const hysteresis = gaugeHysteresis({
    readings: used, force: hysteresisForce, frontArea, rearArea, scatterOn: scatterOf(rising), scatterOff: scatterOf(falling ?? rising), knee: (knee ?? steepening)?.kneeY,
  });
  const worstDeviation = paper && deviation({ up, paper, frontBore, rearBore, pedalRatio });
  const { frontShare, shareError, efficiency, efficiencyError } = rising;
  return {
    rising, falling, frontShare, shareError, efficiency, efficiencyError,
    efficiencyDoubt: efficiency > 0.97 ? 'too-high' as const : efficiency < 0.7 ? 'too-low' as const : undefined,
    knee: knee && {
      pressure: knee.kneeY, pressureError: knee.kneeYError, frontPressure: knee.kneeX, slope: knee.slopeAfter / knee.slopeBefore,
      slopeError: Math.hypot(knee.slopeAfterError, (knee.slopeAfter * knee.slopeBeforeError) / knee.slopeBefore) / knee.slopeBefore,
    },
    steepening: steepening && { frontPressure: steepening.kneeX, rearPressure: steepening.kneeY, times: steepening.slopeAfter / steepening.slopeBefore, cut: cut < Infinity },
    kneeChance,
    hysteresis,
    barSwingsFree: isImpossible(hysteresis) ? undefined : Math.max(Math.abs(hysteresis.front), Math.abs(hysteresis.rear)) < 0.05,
    worstDeviation,
    agreesWithPaper: worstDeviation && Math.abs(worstDeviation.part) <= 0.07,
    shareOff: paper && frontShare - paper.frontShare,
    residuals: used.map((r) => (r.frontPressure > cut ? { controlForce: r.controlForce, direction: r.direction, front: undefined, rear: undefined } : residual({ reading: r, fit: r.direction === 'rising' ? rising : falling, knee }))),
  };
}

const no = (impossible: string, by?: number): Impossible => (by === undefined ? { impossible } : { impossible, by });

/** The bend of rear over front: downward, a valve's knee; upward, a bar on its stop. */
function bendOf(up: readonly GaugeReading[]): { readonly knee: BrokenLine | undefined; readonly steepening: BrokenLine | undefined; readonly kneeChance: number | undefined } {
  const points = up.map((r) => ({ x: r.frontPressure, y: r.rearPressure }));
  const one = lineFit({ points });
  const two = brokenLine({ points });
  if (two === undefined || isImpossible(one)) return { knee: undefined, steepening: undefined, kneeChance: undefined };
  const seen = Math.sqrt(one.squares / points.length) > 0.002 * Math.max(...points.map((p) => p.y));
  const counts = seen && two.slopeBefore > 0 && two.chance < 0.05;
  return {
    knee: counts && two.slopeAfter < 0.8 * two.slopeBefore ? two : undefined,
    steepening: counts && two.slopeAfter > 1.4 * two.slopeBefore ? two : undefined,
    kneeChance: two.chance,
  };
}

function fitDirection({ list, frontArea, rearArea, pedalRatio, upTo }: {
  readonly list: readonly GaugeReading[];
  readonly frontArea: number;
  readonly rearArea: number;
  readonly pedalRatio: number;
  readonly upTo: number;
}): DirectionFit | Impossible {
  const below = list.filter((r) => r.frontPressure <= upTo);
  if (below.length < 3) return no('too-few-below-knee', 3 - below.length);
  const front = lineFit({ points: list.map((r) => ({ x: r.controlForce, y: r.frontPressure })) });
  const rear = lineFit({ points: below.map((r) => ({ x: r.controlForce, y: r.rearPressure })) });
  if (isImpossible(front) || isImpossible(rear)) return no('forces-all-alike');
  if (!(front.slope > 0)) return no('front-pressure-does-not-rise', -front.slope);
  if (!(rear.slope > 0)) return no('rear-pressure-does-not-rise', -rear.slope);
  // The slopes are sums over the same forces; where the rear uses fewer of them, what they share is still 1/Σ(F − F̄)² of the front.
  const shared = below.reduce((sum, r) => sum + above(front, r.controlForce, r.frontPressure) * above(rear, r.controlForce, r.rearPressure), 0);
  const u = front.slope * frontArea;
  const v = rear.slope * rearArea;
  const du = (front.slopeError ?? 0) * frontArea;
  const dv = (rear.slopeError ?? 0) * rearArea;
  const duv = (shared * frontArea * rearArea) / ((below.length - 2) * front.spreadX);
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

const above = (line: Line, x: number, y: number): number => y - line.intercept - line.slope * x;

/** Reading less fit. Let off from above a knee, no line is laid through the rear: the valve lags. */
function residual({ reading, fit, knee }: { readonly reading: GaugeReading; readonly fit: DirectionFit | undefined; readonly knee: BrokenLine | undefined }) {
  const { controlForce, direction, frontPressure, rearPressure } = reading;
  const reduced = knee !== undefined && frontPressure > knee.kneeX;
  const overKnee = knee && direction === 'rising' ? rearPressure - knee.kneeY - knee.slopeAfter * (frontPressure - knee.kneeX) : undefined;
  return {
    controlForce, direction,
    front: fit && above(fit.front, controlForce, frontPressure),
    rear: reduced ? overKnee : fit && above(fit.rear, controlForce, rearPressure),
  };
}

function deviation({ up, paper, ...pedal }: {
  readonly up: readonly GaugeReading[];
  readonly paper: Paper;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly pedalRatio: number;
}): { readonly controlForce: number; readonly circuit: 'front' | 'rear'; readonly part: number } {
  const { frontShare, efficiency, springForce, valve } = paper;
  const parts = up.flatMap(({ controlForce, frontPressure, rearPressure }) => {
    const line = linePressure({ ...pedal, frontShare, efficiency, springForce, controlForce });
    const rear = valve ? valveOutlet({ inlet: line.rearPressure, ...valve }).outlet : line.rearPressure;
    // Infinity where the sheet has no pressure yet and the gauge has: that does not agree either.
    return [
      { controlForce, circuit: 'front' as const, part: frontPressure / line.frontPressure - 1 },
      { controlForce, circuit: 'rear' as const, part: rearPressure / rear - 1 },
    ];
  });
  return parts.reduce((worst, p) => (Math.abs(p.part) > Math.abs(worst.part) ? p : worst));
}
