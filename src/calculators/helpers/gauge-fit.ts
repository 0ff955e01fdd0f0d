import { circleArea } from '../../engine/circle.ts';
import { gaugeFit } from '../../engine/gaugeFit.ts';
import type { GaugeReading, Hysteresis } from '../../engine/gaugeHysteresis.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { linePressure } from '../../engine/pressure.ts';
import { valveOutlet } from '../../engine/valve.ts';
import { lbf } from '../../units/si.ts';
import type { Refusal, ValuesOf } from '../record.ts';

export type GaugeInputs =
  | 'gaugeReadings' | 'gaugeRange' | 'releasePressure' | 'pedalRatio' | 'linkageEfficiency' | 'barOffset' | 'barSpacing'
  | 'frontMasterBore' | 'rearMasterBore' | 'masterSpring' | 'rearValve' | 'kneePressure' | 'valveSlope';
export type GaugeValues = ValuesOf<GaugeInputs>;
export type GaugeFit = Exclude<ReturnType<typeof gaugeFit>, Impossible>;

/** With a valve, fewer readings going down cannot tell its bend from error: see gaugeFit.ts. */
const neededWithValve = 8;
/** Half the difference over the mean that is still free, and the error of it beyond which nothing is said. */
const stickLimit = 0.05;
const noisy = 0.025;

export const paperShareOf = (v: Pick<GaugeValues, 'barOffset' | 'barSpacing'>): number => 0.5 + v.barOffset / v.barSpacing;

/** From the bar's turns and not from the share in use: once the measured share is in use it would agree with itself. */
const paperOf = (v: GaugeValues) => ({
  frontShare: paperShareOf(v), efficiency: v.linkageEfficiency, springForce: v.masterSpring,
  valve: v.rearValve === 'fitted' ? { knee: v.kneePressure, slope: v.valveSlope } : undefined,
});

export function paperPressures(v: GaugeValues, controlForce: number): { readonly front: number; readonly rear: number } {
  const { valve, ...paper } = paperOf(v);
  const line = linePressure({ ...paper, controlForce, pedalRatio: v.pedalRatio, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore });
  return { front: line.frontPressure, rear: valve ? valveOutlet({ inlet: line.rearPressure, ...valve }).outlet : line.rearPressure };
}

const readingsOf = (v: GaugeValues): GaugeReading[] => v.gaugeReadings.map(({ foot, force, front, rear }) => ({ direction: foot === 'down' ? 'rising' : 'falling', controlForce: force, frontPressure: front, rearPressure: rear }));

export function fitOf(v: GaugeValues): GaugeFit | Refusal {
  const outside = Math.abs(v.barOffset) - v.barSpacing / 2;
  if (outside >= 0) return { refused: (say) => `The pivot stands ${say(outside, 'length')} outside a clevis. It must lie between them: check the turns and the clevis spacing.` };
  const readings = readingsOf(v);
  const down = readings.filter((r) => r.direction === 'rising' && r.frontPressure > 0 && r.rearPressure > 0).length;
  if (v.rearValve === 'fitted' && down < neededWithValve) {
    return { refused: () => `With a valve in the rear line ${neededWithValve} readings going down are needed, each with pressure on both gauges, to tell its bend from error; here are ${down}. Add ${neededWithValve - down}, or wind the valve fully open and say so.` };
  }
  const fit = gaugeFit({ readings, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, pedalRatio: v.pedalRatio, paper: paperOf(v) });
  return isImpossible(fit) ? refuse(fit) : fit;
}

/** For values the record has computed already. */
export function sureFit(v: GaugeValues): GaugeFit {
  const fit = fitOf(v);
  if ('refused' in fit) throw new RangeError('gauge fit: expected one, found a refusal');
  return fit;
}

function refuse({ impossible, by = 0 }: Impossible): Refusal {
  return {
    refused: (say) => ({
      'too-few-rising-readings': `Five readings going down are needed, each with pressure on both gauges. Add ${by}.`,
      'too-few-falling-readings': `Readings coming up are worth something from five on, each with pressure on both gauges. Add ${by}, or take them all out.`,
      'forces-all-alike': 'All readings of one way are at the same foot force: no line goes through them. Read at five forces from 25 to 110 lbf (111 to 489 N).',
      'front-pressure-does-not-rise': `The front pressure falls by ${say(by * 10 * lbf, 'pressure')} for each ${say(10 * lbf, 'force')} more of foot. Two columns may be swapped, or going down and coming up.`,
      'rear-pressure-does-not-rise': `The rear pressure falls by ${say(by * 10 * lbf, 'pressure')} for each ${say(10 * lbf, 'force')} more of foot. Two columns may be swapped, or going down and coming up.`,
    })[impossible] ?? 'Fewer than three readings lie below the bend of the rear pressure. Read more of them at low foot forces.',
  };
}

type Freedom = ValuesOf<'barFreedom'>['barFreedom'];

/** Friction of the bar moves push from one master to the other; friction before the bar holds both up alike. */
export function freedomOf(h: Hysteresis | Impossible, frontShare: number): Freedom {
  if (isImpossible(h)) return h.impossible === 'no-falling-readings' ? 'unread' : 'bracket';
  const worst = Math.max(Math.abs(h.front), Math.abs(h.rear));
  const error = Math.max(h.frontError, h.rearError);
  if (error > noisy && worst - error <= stickLimit) return 'noisy';
  if (worst <= stickLimit) return 'free';
  if (h.share === undefined) return 'both';
  const byBar = Math.abs(h.share) / Math.min(frontShare, 1 - frontShare) > stickLimit;
  const byDrag = h.drag > stickLimit;
  return byBar === byDrag ? 'both' : byBar ? 'bar' : 'drag';
}

export function gaugeResults(v: GaugeValues) {
  const fit = fitOf(v);
  if ('refused' in fit) return fit;
  const h = isImpossible(fit.hysteresis) ? undefined : fit.hysteresis;
  const [frontArea, rearArea] = [v.frontMasterBore, v.rearMasterBore].map((diameter) => circleArea({ diameter }).area) as [number, number];
  const { front, rear } = fit.rising;
  const worst = fit.worstDeviation as NonNullable<GaugeFit['worstDeviation']>;
  const at = v.gaugeReadings.find((r) => r.foot === 'down' && r.force === worst.controlForce && deviates(v, r, worst.circuit, worst.part)) ?? v.gaugeReadings[0]!;
  const most = Math.max(...v.gaugeReadings.map((r) => r.force));
  return {
    measuredShare: fit.frontShare, shareError: fit.shareError, measuredEfficiency: fit.efficiency, efficiencyError: fit.efficiencyError,
    pressureHysteresis: h ? Math.max(Math.abs(h.front), Math.abs(h.rear)) : 0, barFreedom: freedomOf(fit.hysteresis, fit.frontShare),
    gaugeAgreement: fit.agreesWithPaper ? 'agrees' as const : 'differs' as const,
    paperDifference: at[worst.circuit] - paperPressures(v, at.force)[worst.circuit],
    measuredKnee: fit.knee?.pressure ?? 0, measuredSlope: fit.knee?.slope ?? 1,
    paperShare: paperShareOf(v), shareOff: fit.frontShare - paperShareOf(v),
    frontFootGain: front.slope * frontArea, rearFootGain: rear.slope * rearArea, frontOffsetForce: front.offsetForce, rearOffsetForce: rear.offsetForce,
    oneLinePressure: (most * fit.rising.leverage) / Math.min(frontArea, rearArea),
  };
}

function deviates(v: GaugeValues, r: GaugeValues['gaugeReadings'][number], circuit: 'front' | 'rear', part: number): boolean {
  return r[circuit] / paperPressures(v, r.force)[circuit] - 1 === part;
}

/** What the fit left over, reading by reading, in the reader's order; nothing for a reading that was not used. */
export function rowsOf(v: GaugeValues) {
  const { residuals } = sureFit(v);
  let next = 0;
  return v.gaugeReadings.map((reading) => ({ reading, off: reading.front > 0 && reading.rear > 0 ? residuals[next++] : undefined, paper: paperPressures(v, reading.force) }));
}

/** What is off paper is off by nearly the same pressure at every push: within 7 % of the highest. */
export function alikeOff(v: GaugeValues): boolean {
  const down = v.gaugeReadings.filter((r) => r.foot === 'down' && r.front > 0 && r.rear > 0).map((r) => ({ r, paper: paperPressures(v, r.force) }));
  return (['front', 'rear'] as const).every((circuit) => {
    const off = down.map(({ r, paper }) => r[circuit] - paper[circuit]);
    return Math.max(...off) - Math.min(...off) <= 0.07 * Math.max(...down.map(({ paper }) => paper[circuit]));
  });
}

/** Both lines together lower coming up than going down, by more than their scatter: friction gives no push back that it never took. */
export function backwards(v: GaugeValues): boolean {
  const { hysteresis: h } = sureFit(v);
  return !isImpossible(h) && h.drag < -0.01 - 2 * Math.max(h.frontError, h.rearError);
}

/** The part of the foot's work that no friction explains: friction that takes on the way down gives on the way up. */
export function unexplainedLoss(v: GaugeValues): number | undefined {
  const fit = sureFit(v);
  return isImpossible(fit.hysteresis) ? undefined : 1 - fit.efficiency / (1 - fit.hysteresis.drag);
}
