import type { CircuitFailure } from '../../engine/circuitFailure.ts';
import type { Pedal } from '../../engine/footToRoad.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { stopLamp, stopLampWithDeadCircuit } from '../../engine/stopLamp.ts';
import type { LampPoint, LampSwitch } from '../../engine/stopLamp.ts';
import type { ValuesOf } from '../record.ts';
import type { Side } from './circuit-volume.ts';

export type LampInputs =
  | 'lampSwitch' | 'switchPressure' | 'switchTravel' | 'padSpring' | 'pedalRatio' | 'linkageEfficiency' | 'pushrodFreePlay' | 'floorTravel' | 'barSpacing' | 'barOffset' | 'barRestLead' | 'barStop' | 'barStopAngle'
  | 'frontMasterBore' | 'rearMasterBore' | 'frontMasterStroke' | 'rearMasterStroke' | 'portStroke' | 'masterSpring' | 'frontTakeUp' | 'rearTakeUp' | 'frontCompliance' | 'rearCompliance'
  | 'frontBrakeGain' | 'rearBrakeGain' | 'pushOutPressure' | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'grip';
export type Lamp = ValuesOf<LampInputs>;
export type Fit = Lamp['lampSwitch'];

export const share = (v: Lamp): number => 0.5 + v.barOffset / v.barSpacing;

function pedalOf(v: Lamp): Pedal {
  return {
    pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, frontShare: share(v), springForce: v.masterSpring, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, portStroke: v.portStroke, freePlay: v.pushrodFreePlay,
    frontTakeUpVolume: v.frontTakeUp, rearTakeUpVolume: v.rearTakeUp, frontCompliance: v.frontCompliance, rearCompliance: v.rearCompliance, frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, pushOut: v.pushOutPressure,
    mass: v.frontAxleLoad + v.rearAxleLoad,
  };
}

function truckOf(v: Lamp, dead: Side): CircuitFailure {
  const mass = v.frontAxleLoad + v.rearAxleLoad;
  return {
    dead, pedalRatio: v.pedalRatio, efficiency: v.linkageEfficiency, floorTravel: v.floorTravel, barSpacing: v.barSpacing, barOffset: v.barOffset, frontLead: v.barRestLead, freePlay: v.pushrodFreePlay,
    stopAngle: v.barStop === 'none' ? undefined : v.barStopAngle, frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, frontStroke: v.frontMasterStroke, rearStroke: v.rearMasterStroke,
    frontPortStroke: v.portStroke, rearPortStroke: v.portStroke, frontTakeUpVolume: v.frontTakeUp, rearTakeUpVolume: v.rearTakeUp, frontCompliance: v.frontCompliance, rearCompliance: v.rearCompliance,
    frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, pushOut: v.pushOutPressure, mass, rearLoadFraction: v.rearAxleLoad / mass, cgHeight: v.cgHeight, wheelbase: v.wheelbase, grip: v.grip,
  };
}

function switchesOf(v: Lamp, fit: Fit): LampSwitch[] {
  const line = (circuit: Side): LampSwitch => ({ kind: 'pressure', circuit, makesAt: v.switchPressure });
  return { pedal: [{ kind: 'pedal', makesAt: v.switchTravel } as const], front: [line('front')], rear: [line('rear')], both: [line('front'), line('rear')] }[fit];
}

const spring = (v: Lamp) => ({ springPreload: v.padSpring, springRate: 0 });

/** Where the lamps light with both circuits alive, by the switches of one fit. Only for a pivot between the clevises. */
export const lampAlive = (v: Lamp, fit: Fit): LampPoint | undefined => stopLamp({ switches: switchesOf(v, fit), pedal: pedalOf(v), ...spring(v) }).lamp;

/** With one circuit dead; undefined where they stay dark. */
export function lampDead(v: Lamp, fit: Fit, dead: Side): LampPoint | undefined | Impossible {
  const r = stopLampWithDeadCircuit({ switches: switchesOf(v, fit), truck: truckOf(v, dead), ...spring(v) });
  return isImpossible(r) ? r : r.lamp;
}

export const fits = [['pedal', 'on the pedal'], ['front', 'front line'], ['rear', 'rear line'], ['both', 'both lines']] as const;
