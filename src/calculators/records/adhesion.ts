import { adhesion, minimumAdhesionLine } from '../../engine/adhesion.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import type { At } from '../show.ts';

type V = ValuesOf<'rearBrakeFraction' | 'brakingRate' | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight'>;

function used(v: V, rate = v.brakingRate) {
  const rearFraction = v.rearAxleLoad / (v.frontAxleLoad + v.rearAxleLoad);
  return adhesion({ rearBrakeFraction: v.rearBrakeFraction, rearFraction, heightRatio: v.cgHeight / v.wheelbase, rate });
}

/** More grip than this no road has; a curve that runs past it only flattens the others. */
const most = 1.2;

/** One axle's curve over the rates at which it can stand. */
function curve(v: V, axle: 'front' | 'rear'): At[] {
  const points: At[] = [];
  for (let k = 1; k <= 50; k += 1) {
    const rate = k / 50;
    const a = used(v, rate);
    if (isImpossible(a)) break;
    const f = axle === 'front' ? a.frontUtilized : a.rearUtilized;
    if (f > most) break;
    points.push([rate, f]);
  }
  return points;
}

const leads = (v: { readonly frontAdhesion: number; readonly rearAdhesion: number }): string => (v.frontAdhesion >= v.rearAdhesion ? 'front' : 'rear');

export default defineCalculator({
  id: 'adhesion',
  version: 1,
  title: 'Grip used at each axle',
  purpose: 'How much grip a stop takes from each axle’s tires, and how much of the road’s grip the split turns into braking.',
  inputs: [
    { title: 'Split and stop', of: ['rearBrakeFraction', 'brakingRate'] },
    { title: 'Truck', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight'] },
  ],
  feeds: [brakingFeed],
  outputs: ['neededGrip', 'frontAdhesion', 'rearAdhesion', 'brakingEfficiency', 'rearLoadFraction', 'heightRatio'],
  compute: (v) => {
    const a = used(v);
    if (isImpossible(a)) return { refused: (say) => `At ${say(v.brakingRate, 'brakingRate')} the rear wheels are off the road: this truck lifts them at ${say(v.brakingRate - (a.by ?? 0), 'brakingRate')}, so the rear axle has no load to use. Type a lower braking rate.` };
    return {
      neededGrip: a.needed, frontAdhesion: a.frontUtilized, rearAdhesion: a.rearUtilized, brakingEfficiency: a.efficiency,
      rearLoadFraction: v.rearAxleLoad / (v.frontAxleLoad + v.rearAxleLoad), heightRatio: v.cgHeight / v.wheelbase,
    };
  },
  summary: (v, say) => `A stop at ${say(v.brakingRate, 'brakingRate')} takes ${say(v.frontAdhesion, 'friction')} of grip from the front tires and ${say(v.rearAdhesion, 'friction')} from the rears. On a road with less than ${say(v.neededGrip, 'friction')} the ${leads(v)} locks; the split turns ${say(v.brakingEfficiency, 'share')} of the grip into braking.`,
  equations: [
    { result: 'neededGrip', expression: 'max(frontAdhesion, rearAdhesion)', words: 'The axle that works harder decides how good the road must be.', source: 'derived: statics' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / (frontAxleLoad + rearAxleLoad)', words: 'What the rear tires carry standing still.', source: 'derived' },
    { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much braking moves from axle to axle.', source: 'derived: statics' },
    { result: 'frontAdhesion', expression: '(1 - rearBrakeFraction) * brakingRate / (1 - rearLoadFraction + heightRatio * brakingRate)', words: 'Front brake force over the load the front carries while braking.', source: 'derived: statics' },
    { result: 'rearAdhesion', expression: 'rearBrakeFraction * brakingRate / (rearLoadFraction - heightRatio * brakingRate)', words: 'Rear brake force over the load that is left on the rear.', source: 'derived: statics' },
    { result: 'brakingEfficiency', expression: 'brakingRate / neededGrip', words: 'The rate you get for the grip you need. A perfect split has both axles at the braking rate, and this at 100 %.', source: 'derived: statics' },
  ],
  cautions: [
    {
      id: 'rear-harder', level: 'danger', when: (v) => v.rearAdhesion > v.frontAdhesion,
      words: (v, say) => `In this stop the rear tires work harder (${say(v.rearAdhesion, 'friction', 2)}) than the fronts (${say(v.frontAdhesion, 'friction', 2)}). If the road lets go, the rear locks first and the truck can spin.`,
      todo: 'Move the split toward the front until the front’s curve lies above the rear’s at every rate the tires allow, empty.',
      fires: { rearBrakeFraction: 0.35, brakingRate: 0.8 }, silent: { rearBrakeFraction: 0.2, brakingRate: 0.8 },
    },
    {
      id: 'close-call', level: 'warning', when: (v) => v.rearAdhesion <= v.frontAdhesion && v.frontAdhesion - v.rearAdhesion < 0.08 * v.frontAdhesion,
      words: (v, say) => `The rear uses ${say(v.rearAdhesion, 'friction', 2)} where the front uses ${say(v.frontAdhesion, 'friction', 2)}. A brake pad that grips a few percent better, or a bend, turns that around.`,
      todo: 'Keep more in hand: a margin of 4 to 5 points of share (common practice, no source).',
      fires: { rearBrakeFraction: 0.245, brakingRate: 0.8 }, silent: { rearBrakeFraction: 0.2, brakingRate: 0.8 },
    },
    {
      id: 'more-than-roads', level: 'warning', when: (v) => v.neededGrip > 1,
      words: (v, say) => `No ordinary road has a grip of ${say(v.neededGrip, 'friction', 2)} for street tires. The ${leads(v)} axle locks before this rate is reached.`,
      todo: 'Read the rate at which it locks in the lock order calculator.',
      fires: { rearBrakeFraction: 0.2, brakingRate: 1.1 }, silent: { rearBrakeFraction: 0.24, brakingRate: 0.5 },
    },
    {
      id: 'grip-wasted', level: 'caution', when: (v) => v.brakingEfficiency < 0.75,
      words: (v, say) => `The split turns only ${say(v.brakingEfficiency, 'share', 2)} of the road’s grip into braking. On a slippery road the ${leads(v)} locks while the other axle is still nearly idle.`,
      todo: 'A few points of share may be there to give back. Give them only as far as the empty truck stays front first.',
      fires: { rearBrakeFraction: 0.05, brakingRate: 0.3 }, silent: { rearBrakeFraction: 0.24, brakingRate: 0.8 },
    },
    {
      id: 'not-an-approval', level: 'notice',
      words: 'The lines in the chart belong to the approval of new vehicles. They measure a split; they do not say that this truck complies with anything.',
      todo: 'Prove the lock order on a closed lot, and let your inspector decide what complies.',
    },
  ],
  charts: [{
    title: 'Grip used against braking rate, with this split',
    x: { label: 'braking rate', dimension: 'brakingRate' },
    y: { label: 'grip used', dimension: 'friction' },
    series: (v) => [
      { label: 'front axle', tone: 'front', points: curve(v, 'front') },
      { label: 'rear axle', tone: 'rear', points: curve(v, 'rear') },
      { label: 'perfect split', tone: 'ghost', points: [[0, 0], [1, 1]] },
      { label: 'minimum-rate line (UN R13-H, from memory, not checked against the text)', tone: 'accent', points: [0.1, 0.52].map((rate) => [rate, minimumAdhesionLine({ rate }).minimumLine ?? NaN] as const) },
    ],
    marks: (v) => [
      ...(v.frontAdhesion <= most && v.brakingRate <= 1 ? [{ at: [v.brakingRate, v.frontAdhesion], label: 'front', tone: 'front' } as const] : []),
      ...(v.rearAdhesion <= most && v.brakingRate <= 1 ? [{ at: [v.brakingRate, v.rearAdhesion], label: '', tone: 'rear' } as const] : []),
    ],
    describe: (v, say) => `At ${say(v.brakingRate, 'brakingRate')} the front uses ${say(v.frontAdhesion, 'friction')} and the rear ${say(v.rearAdhesion, 'friction')}. The axle whose curve is higher locks first. Where both curves stay under the minimum-rate line, the split wastes less grip than that line allows; it is information, no approval.`,
  }],
  tables: [{
    caption: 'Grip used at other rates, with the same split',
    head: ['Rate', 'Front', 'Rear', 'Efficiency', 'Harder'],
    rows: (v) => [0.2, 0.4, 0.6, 0.8, 1].map((rate) => {
      const a = used(v, rate);
      const z = { value: rate, dimension: 'brakingRate' } as const;
      return isImpossible(a) ? [z, '–', '–', '–', 'rear lifts'] : [z, { value: a.frontUtilized, dimension: 'friction' }, { value: a.rearUtilized, dimension: 'friction' }, { value: a.efficiency, dimension: 'share' }, a.frontLeads ? 'front' : 'rear'];
    }),
  }],
  paper: {
    assumptions: ['A steady stop in a straight line on the level.', 'The split is the same at every rate of the chart and the table; with a rear valve it holds at the one rate only.', 'Front and rear tires find the same grip.'],
    leftOut: ['Drag of engine and tires.', 'A bend, where the inner rear wheel uses more than its axle’s mean.', 'Grip that falls off with load.'],
    sources: [
      { of: 'adhesion utilized and braking efficiency', kind: 'derived', note: 'statics' },
      { of: 'front curve above the rear curve for grip from 0.2 to 0.8, at every load', kind: 'published', id: 'eu-braking', note: 'Annex II, appendix, 3.1.1; for the approval of new vehicles' },
      { of: 'minimum-rate line z = 0.1 + 0.7 (k − 0.2)', kind: 'from memory', id: 'un-r13h', note: 'an older line has 0.85' },
    ],
    examples: [{
      source: 'Reference truck worked by hand: rear share 0.24 at 0.8 g',
      inputs: { rearBrakeFraction: 0.24, brakingRate: 0.8, frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58 },
      results: { frontAdhesion: { value: 0.8115, within: 0.001 }, rearAdhesion: { value: 0.7654, within: 0.001 }, brakingEfficiency: { value: 0.9858, within: 0.001 } },
    }],
    related: ['bias', 'lock-order', 'ideal-distribution', 'braking-rate'],
  },
});
