import { standardGravity } from '../../engine/constants.ts';
import { axleLoads, withPayload } from '../../engine/loads.ts';
import type { AxleLoads } from '../../engine/loads.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { inch } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { loadScene } from '../scenes/loads.ts';

type Inputs = 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'brakingRate' | 'payload' | 'payloadAhead' | 'payloadHeight';
type V = ValuesOf<Inputs>;

const rates = [0, 0.2, 0.4, 0.6, 0.8, 0.9];

const emptyAt = (v: V, rate: number) => axleLoads({ frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, cgHeight: v.cgHeight, rate });

const loaded = (v: V) => withPayload({
  frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, cgHeight: v.cgHeight, payload: v.payload, payloadAhead: v.payloadAhead, payloadHeight: v.payloadHeight,
});

function ladenAt(v: V, rate: number): AxleLoads | Refusal {
  const truck = loaded(v);
  if (isImpossible(truck)) {
    const [axle, side] = truck.impossible === 'front-axle-lifts' ? ['front', 'behind the rear axle'] : ['rear', 'ahead of the front axle'];
    return { refused: (say) => `This load, so far ${side}, lifts the ${axle} wheels of the parked truck: ${say(truck.by ?? 0, 'mass')} more would be needed to hold them down. Move the load or make it lighter.` };
  }
  const r = axleLoads({ frontLoad: truck.frontLoad, rearLoad: truck.rearLoad, wheelbase: v.wheelbase, cgHeight: truck.cgHeight, rate });
  return isImpossible(r) ? lifts(rate, r.by ?? 0, 'With the load in the bed the') : r;
}

function lifts(rate: number, by: number, who: string): Refusal {
  return { refused: (say) => `${who} rear wheels lift at ${say(rate - by, 'brakingRate')}, ${say(by, 'brakingRate')} below the rate typed. Past that the rear axle carries nothing and the truck goes over its nose.` };
}

/** For tables and charts, which run past where the headline stops. */
function parts(v: V, rate: number): { readonly empty?: AxleLoads; readonly laden?: AxleLoads } {
  const [empty, laden] = [emptyAt(v, rate), ladenAt(v, rate)];
  return { ...(isImpossible(empty) ? {} : { empty }), ...('refused' in laden ? {} : { laden }) };
}

export default defineCalculator({
  id: 'load-transfer',
  version: 1,
  title: 'Load transfer',
  purpose: 'What each axle carries while you brake, empty and with a load in the bed.',
  inputs: [
    { title: 'Truck, empty', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight'] },
    { title: 'Stop', of: ['brakingRate'] },
    { title: 'Load in the bed, for comparison', of: ['payload', 'payloadAhead', 'payloadHeight'] },
  ],
  outputs: [
    'rearDynamicFraction', 'frontDynamicLoad', 'rearDynamicLoad', 'loadTransferForce', 'rearLiftRate', 'mass', 'rearLoadFraction', 'heightRatio',
    'ladenRearDynamicFraction', 'ladenFrontDynamicLoad', 'ladenRearDynamicLoad', 'ladenRearLiftRate', 'ladenMass', 'ladenRearLoadFraction', 'ladenHeightRatio',
  ],
  compute: (v) => {
    const r = emptyAt(v, v.brakingRate);
    if (isImpossible(r)) return lifts(v.brakingRate, r.by ?? 0, 'The');
    const laden = ladenAt(v, v.brakingRate);
    if ('refused' in laden) return laden;
    return {
      rearDynamicFraction: r.rearDynamicFraction, frontDynamicLoad: r.frontDynamic, rearDynamicLoad: r.rearDynamic, loadTransferForce: r.transfer, rearLiftRate: r.rearLiftRate,
      mass: r.mass, rearLoadFraction: r.rearFraction, heightRatio: r.heightRatio,
      ladenRearDynamicFraction: laden.rearDynamicFraction, ladenFrontDynamicLoad: laden.frontDynamic, ladenRearDynamicLoad: laden.rearDynamic, ladenRearLiftRate: laden.rearLiftRate,
      ladenMass: laden.mass, ladenRearLoadFraction: laden.rearFraction, ladenHeightRatio: laden.heightRatio,
    };
  },
  summary: (v, say) => `At ${say(v.brakingRate, 'brakingRate')}, ${say(v.loadTransferForce, 'force')} moves to the front axle, and the empty truck’s rear keeps ${say(v.rearDynamicFraction, 'share')} of the weight instead of the ${say(v.rearLoadFraction, 'share')} it has parked.${v.payload > 0 ? ` With ${say(v.payload, 'mass')} in the bed it keeps ${say(v.ladenRearDynamicFraction, 'share')}.` : ''}`,
  equations: [
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'The scales together carry all of the truck.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'The rear’s part of the weight, parked.', source: 'derived' },
    { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'Tall and short trucks move more load than low and long ones.', source: 'derived' },
    { result: 'loadTransferForce', expression: 'mass * g * brakingRate * cgHeight / wheelbase', words: 'The road pulls back at the tires, the mass pushes on at its center: a twist that only the axle loads, a wheelbase apart, can answer.', source: 'derived: moments about the front tires’ contact' },
    { result: 'frontDynamicLoad', expression: 'frontAxleLoad * g + loadTransferForce', words: 'The front carries what it carries parked, and what moves.', source: 'derived: balance of forces' },
    { result: 'rearDynamicLoad', expression: 'rearAxleLoad * g - loadTransferForce', words: 'The rear loses just that.', source: 'derived: balance of forces' },
    { result: 'rearDynamicFraction', expression: 'rearLoadFraction - heightRatio * brakingRate', words: 'The rear’s part of the weight falls in a straight line as you brake harder.', source: 'derived: rear load over weight' },
    { result: 'rearLiftRate', expression: 'rearLoadFraction / heightRatio', words: 'The rate at which nothing is left on the rear.', source: 'derived: rear load of nothing' },
    { result: 'ladenMass', expression: 'mass + payload', words: 'The truck and what is in its bed.', source: 'derived' },
    { result: 'ladenRearLoadFraction', expression: '(rearAxleLoad + payload * (1 - payloadAhead / wheelbase)) / ladenMass', words: 'A load over the rear axle rests on it alone; each inch ahead hands a little to the front.', source: 'derived: moments about the front tires’ contact' },
    { result: 'ladenHeightRatio', expression: '(cgHeight * mass + payloadHeight * payload) / (ladenMass * wheelbase)', words: 'The common height is the mean of both, weighted by mass.', source: 'derived: first moment of mass' },
    { result: 'ladenRearDynamicFraction', expression: 'ladenRearLoadFraction - ladenHeightRatio * brakingRate', words: 'As for the empty truck.', source: 'derived' },
    { result: 'ladenRearDynamicLoad', expression: 'ladenMass * g * ladenRearDynamicFraction', words: 'That part of the loaded weight.', source: 'derived' },
    { result: 'ladenFrontDynamicLoad', expression: 'ladenMass * g * (1 - ladenRearDynamicFraction)', words: 'The front has the rest.', source: 'derived' },
    { result: 'ladenRearLiftRate', expression: 'ladenRearLoadFraction / ladenHeightRatio', words: 'As for the empty truck.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'not-the-scales', level: 'warning',
      words: (v, say) => `Brakes shared like the parked scale readings give the rear ${say(v.rearLoadFraction, 'share')}, when it has only ${say(v.rearDynamicFraction, 'share')} to hold the road with at this rate. The rear locks first and the truck spins.`,
      todo: 'Share the brakes by the loads while braking, empty, at the hardest stop the tires allow.',
    },
    {
      id: 'rear-nearly-up', level: 'danger', when: (v) => v.rearDynamicFraction < 0.1,
      words: (v, say) => `The rear keeps ${say(v.rearDynamicFraction, 'share')} of the weight and lifts at ${say(v.rearLiftRate, 'brakingRate')}. A light rear neither brakes nor steers straight, and a bump finishes it.`,
      todo: 'Check height and wheelbase first: few pickups are like this. If they are right, lower the load or the truck before you make the brakes stronger.',
      fires: { cgHeight: 38 * inch, brakingRate: 1 }, silent: {},
    },
    {
      id: 'load-slides', level: 'warning', when: (v) => v.payload > 0,
      words: (v, say) => `${say(v.payload, 'mass')} in the bed is counted where you put it. Loose, it slides forward at the first hard stop and through the back of the cab.`,
      todo: 'Tie it down. Look up what axle, wheels, tires and springs may carry: this page says where weight goes, not what may be put there.',
      fires: {}, silent: { payload: 0 },
    },
    {
      id: 'load-behind-axle', level: 'warning', when: (v) => v.payload > 0 && v.payloadAhead < 0,
      words: (v, say) => `A load ${say(-v.payloadAhead, 'length')} behind the rear axle lifts the nose: the front tires lose ${say((-v.payload * v.payloadAhead * standardGravity) / v.wheelbase, 'force')} of what they steer and stop with.`,
      todo: 'Load it ahead of the axle.',
      fires: { payloadAhead: -12 * inch }, silent: {},
    },
    {
      id: 'one-rate', level: 'notice',
      words: 'These loads hold for one rate. At half the rate half as much moves, so no fixed split fits every stop.',
      todo: 'Go on to the ideal distribution to see what a fixed split costs.',
    },
  ],
  picture: {
    title: 'Forces on the empty truck in a steady stop',
    describe: (v, say, at) => {
      const { empty } = parts(v, at);
      return empty ? `A pickup traveling left, empty, outline invented, wheelbase and center of gravity to scale. At ${say(at, 'brakingRate')} the front axle carries ${say(empty.frontDynamic, 'force')} and the rear ${say(empty.rearDynamic, 'force')}; parked they carry ${say(v.frontAxleLoad * standardGravity, 'force')} and ${say(v.rearAxleLoad * standardGravity, 'force')}, shown dashed. The mass pushes on at ${say(v.cgHeight, 'length')} above the road, where the tires are pulled back.` : '';
    },
    motion: { label: 'Braking rate', dimension: 'brakingRate', range: (v) => [0, Math.min(1.1, v.rearLiftRate)], start: (v) => v.brakingRate },
    scene: (v, at, say) => {
      const rate = Math.min(at, v.rearLiftRate * (1 - 1e-12));
      const weight = v.mass * standardGravity;
      const rear = v.rearLoadFraction - v.heightRatio * rate;
      return loadScene({
        wheelbase: v.wheelbase, cgHeight: v.cgHeight, rearFraction: v.rearLoadFraction, rate,
        atRest: { front: 1 - v.rearLoadFraction, rear: v.rearLoadFraction }, now: { front: 1 - rear, rear },
        labels: { front: `front ${say((1 - rear) * weight, 'force')}`, rear: `rear ${say(rear * weight, 'force')}`, push: say(rate * weight, 'force') },
      });
    },
  },
  charts: [{
    title: 'What the rear axle keeps of the weight',
    x: { label: 'braking rate', dimension: 'brakingRate' },
    y: { label: 'rear part of the weight', dimension: 'share' },
    series: (v) => [
      { label: 'empty', tone: 'plain', points: [[0, v.rearLoadFraction], [Math.min(1.2, v.rearLiftRate), v.rearLoadFraction - v.heightRatio * Math.min(1.2, v.rearLiftRate)]] },
      { label: 'with the load in the bed', tone: 'ghost', points: [[0, v.ladenRearLoadFraction], [Math.min(1.2, v.ladenRearLiftRate), v.ladenRearLoadFraction - v.ladenHeightRatio * Math.min(1.2, v.ladenRearLiftRate)]] },
      { label: 'the rate typed', tone: 'rear', points: [[v.brakingRate, 0], [v.brakingRate, v.rearDynamicFraction]] },
    ],
    // The number stands at the foot of the upright line, where no curve runs through it.
    marks: (v, say) => [{ at: [v.brakingRate, v.rearDynamicFraction], label: '', tone: 'rear' }, { at: [v.brakingRate, 0], label: say(v.brakingRate, 'brakingRate'), tone: 'rear' }],
    describe: (v, say) => `Two straight lines that fall as the truck brakes harder. Empty: from ${say(v.rearLoadFraction, 'share')} parked to ${say(v.rearDynamicFraction, 'share')} at ${say(v.brakingRate, 'brakingRate')}. With the load: from ${say(v.ladenRearLoadFraction, 'share')} to ${say(v.ladenRearDynamicFraction, 'share')}.`,
  }],
  tables: [
    {
      caption: 'Axle loads through a stop, empty',
      head: ['Rate', 'Front', 'Rear', 'Rear part', 'Rear part loaded'],
      rows: (v, say) => rates.map((rate) => {
        const { empty, laden } = parts(v, rate);
        return [say(rate, 'brakingRate'), ...(empty ? [say(empty.frontDynamic, 'force'), say(empty.rearDynamic, 'force'), say(empty.rearDynamicFraction, 'share')] : ['–', 'rear lifts', '–']), laden ? say(laden.rearDynamicFraction, 'share') : 'rear lifts'];
      }),
    },
    {
      caption: 'Empty and loaded',
      head: ['', 'Empty', 'Loaded'],
      rows: (v, say) => [
        ['mass', say(v.mass, 'mass'), say(v.ladenMass, 'mass')],
        ['rear part, parked', say(v.rearLoadFraction, 'share'), say(v.ladenRearLoadFraction, 'share')],
        ['center of gravity', say(v.cgHeight, 'length'), say(v.ladenHeightRatio * v.wheelbase, 'length')],
        [`front at ${say(v.brakingRate, 'brakingRate')}`, say(v.frontDynamicLoad, 'force'), say(v.ladenFrontDynamicLoad, 'force')],
        [`rear at ${say(v.brakingRate, 'brakingRate')}`, say(v.rearDynamicLoad, 'force'), say(v.ladenRearDynamicLoad, 'force')],
        ['rear part at that rate', say(v.rearDynamicFraction, 'share'), say(v.ladenRearDynamicFraction, 'share')],
        ['rear wheels lift at', say(v.rearLiftRate, 'brakingRate'), say(v.ladenRearLiftRate, 'brakingRate')],
      ],
    },
  ],
  paper: {
    assumptions: ['A steady stop on a level road: nothing pitches any more.', 'Both tires of an axle count together.', 'The load in the bed stays where it is, and the springs do not change the heights.'],
    leftOut: [
      'Dive and anti-dive: they change how the nose stands, not what the axles carry.', 'A grade. Braking down a 10 % grade puts about as much more on the front as 0.1 g of extra braking would.',
      'Wind, and the overshoot in the first moment of a stab at the pedal.', 'The tail’s squat under a load. Weigh the loaded truck where it matters.',
    ],
    sources: [
      { of: 'load transfer', kind: 'derived', note: 'statics of one rigid body on two axles' },
      { of: 'a published check of the same statics', kind: 'published', id: 'halliday', note: 'emergency stop of a car' },
      { of: 'standard gravity', kind: 'defined', id: 'nist-811' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: 1340 kg, 58 % front, 0.8 g; with 350 kg, 0.25 m ahead of the axle and 0.75 m high',
        inputs: { frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, brakingRate: 0.8, payload: 350, payloadAhead: 0.25, payloadHeight: 0.75 },
        results: { rearDynamicFraction: { value: 0.251, within: 0.001 }, rearDynamicLoad: { value: 3296, within: 0.001 }, ladenRearLoadFraction: { value: 0.521, within: 0.001 }, ladenHeightRatio: { value: 0.224, within: 0.002 } },
      },
      {
        source: 'Halliday, Resnick and Walker, emergency stop: 11 kN, 4.2 m, center of gravity 1.8 m behind the front axle and 0.75 m high, 0.40 g (read in part, rest from memory)',
        inputs: { frontAxleLoad: (11000 / standardGravity) * (2.4 / 4.2), rearAxleLoad: (11000 / standardGravity) * (1.8 / 4.2), wheelbase: 4.2, cgHeight: 0.75, brakingRate: 0.4 },
        results: { frontDynamicLoad: { value: 2 * 3536, within: 0.001 }, rearDynamicLoad: { value: 2 * 1964, within: 0.001 } },
      },
      {
        source: 'A published parameter set, first car: 1225.9 kg, 0.8839 and 1.5088 m, 0.5578 m high, 0.8 g',
        inputs: { frontAxleLoad: (1225.9 * 1.5088) / 2.3927, rearAxleLoad: (1225.9 * 0.8839) / 2.3927, wheelbase: 2.3927, cgHeight: 0.5578, brakingRate: 0.8, payload: 0 },
        results: { rearDynamicFraction: { value: 0.183, within: 0.003 } },
      },
    ],
    related: ['bias', 'cg-by-axle-lift', 'cg-after-drop', 'ideal-distribution', 'lock-order'],
  },
});
