import { withPayload } from '../../engine/loads.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { gradeHeld, parkingCable, parkingDemand, parkingTorque } from '../../engine/parking.ts';
import type { Refusal, ValuesOf } from '../record.ts';

export type ParkingInputs =
  | 'parkingGrade' | 'leverForce' | 'leverRatio' | 'frontWrap' | 'rearWrap' | 'cableFriction' | 'equalizerRatio' | 'parkingKind' | 'actuatorEfficiency' | 'caliperGain' | 'staticFriction' | 'rearEffectiveRadius' | 'coolingLoss'
  | 'shoeGain' | 'forwardFactor' | 'reverseFactor' | 'hatRadius' | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'loadedRadius' | 'payload' | 'payloadAhead' | 'payloadHeight' | 'grip';
export type ParkingValues = ValuesOf<ParkingInputs>;
type V = ParkingValues;

export interface Parked {
  readonly mass: number;
  readonly rearFraction: number;
  readonly cgHeight: number;
}

export const emptyTruck = (v: V): Parked => {
  const mass = v.frontAxleLoad + v.rearAxleLoad;
  return { mass, rearFraction: v.rearAxleLoad / mass, cgHeight: v.cgHeight };
};

export function loadedTruck(v: V): Parked | Refusal {
  const r = withPayload({ frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, cgHeight: v.cgHeight, payload: v.payload, payloadAhead: v.payloadAhead, payloadHeight: v.payloadHeight });
  if (!isImpossible(r)) return { mass: r.mass, rearFraction: r.rearFraction, cgHeight: r.cgHeight };
  return { refused: (say) => `This load lifts the ${r.impossible === 'front-axle-lifts' ? 'front' : 'rear'} wheels of the parked truck; ${say(r.by ?? 0, 'mass')} more would be needed to hold them down. Move it over the axle or make it lighter.` };
}

/** Cable and wheel at the pull typed: torque as it will be when everything has cooled. */
export function wheel(v: V) {
  const cable = parkingCable({ leverForce: v.leverForce, leverRatio: v.leverRatio, frontWrap: v.frontWrap, rearWrap: v.rearWrap, cableFriction: v.cableFriction, intermediateRatio: v.equalizerRatio });
  const common = { wheelTension: cable.wheelTension, efficiency: v.actuatorEfficiency };
  const warm = v.parkingKind === 'caliper'
    ? parkingTorque({ ...common, kind: 'caliper', gain: v.caliperGain, friction: v.staticFriction, effectiveRadius: v.rearEffectiveRadius })
    : parkingTorque({ ...common, kind: 'shoe', gain: v.shoeGain, forwardFactor: v.forwardFactor, reverseFactor: v.reverseFactor, drumRadius: v.hatRadius });
  const left = v.parkingKind === 'caliper' ? 1 - v.coolingLoss : 1;
  return { ...cable, clamp: warm.clampForce, down: warm.forward * left, up: warm.reverse * left };
}

export const demand = (v: V, truck: Parked) => parkingDemand({ mass: truck.mass, grade: v.parkingGrade, loadedRadius: v.loadedRadius });

/** The steepest hill each way, cold, on tires of a grip. */
export function held(v: V, truck: Parked, grip = v.grip) {
  const w = wheel(v);
  return gradeHeld({ forwardTorque: w.down, reverseTorque: w.up, coolingLoss: 0, mass: truck.mass, loadedRadius: v.loadedRadius, rearLoadFraction: truck.rearFraction, cgHeight: truck.cgHeight, wheelbase: v.wheelbase, grip });
}

/** The pull that the hill asks for, and what it is found from. */
function leverNeeded(v: V) {
  const loaded = loadedTruck(v);
  if ('refused' in loaded) return loaded;
  const w = wheel(v);
  const lost: Refusal = { refused: (say) => `Of a pull on this cable less than a thousandth reaches the wheels: friction ${say(v.cableFriction, 'friction')} around ${say(v.frontWrap + v.rearWrap, 'angle')} of bends eats the rest. No lever sets such a brake. Check the bends.` };
  if (w.efficiency < 1e-3) return lost;
  const need = demand(v, loaded);
  return { loaded, w, need, leverForceNeeded: (need.torquePerWheel * v.leverForce) / Math.min(w.down, w.up) };
}

export function quickParking(v: V): { readonly leverForceNeeded: number } | Refusal {
  const needed = leverNeeded(v);
  return 'refused' in needed ? needed : { leverForceNeeded: needed.leverForceNeeded };
}

export function parkingResults(v: V) {
  const needed = leverNeeded(v);
  if ('refused' in needed) return needed;
  const { loaded, w, need, leverForceNeeded } = needed;
  const empty = emptyTruck(v);
  const [e, l] = [held(v, empty), held(v, loaded)];
  return {
    leverForceNeeded,
    steepestDown: Math.min(e.noseDown.grade, l.noseDown.grade), steepestUp: Math.min(e.noseUp.grade, l.noseUp.grade),
    parkingTorqueNeeded: need.torquePerWheel, parkingTorqueDown: w.down, parkingTorqueUp: w.up, gradeForce: need.gradeForce, frontCableTension: w.frontTension, wheelCableTension: w.wheelTension, parkingClamp: w.clamp,
    tiresDown: e.noseDown.byTires, tiresUp: e.noseUp.byTires, ladenTiresDown: l.noseDown.byTires, ladenTiresUp: l.noseUp.byTires,
    mass: empty.mass, rearLoadFraction: empty.rearFraction, heightRatio: v.cgHeight / v.wheelbase, ladenMass: loaded.mass, ladenRearLoadFraction: loaded.rearFraction, ladenHeightRatio: loaded.cgHeight / v.wheelbase,
  };
}
