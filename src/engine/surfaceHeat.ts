import { requireNonNegative, requirePositive } from './require.ts';
import { bisect } from './roots.ts';

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
 *   thick wall  ΔT(t) = 2/√π · q_0 √t (1 − 2 t/(3 t_s))/√(ρ c k)
 *     highest at t_s/2  (√2/3)(2/√π) = 0.532 · q_0 √t_s/√(ρ c k)     at the halt  (1/3)(2/√π) = 0.376 · the same
 *   wall of thickness w, no heat through its back, θ = w² ρ c/k, λ_n = n²π²/θ
 *     ΔT(t) = q_0/(ρ c w) {t − t²/(2 t_s) + (θ/3)(1 − t/t_s) + θ²/(45 t_s) − 2 Σ e^(−λ_n t) [1/λ_n + 1/(λ_n² t_s)]}
 *
 * A thick body takes a burst q dτ at its face as q dτ/√(π ρ c k (t − τ)); adding up the bursts q_0 (1 − τ/t_s) gives the
 * first line, and its slope is 0 at t_s/2. So the skin is hottest in the MIDDLE of a stop: later, heat sinks in faster
 * than the slowing wheel brings it. A coefficient 0.527 = √(5/18) goes about: as the highest value it is 1 % low, as the
 * value at the end of the stop 40 % high. In a wall the burst is q dτ/(ρ c w) [1 + 2 Σ e^(−λ_n (t − τ))]; the sums of
 * 1/λ_n and 1/λ_n² are θ/6 and θ²/90. A thin wall fills up: its peak is higher and comes later.
 *
 * initialFlux q_0 (W/m²); haltTime t_s (s); time t (s, 0 to t_s) for riseAt; wallThickness w (m): half of a solid rotor,
 * one cheek of a vented one; left out, a thick wall; density ρ (kg/m³, 7200 cast iron); specificHeat c (J/(kg·K),
 * 460–500); conductivity k (W/(m·K), 45–55). Rises in K over the rotor before the stop. meanRise: of the wall at the
 * halt, undefined for a thick one. heatedDepth 2 √(k t_s/(ρ c)) (m): a wall at least so deep counts as thick.
 *
 * Neglected: cooling during the stop, vanes (they take a share), hot bands narrower than the track, the flash under the
 * pad in each turn.
 * @throws RangeError if a size is not above 0, q_0 is negative or t is outside 0–t_s
 * Source: derived (conduction of heat); for 0.527 compare R. Limpert, Brake Design and Safety, from memory, not checked
 * against the text. Worked value: 1.74 MW/m², 3.42 s, 7200, 480, 50: thick → 130 K at 1.71 s, 92 K at the halt, depth
 * 14 mm; 7 mm → 142 K at 2.30 s, 128 K at the halt.
 */
export function surfaceRise({ initialFlux: flux, haltTime, time, density, specificHeat, conductivity, wallThickness }: {
  readonly initialFlux: number;
  readonly haltTime: number;
  readonly time: number;
  readonly density: number;
  readonly specificHeat: number;
  readonly conductivity: number;
  readonly wallThickness?: number | undefined;
}): {
  readonly riseAt: number;
  readonly peakRise: number;
  readonly peakTime: number;
  readonly haltRise: number;
  readonly meanRise: number | undefined;
  readonly heatedDepth: number;
} {
  requireNonNegative({ initialFlux: flux, time });
  requirePositive({ haltTime, density, specificHeat, conductivity });
  if (wallThickness !== undefined) requirePositive({ wallThickness });
  if (time > haltTime) throw new RangeError(`time: expected at most haltTime ${haltTime}, found ${time}`);
  const perVolume = density * specificHeat;
  const crossing = wallThickness === undefined ? Infinity : (wallThickness ** 2 * perVolume) / conductivity;
  const scale = flux / Math.sqrt(perVolume * conductivity);
  const at = (t: number): { readonly rise: number; readonly slope: number } => {
    const unit = skin({ t, haltTime, crossing });
    return { rise: scale * unit.rise, slope: unit.slope };
  };
  const peakTime = at(haltTime / 2).slope <= 0 ? haltTime / 2 : bisect((t) => at(t).slope, haltTime / 2, haltTime);
  return {
    riseAt: at(time).rise,
    peakRise: at(peakTime).rise,
    peakTime,
    haltRise: at(haltTime).rise,
    meanRise: wallThickness === undefined ? undefined : (flux * haltTime) / (2 * perVolume * wallThickness),
    heatedDepth: 2 * Math.sqrt((conductivity * haltTime) / perVolume),
  };
}

/** Rise of the skin and its slope in time for q_0/√(ρ c k) = 1; `crossing` is θ. */
function skin({ t, haltTime, crossing }: { readonly t: number; readonly haltTime: number; readonly crossing: number }): {
  readonly rise: number;
  readonly slope: number;
} {
  // So early nothing has come back from the wall's far side (less than 1 part in 1e8), and the series would need many terms.
  if (t < crossing / 20) {
    const root = Math.sqrt(t);
    const all = 2 / Math.sqrt(Math.PI);
    return { rise: all * root * (1 - (2 * t) / (3 * haltTime)), slope: all * (1 / (2 * root) - root / haltTime) };
  }
  let rise = t - t ** 2 / (2 * haltTime) + (crossing / 3) * (1 - t / haltTime) + crossing ** 2 / (45 * haltTime);
  let slope = 1 - t / haltTime - crossing / (3 * haltTime);
  for (let n = 1; n <= 12; n += 1) {
    const rate = (n * Math.PI) ** 2 / crossing;
    const left = 2 * Math.exp(-rate * t);
    rise -= left * (1 / rate + 1 / (rate ** 2 * haltTime));
    slope += left * (1 + 1 / (rate * haltTime));
  }
  const perRoot = 1 / Math.sqrt(crossing);
  return { rise: rise * perRoot, slope: slope * perRoot };
}
