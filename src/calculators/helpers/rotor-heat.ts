import { standardGravity } from '../../engine/constants.ts';
import { repeatedStops, singleStop } from '../../engine/heat.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { initialFlux, surfaceRise } from '../../engine/surfaceHeat.ts';
import type { ValuesOf } from '../record.ts';
import type { At } from '../show.ts';
import type { FluidInputs } from './fluid-heat.ts';

export type HeatInputs =
  | FluidInputs | 'frontAxleLoad' | 'rearAxleLoad' | 'payload' | 'rearBrakeFraction' | 'speed' | 'brakingRate' | 'stops' | 'stopInterval' | 'frontRotorMass' | 'rearRotorMass' | 'coolingTime'
  | 'rotorFraction' | 'rotatingFraction' | 'rotorSpecificHeat' | 'frontTrackOuter' | 'frontTrackInner' | 'frontRotorWall' | 'rearTrackOuter' | 'rearTrackInner' | 'rearRotorWall' | 'rotorConductivity' | 'rotorDensity' | 'padFadeTemperature';
export type V = ValuesOf<HeatInputs>;

export type Axle = 'front' | 'rear';

export const massOf = (v: V): number => v.frontAxleLoad + v.rearAxleLoad + v.payload;

export function stop(v: V, axle: Axle) {
  const r = singleStop({
    mass: massOf(v), speedFrom: v.speed, speedTo: 0, rotatingFraction: v.rotatingFraction, axleShare: axle === 'front' ? 1 - v.rearBrakeFraction : v.rearBrakeFraction,
    rotorFraction: v.rotorFraction, rotorMass: v[`${axle}RotorMass`], specificHeat: v.rotorSpecificHeat,
  });
  if (isImpossible(r)) throw new RangeError(`rotor heat: expected a stop to standstill, found ${r.impossible}`);
  return r;
}

export const series = (v: V, rise: number, stops: number) => repeatedStops({ rise, interval: v.stopInterval, coolingTime: v.coolingTime, stops });

export const haltTimeOf = (v: V): number => v.speed / (v.brakingRate * standardGravity);
export const sweptOf = (v: V, axle: Axle): number => Math.PI * (v[`${axle}TrackOuter`] ** 2 - v[`${axle}TrackInner`] ** 2);
/** Iron under both faces, which no rotor can weigh less than. */
export const ringMass = (v: V, axle: Axle): number => 2 * sweptOf(v, axle) * v[`${axle}RotorWall`] * v.rotorDensity;
export const ringOutweighs = (v: V): readonly Axle[] => (['front', 'rear'] as const).filter((axle) => ringMass(v, axle) > v[`${axle}RotorMass`]);
export const parts: readonly number[] = Array.from({ length: 25 }, (_, k) => k / 24);

/** What the skin of a rotor does from the first bite to the halt. */
export function skinOf(v: V, axle: Axle, wallThickness: number | undefined, time = 0) {
  const haltTime = haltTimeOf(v);
  const { initialFlux: flux } = initialFlux({ rotorEnergy: stop(v, axle).rotorEnergy, sweptArea: sweptOf(v, axle), haltTime });
  return surfaceRise({ initialFlux: flux, haltTime, time, density: v.rotorDensity, specificHeat: v.rotorSpecificHeat, conductivity: v.rotorConductivity, wallThickness });
}

export const skinCurve = (v: V, axle: Axle, wall: number | undefined): At[] => parts.map((part) => [part * haltTimeOf(v), skinOf(v, axle, wall, part * haltTimeOf(v)).riseAt] as const);

/** Air, then the saw of stop and pause, as points of time and temperature. */
export function saw(v: V, axle: Axle): At[] {
  const { rise } = stop(v, axle);
  const [shown, pieces] = [Math.min(v.stops, 30), 6];
  const points: At[] = [[0, v.ambient]];
  for (let k = 0; k < shown; k += 1) {
    const { peak } = series(v, rise, k + 1);
    for (let j = 0; j <= (k === shown - 1 ? 0 : pieces); j += 1) {
      const pause = (v.stopInterval * j) / pieces;
      points.push([k * v.stopInterval + pause, v.ambient + peak * Math.exp(-pause / v.coolingTime)]);
    }
  }
  return points;
}
