import { standardGravity } from './constants.ts';
import type { Impossible } from './outcome.ts';
import { areFinite, areNonNegative, arePositive, requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Axle loads while braking, and what the road has to supply.
 *
 *   ψ = rearLoad/M     χ = h/L     W = M g     θ = atan(grade)
 *   N_f = W [(1 − ψ) cos θ + χ (z − sin θ)]
 *   N_r = W [ψ cos θ − χ (z − sin θ)]
 *   X   = W (z − sin θ)
 *
 * Free body, in the axes of the road: weight W cos θ into it and W sin θ along it, the two loads, and the force X
 * of the road against travel. Newton along the road gives X; moments about the front contact give N_r. So the
 * load that moves forward is X h/L, the road force times h over L, however the axles share that force.
 *
 * frontLoad, rearLoad (kg): static scale readings on the level. wheelbase L (m, 2.4–3.4); cgHeight h (m, 0.4–0.8);
 * rate z (deceleration over g, 0–1.2; 0 is parked, below 0 speeding up); grade (rise over run, + nose up, 0 if left
 * out, ±0.3).
 *
 * transfer (N): what the front carries above its share W(1 − ψ) cos θ. rearLiftRate: z at which N_r = 0.
 * groundForce X (N): negative where the hill slows the truck harder than z asks.
 *
 * Neglected: pitch and dive (they change attitude, not axle totals), air drag, the wheels' inertia, the drop of
 * the CG on its springs. Quasi-static: a hard stab overshoots for a moment.
 *
 * Impossible 'rear-axle-lifts' or 'front-axle-lifts', by how much z is past that point.
 * @throws RangeError if a load or length is not above 0, or rate or grade is not finite
 * Source: statics. Worked value: 777.2 and 562.8 kg, L 2.743, h 0.58 m, z 0.8 → N_r 3296 N, 25.1 % of the weight.
 */
export interface AxleLoads {
  readonly mass: number;
  readonly rearFraction: number;
  readonly heightRatio: number;
  readonly frontDynamic: number;
  readonly rearDynamic: number;
  readonly frontDynamicFraction: number;
  readonly rearDynamicFraction: number;
  readonly transfer: number;
  readonly groundForce: number;
  readonly rearLiftRate: number;
}

export function axleLoads(p: {
  readonly frontLoad: number;
  readonly rearLoad: number;
  readonly wheelbase: number;
  readonly cgHeight: number;
  readonly rate: number;
  readonly grade?: number;
}): AxleLoads | Impossible {
  const { frontLoad, rearLoad, wheelbase, cgHeight, rate, grade = 0 } = p;
  requirePositive({ frontLoad, rearLoad, wheelbase, cgHeight });
  requireFinite({ rate, grade });
  const mass = frontLoad + rearLoad;
  const weight = mass * standardGravity;
  const rearFraction = rearLoad / mass;
  const heightRatio = cgHeight / wheelbase;
  const cos = 1 / Math.hypot(1, grade);
  const sin = grade * cos;
  const rearLiftRate = sin + (rearFraction * cos) / heightRatio;
  const frontLiftRate = sin - ((1 - rearFraction) * cos) / heightRatio;
  if (rate > rearLiftRate) return { impossible: 'rear-axle-lifts', by: rate - rearLiftRate };
  if (rate < frontLiftRate) return { impossible: 'front-axle-lifts', by: frontLiftRate - rate };
  const groundForce = weight * (rate - sin);
  const transfer = groundForce * heightRatio;
  const frontDynamic = weight * (1 - rearFraction) * cos + transfer;
  const rearDynamic = weight * rearFraction * cos - transfer;
  const total = weight * cos;
  return {
    mass,
    rearFraction,
    heightRatio,
    frontDynamic,
    rearDynamic,
    frontDynamicFraction: frontDynamic / total,
    rearDynamicFraction: rearDynamic / total,
    transfer,
    groundForce,
    rearLiftRate,
  };
}

/**
 * Static axle loads and CG height with something in the bed.
 *
 *   front' = front + m_p x_p/L     rear' = rear + m_p (1 − x_p/L)     h' = (h M + h_p m_p)/(M + m_p)
 *
 * Moments about the rear contact give the front's part; the two parts add up to m_p.
 *
 * payload m_p (kg, 0 or more); payloadAhead x_p (m): its middle ahead of the rear axle, negative behind it;
 * payloadHeight h_p (m over the ground). Other symbols as axleLoads.
 *
 * Neglected: the tail squats under the load, which lowers the CG and tips it back a little. Weigh the loaded truck
 * where it matters.
 *
 * Impossible 'front-axle-lifts', by how many kg the front would have to be held down.
 * @throws RangeError if a load or length is not above 0, payload or payloadHeight is negative
 * Source: statics. Worked value: the truck above with 350 kg, 0.25 m ahead, 0.75 m high → ψ 0.521, h 0.615 m.
 */
export function withPayload(p: {
  readonly frontLoad: number;
  readonly rearLoad: number;
  readonly wheelbase: number;
  readonly cgHeight: number;
  readonly payload: number;
  readonly payloadAhead: number;
  readonly payloadHeight: number;
}):
  | {
      readonly frontLoad: number;
      readonly rearLoad: number;
      readonly cgHeight: number;
      readonly mass: number;
      readonly rearFraction: number;
    }
  | Impossible {
  const { wheelbase, cgHeight, payload, payloadAhead, payloadHeight } = p;
  if (!arePositive(p.frontLoad, p.rearLoad, wheelbase, cgHeight)) requirePositive({ frontLoad: p.frontLoad, rearLoad: p.rearLoad, wheelbase, cgHeight });
  if (!areNonNegative(payload, payloadHeight)) requireNonNegative({ payload, payloadHeight });
  if (!areFinite(payloadAhead)) requireFinite({ payloadAhead });
  const onFront = (payload * payloadAhead) / wheelbase;
  const frontLoad = p.frontLoad + onFront;
  const rearLoad = p.rearLoad + payload - onFront;
  // A load far ahead of the front axle would lift the rear: no bed reaches there, the sum does all the same.
  if (frontLoad <= 0) return { impossible: 'front-axle-lifts', by: -frontLoad };
  if (rearLoad <= 0) return { impossible: 'rear-axle-lifts', by: -rearLoad };
  const mass = frontLoad + rearLoad;
  return {
    frontLoad,
    rearLoad,
    cgHeight: (cgHeight * (p.frontLoad + p.rearLoad) + payloadHeight * payload) / mass,
    mass,
    rearFraction: rearLoad / mass,
  };
}
