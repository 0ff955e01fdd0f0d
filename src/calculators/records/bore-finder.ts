import { circleArea } from '../../engine/circle.ts';
import type { PairResult } from '../../engine/boreFinder.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { criteria } from '../../engine/pairScore.ts';
import { inch, lbf } from '../../units/si.ts';
import { refuse, refuseSearch } from '../helpers/bore-refusals.ts';
import { foundFor, judge, passes, search, warmSearch } from '../helpers/bore-search.ts';
import type { FinderValues } from '../helpers/bore-search.ts';
import { finderEquations } from '../helpers/bore-equations.ts';
import { boreTables } from '../helpers/bore-tables.ts';
import { foundOf, ladenEffort, missSentence, pairName } from '../helpers/bore-words.ts';
import { swellFeed } from '../helpers/circuit-volume.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { defineCalculator } from '../record.ts';
import type { Say } from '../record.ts';
import { boreStripScene } from '../scenes/bore-strip.ts';

const best = (v: FinderValues): PairResult => foundFor(v).pairs[0] as PairResult;
const shown = (v: FinderValues, at: number): PairResult => (at === 0 ? best(v) : foundFor(v).own);
const reaching = (v: FinderValues): number => foundFor(v).pairs.filter((p) => p.verdict === 'reaches').length;

function windowWords(p: PairResult, side: 'front' | 'rear', say: Say): string {
  const w = side === 'front' ? p.frontWindow : p.rearWindow;
  const range = `volume asks for ${say(w.lowest, 'length', 4)} or more, effort for ${say(w.highest, 'length', 4)} or less`;
  return w.empty ? `No ${side} bore does it here: ${range}.` : `Of the ${side} bore ${range}.`;
}

export default defineCalculator({
  id: 'bore-finder',
  version: 1,
  warm: (v) => (refuse(v) ? [] : warmSearch(v)),
  oneWay: true,
  title: 'Which bores, which ratio',
  purpose: 'Tries every pair of standard bores with every pedal ratio and bar setting, and puts first what your weakest driver can stop the truck with.',
  inputs: [
    { title: 'The stop and the driver', of: ['brakingRate', 'driverForce', 'grip'] },
    { title: 'What to try', of: ['ratioFrom', 'ratioTo', 'shareLow', 'shareHigh', 'barReach'] },
    { title: 'What you have, tried as well', of: ['frontMasterBore', 'rearMasterBore', 'pedalRatio', 'barOffset'] },
    { title: 'Pedal and bar', of: ['linkageEfficiency', 'pushrodFreePlay', 'floorTravel', 'barSpacing', 'barRestLead', 'barStop', 'barStopAngle'] },
    { title: 'Masters and fluid', of: ['frontMasterStroke', 'rearMasterStroke', 'portStroke', 'masterSpring', 'frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'] },
    { title: 'Brakes', of: ['frontBrakeGain', 'rearBrakeGain', 'pushOutPressure'] },
    { title: 'Truck and load', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight', 'payload', 'payloadAhead', 'payloadHeight'] },
    { title: 'Limits to keep', of: ['strokePart', 'travelPart', 'tiltPart', 'rateMargin', 'floorMargin', 'failedRate'] },
  ],
  feeds: [discFeed, swellFeed],
  outputs: [
    'bestFrontBore', 'bestRearBore', 'bestPedalRatio', 'bestFrontShare', 'bestEffort', 'bestPadTravel', 'limitsMet', 'pairsPassing',
    'frontPressure', 'rearPressure', 'frontStroke', 'rearStroke', 'strokeLead', 'rodForce', 'frontMasterArea', 'rearMasterArea', 'frontBoreLow', 'frontBoreHigh', 'rearBoreLow', 'rearBoreHigh',
    'rearBrakeFraction', 'criticalRate', 'ladenCriticalRate', 'mass', 'rearLoadFraction', 'heightRatio', 'ladenMass', 'ladenRearLoadFraction', 'ladenHeightRatio',
    'ladenEffort', 'travelFrontDead', 'travelRearDead', 'rateFrontDead', 'rateRearDead',
  ],
  compute: (v) => {
    const no = refuse(v);
    if (no) return no;
    const found = search(v);
    if (isImpossible(found)) return refuseSearch(v, found);
    const p = found.pairs[0] as PairResult;
    if (p.verdict === 'never' || p.frontPressure <= 0 || p.rearPressure <= 0) return refuseSearch(v, p);
    const of = (criterion: (typeof criteria)[number]): number => foundOf(p, criterion).found;
    const mass = v.frontAxleLoad + v.rearAxleLoad;
    const ladenMass = mass + v.payload;
    return {
      bestFrontBore: p.frontBore, bestRearBore: p.rearBore, bestPedalRatio: p.pedalRatio, bestFrontShare: p.frontShare, bestEffort: of('effort'), bestPadTravel: of('pad-travel'),
      limitsMet: p.met, pairsPassing: found.pairs.filter(passes).length,
      frontPressure: p.frontPressure, rearPressure: p.rearPressure, frontStroke: of('front-stroke'), rearStroke: of('rear-stroke'), strokeLead: v.barRestLead + of('front-stroke') - of('rear-stroke'),
      rodForce: of('effort') * p.pedalRatio * v.linkageEfficiency, frontMasterArea: circleArea({ diameter: p.frontBore }).area, rearMasterArea: circleArea({ diameter: p.rearBore }).area,
      frontBoreLow: p.frontWindow.lowest, frontBoreHigh: p.frontWindow.highest, rearBoreLow: p.rearWindow.lowest, rearBoreHigh: p.rearWindow.highest,
      rearBrakeFraction: p.rearBrakeFraction, criticalRate: Math.max(0, of('lock-empty')), ladenCriticalRate: Math.max(0, of('lock-laden')),
      mass, rearLoadFraction: v.rearAxleLoad / mass, heightRatio: v.cgHeight / v.wheelbase,
      ladenMass, ladenRearLoadFraction: (v.rearAxleLoad + v.payload * (1 - v.payloadAhead / v.wheelbase)) / ladenMass, ladenHeightRatio: (v.cgHeight * mass + v.payloadHeight * v.payload) / (ladenMass * v.wheelbase),
      ladenEffort: ladenEffort(p, v), travelFrontDead: of('front-dead-travel'), travelRearDead: of('rear-dead-travel'), rateFrontDead: of('front-dead-rate'), rateRearDead: of('rear-dead-rate'),
    };
  },
  howSure: {
    of: 'bestEffort', draws: 2000,
    given: ['brakingRate', 'driverForce', 'grip', 'ratioFrom', 'ratioTo', 'shareLow', 'shareHigh', 'barReach', 'strokePart', 'travelPart', 'tiltPart', 'rateMargin', 'floorMargin', 'failedRate', 'frontMasterBore', 'rearMasterBore', 'pedalRatio', 'barOffset'],
    held: {
      words: 'With the set shown',
      refused: (v, say) => `a master bottoms, the bar meets its stop, the pad the carpet or a tire slides before ${say(v.brakingRate, 'brakingRate')}`,
      compute: (v) => {
        const set = best(v);
        return (x) => {
          const no = refuse(x);
          if (no) return no;
          const p = judge(x, set);
          return isImpossible(p) || p.verdict === 'never' ? refuseSearch(x, p) : { bestEffort: foundOf(p, 'effort').found, criticalRate: foundOf(p, 'lock-empty').found, ladenCriticalRate: foundOf(p, 'lock-laden').found };
        };
      },
    },
    happens: {
      when: (v) => v.bestEffort > v.driverForce || Math.min(v.criticalRate, v.ladenCriticalRate) < v.grip,
      words: (v, say) => `it fails: it asks for more than ${say(v.driverForce, 'force')}, or the rear locks first on a grip of ${say(v.grip, 'friction')}`,
    },
  },
  summary: (v, say) => {
    const p = best(v);
    const { pairs } = foundFor(v);
    const set = `${pairName(p, say)} in (front + rear), ratio ${say(p.pedalRatio, 'ratio')}, bar at ${say(p.frontShare, 'share')} front, ${say(v.bestEffort, 'force')} for ${say(v.brakingRate, 'brakingRate')}`;
    if (v.pairsPassing > 0) return `${v.pairsPassing} of ${pairs.length} pairs meet every limit. Best: ${set}. The tables show the others, and what the near misses lack.`;
    return `None of ${pairs.length} pairs meets every limit. The nearest: ${set}. It meets ${v.limitsMet} of ${criteria.length}. ${missSentence(p, v, say)}`;
  },
  equations: finderEquations,
  cautions: [
    {
      id: 'too-hard', level: 'danger', when: (v) => best(v).verdict === 'too-hard',
      words: (v, say) => `No pair lets ${say(v.driverForce, 'force')} make ${say(v.brakingRate, 'brakingRate')}. The nearest asks for ${say(v.bestEffort, 'force')}: your weakest driver cannot stop this truck with any of them.`,
      todo: 'A brake pad that grips better, a larger caliper or rotor, a higher ratio with the floor for it. Or keep a booster.',
      fires: { driverForce: 60 * lbf }, silent: {},
    },
    {
      id: 'rear-first', level: 'danger', when: (v) => best(v).verdict === 'rear-first',
      words: (v, say) => `Every pair this driver can push locks the rear first on a road of grip ${say(v.grip, 'friction')}, empty or loaded. A truck whose rear wheels lock turns around.`,
      todo: 'Less rear: a smaller rear caliper, a rear valve, or a bar that reaches further to the front. Then search again.',
      fires: { shareHigh: 0.6 }, silent: {},
    },
    {
      id: 'none-passes', level: 'warning', when: (v) => v.pairsPassing === 0,
      words: (v, say) => `Nothing tried meets every limit, so there is nothing to buy yet. Of ${foundFor(v).pairs.length} pairs ${reaching(v)} reach ${say(v.brakingRate, 'brakingRate')} at all with the weakest driver, front first. The one shown is the nearest, and it misses ${criteria.length - v.limitsMet} limits.`,
      todo: 'Read what the first rows have in common. Bar and pedal travel short: less fluid, or more floor. Effort short: brake pads, calipers. Change that, not the limit.',
      fires: {}, silent: { driverForce: 135 * lbf, frontTakeUp: 0.9e-6, frontCompliance: 0.03e-11, floorTravel: 7 * inch, barStopAngle: 0.3, frontBrakeGain: 150e-5 },
    },
    {
      id: 'dead-near-carpet', level: 'danger', when: (v) => Math.max(v.travelFrontDead, v.travelRearDead) > v.floorTravel - v.floorMargin,
      words: (v, say) => `With the ${v.travelFrontDead > v.travelRearDead ? 'front' : 'rear'} circuit dead, the set shown wants ${say(Math.max(v.travelFrontDead, v.travelRearDead), 'length')} of pedal for ${say(v.driverForce, 'force')}. The carpet is at ${say(v.floorTravel, 'length')}, and a pedal that meets it brakes no harder, however hard you push.`,
      todo: 'Do not buy it for this truck as it stands. More room over the carpet, less fluid, or a bar stop with a shorter lead; then search again.',
      fires: {}, silent: { driverForce: 135 * lbf, frontTakeUp: 0.9e-6, frontCompliance: 0.03e-11, floorTravel: 7 * inch, barStopAngle: 0.3, frontBrakeGain: 150e-5 },
    },
    {
      id: 'laden-effort', level: 'warning', when: (v) => v.ladenEffort > v.driverForce,
      words: (v, say) => `With ${say(v.payload, 'mass')} in the bed the same stop takes ${say(v.ladenEffort, 'force')}. The weakest driver has ${say(v.driverForce, 'force')} and stops later, with more stroke used.`,
      todo: 'Carry less, or plan the bores for the loaded truck: type its weights as the empty ones and search again.',
      fires: {}, silent: { payload: 0 },
    },
    {
      id: 'paper-only', level: 'warning',
      words: 'This list compares parts on paper, with the brake pads, gaps and friction typed. A wrong guess shows as a pedal on the floor.',
      todo: 'Before the road: gauges in both circuits, readings against the table, and a push with each bleeder open in turn. The pedal must stop above the carpet both times.',
    },
  ],
  picture: {
    title: 'The windows of the two bores, to one scale, in inches',
    describe: (v, say, at) => {
      const p = shown(v, at);
      return `${pairName(p, say)} in, ratio ${say(p.pedalRatio, 'ratio')}, bar at ${say(p.frontShare, 'share')} front. ${windowWords(p, 'front', say)} ${windowWords(p, 'rear', say)} A ring marks the bore of the set.`;
    },
    states: { label: 'Set', names: ['nearest or best', 'yours as it stands'] },
    scene: (v, at, say) => {
      const p = shown(v, at);
      return boreStripScene((['front', 'rear'] as const).map((side) => {
        const { lowest: low, highest: high } = side === 'front' ? p.frontWindow : p.rearWindow;
        return { side, low, high, lowLabel: `volume: ${say(low, 'length', 4)} or more`, highLabel: `effort: ${say(high, 'length', 4)} or less`, chosen: side === 'front' ? p.frontBore : p.rearBore };
      }));
    },
  },
  tables: boreTables,
  paper: {
    assumptions: [
      'A steady stop of the empty truck on the level, bled and cold. What you have is tried beside the standard bores.',
      'All masters of an axle have the stroke typed, whatever their bore, and the pedal’s travel to the carpet is the same at every ratio.',
      'The ratio moves in steps of 0.25 or less and the bar in steps of 1.25 points or less, about half a turn. A pair is shown with the ratio and setting that suit it best.',
      'Put in order: what the weakest driver brings to the target rate with the front first; then rear first; then too hard to push, the least force missing first; then what never gets there. Within these, more limits met; then the smallest worst miss, as a part of its limit.',
      'The window of a bore belongs to the set shown: it keeps that set’s pressures.',
    ],
    leftOut: [
      'A rear proportioning valve: taken as absent or wide open.',
      'Springs and push-out pressure in lock order and failures; friction of the bar; flex of pedal and firewall; air and knock-back, which the reserves are for.',
      'Spread. Brake pads alone move effort by some 10 %: search again with the friction a tenth lower.',
      'Whether a bore can be had in that stroke, thread and flange.',
    ],
    sources: [
      { of: 'every figure of a set', kind: 'derived', note: 'the same statics as the single calculators; a test holds each verdict against them' },
      { of: 'standard bores and the limits proposed', kind: 'common practice' },
      { of: '0.25 g with one circuit dead', kind: 'from memory', id: 'fmvss-135', note: 'S7.10: 168 m from 100 km/h; agrees with the distance formula' },
    ],
    examples: [{
      source: 'Reference truck worked by hand as it stands, nothing else to try: 0.8 g, both masters 0.70 in, ratio 6.2, share 0.62, no free play',
      inputs: {
        brakingRate: 0.8, driverForce: 500, grip: 0.9, ratioFrom: 6.2, ratioTo: 6.2, shareLow: 0.6199, shareHigh: 0.6201, barReach: 0.01, frontMasterBore: 0.01778, rearMasterBore: 0.01778, pedalRatio: 6.2, barOffset: 0.00762,
        linkageEfficiency: 0.85, pushrodFreePlay: 0, floorTravel: 0.2, barSpacing: 0.0635, barStop: 'fitted', barStopAngle: 0.3, frontMasterStroke: 0.028, rearMasterStroke: 0.028, portStroke: 0.001, masterSpring: 0,
        frontTakeUp: 1.874e-6, rearTakeUp: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, frontBrakeGain: 122.84e-5, rearBrakeGain: 63.4e-5, pushOutPressure: 0, frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, payload: 0,
      },
      results: { bestEffort: { value: 494, within: 0.002 }, frontStroke: { value: 0.0219, within: 0.004 }, bestFrontBore: { value: 0.01778, within: 0.01 }, rearBrakeFraction: { value: 0.24, within: 0.004 } },
    }],
    related: ['choosing-bores', 'bore-window', 'braking-rate', 'circuit-failure', 'lock-order'],
  },
});
