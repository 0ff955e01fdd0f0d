import { withPayload } from '../../engine/loads.ts';
import { criticalRateWithValve, lockOrder, lockOrderWithValve } from '../../engine/lockOrder.ts';
import type { First } from '../../engine/lockOrder.ts';
import { standardGravity } from '../../engine/constants.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { brakesPerRodForce } from '../../engine/valve.ts';
import type { PerRodForce } from '../../engine/valve.ts';
import type { Say, ValuesOf } from '../record.ts';
import type { At } from '../show.ts';

export type LockInputs =
  | 'grip' | 'frontShare' | 'frontMasterBore' | 'rearMasterBore' | 'frontBrakeGain' | 'rearBrakeGain' | 'rearValve' | 'kneePressure' | 'valveSlope'
  | 'pedalRatio' | 'linkageEfficiency' | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'payload' | 'payloadAhead' | 'payloadHeight';
type V = ValuesOf<LockInputs>;
export type Load = 'empty' | 'laden';

export interface Stand {
  readonly mass: number;
  readonly rearFraction: number;
  readonly heightRatio: number;
}

/** How the truck stands, empty or with the load. */
export function standing(v: V, load: Load): Stand | Impossible {
  const l = withPayload({ frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, cgHeight: v.cgHeight, payload: load === 'laden' ? v.payload : 0, payloadAhead: v.payloadAhead, payloadHeight: v.payloadHeight });
  return isImpossible(l) ? l : { mass: l.mass, rearFraction: l.rearFraction, heightRatio: l.cgHeight / v.wheelbase };
}

/** The same, only for values that were computed already, so that the load is known to stand. */
export function stand(v: V, load: Load): Stand {
  const s = standing(v, load);
  if (isImpossible(s)) throw new RangeError(`lock order: expected a truck that stands, found ${s.impossible}`);
  return s;
}

export interface Locks {
  readonly first: First;
  /** Both capped at rear lift: an axle that would lock later still never locks. */
  readonly front: number;
  readonly rear: number;
  readonly frontNeverLocks: boolean;
  /** Rod force at the first lock. */
  readonly rodForce: number;
}

/** A knee at nothing at all is a slope from the first psi; the engine wants a knee above 0. */
const leastKnee = 1e-9;
const installed = (v: V, s: Stand, perRodForce: PerRodForce, grip: number) => ({
  frontShare: v.frontShare, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, perRodForce,
  mass: s.mass, rearFraction: s.rearFraction, heightRatio: s.heightRatio, knee: Math.max(v.kneePressure, leastKnee), slope: v.valveSlope, grip,
});

export const openSplit = (v: V): PerRodForce => brakesPerRodForce({ frontShare: v.frontShare, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain });

/** The split may be handed in: 10,000 trucks are drawn, and each would work it out five times. */
export function locksOn(v: V, s: Stand, grip: number, c = openSplit(v)): Locks {
  const lift = s.rearFraction / s.heightRatio;
  if (v.rearValve === 'fitted') {
    const r = lockOrderWithValve(installed(v, s, c, grip));
    return { first: r.first, front: Math.min(r.front?.rate ?? Infinity, lift), rear: Math.min(r.rear.rate, lift), frontNeverLocks: !(r.front && r.front.rate < lift), rodForce: r.rodForce };
  }
  const r = lockOrder({ rearBrakeFraction: c.rearBrakeFraction, rearFraction: s.rearFraction, heightRatio: s.heightRatio, grip });
  if (isImpossible(r)) throw new RangeError(`lock order: expected some rear brake, found ${r.impossible}`);
  return {
    first: r.first, front: Math.min(r.frontLockRate ?? Infinity, lift), rear: r.rearLockRate as number,
    frontNeverLocks: !(r.frontLockRate !== undefined && r.frontLockRate < lift), rodForce: (r.bestRate * s.mass * standardGravity) / (c.front + c.rear),
  };
}

/** No road has less grip, so a lead of the rear that ends below it locks nothing. */
const leastGrip = 0.02;

/**
 * The rate above which the rear works harder than the front. With the bar alone that is (ψ − Φ)/χ, below 0 where the
 * rear leads from the start. A valve that bends the line before then, or at so low a rate that no road is that
 * slippery, puts it off to `bent`, where the line above the knee meets the ideal.
 */
export function criticalOf(v: V, s: Stand, c = openSplit(v)): { readonly rate: number; readonly bent: boolean } {
  const plain = (s.rearFraction - c.rearBrakeFraction) / s.heightRatio;
  if (v.rearValve !== 'fitted') return { rate: plain, bent: false };
  const { crossings, startsWith, kneeRate } = criticalRateWithValve(installed(v, s, c, v.grip));
  const last = crossings[crossings.length - 1];
  const early = startsWith === 'rear' && crossings[0]?.above === 'front' && crossings[0].rate < leastGrip;
  return last && last.above === 'rear' && (plain > kneeRate || early) ? { rate: last.rate, bent: true } : { rate: plain, bent: false };
}

export const gripSteps: readonly number[] = Array.from({ length: 46 }, (_, k) => 0.2 + (k * 0.9) / 45);

export const lockCurve = (v: V, s: Stand, axle: 'front' | 'rear'): At[] => gripSteps.map((grip) => [grip, locksOn(v, s, grip)[axle]] as const);

export interface RearFirst {
  readonly from: number;
  readonly to: number;
  /** No gap from `from` on, up to more grip than any street tire finds. */
  readonly onward: boolean;
}

const [leastScanned, lastScanned] = [0.05, 0.9];
const rearLeads = (v: V, s: Stand) => (grip: number): boolean => locksOn(v, s, grip).first !== 'front';

/** The grips up to good dry pavement, or the reader's if it has more, on which the rear locks first: a span, or undefined. */
export function rearFirstGrips(v: V, s: Stand): RearFirst | undefined {
  const top = Math.max(lastScanned, v.grip);
  const scanned = [...Array.from({ length: Math.ceil((top - leastScanned) * 100 - 1e-9) }, (_, k) => leastScanned + k / 100), top];
  const bad = scanned.filter(rearLeads(v, s));
  const [from, to] = [bad[0], bad[bad.length - 1]];
  if (from === undefined || to === undefined) return undefined;
  const unbroken = bad.length === scanned.length - scanned.indexOf(from);
  return { from, to, onward: unbroken && Array.from({ length: 6 }, (_, k) => top + 0.05 * (k + 1)).every(rearLeads(v, s)) };
}

/** 'on every grip above 0.85', as it reads after 'the rear is first'. */
export function gripsInWords({ from, to, onward }: RearFirst, say: Say): string {
  if (onward) return from === leastScanned ? 'on every grip' : `on every grip above ${say(from, 'friction', 2)}`;
  return to - from > 0.005 ? `on grips from ${say(from, 'friction', 2)} to ${say(to, 'friction', 2)}` : `on grip ${say(to, 'friction', 2)}`;
}
