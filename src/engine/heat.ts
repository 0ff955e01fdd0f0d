import { standardGravity } from './constants.ts';
import type { Impossible } from './outcome.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * How much warmer one stop makes a rotor, all of it at once.
 *
 *   E = ½ M (v_1² − v_2²)(1 + ε)      E_rotor = x (E/2) × axle share      ΔT = E_rotor/(m c)
 *
 * mass M (kg); speedFrom v_1, speedTo v_2 (m/s); rotatingFraction ε (0.03–0.06): wheels and drivetrain spin down too;
 * axleShare (0–1) of the brake *force* at this axle, two rotors; rotorFraction x (0.90–0.95): the pads take the rest;
 * rotorMass m (kg, 3–8); specificHeat c (J/(kg·K), 460–500 cast iron). stopEnergy: the whole truck's (J).
 *
 * Neglected: cooling during the stop, drag of air and tires (they take some of E), heat lost to hub and wheel. Average
 * of the rotor: the rubbed skin is far hotter for a second, see surfaceHeat.ts.
 * Impossible 'speeds-up', by v_2 − v_1 (m/s).
 * @throws RangeError if M, m or c is not above 0, a speed or fraction is negative or a share above 1
 * Source: energy kept. Worked value: 1340 kg from 60 mph (26.82 m/s), ε 0.04, share 0.76, x 0.93, 6 kg, 480 J/(kg·K) → 61.5 K.
 */
export function singleStop(p: {
  readonly mass: number;
  readonly speedFrom: number;
  readonly speedTo: number;
  readonly rotatingFraction: number;
  readonly axleShare: number;
  readonly rotorFraction: number;
  readonly rotorMass: number;
  readonly specificHeat: number;
}): { readonly stopEnergy: number; readonly rotorEnergy: number; readonly rise: number } | Impossible {
  const { mass, speedFrom, speedTo, rotatingFraction, axleShare, rotorFraction, rotorMass, specificHeat } = p;
  requirePositive({ mass, rotorMass, specificHeat });
  requireNonNegative({ speedFrom, speedTo, rotatingFraction });
  requireShares({ axleShare, rotorFraction });
  if (speedTo > speedFrom) return { impossible: 'speeds-up', by: speedTo - speedFrom };
  const stopEnergy = (mass / 2) * (speedFrom ** 2 - speedTo ** 2) * (1 + rotatingFraction);
  const rotorEnergy = (stopEnergy * axleShare * rotorFraction) / 2;
  return { stopEnergy, rotorEnergy, rise: rotorEnergy / (rotorMass * specificHeat) };
}

/**
 * The same stop again and again, with a pause to cool.
 *
 *   after each pause a part r = e^(−τ/T_c) of the excess over the air is left
 *   peak after n stops  ΔT (1 + r + … + r^(n−1)) = ΔT (1 − r^n)/(1 − r)      limit  ΔT/(1 − r)
 *
 * rise ΔT (K); interval τ (s) from one stop to the next; coolingTime T_c (s, 150–400): how long until the excess is down
 * to 37 %, standing or slow; less at speed; stops n (1 or more). All in kelvin above the air.
 * beforeLast: what is left when the last stop begins. Neglected: the stop's own duration, radiation (it helps above 400 °C).
 * @throws RangeError if a value is not above 0 or n is not a whole number
 * Source: Newton's law of cooling; geometric series. Worked value: 58 K, 60 s, 250 s, 10 stops → 247 K, limit 272 K.
 */
export function repeatedStops({ rise, interval, coolingTime, stops }: {
  readonly rise: number;
  readonly interval: number;
  readonly coolingTime: number;
  readonly stops: number;
}): { readonly peak: number; readonly beforeLast: number; readonly limit: number; readonly kept: number } {
  requirePositive({ rise, interval, coolingTime });
  if (!Number.isInteger(stops) || stops < 1) throw new RangeError(`stops: expected a whole number of 1 or more, found ${stops}`);
  const each = -Math.expm1(-interval / coolingTime); // 1 − r, exact also where r is nearly 1
  const peak = (rise * -Math.expm1((-stops * interval) / coolingTime)) / each;
  return { peak, beforeLast: peak - rise, limit: rise / each, kept: Math.exp(-interval / coolingTime) };
}

/**
 * Rotor temperature on a long way down at constant speed.
 *
 *   P = v [M g (sin θ − f_r cos θ) − ½ ρ C_dA v² − F_e], 0 if the hill is held without brakes
 *   rotor   P_1 = x (P/2) × axle share
 *   steady  T = T_a + P_1/(hA)      T(t) = T_a + (P_1/(hA))(1 − e^(−t/T_c))      T_c = m c/(hA)
 *
 * grade tan θ (down, 0 or more); speed v (m/s); rollingCoefficient f_r (0.010–0.015); dragArea C_dA (m², 0.8–1.2);
 * airDensity ρ (kg/m³, 1.2); engineForce F_e (N at the tires, engine in gear); conductance hA (W/K per rotor, 5–15 and rising with
 * speed); ambient T_a (K); limitTemperature (K); others as singleStop.
 *
 * timeConstant T_c; timeTo95: 3.0 T_c, when the rise has come to 95 %; timeToLimit: undefined if it is never reached.
 * Neglected: radiation (on the safe side, above 400 °C a lot), fade, change of hA and c with heat.
 * @throws RangeError as singleStop, or if v, hA or ρ is not above 0, or a temperature
 * Source: power balance. Worked value: 1340 kg, 8 %, 20 m/s, f_r 0.012, C_dA 1, 1.2, 200 N, share 0.76, x 0.93, hA 10,
 * 6 kg, 480, 293 K → 9.01 kW braked, 3.19 kW per rotor: 612 K steady, 95 % of the rise in 14.4 min.
 */
export function downGrade(p: {
  readonly mass: number;
  readonly grade: number;
  readonly speed: number;
  readonly rollingCoefficient: number;
  readonly dragArea: number;
  readonly airDensity: number;
  readonly engineForce: number;
  readonly axleShare: number;
  readonly rotorFraction: number;
  readonly rotorMass: number;
  readonly specificHeat: number;
  readonly conductance: number;
  readonly ambient: number;
  readonly limitTemperature: number;
}): {
  readonly brakePower: number;
  readonly rotorPower: number;
  readonly steadyTemperature: number;
  readonly timeConstant: number;
  readonly timeTo95: number;
  readonly timeToLimit: number | undefined;
} {
  const { mass, grade, speed, rollingCoefficient, dragArea, airDensity, engineForce, conductance, ambient, limitTemperature } = p;
  requirePositive({ mass, speed, airDensity, conductance, ambient, limitTemperature, rotorMass: p.rotorMass, specificHeat: p.specificHeat });
  requireNonNegative({ grade, rollingCoefficient, dragArea, engineForce });
  requireShares({ axleShare: p.axleShare, rotorFraction: p.rotorFraction });
  const along = (mass * standardGravity * (grade - rollingCoefficient)) / Math.hypot(1, grade);
  const brakePower = speed * Math.max(0, along - (airDensity / 2) * dragArea * speed ** 2 - engineForce);
  const rotorPower = (brakePower * p.axleShare * p.rotorFraction) / 2;
  const steadyRise = rotorPower / conductance;
  const timeConstant = (p.rotorMass * p.specificHeat) / conductance;
  const missing = (limitTemperature - ambient) / steadyRise;
  return {
    brakePower,
    rotorPower,
    steadyTemperature: ambient + steadyRise,
    timeConstant,
    timeTo95: timeConstant * Math.log(20),
    timeToLimit: limitTemperature <= ambient ? 0 : missing < 1 ? -timeConstant * Math.log1p(-missing) : undefined,
  };
}

/**
 * How far the fluid in the caliper is from boiling.
 *
 *   T_f = T_a + s (T_rotor − T_a)      margins T_boil − T_f, dry and wet
 *
 * ambient T_a, rotorTemperature (K); soakFraction s (above 0, to 1): part of the rotor's excess that reaches the fluid,
 * 5–15 min after a stop, when no wind cools the caliper. No source gives it: 1 is the bound no fluid passes, a
 * thermometer on the bleeder gives your own. dryBoilingPoint, wetBoilingPoint (K): of the grade; wet is fluid that
 * has drawn 3.70 % water by weight, which is what an old fill is.
 *
 * rotorAtWetBoil, rotorAtDryBoil (K): rotor temperature that would boil it. Neglected: air pressure (lower boiling point
 * on a high pass), pressure under the foot (higher while it is held: it boils when the foot comes off).
 * Impossible 'wet-boils-above-dry', by how much (K). @throws RangeError if a temperature is not above 0 or s is outside 0–1
 * Source: definition. Worked value: 293 K, rotor 573 K, s 0.5, boiling at 478.15 dry and 413.15 K wet → fluid 433 K:
 * 45 K to spare fresh, 20 K over when wet.
 */
export function boilMargin({ ambient, rotorTemperature, soakFraction, dryBoilingPoint, wetBoilingPoint }: {
  readonly ambient: number;
  readonly rotorTemperature: number;
  readonly soakFraction: number;
  readonly dryBoilingPoint: number;
  readonly wetBoilingPoint: number;
}):
  | {
      readonly fluidTemperature: number;
      readonly dryMargin: number;
      readonly wetMargin: number;
      readonly rotorAtDryBoil: number;
      readonly rotorAtWetBoil: number;
    }
  | Impossible {
  requirePositive({ ambient, rotorTemperature, soakFraction, dryBoilingPoint, wetBoilingPoint });
  requireShares({ soakFraction });
  if (wetBoilingPoint > dryBoilingPoint) return { impossible: 'wet-boils-above-dry', by: wetBoilingPoint - dryBoilingPoint };
  const fluidTemperature = ambient + soakFraction * (rotorTemperature - ambient);
  return {
    fluidTemperature,
    dryMargin: dryBoilingPoint - fluidTemperature,
    wetMargin: wetBoilingPoint - fluidTemperature,
    rotorAtDryBoil: ambient + (dryBoilingPoint - ambient) / soakFraction,
    rotorAtWetBoil: ambient + (wetBoilingPoint - ambient) / soakFraction,
  };
}

function requireShares(values: Readonly<Record<string, number>>): void {
  requireNonNegative(values);
  for (const name of Object.keys(values)) {
    if ((values[name] as number) > 1) throw new RangeError(`${name}: expected at most 1, found ${values[name]}`);
  }
}
