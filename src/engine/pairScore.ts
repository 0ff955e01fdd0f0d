import { standardGravity } from './constants.ts';
import { axleLoads, withPayload } from './loads.ts';
import type { AxleLoads } from './loads.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';
import { singleAxleSlip } from './singleAxleSlip.ts';

/**
 * What one pair of masters with one pedal ratio and one bar share fulfills, and by how much it misses the rest.
 *
 *   at the target rate z   T = [z W + Σ C (p_0 + F_s/A)]/Σ (C s/A)   over the axles that bite, F = T/(i η),
 *                          p = (s T − F_s)/A    x = (V_0 + k p)/A + x_port    pad = i [s x_f + (1 − s) x_r + g_0]
 *   lock order             z_crit = (ψ − Φ)/χ at least z + rateMargin and at least the grip μ, empty and laden
 *   one circuit dead       p = max(s_g P, min(P, p_lim)), P = F_d i η/A_g, held by the floor and by the bottom
 *
 * These are footToRoad.ts turned round, lockOrder.ts and failurePath.ts, written out as closed forms because a search asks
 * them thousands of times; the tests hold every verdict against those files.
 *
 * Six ends come before any criterion: a pair that meets one of them on its way never makes the target rate, and its figures
 * describe nothing. A master at its bottom, the bar on its stop, the pad on the carpet, an axle that slides, empty:
 *   front (1 − Φ) z > μ (1 − ψ + χ z)     rear Φ z > μ (ψ − χ z)
 *
 * Twelve criteria, each with what is found, a limit and a margin: the room left over a scale that never vanishes (the limit
 * itself; the floor travel for a dead circuit; half the band for the share), positive where met:
 *   effort (N): F against driverForce F_d          front-stroke, rear-stroke (m): x against strokePart × stroke
 *   pad-travel (m): against travelPart × floor     bar-tilt (m): |e + x_f − x_r| against L_b sin(tiltPart α_s)
 *   share: in shareLow–shareHigh                   lock-empty, lock-laden (rate): z_crit
 *   front-dead-travel, rear-dead-travel (m): the pad, were there no floor, against floorTravel − floorMargin, at F_d
 *   front-dead-rate, rear-dead-rate: what is left at F_d, empty, floor and tires counted, against failedRate
 *
 * Symbols and ranges as in those files. targetRate z (0.6–0.9, of the empty truck); driverForce F_d (N): what the weakest
 * driver can give; stopAngle α_s left out: no stop, taken as 90°, so nothing judges the tilt; frontLead e (m, 0 if left out).
 * Limits left out, common practice, no source: 80 % of a stroke, two thirds of the floor travel, half the stop, share
 * 0.50–0.65, 25 mm of floor; rateMargin 0.2 (critical rate 1.0 g for a target of 0.8 g). failedRate 0.25: about what 168 m from
 * 100 km/h asks (FMVSS 135 S7.10, from memory, agrees with the distance formula of R13-H).
 *
 * Neglected: as those files. A rear valve is taken as wide open or absent. Springs and push-out count in the effort, not in
 * lock order or failures. A laden truck takes more force, stroke and travel for the same rate.
 *
 * Impossible: as withPayload; 'on-stop-at-rest' as failurePath. @throws RangeError if a value is outside its range
 * Source: derived. Worked value: reference truck A (both 17.78 mm, 6.2, 0.62) at 0.8 g: 494 N, front stroke 21.9 of 22.4 mm;
 * the strokes differ by 12.0 mm where a stop of 12° allows 6.6.
 */
export const criteria = [
  'front-stroke', 'rear-stroke', 'bar-tilt', 'share', 'lock-empty', 'lock-laden', // behind the pedal
  'effort', 'pad-travel', 'front-dead-travel', 'front-dead-rate', 'rear-dead-travel', 'rear-dead-rate', // its ratio counts
] as const;
export type Criterion = (typeof criteria)[number];

export const ends = ['front-bottom', 'rear-bottom', 'bar-stop', 'front-slides', 'rear-slides', 'carpet'] as const;
export type End = (typeof ends)[number];

export const usualLimits = Object.freeze({
  strokePart: 0.8, travelPart: 2 / 3, tiltPart: 0.5, shareLow: 0.5, shareHigh: 0.65, rateMargin: 0.2, floorMargin: 0.025, failedRate: 0.25,
});
export type PairLimits = { readonly [K in keyof typeof usualLimits]: number };

export interface TruckForPairs {
  readonly frontLoad: number;
  readonly rearLoad: number;
  readonly wheelbase: number;
  readonly cgHeight: number;
  readonly payload: number;
  readonly payloadAhead: number;
  readonly payloadHeight: number;
  readonly grip: number;
  readonly targetRate: number;
  readonly driverForce: number;
  readonly efficiency: number;
  readonly springForce: number;
  readonly freePlay: number;
  readonly floorTravel: number;
  readonly frontGain: number;
  readonly rearGain: number;
  readonly pushOut: number;
  readonly frontStroke: number;
  readonly rearStroke: number;
  readonly portStroke: number;
  readonly frontTakeUpVolume: number;
  readonly rearTakeUpVolume: number;
  readonly frontCompliance: number;
  readonly rearCompliance: number;
  readonly barSpacing: number;
  readonly stopAngle?: number | undefined;
  readonly frontLead?: number | undefined;
  readonly limits?: Partial<PairLimits> | undefined;
}

/** Two masters on a bar. The pedal that pushes it comes apart: most of what happens does not ask for its ratio. */
export interface Masters {
  readonly frontArea: number;
  readonly rearArea: number;
  readonly frontShare: number;
}

/** Everything about the truck that no pair changes, checked once. */
export type PairBench = ReturnType<typeof bench>;

export function pairBench(p: TruckForPairs): PairBench | Impossible {
  const laden = withPayload(p);
  if (isImpossible(laden)) return laden;
  const made = bench(p, standing(p), standing({ ...laden, wheelbase: p.wheelbase }));
  const beyond = Math.abs(made.frontLead) - made.stop;
  return beyond > 0 ? { impossible: 'on-stop-at-rest', by: beyond } : made;
}

/** Parked on the level no axle lifts. */
function standing({ frontLoad, rearLoad, wheelbase, cgHeight }: { readonly frontLoad: number; readonly rearLoad: number; readonly wheelbase: number; readonly cgHeight: number }): AxleLoads {
  return axleLoads({ frontLoad, rearLoad, wheelbase, cgHeight, rate: 0 }) as AxleLoads;
}

function bench(p: TruckForPairs, { mass, rearFraction, heightRatio }: AxleLoads, laden: AxleLoads) {
  const { targetRate, driverForce, floorTravel, barSpacing, stopAngle = Math.PI / 2, frontLead = 0 } = p;
  const limits: PairLimits = { ...usualLimits, ...p.limits };
  requireInRange({ ...p, stopAngle, frontLead, limits });
  const road = { rearLoadFraction: rearFraction, cgHeight: p.cgHeight, wheelbase: p.wheelbase, grip: p.grip };
  const { strokePart, travelPart, tiltPart, shareLow, shareHigh, rateMargin, floorMargin, failedRate } = limits;
  const most = (limit: number, scale = limit) => [limit, -1 / scale] as const;
  const least = (limit: number) => [limit, 1 / limit] as const;
  const lock = least(Math.max(targetRate + rateMargin, p.grip));
  const carpet = most(floorTravel - floorMargin, floorTravel);
  const rules = [
    most(strokePart * p.frontStroke), most(strokePart * p.rearStroke), most(barSpacing * Math.sin(tiltPart * stopAngle)), most((shareHigh - shareLow) / 2), lock, lock,
    most(driverForce), most(travelPart * floorTravel), carpet, least(failedRate), carpet, least(failedRate),
  ];
  return {
    targetRate, driverForce, floorTravel, frontLead, limits, rearFraction, heightRatio, grip: p.grip,
    springForce: p.springForce, pushOut: p.pushOut, portStroke: p.portStroke, efficiency: p.efficiency, freePlay: p.freePlay,
    weight: mass * standardGravity, ladenRearFraction: laden.rearFraction, ladenHeightRatio: laden.heightRatio,
    stop: barSpacing * Math.sin(stopAngle),
    front: { gain: p.frontGain, stroke: p.frontStroke, takeUp: p.frontTakeUpVolume, compliance: p.frontCompliance, slip: singleAxleSlip({ ...road, axle: 'front' }).rate },
    rear: { gain: p.rearGain, stroke: p.rearStroke, takeUp: p.rearTakeUpVolume, compliance: p.rearCompliance, slip: singleAxleSlip({ ...road, axle: 'rear' }).rate },
    /** In the order of `criteria`: margin = (found − limit) × perRoom. The share is held as its distance from mid-band. */
    rules: { limits: rules.map(([limit]) => limit), perRoom: rules.map(([, per]) => per) },
  };
}

/** Masters at the target rate: closed form of "the least rod force at which footToRoad reaches it". */
export function atTargetRate(b: PairBench, { frontArea, rearArea, frontShare }: Masters) {
  const front = (b.front.gain * frontShare) / frontArea;
  const rear = (b.rear.gain * (1 - frontShare)) / rearArea;
  const frontBites = (b.pushOut * frontArea + b.springForce) / frontShare; // N on the bar
  const rearBites = (b.pushOut * rearArea + b.springForce) / (1 - frontShare);
  const force = b.targetRate * b.weight;
  const alone = frontBites <= rearBites ? force / front + frontBites : force / rear + rearBites;
  const both = (force + front * frontBites + rear * rearBites) / (front + rear);
  const rodForce = alone <= Math.max(frontBites, rearBites) ? alone : both;
  const frontPressure = Math.max(0, frontShare * rodForce - b.springForce) / frontArea;
  const rearPressure = Math.max(0, (1 - frontShare) * rodForce - b.springForce) / rearArea;
  return {
    rodForce, frontPressure, rearPressure,
    frontStroke: (b.front.takeUp + b.front.compliance * frontPressure) / frontArea + b.portStroke,
    rearStroke: (b.rear.takeUp + b.rear.compliance * rearPressure) / rearArea + b.portStroke,
    rearBrakeFraction: rear / (front + rear),
  };
}

/** The pedal at the driver's force with one circuit dead: failurePath's corners, asked at one force only. */
export function withDead(b: PairBench, { frontArea, rearArea, frontShare, pedalRatio, dead }: Masters & { readonly pedalRatio: number; readonly dead: 'front' | 'rear' }) {
  const rearDead = dead === 'rear';
  const live = rearDead ? b.front : b.rear;
  const area = rearDead ? frontArea : rearArea;
  const carried = rearDead ? frontShare : 1 - frontShare;
  const bottom = rearDead ? b.rear.stroke : b.front.stroke;
  const deadLead = rearDead ? -b.frontLead : b.frontLead;
  const spread = b.stop - deadLead; // from rest to the stop that the dead side runs to
  const risesFrom = b.portStroke + live.takeUp / area;
  const rise = area / live.compliance; // Pa per m of stroke
  const bothStopped = bottom - spread; // live stroke with the bar on its stop and the dead master bottomed
  const full = (b.driverForce * pedalRatio * b.efficiency) / area;
  const asked = Math.max(carried * full, Math.min(full, Math.max(0, bothStopped - risesFrom) * rise));
  const stroke = Math.min(risesFrom + asked / rise, live.stroke, bottom + b.stop + deadLead);
  const reach = b.floorTravel / pedalRatio - b.freePlay; // of the pivot, when the pad is on the floor
  const onStop = reach - (1 - carried) * spread;
  const onFloor = onStop <= bothStopped ? onStop : (reach - (1 - carried) * bottom) / carried;
  const pressure = Math.max(0, Math.min(stroke, onFloor) - risesFrom) * rise;
  return {
    pressure,
    padTravel: pedalRatio * ((1 - carried) * Math.min(stroke + spread, bottom) + carried * stroke + b.freePlay),
    rate: Math.min((live.gain * Math.max(0, pressure - b.pushOut)) / b.weight, live.slip),
  };
}

type AtTarget = ReturnType<typeof atTargetRate>;

/**
 * By how much each end is overrun, in the order of `ends`: stroke, lead and pad travel in m, sliding as a part of the weight.
 * Above 0 where it is met first. The first five do not ask for the ratio.
 */
export function endsBehindPedal(b: PairBench, at: AtTarget): readonly [number, number, number, number, number] {
  const { targetRate: z, rearFraction, heightRatio, grip } = b;
  return [
    at.frontStroke - b.front.stroke, at.rearStroke - b.rear.stroke, Math.abs(b.frontLead + at.frontStroke - at.rearStroke) - b.stop,
    (1 - at.rearBrakeFraction) * z - grip * (1 - rearFraction + heightRatio * z), at.rearBrakeFraction * z - grip * (rearFraction - heightRatio * z),
  ];
}

export function carpetOverrun(b: PairBench, padTravel: number): number {
  return padTravel - b.floorTravel;
}

/** What is found for the first six criteria: one answer serves every ratio. */
export function mastersFindings(b: PairBench, { masters, at }: { readonly masters: Masters; readonly at: AtTarget }): readonly number[] {
  return [
    at.frontStroke, at.rearStroke, Math.abs(b.frontLead + at.frontStroke - at.rearStroke), Math.abs(masters.frontShare - (b.limits.shareLow + b.limits.shareHigh) / 2),
    (b.rearFraction - at.rearBrakeFraction) / b.heightRatio, (b.ladenRearFraction - at.rearBrakeFraction) / b.ladenHeightRatio,
  ];
}

/** For the next two: force and way of the sound pedal. */
export function pedalFindings(b: PairBench, { masters: { frontShare }, at, pedalRatio }: { readonly masters: Masters; readonly at: AtTarget; readonly pedalRatio: number }): readonly [number, number] {
  return [at.rodForce / (pedalRatio * b.efficiency), pedalRatio * (frontShare * at.frontStroke + (1 - frontShare) * at.rearStroke + b.freePlay)];
}

/** For the last four: way and rate with either circuit dead. */
export function deadFindings(b: PairBench, { masters: { frontArea, rearArea, frontShare }, pedalRatio }: { readonly masters: Masters; readonly pedalRatio: number }): readonly number[] {
  const front = withDead(b, { frontArea, rearArea, frontShare, pedalRatio, dead: 'front' });
  const rear = withDead(b, { frontArea, rearArea, frontShare, pedalRatio, dead: 'rear' });
  return [front.padTravel, front.rate, rear.padTravel, rear.rate];
}

function requireInRange(p: TruckForPairs & { readonly stopAngle: number; readonly frontLead: number; readonly limits: PairLimits }): void {
  const { strokePart, travelPart, tiltPart, shareLow, shareHigh, rateMargin, floorMargin, failedRate } = p.limits;
  requirePositive({ targetRate: p.targetRate, driverForce: p.driverForce, efficiency: p.efficiency, floorTravel: p.floorTravel });
  requirePositive({ barSpacing: p.barSpacing, stopAngle: p.stopAngle, frontGain: p.frontGain, rearGain: p.rearGain });
  requirePositive({ frontStroke: p.frontStroke, rearStroke: p.rearStroke, frontCompliance: p.frontCompliance, rearCompliance: p.rearCompliance });
  requireNonNegative({ springForce: p.springForce, freePlay: p.freePlay, pushOut: p.pushOut, portStroke: p.portStroke });
  requireNonNegative({ frontTakeUpVolume: p.frontTakeUpVolume, rearTakeUpVolume: p.rearTakeUpVolume });
  requireFinite({ frontLead: p.frontLead });
  requirePositive({ strokePart, travelPart, tiltPart, failedRate, band: shareHigh - shareLow });
  requireNonNegative({ rateMargin, floorMargin, shareLow });
  if (p.efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${p.efficiency}`);
  if (p.stopAngle > Math.PI / 2) throw new RangeError(`stopAngle: expected at most π/2, found ${p.stopAngle}`);
  if (tiltPart > 1) throw new RangeError(`tiltPart: expected at most 1, found ${tiltPart}`);
}
