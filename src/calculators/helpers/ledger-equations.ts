import type { Equation, Values } from '../record.ts';
import type { QuantityKey } from '../vocabulary/index.ts';
import type { Side } from './circuit-volume.ts';

const kept = 'derived: volume kept';
const lever = 'derived: the bar weighs strokes as it splits force';
const key = (name: string): QuantityKey => name as QuantityKey;
const kind = (side: Side, type: string) => (v: Values): boolean => v[`${side}CaliperType`] === type;

/** Areas of one axle's calipers: the one that clamps and the one that moves. */
export function areaEquations(side: Side): readonly Equation[] {
  const [clamp, moving] = [key(`${side}ClampArea`), key(`${side}MovingArea`)];
  return [
    { result: clamp, expression: `${side}Pistons * pi * ${side}PistonDiameter^2 / 4`, words: `The pistons on one side of the rotor squeeze the ${side} brake pads, whatever the type.`, source: 'derived: balance of the caliper' },
    { result: moving, expression: clamp, words: 'Floating: the same pistons are all there are.', source: 'defined', when: kind(side, 'floating') },
    { result: moving, expression: `2 * ${clamp}`, words: 'Opposed: as many again on the other side, and all of them swallow fluid.', source: 'defined', when: kind(side, 'opposed') },
  ];
}

/** Volume for one unit of pad gap at both calipers of an axle, by type: the two come to the same. */
const perGap = (side: Side, type: 'floating' | 'opposed', gap: string): string => (type === 'floating' ? `2 * ${side}MovingArea * 2 * ${gap}` : `2 * ${side}MovingArea * ${gap}`);
const gapWords = { floating: 'Two calipers. A floating housing slides, so its pistons move by both gaps.', opposed: 'Two calipers. Opposed pistons move by their own gap only, but there are twice as many.' } as const;

/** What a circuit swallows at a part of the reference pressure, and the straight line through two of them. */
export function swallowEquations(side: Side): readonly Equation[] {
  const total = (type: 'floating' | 'opposed', part: string) => `${perGap(side, type, `(${side}PadGap + padSqueeze${part})`)} + 2 * ${side}ClampArea * ${side}KnockBack + ${side}FluidVolume * swellPressure${part} / bulkModulus + (${side}Hoses * ${side}HoseSwell + 2 * ${side}CaliperSwell)${part} + ${side}Air * (1 - (standardAtmosphere / (standardAtmosphere + swellPressure${part}))^(1 / airExponent))`;
  const both = (result: string, part: string, words: string): Equation[] => (['floating', 'opposed'] as const).map((type) => ({ result: key(result), expression: total(type, part), words: `${words} ${gapWords[type]}`, source: kept, when: kind(side, type) }));
  return [
    ...both(`${side}QuarterVolume`, ' / 4', 'Gaps and knock-back whole, a quarter of the swell, and the air that this pressure squeezes away.'),
    ...both(`${side}FullVolume`, '', 'The same with the whole swell.'),
    { result: key(`${side}Compliance`), expression: `(${side}FullVolume - ${side}QuarterVolume) / (0.75 * swellPressure)`, words: 'What more pressure swallows: the slope of a straight line through both.', source: kept },
    { result: key(`${side}TakeUp`), expression: `${side}QuarterVolume - ${side}Compliance * swellPressure / 4`, words: 'That line carried back to no pressure: gaps, knock-back and most of any air.', source: kept },
  ];
}

/** Pad travel, item by item, of one circuit of the ledger. */
export function itemEquations(side: Side): readonly Equation[] {
  const share = side === 'front' ? 'frontShare' : '(1 - frontShare)';
  const pressure = side === 'front' ? 'frontPressure' : 'rearPressureAfterValve';
  const pad = (item: string, volume: string, words: string, when?: Equation['when']): Equation => ({ result: key(`${side}${item}Travel`), expression: `pedalRatio * ${share} / ${side}MasterArea * ${volume}`, words, source: kept, ...(when && { when }) });
  const typed = (item: string, gap: string) => (['floating', 'opposed'] as const).map((type) => pad(item, perGap(side, type, gap), gapWords[type], kind(side, type)));
  return [
    ...typed('Gap', `${side}PadGap`),
    pad('KnockBack', `2 * ${side}ClampArea * ${side}KnockBack`, 'What both brake pads of a caliper have been pushed apart, beyond the gaps.'),
    pad('Hose', `${side}Hoses * ${side}HoseSwell * ${pressure} / swellPressure`, 'Hoses swell in step with pressure.'),
    pad('Caliper', `2 * ${side}CaliperSwell * ${pressure} / swellPressure`, 'So do calipers, which spread.'),
    ...typed('Pad', `padSqueeze * ${pressure} / swellPressure`),
    pad('Fluid', `${side}FluidVolume * ${pressure} / bulkModulus`, 'Fluid gives a little; hot fluid more.'),
    pad('Air', `${side}Air * (1 - (standardAtmosphere / (standardAtmosphere + ${pressure}))^(1 / airExponent))`, 'Air gives early: most of it is gone after the first bars.'),
  ];
}

const parts = (side: Side): string => ['Gap', 'KnockBack', 'Hose', 'Caliper', 'Pad', 'Fluid', 'Air'].map((item) => `${side}${item}Travel`).join(' + ');

export function sumEquations(): readonly Equation[] {
  const stroke = (side: Side, share: string): Equation => ({ result: key(`${side}Stroke`), expression: `portStroke + (${parts(side)}) / (pedalRatio * ${share})`, words: `The ${side} piston’s own stroke: its part of the pedal’s travel without the lever, and the port.`, source: kept });
  return [
    { result: 'freePlayAtPad', expression: 'pedalRatio * pushrodFreePlay', words: 'The rod’s free play, multiplied by the lever.', source: 'derived: lever' },
    { result: 'portTravel', expression: 'pedalRatio * portStroke', words: 'Both pistons close their ports; what they push out meanwhile goes back to the reservoir.', source: lever },
    { result: 'flexTravel', expression: 'pedalRatio * flangeGive * controlForce / dialTestForce', words: 'The masters move away from the rod, in step with the push.', source: 'derived: elastic mounting' },
    { result: 'padTravelNormal', expression: `freePlayAtPad + portTravel + flexTravel + ${parts('front')} + ${parts('rear')}`, words: 'The sum of every line.', source: 'defined' },
    { result: 'padReserve', expression: 'floorTravel - padTravelNormal', words: 'What is left above the carpet; below zero it cannot happen.', source: 'defined' },
    { result: 'padTravelUsed', expression: 'padTravelNormal / floorTravel', words: 'The part of the travel that is gone.', source: 'defined' },
    stroke('front', 'frontShare'),
    stroke('rear', '(1 - frontShare)'),
    { result: 'frontStrokeUsed', expression: 'frontStroke / frontMasterStroke', words: 'The part of the front master that is gone.', source: 'defined' },
    { result: 'rearStrokeUsed', expression: 'rearStroke / rearMasterStroke', words: 'The part of the rear master that is gone.', source: 'defined' },
  ];
}
