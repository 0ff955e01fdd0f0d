import { circleArea } from './circle.ts';
import { areFinite, areNonNegative, arePositive, requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * How far a master piston moves for a line pressure, and back.
 *
 *   V(p) = V0 + k p            what the circuit swallows
 *   x(p) = V(p)/A_m + x_port   what the piston travels
 *
 * takeUpVolume V0 (m³, 0 or more; typically 0.5e-6–3e-6): the pads' gaps and any knock-back, filled before
 * pressure rises. compliance k (m³/Pa, typically 2e-13–1e-12): hoses, fluid, calipers and pads together.
 * bore (m): master. portStroke x_port (m, typically 0.0008–0.0015): stroke until the seal passes the port.
 *
 * At p = 0 the stroke is the one at which pressure is just about to rise; the piston may rest anywhere short of it.
 *
 * Neglected: that k is not constant. Of trapped air 5 bar (5e5 Pa) squeezes away 72–83 % and 20 bar 88–95 %, so to a line
 * through working pressures it looks like a larger V0, and hardly like a larger k. Temperature, seal lip rollover, flow.
 * Valid to about 150 bar (1.5e7 Pa).
 *
 * @throws RangeError if a value is negative or not finite, or a bore (or, for the inverse, k) is not above 0
 * Source: derived, volume kept. Worked value: V0 1.874 cm³, k 0.051 cm³/bar, bore 17.78 mm, port 1.0 mm:
 * 29.2 bar takes 14.5 mm, and 14.5 mm gives 29.0 bar.
 */
export interface FluidCircuit {
  readonly takeUpVolume: number;
  readonly compliance: number;
  readonly bore: number;
  readonly portStroke: number;
}

export function strokeForPressure({ pressure, takeUpVolume, compliance, bore, portStroke }: FluidCircuit & { readonly pressure: number }): {
  readonly stroke: number;
  readonly volume: number;
} {
  if (!areNonNegative(pressure, takeUpVolume, compliance, portStroke)) requireNonNegative({ pressure, takeUpVolume, compliance, portStroke });
  const { area } = circleArea({ diameter: bore });
  const volume = takeUpVolume + compliance * pressure;
  return { stroke: volume / area + portStroke, volume };
}

/** The inverse: 0 until the take-up is used, then rising in a straight line. */
export function pressureForStroke({ stroke, takeUpVolume, compliance, bore, portStroke }: FluidCircuit & { readonly stroke: number }): {
  readonly pressure: number;
} {
  if (!areFinite(stroke)) requireFinite({ stroke });
  if (!areNonNegative(takeUpVolume, portStroke)) requireNonNegative({ takeUpVolume, portStroke });
  if (!arePositive(compliance)) requirePositive({ compliance });
  const { area } = circleArea({ diameter: bore });
  return { pressure: Math.max(0, ((stroke - portStroke) * area - takeUpVolume) / compliance) };
}
