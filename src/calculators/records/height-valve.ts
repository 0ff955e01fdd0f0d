import { kneeAfterDrop, kneeAtHeight } from '../../engine/loadSensingValve.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { valveOutlet } from '../../engine/valve.ts';
import { bar, inch, mm, psi } from '../../units/si.ts';
import { pressureFeed } from '../helpers/line-pressure.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { heightValveScene } from '../scenes/height-valve.ts';

type V = ValuesOf<'linkHeight' | 'bodyDrop' | 'suspensionDropRear' | 'valveEmptyHeight' | 'valveLadenHeight' | 'valveEmptyKnee' | 'valveLadenKnee' | 'valveSlope' | 'rearPressure'>;

const setting = (v: V) => ({ emptyHeight: v.valveEmptyHeight, ladenHeight: v.valveLadenHeight, emptyKnee: v.valveEmptyKnee, ladenKnee: v.valveLadenKnee });

/** The cab's length and the wheelbase do not matter to the link: any will do. */
const moved = (v: V, suspension = v.suspensionDropRear) => kneeAfterDrop({
  ...setting(v), height: v.linkHeight, type: 'channeled', dropFront: v.bodyDrop, dropRear: v.bodyDrop, xFront: -0.5, xRear: -2, suspensionFront: suspension, suspensionRear: suspension, xFrontAxle: 0, xRearAxle: -2.7,
});

const outlet = (v: V, knee: number): number => valveOutlet({ inlet: v.rearPressure, knee, slope: v.valveSlope }).outlet;

function words({ impossible, by = 0 }: Impossible): Refusal {
  return {
    refused: (say) => ({
      'laden-height-above-empty': by < 1e-6 ? 'The empty and the loaded height of the setting are the same: no load can be read from that.' : `The loaded height of the setting stands ${say(by, 'length')} above the empty one. A load pushes the frame down: swap the two.`,
      'laden-knee-below-empty': `The loaded knee lies ${say(by, 'pressure')} below the empty one. A valve of this kind gives a loaded rear axle more: swap the two.`,
      'frame-on-axle': `The suspension drop takes ${say(by, 'length')} more than there is between frame and axle: they would meet first. Check both.`,
    })[impossible] ?? 'These heights do not go together.',
  };
}

export default defineCalculator({
  id: 'height-valve',
  version: 1,
  title: 'Height-sensing rear valve after a drop',
  purpose: 'What a rear valve that reads the load from the ride height makes of a lowered truck.',
  inputs: [
    { title: 'The work', of: ['linkHeight', 'suspensionDropRear', 'bodyDrop'] },
    { title: 'How the valve was set', of: ['valveEmptyHeight', 'valveEmptyKnee', 'valveLadenHeight', 'valveLadenKnee'] },
    { title: 'Pressure', of: ['rearPressure', 'valveSlope'] },
  ],
  feeds: [pressureFeed],
  outputs: ['kneeAfterDrop', 'kneeBeforeDrop', 'kneeRise', 'valveOutletAfter', 'valveOutletBefore', 'believedAfter', 'believedBefore', 'linkHeightAfter', 'linkCorrection'],
  compute: (v) => {
    const r = moved(v);
    if (isImpossible(r)) return words(r);
    return {
      kneeAfterDrop: r.after.knee, kneeBeforeDrop: r.before.knee, kneeRise: r.kneeRise, valveOutletAfter: outlet(v, r.after.knee), valveOutletBefore: outlet(v, r.before.knee),
      believedAfter: r.after.believedLoad, believedBefore: r.before.believedLoad, linkHeightAfter: r.heightAfter, linkCorrection: r.linkCorrection,
    };
  },
  summary: (v, say) => `The knee goes from ${say(v.kneeBeforeDrop, 'pressure')} to ${say(v.kneeAfterDrop, 'pressure')} with the bed as it was: the valve now believes in ${v.believedAfter < 0 ? 'less than an empty bed' : `${say(v.believedAfter, 'share')} of its full load${v.believedAfter > 1 ? ', more than it was ever set for' : ''}`}. At ${say(v.rearPressure, 'pressure')} from the master it lets ${say(v.valveOutletAfter, 'pressure')} through; before, ${say(v.valveOutletBefore, 'pressure')}. The body drop of ${say(v.bodyDrop, 'length')} has no part in it.`,
  equations: [
    { result: 'linkHeightAfter', expression: 'linkHeight - suspensionDropRear', words: 'The link stands between frame and axle. The suspension moves these two; the body moves neither, so its drop is not in this line.', source: 'derived: who rides with what' },
    { result: 'believedBefore', expression: '(valveEmptyHeight - linkHeight) / (valveEmptyHeight - valveLadenHeight)', words: 'The valve takes a low frame for a full bed.', source: 'derived: straight line between the two settings' },
    { result: 'believedAfter', expression: '(valveEmptyHeight - linkHeightAfter) / (valveEmptyHeight - valveLadenHeight)', words: 'The same at the new height.', source: 'derived: straight line between the two settings' },
    { result: 'kneeBeforeDrop', expression: 'valveEmptyKnee + (valveLadenKnee - valveEmptyKnee) * min(1, max(0, believedBefore))', words: 'Knee from belief, held at the ends, past which nobody has measured.', source: 'derived' },
    { result: 'kneeAfterDrop', expression: 'valveEmptyKnee + (valveLadenKnee - valveEmptyKnee) * min(1, max(0, believedAfter))', words: 'The same after the work.', source: 'derived' },
    { result: 'kneeRise', expression: 'kneeAfterDrop - kneeBeforeDrop', words: 'What the drop alone did.', source: 'derived' },
    { result: 'valveOutletBefore', expression: 'min(rearPressure, kneeBeforeDrop + valveSlope * (rearPressure - kneeBeforeDrop))', words: 'Below the knee all of it, above only a part.', source: 'derived: balance of the stepped piston' },
    { result: 'valveOutletAfter', expression: 'min(rearPressure, kneeAfterDrop + valveSlope * (rearPressure - kneeAfterDrop))', words: 'The same after the work.', source: 'derived: balance of the stepped piston' },
    { result: 'linkCorrection', expression: 'linkHeight - linkHeightAfter', words: 'A link that stands up from the axle has to be shorter by what the frame came down.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'reads-a-load', level: 'danger', when: (v) => v.kneeRise > 10 * psi,
      words: (v, say) => `The knee is ${say(v.kneeRise, 'pressure')} higher with the bed no fuller. The empty truck’s rear brakes get the pressure of a loaded truck: the rear wheels lock first, and an empty pickup turns around.`,
      todo: 'Do not drive it like this: the stop that locks the rear is the one nobody plans. Shorten a link that stands on the axle (lengthen one that hangs from it) and prove the knee with gauges on both sides of the valve, or take valve and fittings out whole and set an adjustable one. Then the lock order.',
      fires: {}, silent: { suspensionDropRear: 0 },
    },
    {
      id: 'knee-falls', level: 'caution', when: (v) => v.kneeRise < -10 * psi,
      words: (v, say) => `The knee is ${say(-v.kneeRise, 'pressure')} lower with the bed as full: the frame stands higher over the axle, and the valve takes that for an emptier bed. The rears get less than the load on them could use. The stop gets longer for the same push, the fronts do that work and get its heat, and they slide sooner.`,
      todo: 'Lengthen a link that stands on the axle (shorten one that hangs from it) by as much as the frame went up, prove the knee with gauges on both sides of the valve, then the lock order, empty and loaded.',
      fires: { linkHeight: 7 * inch, suspensionDropRear: -1 * inch }, silent: {},
    },
    {
      id: 'beyond-the-setting', level: 'warning', when: (v) => v.believedAfter > 1,
      words: (v, say) => `The frame stands ${say(v.valveLadenHeight - v.linkHeightAfter, 'length')} below the valve’s loaded setting. The knee shown is that setting’s; past it a real valve may be wide open.`,
      todo: 'Count on no valve at all in the lock order.',
      fires: { suspensionDropRear: 4 * inch }, silent: {},
    },
    {
      id: 'above-the-setting', level: 'caution', when: (v) => v.believedAfter < -0.02,
      words: (v, say) => `The frame stands ${say(v.linkHeightAfter - v.valveEmptyHeight, 'length')} above the valve’s empty setting. The knee stays at its lowest even with some load in the bed, so the rear does less than it could, and the link may be at the end of its travel.`,
      todo: 'Check that the lever is not pulled against its stop at full droop.',
      fires: { suspensionDropRear: -1 * inch }, silent: {},
    },
    {
      id: 'air-springs', level: 'warning',
      words: 'Air springs hold the ride height whatever the bed carries. This valve then knows no load at all, only how much air you let in: it gives an empty truck and a full one the same knee, and aired low it gives both the highest.',
      todo: 'With air springs, take the valve out and set a fixed knee for the empty truck.',
    },
    {
      id: 'unhooked', level: 'warning',
      words: 'A valve with its link unhooked does not step aside. Its spring leaves it at one end: some stay at the lowest knee, some go wide open.',
      todo: 'Gauges before and after it tell. If you cannot test it, replace it whole.',
    },
    {
      id: 'residual', level: 'warning',
      words: 'Drum circuits often have a residual valve of about 10 psi (0.7 bar) to keep the wheel cylinders’ cups tight; a disc circuit bears at most 2 psi (0.14 bar), and only where the reservoir stands below the calipers (common practice, no source). Left in a disc line, 10 psi drags the brake pads until the fluid boils.',
      todo: 'Crack a bleeder a second after release: more than 5 psi (0.3 bar) is a valve or a closed port still in the line.',
    },
    {
      id: 'anti-lock-parts', level: 'warning',
      words: 'Rear-only anti-lock has its own valve in this line. Half removed it bleeds pressure off inside, and the lamp that would say so is dark.',
      todo: 'Keep it whole or take it out whole, and ask your inspector which of the two he passes.',
    },
  ],
  picture: {
    title: 'Frame, link and axle; front on the left; heights to scale',
    describe: (v, say, at) => `${['Before the work', 'Body drop alone: the body is lower over the frame, the link has not moved', 'Suspension lowered as well: the frame has come down to the axle, the link stands where it was and turns the lever up'][at]}. Frame to axle ${say(at === 2 ? v.linkHeightAfter : v.linkHeight, 'length')}, knee ${say(at === 2 ? v.kneeAfterDrop : v.kneeBeforeDrop, 'pressure')}.`,
    states: { label: 'The truck', names: ['before', 'body dropped', 'suspension lowered too'], start: 2 },
    scene: (v, at, say) => heightValveScene({
      height: at === 2 ? v.linkHeightAfter : v.linkHeight, levelHeight: v.valveEmptyHeight, bodyDown: at === 0 ? 0 : v.bodyDrop,
      labels: { height: say(at === 2 ? v.linkHeightAfter : v.linkHeight, 'length'), knee: `knee ${say(at === 2 ? v.kneeAfterDrop : v.kneeBeforeDrop, 'pressure')}` },
    }),
  },
  charts: [{
    title: 'Knee against the height of the frame over the axle',
    x: { label: 'suspension drop at the rear', dimension: 'length' },
    y: { label: 'knee pressure', dimension: 'pressure' },
    series: (v) => {
      const last = Math.min(v.linkHeight * 0.95, Math.max(5 * inch, 1.2 * v.suspensionDropRear, 1.3 * (v.linkHeight - v.valveLadenHeight)));
      const corners = [v.linkHeight - v.valveEmptyHeight, v.linkHeight - v.valveLadenHeight].filter((s) => s > 0 && s < last);
      return [{ label: 'knee, bed as before', tone: 'rear', points: [0, ...corners, last].map((s) => { const k = kneeAtHeight({ ...setting(v), height: v.linkHeight - s }); return [s, isImpossible(k) ? NaN : k.knee] as const; }) }];
    },
    marks: (v) => (v.suspensionDropRear < 0 ? [] : [{ at: [v.suspensionDropRear, v.kneeAfterDrop], label: 'yours', tone: 'alert' }]),
    describe: (v, say) => `The knee rises with every bit of suspension drop, from ${say(v.kneeBeforeDrop, 'pressure')} without any to ${say(v.valveLadenKnee, 'pressure')} at the loaded setting, where this reckoning ends and the real valve may go on.`,
  }],
  tables: [{
    caption: 'What each inch of suspension does',
    head: ['Drop', 'Knee', 'Believed load', 'To the brakes'],
    rows: (v, say) => [0, 1, 2, 3, 4].map((n) => {
      const r = moved(v, n * inch);
      return isImpossible(r) ? [say(n * inch, 'length'), 'frame on axle', '–', '–'] : [{ value: n * inch, dimension: 'length' }, { value: r.after.knee, dimension: 'pressure' }, { value: r.after.believedLoad, dimension: 'share' }, { value: outlet(v, r.after.knee), dimension: 'pressure' }];
    }),
  }],
  paper: {
    assumptions: ['The valve is on the frame and its link on the axle, as usual: look at yours. The bed is as full after the work as before.', 'The knee follows the height in a straight line between two settings and is held outside them.', 'The slope above the knee is the same at every height.'],
    leftOut: ['The arc of the lever, hysteresis, wear of the link’s ends.', 'Axle wrap and roll, which move the link in every stop and bend.', 'Valves that sense the pressure in an air spring: they do know the load.'],
    sources: [
      { of: 'what moves the link', kind: 'derived', note: 'the same rigid motion as the body drop calculator' },
      { of: 'knee and slope of such valves', kind: 'from memory' },
      { of: 'residual valves of 10 and 2 psi', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand: set at 0.22 m and 20 bar, 0.16 m and 60 bar; 30 mm off the suspension of the empty truck, 3 in off the body: 40 bar',
        inputs: { linkHeight: 0.22, valveEmptyHeight: 0.22, valveLadenHeight: 0.16, valveEmptyKnee: 20 * bar, valveLadenKnee: 60 * bar, suspensionDropRear: 30 * mm, bodyDrop: 3 * inch },
        results: { kneeAfterDrop: { value: 40 * bar, within: 1e-9 }, kneeBeforeDrop: { value: 20 * bar, within: 1e-9 }, believedAfter: { value: 0.5, within: 1e-9 } },
      },
      {
        source: 'The same valve, 5 in off the suspension: it believes in 2.1 times its load, knee at its top of 60 bar',
        inputs: { linkHeight: 0.22, valveEmptyHeight: 0.22, valveLadenHeight: 0.16, valveEmptyKnee: 20 * bar, valveLadenKnee: 60 * bar, suspensionDropRear: 5 * inch },
        results: { kneeAfterDrop: { value: 60 * bar, within: 1e-9 }, believedAfter: { value: 2.117, within: 0.001 }, linkCorrection: { value: 127 * mm, within: 1e-9 } },
      },
    ],
    related: ['rear-discs', 'rear-valve', 'lock-order', 'body-drop'],
  },
});
