import { circuitVolume, equivalentCircuit } from '../../engine/circuitVolume.ts';
import type { CircuitParts } from '../../engine/circuitVolume.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { mm } from '../../units/si.ts';
import { defineFeed } from '../record.ts';
import type { ValuesOf } from '../record.ts';

export const sides = ['front', 'rear'] as const;
export type Side = (typeof sides)[number];
type Caliper = 'PistonDiameter' | 'Pistons' | 'CaliperType' | 'PadGap' | 'KnockBack' | 'CaliperSwell' | 'Hoses' | 'HoseSwell' | 'FluidVolume' | 'Air';
export type SwellInputs = `${Side}${Caliper}` | 'padSqueeze' | 'swellPressure' | 'bulkModulus' | 'airExponent';
export type Swell = ValuesOf<SwellInputs>;

/** An axle's keys, joined once: to join them anew for each of 10,000 trucks takes longer than the sum. */
const keysOf = <S extends Side>(side: S) => ({
  piston: `${side}PistonDiameter`, pistons: `${side}Pistons`, type: `${side}CaliperType`, gap: `${side}PadGap`, knockBack: `${side}KnockBack`, fluid: `${side}FluidVolume`, hoses: `${side}Hoses`, hoseSwell: `${side}HoseSwell`,
  caliperSwell: `${side}CaliperSwell`, air: `${side}Air`,
} as const);
const keys = { front: keysOf('front'), rear: keysOf('rear') };

/** One axle's parts as the engine names them. Swell comes per hose, per caliper and per pad, all at one pressure. */
export function partsOf(v: Swell, side: Side): CircuitParts {
  const k = keys[side];
  return {
    pistonDiameter: v[k.piston], pistonsPerSide: v[k.pistons], type: v[k.type], gapPerPad: v[k.gap], knockBack: v[k.knockBack],
    fluidVolume: v[k.fluid], bulkModulus: v.bulkModulus, hoses: v[k.hoses], hoseLength: 1, hoseExpansion: v[k.hoseSwell], hosePressure: v.swellPressure,
    caliperGive: v[k.caliperSwell], caliperPressure: v.swellPressure, padGive: v.padSqueeze, padPressure: v.swellPressure, airVolume: v[k.air], polytropic: v.airExponent,
  };
}

export const volumeAt = (v: Swell, side: Side, pressure: number) => circuitVolume({ ...partsOf(v, side), pressure });

/** The line through a quarter of the reference pressure and all of it: exact without air. */
export function lineOf(v: Swell, side: Side): { takeUp: number; compliance: number } {
  const line = equivalentCircuit({ ...partsOf(v, side), low: v.swellPressure / 4, high: v.swellPressure });
  if (isImpossible(line)) throw new RangeError(`swellPressure: expected above 0, found ${v.swellPressure}`);
  return { takeUp: line.takeUpVolume, compliance: line.compliance };
}

export const noGap = (v: Swell): boolean => Math.min(v.frontPadGap, v.rearPadGap) < 0.03 * mm;
export const knockedFar = (v: Swell): boolean => Math.max(v.frontKnockBack, v.rearKnockBack) > 0.25 * mm;
export const airLeft = (v: Swell): boolean => v.frontAir + v.rearAir > 0;

/** Take-up and swell of both circuits, for every record that moves a master's piston. */
export const swellFeed = defineFeed({
  id: 'circuit-volume',
  title: 'Fluid a circuit swallows',
  inputs: [
    { title: 'Front calipers', of: ['frontPistonDiameter', 'frontPistons', 'frontCaliperType', 'frontPadGap', 'frontKnockBack', 'frontCaliperSwell'] },
    { title: 'Front hoses and fluid', of: ['frontHoses', 'frontHoseSwell', 'frontFluidVolume', 'frontAir'] },
    { title: 'Rear calipers', of: ['rearPistonDiameter', 'rearPistons', 'rearCaliperType', 'rearPadGap', 'rearKnockBack', 'rearCaliperSwell'] },
    { title: 'Rear hoses and fluid', of: ['rearHoses', 'rearHoseSwell', 'rearFluidVolume', 'rearAir'] },
    { title: 'Both circuits', of: ['padSqueeze', 'swellPressure', 'bulkModulus', 'airExponent'] },
  ],
  outputs: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'],
  alarms: [
    { caution: 'no-gap', level: 'warning', when: noGap, first: 'brake pads with no gap rub and heat the fluid.' },
    { caution: 'knock-back-far', level: 'warning', when: knockedFar, first: 'brake pads are knocked far back.' },
    { caution: 'air-left', level: 'warning', when: airLeft, first: 'there is air in a circuit.' },
  ],
  compute: (v) => {
    const [f, r] = [lineOf(v, 'front'), lineOf(v, 'rear')];
    return { frontTakeUp: f.takeUp, rearTakeUp: r.takeUp, frontCompliance: f.compliance, rearCompliance: r.compliance };
  },
});
