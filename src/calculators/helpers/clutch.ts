import { circleArea } from '../../engine/circle.ts';
import { clutchAt, clutchPadTravel, clutchWindow } from '../../engine/clutch.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import type { ValuesOf } from '../record.ts';

export type ClutchInputs =
  | 'clutchPadTravel' | 'clutchFloorTravel' | 'clutchPedalRatio' | 'clutchFreePlay' | 'clutchEfficiency' | 'clutchMasterBore' | 'clutchMasterStroke' | 'clutchPortStroke'
  | 'volumetricEfficiency' | 'slaveType' | 'slaveBore' | 'ringOuter' | 'ringInner' | 'slaveStrokeLimit' | 'slavePlay' | 'forkRatio'
  | 'bearingForce' | 'bearingTravelNeeded' | 'bearingTravelAllowed' | 'stopReserve';
export type V = ValuesOf<ClutchInputs>;

/** The chain as the engine reads it; a ring-shaped slave has no fork. */
export function lineOf(v: V) {
  const fork = v.slaveType === 'fork';
  return {
    pedalRatio: v.clutchPedalRatio, freePlay: v.clutchFreePlay, masterBore: v.clutchMasterBore, portStroke: v.clutchPortStroke, volumetricEfficiency: v.volumetricEfficiency,
    slaveOuter: fork ? v.slaveBore : v.ringOuter, slaveInner: fork ? 0 : v.ringInner, forkRatio: fork ? v.forkRatio : 1, forkPlay: v.slavePlay,
  };
}

/** @throws RangeError for a chain that compute would have refused */
export function sure<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new RangeError(`clutch: expected a chain that can be, found ${x.impossible}`);
  return x;
}

export const at = (v: V, padTravel: number) => sure(clutchAt({ ...lineOf(v), padTravel, bearingForce: v.bearingForce, linkageEfficiency: v.clutchEfficiency }));
export const padFor = (v: V, bearingTravel: number): number => sure(clutchPadTravel({ ...lineOf(v), bearingTravel })).padTravel;

/** Where carpet or the end of the master's bore stops the pedal if nothing else does. */
export const pedalEnd = (v: V): number => Math.min(v.clutchFloorTravel, v.clutchFreePlay + v.clutchPedalRatio * v.clutchMasterStroke);

/** The pedal's travel and the chain at it. */
function fullTravel(v: V) {
  const clutchTravelUsed = Math.min(v.clutchPadTravel, pedalEnd(v));
  return { clutchTravelUsed, full: at(v, clutchTravelUsed) };
}

export const bearingTravelOf = (v: V): number => fullTravel(v).full.bearingTravel;

/** Everything the page shows, for a slave that is a cylinder or a true ring. */
export function clutchResults(v: V) {
  const line = lineOf(v);
  const { clutchTravelUsed, full } = fullTravel(v);
  const bearingLimit = Math.min(v.bearingTravelAllowed, Math.max(0, v.slaveStrokeLimit - v.slavePlay) / line.forkRatio);
  const releaseTravel = padFor(v, v.bearingTravelNeeded);
  const limitTravel = padFor(v, bearingLimit);
  const window = bearingLimit > 0
    ? clutchWindow({ ...line, neededTravel: v.bearingTravelNeeded, allowedTravel: bearingLimit, reserve: v.stopReserve, masterTravel: v.clutchMasterStroke, padToFloor: v.clutchFloorTravel })
    : undefined;
  return {
    bearingTravel: full.bearingTravel, releaseTravel, releaseAboveFloor: v.clutchFloorTravel - releaseTravel,
    // With no window there is no right place: the stop is then where the pedal or its parts end.
    clutchStopTravel: window && !isImpossible(window) ? window.stopTravel : Math.min(limitTravel, pedalEnd(v)),
    clutchControlForce: full.controlForce, limitTravel, bearingLimit, wornBearingTravel: full.slaveStroke / line.forkRatio,
    slaveStroke: full.slaveStroke, clutchTravelUsed, clutchMasterStrokeUsed: full.masterStroke, clutchPressure: full.pressure, clutchTotalRatio: full.totalRatio,
    forkRatioUsed: line.forkRatio, slaveArea: line.slaveInner > 0 ? circleArea({ diameter: line.slaveOuter }).area - circleArea({ diameter: line.slaveInner }).area : circleArea({ diameter: line.slaveOuter }).area,
    clutchMasterArea: circleArea({ diameter: v.clutchMasterBore }).area,
  };
}
