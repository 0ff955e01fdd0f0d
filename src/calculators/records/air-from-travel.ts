import { circuitVolume } from '../../engine/circuitVolume.ts';
import { atmosphere } from '../../engine/constants.ts';
import { explainExcess, partExcess } from '../../engine/excessTravel.ts';
import { inch, mm } from '../../units/si.ts';
import { barFeed } from '../helpers/balance-bar.ts';
import { sides } from '../helpers/circuit-volume.ts';
import type { Side } from '../helpers/circuit-volume.ts';
import { expectedFeed } from '../helpers/expected-travel.ts';
import { pressuresAt } from '../helpers/fluid-ledger.ts';
import { footToRoadEquations } from '../helpers/foot-to-road-equations.ts';
import { areaEquations } from '../helpers/ledger-equations.ts';
import { defineCalculator } from '../record.ts';
import type { Equation, Refusal, Say, ValuesOf } from '../record.ts';
import type { QuantityKey } from '../vocabulary/index.ts';

type Inputs =
  | 'lightForce' | 'lightTravel' | 'lightTravelExpected' | 'controlForce' | 'firmTravel' | 'firmTravelExpected' | 'pedalRatio' | 'linkageEfficiency' | 'frontShare' | 'frontMasterBore' | 'rearMasterBore'
  | 'frontMasterStroke' | 'rearMasterStroke' | 'masterSpring' | 'rearValve' | 'kneePressure' | 'valveSlope' | `${Side}PistonDiameter` | `${Side}Pistons` | 'airExponent';

/** Less than a ruler held by a knee can tell. */
const ruler = 3 * mm;

function explained(v: ValuesOf<Inputs>, side: Side, polytropic: number) {
  const p = pressuresAt(v, v.controlForce);
  const r = explainExcess({
    excess: v.firmTravel - v.firmTravelExpected, pedalRatio: v.pedalRatio, weight: side === 'front' ? v.frontShare : 1 - v.frontShare, bore: v[`${side}MasterBore`], strokeLeft: v[`${side}MasterStroke`],
    caliper: { pistonDiameter: v[`${side}PistonDiameter`], pistonsPerSide: v[`${side}Pistons`], type: 'floating' }, pressure: side === 'front' ? p.frontPressure : p.rearPressure, polytropic,
  });
  return { volume: r?.volume ?? 0, air: r?.air ?? 0, knockBack: r?.knockBack ?? 0, withinStroke: r?.withinStroke ?? true };
}

function sideEquations(side: Side): readonly Equation[] {
  const key = (name: string): QuantityKey => `${side}${name}` as QuantityKey;
  const share = side === 'front' ? 'frontShare' : '(1 - frontShare)';
  const pressure = side === 'front' ? 'frontPressure' : 'rearPressureAfterValve';
  const air = (exponent: string): string => `${side}ExcessVolume / (1 - (standardAtmosphere / (standardAtmosphere + ${pressure}))^(1 / ${exponent}))`;
  return [
    { result: key('ExcessVolume'), expression: `max(0, firmExcess) * ${side}MasterArea / (pedalRatio * ${share})`, words: `Pad travel back through lever and bar to the ${side} piston, times its area.`, source: 'derived: volume kept' },
    { result: key('AirFound'), expression: air('airExponent'), words: 'At this pressure air has given up most of its volume; what is missing is that part.', source: 'derived: gas law' },
    { result: key('AirLow'), expression: air('1'), words: 'Squeezed slowly it gives up most, so less of it explains the same.', source: 'derived: gas law' },
    { result: key('AirHigh'), expression: air('1.4'), words: 'Squeezed fast it stays hot and gives up less.', source: 'derived: gas law' },
    { result: key('KnockBackFound'), expression: `${side}ExcessVolume / (2 * ${side}ClampArea)`, words: 'Spread over two calipers, over the area that moves.', source: 'derived: volume kept' },
  ];
}

const excess = (by: number, say: Say): string => (by < 0 ? `${say(-by, 'length')} less than expected` : `${say(by, 'length')} too much`);

/** Without pressure air keeps its size, and no travel tells how much of it there is. */
function nothingThere(v: ValuesOf<Inputs>, side: Side, line: { readonly rodForce: number }, say: Say): string {
  const push = line.rodForce * (side === 'front' ? v.frontShare : 1 - v.frontShare);
  const why = push <= v.masterSpring ? `its master gets ${say(push, 'force')} of rod force and its spring takes ${say(v.masterSpring, 'force')}` : 'its valve lets none through';
  return `At a firm push of ${say(v.controlForce, 'force')} there is no pressure in the ${side} circuit: ${why}. Air that nothing squeezes takes no travel, so none can be found that way. Push harder, or put these numbers right.`;
}

function refuse(v: ValuesOf<Inputs>): Refusal | undefined {
  if (v.lightForce >= v.controlForce) return { refused: (say) => `The light push, ${say(v.lightForce, 'force')}, is not lighter than the firm one, ${say(v.controlForce, 'force')}. Two different pushes tell air from swell.` };
  if (v.firmTravel < v.lightTravel) return { refused: (say) => `The firm push went ${say(v.lightTravel - v.firmTravel, 'length')} less far than the light one. A pedal does not come back under a harder foot: measure both in one push.` };
  const line = pressuresAt(v, v.controlForce);
  const none = line.frontPressure <= 0 ? 'front' : line.rearPressure <= 0 ? 'rear' : undefined;
  return none && { refused: (say) => nothingThere(v, none, line, say) };
}

/** How much longer than the parts account for. */
const excessOf = (v: ValuesOf<Inputs>) => ({ light: v.lightTravel - v.lightTravelExpected, firm: v.firmTravel - v.firmTravelExpected });

export default defineCalculator({
  id: 'air-from-travel',
  version: 1,
  title: 'A long pedal, explained',
  purpose: 'From the travel you measured at a light and a firm push: how much air, or how much knock-back, would explain what is too much.',
  inputs: [
    { title: 'Light push', of: ['lightForce', 'lightTravel', 'lightTravelExpected'] },
    { title: 'Firm push', of: ['controlForce', 'firmTravel', 'firmTravelExpected'] },
    { title: 'Pedal, bar and masters', of: ['pedalRatio', 'linkageEfficiency', 'frontShare', 'frontMasterBore', 'rearMasterBore', 'frontMasterStroke', 'rearMasterStroke', 'masterSpring', 'rearValve', 'kneePressure', 'valveSlope'] },
    { title: 'Calipers and air', of: ['frontPistonDiameter', 'frontPistons', 'rearPistonDiameter', 'rearPistons', 'airExponent'] },
  ],
  feeds: [expectedFeed, barFeed],
  outputs: [
    'firmExcess', 'lightExcess', 'deadExcess', 'softExcess', 'travelReading', 'frontAirFound', 'frontAirLow', 'frontAirHigh', 'rearAirFound', 'rearAirLow', 'rearAirHigh', 'frontKnockBackFound', 'rearKnockBackFound',
    'frontExcessVolume', 'rearExcessVolume', 'frontPressure', 'rearPressure', 'rearPressureAfterValve', 'rodForce', 'frontMasterArea', 'rearMasterArea', 'frontClampArea', 'rearClampArea', 'standardAtmosphere',
  ],
  compute: (v) => {
    const no = refuse(v);
    if (no) return no;
    const excess = excessOf(v);
    const { dead, softAtFirm } = partExcess({ light: { force: v.lightForce, excess: excess.light }, firm: { force: v.controlForce, excess: excess.firm } });
    const reading = excess.firm <= ruler ? 'none' : softAtFirm <= ruler ? 'dead' : dead <= ruler ? 'soft' : 'both';
    const line = pressuresAt(v, v.controlForce);
    const inlet = pressuresAt({ ...v, rearValve: 'none' }, v.controlForce).rearPressure;
    const at = (side: Side, exponent: number) => explained(v, side, exponent);
    const [f, r] = [at('front', v.airExponent), at('rear', v.airExponent)];
    const clamp = (side: Side): number => (v[`${side}Pistons`] * Math.PI * v[`${side}PistonDiameter`] ** 2) / 4;
    return {
      firmExcess: excess.firm, lightExcess: excess.light, deadExcess: dead, softExcess: softAtFirm, travelReading: reading,
      frontAirFound: f.air, frontAirLow: at('front', 1).air, frontAirHigh: at('front', 1.4).air, rearAirFound: r.air, rearAirLow: at('rear', 1).air, rearAirHigh: at('rear', 1.4).air,
      frontKnockBackFound: f.knockBack, rearKnockBackFound: r.knockBack, frontExcessVolume: f.volume, rearExcessVolume: r.volume, frontPressure: line.frontPressure, rearPressure: inlet, rearPressureAfterValve: line.rearPressure,
      rodForce: line.rodForce, frontMasterArea: line.frontArea, rearMasterArea: line.rearArea, frontClampArea: clamp('front'), rearClampArea: clamp('rear'), standardAtmosphere: atmosphere,
    };
  },
  howSure: { quick: (v) => refuse(v) ?? { firmExcess: excessOf(v).firm } },
  summary: (v, say) => {
    if (v.travelReading === 'none') return `At ${say(v.controlForce, 'force')} the pedal is ${v.firmExcess >= 0 ? `${say(v.firmExcess, 'length')} longer` : `${say(-v.firmExcess, 'length')} shorter`} than expected: no more than a rule can tell, or nothing to explain.`;
    const kind = { dead: 'nearly all of it there from the first touch: air or knock-back', soft: 'nearly all of it growing with the push: hoses, calipers or flex', both: `${say(v.deadExcess, 'length')} of it dead and ${say(v.softExcess, 'length')} soft` }[v.travelReading];
    return `The pedal is ${say(v.firmExcess, 'length')} too long at ${say(v.controlForce, 'force')}, ${kind}. Were all of it air in front, ${say(v.frontAirLow, 'volume')} to ${say(v.frontAirHigh, 'volume')}; all in the rear, ${say(v.rearAirLow, 'volume')} to ${say(v.rearAirHigh, 'volume')}. Were it all knock-back, ${say(v.frontKnockBackFound, 'length')} in each front caliper or ${say(v.rearKnockBackFound, 'length')} in each rear one.`;
  },
  equations: [
    { result: 'firmExcess', expression: 'firmTravel - firmTravelExpected', words: 'Measured less expected, firm push.', source: 'defined' },
    { result: 'lightExcess', expression: 'lightTravel - lightTravelExpected', words: 'The same at the light push.', source: 'defined' },
    { result: 'softExcess', expression: '(firmExcess - lightExcess) * controlForce / (controlForce - lightForce)', words: 'What grew from the light push to the firm one, carried down to no push at all.', source: 'derived: straight line through both' },
    { result: 'deadExcess', expression: 'firmExcess - softExcess', words: 'The rest was there before the foot pushed.', source: 'derived' },
    ...footToRoadEquations.slice(0, 7),
    ...sides.map((side) => areaEquations(side)[0] as Equation),
    ...sides.flatMap(sideEquations),
  ],
  cautions: [
    {
      id: 'candidates', level: 'warning',
      words: 'These are candidates, not findings. Hoses, brake pads or a mounting that gives more than you typed look the same from the pedal.',
      todo: 'Type the travel you read on the day the pedal was right in place of what is computed. Then bleed, measure again, and believe the change.',
    },
    {
      id: 'near-floor', level: 'danger', when: (v) => v.firmExcess > 25 * mm,
      words: (v, say) => `The pedal goes ${say(v.firmExcess, 'length')} farther than it should. The next corner or the next hot stop may take the rest.`,
      todo: 'Do not drive it. Find the cause parked: level in both reservoirs, leaks, air, a wheel that rocks.',
      fires: { firmTravel: 8 * inch }, silent: { firmTravel: 4 * inch },
    },
    {
      id: 'stroke-short', level: 'notice', when: (v) => sides.some((side) => !explained(v, side, v.airExponent).withinStroke),
      words: 'One of the circuits would have to use more than its master’s whole stroke, so it cannot be the only cause.',
      todo: 'Look at the other circuit first, or at both.',
      fires: { firmTravel: 9 * inch }, silent: {},
    },
    {
      id: 'pump-up', level: 'caution', when: (v) => v.travelReading === 'dead' || v.travelReading === 'both',
      words: 'Dead travel low down is air or knock-back. Five bar (73 psi) squeezes away 72 to 83 % of trapped air and 20 bar (290 psi) 88 to 95 %, so air is a gap at first and hardly a sponge later.',
      todo: 'Pump twice and push again at once. Shorter, and staying shorter until you drive: knock-back. Shorter, and long again after a minute: air, or pistons that pull back too far. No shorter: free play or a leaking master.',
      fires: {}, silent: { firmTravel: 4 * inch, lightTravel: 2 * inch },
    },
    {
      id: 'soft-up', level: 'caution', when: (v) => v.travelReading === 'soft' || v.travelReading === 'both',
      words: 'Travel that grows with the push is swell or flex: old hoses, a caliper that spreads, tapered brake pads, a firewall that moves, hot fluid.',
      todo: 'Have a helper push while you watch each hose and the masters’ flange. A finger on the hose feels it; a dial gauge measures the flange.',
      fires: { lightTravel: 2.2 * inch, firmTravel: 5.2 * inch }, silent: { firmTravel: 4 * inch, lightTravel: 2 * inch },
    },
    {
      id: 'short-pedal', level: 'notice', when: (v) => v.firmExcess < -5 * mm,
      words: (v, say) => `The pedal is ${say(-v.firmExcess, 'length')} shorter than expected. Good news, or pads that rub and a port that is covered.`,
      todo: 'Spin the wheels by hand, cold and hot. Then correct what was typed.',
      fires: { firmTravel: 3.6 * inch }, silent: {},
    },
  ],
  charts: [{
    title: 'What each cause would look like, all of it in front',
    x: { label: 'foot force', dimension: 'force' },
    y: { label: 'travel too much', dimension: 'length' },
    series: (v) => {
      const top = 1.15 * v.controlForce;
      const forces = Array.from({ length: 41 }, (_, k) => top * (k / 40) ** 2);
      const gone = (force: number): number => circuitVolume({
        pistonDiameter: v.frontPistonDiameter, pistonsPerSide: v.frontPistons, type: 'floating', gapPerPad: 0, knockBack: 0, fluidVolume: 0, bulkModulus: 1, hoses: 0, hoseLength: 0, hoseExpansion: 0, hosePressure: 1,
        caliperGive: 0, caliperPressure: 1, padGive: 0, padPressure: 1, airVolume: v.frontAirFound, polytropic: v.airExponent, pressure: pressuresAt(v, force).frontPressure,
      }).items.air;
      const whole = Math.max(0, v.firmExcess);
      const atFirm = gone(v.controlForce) || 1;
      return [
        { label: 'air', tone: 'front', points: forces.map((f) => [f, (whole * gone(f)) / atFirm] as const) },
        { label: 'knock-back', tone: 'ghost', points: [[0, whole], [top, whole]] },
        { label: 'swell or flex', tone: 'rear', points: [[0, 0], [top, (whole * top) / v.controlForce]] },
      ];
    },
    marks: (v) => [{ at: [v.lightForce, v.lightExcess], label: 'light' }, { at: [v.controlForce, v.firmExcess], label: 'firm' }],
    describe: (v, say) => `Measured: ${excess(v.lightExcess, say)} at ${say(v.lightForce, 'force')} and ${excess(v.firmExcess, say)} at ${say(v.controlForce, 'force')}. Knock-back is the same at both, swell starts at nothing and grows evenly, air rises fast and flattens.`,
  }],
  paper: {
    assumptions: ['One cause at a time, in one circuit at a time.', 'The same slow push carried from light to firm, not pumped.', 'What is too much does not change the pressures, which the foot alone makes.', 'Both pushes are past the return springs.'],
    leftOut: ['Air in both circuits at once.', 'A worn master that lets fluid past: its pedal sinks while you hold it.', 'Readings closer than 0.12 in (3 mm): no rule at a pedal tells that.'],
    sources: [{ of: 'volumes, gas law, the two parts of an excess', kind: 'derived' }, { of: 'gas exponent between 1 and 1.4', kind: 'from memory', note: 'textbook limits for air' }, { of: 'pumping tells knock-back from air', kind: 'common practice' }],
    examples: [
      {
        source: 'Worked by hand: 17.7 mm too long at the front of the reference truck is 1.15 cm³, 0.25 mm in each caliper',
        inputs: { firmTravel: 0.1177, firmTravelExpected: 0.1, lightTravel: 0.06, lightTravelExpected: 0.05, pedalRatio: 6.2, frontShare: 0.62, frontMasterBore: 0.01778, frontPistonDiameter: 0.054, frontPistons: 1 },
        results: { frontExcessVolume: { value: 1.15e-6, within: 0.01 }, frontKnockBackFound: { value: 0.25 * mm, within: 0.01 } },
      },
      {
        source: 'Worked by hand: 10 mm at 50 N and 12 mm at 400 N are 9.71 mm dead and 2.29 mm soft',
        inputs: { lightForce: 50, controlForce: 400, lightTravel: 0.06, lightTravelExpected: 0.05, firmTravel: 0.112, firmTravelExpected: 0.1 },
        results: { deadExcess: { value: 9.714 * mm, within: 0.001 }, softExcess: { value: 2.286 * mm, within: 0.001 } },
      },
    ],
    related: ['fluid-ledger', 'circuit-volume', 'braking-rate'],
  },
});
