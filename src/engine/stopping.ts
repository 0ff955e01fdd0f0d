import { standardGravity } from './constants.ts';
import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative } from './require.ts';

/**
 * Stopping distance with a reaction time, a straight-line rise of the brakes and a grade.
 *
 *   B = z g cos θ            deceleration by the brakes     G = g sin θ     by the grade (uphill positive)
 *   rise, 0 ≤ t ≤ t_b:  v(t) = v − G t − B t²/(2 t_b)       s(t) = v t − G t²/2 − B t³/(6 t_b)
 *   after it:           v1²/(2 (B + G)) more, v1 = v(t_b)
 * On the flat this is exactly  v t_r + v t_b/2 − z g t_b²/24 + v²/(2 z g).  The usual short form leaves out the
 * third term and is long by it, up to about 5 cm. This is the full form.
 *
 * speed v (m/s); rate z (g; what the truck reaches on the flat, 0–1.2); reactionTime t_r (s, 0.75–2.5);
 * buildUpTime t_b (s, 0.1–0.4); grade = tan θ (0.10 is 10 %, uphill positive).
 *
 * cos θ: on a grade the tires press on the road by cos θ less. A stop limited by the pedal instead keeps its full
 * z g, so cos θ is on the safe side there, by 0.5 % at 10 % grade. The speed is held while the driver reacts; the
 * grade acts from the moment the foot leaves the throttle. If the truck halts during the rise, it is solved there.
 * Neglected: air and rolling drag, engine braking, fade, wheel lock.
 *
 * buildUpDistance is what the rise adds against brakes that bite at once. brakingDistance is without reaction,
 * stoppingDistance with. time is from the start of the reaction to the halt.
 * Impossible 'never-stops' where B + G ≤ 0, by the missing deceleration (m/s²).
 *
 * @throws RangeError if a value is not finite, or one other than the grade is negative
 * Source: derived by integration. Worked value: 60 mph (26.82 m/s), z 0.8, t_r 1.5 s, t_b 0.3 s, flat:
 * 150.4 ft, 13.1 ft more for the rise and 132.0 ft for the reaction: 295.5 ft (90.1 m).
 */
export function stoppingDistance(p: {
  readonly speed: number;
  readonly rate: number;
  readonly reactionTime: number;
  readonly buildUpTime: number;
  readonly grade: number;
}):
  | {
      readonly reactionDistance: number;
      readonly buildUpDistance: number;
      readonly brakingDistance: number;
      readonly stoppingDistance: number;
      readonly time: number;
    }
  | Impossible {
  const { speed, rate, reactionTime, buildUpTime, grade } = p;
  requireNonNegative({ speed, rate, reactionTime, buildUpTime });
  requireFinite({ grade });
  const slope = Math.atan(grade);
  const brakes = rate * standardGravity * Math.cos(slope);
  const hill = standardGravity * Math.sin(slope);
  const net = brakes + hill;
  if (!(net > 0)) return { impossible: 'never-stops', by: -net };

  const braked = distanceUnderBrakes({ speed, brakes, hill, buildUpTime });
  const reactionDistance = speed * reactionTime;
  return {
    reactionDistance,
    buildUpDistance: braked.distance - speed ** 2 / (2 * net),
    brakingDistance: braked.distance,
    stoppingDistance: reactionDistance + braked.distance,
    time: reactionTime + braked.time,
  };
}

function distanceUnderBrakes({ speed, brakes, hill, buildUpTime }: {
  readonly speed: number;
  readonly brakes: number;
  readonly hill: number;
  readonly buildUpTime: number;
}): { readonly distance: number; readonly time: number } {
  const net = brakes + hill;
  const speedAfterRise = speed - hill * buildUpTime - (brakes * buildUpTime) / 2;
  if (speedAfterRise >= 0) {
    const during = speed * buildUpTime - (hill * buildUpTime ** 2) / 2 - (brakes * buildUpTime ** 2) / 6;
    return { distance: during + speedAfterRise ** 2 / (2 * net), time: buildUpTime + speedAfterRise / net };
  }
  // v(t) = 0 inside the rise. The quadratic's root has two spellings; each fails where the other holds:
  // the second from a standstill, the first uphill with the brakes off.
  const root = Math.sqrt(hill ** 2 + (2 * brakes * speed) / buildUpTime);
  const t = hill > 0 ? (2 * speed) / (hill + root) : (buildUpTime * (root - hill)) / brakes;
  return { distance: speed * t - (hill * t ** 2) / 2 - (brakes * t ** 3) / (6 * buildUpTime), time: t };
}
