import { caliperAreas } from '../../engine/caliper.ts';
import { atmosphere } from '../../engine/constants.ts';
import { bar, mm, psi } from '../../units/si.ts';
import { airLeft, knockedFar, lineOf, noGap, partsOf, sides, swellFeed, volumeAt } from '../helpers/circuit-volume.ts';
import { areaEquations, swallowEquations } from '../helpers/ledger-equations.ts';
import { defineCalculator } from '../record.ts';

const items = [['gaps', 'brake pad gaps'], ['knockBack', 'knock-back'], ['hoses', 'hoses'], ['calipers', 'calipers'], ['pads', 'brake pads squeezed'], ['fluid', 'fluid squeezed'], ['air', 'air']] as const;

export default defineCalculator({
  ...swellFeed,
  version: 1,
  purpose: 'How much fluid each circuit swallows before and while pressure builds, from its calipers, hoses, fluid and air.',
  outputs: [
    'frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance', 'frontClampArea', 'frontMovingArea', 'rearClampArea', 'rearMovingArea',
    'frontQuarterVolume', 'frontFullVolume', 'rearQuarterVolume', 'rearFullVolume', 'standardAtmosphere',
  ],
  compute: (v) => {
    const [f, r] = [lineOf(v, 'front'), lineOf(v, 'rear')];
    const [af, ar] = [caliperAreas(partsOf(v, 'front')), caliperAreas(partsOf(v, 'rear'))];
    const at = (side: 'front' | 'rear', part: number): number => volumeAt(v, side, v.swellPressure * part).total;
    return {
      frontTakeUp: f.takeUp, rearTakeUp: r.takeUp, frontCompliance: f.compliance, rearCompliance: r.compliance,
      frontClampArea: af.clampArea, frontMovingArea: af.pistonArea, rearClampArea: ar.clampArea, rearMovingArea: ar.pistonArea,
      frontQuarterVolume: at('front', 1 / 4), frontFullVolume: at('front', 1), rearQuarterVolume: at('rear', 1 / 4), rearFullVolume: at('rear', 1), standardAtmosphere: atmosphere,
    };
  },
  howSure: { quick: (v) => ({ frontTakeUp: lineOf(v, 'front').takeUp }) },
  summary: (v, say) => `The front circuit takes ${say(v.frontTakeUp, 'volume')} before pressure builds and ${say(v.frontFullVolume - v.frontTakeUp, 'volume')} more up to ${say(v.swellPressure, 'pressure')}; the rear ${say(v.rearTakeUp, 'volume')} and ${say(v.rearFullVolume - v.rearTakeUp, 'volume')}.`,
  equations: [...sides.flatMap(areaEquations), ...sides.flatMap(swallowEquations)],
  cautions: [
    {
      id: 'two-areas', level: 'notice',
      words: 'A caliper has two areas. The one that clamps counts the pistons on one side. The one that swallows counts every piston that moves, by how far it moves. Mix them and a bore comes out wrong by a factor of two.',
      todo: 'Count the pistons on one side in the field above and pick the type. The table shows what is counted for what.',
    },
    {
      id: 'no-gap', level: 'warning', when: noGap,
      words: 'Brake pads with no gap rub. They heat the fluid, and hot fluid that has nowhere to go holds the brakes on.',
      todo: 'Spin each wheel by hand one second after letting go of the pedal. Find out why the pistons do not come back: seals, slides, port, residual valve.',
      fires: { frontPadGap: 0 }, silent: {},
    },
    {
      id: 'knock-back-far', level: 'warning', when: knockedFar,
      words: (v, say) => `Pads knocked back ${say(Math.max(v.frontKnockBack, v.rearKnockBack), 'length')} make the first pedal after a corner a long one, with no warning.`,
      todo: 'Rotor run-out to 0.004 in (0.1 mm), axle end float to 0.012 in (0.3 mm), wheel bearings (common practice, no source).',
      fires: { rearKnockBack: 0.5 * mm }, silent: {},
    },
    {
      id: 'air-left', level: 'warning', when: airLeft,
      words: (v, say) => `With air in it a circuit has no straight line. The two figures fit it at ${say(v.swellPressure / 4, 'pressure')} and ${say(v.swellPressure, 'pressure')} and miss a little elsewhere.`,
      todo: 'Bleed it before you choose a bore by it. A circuit with air in it is not a design.',
      fires: { frontAir: 1e-6 }, silent: {},
    },
    {
      id: 'estimates', level: 'caution',
      words: 'Swell of calipers and brake pads is from memory of typical ones. Yours may take half as much or twice.',
      todo: 'When the truck has fluid in it, read stroke and pressure at two foot forces on the real thing. Measured figures go in place of these, in any calculator that asks for take-up and swell.',
    },
  ],
  charts: [{
    title: 'Fluid swallowed against line pressure',
    x: { label: 'line pressure', dimension: 'pressure' },
    y: { label: 'fluid, one circuit', dimension: 'volume' },
    series: (v) => sides.map((side) => ({
      label: side, tone: side,
      points: Array.from({ length: 41 }, (_, k) => 1.2 * v.swellPressure * (k / 40) ** 2).map((p) => [p, volumeAt(v, side, p).total] as const),
    })),
    describe: (v, say) => `Front from ${say(volumeAt(v, 'front', 0).total, 'volume')} to ${say(v.frontFullVolume, 'volume')} at ${say(v.swellPressure, 'pressure')}, rear from ${say(volumeAt(v, 'rear', 0).total, 'volume')} to ${say(v.rearFullVolume, 'volume')}. Straight without air; with air it climbs steeply first.`,
  }],
  tables: [
    {
      caption: 'What is counted for what, per caliper',
      head: ['', 'Front', 'Rear'],
      rows: (v, say) => {
        const types = sides.map((side) => caliperAreas(partsOf(v, side)));
        return [
          ['type', ...sides.map((side) => v[`${side}CaliperType`])],
          ['area that clamps', ...types.map((a) => say(a.clampArea, 'area'))],
          ['pistons that move', ...sides.map((side, k) => String(v[`${side}Pistons`] * (types[k]!.travelPerGap === 2 ? 1 : 2)))],
          ['their area', ...types.map((a) => say(a.pistonArea, 'area'))],
          ['each moves, per gap', ...types.map((a) => `${a.travelPerGap} gap${a.travelPerGap === 2 ? 's' : ''}`)],
          ['fluid for its gaps', ...sides.map((side, k) => say(types[k]!.pistonArea * types[k]!.travelPerGap * v[`${side}PadGap`], 'volume'))],
        ];
      },
    },
    {
      caption: 'Where the fluid goes at the reference pressure, per circuit',
      head: ['', 'Front', 'Rear'],
      rows: (v, say) => {
        const at = sides.map((side) => volumeAt(v, side, v.swellPressure));
        return [...items.map(([item, name]) => [name, ...at.map((a) => say(a.items[item], 'volume'))]), ['together', ...at.map((a) => say(a.total, 'volume'))]];
      },
    },
  ],
  paper: {
    assumptions: ['Two calipers on each axle, alike.', 'Hoses, calipers, brake pads and fluid give in step with pressure.', 'Take-up and swell are the straight line through the true volume at a quarter of the reference pressure and at all of it. Without air that line is the truth at every pressure.'],
    leftOut: ['Hoses and pads stiffen as they are squeezed.', 'Swell of steel tube, too small to count.', 'The push-out pressure of the seals.', 'The rear valve’s own fluid.'],
    sources: [
      { of: 'volumes, clamp and moving area', kind: 'derived', note: 'volume kept' },
      { of: 'compression of the fluid', kind: 'published', id: 'esposito', note: 'example 2.11 agrees' },
      { of: 'hose expansion limits', kind: 'from memory', id: 'fmvss-106', note: 'table I: 0.66 and 0.33 cm³ per foot at 1,000 psi for 1/8 in bore' },
      { of: 'caliper swell, pad squeeze, bulk modulus', kind: 'from memory' },
    ],
    examples: [
      {
        source: 'Worked by hand: two 54 mm floating calipers, 0.15 mm at each brake pad, nothing else',
        inputs: { frontPistonDiameter: 0.054, frontPistons: 1, frontCaliperType: 'floating', frontPadGap: 0.15 * mm, frontKnockBack: 0, frontAir: 0 },
        results: { frontTakeUp: { value: 1.374e-6, within: 0.001 }, frontClampArea: { value: 2290.2e-6, within: 1e-4 } },
      },
      {
        source: 'Esposito, Fluid Power with Applications, example 2.11 (read in a worked-solution companion): 10 in³ from 100 to 2,000 psi at 250,000 psi, as a slope',
        inputs: { frontHoses: 0, frontCaliperSwell: 0, padSqueeze: 0, frontAir: 0, frontFluidVolume: 10 * 0.0254 ** 3, bulkModulus: 250_000 * psi },
        results: { frontCompliance: { value: (0.076 * 0.0254 ** 3) / (1900 * psi), within: 0.007 } },
      },
      {
        source: 'Worked by hand: 120 cm³ at 1.6 GPa and 70 bar give 0.525 cm³',
        inputs: { rearHoses: 0, rearCaliperSwell: 0, padSqueeze: 0, rearPadGap: 0, rearKnockBack: 0, rearAir: 0, rearFluidVolume: 120e-6, bulkModulus: 1.6e9, swellPressure: 70 * bar },
        results: { rearFullVolume: { value: 0.525e-6, within: 1e-6 } },
      },
    ],
    related: ['fluid-ledger', 'air-from-travel', 'balance-bar', 'braking-rate'],
  },
});
