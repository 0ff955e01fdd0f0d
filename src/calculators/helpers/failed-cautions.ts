import { standardGravity } from '../../engine/constants.ts';
import { bar, cm3, deg, inch, lbf, mm } from '../../units/si.ts';
import { defineCautions } from '../record.ts';
import type { Example, ValuesOf } from '../record.ts';
import type { FailedInputs } from './failed-pedal.ts';

type Results =
  | 'rateFrontDead' | 'rateRearDead' | 'travelFrontDead' | 'travelRearDead' | 'floorMarginFrontDead' | 'floorMarginRearDead' | 'pressureFrontDead' | 'pressureRearDead'
  | 'slipLimitFrontDead' | 'slipLimitRearDead' | 'flatFromFrontDead' | 'flatToFrontDead' | 'flatFromRearDead' | 'flatToRearDead' | 'barLead' | 'stateFrontDead' | 'stateRearDead' | 'mass';
type V = ValuesOf<FailedInputs | Results>;

/** Clearance over the carpet that common practice asks for in a failure. */
const clear = inch;
/** FMVSS 135 S7.10 as a rate: S = 0.10 V + 0.0158 V² in m and km/h is 2.44 m/s². */
const yardstick = 0.25;

const flats = (v: V) => [
  { dead: 'front', live: 'rear', from: v.flatFromFrontDead, to: v.flatToFrontDead },
  { dead: 'rear', live: 'front', from: v.flatFromRearDead, to: v.flatToRearDead },
].filter((f) => f.to > 0 && v.controlForce >= f.from && v.controlForce <= f.to);

const shares = (v: V) => [
  ...(v.stateFrontDead === 'on-dead-master' ? [{ dead: 'front', live: 'rear' }] : []),
  ...(v.stateRearDead === 'on-dead-master' ? [{ dead: 'rear', live: 'front' }] : []),
];

/** Rates that the live axle's pressure asks of its tires. */
const rearAsks = (v: V): number => (v.rearBrakeGain * Math.max(0, v.pressureFrontDead - v.pushOutPressure)) / (v.mass * standardGravity);
const frontAsks = (v: V): number => (v.frontBrakeGain * Math.max(0, v.pressureRearDead - v.pushOutPressure)) / (v.mass * standardGravity);

export const failureCautions = defineCautions<V>([
  {
    id: 'pad-near-carpet', level: 'danger', when: (v) => Math.min(v.floorMarginFrontDead, v.floorMarginRearDead) < clear,
    words: (v, say) => {
      const say1 = (dead: string, margin: number) => (margin >= clear ? '' : margin > 0 ? `With the ${dead} dead the pedal is only ${say(margin, 'length', 2)} above the carpet. ` : `With the ${dead} dead the pedal stands on the carpet. `);
      return `${say1('front', v.floorMarginFrontDead)}${say1('rear', v.floorMarginRearDead)}There a harder push only pushes the floor, and air, wear or a thicker mat take what brakes are left.`;
    },
    todo: 'Do not drive it like this. More room over the carpet, a shorter lead at the bar’s stop, or bores that need less stroke, until at least 1 in (25 mm) is left in both failures (common practice, no source).',
    fires: {}, silent: { floorTravel: 8 * inch },
  },
  {
    id: 'rear-slides', level: 'danger', when: (v) => rearAsks(v) > v.slipLimitFrontDead,
    words: (v, say) => `With the front dead, this foot force asks ${say(rearAsks(v), 'brakingRate', 2)} of rear tires that can give ${say(v.slipLimitFrontDead, 'brakingRate', 2)}. They lock, and an empty pickup with locked rears turns around. Pushing harder makes it worse.`,
    todo: 'Know it before it happens: ease the pedal until the rear wheels roll again, and steer.',
    fires: { floorTravel: 8 * inch }, silent: { controlForce: 40 * lbf },
  },
  {
    id: 'fronts-slide', level: 'warning', when: (v) => frontAsks(v) > v.slipLimitRearDead,
    words: 'With the rear dead this foot slides the front tires. The truck goes straight on and does not steer.',
    todo: 'Ease off until the wheels roll.',
    fires: { grip: 0.4 }, silent: {},
  },
  {
    id: 'flat-spot', level: 'warning', when: (v) => flats(v).length > 0,
    words: (v, say) => flats(v).map((f) => `With the ${f.dead} dead your foot force is in a flat spot: from ${say(f.from, 'force')} to ${say(f.to, 'force')} the dead ${f.dead} master stops the pedal and takes every extra pound, and the ${f.live} gets no more.`).join(' '),
    todo: 'A hard, high pedal feels like good brakes here. Read the gauge, not the pedal. Less lead, more stroke in the dead master or bores that need less stroke move the flat spot up.',
    fires: { floorTravel: 8 * inch }, silent: { controlForce: 20 * lbf },
  },
  {
    id: 'own-share-only', level: 'warning', when: (v) => shares(v).length > 0,
    words: (v) => shares(v).map((s) => `With the ${s.dead} dead its master bottoms and its clevis becomes the fulcrum: the ${s.live} brakes get only the share they always had, and the rest of your push goes into a casting.`).join(' '),
    todo: 'If that rate is too low, give the bar a nearer stop or the masters more stroke, so that the live side gets all of the push for longer.',
    fires: { floorTravel: 8 * inch }, silent: { controlForce: 20 * lbf },
  },
  {
    id: 'no-stop', level: 'danger', when: (v) => v.barStop === 'none',
    words: 'Nothing stops this bar. With one circuit dead it swings until the dead master bottoms, the pedal goes far, and the live side never gets more than its share.',
    todo: 'Fit a stop that works in both directions, steel on steel, and prove it by hand with the masters off the rods.',
    fires: { barStop: 'none' }, silent: {},
  },
  {
    id: 'stop-too-far', level: 'warning', when: (v) => v.barStop === 'fitted' && v.barLead >= Math.min(v.frontMasterStroke, v.rearMasterStroke),
    words: (v, say) => `The dead master bottoms before the bar meets its stop: the lead of ${say(v.barLead, 'length')} is more than a master’s stroke. The stop might as well not be there.`,
    todo: 'Bring the stop nearer: the lead must leave the live side the stroke it needs alone, and still clear the tilt of an ordinary hard stop.',
    fires: { barStopAngle: 30 * deg }, silent: {},
  },
  {
    id: 'below-yardstick', level: 'warning', when: (v) => Math.min(v.rateFrontDead, v.rateRearDead) < yardstick,
    words: (v, say) => `One failure leaves ${say(Math.min(v.rateFrontDead, v.rateRearDead), 'brakingRate', 2)}. The failed-circuit stop for new light vehicles, 168 m (551 ft) from 100 km/h with at most 500 N (112 lbf), is about 0.25 g (FMVSS 135 S7.10, from memory, agrees with the distance formula).`,
    todo: 'Use it to judge how long that stop is. It is a yardstick for size, and neither this page nor that figure says that your truck complies with anything.',
    fires: { controlForce: 25 * lbf }, silent: { floorTravel: 8 * inch },
  },
  {
    id: 'rear-only-is-poor', level: 'warning',
    words: (v, say) => `With the front dead no pipe, bore or pedal gets more than ${say(v.slipLimitFrontDead, 'brakingRate', 2)} on this road: that is all the rear tires of this truck can hold once braking has taken load off them.`,
    todo: 'Leave distance, and stop for good at the first warning lamp or the first long pedal. On a wet road it is less: type a lower grip.',
  },
  {
    id: 'all-of-the-push', level: 'warning', when: (v) => Math.max(v.pressureFrontDead, v.pressureRearDead) > 100 * bar,
    words: (v, say) => `With the other circuit dead one line carries ${say(Math.max(v.pressureFrontDead, v.pressureRearDead), 'pressure')}. A weak flare or an old hose can fail just then, and it is the last line you have.`,
    todo: 'Choose hose, tube and gauge for this pressure and a panic push, not for the ordinary one.',
    fires: { controlForce: 150 * lbf, floorTravel: 10 * inch, frontMasterStroke: 50 * mm, rearMasterStroke: 50 * mm }, silent: { controlForce: 40 * lbf },
  },
  {
    id: 'test-it', level: 'danger',
    words: 'These strokes are calculated. Air, flex, worn brake pads and a thick mat all use more, and nobody finds out in ordinary driving that a pedal reaches the floor.',
    todo: 'Before the first drive: open a front bleeder into a bottle, push slowly to this foot force and measure pedal pad to carpet, gauge in a rear bleeder. Push half as hard again: the gauge must rise. Close the bleeder before you let go. Then the same at the rear. If less than 1 in (25 mm) is left in either test, or the gauge does not rise with a harder push, do not drive. Clamping a hose does not show this (New South Wales Brake assessment manual, pages 12, 25 and 38).',
  },
]);

const reference = {
  controlForce: 500, pushrodFreePlay: 0, barRestLead: 0, pedalRatio: 6.2, linkageEfficiency: 0.85, barSpacing: 63.5 * mm, barOffset: 7.62 * mm, barStop: 'fitted', barStopAngle: 12 * deg, deadCircuit: 'front',
  frontMasterBore: 17.78 * mm, rearMasterBore: 17.78 * mm, frontMasterStroke: 28 * mm, rearMasterStroke: 28 * mm, portStroke: 1 * mm,
  frontTakeUp: 1.874 * cm3, rearTakeUp: 0.884 * cm3, frontCompliance: 0.051 * cm3 / bar, rearCompliance: 0.033 * cm3 / bar,
  frontBrakeGain: 122.84 / bar, rearBrakeGain: 63.4 / bar, pushOutPressure: 0, frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, grip: 0.9,
} as const;

export const failureExamples: readonly Example<V>[] = [
  {
    source: 'Worked by hand: drums that bite from 70 psi (4.826 bar). Front dead, no stop: 40.33 bar as below, 63.4 × (40.33 − 4.826) N on 1340 kg',
    inputs: { ...reference, barStop: 'none', floorTravel: 250 * mm, pushOutPressure: 4.8263 * bar },
    results: { pressureFrontDead: { value: 40.33 * bar, within: 0.001 }, rateFrontDead: { value: 0.1713, within: 0.001 } },
  },
  {
    source: 'Reference truck worked by hand: 500 N, carpet out of reach',
    inputs: { ...reference, floorTravel: 180 * mm },
    results: {
      pressureFrontDead: { value: 77.02 * bar, within: 0.001 }, flatFromFrontDead: { value: 362.9, within: 0.001 }, flatToFrontDead: { value: 954.9, within: 0.001 },
      travelFrontDead: { value: 142.5 * mm, within: 0.001 }, slipLimitFrontDead: { value: 0.3176, within: 0.001 }, rateFrontDead: { value: 0.3176, within: 0.001 },
      pressureRearDead: { value: 65.8 * bar, within: 0.001 }, frontStrokeRearDead: { value: 22.06 * mm, within: 0.001 }, rearStrokeRearDead: { value: 28 * mm, within: 1e-9 },
      travelRearDead: { value: 150.8 * mm, within: 0.001 }, slipLimitRearDead: { value: 0.6447, within: 0.001 }, rateRearDead: { value: 0.615, within: 0.001 },
    },
  },
  {
    source: 'Statics, worked by hand: the same truck with no stop gets exactly the ordinary share, 0.38 of 2635 N on 248.3 mm², from the first pound',
    inputs: { ...reference, barStop: 'none', floorTravel: 250 * mm },
    results: { pressureFrontDead: { value: 40.33 * bar, within: 0.001 }, flatToFrontDead: { value: 0, within: 0 }, rateFrontDead: { value: 0.1946, within: 0.001 } },
  },
  {
    source: 'Geometry, worked by hand: the same truck, front dead, carpet at 120 mm. The bar is on its stop, so the rear has 120/6.2 − 0.62 × 13.20 = 11.17 mm',
    inputs: { ...reference, floorTravel: 120 * mm },
    results: { rearStrokeFrontDead: { value: 11.169 * mm, within: 0.001 }, floorMarginFrontDead: { value: 0, within: 0 }, pressureFrontDead: { value: 49.73 * bar, within: 0.002 } },
  },
];
