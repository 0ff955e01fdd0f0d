import { bar, lbf } from '../../units/si.ts';
import { linePressures, pressureFeed, pressureHigh, pressureLow } from '../helpers/line-pressure.ts';
import { defineCalculator } from '../record.ts';

const feet = [25, 50, 75, 100].map((pounds) => pounds * lbf);

export default defineCalculator({
  ...pressureFeed,
  version: 1,
  purpose: 'What a foot force makes of pressure in the front and the rear line.',
  summary: (v, say) => `${say(v.controlForce, 'force')} on the pedal makes ${say(v.frontPressure, 'pressure')} in the front line and ${say(v.rearPressure, 'pressure')} in the rear line.`,
  equations: [
    { result: 'rodForce', expression: 'controlForce * pedalRatio * linkageEfficiency', words: 'The push on the bar is foot force times the lever, less what the linkage eats.', source: 'derived: moment balance about the pedal pivot' },
    { result: 'frontMasterArea', expression: 'pi * frontMasterBore^2 / 4', words: 'The piston’s face is a circle.', source: 'derived' },
    { result: 'rearMasterArea', expression: 'pi * rearMasterBore^2 / 4', words: 'The same for the rear.', source: 'derived' },
    { result: 'frontPressure', expression: 'max(0, frontShare * rodForce - masterSpring) / frontMasterArea', words: 'Front line pressure is the front’s share of the push, less the return spring, divided by the bore’s area.', source: 'derived: balance of forces on the piston' },
    { result: 'rearPressure', expression: 'max(0, (1 - frontShare) * rodForce - masterSpring) / rearMasterArea', words: 'The rear gets what the front leaves.', source: 'derived: balance of forces on the piston' },
  ],
  cautions: [
    {
      id: 'pressure-high', level: 'warning',
      when: pressureHigh,
      words: (v, say) => `${say(Math.max(v.frontPressure, v.rearPressure), 'pressure')} is a lot for this foot force. A small change of it becomes a locked wheel, and every flare and hose carries it.`,
      todo: 'Check hose and tube ratings, or use a larger bore or a lower ratio.',
      fires: { controlForce: 180 * lbf }, silent: {},
    },
    {
      id: 'pressure-low', level: 'warning',
      when: pressureLow,
      words: (v, say) => `Only ${say(v.frontPressure, 'pressure')} in front from ${say(v.controlForce, 'force')}. A leg has little more to give, and the truck will not stop hard.`,
      todo: 'A smaller bore, more pedal ratio or a larger caliper. Then check pedal travel again.',
      fires: { controlForce: 90 * lbf, frontMasterBore: 0.0254 }, silent: {},
    },
    {
      id: 'depends-on-parts', level: 'notice',
      words: 'Pressure is not stopping. What the road feels depends on caliper, brake pad, rotor and tire, and brake pads differ.',
      todo: 'Follow the chain on to the road before you buy.',
    },
  ],
  charts: [{
    title: 'Pressure against foot force',
    x: { label: 'foot force', dimension: 'force' },
    y: { label: 'line pressure', dimension: 'pressure' },
    series: (v) => {
      const forces = Array.from({ length: 13 }, (_, k) => k * 10 * lbf);
      return [
        { label: 'front', tone: 'front', points: forces.map((f) => [f, linePressures({ ...v, controlForce: f }).frontPressure] as const) },
        { label: 'rear', tone: 'rear', points: forces.map((f) => [f, linePressures({ ...v, controlForce: f }).rearPressure] as const) },
      ];
    },
    marks: (v) => [{ at: [v.controlForce, v.frontPressure], label: 'you, front', tone: 'front' }, { at: [v.controlForce, v.rearPressure], label: 'you, rear', tone: 'rear' }],
    describe: (v) => `Both pressures rise in a straight line with foot force; the ${v.frontPressure >= v.rearPressure ? 'front' : 'rear'} one is steeper.`,
  }],
  tables: [{
    caption: 'Gauge readings to expect',
    head: ['Foot force', 'Front', 'Rear'],
    rows: (v) => feet.map((controlForce) => {
      const r = linePressures({ ...v, controlForce });
      return [{ value: controlForce, dimension: 'force' }, { value: r.frontPressure, dimension: 'pressure' }, { value: r.rearPressure, dimension: 'pressure' }];
    }),
  }],
  paper: {
    assumptions: ['A steady push; nothing moves while you read.', 'The bar shares the force as its pivot divides it, square or tilted, while the rods stay parallel.', 'One piston per circuit.'],
    leftOut: ['Friction that differs between pushing and letting go: gauges show it as hysteresis.', 'A rear valve: it has a calculator of its own.'],
    sources: [
      { of: 'pressure as force over area', kind: 'published', id: 'openstax', note: 'section 11.5, hydraulic pedal example' },
      { of: 'linkage efficiency 80 to 90 % with a bar', kind: 'common practice' },
      { of: 'return spring 10 to 40 N', kind: 'from memory' },
    ],
    examples: [{
      source: 'Reference truck worked by hand: 400 N on the pedal, both masters 0.70 in',
      inputs: { controlForce: 400, pedalRatio: 6.2, linkageEfficiency: 0.85, frontShare: 0.62, frontMasterBore: 0.01778, rearMasterBore: 0.01778, masterSpring: 0 },
      results: { frontPressure: { value: 52.6 * bar, within: 0.002 }, rearPressure: { value: 32.3 * bar, within: 0.002 } },
    }],
    related: ['manual-or-boosted', 'balance-bar', 'braking-rate'],
  },
});
