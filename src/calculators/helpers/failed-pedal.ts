import { circuitFailure, failureAtForce, failureAtTravel } from '../../engine/circuitFailure.ts';
import type { CircuitFailure, FailureState } from '../../engine/circuitFailure.ts';
import type { FailureRegime } from '../../engine/failurePath.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Say, ValuesOf } from '../record.ts';
import type { Picture } from '../show.ts';
import { barScene } from '../scenes/bar.ts';

export type FailedInputs =
  | 'controlForce' | 'pedalRatio' | 'linkageEfficiency' | 'pushrodFreePlay' | 'floorTravel' | 'deadCircuit'
  | 'barSpacing' | 'barOffset' | 'barRestLead' | 'barStop' | 'barStopAngle'
  | 'frontMasterBore' | 'rearMasterBore' | 'frontMasterStroke' | 'rearMasterStroke' | 'portStroke'
  | 'frontTakeUp' | 'rearTakeUp' | 'frontCompliance' | 'rearCompliance'
  | 'frontBrakeGain' | 'rearBrakeGain' | 'pushOutPressure' | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'grip';

export type Side = 'front' | 'rear';
type V = ValuesOf<FailedInputs>;

/** How far lists and the picture look: three times what a test standard asks of a foot, or the reader's foot. */
export const searchForce = (v: V): number => Math.max(1500, v.controlForce);

export const other = (side: Side): Side => (side === 'front' ? 'rear' : 'front');

export function truckOf(v: V, dead: Side): CircuitFailure {
  return {
    dead, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, floorTravel: v.floorTravel,
    barSpacing: v.barSpacing, barOffset: v.barOffset, frontLead: v.barRestLead, freePlay: v.pushrodFreePlay, stopAngle: v.barStop === 'none' ? undefined : v.barStopAngle,
    frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, frontStroke: v.frontMasterStroke, rearStroke: v.rearMasterStroke,
    frontPortStroke: v.portStroke, rearPortStroke: v.portStroke, frontTakeUpVolume: v.frontTakeUp, rearTakeUpVolume: v.rearTakeUp,
    frontCompliance: v.frontCompliance, rearCompliance: v.rearCompliance, frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, pushOut: v.pushOutPressure,
    mass: v.frontAxleLoad + v.rearAxleLoad, rearLoadFraction: v.rearAxleLoad / (v.frontAxleLoad + v.rearAxleLoad),
    cgHeight: v.cgHeight, wheelbase: v.wheelbase, grip: v.grip,
  };
}

/** Only for values the record has computed already, so that the pedal is known to exist. */
export function sure<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new RangeError(`failed pedal: expected a possible one, found ${x.impossible}`);
  return x;
}

export const failureOf = (v: V, dead: Side, controlForce = v.controlForce) => circuitFailure({ ...truckOf(v, dead), controlForce, searchForce: searchForce(v) });

export const stateAtForce = (v: V, dead: Side, controlForce: number): FailureState => sure(failureAtForce({ ...truckOf(v, dead), controlForce }));

/** What holds, as it reads after a comma. */
export function regimeWords(regime: FailureRegime, dead: Side): string {
  const live = other(dead);
  return ({
    'free-run': `dead ${dead} rod running ahead, no brakes yet`,
    'on-bar-stop': `bar on its stop, the ${live} gets all of the push`,
    'flat-spot': `flat spot, the dead ${dead} master takes every extra pound`,
    'on-dead-master': `dead ${dead} master bottomed, the ${live} gets only its share`,
    'good-bottomed': `${live} master bottomed, no more pressure`,
    'on-opposite-stop': 'bar on its other stop, no more pressure',
    'on-floor': 'pedal on the carpet, no more pressure',
  })[regime];
}

const isFlat = (v: V, dead: Side, at: number, near: number) => {
  const { flatSpot } = sure(failureOf(v, dead));
  return flatSpot && Math.abs(stateAtForce(v, dead, flatSpot.from).padTravel - at) <= near ? flatSpot : undefined;
};

const endOfTravel = (v: V): number => stateAtForce(v, v.deadCircuit, searchForce(v)).padTravel;

function label(v: V, at: number, say: Say): string {
  const s = sure(failureAtTravel({ ...truckOf(v, v.deadCircuit), padTravel: at }));
  const flat = isFlat(v, v.deadCircuit, at, endOfTravel(v) / 300);
  if (flat) return `${say(at, 'length')}: flat spot, nothing gained from ${say(flat.from, 'force')} to ${say(flat.to, 'force')}`;
  // The last place of the path holds for every harder push, so its own force would mislead.
  if (s.regime === 'free-run' && s.goodStroke > 0) return `${say(at, 'length')}, no force yet: ${other(v.deadCircuit)} taking up its fluid, no brakes`;
  const solid = s.regime === 'on-floor' || s.regime === 'good-bottomed' || s.regime === 'on-opposite-stop';
  return `${say(at, 'length')}, ${say(s.controlForce, 'force')}${solid ? ' or more' : ''}: ${regimeWords(s.regime, v.deadCircuit)}`;
}

export const failurePicture: Picture<V> = {
  title: 'The bar from above with one circuit dead, from rest on',
  describe: (v, say, at) => {
    const dead = v.deadCircuit;
    const s = sure(failureAtTravel({ ...truckOf(v, dead), padTravel: at }));
    const bottom = dead === 'front' ? v.frontMasterStroke : v.rearMasterStroke;
    return `Pedal ${label(v, at, say)}. The dead ${dead} master has used ${say(s.deadStroke, 'length')} of ${say(bottom, 'length')}, the ${other(dead)} ${say(s.goodStroke, 'length')}. The ${other(dead)} line carries ${say(s.pressure, 'pressure')}: ${say(s.rate, 'brakingRate')}${s.slipLimited ? `, and the ${other(dead)} tires slide` : ''}. Carpet at ${say(v.floorTravel, 'length')}.`;
  },
  motion: { label: 'Pedal', dimension: 'length', range: (v) => [0, endOfTravel(v)], start: (v) => stateAtForce(v, v.deadCircuit, v.controlForce).padTravel, say: label },
  scene: (v, at, say) => {
    const dead = v.deadCircuit;
    const s = sure(failureAtTravel({ ...truckOf(v, dead), padTravel: at }));
    const [frontStroke, rearStroke] = dead === 'front' ? [s.deadStroke, s.goodStroke] : [s.goodStroke, s.deadStroke];
    const live = say(s.pressure, 'pressure');
    return barScene({
      barSpacing: v.barSpacing, barOffset: v.barOffset, barStopAngle: v.barStop === 'none' ? undefined : v.barStopAngle, frontStroke, rearStroke, dead,
      labels: { front: dead === 'front' ? 'no fluid' : live, rear: dead === 'rear' ? 'no fluid' : live },
      bottoms: { front: v.frontMasterStroke, rear: v.rearMasterStroke },
      carpet: v.floorTravel / v.pedalRatio - v.pushrodFreePlay,
    });
  },
};
