import { mountLoads, tippingBoltTension } from '../../engine/mountLoads.ts';
import { plateUnderLoad } from '../../engine/plate.ts';
import type { PlateEdge } from '../../engine/plate.ts';
import { plateUnderMoment } from '../../engine/plateMoment.ts';
import type { Refusal, ValuesOf } from '../record.ts';

export type Mount = 'mountCase' | 'pedalRatio' | 'padBelowPlate';
export type Plate = 'plateHeight' | 'plateWidth' | 'plateThickness' | 'steelModulus' | 'boltRowSpacing' | 'boltPatternWidth';
export type Inputs = Mount | Plate | 'dialTestForce' | 'panicForce' | 'steelYield' | 'boltsPerRow' | 'washerDiameter' | 'clutchLegForce' | 'clutchPedalRatio';
export type V = ValuesOf<Inputs>;

/** Beyond so many thicknesses a sheet is a drumhead, and the formula of a flat plate says nothing about it. */
export const drumhead = 2;

export function loadsOf(v: ValuesOf<Mount>, controlForce: number): { readonly push: number; readonly moment: number; readonly pivotPull: number } {
  return mountLoads({ controlForce, pedalRatio: v.pedalRatio, padBelow: v.padBelowPlate, mounting: v.mountCase === 'frame' ? 'one-frame' : 'apart' });
}

/** Both bounds of the plate under a push and a moment; the soft one with no more plate than the flange is wide. */
export function bound(v: ValuesOf<Plate>, load: { readonly push: number; readonly moment: number }, edge: PlateEdge) {
  const plate = { thickness: v.plateThickness, modulus: v.steelModulus, edge };
  const pushed = plateUnderLoad({ ...plate, force: load.push, sideA: v.plateHeight, sideB: v.plateWidth, loadRadius: Math.sqrt((v.boltRowSpacing * v.boltPatternWidth) / Math.PI) });
  const turned = plateUnderMoment({ ...plate, moment: load.moment, span: v.plateHeight, flange: v.boltRowSpacing, width: edge === 'supported' ? v.boltPatternWidth : v.plateWidth });
  return { coefficient: pushed.coefficient, middle: pushed.deflection, turn: turned.rotation, flange: pushed.deflection + (turned.rotation * v.boltRowSpacing) / 2, stress: pushed.stress + turned.stress };
}

/** At the pad: a frame carries the pad with it; a lone master takes rod travel, which the pedal multiplies. */
export const padLost = (v: ValuesOf<Mount>, b: { readonly middle: number; readonly turn: number }): number =>
  (v.mountCase === 'frame' ? b.middle + b.turn * v.padBelowPlate : v.pedalRatio * b.middle);

export function boltPull(v: V): number {
  const { push, moment } = loadsOf(v, v.panicForce);
  return v.mountCase === 'frame' ? tippingBoltTension({ push, moment, rowSpacing: v.boltRowSpacing, boltsPerRow: v.boltsPerRow }).tension : push / (2 * v.boltsPerRow);
}

/** Why these numbers are no plate with a flange on it, or undefined. */
export function noSuchPlate(v: V): Refusal | undefined {
  const tall = v.boltRowSpacing - 0.95 * v.plateHeight;
  if (tall > 0) return { refused: (say) => `The bolt pattern is ${say(tall, 'length')} too high for the plate: it must leave bare plate above and below. If the flange reaches the supports themselves, there is no plate left to bend.` };
  const wide = v.boltPatternWidth - v.plateWidth;
  if (wide > 0) return { refused: (say) => `The bolt pattern is ${say(wide, 'length')} wider than the plate.` };
  const patch = 2 * Math.sqrt((v.boltRowSpacing * v.boltPatternWidth) / Math.PI) - Math.min(v.plateHeight, v.plateWidth);
  if (patch > 0) return { refused: (say) => `The bolt pattern covers ${say(patch, 'length')} more than the plate’s short side can hold in its middle. There the formula for a load in the middle has nothing to say: the supports carry it directly.` };
  const soft = bound(v, loadsOf(v, v.dialTestForce), 'supported');
  const thicknesses = soft.flange / v.plateThickness;
  if (thicknesses > drumhead) {
    return { refused: (say) => `Sheet ${say(v.plateThickness, 'length', 2)} thick over ${say(Math.min(v.plateHeight, v.plateWidth), 'length', 2)} cannot be figured as a plate: the formula would move it ${thicknesses > 99 ? 'more than a hundred' : thicknesses.toFixed(thicknesses < 10 ? 1 : 0)} times its own thickness. In metal it bulges, tears at its welds and lets the pedal go. Do not hang a pedal on it: thicker plate, a shorter span to real supports, or ribs.` };
  }
  return undefined;
}
