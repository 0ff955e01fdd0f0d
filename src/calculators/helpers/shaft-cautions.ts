import { deg, inch } from '../../units/si.ts';
import { defineCautions } from '../record.ts';
import type { Caution } from '../record.ts';
import { bottoms, collapseNear, collapseShort, jointSteep, leastOverlap, limitOnMounts, longer, noBearing, oneJointOffset, overlapShort, stopAngle, stopSlip, watchAngle, watchSlip } from './shaft-line.ts';
import type { Shown } from './shaft-line.ts';

/** Demo inputs at which the column points at the box joint, but for a quarter inch. */
const oneJoint = { shaftJoints: 'one', columnFall: 28.6 * deg, columnPlan: 6.74 * deg, boxInputZ: 9.2 * inch } as const;

export const lineCautions: readonly Caution<Shown>[] = defineCautions<Shown>([
  {
    id: 'must-collapse', level: 'danger',
    words: 'In a crash the front of the truck pushes the steering box rearward. A shaft that can slide together, fold at its joints and break away lets the wheel stay where it is. A solid bar, a slip that is welded, pinned or bottomed, or break-away capsules welded to the dash push the wheel through the driver.',
    todo: 'Keep the telescoping and break-away parts of the original column and shaft, in the condition they left the factory in. If you cannot say how your shaft gets shorter in a crash, stop: a specialist for steering columns must.',
  },
  {
    id: 'who-signs', level: 'warning',
    words: 'Geometry is all this computes. Strength of joints, splines and welds, and what happens in a crash, are not in it, and a steering shaft that lets go cannot be caught.',
    todo: 'Ask the inspection office before you build. Have the finished steering approved in writing by a licensed engineer or certifier, or whoever your state, province or country names. No welding on a steering shaft except by someone qualified for it.',
  },
  {
    id: 'no-bearing', level: 'danger', when: noBearing,
    words: 'Three joints without a bearing between them are a chain. The middle joint flops aside, takes up free play at the rim, and can fold until the steering jams.',
    todo: 'Stop. A support bearing close to the middle joint, on a bracket on the frame that does not flex by hand. Or two joints.',
    fires: { shaftJoints: 'three', supportBearing: 'none' }, silent: {},
  },
  {
    id: 'one-joint-offset', level: 'danger', when: oneJointOffset,
    words: (v, say) => `The column’s center line passes the box joint by ${say(v.axisMiss, 'length')}. One joint cannot take up an offset: forced together, it bends the column’s bearing and the box’s input shaft at every turn until one cracks.`,
    todo: 'Measure slope and plan angle again, since 1 degree over 24 in is 0.4 in (11 mm). If the offset is real, use two joints.',
    fires: oneJoint, silent: {},
  },
  {
    id: 'bottoms', level: 'danger', when: bottoms,
    words: (v, say) => `Mounts that let the body move ${say(v.mountMovement, 'length')} drive the shaft to the end of its slide. It then hammers on the box’s bearing on every bump, and nothing is left to collapse.`,
    todo: 'Stop. Drop less, or have a collapsing section of the right length made and approved by someone licensed for steering work.',
    fires: { slipIn: 1.8 * inch }, silent: {},
  },
  {
    id: 'collapse-short', level: 'danger', when: collapseShort,
    words: (v, say) => `${say(v.collapseAfter, 'length')} of collapse is left, under ${say(stopSlip, 'length')} (common practice, no source). In a crash the rest of the way is taken by the wheel, toward the driver.`,
    todo: 'Stop. Drop less, or have a collapsing section of the right length made and approved by someone licensed for steering work. Never cut the slide’s stop or grind its end to gain length.',
    fires: { slipIn: 2.9 * inch }, silent: {},
  },
  {
    id: 'collapse-near', level: 'warning', when: collapseNear,
    words: (v, say) => `${say(v.collapseAfter, 'length')} of collapse is left at rest. That is over the ${say(stopSlip, 'length')} below which to stop${v.collapseAfter < watchSlip ? `, and under the ${say(watchSlip, 'length')} to aim for` : ''} (common practice, no source). ${v.mountMovement > 0 ? `In a crash the cab first goes forward on its mounts, which takes up to ${say(v.mountMovement, 'length')} of it: ${v.collapseLeast > 0 ? say(v.collapseLeast, 'length') : 'nothing'} is then left for the box to come back.` : 'Mounts that give in a crash would take from it; yours are typed as not moving.'}`,
    todo: 'Measure both slides again, shaft out of the truck. The tape error of the points is part of this number: see how sure it is. Aim for the collapse you want plus all that the mounts allow.',
    fires: {}, silent: { slipIn: 4 * inch },
  },
  {
    id: 'overlap-short', level: 'danger', when: overlapShort,
    words: (v, say) => `With the mounts against you the two halves hold each other over ${v.overlapLeast > 0 ? say(v.overlapLeast, 'length') : 'nothing'}. Short of about twice the shaft’s diameter, ${say(leastOverlap, 'length')} for a 3/4 in (19 mm) shaft (common practice, no source), they rock, wear and can come apart. Then the wheel turns and the truck does not.`,
    todo: 'Stop. The shaft must be longer, by a section with its own slide.',
    fires: { slipOverlap: 0.2 * inch }, silent: {},
  },
  {
    id: 'longer', level: 'warning', when: longer,
    words: (v, say) => `This drop makes the shaft ${say(v.shaftLengthAfter - v.shaftLengthBefore, 'length')} longer. It gains collapse and pulls its halves apart.`,
    todo: 'Watch the overlap, and look again at full lock with a helper lifting the cab on its mounts.',
    fires: { bodyDropFront: -1 * inch, bodyDropRear: -1 * inch }, silent: {},
  },
  {
    id: 'joint-steep', level: 'danger', when: jointSteep,
    words: (v, say) => `A joint bends ${say(v.largestJointAngle, 'angle')}. Over ${say(stopAngle, 'angle')} a single joint turns unevenly, wears fast and nears the place where its ears meet and it locks, with the wheels at an angle you did not choose.`,
    todo: 'Stop, unless the joint’s maker rates it for steering at this angle and the ripple can be canceled. Share the bend: move the box end of the line, or add a joint with a support bearing.',
    fires: { boxFall: -3 * deg }, silent: {},
  },
  {
    id: 'joint-watch', level: 'caution', when: (v) => v.largestJointAngle > watchAngle && v.largestJointAngle <= stopAngle,
    words: (v, say) => `A joint bends ${say(v.largestJointAngle, 'angle')}. From ${say(watchAngle, 'angle')} on its unevenness can be felt at the rim if no other joint cancels it (common practice, no source).`,
    todo: 'Compute the ripple and its clocking. Aim for equal angles, or for less than 20 degrees at each joint.',
    fires: {}, silent: { boxFall: 12 * deg },
  },
  {
    id: 'joint-limit-on-mounts', level: 'danger', when: limitOnMounts,
    words: (v, say) => `At rest the joint is within its rating. Body mounts can add ${say(v.bendFromMounts, 'angle', 2)}, and then it is ${say(v.largestJointAngle + v.bendFromMounts - v.jointLimit, 'angle', 2)} beyond it. A joint past its limit binds.`,
    todo: 'Stop. Lessen the bend before anything is built.',
    fires: { jointLimit: 23 * deg }, silent: {},
  },
]);
