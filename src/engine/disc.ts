import { caliperAreas } from './caliper.ts';
import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Radius at which the friction of a pad may be thought to act.
 *
 *   worn-in           r_e = (r_o + r_i)/2
 *   uniform pressure  r_e = 2 (r_o³ − r_i³)/(3 (r_o² − r_i²))
 *
 * outer r_o, inner r_i (m): edges of the track the *pad* sweeps, not of the rotor.
 * Worn-in: wear is even when pressure × speed is even, so p ∝ 1/r and every ring of equal width rubs alike.
 * Uniform pressure: a new pad on a stiff backing. It gives the larger radius, by 1–2 % on usual pads.
 * Both laws hold for a pad that is a sector of a ring: friction is taken along the rim, so the angle drops out.
 *
 * Impossible 'inner-not-inside-outer', by how much (m), where r_i ≥ r_o.
 * @throws RangeError if outer is not above 0 or inner is negative
 * Source: derived (integrals of r dF over the pad). Worked value: 150 and 100 mm, uniform pressure → 126.667 mm.
 */
export type PressureLaw = 'worn-in' | 'uniform-pressure';

export function effectiveRadius({ outer, inner, law }: {
  readonly outer: number;
  readonly inner: number;
  readonly law: PressureLaw;
}): { readonly radius: number } | Impossible {
  requirePositive({ outer });
  requireNonNegative({ inner });
  if (inner >= outer) return { impossible: 'inner-not-inside-outer', by: inner - outer };
  if (law === 'worn-in') return { radius: (outer + inner) / 2 };
  // The cubes and squares share the factor (r_o − r_i); without it a narrow track does not cancel to nothing.
  return { radius: (2 * (outer ** 2 + outer * inner + inner ** 2)) / (3 * (outer + inner)) };
}

/**
 * Brake force of an axle with one disc caliper per wheel.
 *
 *   N = (p − p_po) A_1 η_c     T = 2 μ N r_e     F = 2 T/R
 *
 * Count the pistons on ONE side of the disc for the clamp, whatever the type. On a floating caliper the housing
 * is pulled the other way by the same fluid, and on an opposed one the far pistons push back: either way the two
 * pads are squeezed by A_1 p, and a second count would be the clamp of a brake that does not exist.
 * The 2 in T is the two rubbing faces; the 2 in F is the two wheels.
 *
 * pistonDiameter (m, 0.030–0.060); pistonsPerSide n (1–4); friction μ (0.30–0.45 street pads: a range, never a
 * certainty); outer, inner, law: see effectiveRadius; efficiency η_c of the caliper (0.95–0.98); loadedRadius R
 * (m, axle center to ground); pushOut p_po (Pa, 2e4–7e4): pressure that only moves the pistons; pressure p (Pa).
 *
 * clampArea A_1 = n π d²/4. volumeArea: m³ of fluid per caliper for each meter of gap per pad. Opposed, 2n pistons
 * move one gap each; floating, n pistons move both gaps since the housing slides: 2 A_1 in both cases.
 * gain: axle force per Pa above push-out, both wheels (N/Pa).
 *
 * Neglected: pad taper, knock-back, fade, the speed and heat dependence of μ, inertia of the wheels.
 *
 * Impossible as effectiveRadius.
 * @throws RangeError if a length, μ or η_c is not above 0, η_c is above 1, n is not a whole number of 1 or more
 * Source: derived. Worked value: one 54.0 mm piston, μ 0.38, r_e 108 mm, η_c 0.98, R 300 mm → 122.8 N per bar.
 */
export interface DiscAxle {
  readonly pistonDiameter: number;
  readonly pistonsPerSide: number;
  readonly type: 'floating' | 'opposed';
  readonly friction: number;
  readonly outer: number;
  readonly inner: number;
  readonly law: PressureLaw;
  readonly efficiency: number;
  readonly loadedRadius: number;
  readonly pushOut: number;
  readonly pressure: number;
}

export function discAxle(p: DiscAxle):
  | {
      readonly clampArea: number;
      readonly volumeArea: number;
      readonly pistonsPerCaliper: number;
      readonly effectiveRadius: number;
      readonly clampForce: number;
      readonly torquePerWheel: number;
      readonly axleForce: number;
      readonly gain: number;
    }
  | Impossible {
  requirePositive({ friction: p.friction, efficiency: p.efficiency, loadedRadius: p.loadedRadius });
  requireNonNegative({ pushOut: p.pushOut });
  requireFinite({ pressure: p.pressure });
  if (p.efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${p.efficiency}`);
  const track = effectiveRadius({ outer: p.outer, inner: p.inner, law: p.law });
  if (isImpossible(track)) return track;
  const { clampArea, pistonArea, travelPerGap } = caliperAreas(p);
  const torquePerPascal = 2 * p.friction * clampArea * p.efficiency * track.radius;
  const working = Math.max(0, p.pressure - p.pushOut);
  const gain = (2 * torquePerPascal) / p.loadedRadius;
  return {
    clampArea,
    volumeArea: pistonArea * travelPerGap,
    pistonsPerCaliper: p.type === 'opposed' ? 2 * p.pistonsPerSide : p.pistonsPerSide,
    effectiveRadius: track.radius,
    clampForce: working * clampArea * p.efficiency,
    torquePerWheel: working * torquePerPascal,
    axleForce: working * gain,
    gain,
  };
}
