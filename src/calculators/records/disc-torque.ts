import { bar, inch, lbf, mm, psi } from '../../units/si.ts';
import { axleForce, discFeed, frictionHopeful, padsDiffer, rearAsStrong } from '../helpers/disc-torque.ts';
import type { DiscInputs, Side } from '../helpers/disc-torque.ts';
import { defineCalculator } from '../record.ts';
import type { Equation, Say, ValuesOf } from '../record.ts';
import { discScene } from '../scenes/disc.ts';

function equations(side: Side): Equation[] {
  return [
    { result: `${side}ClampArea`, expression: `${side}Pistons * pi * ${side}PistonDiameter^2 / 4`, words: 'Count the pistons on one side of the rotor, floating or opposed. The other side only pushes back.', source: 'derived: free body of the caliper' },
    { result: `${side}EffectiveRadius`, expression: `(${side}TrackOuter + ${side}TrackInner) / 2`, words: 'A worn-in brake pad wears evenly, and then its friction acts at the middle of the track.', source: 'derived: wear goes as pressure times speed', when: (v) => v['padLaw'] === 'worn' },
    { result: `${side}EffectiveRadius`, expression: `2 * (${side}TrackOuter^2 + ${side}TrackOuter * ${side}TrackInner + ${side}TrackInner^2) / (3 * (${side}TrackOuter + ${side}TrackInner))`, words: 'A new brake pad presses evenly, so the wide outer rings count for more.', source: 'derived: integral over the pad', when: (v) => v['padLaw'] === 'uniform' },
    { result: `${side}ClampForce`, expression: `max(0, ${side}Pressure - pushOutPressure) * ${side}ClampArea * caliperEfficiency`, words: 'Pressure beyond what only moves the pistons, times area, less what the caliper eats.', source: 'derived: pressure times area' },
    { result: `${side}BrakeTorque`, expression: `2 * ${side}PadFriction * ${side}ClampForce * ${side}EffectiveRadius`, words: 'Two faces rub, each with friction times clamp, at the effective radius.', source: 'derived: friction on both faces of the rotor' },
    { result: `${side}BrakeGain`, expression: `4 * ${side}PadFriction * ${side}ClampArea * caliperEfficiency * ${side}EffectiveRadius / loadedRadius`, words: 'Force at the road for each unit of pressure: two faces, two wheels, and the tire as the other lever arm.', source: 'derived: torque over tire radius' },
  ];
}

const pistonWords = (v: ValuesOf<DiscInputs>, side: Side, say: Say): string => `${v[`${side}Pistons`]} × ${say(v[`${side}PistonDiameter`], 'length')}, ${v[`${side}CaliperType`] === 'opposed' ? 'both sides' : 'floating'}`;
const disc = (v: ValuesOf<DiscInputs | 'frontEffectiveRadius' | 'rearEffectiveRadius'>, side: Side, say: Say) => ({
  outer: v[`${side}TrackOuter`], inner: v[`${side}TrackInner`], effective: v[`${side}EffectiveRadius`], pistonDiameter: v[`${side}PistonDiameter`], pistons: v[`${side}Pistons`],
  labels: { track: `${say(v[`${side}TrackInner`], 'length')} to ${say(v[`${side}TrackOuter`], 'length')}`, effective: say(v[`${side}EffectiveRadius`], 'length'), pistons: pistonWords(v, side, say) },
});

export default defineCalculator({
  ...discFeed,
  version: 1,
  purpose: 'What calipers, brake pads and rotors of both axles make of line pressure, at the wheel and at the road.',
  summary: (v, say) => `The front axle brakes with ${say(v.frontBrakeGain, 'brakeGain')}, the rear with ${say(v.rearBrakeGain, 'brakeGain')}. At ${say(v.frontPressure, 'pressure')} and ${say(v.rearPressure, 'pressure')} that is ${say(v.frontBrakeTorque, 'torque')} on each front wheel and ${say(v.rearBrakeTorque, 'torque')} on each rear wheel.`,
  equations: [...equations('front'), ...equations('rear')],
  cautions: [
    {
      id: 'no-parking-brake', level: 'warning',
      words: 'A rear disc swap often leaves no parking brake. Trapped line pressure is not one: it leaks down as it cools, and the truck rolls.',
      todo: 'Choose calipers with a parking lever or rotors with a shoe inside before you buy, and hold the truck on your steepest hill both ways.',
    },
    {
      id: 'friction-is-a-range', level: 'warning',
      words: 'Brake pad friction is no fixed number. Cold and hot differ by 20 to 40 % (common practice, no source), and a new brake pad before bedding can have less than either.',
      todo: 'Run these numbers at 0.30, 0.38 and 0.45. Check the foot force at the low one and the lock order with the front low and the rear high.',
    },
    {
      id: 'friction-hopeful', level: 'warning', when: frictionHopeful,
      words: (v, say) => `${say(Math.max(v.frontPadFriction, v.rearPadFriction), 'friction')} is more than street brake pads hold through heat. When they lose it, the foot has to find what is missing.`,
      todo: 'Size the masters with 0.30 to 0.38 and take anything above as luck.',
      fires: { frontPadFriction: 0.5 }, silent: {},
    },
    {
      id: 'pads-differ', level: 'warning', when: padsDiffer,
      words: (v, say) => `The rear brake pads grip ${say(v.rearPadFriction - v.frontPadFriction, 'friction')} more than the front ones. That moves braking to the rear, where an empty pickup has no load.`,
      todo: 'Use the same compound on both axles, or the grippier one in front.',
      fires: { rearPadFriction: 0.45 }, silent: {},
    },
    {
      id: 'rear-as-strong', level: 'warning', when: rearAsStrong,
      words: (v, say) => `At equal pressure the rear axle brakes with ${say(v.rearBrakeGain / v.frontBrakeGain, 'share')} of the front’s force. In a hard stop an empty pickup’s rear tires can use about a third of what its front tires use (the demo truck at 0.8 g), and rear wheels that lock first turn it around.`,
      todo: 'Smaller rear pistons or a larger rear master. A balance bar alone cannot hide this.',
      fires: { rearPistonDiameter: 54 * mm }, silent: {},
    },
    {
      id: 'opposed-count', level: 'notice', when: (v) => v.frontCaliperType === 'opposed' || v.rearCaliperType === 'opposed',
      words: (v) => `An opposed caliper clamps with the pistons of one side: here ${v.frontCaliperType === 'opposed' ? `${v.frontPistons} of ${2 * v.frontPistons} in front` : ''}${v.frontCaliperType === 'opposed' && v.rearCaliperType === 'opposed' ? ' and ' : ''}${v.rearCaliperType === 'opposed' ? `${v.rearPistons} of ${2 * v.rearPistons} in the rear` : ''}. Counting both sides doubles the brake on paper only.`,
      todo: 'Enter one side. For fluid, all of them count.',
      fires: { frontCaliperType: 'opposed' }, silent: {},
    },
    {
      id: 'no-bite', level: 'caution', when: (v) => Math.min(v.frontPressure, v.rearPressure) <= v.pushOutPressure,
      words: (v, say) => `At ${say(Math.min(v.frontPressure, v.rearPressure), 'pressure')} an axle only moves its pistons: nothing clamps below ${say(v.pushOutPressure, 'pressure')}.`,
      todo: 'Type the pressure of a real stop, or look for a stuck slide if the threshold itself is high.',
      fires: { rearPressure: 2 * psi }, silent: {},
    },
  ],
  picture: {
    title: 'Rotors from the side, to one scale: brake pad, pistons of one side, effective radius',
    describe: (v, say) => (['front', 'rear'] as const).map((side) => `${side === 'front' ? 'Front' : 'Rear'}: the brake pad’s track runs from ${say(v[`${side}TrackInner`], 'length')} to ${say(v[`${side}TrackOuter`], 'length')} from the axle, its friction acts at ${say(v[`${side}EffectiveRadius`], 'length')}; pistons ${pistonWords(v, side, say)}.`).join(' '),
    scene: (v, _at, say) => discScene({ front: disc(v, 'front', say), rear: disc(v, 'rear', say) }),
  },
  charts: [{
    title: 'Brake force at the road against line pressure',
    x: { label: 'line pressure', dimension: 'pressure' },
    y: { label: 'axle brake force', dimension: 'force' },
    series: (v) => {
      const last = Math.max(1200 * psi, 1.15 * v.frontPressure, 1.15 * v.rearPressure);
      const line = (side: Side) => [0, Math.min(v.pushOutPressure, last), last].map((p) => [p, axleForce(v, side, p)] as const);
      return [{ label: 'front', tone: 'front', points: line('front') }, { label: 'rear', tone: 'rear', points: line('rear') }];
    },
    marks: (v) => [{ at: [v.frontPressure, axleForce(v, 'front', v.frontPressure)], label: 'you, front', tone: 'front' }, { at: [v.rearPressure, axleForce(v, 'rear', v.rearPressure)], label: 'you, rear', tone: 'rear' }],
    describe: (v, say) => `Both rise in a straight line from ${say(v.pushOutPressure, 'pressure')}. At your pressures the front axle brakes with ${say(axleForce(v, 'front', v.frontPressure), 'force')}, the rear with ${say(axleForce(v, 'rear', v.rearPressure), 'force')}.`,
  }],
  tables: [{
    caption: 'The same brakes with other pads',
    head: ['Brake pad friction', 'Front', 'Rear'],
    rows: (v) => [0.3, 0.34, 0.38, 0.42, 0.45].map((mu) => [
      { value: mu, dimension: 'friction' }, { value: (v.frontBrakeGain * mu) / v.frontPadFriction, dimension: 'brakeGain' }, { value: (v.rearBrakeGain * mu) / v.rearPadFriction, dimension: 'brakeGain' },
    ]),
  }],
  paper: {
    assumptions: ['One caliper per wheel, one piston size per axle.', 'Both rubbing faces have the same friction, at any pressure and speed.', 'The track is what the brake pad sweeps, not the rotor.', 'Front and rear tires stand equally high.'],
    leftOut: ['Fade, taper, knock-back and the warm-up of cold brake pads.', 'A rear valve: the pressure here is the one that reaches the caliper.', 'The inertia of the wheels and the drag of the driveline.'],
    sources: [
      { of: 'effective radius, worn in', kind: 'from memory', id: 'shigley', note: 'uniform wear, chapter 16' },
      { of: 'effective radius, uniform pressure', kind: 'published', id: 'bhandari' },
      { of: 'clamp from the pistons of one side', kind: 'derived', note: 'free body of floating and of opposed caliper' },
      { of: 'pad friction 0.30 hot, 0.38 nominal; caliper efficiency; push-out', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: 54.0 mm at 108 mm and 38.1 mm at 112 mm, friction 0.38, tire 300 mm',
        inputs: { frontPistonDiameter: 54 * mm, frontPistons: 1, rearPistonDiameter: 38.1 * mm, rearPistons: 1, frontPadFriction: 0.38, rearPadFriction: 0.38, frontTrackOuter: 130 * mm, frontTrackInner: 86 * mm, rearTrackOuter: 133 * mm, rearTrackInner: 91 * mm, padLaw: 'worn', caliperEfficiency: 0.98, loadedRadius: 0.3 },
        results: { frontBrakeGain: { value: 122.8 / bar, within: 0.0005 }, rearBrakeGain: { value: 63.4 / bar, within: 0.0005 }, frontEffectiveRadius: { value: 0.108, within: 1e-9 } },
      },
      {
        source: 'Shigley, example 16-3 (from memory): 13,000 lbf·in on two pads, one 1.5 in cylinder at 2,121 psi',
        inputs: { frontPistonDiameter: 1.5 * inch, frontPistons: 1, frontPadFriction: 0.37, frontTrackOuter: 5.5 * inch, frontTrackInner: 3.875 * inch, padLaw: 'worn', caliperEfficiency: 1, pushOutPressure: 0, frontPressure: 2121 * psi },
        results: { frontClampForce: { value: 3748 * lbf, within: 0.001 }, frontBrakeTorque: { value: 13000 * lbf * inch, within: 0.001 } },
      },
      {
        source: 'Bhandari, example 12.12 (worked-solution companion): 150 and 100 mm, uniform pressure',
        inputs: { frontTrackOuter: 150 * mm, frontTrackInner: 100 * mm, padLaw: 'uniform' },
        results: { frontEffectiveRadius: { value: 126.667 * mm, within: 1e-5 } },
      },
    ],
    related: ['manual-or-boosted', 'rear-discs', 'bias', 'line-pressure', 'braking-rate', 'parking-brake'],
  },
});
