import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { deg, inch, mm } from '../../units/si.ts';

const place = {
  dimension: 'length',
  hard: { min: -120 * inch, max: 120 * inch, reason: 'the steering lies within 120 in of the mark' },
  tolerance: { absolute: 3 * mm },
} as const;
const slope = {
  dimension: 'angle',
  hard: { min: -80 * deg, max: 80 * deg, reason: 'the shaft runs forward: its angles lie inside ±80°' },
  tolerance: { absolute: 1 * deg },
} as const;
const reach = { ...place, tolerance: { absolute: 0 } } as const;
const bend = {
  dimension: 'angle',
  usual: { min: 0, max: 30 * deg, source: commonPractice },
  hard: { min: 0, max: 60 * deg, reason: 'no single joint bends beyond 60°' },
  tolerance: { absolute: 1.5 * deg },
} as const;
const clocked = {
  dimension: 'angle',
  hard: { min: -180 * deg, max: 180 * deg, reason: 'an angle around a shaft lies within half a turn either way' },
  tolerance: { absolute: 2 * deg },
} as const;
const plane = { ...clocked, hard: { min: -90 * deg, max: 90 * deg, reason: 'a plane has no front and back: its angle lies within ±90°' }, tolerance: { absolute: 3 * deg } } as const;

/** The steering shaft between column and box. x forward, y left, z up, from marks on the frame; joints at the center of their crosses. */
export const shaft = {
  shaftJoints: {
    name: 'joints in the shaft',
    options: { two: 'two: at the column and at the box', three: 'three: with one more in the middle', one: 'one: at the box, on the column’s own shaft' },
    measure: 'Count the crosses. A joint with two crosses in one housing counts as two; a rubber coupling or rag joint counts as one that should hardly bend.',
  },
  supportBearing: {
    name: 'support bearing at the middle joint',
    options: { fitted: 'fitted, bolted to the frame', none: 'none' },
    measure: 'Look for a bearing around the shaft close to the middle joint. Two joints need none.',
  },
  angleReading: {
    name: 'how the two slopes were read',
    options: { along: 'angle finder laid along the shaft', side: 'in side view: photograph or protractor, square to the truck' },
    measure: 'Laid on the shaft, the finder follows it. A side view shows its shadow, which is steeper as soon as the shaft also runs sideways.',
  },
  columnEndX: { name: 'column joint, fore and aft', symbol: 'x_C', ...place, measure: 'Tape from the front axle line or frame mark to a plumb bob under the cross of the upper joint, before the drop. Forward is +.' },
  columnEndY: { name: 'column joint, sideways', symbol: 'y_C', ...place, measure: 'Plumb bob to the floor, tape from the truck’s center line. Left is +.' },
  columnEndZ: { name: 'column joint, height', symbol: 'z_C', ...place, measure: 'Tape up from the level line through the frame mark to the center of the cross. Up is +.' },
  columnFall: { name: 'column slope', symbol: 'ε_C', ...slope, usual: { min: 10 * deg, max: 45 * deg, source: commonPractice }, measure: 'Angle finder zeroed on the frame rail, then laid on the column tube. + falls toward the front.' },
  columnPlan: { name: 'column angle seen from above', symbol: 'ψ_C', ...slope, usual: { min: -10 * deg, max: 10 * deg, source: commonPractice }, measure: 'Plumb two points of the column to the floor, string through the marks, compare with the truck’s center line. + goes left toward the front.' },
  boxInputX: { name: 'box joint, fore and aft', symbol: 'x_I', ...place, measure: 'As for the column joint, under the cross at the steering box. The box is on the frame, so it stays.' },
  boxInputY: { name: 'box joint, sideways', symbol: 'y_I', ...place, measure: 'Plumb bob to the floor, tape from the truck’s center line. Left is +.' },
  boxInputZ: { name: 'box joint, height', symbol: 'z_I', ...place, measure: 'Tape up from the level line through the frame mark to the center of the cross. Up is +.' },
  boxFall: { name: 'box input slope', symbol: 'ε_I', ...slope, usual: { min: -10 * deg, max: 35 * deg, source: commonPractice }, measure: 'Angle finder zeroed on the rail, then laid along the box’s input shaft; a straight tube pushed over it gives the finder length. + falls toward the front.' },
  boxPlan: { name: 'box input angle seen from above', symbol: 'ψ_I', ...slope, usual: { min: -20 * deg, max: 20 * deg, source: commonPractice }, measure: 'Straightedge along the box’s input shaft, plumbed to the floor. + goes left toward the front.' },
  bearingX: { name: 'middle joint, fore and aft', symbol: 'x_M', ...place, measure: 'Where the cross of the middle joint is or will be. Forward is +. Without a third joint it does not count.' },
  bearingY: { name: 'middle joint, sideways', symbol: 'y_M', ...place, measure: 'Tape from the truck’s center line. Left is +.' },
  bearingZ: { name: 'middle joint, height', symbol: 'z_M', ...place, measure: 'Tape up from the level line through the frame mark. Up is +.' },
  jointLength: {
    name: 'length of one joint, end to end', symbol: 'ℓ_j', dimension: 'length', usual: { min: 2 * inch, max: 5 * inch, source: commonPractice },
    hard: { min: 0.5 * inch, max: 12 * inch, reason: 'a steering joint is between 1/2 and 12 in long' }, measure: 'Calipers over the joint held straight.', tolerance: { absolute: 1 * mm },
  },
  jointLimit: {
    name: 'greatest angle the joint is rated for', symbol: 'β_max', dimension: 'angle', usual: { min: 25 * deg, max: 36 * deg, source: `${commonPractice}: 30 to 35° for a single joint` },
    hard: { min: 5 * deg, max: 50 * deg, reason: 'single steering joints are rated between 5 and 50°' }, measure: 'The joint’s data sheet. In the hand it bends farther; that is not a rating.', tolerance: { absolute: 0 },
  },
  slipIn: {
    name: 'shaft can still slide together, before the drop', symbol: 's_in', dimension: 'length', usual: { min: 1 * inch, max: 8 * inch, source: commonPractice },
    hard: { min: 0, max: 40 * inch, reason: 'the slide lies between 0 and 40 in' }, measure: 'With the shaft in place paint a line at the mouth of the sliding half. Take the shaft out, push it together to its end, measure mouth to paint.', tolerance: { absolute: 1.5 * mm },
  },
  slipOverlap: {
    name: 'the two halves overlap, before the drop', symbol: 's_ov', dimension: 'length', usual: { min: 1 * inch, max: 10 * inch, source: commonPractice },
    hard: { min: 0, max: 40 * inch, reason: 'the overlap lies between 0 and 40 in' }, measure: 'The same paint line: from the paint to the end of the inner half, halves pulled apart.', tolerance: { absolute: 1.5 * mm },
  },
  mountMovement: {
    name: 'body moves on its mounts, each way', symbol: 'm_mt', dimension: 'length', usual: { min: 3 * mm, max: 15 * mm, source: `${commonPractice}: 3/8 in (10 mm)` },
    hard: { min: 0, max: 2 * inch, reason: 'rubber mounts move between 0 and 2 in' }, measure: 'A helper levers the cab up and sideways at a mount with a bar while you watch a ruler on the rail.', tolerance: { absolute: 2 * mm },
  },
  columnForkAngle: {
    name: 'column fork, wheels straight ahead', symbol: 'θ_f', ...clocked, usual: { min: -90 * deg, max: 90 * deg, source: 'pins have no front and back' },
    measure: 'Wheels straight ahead. From the plane of the first bend to the pins of the column’s fork, clockwise seen from the rim. Pins lying in that plane: 0.',
  },
  upperClocking: {
    name: 'clocking of the upper shaft', symbol: 'κ_u', ...clocked, usual: { min: -90 * deg, max: 90 * deg, source: 'pins have no front and back' },
    measure: 'Shaft in a vise, a rod through the pin holes of each fork. From the upper fork’s pins to the lower fork’s, clockwise for who looks down the shaft from its upper end. Forks in line: 0.',
  },
  lowerClocking: {
    name: 'clocking of the lower shaft', symbol: 'κ_l', ...clocked, usual: { min: -90 * deg, max: 90 * deg, source: 'pins have no front and back' },
    measure: 'As for the upper shaft, on the shaft between middle and box joint. Without a third joint it does not count.',
  },
  bearingRearmost: { name: 'bearing can go, rearmost', symbol: 'x_M,r', ...reach, measure: 'Farthest to the rear that the middle joint could be and still be bolted to the frame. Forward is +.' },
  bearingForemost: { name: 'bearing can go, foremost', symbol: 'x_M,f', ...reach, measure: 'Farthest forward. Stay clear of the engine with its roll.' },
  bearingRightmost: { name: 'bearing can go, nearest the engine', symbol: 'y_M,r', ...reach, measure: 'Smallest distance from the truck’s center line. Left is +.' },
  bearingLeftmost: { name: 'bearing can go, outermost', symbol: 'y_M,l', ...reach, measure: 'Greatest distance from the truck’s center line: the inner fender sets it.' },
  bearingLowest: { name: 'bearing can go, lowest', symbol: 'z_M,lo', ...reach, measure: 'Lowest height over the level line through the frame mark.' },
  bearingHighest: { name: 'bearing can go, highest', symbol: 'z_M,hi', ...reach, measure: 'Greatest height over the level line through the frame mark.' },
  // results that are inputs elsewhere
  columnEndXAfter: { name: 'column joint after the drop, fore and aft', symbol: 'x_C1', ...place, tolerance: { absolute: 4 * mm }, measure: 'Tape, as before the drop, from the same mark.' },
  columnEndZAfter: { name: 'column joint after the drop, height', symbol: 'z_C1', ...place, tolerance: { absolute: 4 * mm }, measure: 'Tape, as before the drop, from the same level line.' },
  columnSlopeAfter: { name: 'slope of the column after the drop', symbol: 'ε_1', dimension: 'angle' },
  columnPlanAfter: { name: 'column after the drop, seen from above', symbol: 'ψ_1', dimension: 'angle' },
  boxSlope: { name: 'slope of the box input along itself', symbol: 'ε_4', dimension: 'angle' },
  upperJointAngle: { name: 'bend of the column joint (0 if there is none)', symbol: 'β_1', ...bend, measure: 'Leave it to the shaft line. By hand: a long straightedge along each shaft, protractor turned until it lies flat against both.' },
  middleJointAngle: { name: 'bend of the middle joint (0 if there is none)', symbol: 'β_2', ...bend, measure: 'As for the column joint.' },
  lowerJointAngle: { name: 'bend of the box joint', symbol: 'β_3', ...bend, measure: 'As for the column joint.' },
  bendTwistUpper: { name: 'turn between the bends along the upper shaft', symbol: 'τ_u', ...plane, computedTolerance: { absolute: 8 * deg }, measure: 'Leave it to the shaft line. By hand: lay a card flat against both shafts at each joint; the angle between the cards, clockwise down the shaft, upper to lower.' },
  bendTwistLower: { name: 'turn between the bends along the lower shaft', symbol: 'τ_l', ...plane, computedTolerance: { absolute: 8 * deg }, measure: 'As for the upper shaft. 0 without a third joint.' },
  // results: the line
  columnSlope: { name: 'slope of the column along itself', symbol: 'ε_C0', dimension: 'angle' },
  shaftSlope: { name: 'slope of the shaft', symbol: 'ε_2', dimension: 'angle' },
  shaftPlan: { name: 'shaft seen from above', symbol: 'ψ_2', dimension: 'angle' },
  lowerShaftSlope: { name: 'slope of the lower shaft', symbol: 'ε_3', dimension: 'angle' },
  lowerShaftPlan: { name: 'lower shaft seen from above', symbol: 'ψ_3', dimension: 'angle' },
  shaftLengthBefore: { name: 'shaft length before the drop, cross to cross', symbol: 'L_s0', dimension: 'length' },
  shaftLengthAfter: { name: 'shaft length after the drop, cross to cross', symbol: 'L_s1', dimension: 'length' },
  lowerShaftLength: { name: 'lower shaft length, cross to cross', symbol: 'L_s2', dimension: 'length' },
  axisMiss: { name: 'column’s center line passes the box joint by', symbol: 'd_miss', dimension: 'length' },
  largestJointAngle: { name: 'largest bend of a joint', symbol: 'β_L', dimension: 'angle' },
  bendFromMounts: { name: 'bend that the mounts can add', symbol: 'Δβ', dimension: 'angle' },
  collapseAfter: { name: 'collapse reserve left after the drop', symbol: 's_cr', dimension: 'length' },
  collapseLeast: { name: 'collapse reserve with the mounts against you', symbol: 's_cr,min', dimension: 'length' },
  overlapLeast: { name: 'overlap with the mounts against you', symbol: 's_o,min', dimension: 'length' },
  // results: the ripple
  upperJointRipple: { name: 'ripple of the column joint alone, ±', symbol: 'ρ_1', dimension: 'share' },
  middleJointRipple: { name: 'ripple of the middle joint alone, ±', symbol: 'ρ_2', dimension: 'share' },
  lowerJointRipple: { name: 'ripple of the box joint alone, ±', symbol: 'ρ_3', dimension: 'share' },
  speedRipple: { name: 'speed ripple as clocked, ±', symbol: 'ρ', dimension: 'share' },
  leastSpeedRipple: { name: 'speed ripple at the best clocking, ±', symbol: 'ρ_min', dimension: 'share' },
  ratioHighest: { name: 'quickest: box turns per rim turn', symbol: 'r_hi', dimension: 'ratio' },
  ratioLowest: { name: 'slowest: box turns per rim turn', symbol: 'r_lo', dimension: 'ratio' },
  equivalentJointAngle: { name: 'one joint that would ripple as much, bend', symbol: 'β_eq', dimension: 'angle' },
  bestUpperClocking: { name: 'clocking to scribe on the upper shaft', symbol: 'κ_u,best', dimension: 'angle' },
  bestLowerClocking: { name: 'clocking to scribe on the lower shaft', symbol: 'κ_l,best', dimension: 'angle' },
  rimAtQuickest: { name: 'rim turn from straight ahead to the quickest place', symbol: 'θ_q', dimension: 'angle' },
  // results: the bearing
  bestBearingX: { name: 'best middle joint, fore and aft', symbol: 'x_best', dimension: 'length' },
  bestBearingY: { name: 'best middle joint, sideways', symbol: 'y_best', dimension: 'length' },
  bestBearingZ: { name: 'best middle joint, height', symbol: 'z_best', dimension: 'length' },
  bestLargestAngle: { name: 'largest bend with the middle joint there', symbol: 'β_best', dimension: 'angle' },
  bestUpperAngle: { name: 'bend of the column joint there', symbol: 'β_b1', dimension: 'angle' },
  bestMiddleAngle: { name: 'bend of the middle joint there', symbol: 'β_b2', dimension: 'angle' },
  bestLowerAngle: { name: 'bend of the box joint there', symbol: 'β_b3', dimension: 'angle' },
  bestUpperLength: { name: 'upper shaft there, cross to cross', symbol: 'L_b1', dimension: 'length' },
  bestLowerLength: { name: 'lower shaft there, cross to cross', symbol: 'L_b2', dimension: 'length' },
} as const satisfies Record<string, Entry>;
