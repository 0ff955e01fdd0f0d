import { circleArea } from './circle.ts';
import { atmosphere } from './constants.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Help from a vacuum booster for a push on its rod.
 *
 *   F_b = min[(R − 1) · max(0, F_r − F_0),  n p_v (π/4) D² k]
 *   run-out at F_r* = F_0 + F_b,max/(R − 1); beyond it each newton in is one newton out
 *
 * rodForce F_r (N) into the booster; boostGain R (2.5–6; above 1), slope of output on input; cutInForce F_0
 * (N, 30–80); diameter D (m) of the diaphragm; diaphragms n (1–2); vacuum p_v (Pa *below* atmosphere, 5e4–7e4);
 * areaFactor k (0–1, 0.9): what the hub, the rod and the return spring leave of pressure × area.
 *
 * Free body of the diaphragm: atmosphere on one face, manifold pressure on the other, so the most it can give is the
 * pressure difference × area. Below that the valve meters air so that the reaction disc shares output in the ratio R.
 * Neglected: the jump at cut-in, hysteresis, lag on a fast stab, vacuum used up by the stroke.
 *
 * assist and output = rodForce + assist (N); runOutRodForce, runOutAssist (N): where the help is spent; ranOut.
 * @throws RangeError if a size is not above 0, R is not above 1, k is above 1, n is not a whole number of 1 or more,
 * or the vacuum is more than an atmosphere
 * Source: derived from statics; no published worked answer was found. Worked value: 500 mmHg (66.66 kPa) on 254 mm,
 * one diaphragm, k 1 → 3378 N at most.
 */
export interface Booster {
  readonly boostGain: number;
  readonly cutInForce: number;
  readonly diameter: number;
  readonly diaphragms: number;
  readonly vacuum: number;
  readonly areaFactor?: number;
}

export function boosterForce({ rodForce, boostGain, cutInForce, diameter, diaphragms, vacuum, areaFactor = 0.9 }:
  Booster & { readonly rodForce: number }): {
  readonly assist: number;
  readonly output: number;
  readonly runOutRodForce: number;
  readonly runOutAssist: number;
  readonly ranOut: boolean;
} {
  requireNonNegative({ rodForce, cutInForce, vacuum });
  requirePositive({ boostGain, areaFactor });
  if (!(boostGain > 1)) throw new RangeError(`boostGain: expected above 1, found ${boostGain}`);
  if (areaFactor > 1) throw new RangeError(`areaFactor: expected at most 1, found ${areaFactor}`);
  if (vacuum > atmosphere) throw new RangeError(`vacuum: expected at most ${atmosphere} Pa, found ${vacuum}`);
  if (!Number.isInteger(diaphragms) || diaphragms < 1) {
    throw new RangeError(`diaphragms: expected a whole number of 1 or more, found ${diaphragms}`);
  }
  const runOutAssist = diaphragms * vacuum * circleArea({ diameter }).area * areaFactor;
  const runOutRodForce = cutInForce + runOutAssist / (boostGain - 1);
  const assist = Math.min((boostGain - 1) * Math.max(0, rodForce - cutInForce), runOutAssist);
  return { assist, output: rodForce + assist, runOutRodForce, runOutAssist, ranOut: rodForce >= runOutRodForce };
}

/**
 * Rod force of a manual pedal, a boosted one and the boosted one on the day its booster is dead.
 *
 *   manual F i_m η     boosted F_r + F_b with F_r = F i_b η     failed max(0, F i_b η − F_spring)
 *
 * controlForce F (N, 0–700) at the pad; manualRatio i_m (5–7), boostedRatio i_b (3–4.5); efficiency η (0.8–0.9), taken
 * the same for all three; springForce (N, 50–100): the booster's own return spring, which a dead booster still has.
 *
 * effortMultiplier: foot force on the manual pedal for the boosted rod force, over controlForce (at 0 N its limit,
 * i_b/i_m). equivalentManualForce and failedEquivalentForce (N): foot force on the manual pedal, and on the dead
 * booster's, that gives the boosted rod force. runOutControlForce (N): foot force where the booster is spent.
 * breakEvenForce (N): foot force beyond run-out where the manual pedal's longer lever has caught up; undefined if it
 * never does (i_m ≤ i_b) or never fell behind (a large i_m, or no vacuum). The few newtons below cut-in, where an idle booster is
 * weaker than the longer lever, are left out.
 * Neglected: as boosterForce. The rod forces are all that is compared; smaller masters make up the rest and cost travel.
 *
 * @throws RangeError as boosterForce, or if a ratio or η is not above 0, or η is above 1
 * Source: derived. Worked value: 200 N, i 6.2 and 3.6, η 0.85, R 4, F_0 50 N, 228.6 mm, 60 kPa, k 0.9 → 1054 N manual
 * against 2298 N boosted: 2.18 times the foot force.
 */
export function pedalEffort(p: Booster & {
  readonly controlForce: number;
  readonly manualRatio: number;
  readonly boostedRatio: number;
  readonly efficiency: number;
  readonly springForce: number;
}): {
  readonly manualRodForce: number;
  readonly boostedRodForce: number;
  readonly failedRodForce: number;
  readonly effortMultiplier: number;
  readonly equivalentManualForce: number;
  readonly failedEquivalentForce: number;
  readonly runOutControlForce: number;
  readonly breakEvenForce: number | undefined;
  readonly ranOut: boolean;
} {
  const { controlForce, manualRatio, boostedRatio, efficiency, springForce, ...booster } = p;
  requireNonNegative({ controlForce, springForce });
  requirePositive({ manualRatio, boostedRatio, efficiency });
  if (efficiency > 1) throw new RangeError(`efficiency: expected at most 1, found ${efficiency}`);
  const perNewton = { manual: manualRatio * efficiency, boosted: boostedRatio * efficiency };
  const rodForce = controlForce * perNewton.boosted;
  const boosted = boosterForce({ ...booster, rodForce });
  const equivalentManualForce = boosted.output / perNewton.manual;
  const runOutControlForce = boosted.runOutRodForce / perNewton.boosted;
  const caughtUp = boosted.runOutAssist / (perNewton.manual - perNewton.boosted);
  return {
    manualRodForce: controlForce * perNewton.manual,
    boostedRodForce: boosted.output,
    failedRodForce: Math.max(0, rodForce - springForce),
    effortMultiplier: controlForce > 0 ? equivalentManualForce / controlForce : boostedRatio / manualRatio,
    equivalentManualForce,
    failedEquivalentForce: (boosted.output + springForce) / perNewton.boosted,
    runOutControlForce,
    breakEvenForce: caughtUp > 0 && Number.isFinite(caughtUp) && caughtUp >= runOutControlForce ? caughtUp : undefined,
    ranOut: boosted.ranOut,
  };
}
