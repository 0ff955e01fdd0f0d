import { chainRipple, leastRipple } from '../../engine/clocking.ts';
import type { ChainRipple } from '../../engine/clocking.ts';
import type { Equation, ValuesOf } from '../record.ts';
import { defineEquations } from '../record.ts';

export type RippleKeys = 'shaftJoints' | 'upperJointAngle' | 'middleJointAngle' | 'lowerJointAngle' | 'bendTwistUpper' | 'bendTwistLower' | 'upperClocking' | 'lowerClocking' | 'columnForkAngle';
type V = ValuesOf<RippleKeys>;

const bendsOf = (v: V): number[] => ({ one: [v.lowerJointAngle], two: [v.upperJointAngle, v.lowerJointAngle], three: [v.upperJointAngle, v.middleJointAngle, v.lowerJointAngle] })[v.shaftJoints];
export const shaftsOf = (v: V): number => bendsOf(v).length - 1;

/** Pins have no front and back: an angle between two of them runs from −90° to 90°. */
export const betweenPins = (angle: number): number => angle - Math.PI * Math.round(angle / Math.PI);

/** The chain with the reader's clockings, each off by so much. */
export function asClocked(v: V, off = 0): ChainRipple {
  return chainRipple({ bends: bendsOf(v), errors: [v.upperClocking - v.bendTwistUpper + off, v.lowerClocking - v.bendTwistLower].slice(0, shaftsOf(v)) });
}

/** The best there is: what to scribe on each shaft, and the chain it makes. */
export function asBest(v: V): { readonly scribe: readonly [upper: number, lower: number]; readonly ripple: number; readonly chain: ChainRipple } {
  const bends = bendsOf(v);
  const { errors, ripple } = leastRipple({ bends });
  const scribe = [v.bendTwistUpper, v.bendTwistLower].map((twist, k) => (k < errors.length ? betweenPins(twist + (errors[k] as number)) : 0)) as [number, number];
  return { scribe, ripple, chain: chainRipple({ bends, errors }) };
}

const alone = (angle: string): string => `sin(${angle})^2 / (2 * cos(${angle}))`;
const [s1, c1] = ['sin', 'cos'].map((f) => `${f}(upperClocking - bendTwistUpper)`) as [string, string];
const [s2, c2] = ['sin', 'cos'].map((f) => `${f}(lowerClocking - bendTwistLower)`) as [string, string];
const [k1, k2, k3] = ['cos(upperJointAngle)', 'cos(middleJointAngle)', 'cos(lowerJointAngle)'] as const;
const z1 = `(${c1} * ${c2} - ${k2} * ${s1} * ${s2})`;
const z2 = `(${s1} * ${c2} + ${k2} * ${c1} * ${s2})`;
const difference = `sin(upperJointAngle)^2 - sin(middleJointAngle)^2 * (${c1}^2 - ${k1}^2 * ${s1}^2) - sin(lowerJointAngle)^2 * (${z2}^2 - ${k1}^2 * ${z1}^2)`;
const across = `2 * ${k1} * (sin(middleJointAngle)^2 * ${s1} * ${c1} - sin(lowerJointAngle)^2 * ${z1} * ${z2})`;
const square = (joint: string): string => `sin(${joint}JointAngle)^2`;
const over = (one: string, a: string, b: string): string => `${square(one)} - ${square(a)} - ${square(b)} + ${square(a)} * ${square(b)}`;
const shared = `upperJointRipple * lowerJointRipple * ${s1}^2`;
const joints = (name: string) => (v: { readonly [key: string]: unknown }): boolean => v.shaftJoints === name;
const ellipse = 'derived: each joint squeezes the circle of turns to an ellipse; the ripple is in the axes of the last one';

export const rippleEquations: readonly Equation[] = defineEquations([
  { result: 'lowerJointRipple', expression: alone('lowerJointAngle'), words: 'The joint at the box alone: half the way from 1/cos of the bend to its cosine.', source: 'published; derived again' },
  { result: 'upperJointRipple', expression: alone('upperJointAngle'), words: 'The joint at the column alone.', source: 'published; derived again', when: (v) => v.shaftJoints !== 'one' },
  { result: 'middleJointRipple', expression: alone('middleJointAngle'), words: 'The joint in the middle alone.', source: 'published; derived again', when: joints('three') },
  { result: 'leastSpeedRipple', expression: 'lowerJointRipple', words: 'One joint has nothing to cancel it.', source: 'derived', when: joints('one') },
  { result: 'leastSpeedRipple', expression: `abs(sin(upperJointAngle)^2 - sin(lowerJointAngle)^2) / (2 * ${k1} * ${k3})`, words: 'Two joints in step: the smaller takes its part from the larger. Only equal bends leave nothing.', source: 'derived', when: joints('two') },
  { result: 'leastSpeedRipple', expression: `max(0, ${over('upper', 'middle', 'lower')}, ${over('middle', 'upper', 'lower')}, ${over('lower', 'upper', 'middle')}) / (2 * ${k1} * ${k2} * ${k3})`, words: 'Three joints can cancel to nothing unless one outweighs the other two together.', source: 'derived', when: joints('three') },
  { result: 'bestUpperClocking', expression: 'bendTwistUpper', words: 'Turn the lower fork as far as the bend has turned, and both joints are in step.', source: 'derived', when: (v) => v.shaftJoints === 'two' && Math.abs(Number(v.bendTwistUpper)) < 1.57 },
  { result: 'speedRipple', expression: 'lowerJointRipple', words: 'One joint: its ripple is the shaft’s.', source: 'derived', when: joints('one') },
  { result: 'speedRipple', expression: `sqrt(leastSpeedRipple^2 + 4 * ${shared} * (sqrt(1 + leastSpeedRipple^2) + ${shared}))`, words: 'To the least ripple comes what the clocking is off by: a quarter turn off, the two add up.', source: ellipse, when: (v) => v.shaftJoints === 'two' && Number(v.speedRipple) > 1e-6 },
  { result: 'speedRipple', expression: `sqrt((${difference})^2 + (${across})^2) / (2 * ${k1} * ${k2} * ${k3})`, words: 'Joint by joint from the box up, each squeezes what the others left.', source: ellipse, when: (v) => v.shaftJoints === 'three' && Number(v.speedRipple) > 1e-6 },
  { result: 'ratioHighest', expression: 'sqrt(1 + speedRipple^2) + speedRipple', words: 'Highest times lowest is 1 for any shaft: what the box gains in one place it loses in another.', source: 'derived' },
  { result: 'ratioLowest', expression: 'sqrt(1 + speedRipple^2) - speedRipple', words: 'The slowest place, a quarter turn of the rim from the quickest.', source: 'derived' },
  { result: 'equivalentJointAngle', expression: 'acos(ratioLowest)', words: 'All the joints together turn like one joint of this bend.', source: 'derived', when: (v) => Number(v.speedRipple) > 1e-5 },
]);
