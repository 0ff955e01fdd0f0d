import { discToMatch } from '../../engine/discToMatch.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { bar, mm, psi } from '../../units/si.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { drumFeed } from '../helpers/drum-torque.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';
import { pistonScene } from '../scenes/pistons.ts';

type Inputs = 'drumGain' | 'drumPushOut' | 'matchPressure' | 'rearPistonDiameter' | 'rearPistons' | 'rearPadFriction' | 'rearEffectiveRadius' | 'caliperEfficiency' | 'pushOutPressure' | 'loadedRadius' | 'wheelCylinderDiameter' | 'shoeTravel' | 'padGap' | 'rearMasterBore';
type V = ValuesOf<Inputs>;

const drumAt = (v: V, pressure: number): number => v.drumGain * Math.max(0, pressure - v.drumPushOut);
const discAt = (v: V, area: number, pressure: number): number => (4 * v.rearPadFriction * area * v.caliperEfficiency * v.rearEffectiveRadius * Math.max(0, pressure - v.pushOutPressure)) / v.loadedRadius;

export default defineCalculator({
  id: 'disc-to-match',
  version: 1,
  title: 'A rear disc to equal the drum',
  purpose: 'Which caliper piston and rotor give the rear axle the force the drums gave, and what your caliper gives instead.',
  inputs: [
    { title: 'Old drums', of: ['drumGain', 'drumPushOut', 'matchPressure'] },
    { title: 'Your rear discs', of: ['rearPistonDiameter', 'rearPistons', 'rearPadFriction', 'rearEffectiveRadius', 'caliperEfficiency', 'pushOutPressure', 'loadedRadius'] },
    { title: 'Fluid', of: ['wheelCylinderDiameter', 'shoeTravel', 'padGap', 'rearMasterBore'] },
  ],
  feeds: [drumFeed, discFeed],
  outputs: ['matchPistonDiameter', 'discOverDrum', 'matchClampArea', 'matchRadius', 'drumMatchForce', 'discMatchForce', 'rearClampArea', 'drumVolume', 'discVolume', 'volumeOverDrum', 'strokeChange'],
  compute: (v) => {
    if (v.matchPressure <= v.drumPushOut) return { refused: (say) => `At ${say(v.matchPressure, 'pressure')} the shoe springs still hold the drums off, by ${say(v.drumPushOut - v.matchPressure, 'pressure')}: there is nothing to match. Type the rear line pressure of a hard stop.` };
    const force = drumAt(v, v.matchPressure);
    const r = discToMatch({
      axleForce: force, pressure: v.matchPressure, loadedRadius: v.loadedRadius, friction: v.rearPadFriction, effectiveRadius: v.rearEffectiveRadius, efficiency: v.caliperEfficiency, pushOut: v.pushOutPressure,
      pistonsPerSide: v.rearPistons, padGap: v.padGap, cylinderDiameter: v.wheelCylinderDiameter, shoeTravel: v.shoeTravel,
    });
    if (isImpossible(r)) return { refused: (say) => `At ${say(v.matchPressure, 'pressure')} the disc only moves its pistons: it needs ${say(r.by ?? 0, 'pressure')} more before it clamps.` };
    const area = (v.rearPistons * Math.PI * v.rearPistonDiameter ** 2) / 4;
    const discVolume = 2 * area * v.padGap;
    return {
      matchPistonDiameter: r.pistonDiameter, discOverDrum: area / r.clampArea, matchClampArea: r.clampArea, matchRadius: (v.rearEffectiveRadius * r.clampArea) / area, drumMatchForce: force, discMatchForce: discAt(v, area, v.matchPressure), rearClampArea: area,
      drumVolume: r.drumVolume, discVolume, volumeOverDrum: discVolume / r.drumVolume, strokeChange: (2 * (discVolume - r.drumVolume)) / ((Math.PI * v.rearMasterBore ** 2) / 4),
    };
  },
  summary: (v, say) => `At ${say(v.matchPressure, 'pressure')} the drums brake the axle with ${say(v.drumMatchForce, 'force')}. ${v.rearPistons === 1 ? 'One piston' : `${v.rearPistons} pistons a side`} of ${say(v.matchPistonDiameter, 'length')} would equal that; your ${v.rearPistons === 1 ? 'piston' : 'pistons'} of ${say(v.rearPistonDiameter, 'length')} ${v.rearPistons === 1 ? 'gives' : 'give'} ${say(v.discMatchForce, 'force')}, ${say(v.discOverDrum, 'share')} of it.`,
  equations: [
    { result: 'drumMatchForce', expression: 'drumGain * (matchPressure - drumPushOut)', words: 'What the drums do with this pressure, springs taken off.', source: 'derived' },
    { result: 'matchClampArea', expression: 'drumMatchForce * loadedRadius / (4 * rearPadFriction * caliperEfficiency * rearEffectiveRadius * (matchPressure - pushOutPressure))', words: 'The disc’s own formula turned around: the piston area of one side that makes the same force.', source: 'derived: torque of both wheels over tire radius' },
    { result: 'matchPistonDiameter', expression: 'sqrt(4 * matchClampArea / (pi * rearPistons))', words: 'The area shared by the pistons of one side.', source: 'derived' },
    { result: 'rearClampArea', expression: 'rearPistons * pi * rearPistonDiameter^2 / 4', words: 'Your own, one side.', source: 'derived' },
    { result: 'discOverDrum', expression: 'rearClampArea / matchClampArea', words: 'At this pressure force goes as area.', source: 'derived' },
    { result: 'discMatchForce', expression: 'drumMatchForce * discOverDrum', words: 'So your discs brake with this.', source: 'derived' },
    { result: 'matchRadius', expression: 'rearEffectiveRadius * matchClampArea / rearClampArea', words: 'Or keep the caliper and look for the rotor: area and radius trade one for one.', source: 'derived' },
    { result: 'drumVolume', expression: '2 * pi * wheelCylinderDiameter^2 / 4 * shoeTravel', words: 'Two pistons in each wheel cylinder.', source: 'derived' },
    { result: 'discVolume', expression: '2 * rearClampArea * padGap', words: 'Two pads, whether a sliding housing or far pistons close the second gap.', source: 'derived' },
    { result: 'volumeOverDrum', expression: 'discVolume / drumVolume', words: 'Take-up against take-up.', source: 'derived' },
    { result: 'strokeChange', expression: '2 * (discVolume - drumVolume) / (pi * rearMasterBore^2 / 4)', words: 'Both wheels, over the master’s area.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'parking-gate', level: 'danger',
      words: 'Take the drums off and the parking brake goes with them. Many rear disc kits bring none, and a valve that traps line pressure is no parking brake: it leaks down as the fluid cools, and the truck rolls.',
      todo: 'Before you pay: find the lever on the caliper or the shoes in the hat, and the cable that fits it. No parking brake, no purchase.',
    },
    {
      id: 'rear-stronger', level: 'warning', when: (v) => v.discOverDrum > 1.1,
      words: (v, say) => `At ${say(v.matchPressure, 'pressure')} these discs brake the rear with ${say(v.discOverDrum, 'share')} of the old force. With the front as it was, the rear wheels of the empty truck lock earlier than they did, and an empty pickup that locks its rears turns around.`,
      todo: 'A smaller piston, or more bore on the rear master. Then the lock order, empty, on every grip.',
      fires: {}, silent: { rearPistonDiameter: 30 * mm },
    },
    {
      id: 'rear-weaker', level: 'caution', when: (v) => v.discOverDrum < 0.9,
      words: (v, say) => `These discs give only ${say(v.discOverDrum, 'share')} of the drums’ force. The fronts must do more, get hotter and lock sooner; the loaded truck stops longer.`,
      todo: 'A larger piston or rotor, if the ideal split asks for it.',
      fires: { rearPistonDiameter: 25 * mm }, silent: { rearPistonDiameter: 31 * mm },
    },
    {
      id: 'old-is-no-target', level: 'notice',
      words: 'The drums were chosen for another truck: its weight, its height, its valve. Equal to them is a starting point you have driven, not the right answer.',
      todo: 'Take the rear share from the ideal distribution of the truck as it will be.',
    },
    {
      id: 'valves-of-the-drums', level: 'warning',
      words: 'The old rear line has parts made for drums: a check valve that keeps about 10 psi (0.7 bar) on the wheel cylinders, often hidden in the master’s port, and a proportioning or height valve with its knee. Discs drag on the first and heat until the fluid boils; the second was set for another brake.',
      todo: 'Take both out, or know their numbers. Discs need at most a 2 psi valve, and only if the reservoir stands below the calipers (common practice, no source).',
    },
    {
      id: 'pedal-longer', level: 'caution', when: (v) => v.strokeChange > 1 * mm,
      words: (v, say) => `Your calipers take up more fluid than the drums: ${say(v.strokeChange, 'length')} more of the rear master’s stroke before anything bites, times the pedal ratio at the pad. Hoses, calipers and brake pads swell on top of it.`,
      todo: 'Look at pedal travel and at the failed circuit again with the new take-up.',
      fires: { rearPistonDiameter: 54 * mm, padGap: 0.3 * mm }, silent: {},
    },
    {
      id: 'knock-back', level: 'caution',
      words: 'A drum does not mind an axle shaft that floats sideways. A rotor on it pushes the pads back in every corner, and the next pedal is long.',
      todo: 'Dial gauge on the flange: end float under 0.012 in (0.3 mm), rotor run-out under 0.004 in (0.1 mm) (common practice, no source).',
    },
  ],
  picture: {
    title: 'Pistons of one side, to one scale',
    describe: (v, say) => `The old wheel cylinder of ${say(v.wheelCylinderDiameter, 'length')}; ${v.rearPistons === 1 ? 'the caliper piston' : `the ${v.rearPistons} caliper pistons`} of ${say(v.matchPistonDiameter, 'length')} that would equal the drum; yours of ${say(v.rearPistonDiameter, 'length')}.`,
    scene: (v, _at, say) => pistonScene([
      { name: 'wheel cylinder', size: say(v.wheelCylinderDiameter, 'length'), diameter: v.wheelCylinderDiameter, count: 1, tone: 'frame' },
      { name: 'equal to the drum', size: say(v.matchPistonDiameter, 'length'), diameter: v.matchPistonDiameter, count: v.rearPistons, tone: 'accent' },
      { name: 'yours', size: say(v.rearPistonDiameter, 'length'), diameter: v.rearPistonDiameter, count: v.rearPistons, tone: 'rear' },
    ]),
  },
  charts: [{
    title: 'Axle brake force against rear line pressure',
    x: { label: 'rear line pressure', dimension: 'pressure' },
    y: { label: 'axle brake force', dimension: 'force' },
    series: (v) => {
      const last = 1.6 * v.matchPressure;
      const at = (start: number, force: (p: number) => number) => [0, Math.min(start, last), last].map((p) => [p, force(p)] as const);
      return [
        { label: 'drums', tone: 'frame', points: at(v.drumPushOut, (p) => drumAt(v, p)) },
        { label: 'disc that equals them', tone: 'ghost', points: at(v.pushOutPressure, (p) => discAt(v, v.matchClampArea, p)) },
        { label: 'your discs', tone: 'rear', points: at(v.pushOutPressure, (p) => discAt(v, v.rearClampArea, p)) },
      ];
    },
    marks: (v) => [{ at: [v.matchPressure, v.drumMatchForce], label: 'match', tone: 'plain' }, { at: [v.matchPressure, v.discMatchForce], label: 'yours', tone: 'rear' }],
    describe: (v, say) => `The drums do nothing up to ${say(v.drumPushOut, 'pressure')}, then rise to ${say(v.drumMatchForce, 'force')} at ${say(v.matchPressure, 'pressure')}. The disc that equals them there begins at ${say(v.pushOutPressure, 'pressure')}, ${v.pushOutPressure < v.drumPushOut ? 'so it brakes more in gentle stops and less in harder ones' : v.pushOutPressure > v.drumPushOut ? 'so it brakes less in gentle stops and more in harder ones' : 'as they do, and goes with them at every pressure'}. Yours makes ${say(v.discMatchForce, 'force')} there.`,
  }],
  tables: [{
    caption: 'At other pressures',
    head: ['Rear pressure', 'Drums', 'Your discs', 'Disc / drum'],
    rows: (v) => [100, 200, 300, 450, 600, 800].map((p) => {
      const [drum, disc] = [drumAt(v, p * psi), discAt(v, v.rearClampArea, p * psi)];
      return [{ value: p * psi, dimension: 'pressure' }, { value: drum, dimension: 'force' }, { value: disc, dimension: 'force' }, drum > 0 ? { value: disc / drum, dimension: 'share' } : 'no drum yet'];
    }),
  }],
  paper: {
    assumptions: ['The same tire before and after. With another tire compare torque at the wheel: type the same radius in both.', 'The disc reaches the same line pressure as the drum did. If the master’s bore or the bar changes too, that pressure changes.', 'Drums adjusted, pads bedded. Friction as typed on both; a drum moves more with it than a disc.'],
    leftOut: ['What swells under pressure: hoses, calipers and brake pads take their own fluid on top of the take-up.', 'The old valve between master and drums: type the pressure that reached the drums.', 'Heat.'],
    sources: [
      { of: 'the match and both volumes', kind: 'derived', note: 'torque of disc and drum set equal at one pressure' },
      { of: 'gap at the brake pads, travel of the wheel cylinder pistons, end float, run-out', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand: a drum axle of 1,304 N at 40 bar, tire 300 mm, friction 0.38, 112 mm, efficiency 0.98, no push-out on the disc: one piston of 27.3 mm',
        inputs: { drumGain: 1304 / (35 * bar), drumPushOut: 5 * bar, matchPressure: 40 * bar, loadedRadius: 0.3, rearPadFriction: 0.38, rearEffectiveRadius: 0.112, caliperEfficiency: 0.98, pushOutPressure: 0, rearPistons: 1 },
        results: { matchPistonDiameter: { value: 27.3 * mm, within: 0.002 }, drumMatchForce: { value: 1304, within: 1e-9 } },
      },
      {
        source: 'Reference truck worked by hand: a 38.1 mm piston at 112 mm has 63.4 N/bar, against a drum of 37.3 N/bar without springs: 170 %',
        inputs: { drumGain: 37.3 / bar, drumPushOut: 0, pushOutPressure: 0, loadedRadius: 0.3, rearPadFriction: 0.38, rearEffectiveRadius: 0.112, caliperEfficiency: 0.98, rearPistons: 1, rearPistonDiameter: 38.1 * mm },
        results: { discOverDrum: { value: 1.7, within: 0.002 } },
      },
    ],
    related: ['rear-discs', 'drum-torque', 'disc-torque', 'ideal-distribution', 'parking-brake'],
  },
});
