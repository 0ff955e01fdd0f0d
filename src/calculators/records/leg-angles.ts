import { deg, inch } from '../../units/si.ts';
import { legAt, legNear, noSuchLeg, travelEnd } from '../helpers/leg.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { padFloorFeed } from '../helpers/pad-floor.ts';
import { defineCalculator } from '../record.ts';
import { legScene } from '../scenes/leg.ts';

const kneeLow = 100 * deg;
const kneeHigh = 140 * deg;
/** Foot against the pad's way (common practice, no source). */
const offPath = 15 * deg;

export default defineCalculator({
  id: 'leg-angles',
  version: 1,
  title: 'Knee and ankle at the brake',
  purpose: 'Whether the driver’s leg still has push left at the end of the pedal’s travel, from seat, pedal and the driver’s own bones.',
  inputs: [
    { title: 'Seat', of: ['hipBehindPad', 'hipOverFloor'] },
    { title: 'Pedal', of: ['padOverHeel', 'padArm', 'padRestAngle', 'padTravelNormal', 'failedPadTravel'] },
    { title: 'Foot on the brake, pedal up', of: ['heelBehindPad', 'heelOverFloor'] },
    { title: 'Driver', of: ['thighLength', 'shinLength', 'ankleHeight'] },
  ],
  feeds: [brakingFeed, padFloorFeed],
  outputs: ['kneeAtHard', 'kneeAtRest', 'kneeAtFailed', 'ankleAtRest', 'ankleAtHard', 'pushOffHard', 'soleLeanHard', 'soleStretch'],
  compute: (v) => {
    const no = noSuchLeg(v);
    if (no) return no;
    const [rest, hard, failed] = [legAt(v, 0), legAt(v, v.padTravelNormal), legAt(v, v.failedPadTravel)];
    return { kneeAtHard: hard.knee, kneeAtRest: rest.knee, kneeAtFailed: failed.knee, ankleAtRest: rest.ankle, ankleAtHard: hard.ankle, pushOffHard: hard.off, soleLeanHard: hard.lean, soleStretch: hard.sole / rest.sole };
  },
  howSure: { draws: 1100, quick: (v) => noSuchLeg(v) ?? { kneeAtHard: legAt(v, v.padTravelNormal).knee } },
  summary: (v, say) => `With the foot on the pedal the knee stands at ${say(v.kneeAtRest, 'angle')}, in a hard stop at ${say(v.kneeAtHard, 'angle')} and with a circuit dead at ${say(v.kneeAtFailed, 'angle')}; 180° is a straight leg. The ankle goes from ${say(v.ankleAtRest, 'angle')} to ${say(v.ankleAtHard, 'angle')}. In a hard stop the leg pushes ${say(Math.abs(v.pushOffHard), 'angle')} ${v.pushOffHard < 0 ? 'above' : 'below'} the way the pad moves.`,
  equations: [],
  methods: [
    { result: 'kneeAtHard', words: 'The sole runs from the heel to the pad, and the ankle stands over the heel, square to it. Hip, knee and ankle make a triangle with thigh and shin as two sides: the law of cosines gives the knee. Once with the pedal up, once down by its travel in a hard stop, on its arc.', source: 'derived: law of cosines' },
    { result: 'ankleAtHard', words: 'The angle between the shin and the sole.', source: 'derived' },
    { result: 'pushOffHard', words: 'The leg pushes along the line from hip to ball, the pad moves square to its arm. The angle between the two; its cosine is the part of the push that turns the pedal.', source: 'derived: plane geometry' },
    { result: 'soleLeanHard', words: 'How far the sole leans forward of upright, from heel and ball: 0 stands on its heel like a wall, 90° lies on the floor.', source: 'derived' },
    { result: 'soleStretch', words: 'Heel to pad in a hard stop over the same with the pedal up. A foot does not grow: above 1 the pad runs out toward the toes.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'leg-straight', level: 'warning', when: (v) => v.kneeAtFailed > 165 * deg,
      words: (v, say) => `With a circuit dead the knee is at ${say(v.kneeAtFailed, 'angle')}, nearly straight. A straight leg lifts the driver out of the seat and has no travel left, on the day the pedal goes farthest.`,
      todo: 'Seat forward, or pedal nearer. Try it with the shortest driver, strapped in, both masters dry.',
      fires: { hipBehindPad: 36.5 * inch }, silent: {},
    },
    {
      id: 'knee-open', level: 'caution', when: (v) => v.kneeAtHard > kneeHigh,
      words: (v, say) => `In a hard stop the knee is at ${say(v.kneeAtHard, 'angle')}, wider than 140°. Push fades there and the last of it goes into the backrest (100 to 140° is common practice, no source).`,
      todo: 'Seat forward, or hip higher.',
      fires: { hipBehindPad: 36 * inch }, silent: {},
    },
    {
      id: 'knee-tight', level: 'caution', when: (v) => v.kneeAtRest < kneeLow,
      words: (v, say) => `At rest the knee is folded to ${say(v.kneeAtRest, 'angle')}, under 100°. The thigh meets the wheel, and the leg pushes down more than forward (common practice, no source).`,
      todo: 'Seat back, pedal lower, or a smaller wheel.',
      fires: { hipBehindPad: 29 * inch }, silent: {},
    },
    {
      id: 'ankle', level: 'caution', when: (v) => v.ankleAtRest < 85 * deg || v.ankleAtHard > 125 * deg,
      words: (v, say) => `The ankle goes from ${say(v.ankleAtRest, 'angle')} to ${say(v.ankleAtHard, 'angle')}. Much under 85° the toes must be pulled up to find the pad, far above 110° the foot points and slips off (85 to 110° is common practice, no source).`,
      todo: 'Lean the pad, or raise or lower it.',
      fires: { hipBehindPad: 29 * inch }, silent: {},
    },
    {
      id: 'off-path', level: 'caution', when: (v) => Math.abs(v.pushOffHard) > offPath,
      words: (v, say) => `In a hard stop the leg pushes ${say(Math.abs(v.pushOffHard), 'angle')} off the way the pad moves. ${say(Math.cos(v.pushOffHard), 'share', 3)} of the push turns the pedal; the rest slides the foot ${v.pushOffHard > 0 ? 'down' : 'up'} the pad. 15° is enough (common practice, no source).`,
      todo: 'Let the arm hang farther back at rest, or less travel; a pad that grips, with an edge at its lower end.',
      fires: { padRestAngle: 5 * deg, padTravelNormal: 4 * inch }, silent: { padRestAngle: -25 * deg },
    },
    {
      id: 'heel-left-behind', level: 'caution', when: (v) => v.soleStretch > 1.15,
      words: (v, say) => `With the heel where it is the pad runs away from the ball of the foot: heel to pad grows to ${say(v.soleStretch, 'ratio', 3)} times what it was. The foot ends on its toes, or the heel has to slide in the middle of a stop.`,
      todo: 'Lift the heel for the brake and measure it so, or raise the pad.',
      fires: { heelOverFloor: 0, padTravelNormal: 4 * inch }, silent: {},
    },
    { id: 'each-driver', level: 'notice', words: 'A leg is measured to half an inch at best, and cushions settle. The answer is for one driver in one position of the seat.', todo: 'Do it for the shortest and the tallest who will drive, and try it with wood blocks before you weld.' },
  ],
  picture: {
    title: 'Leg, seat and pedal',
    describe: (v, say, at) => `Side view, front on the left. Hip ${say(v.hipBehindPad, 'length')} behind the pad and ${say(v.hipOverFloor, 'length')} over the floor; ball of the foot on the pad, pedal down ${say(at, 'length')}. The knee is at ${say(legNear(v, at).knee, 'angle')}, the ankle at ${say(legNear(v, at).ankle, 'angle')}. Dashed: the line of the push, ${say(Math.abs(legNear(v, at).off), 'angle')} off the way of the pad, which the arrow shows.`,
    motion: { label: 'Pedal travel', dimension: 'length', range: (v) => [0, travelEnd(v)], start: (v) => v.padTravelNormal, say: (v, at, say) => `knee ${say(legNear(v, at).knee, 'angle')}, ankle ${say(legNear(v, at).ankle, 'angle')}` },
    scene: (v, at, say) => legScene({ ...legNear(v, at), hip: { x: -v.hipBehindPad, z: v.hipOverFloor }, padArm: v.padArm, kneeLabel: say(legNear(v, at).knee, 'angle'), ankleLabel: say(legNear(v, at).ankle, 'angle') }),
  },
  tables: [{
    caption: 'If the seat moves',
    head: ['Hip', 'Knee at rest', 'Knee, hard stop'],
    rows: (v) => ([['1 in forward', -1, 0], ['where it is', 0, 0], ['1 in back', 1, 0], ['2 in back', 2, 0], ['1 in lower', 0, -1], ['3 in lower', 0, -3]] as const).map(([name, back, up]) => {
      const moved = { ...v, hipBehindPad: v.hipBehindPad + back * inch, hipOverFloor: v.hipOverFloor + up * inch };
      if (noSuchLeg(moved)) return [name, 'out of reach', 'out of reach'];
      return [name, { value: legAt(moved, 0).knee, dimension: 'angle' as const }, { value: legAt(moved, v.padTravelNormal).knee, dimension: 'angle' as const }];
    }),
  }],
  paper: {
    assumptions: ['Ball of the foot on the middle of the pad. A heel that rests stays where it is while the pedal goes down; a lifted heel goes along.', 'Everything moves in one plane; knees do not fall outward.', 'The hip joint stays where it is while the leg pushes, and the leg pushes along the line from hip to ball.'],
    leftOut: ['Soft cushions, thick soles that bend, seats that slide in a stop.', 'The wheel over the thigh: measure it with the pedal up.'],
    sources: [
      { of: 'knee and ankle', kind: 'derived', note: 'law of cosines' },
      { of: 'knee 100 to 140°, ankle 85 to 110°, push within 15° of the pad’s way', kind: 'common practice' },
      { of: 'line of the push, lean of the sole', kind: 'derived', note: 'plane geometry; a bent leg can steer its push' },
      { of: 'a foot pushes hardest with the pedal 15 to 35° forward of vertical', kind: 'published', id: 'hertzberg', note: 'said in the guide' },
    ],
    examples: [{
      source: 'Worked by hand: thigh and shin 400 mm, foot flat on a pad at floor level, ankle 90 mm up and level with the hip, hip 400·√2 mm behind it: a right angle',
      inputs: { hipBehindPad: 0.2 + 0.4 * Math.SQRT2, hipOverFloor: 0.09, padOverHeel: 0, padArm: 0.3, padRestAngle: 0, padTravelNormal: 0, failedPadTravel: 0, thighLength: 0.4, shinLength: 0.4, heelBehindPad: 0.2, heelOverFloor: 0, ankleHeight: 0.09 },
      results: { kneeAtRest: { value: 90 * deg, within: 1e-9 }, ankleAtRest: { value: 135 * deg, within: 1e-9 }, soleLeanHard: { value: 90 * deg, within: 1e-9 }, soleStretch: { value: 1, within: 1e-9 }, pushOffHard: { value: 6.7039 * deg, within: 1e-3 } },
    }],
    related: ['pedal-placement', 'pad-floor', 'pedal-spacing', 'pedal-effort'],
  },
});
