import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * How much more pressure the brakes hold on the way up of a foot than they had on its way down, at one foot force.
 *
 *   h = (p_off − p_on)/(p_off + p_on)      half the difference over the mean, for each circuit
 *   drag  = the same of the whole push A_f p_f + A_r p_r       share = half of (s off − s on), s = A_f p_f/(A_f p_f + A_r p_r)
 *
 * p_on, p_off: on the straight line between the two readings nearest to the force, pressed on ('rising') and let off
 * ('falling'); a force read more than once counts with its mean. Friction at the pivot, the rods and the seals holds both
 * circuits up alike: that is drag. Friction of the bar in its bearing moves push from one master to the other: that is
 * share, positive where the front keeps more of it as the foot leaves. It is undefined where a valve has bent the rear.
 *
 * readings; force F (N, above 0); frontArea, rearArea (m²) of the masters; scatter σ (Pa) of each circuit's readings, pressed on
 * and let off; knee (Pa, none if left out): rear pressure above which a valve reduces.
 * frontError, rearError of h: one standard deviation, √(w_on σ_on² + w_off σ_off²)/(p_on + p_off), w = Σ of the squared weights.
 *
 * Neglected: readings taken while the pressure still creeps; hold each for three seconds.
 * Impossible 'no-falling-readings'; 'force-not-bracketed' by how far (N) the force lies outside the readings.
 * @throws RangeError if the force or an area is not above 0 or a scatter negative; on no rising readings
 * Source: derived. Worked value: 29.2 and 17.9 bar on, 31.0 and 19.0 off, equal bores → front 0.030, rear 0.030, drag 0.030.
 */
export interface GaugeReading {
  readonly controlForce: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly direction: 'rising' | 'falling';
}

export interface Hysteresis {
  readonly front: number;
  readonly rear: number;
  readonly frontError: number;
  readonly rearError: number;
  readonly drag: number;
  readonly share: number | undefined;
}

export type CircuitPair = { readonly front: number; readonly rear: number };

export function gaugeHysteresis({ readings, force, frontArea, rearArea, scatterOn, scatterOff, knee = Infinity }: {
  readonly readings: readonly GaugeReading[];
  readonly force: number;
  readonly frontArea: number;
  readonly rearArea: number;
  readonly scatterOn: CircuitPair;
  readonly scatterOff: CircuitPair;
  readonly knee?: number | undefined;
}): Hysteresis | Impossible {
  requirePositive({ force, frontArea, rearArea });
  requireNonNegative({ ...scatterOn });
  requireNonNegative({ ...scatterOff });
  const rising = readings.filter((r) => r.direction === 'rising');
  const falling = readings.filter((r) => r.direction === 'falling');
  if (rising.length === 0) throw new RangeError('readings: expected rising ones, found none');
  if (falling.length === 0) return { impossible: 'no-falling-readings' };
  const on = readAt(rising, force);
  const off = readAt(falling, force);
  if ('outside' in on || 'outside' in off) {
    return { impossible: 'force-not-bracketed', by: Math.max('outside' in on ? on.outside : 0, 'outside' in off ? off.outside : 0) };
  }
  const part = (a: number, b: number): number => (b - a) / (b + a);
  const push = (p: CircuitPair): number => p.front * frontArea + p.rear * rearArea;
  const error = (k: 'front' | 'rear'): number => Math.sqrt(scatterOn[k] ** 2 * on.weight + scatterOff[k] ** 2 * off.weight) / (on[k] + off[k]);
  return {
    front: part(on.front, off.front),
    rear: part(on.rear, off.rear),
    frontError: error('front'),
    rearError: error('rear'),
    drag: part(push(on), push(off)),
    share: Math.max(on.rear, off.rear) > knee ? undefined : ((off.front * frontArea) / push(off) - (on.front * frontArea) / push(on)) / 2,
  };
}

/** weight: Σ of the squared weights of the readings used, the part of one reading's variance that is left. */
function readAt(list: readonly GaugeReading[], force: number): (CircuitPair & { readonly weight: number }) | { readonly outside: number } {
  const forces = list.map((r) => r.controlForce);
  const below = Math.max(...forces.filter((f) => f <= force));
  const above = Math.min(...forces.filter((f) => f >= force));
  if (below === -Infinity) return { outside: above - force };
  if (above === Infinity) return { outside: force - below };
  const mean = (at: number) => {
    const here = list.filter((r) => r.controlForce === at);
    const of = (key: 'frontPressure' | 'rearPressure'): number => here.reduce((sum, r) => sum + r[key], 0) / here.length;
    return { front: of('frontPressure'), rear: of('rearPressure'), count: here.length };
  };
  const a = mean(below);
  const b = mean(above);
  const t = below === above ? 0 : (force - below) / (above - below);
  return {
    front: a.front + t * (b.front - a.front),
    rear: a.rear + t * (b.rear - a.rear),
    weight: (1 - t) ** 2 / a.count + t ** 2 / b.count,
  };
}
