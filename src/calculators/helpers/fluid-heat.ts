import { boilMargin } from '../../engine/heat.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { defineCautions, defineEquations } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';

/** Least boiling points of FMVSS 116, °C: fresh, and with 3.70 % of water by weight. */
const boiling = { dot3: [205, 140], dot4: [230, 155], dot51: [260, 180] } as const;

export type FluidInputs = 'ambient' | 'fluidGrade' | 'soakFraction';
export type FluidOutputs = 'fluidTemperature' | 'dryBoilingPoint' | 'wetBoilingPoint' | 'dryMargin' | 'wetMargin';

/** The fluid behind a rotor that hot, once the truck has stood for a few minutes. */
export function fluidBehind(v: ValuesOf<FluidInputs>, rotorTemperature: number): ValuesOf<FluidOutputs> {
  const [dry, wet] = boiling[v.fluidGrade];
  const [dryBoilingPoint, wetBoilingPoint] = [dry + 273.15, wet + 273.15];
  const r = boilMargin({ ambient: v.ambient, rotorTemperature, soakFraction: v.soakFraction, dryBoilingPoint, wetBoilingPoint });
  if (isImpossible(r)) throw new RangeError(`fluid: expected dry to boil above wet, found ${r.impossible}`);
  return { fluidTemperature: r.fluidTemperature, dryBoilingPoint, wetBoilingPoint, dryMargin: r.dryMargin, wetMargin: r.wetMargin };
}

export const fluidGroup = { title: 'Fluid, once parked', of: ['fluidGrade', 'soakFraction'] } as const;

export const fluidEquations = (when: 'Series' | 'Bottom') => [
  { result: 'fluidTemperature' as const, expression: `ambient + soakFraction * (max(front${when}Temperature, rear${when}Temperature) - ambient)`, words: 'With the truck parked no wind cools the caliper, and a part of the hotter rotor’s excess soaks through piston and pads into the fluid within 5 to 15 minutes.', source: 'defined here; no source gives that part, 100 % is the bound' },
  ...marginEquations,
];

const marginEquations = defineEquations([
  { result: 'dryMargin', expression: 'dryBoilingPoint - fluidTemperature', words: 'Boiling point from the standard’s minimum for the grade, fresh.', source: 'FMVSS 116, read in texts that quote it' },
  { result: 'wetMargin', expression: 'wetBoilingPoint - fluidTemperature', words: 'The same for fluid with 3.70 % of water by weight, which is what a few years in the lines may make of it.', source: 'FMVSS 116, read in texts that quote it' },
]);

type Shown = ValuesOf<FluidInputs | FluidOutputs>;

/** With the inputs at which they must fire and be silent in the record they stand in. */
export function fluidCautions<V extends Shown>(rotor: (v: V) => number, boils: Partial<V>, cool: Partial<V>) {
  return defineCautions<V>([
    {
      id: 'fluid-boils', level: 'danger', when: (v) => v.wetMargin <= 0,
      words: (v, say) => `Some minutes after you stop, the fluid in the hotter calipers may reach ${say(v.fluidTemperature, 'temperature')}. Old fluid of this grade boils at ${say(v.wetBoilingPoint, 'temperature')}${v.dryMargin <= 0 ? ` and even fresh fluid at ${say(v.dryBoilingPoint, 'temperature')}` : ''}. Vapor squeezes to nothing: the next push goes to the floor.`,
      todo: 'Do not park a hot truck and drive off ten minutes later without a push on the pedal first. If it is long or soft, stay until it is cool, then bleed in fresh fluid. Change it yearly anyway, and take the heat out with the gear.',
      fires: boils, silent: cool,
    },
    {
      id: 'fluid-not-safe', level: 'caution', when: (v) => v.wetMargin > 0 && rotor(v) > v.wetBoilingPoint,
      words: (v, say) => `The rotor is hotter than the ${say(v.wetBoilingPoint, 'temperature')} at which old fluid boils, so only the part you guessed keeps the fluid below it. If more than ${say((v.wetBoilingPoint - v.ambient) / (rotor(v) - v.ambient), 'share')} of the excess soaks through, it boils.`,
      todo: 'Measure that part once on your truck: thermometer on the bleeder, ten minutes after a hard run.',
      fires: { soakFraction: 0.2 } as Partial<V>, silent: { soakFraction: 1 } as Partial<V>,
    },
  ]);
}

export function fluidWords(v: Shown, say: Say): string {
  return v.wetMargin > 0 ? `parked, the hotter calipers’ fluid comes to about ${say(v.fluidTemperature, 'temperature')}, and old fluid boils at ${say(v.wetBoilingPoint, 'temperature')}` : `parked, the hotter calipers’ fluid comes to about ${say(v.fluidTemperature, 'temperature')}: old fluid boils at ${say(v.wetBoilingPoint, 'temperature')}`;
}
