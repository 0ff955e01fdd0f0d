import { circleArea } from './circle.ts';
import { areNonNegative, arePositive, requireNonNegative, requirePositive } from './require.ts';

/**
 * Line pressure in each circuit of a pedal with a balance bar and two master cylinders.
 *
 *   F_rod = F i η
 *   p_f = max(0, s F_rod − F_s)/A_f        p_r = max(0, (1 − s) F_rod − F_s)/A_r
 *
 * controlForce F (N, 0–700) at the pad; pedalRatio i (5–7.5); efficiency η of the linkage (0.80–0.90; 0–1);
 * frontShare s of the rod force (0–1; at 0 or 1 the pivot stands on a clevis and one master gets all);
 * frontBore, rearBore (m, 0.012–0.030); springForce F_s (N, 10–40): the return spring inside each master.
 *
 * Free body of the bar: the two rod forces add up to F_rod and balance about the pivot. Each piston then
 * holds line pressure × area plus its spring, which is why the spring comes off after the split, not before.
 * A spring stronger than the push leaves no pressure, never a negative one.
 *
 * Neglected: bar friction (a dead band of about ±0.02 of share), seal friction beyond η, the bar's tilt, valves.
 * Static: a push held for a second or more.
 *
 * @throws RangeError if a value is negative, a bore or the ratio is not above 0, or a fraction is above 1
 * Source: derived from statics. Worked value: 222 N, 6.2, 0.85, 0.62, both 17.78 mm, no spring → 29.2 and 17.9 bar.
 */
export function linePressure(p: {
  readonly controlForce: number;
  readonly pedalRatio: number;
  readonly efficiency: number;
  readonly frontShare: number;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly springForce: number;
}): {
  readonly rodForce: number;
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly frontArea: number;
  readonly rearArea: number;
} {
  const { controlForce, pedalRatio, efficiency, frontShare, frontBore, rearBore, springForce } = p;
  if (!areNonNegative(controlForce, frontShare, springForce)) requireNonNegative({ controlForce, frontShare, springForce });
  if (!arePositive(pedalRatio, efficiency)) requirePositive({ pedalRatio, efficiency });
  if (!(efficiency <= 1 && frontShare <= 1)) requireFraction({ efficiency, frontShare });
  const { area: frontArea } = circleArea({ diameter: frontBore });
  const { area: rearArea } = circleArea({ diameter: rearBore });
  const rodForce = controlForce * pedalRatio * efficiency;
  return {
    rodForce,
    frontPressure: Math.max(0, frontShare * rodForce - springForce) / frontArea,
    rearPressure: Math.max(0, (1 - frontShare) * rodForce - springForce) / rearArea,
    frontArea,
    rearArea,
  };
}

function requireFraction(values: Readonly<Record<string, number>>): void {
  for (const name of Object.keys(values)) {
    if (!((values[name] as number) <= 1)) throw new RangeError(`${name}: expected at most 1, found ${values[name]}`);
  }
}
