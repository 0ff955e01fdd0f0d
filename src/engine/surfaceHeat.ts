import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Heat flow into each face of a rotor at the first moment of a stop, from the energy the whole stop brings.
 *
 *   q(t) = q_0 (1 − t/t_s)      q_0 = E_rotor/(A t_s)
 *
 * Steady deceleration: force stays, speed falls in a straight line to 0 at t_s, and so does their product. The mean is
 * q_0/2, and there are two faces, so E_rotor = 2 A (q_0/2) t_s: the twos cancel.
 *
 * rotorEnergy (J, as singleStop); sweptArea A (m²) of ONE face, the whole ring the pads sweep: in one turn of the wheel
 * it all comes by; haltTime t_s (s). → initialFlux q_0 (W/m²).
 * @throws RangeError if the area or time is not above 0, or the energy is negative
 * Source: derived. Worked value: 177 kJ, 0.0298 m², 3.42 s → 1.74 MW/m².
 */
export function initialFlux({ rotorEnergy, sweptArea, haltTime }: {
  readonly rotorEnergy: number;
  readonly sweptArea: number;
  readonly haltTime: number;
}): { readonly initialFlux: number } {
  requireNonNegative({ rotorEnergy });
  requirePositive({ sweptArea, haltTime });
  return { initialFlux: rotorEnergy / (sweptArea * haltTime) };
}

/**
 * Temperature rise of the rubbed skin during one stop: its highest, and what is left as the wheel halts.
 *
 *   ΔT(t) = 2/√π · q_0 √t (1 − 2 t/(3 t_s))/√(ρ c k)
 *   highest at t_s/2   (√2/3)(2/√π) = 0.532 · q_0 √t_s/√(ρ c k)
 *   at the halt        (1/3)(2/√π)  = 0.376 · q_0 √t_s/√(ρ c k)
 *
 * A thick body takes a burst q dτ at its face as q dτ/√(π ρ c k (t − τ)); adding up the bursts q_0 (1 − τ/t_s) gives
 * ΔT(t), and its slope is 0 at t_s/2. The skin is hottest in the MIDDLE of a stop: later, heat sinks in faster than the
 * slowing wheel brings it. A coefficient 0.527 = √(5/18) goes about for "the end of the stop": as a highest value it is
 * 1 % low; at the end it is 40 % high.
 *
 * initialFlux q_0 (W/m²); haltTime t_s (s); time t (s, 0 to t_s) for riseAt; density ρ (kg/m³, 7200 cast iron);
 * specificHeat c (J/(kg·K), 460–500); conductivity k (W/(m·K), 45–55). Rises in K over the rotor before the stop.
 * heatedDepth 2 √(k t_s/(ρ c)) (m): true for a wall at least that thick behind each face (half a solid rotor, one cheek
 * of a vented one). A thinner wall gets hotter: then neither this nor singleStop's average is the upper bound.
 *
 * Neglected: cooling during the stop, hot bands narrower than the track, the flash under the pad in each turn.
 * @throws RangeError if a size is not above 0, q_0 is negative or t is outside 0–t_s
 * Source: derived (heat conduction into a half-space); compare R. Limpert, Brake Design and Safety, for 0.527 (from memory, not checked against the text).
 * Worked value: 1.74 MW/m², 3.42 s, 7200, 480, 50 → 130 K at 1.71 s, 92 K at the halt, depth 14 mm.
 */
export function surfaceRise({ initialFlux: flux, haltTime, time, density, specificHeat, conductivity }: {
  readonly initialFlux: number;
  readonly haltTime: number;
  readonly time: number;
  readonly density: number;
  readonly specificHeat: number;
  readonly conductivity: number;
}): {
  readonly riseAt: number;
  readonly peakRise: number;
  readonly peakTime: number;
  readonly haltRise: number;
  readonly heatedDepth: number;
} {
  requireNonNegative({ initialFlux: flux, time });
  requirePositive({ haltTime, density, specificHeat, conductivity });
  if (time > haltTime) throw new RangeError(`time: expected at most haltTime ${haltTime}, found ${time}`);
  const absorbing = Math.sqrt(density * specificHeat * conductivity);
  const rise = (t: number): number => ((2 / Math.sqrt(Math.PI)) * flux * Math.sqrt(t) * (1 - (2 * t) / (3 * haltTime))) / absorbing;
  return {
    riseAt: rise(time),
    peakRise: rise(haltTime / 2),
    peakTime: haltTime / 2,
    haltRise: rise(haltTime),
    heatedDepth: 2 * Math.sqrt((conductivity * haltTime) / (density * specificHeat)),
  };
}
