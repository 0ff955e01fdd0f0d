import { legAngles, pushOffPath } from '../../engine/legAngles.ts';
import type { Flat } from '../../engine/legAngles.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { inch } from '../../units/si.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';

export type V = ValuesOf<'hipBehindPad' | 'hipOverFloor' | 'padOverHeel' | 'padArm' | 'padRestAngle' | 'padTravelNormal' | 'failedPadTravel' | 'thighLength' | 'shinLength' | 'heelBehindPad' | 'heelOverFloor' | 'ankleHeight'>;

/** The pad on its arc: at the origin's height over the floor at rest, forward and down or up from there. */
function padAt(v: V, travel: number): Flat {
  const angle = v.padRestAngle + travel / v.padArm;
  return { x: v.padArm * (Math.sin(angle) - Math.sin(v.padRestAngle)), z: v.padOverHeel + v.padArm * (Math.cos(v.padRestAngle) - Math.cos(angle)) };
}

/** A heel on the floor stays there and the ball slides up the pad; a lifted one goes along with the pad. */
const resting = 0.25 * inch;
function heelAt(v: V, pad: Flat): Flat {
  const along = v.heelOverFloor > resting;
  return { x: -v.heelBehindPad + (along ? pad.x : 0), z: v.heelOverFloor + (along ? pad.z - v.padOverHeel : 0) };
}

function solve(v: V, travel: number) {
  const ball = padAt(v, travel);
  return legAngles({ hip: { x: -v.hipBehindPad, z: v.hipOverFloor }, heel: heelAt(v, ball), ball, thigh: v.thighLength, shin: v.shinLength, ankleHeight: v.ankleHeight });
}

/** The picture moves in so many steps, and each of them has been tried. */
const steps = 32;
export const travelEnd = (v: V): number => Math.max(1e-3, v.padTravelNormal, v.failedPadTravel);

/** Why this leg does not reach somewhere between pedal up and its longest travel, or undefined. */
export function noSuchLeg(v: V): Refusal | undefined {
  const end = travelEnd(v);
  for (const travel of [0, v.padTravelNormal, v.failedPadTravel, ...Array.from({ length: steps + 1 }, (_, k) => (k / steps) * end)]) {
    const r = solve(v, travel);
    if (!isImpossible(r)) continue;
    const by = r.by ?? 0;
    const when = (say: Say): string => (travel === 0 ? 'with the pedal up' : travel === v.padTravelNormal ? 'in a hard stop' : travel === v.failedPadTravel ? 'with a circuit dead' : `with the pedal down ${say(travel, 'length')}`);
    return {
      refused: (say) => ({
        'no-foot': 'The heel is where the middle of the pad is: that is no foot. Measure how far behind the pad and how high the heel stands.',
        'too-far': `The leg is ${say(by, 'length')} too short to reach the pad ${when(say)}. Seat forward, or pedal nearer.`,
        'too-near': `The seat is ${say(by, 'length')} too near for these bones ${when(say)}: the leg cannot fold that far.`,
      })[r.impossible] ?? 'This leg does not fit.',
    };
  }
  return undefined;
}

/** The leg wherever the picture's slider stands; where it does not reach between two steps that it does, at the nearest of them. */
export const legNear = (v: V, travel: number) => legAt(v, isImpossible(solve(v, travel)) ? (Math.round((travel / travelEnd(v)) * steps) / steps) * travelEnd(v) : travel);

/** Throws where `noSuchLeg` would have refused. */
export function legAt(v: V, travel: number) {
  const r = solve(v, travel);
  if (isImpossible(r)) throw new RangeError(`leg: expected a reach that noSuchLeg lets pass, found ${r.impossible}`);
  const { off } = pushOffPath({ hip: { x: -v.hipBehindPad, z: v.hipOverFloor }, ball: padAt(v, travel), armAngle: v.padRestAngle + travel / v.padArm });
  return { ...r, off, pad: padAt(v, travel), heel: heelAt(v, padAt(v, travel)), pivot: { x: -v.padArm * Math.sin(v.padRestAngle), z: v.padOverHeel + v.padArm * Math.cos(v.padRestAngle) } };
}
