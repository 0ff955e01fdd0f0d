import { inch, mm } from '../../units/si.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { defineCalculator } from '../record.ts';
import { pedalSpacingScene } from '../scenes/pedal-spacing.ts';

/** Common practice, no source. */
const least = { throttleBrake: 50 * mm, brakeClutch: 60 * mm, side: 40 * mm };

export default defineCalculator({
  id: 'pedal-spacing',
  version: 1,
  title: 'Room between the pedals',
  purpose: 'The free space between throttle, brake, clutch and side for the boots you drive in, and where the brake stands against the throttle when it counts.',
  inputs: [
    { title: 'Centers', of: ['throttleToBrake', 'brakeToClutch', 'clutchToSide'] },
    { title: 'Widths', of: ['throttleWidth', 'brakeWidth', 'clutchWidth', 'bootWidth'] },
    { title: 'Depth', of: ['brakeOverThrottle', 'padTravelNormal', 'failedPadTravel'] },
  ],
  feeds: [brakingFeed],
  outputs: ['gapThrottleBrake', 'gapBrakeClutch', 'gapClutchSide', 'bootOverlap', 'brakeOverHard', 'brakeOverFailed'],
  compute: (v) => {
    const gaps = { gapThrottleBrake: v.throttleToBrake - (v.throttleWidth + v.brakeWidth) / 2, gapBrakeClutch: v.brakeToClutch - (v.brakeWidth + v.clutchWidth) / 2, gapClutchSide: v.clutchToSide - v.clutchWidth / 2 };
    const overlapped = ([['throttle and brake pads', gaps.gapThrottleBrake], ['brake and clutch pads', gaps.gapBrakeClutch], ['clutch pad and side trim', gaps.gapClutchSide]] as const).find(([, gap]) => gap < 0);
    if (overlapped) return { refused: (say) => `The ${overlapped[0]} would overlap by ${say(-overlapped[1], 'length')}. They cannot both be there: check the centers and widths.` };
    return { ...gaps, bootOverlap: Math.max(0, v.bootWidth / 2 - v.brakeWidth / 2 - gaps.gapThrottleBrake), brakeOverHard: v.brakeOverThrottle - v.padTravelNormal, brakeOverFailed: v.brakeOverThrottle - v.failedPadTravel };
  },
  summary: (v, say) => `Between throttle and brake ${say(v.gapThrottleBrake, 'length')} is free, between brake and clutch ${say(v.gapBrakeClutch, 'length')}, beside the clutch ${say(v.gapClutchSide, 'length')}. In a hard stop the brake pad is ${say(Math.abs(v.brakeOverHard), 'length')} ${v.brakeOverHard < 0 ? 'lower' : 'higher'} than the throttle at rest${v.brakeOverHard < 0 ? ': a boot that hangs over the edge meets the throttle' : ''}.`,
  equations: [
    { result: 'gapThrottleBrake', expression: 'throttleToBrake - (throttleWidth + brakeWidth) / 2', words: 'Center to center, less half of each pad.', source: 'derived' },
    { result: 'gapBrakeClutch', expression: 'brakeToClutch - (brakeWidth + clutchWidth) / 2', words: 'The same on the other side.', source: 'derived' },
    { result: 'gapClutchSide', expression: 'clutchToSide - clutchWidth / 2', words: 'What is left for a boot beside the clutch.', source: 'derived' },
    { result: 'bootOverlap', expression: 'max(0, bootWidth / 2 - brakeWidth / 2 - gapThrottleBrake)', words: 'Half a boot, less half the brake pad and the free space, lies on the throttle.', source: 'derived' },
    { result: 'brakeOverHard', expression: 'brakeOverThrottle - padTravelNormal', words: 'The brake goes down by its travel; the throttle, let go, does not.', source: 'derived' },
    { result: 'brakeOverFailed', expression: 'brakeOverThrottle - failedPadTravel', words: 'And farther with a circuit dead.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'both-at-once', level: 'danger', when: (v) => v.bootOverlap > 0 || v.gapThrottleBrake < 0.7 * least.throttleBrake,
      words: (v, say) => `Only ${say(v.gapThrottleBrake, 'length')} is free between throttle and brake${v.bootOverlap > 0 ? `, and a boot in the middle of the brake already lies ${say(v.bootOverlap, 'length')} on the throttle` : ''}. In a panic the foot presses both: the engine drives against the brakes, and a manual pedal has no push to spare for that.`,
      todo: 'Move the pads apart, or a narrower brake pad. Try it in the boots you wear, with eyes closed, engine off.',
      fires: { throttleToBrake: 3.6 * inch }, silent: {},
    },
    {
      id: 'close-to-throttle', level: 'warning', when: (v) => v.bootOverlap === 0 && v.gapThrottleBrake >= 0.7 * least.throttleBrake && v.gapThrottleBrake < least.throttleBrake,
      words: (v, say) => `${say(v.gapThrottleBrake, 'length')} between throttle and brake is less than the 2 to 3 in (50 to 75 mm) that boots want (common practice, no source).`,
      todo: 'More room, or keep to narrow shoes and know it.',
      fires: { throttleToBrake: 4.2 * inch }, silent: {},
    },
    {
      id: 'brake-sinks', level: 'warning', when: (v) => v.brakeOverHard < 0,
      words: (v, say) => `In a hard stop the brake pad ends ${say(-v.brakeOverHard, 'length')} below the throttle at rest. A boot half over the edge then rests on the throttle just when it must not.${v.padTravelNormal > 25 * mm ? ` The trade’s rule, no more than 1 in (25 mm) above at rest and never below when applied, cannot be kept with ${say(v.padTravelNormal, 'length')} of travel (common practice, no source). Sideways room has to do it.` : ''}`,
      todo: 'Throttle pad lower, farther forward or farther right, and less brake travel. Then push hard in your widest boots, foot half an inch too far right: the throttle must not move.',
      fires: {}, silent: { brakeOverThrottle: 6 * inch },
    },
    {
      id: 'step-up', level: 'caution', when: (v) => v.brakeOverThrottle > 1.0001 * inch,
      words: (v, say) => `At rest the brake stands ${say(v.brakeOverThrottle, 'length')} above the throttle. More than 1 in (25 mm) and a foot has to be lifted onto it, and can catch under it (common practice, no source).`,
      todo: 'Trade travel against height: less travel needs less height at rest.',
      fires: { brakeOverThrottle: 2 * inch }, silent: {},
    },
    {
      id: 'clutch-side', level: 'warning', when: (v) => v.gapClutchSide < least.side || v.gapBrakeClutch < least.brakeClutch,
      words: (v, say) => `${v.gapBrakeClutch < least.brakeClutch ? `Between brake and clutch ${say(v.gapBrakeClutch, 'length')} is free, less than 2-3/8 in (60 mm). ` : ''}${v.gapClutchSide < least.side ? `Beside the clutch ${say(v.gapClutchSide, 'length')} is free, less than 1-5/8 in (40 mm). ` : ''}A boot wedges there, or takes the brake along with the clutch (common practice, no source).`,
      todo: 'Move the clutch, trim the side, or leave the dead pedal out.',
      fires: { clutchToSide: 2.5 * inch }, silent: {},
    },
    { id: 'own-boots', level: 'notice', words: 'Figures for boots are the driver’s own. Work boots and winter boots are half an inch wider than shoes.', todo: 'Block the pads up in wood, sit in the seat, and try every change of pedal in the dark.' },
  ],
  picture: {
    title: 'The pedals from the driver’s seat',
    describe: (v, say) => `Seen from the seat: clutch on the left, brake, throttle on the right, the side trim at the far left. ${say(v.gapThrottleBrake, 'length')} free between throttle and brake, ${say(v.gapBrakeClutch, 'length')} between brake and clutch, ${say(v.gapClutchSide, 'length')} beside the clutch. Dashed: a boot ${say(v.bootWidth, 'length')} wide in the middle of the brake.`,
    scene: (v, _at, say) => pedalSpacingScene({ ...v, labels: [say(v.gapThrottleBrake, 'length'), say(v.gapBrakeClutch, 'length'), say(v.gapClutchSide, 'length')] }),
  },
  paper: {
    assumptions: ['Pads are taken square to the driver; sideways distances only.', 'In a hard stop the throttle is fully released.', 'Depths count along the brake pad’s path.'],
    leftOut: ['Arms that are wider than their pads.', 'A boot that does not hit the middle of the brake: half an inch off eats half an inch of room.', 'The tunnel beside the throttle, and the column between the feet.', 'Pads that tip as they go down.'],
    sources: [{ of: 'gaps and heights to keep', kind: 'common practice' }, { of: 'gaps', kind: 'derived' }],
    examples: [{
      source: 'Worked by hand: centers 130, 140 and 100 mm; pads 50, 80 and 60 mm wide',
      inputs: { throttleToBrake: 0.13, brakeToClutch: 0.14, clutchToSide: 0.1, throttleWidth: 0.05, brakeWidth: 0.08, clutchWidth: 0.06, bootWidth: 0.11, brakeOverThrottle: 0.02, padTravelNormal: 0.07, failedPadTravel: 0.12 },
      results: { gapThrottleBrake: { value: 0.065, within: 1e-9 }, gapBrakeClutch: { value: 0.07, within: 1e-9 }, gapClutchSide: { value: 0.07, within: 1e-9 }, brakeOverHard: { value: -0.05, within: 1e-9 }, brakeOverFailed: { value: -0.1, within: 1e-9 } },
    }],
    related: ['pedal-placement', 'pad-floor', 'leg-angles'],
  },
});
