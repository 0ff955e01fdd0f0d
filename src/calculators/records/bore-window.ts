import { boreWindow } from '../../engine/boreWindow.ts';
import { circleArea } from '../../engine/circle.ts';
import { standardGravity } from '../../engine/constants.ts';
import { strokeForPressure } from '../../engine/fluid.ts';
import { bar, inch, lbf } from '../../units/si.ts';
import { standardBores } from '../../units/index.ts';
import { barFeed } from '../helpers/balance-bar.ts';
import { swellFeed } from '../helpers/circuit-volume.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { defineCalculator } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';
import { boreStripScene } from '../scenes/bore-strip.ts';

type Inputs =
  | 'brakingRate' | 'rearShareTarget' | 'driverForce' | 'pedalRatio' | 'linkageEfficiency' | 'frontShare' | 'masterSpring' | 'frontMasterStroke' | 'rearMasterStroke' | 'strokePart' | 'portStroke'
  | 'frontTakeUp' | 'rearTakeUp' | 'frontCompliance' | 'rearCompliance' | 'frontBrakeGain' | 'rearBrakeGain' | 'pushOutPressure' | 'frontAxleLoad' | 'rearAxleLoad';
type V = ValuesOf<Inputs>;
type Side = 'front' | 'rear';
const sides = ['front', 'rear'] as const;

/** What the stop asks of one circuit and what the driver and the stroke give it. */
function circuit(v: V, side: Side) {
  const weight = (v.frontAxleLoad + v.rearAxleLoad) * standardGravity;
  const part = side === 'front' ? 1 - v.rearShareTarget : v.rearShareTarget;
  const pressure = (part * v.brakingRate * weight) / v[`${side}BrakeGain`] + v.pushOutPressure;
  const clevisForce = (side === 'front' ? v.frontShare : 1 - v.frontShare) * v.driverForce * v.pedalRatio * v.linkageEfficiency;
  const usableStroke = v.strokePart * v[`${side}MasterStroke`];
  const fluid = { takeUpVolume: v[`${side}TakeUp`], compliance: v[`${side}Compliance`], portStroke: v.portStroke };
  return { pressure, clevisForce, usableStroke, fluid, volume: fluid.takeUpVolume + fluid.compliance * pressure, ...boreWindow({ clevisForce, springForce: v.masterSpring, pressure, usableStroke, ...fluid }) };
}

/** Why a bore does not fit one circuit, in a word or two. */
function verdict(v: V, side: Side, bore: number, say: Say): string {
  const c = circuit(v, side);
  const { stroke } = strokeForPressure({ ...c.fluid, bore, pressure: c.pressure });
  const foot = (v.driverForce * (c.pressure * circleArea({ diameter: bore }).area + v.masterSpring)) / c.clevisForce;
  const short = stroke > c.usableStroke ? `short by ${say(stroke - c.usableStroke, 'length')}` : '';
  const hard = foot > v.driverForce ? `${say(foot - v.driverForce, 'force')} too hard` : '';
  return [short, hard].filter(Boolean).join(', ') || `fits, ${say(foot, 'force')}`;
}

const fitting = (v: V, side: Side): string[] => {
  const { lowest, highest } = circuit(v, side);
  return standardBores.filter(({ si }) => si >= lowest && si <= highest).map(({ label }) => label);
};

function inWords(v: V, side: Side, say: Say): string {
  const { lowest, highest } = circuit(v, side);
  const fits = fitting(v, side);
  if (lowest > highest) return `The ${side} window is closed: volume asks for ${say(lowest, 'length', 4)} or more, effort for ${say(highest, 'length', 4)} or less.`;
  const open = `The ${side} circuit takes bores from ${say(lowest, 'length', 4)} (volume) to ${say(highest, 'length', 4)} (effort)`;
  return fits.length === 0 ? `${open}: no standard bore lies between.` : `${open}: of the standard ones ${fits.join(', ')} in.`;
}

const areaBound = (side: 'f' | 'r') => (side === 'f' ? 'front' : 'rear');
const equationsOf = (s: 'f' | 'r') => {
  const side = areaBound(s);
  const first = s === 'f';
  return [
    { result: `${side}PressureAsked`, expression: `${first ? '(1 - rearShareTarget)' : 'rearShareTarget'} * brakingRate * (frontAxleLoad + rearAxleLoad) * g / ${side}BrakeGain + pushOutPressure`, words: first ? 'The front’s part of the stop, divided by what its brakes give per pressure.' : 'The rear’s part of the stop, likewise.', source: 'derived: Newton’s second law' },
    { result: `${side}VolumeAsked`, expression: `${side}TakeUp + ${side}Compliance * ${side}PressureAsked`, words: first ? 'What closes the gaps, and what the circuit swells at that pressure.' : 'The same for the rear.', source: 'derived: volume kept' },
    { result: `${side}ClevisForce`, expression: `${first ? 'frontShare' : '(1 - frontShare)'} * driverForce * pedalRatio * linkageEfficiency`, words: first ? 'The front rod’s part of all that the weakest driver can put on the bar.' : 'The rear rod has the rest.', source: 'derived: moments on the bar' },
    { result: `${side}BoreLow`, expression: `sqrt(4 * ${side}VolumeAsked / (pi * (strokePart * ${side}MasterStroke - portStroke)))`, words: first ? 'The smallest piston that moves this much fluid in the stroke it may use.' : 'The smallest rear piston with the volume.', source: 'derived: volume kept' },
    { result: `${side}BoreHigh`, expression: `sqrt(4 * (${side}ClevisForce - masterSpring) / (pi * ${side}PressureAsked))`, words: first ? 'The largest piston on which this push still makes the pressure.' : 'The largest rear piston the push can serve.', source: 'derived: balance of forces on the piston' },
  ] as const;
};

export default defineCalculator({
  id: 'bore-window',
  version: 1,
  title: 'Bore window of each circuit',
  purpose: 'The smallest bore that has the fluid and the largest that the driver can push, front and rear, with the standard bores between them.',
  inputs: [
    { title: 'The stop', of: ['brakingRate', 'rearShareTarget', 'driverForce'] },
    { title: 'Pedal and bar', of: ['pedalRatio', 'linkageEfficiency', 'frontShare'] },
    { title: 'Masters', of: ['frontMasterStroke', 'rearMasterStroke', 'strokePart', 'portStroke', 'masterSpring'] },
    { title: 'Fluid', of: ['frontTakeUp', 'rearTakeUp', 'frontCompliance', 'rearCompliance'] },
    { title: 'Brakes and truck', of: ['frontBrakeGain', 'rearBrakeGain', 'pushOutPressure', 'frontAxleLoad', 'rearAxleLoad'] },
  ],
  feeds: [barFeed, discFeed, swellFeed],
  outputs: ['frontBoreLow', 'frontBoreHigh', 'rearBoreLow', 'rearBoreHigh', 'frontPressureAsked', 'rearPressureAsked', 'frontVolumeAsked', 'rearVolumeAsked', 'frontClevisForce', 'rearClevisForce'],
  compute: (v) => {
    const [f, r] = [circuit(v, 'front'), circuit(v, 'rear')];
    for (const [side, { usableStroke, clevisForce }] of [['front', f], ['rear', r]] as const) {
      if (usableStroke <= v.portStroke) return { refused: (say) => `The ${side} master may use ${say(usableStroke, 'length')} of its stroke, and closing the port takes ${say(v.portStroke, 'length')}: ${say(v.portStroke - usableStroke, 'length')} too much. No bore makes pressure with nothing left.` };
      if (clevisForce <= v.masterSpring) return { refused: (say) => `The ${side} rod gets ${say(clevisForce, 'force')}, and its master’s spring takes ${say(v.masterSpring, 'force')}. Nothing is left to make pressure with, in any bore.` };
    }
    return {
      frontBoreLow: f.lowest, frontBoreHigh: f.highest, rearBoreLow: r.lowest, rearBoreHigh: r.highest, frontPressureAsked: f.pressure, rearPressureAsked: r.pressure,
      frontVolumeAsked: f.volume, rearVolumeAsked: r.volume, frontClevisForce: f.clevisForce, rearClevisForce: r.clevisForce,
    };
  },
  summary: (v, say) => `For ${say(v.brakingRate, 'brakingRate')} from ${say(v.driverForce, 'force')}: ${sides.map((side) => inWords(v, side, say)).join(' ')}`,
  equations: [...equationsOf('f'), ...equationsOf('r')],
  cautions: [
    {
      id: 'window-closed', level: 'danger', when: (v) => sides.some((side) => circuit(v, side).lowest > circuit(v, side).highest),
      words: (v, say) => `${sides.filter((side) => circuit(v, side).lowest > circuit(v, side).highest).map((side) => inWords(v, side, say)).join(' ')} Every bore is too small or too large, and one in between breaks both limits: the driver is out of force as the master is out of stroke.`,
      todo: 'Do not split the difference. Change the caliper, the brake pad, the stroke of the master, the share or the ratio, until the window opens.',
      fires: { driverForce: 100 * lbf }, silent: { frontShare: 0.66 },
    },
    {
      id: 'no-standard-bore', level: 'warning', when: (v) => sides.some((side) => !(circuit(v, side).lowest > circuit(v, side).highest) && fitting(v, side).length === 0),
      words: (v) => `The ${sides.filter((side) => !(circuit(v, side).lowest > circuit(v, side).highest) && fitting(v, side).length === 0).join(' and ')} window is open but holds no standard bore.`,
      todo: 'A little more share for that side, or a little more ratio, moves its upper end over the next bore.',
      fires: { driverForce: 111 * lbf }, silent: {},
    },
    {
      id: 'window-is-not-all', level: 'warning',
      words: 'A bore in its window has force and volume for one stop. The bar may still stand on its stop, the pedal on the carpet, and the rear may lock first.',
      todo: 'Take candidates from here to “Which bores, which ratio”, which asks the rest. Then push the finished pedal with one bleeder open.',
    },
  ],
  picture: {
    title: 'The windows, to one scale of bore, in inches',
    describe: (v, say) => `Two strips of bores from small to large, standard bores marked. ${sides.map((side) => inWords(v, side, say)).join(' ')}`,
    scene: (v, _at, say) => boreStripScene(sides.map((side) => {
      const { lowest: low, highest: high } = circuit(v, side);
      return { side, low, high, lowLabel: `volume: ${say(low, 'length', 4)} or more`, highLabel: `effort: ${say(high, 'length', 4)} or less` };
    })),
  },
  tables: [{
    caption: 'Each standard bore: what it lacks, or the foot force it asks',
    head: ['Bore, in', 'Front', 'Rear'],
    rows: (v, say) => standardBores.map(({ label, si }) => [label, verdict(v, 'front', si, say), verdict(v, 'rear', si, say)]),
  }],
  paper: {
    assumptions: ['The split of brake force is the one aimed for, so the pressure of each axle is known before a bore is.', 'One master per axle, and a bar that shares as set.', 'A circuit takes a fixed volume before pressure, then a volume in proportion to it.'],
    leftOut: ['Whether the two bores chosen and the share together give the split aimed for. Two windows are two conditions; the split is a third.', 'Pedal travel, tilt of the bar, lock order and failures.', 'A load in the bed, which asks for more pressure and more fluid.'],
    sources: [
      { of: 'both bounds', kind: 'derived', note: 'balance of forces on the piston, and volume kept; no published worked example was found' },
      { of: '80 % of the stroke to plan with, standard bores', kind: 'common practice' },
    ],
    examples: [{
      source: 'Reference truck worked by hand: 0.8 g at 500 N, share 0.62, both masters with 28 mm of stroke',
      inputs: {
        brakingRate: 0.8, rearShareTarget: 0.2403, driverForce: 500, pedalRatio: 6.2, linkageEfficiency: 0.85, frontShare: 0.62, masterSpring: 0, frontMasterStroke: 0.028, rearMasterStroke: 0.028, strokePart: 0.8, portStroke: 0.001,
        frontTakeUp: 1.874e-6, rearTakeUp: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, frontBrakeGain: 122.84 / bar, rearBrakeGain: 63.4 / bar, pushOutPressure: 0, frontAxleLoad: 777.2, rearAxleLoad: 562.8,
      },
      results: { frontPressureAsked: { value: 65.0 * bar, within: 0.001 }, frontBoreLow: { value: 0.0176, within: 0.003 }, frontBoreHigh: { value: 0.0179, within: 0.003 }, rearBoreHigh: { value: 0.7 * inch * Math.sqrt(500 / 494), within: 0.002 } },
    }],
    related: ['choosing-bores', 'bore-finder', 'line-pressure', 'braking-rate'],
  },
});
