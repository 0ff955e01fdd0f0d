import { footToRoad } from '../../engine/footToRoad.ts';
import type { FootState, Pedal } from '../../engine/footToRoad.ts';
import { lbf } from '../../units/si.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';
import type { TravelPart } from '../scenes/travel.ts';
import { firstOf, footForTarget, inWords, legLimit, runOuts, targetRate } from './run-out.ts';
import type { RunOut } from './run-out.ts';

type Truck = 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'grip';
type Foot = 'controlForce' | 'pedalRatio' | 'linkageEfficiency' | 'pushrodFreePlay' | 'floorTravel';
type Bar = 'frontShare' | 'barSpacing' | 'barRestLead' | 'barStopAngle' | 'frontMasterBore' | 'rearMasterBore' | 'frontMasterStroke' | 'rearMasterStroke' | 'masterSpring' | 'portStroke';
type Fluid = 'frontTakeUp' | 'rearTakeUp' | 'frontCompliance' | 'rearCompliance' | 'rearValve' | 'kneePressure' | 'valveSlope';
type Brakes = 'frontBrakeGain' | 'rearBrakeGain' | 'pushOutPressure';
export type FootToRoad = ValuesOf<Truck | Foot | Bar | Fluid | Brakes>;

/** The record's inputs as the engine names them, at any foot force. */
function footOf(v: FootToRoad, controlForce: number): Pedal & { readonly controlForce: number } {
  return {
    controlForce, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, frontShare: v.frontShare, springForce: v.masterSpring, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore,
    portStroke: v.portStroke, freePlay: v.pushrodFreePlay, frontTakeUpVolume: v.frontTakeUp, rearTakeUpVolume: v.rearTakeUp, frontCompliance: v.frontCompliance, rearCompliance: v.rearCompliance,
    frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, pushOut: v.pushOutPressure, valve: v.rearValve === 'fitted' ? { knee: v.kneePressure, slope: v.valveSlope } : undefined,
    mass: v.frontAxleLoad + v.rearAxleLoad,
  };
}

export const pedalOf = (v: FootToRoad): Pedal => footOf(v, v.controlForce);
export const chain = (v: FootToRoad, controlForce: number): FootState => footToRoad(footOf(v, controlForce));
export const ends = (v: FootToRoad): readonly RunOut[] => runOuts(pedalOf(v), v);
/** What stops the pedal for good: no pressure comes after it. */
export const hardEnd = (v: FootToRoad): RunOut | undefined => firstOf(ends(v), 'hard');
export const at = (r: RunOut, say: Say): string => `at ${say(r.controlForce, 'force')} and ${say(r.rate, 'brakingRate')}`;

/** Why this foot force cannot be reached, or brakes nothing. */
export function refusal(v: FootToRoad, s: FootState): Refusal | undefined {
  if (v.barStopAngle === 0) return { refused: () => 'A bar whose stop is at 0° cannot tilt, so it cannot share. Type the angle it swings to one side.' };
  const leaning = Math.abs(v.barRestLead) - v.barSpacing * Math.sin(v.barStopAngle);
  if (leaning > 0) return { refused: (say) => `At rest the bar leans ${say(leaning, 'length')} beyond its stop. Check the two rod lengths.` };
  const lead = Math.abs(v.barRestLead + s.frontStroke - s.rearStroke) - v.barSpacing;
  if (lead >= 0) return { refused: (say) => `The two strokes differ by ${say(lead, 'length')} more than the bar is long. No bar can follow that: check bores and fluid volumes.` };
  const [front, rear, carpet] = [s.frontStroke - v.frontMasterStroke, s.rearStroke - v.rearMasterStroke, s.padTravel - v.floorTravel];
  if (front > 0 || rear > 0 || carpet > 0) {
    const over: Partial<Record<RunOut['id'], number>> = { 'front-bottom': front, 'rear-bottom': rear, carpet };
    const met = ends(v).find((r) => (over[r.id] ?? 0) > 0) as RunOut;
    const what = met.id === 'carpet' ? 'The pedal meets the carpet' : `The ${met.id === 'front-bottom' ? 'front' : 'rear'} master runs out of stroke`;
    return { refused: (say) => `${what} ${say(over[met.id] as number, 'length')} too early: it ends ${at(met, say)}, and this foot force cannot make its pressure. Pushing harder makes no more. Volume is short here, not force.` };
  }
  if (s.rearFraction === undefined) return { refused: (say) => `${say(v.controlForce, 'force')} on the pedal brakes nothing: return springs and the push-out pressure take all of it. Push harder.` };
  return undefined;
}

/** Force or volume: which one this pedal is short of on its way to the design stop. */
export function shortOf(v: FootToRoad, say: Say): string {
  const foot = footForTarget(pedalOf(v)) ?? Infinity;
  const volume = firstOf(ends(v), 'reserve', 'hard', 'bar');
  const target = say(targetRate, 'brakingRate');
  const leg = say(legLimit, 'force');
  if (volume && volume.controlForce < Math.min(foot, legLimit)) {
    return `On the way to ${target} volume runs short first, ${at(volume, say)} (${inWords[volume.id](say)}), while a leg may have ${leg} to give: this pedal is short of volume${foot > legLimit ? ', and of force too' : ', not of force'}.`;
  }
  if (foot > legLimit) return `At ${leg} it reaches ${say(chain(v, legLimit).rate, 'brakingRate')}, not ${target}, with stroke and travel to spare: this pedal is short of force, not of volume.`;
  return `It takes ${say(foot, 'force')} to reach ${target}, and neither force nor volume runs short before that.`;
}

/** The pedal's travel to the carpet, cause by cause. */
export function travelParts(v: FootToRoad & ValuesOf<'frontPressure' | 'rearPressureAfterValve' | 'frontMasterArea' | 'rearMasterArea' | 'padReserve'>, say: Say): TravelPart[] {
  const front = (v.pedalRatio * v.frontShare) / v.frontMasterArea;
  const rear = (v.pedalRatio * (1 - v.frontShare)) / v.rearMasterArea;
  const parts = [
    ['free play', v.pedalRatio * v.pushrodFreePlay, 'plain'], ['closing ports', v.pedalRatio * v.portStroke, 'plain'],
    ['front brake pad gaps', front * v.frontTakeUp, 'front'], ['rear brake pad gaps', rear * v.rearTakeUp, 'rear'],
    ['front swell', front * v.frontCompliance * v.frontPressure, 'front'], ['rear swell', rear * v.rearCompliance * v.rearPressureAfterValve, 'rear'],
    ['left', v.padReserve, 'ghost'],
  ] as const;
  return parts.map(([name, length, tone]) => ({ name, length, tone, label: say(length, 'length') }));
}

/** The axle whose tires slide first, where that is short of this foot force. */
export function sliding(v: FootToRoad): RunOut | undefined {
  const first = firstOf(ends(v), 'tires');
  return first && first.controlForce < v.controlForce ? first : undefined;
}

/** How far the charts go, and points up to where the pedal ends. */
export const chartEnd = (v: FootToRoad): number => Math.max(150 * lbf, 1.15 * v.controlForce);
export function chartFeet(v: FootToRoad): number[] {
  const to = Math.min(chartEnd(v), hardEnd(v)?.controlForce ?? Infinity);
  return Array.from({ length: 49 }, (_, k) => (to * k) / 48);
}
