import { standardGravity } from './constants.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Does the reservoir stand above a brake at every height and on every slope, or does the circuit need a residual valve?
 *
 *   Δh(θ) = (z_res − z_brake) cos θ + (x_res − x_brake) sin θ     tan θ = ± grade, + nose up
 *   p = ρ g Δh                                                    the least of all is the one that counts
 *
 * Turning the truck nose up by θ lifts what stands forward: a point at (x, z) rises to z cos θ + x sin θ. So a front
 * caliper, ahead of the masters, is worst nose up; a rear one, far behind them, nose down.
 *
 * attitudes: named states on level ground (drive, aired out, lifted, one end jacked), each with reservoirHeight z_res (m):
 * the lowest level the fluid may fall to, not the cap; and brakeHeight z_brake (m): highest piston or bleeder of the circuit.
 * reservoirX, brakeX (m, + forward, from any one mark). grade (rise over run, 0.2 usual; 0 or more): each attitude is taken
 * level, nose up and nose down. density ρ (kg/m³, 1050–1070).
 *
 * brake: 'disc' or 'drum'. cupExpanders (drum): true if the wheel cylinders have them.
 * valve: 'none', 'disc' (2 psi) or 'drum' (10 psi), both common practice, no source. because: 'reservoir-below-brake', where fluid would
 * run back and draw the pistons off or air past the seals; 'no-cup-expanders', where a drum's cups need pressure to stay out
 * even with the reservoir above them; undefined for 'none'. residualPressure (Pa); covers: it holds the worst head.
 *
 * A valve where none is needed keeps the pads rubbing. Head itself cannot: a foot of it is 0.46 psi.
 * Neglected: speeding up and braking, which tilt the fluid as a slope of that many g would (0.3 g forward is nose up 30 %);
 * side slope; local gravity.
 * @throws RangeError if attitudes is empty, density not above 0, grade negative, or a coordinate not finite
 * Source: derived (hydrostatics, rotation). Worked value: 0.305 m of 1060 kg/m³ → 3.17 kPa = 0.46 psi.
 */
export type Slope = 'level' | 'nose-up' | 'nose-down';

export interface Attitude {
  readonly name: string;
  readonly reservoirHeight: number;
  readonly brakeHeight: number;
}

export interface FluidHead {
  readonly name: string;
  readonly slope: Slope;
  readonly height: number;
  readonly pressure: number;
}

const poundPerSquareInch = (0.45359237 * standardGravity) / 0.0254 ** 2;

/** Pa, held in the line by each kind of residual valve */
export const residualPressure = Object.freeze({ disc: 2 * poundPerSquareInch, drum: 10 * poundPerSquareInch });

export function fluidHead(p: {
  readonly attitudes: readonly Attitude[];
  readonly reservoirX: number;
  readonly brakeX: number;
  readonly grade: number;
  readonly density: number;
  readonly brake: 'disc' | 'drum';
  readonly cupExpanders: boolean;
}): {
  readonly heads: readonly FluidHead[];
  readonly worst: FluidHead;
  readonly valve: 'none' | 'disc' | 'drum';
  readonly because: 'reservoir-below-brake' | 'no-cup-expanders' | undefined;
  readonly residualPressure: number;
  readonly covers: boolean;
} {
  const { attitudes, reservoirX, brakeX, grade, density, brake } = p;
  requirePositive({ attitudes: attitudes.length, density });
  requireNonNegative({ grade });
  requireFinite({ reservoirX, brakeX });
  const cos = 1 / Math.hypot(1, grade);
  const slopes: readonly (readonly [Slope, number])[] = [['level', 0], ['nose-up', grade * cos], ['nose-down', -grade * cos]];
  const heads = attitudes.flatMap(({ name, reservoirHeight, brakeHeight }) => {
    requireFinite({ reservoirHeight, brakeHeight });
    return slopes.map(([slope, sin]): FluidHead => {
      const height = (reservoirHeight - brakeHeight) * (slope === 'level' ? 1 : cos) + (reservoirX - brakeX) * sin;
      return { name, slope, height, pressure: density * standardGravity * height };
    });
  });
  const worst = heads.reduce((low, head) => (head.height < low.height ? head : low));
  const below = worst.height < 0;
  const because = below ? 'reservoir-below-brake' : brake === 'drum' && !p.cupExpanders ? 'no-cup-expanders' : undefined;
  const held = because === undefined ? 0 : residualPressure[brake];
  return { heads, worst, valve: because === undefined ? 'none' : brake, because, residualPressure: held, covers: worst.pressure + held >= 0 };
}
