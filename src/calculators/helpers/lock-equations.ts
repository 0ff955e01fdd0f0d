import { standardGravity } from '../../engine/constants.ts';
import type { Equation, Values, ValuesOf } from '../record.ts';
import type { QuantityKey } from '../vocabulary/index.ts';
import { criticalOf, stand } from './lock.ts';
import type { Load, LockInputs } from './lock.ts';

const asValues = (v: Values): ValuesOf<LockInputs> => v as unknown as ValuesOf<LockInputs>;

/** The equations of one load. A valve changes them where the rear's pressure is past its knee. */
export function lockEquations(load: Load): readonly Equation[] {
  const [crit, front, rear, mass, psi, chi] = (load === 'empty'
    ? ['criticalRate', 'frontLockRate', 'rearLockRate', 'mass', 'rearLoadFraction', 'heightRatio']
    : ['ladenCriticalRate', 'ladenFrontLockRate', 'ladenRearLockRate', 'ladenMass', 'ladenRearLoadFraction', 'ladenHeightRatio']) as [QuantityKey, QuantityKey, QuantityKey, QuantityKey, QuantityKey, QuantityKey];
  // Above the knee only the slope's part of the rear goes on rising with the front.
  const both = '(1 - rearBrakeFraction + valveSlope * rearBrakeFraction)';
  const lost = `(1 - rearBrakeFraction) * (1 - valveSlope) * rearBrakeGain * kneePressure / (${mass} * g)`;
  const at = (v: Values, key: string): number => v[key] as number;
  const lean = (v: Values): number => at(v, 'grip') * at(v, chi);
  const openRate = {
    front: (v: Values) => {
      const gap = 1 - at(v, 'rearBrakeFraction') - lean(v);
      return gap > 0 ? (at(v, 'grip') * (1 - at(v, psi))) / gap : Infinity;
    },
    rear: (v: Values) => (at(v, 'grip') * at(v, psi)) / (at(v, 'rearBrakeFraction') + lean(v)),
  };
  /** With the valve wide open that axle would lock with the rear's pressure past the knee. */
  const held = (axle: 'front' | 'rear') => (v: Values): boolean => v['rearValve'] === 'fitted'
    && at(v, 'rearBrakeFraction') * openRate[axle](v) * at(v, mass) * standardGravity > at(v, 'rearBrakeGain') * at(v, 'kneePressure');
  const bent = (v: Values) => criticalOf(asValues(v), stand(asValues(v), load)).bent;
  const lifts = (v: Values) => at(v, front) >= at(v, psi) / at(v, chi);
  const statics = 'derived: statics';
  return [
    { result: crit, expression: `max(0, (${psi} - rearBrakeFraction) / ${chi})`, words: 'Where the fixed rear share meets the ideal one, which falls as you brake harder. On a road with more grip than this the rear locks first; at 0 it does on every road.', source: statics, when: (v) => !bent(v) },
    {
      result: crit, expression: `(${psi} - (valveSlope * rearBrakeFraction + ${lost} / ${crit}) / ${both}) / ${chi}`,
      words: 'Where the rear share that the valve leaves meets the ideal one.', source: statics, found: 'The larger root of a quadratic; this is the condition it meets.', when: bent,
    },
    { result: front, expression: `grip * (1 - ${psi}) / (1 - rearBrakeFraction - grip * ${chi})`, words: 'The front locks where its brake force is grip times the load on it, and braking adds to that load.', source: statics, when: (v) => !held('front')(v) && !lifts(v) },
    { result: front, expression: `(grip * (1 - ${psi}) * ${both} + ${lost}) / (1 - rearBrakeFraction - grip * ${chi} * ${both})`, words: 'The same with the rear held back by the valve.', source: statics, when: (v) => held('front')(v) && !lifts(v) },
    { result: front, expression: `${psi} / ${chi}`, words: 'The front would not lock before the rear wheels leave the road: this is the rate at which they do.', source: statics, when: lifts },
    { result: rear, expression: `grip * ${psi} / (rearBrakeFraction + grip * ${chi})`, words: 'The rear locks where its brake force is grip times the load that braking leaves on it.', source: statics, when: (v) => !held('rear')(v) },
    { result: rear, expression: `(grip * ${psi} * ${both} - ${lost}) / (valveSlope * rearBrakeFraction + grip * ${chi} * ${both})`, words: 'The same with the rear held back by the valve.', source: statics, when: held('rear') },
  ];
}
