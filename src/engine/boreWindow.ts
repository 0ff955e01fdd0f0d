import { requireNonNegative } from './require.ts';

/**
 * The bores of one circuit that a push can bring to a pressure, and that hold enough fluid for it.
 *
 *   effort  A ≤ (F_clevis − F_s)/p        volume  A ≥ (V_0 + k p)/(x_use − x_port)        d = √(4 A/π)
 *
 * clevisForce F_clevis (N): this circuit's part of the rod force. springForce F_s (N). pressure p (Pa; at 0 effort bounds nothing).
 * takeUpVolume V_0, compliance k, portStroke x_port: see fluid.ts. usableStroke x_use (m).
 * empty: no bore does both. Then p V(p) > (F_clevis − F_s)(x_use − x_port): the work asked is more than the push can do on
 * the way it has, whatever the bore. Change the caliper, the ratio or the share. lowest is Infinity where no stroke is
 * left after the port; highest is 0 where the spring takes all.
 *
 * @throws RangeError if a value is negative
 * Source: derived. Worked value: reference truck A's front at 65.0 bar, 22.4 mm usable, 1634 N: 17.6 to 17.9 mm.
 */
export interface BoreWindow {
  readonly lowest: number;
  readonly highest: number;
  readonly empty: boolean;
}

export function boreWindow(p: {
  readonly clevisForce: number;
  readonly springForce: number;
  readonly pressure: number;
  readonly takeUpVolume: number;
  readonly compliance: number;
  readonly portStroke: number;
  readonly usableStroke: number;
}): BoreWindow {
  const { pressure } = p;
  requireNonNegative({ ...p });
  const bore = (area: number): number => Math.sqrt((4 * area) / Math.PI);
  const way = p.usableStroke - p.portStroke;
  const highest = pressure > 0 ? bore(Math.max(0, p.clevisForce - p.springForce) / pressure) : Infinity;
  const lowest = way > 0 ? bore((p.takeUpVolume + p.compliance * pressure) / way) : Infinity;
  return { lowest, highest, empty: lowest > highest };
}
