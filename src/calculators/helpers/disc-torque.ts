import { discAxle } from '../../engine/disc.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { defineFeed } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { pressureFeed } from './line-pressure.ts';

type Front = 'frontPistonDiameter' | 'frontPistons' | 'frontCaliperType' | 'frontPadFriction' | 'frontTrackOuter' | 'frontTrackInner' | 'frontPressure';
type Rear = 'rearPistonDiameter' | 'rearPistons' | 'rearCaliperType' | 'rearPadFriction' | 'rearTrackOuter' | 'rearTrackInner' | 'rearPressure';
export type DiscInputs = Front | Rear | 'padLaw' | 'caliperEfficiency' | 'pushOutPressure' | 'loadedRadius';
export type Side = 'front' | 'rear';

function axle(v: ValuesOf<DiscInputs>, side: Side) {
  // Each key in full: to join them anew for each of 10,000 trucks takes longer than the sum.
  const own = side === 'front'
    ? { pistonDiameter: v.frontPistonDiameter, pistonsPerSide: v.frontPistons, type: v.frontCaliperType, friction: v.frontPadFriction, outer: v.frontTrackOuter, inner: v.frontTrackInner, pressure: v.frontPressure }
    : { pistonDiameter: v.rearPistonDiameter, pistonsPerSide: v.rearPistons, type: v.rearCaliperType, friction: v.rearPadFriction, outer: v.rearTrackOuter, inner: v.rearTrackInner, pressure: v.rearPressure };
  return discAxle({ ...own, law: v.padLaw === 'worn' ? 'worn-in' : 'uniform-pressure', efficiency: v.caliperEfficiency, loadedRadius: v.loadedRadius, pushOut: v.pushOutPressure });
}

/** The axle's brake force at a pressure, both wheels. */
export function axleForce(v: ValuesOf<DiscInputs>, side: Side, pressure: number): number {
  const r = axle({ ...v, [`${side}Pressure`]: pressure }, side);
  return isImpossible(r) ? NaN : r.axleForce;
}

function refusal(v: ValuesOf<DiscInputs>): Refusal | undefined {
  for (const side of ['front', 'rear'] as const) {
    const [outer, inner] = side === 'front' ? [v.frontTrackOuter, v.frontTrackInner] : [v.rearTrackOuter, v.rearTrackInner];
    if (inner === outer) return { refused: (say) => `The ${side} brake pad’s track has both edges at ${say(inner, 'length')}: no pad is left between them.` };
    if (inner > outer) return { refused: (say) => `The ${side} brake pad’s track has its inner edge ${say(inner - outer, 'length')} outside its outer edge. Swap the two radii.` };
    if (outer >= v.loadedRadius) return { refused: (say) => `The ${side} brake pad’s track reaches ${say(outer - v.loadedRadius, 'length')} into the road. A radius is half of a diameter: check it.` };
  }
  return undefined;
}

type Discs = ValuesOf<'frontPadFriction' | 'rearPadFriction' | 'frontBrakeGain' | 'rearBrakeGain'>;
export const frictionHopeful = (v: Discs): boolean => Math.max(v.frontPadFriction, v.rearPadFriction) > 0.45;
export const padsDiffer = (v: Discs): boolean => v.rearPadFriction - v.frontPadFriction > 0.03;
export const rearAsStrong = (v: Discs): boolean => v.rearBrakeGain > 0.8 * v.frontBrakeGain;

export const discFeed = defineFeed({
  id: 'disc-torque',
  title: 'Disc brake torque',
  inputs: [
    { title: 'Front brakes', of: ['frontPistonDiameter', 'frontPistons', 'frontCaliperType', 'frontPadFriction', 'frontTrackOuter', 'frontTrackInner'] },
    { title: 'Rear brakes', of: ['rearPistonDiameter', 'rearPistons', 'rearCaliperType', 'rearPadFriction', 'rearTrackOuter', 'rearTrackInner'] },
    { title: 'Both axles', of: ['padLaw', 'caliperEfficiency', 'pushOutPressure', 'loadedRadius'] },
    { title: 'Pressure', of: ['frontPressure', 'rearPressure'] },
  ],
  feeds: [pressureFeed],
  outputs: ['frontBrakeGain', 'rearBrakeGain', 'frontEffectiveRadius', 'rearEffectiveRadius', 'frontClampArea', 'rearClampArea', 'frontClampForce', 'rearClampForce', 'frontBrakeTorque', 'rearBrakeTorque'],
  alarms: [
    { caution: 'friction-hopeful', level: 'warning', when: frictionHopeful, first: 'this friction is more than street brake pads hold through heat.' },
    { caution: 'pads-differ', level: 'warning', when: padsDiffer, first: 'the rear brake pads grip more than the front ones.' },
    { caution: 'rear-as-strong', level: 'warning', when: rearAsStrong, first: 'at equal pressure the rear brakes nearly as hard as the front.' },
  ],
  compute: (v) => {
    const refused = refusal(v);
    if (refused) return refused;
    const [f, r] = [axle(v, 'front'), axle(v, 'rear')];
    if (isImpossible(f) || isImpossible(r)) return { refused: () => 'These brake pad tracks are not possible.' };
    return {
      frontBrakeGain: f.gain, rearBrakeGain: r.gain, frontEffectiveRadius: f.effectiveRadius, rearEffectiveRadius: r.effectiveRadius, frontClampArea: f.clampArea, rearClampArea: r.clampArea,
      frontClampForce: f.clampForce, rearClampForce: r.clampForce, frontBrakeTorque: f.torquePerWheel, rearBrakeTorque: r.torquePerWheel,
    };
  },
});
