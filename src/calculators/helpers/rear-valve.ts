import { standardGravity } from '../../engine/constants.ts';
import { brakesPerRodForce, kneeForMargin, valveOutlet } from '../../engine/valve.ts';
import type { ValuesOf } from '../record.ts';
import type { At } from '../show.ts';

export type ValveInputs =
  | 'rearPressure' | 'kneePressure' | 'valveSlope' | 'frontShare' | 'frontMasterBore' | 'rearMasterBore' | 'frontBrakeGain' | 'rearBrakeGain'
  | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'shareMargin' | 'rateLimit';
type V = ValuesOf<ValveInputs>;

export function parts(v: V) {
  const mass = v.frontAxleLoad + v.rearAxleLoad;
  const bar = { frontShare: v.frontShare, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain };
  const c = brakesPerRodForce(bar);
  const rearShareAboveKnee = (v.valveSlope * c.rear) / (c.front + v.valveSlope * c.rear);
  return { mass, weight: mass * standardGravity, bar, c, rearShareAboveKnee, loads: { rearFraction: v.rearAxleLoad / mass, heightRatio: v.cgHeight / v.wheelbase } };
}

/** Axle forces with the valve at one rod force: front first. */
export function forces(v: V, rodForce: number): At {
  const { c } = parts(v);
  return [c.front * rodForce, v.rearBrakeGain * valveOutlet({ inlet: c.rearInlet * rodForce, knee: v.kneePressure, slope: v.valveSlope }).outlet];
}

export function results(v: V) {
  const { mass, weight, bar, c, rearShareAboveKnee, loads } = parts(v);
  const { rearFraction, heightRatio } = loads;
  const perRate = (weight * c.rearInlet) / (c.front + c.rear); // rear pressure for each g with the valve open
  const openRate = (rearFraction - v.shareMargin - c.rearBrakeFraction) / heightRatio;
  // A slope of 1 is no valve, and no knee of it helps.
  const asked = v.valveSlope < 1
    ? kneeForMargin({ ...bar, ...loads, mass, slope: v.valveSlope, margin: v.shareMargin, rateLimit: v.rateLimit })
    : { need: openRate >= v.rateLimit ? 'none needed' : 'none helps', knee: undefined };
  const kneeRate = v.kneePressure / perRate;
  const marginAtKnee = rearFraction - heightRatio * Math.min(kneeRate, v.rateLimit) - c.rearBrakeFraction;
  const step = ((1 - rearShareAboveKnee) * (1 - v.valveSlope) * v.rearBrakeGain * v.kneePressure) / (weight * v.rateLimit);
  const marginAtLimit = kneeRate < v.rateLimit ? rearFraction - heightRatio * v.rateLimit - rearShareAboveKnee - step : marginAtKnee;
  return {
    rearPressureAfterValve: valveOutlet({ inlet: v.rearPressure, knee: v.kneePressure, slope: v.valveSlope }).outlet,
    kneeForMargin: asked.need === 'set' ? (asked.knee as number) : asked.need === 'none needed' ? openRate * perRate : 0,
    marginKept: Math.min(marginAtKnee, marginAtLimit),
    kneeRate,
    openValvePressure: Math.max(0, openRate) * perRate,
    rearBrakeFraction: c.rearBrakeFraction, rearShareAboveKnee, mass, rearLoadFraction: rearFraction, heightRatio,
    valveNeed: ({ set: 'set', 'none needed': 'nothing', 'none helps': 'beyond' } as const)[asked.need as 'set' | 'none needed' | 'none helps'],
  };
}

/** Rod force that stops the empty truck at a rate, valve at work. */
export function rodForceAt(v: V, rate: number): number {
  const { weight, c } = parts(v);
  const open = (rate * weight) / (c.front + c.rear);
  if (c.rearInlet * open <= v.kneePressure) return open;
  return (rate * weight - (1 - v.valveSlope) * v.rearBrakeGain * v.kneePressure) / (c.front + v.valveSlope * c.rear);
}

export const steps = (upTo: number): number[] => Array.from({ length: 41 }, (_, k) => (k * upTo) / 40);

/** Rates for a curve, with the knee among them so that its corner stays sharp. */
export const rates = (v: V, knee: number): number[] => [...steps(v.rateLimit).slice(1), ...(knee > 0 && knee < v.rateLimit ? [knee] : [])].sort((a, b) => a - b);

export const rearShareAt = (v: V, rate: number): number => {
  const [front, rear] = forces(v, rodForceAt(v, rate));
  return rear / (front + rear);
};
