import { brakeFactor, drumForce } from '../../engine/drum.ts';
import { duoServoFactor } from '../../engine/duoServo.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { liningArms } from '../../engine/pinnedShoe.ts';
import { defineFeed } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { pressureFeed } from './line-pressure.ts';

export type DrumInputs =
  | 'drumType' | 'wheelCylinderDiameter' | 'drumRadius' | 'shoePivot' | 'shoeHeight' | 'anchorAbove' | 'liningStart' | 'liningEnd' | 'liningFriction' | 'drumPushOut' | 'drumEfficiency' | 'loadedRadius' | 'rearPressure';
export type DrumValues = ValuesOf<DrumInputs>;

/** Both shoes from the lining's angles: the full integral. */
export function factorOf(v: DrumValues, friction = v.liningFriction, type = v.drumType) {
  const lining = { drumRadius: v.drumRadius, hingeRadius: v.shoePivot, startAngle: v.liningStart, endAngle: v.liningEnd };
  if (type === 'duo-servo') return duoServoFactor({ ...lining, applyArm: v.shoeHeight, anchorOffset: v.anchorAbove, friction });
  const arms = liningArms(lining);
  return isImpossible(arms) ? arms : brakeFactor({ type, applyArm: v.shoeHeight, normalArm: arms.normalArm, frictionArm: arms.frictionArm, friction });
}

/** The lever rule of a workshop book: each lining one block across from the shoe's end, rubbing at the drum's radius. */
export const ruleOf = (v: DrumValues) => brakeFactor({ type: v.drumType, applyArm: v.shoeHeight, normalArm: v.shoePivot, frictionArm: v.drumRadius, friction: v.liningFriction });

export const forceOf = (v: DrumValues, factor: number, pressure = v.rearPressure) => drumForce({
  brakeFactor: factor, cylinderDiameter: v.wheelCylinderDiameter, drumRadius: v.drumRadius, efficiency: v.drumEfficiency, loadedRadius: v.loadedRadius, pushOut: v.drumPushOut, pressure,
});

function words(v: DrumValues, { impossible, by = 0 }: Impossible): Refusal {
  const shoe = v.drumType === 'duo-servo' ? 'A duo-servo shoe' : 'The leading shoe';
  return {
    refused: (say) => ({
      'lining-ends-before-it-starts': by < 1e-9 ? 'The lining begins and ends at the same angle: nothing is left to rub.' : `The lining’s upper end lies ${say(by, 'angle')} below its lower end. Swap the two angles.`,
      'hinge-outside-drum': `The lower shoe ends would stand ${say(by, 'length')} outside the drum. A radius is half of a diameter: check both.`,
      'cylinder-below-center': `The cylinder’s line lies ${say(by, 'length')} below the axle’s center. Measure it from the lower shoe ends.`,
      'cylinder-outside-drum': `The cylinder’s line would pass ${say(by, 'length')} outside the drum. Check both lengths against the drum’s radius.`,
      'anchor-outside-drum': `The anchor pin would stand ${say(by, 'length')} outside the drum. Check the three lengths against the drum’s radius.`,
      'self-locks': `${shoe} of these sizes locks by itself at friction ${say(v.liningFriction - by, 'friction')}; the lining typed is ${by < 0.0005 ? 'just there' : `${say(by, 'friction')} over`}. It would grab without any push and not let go. Check the lengths; if they are right, this lining does not belong in this drum.`,
      'rule-locks': `The lining typed is ${say(by, 'friction')} past the friction at which even the simple lever rule has the shoe lock by itself. Nothing computed here would hold. Check the lengths and the lining.`,
    })[impossible] ?? 'These drum sizes do not go together.',
  };
}

function problem(v: DrumValues): Impossible | undefined {
  const up = v.shoeHeight - v.shoePivot;
  if (up <= 0) return { impossible: 'cylinder-below-center', by: -up };
  if (up >= v.drumRadius) return { impossible: 'cylinder-outside-drum', by: up - v.drumRadius };
  const exact = factorOf(v);
  if (isImpossible(exact)) return exact;
  const rule = ruleOf(v);
  return isImpossible(rule) ? { impossible: 'rule-locks', by: rule.by ?? 0 } : undefined;
}

export const nearLocking = (v: ValuesOf<'liningFriction' | 'lockFriction'>): boolean => v.liningFriction > 0.8 * v.lockFriction;
export const frictionMovesMore = (v: ValuesOf<'frictionSensitivity'>): boolean => v.frictionSensitivity > 1.8;

export const drumFeed = defineFeed({
  id: 'drum-torque',
  title: 'Drum brake torque',
  inputs: [
    { title: 'Drum and shoes', of: ['drumType', 'wheelCylinderDiameter', 'drumRadius', 'shoePivot', 'shoeHeight', 'anchorAbove'] },
    { title: 'Lining', of: ['liningStart', 'liningEnd', 'liningFriction'] },
    { title: 'Springs, tire, pressure', of: ['drumPushOut', 'drumEfficiency', 'loadedRadius', 'rearPressure'] },
  ],
  feeds: [pressureFeed],
  outputs: ['drumBrakeForce', 'drumGain', 'drumTorque', 'firstShoeTorque', 'secondShoeTorque', 'brakeFactor', 'frictionSensitivity', 'lockFriction', 'brakeFactorByRule', 'firstShoeFactor', 'secondShoeFactor', 'linkPush', 'liningSine', 'liningCosine', 'shoeTipForce', 'wheelCylinderArea'],
  alarms: [
    { caution: 'near-locking', level: 'danger', when: nearLocking, first: 'the shoes are close to locking by themselves.' },
    { caution: 'friction-moves-more', level: 'warning', when: frictionMovesMore, first: 'this drum makes much of a little change of friction.' },
  ],
  compute: (v) => {
    const wrong = problem(v);
    if (wrong) return words(v, wrong);
    const arms = liningArms({ drumRadius: v.drumRadius, hingeRadius: v.shoePivot, startAngle: v.liningStart, endAngle: v.liningEnd });
    const [b, rule] = [factorOf(v), ruleOf(v)];
    if (isImpossible(arms) || isImpossible(b) || isImpossible(rule)) return words(v, { impossible: '' });
    const f = forceOf(v, b.brakeFactor);
    const [sine, cosine] = [arms.normalArm / v.shoePivot, (v.drumRadius - arms.frictionArm) / v.shoePivot];
    const up = v.shoeHeight - v.shoePivot;
    return {
      drumBrakeForce: f.axleForce, drumGain: f.gain, drumTorque: f.torquePerWheel,
      firstShoeTorque: (f.torquePerWheel * b.firstFactor) / b.brakeFactor, secondShoeTorque: (f.torquePerWheel * b.secondFactor) / b.brakeFactor,
      brakeFactor: b.brakeFactor, frictionSensitivity: b.sensitivity, lockFriction: b.lockFriction, brakeFactorByRule: rule.brakeFactor, firstShoeFactor: b.firstFactor, secondShoeFactor: b.secondFactor,
      linkPush: v.drumType === 'duo-servo' ? (b.firstFactor * ((up * sine) / v.liningFriction + v.drumRadius + up * cosine)) / v.shoeHeight : 0,
      liningSine: sine, liningCosine: cosine, shoeTipForce: f.tipForce, wheelCylinderArea: (Math.PI * v.wheelCylinderDiameter ** 2) / 4,
    };
  },
});
