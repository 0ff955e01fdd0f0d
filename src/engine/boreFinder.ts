import { circleArea } from './circle.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { atTargetRate, criteria, findings, pairBench } from './pairScore.ts';
import type { Criterion, Masters, PairBench, TruckForPairs } from './pairScore.ts';
import { requirePositive } from './require.ts';

/**
 * Every pair of master bores, each with the pedal ratio and bar share that suit it best, best pair first.
 *
 * A bore is bounded from above by effort and from below by volume; the rest is search. For each pair all ratios and shares
 * are tried. Better is: more criteria of pairScore.ts met; then a larger worst margin; then a larger sum of margins, which
 * decides where one criterion no pair can change is the worst for all; then what comes first in the lists.
 * A near miss reads off `judgements`: criterion, and missedBy in its own unit ("front-stroke", 0.0021 m).
 *
 * truck: see TruckForPairs. frontBores, rearBores (m), pedalRatios, frontShares: what to try, in any order, one or more of
 * each; shares as a list or as `count` (2 or more) even steps from `from` to `to`, each between 0 and 1.
 *
 * window: bores of each circuit that make the pair's own pressure at the target rate with the driver's force and still have
 * stroke for it, at the chosen ratio and share: see boreWindow. The pair's bore lies in it exactly where effort and that
 * circuit's stroke are both met (one return spring aside: the driver's force is then split less its spring).
 *
 * Met means a margin of −1e-9 or more: a limit that is just touched is met, whatever the last digit of a double says.
 *
 * Neglected: as pairScore.ts. Impossible: as withPayload.
 * @throws RangeError if a list is empty, a bore or ratio is not above 0, a share is not between 0 and 1; as pairScore.ts
 * Source: derived, by search. Worked value: see tests/engine/boreFinder.test.ts, reference truck A.
 */
export interface BoreSearch {
  readonly truck: TruckForPairs;
  readonly frontBores: readonly number[];
  readonly rearBores: readonly number[];
  readonly pedalRatios: readonly number[];
  readonly frontShares: readonly number[] | { readonly from: number; readonly to: number; readonly count: number };
}

export interface Judgement {
  readonly criterion: Criterion;
  readonly found: number;
  readonly limit: number;
  readonly margin: number;
  readonly met: boolean;
  /** 0 where met */
  readonly missedBy: number;
}

export interface BoreWindow {
  readonly lowest: number;
  readonly highest: number;
  readonly empty: boolean;
}

export interface PairResult {
  readonly frontBore: number;
  readonly rearBore: number;
  readonly pedalRatio: number;
  readonly frontShare: number;
  readonly met: number;
  readonly worstMargin: number;
  readonly worst: Criterion;
  readonly judgements: readonly Judgement[];
  readonly frontPressure: number;
  readonly rearPressure: number;
  readonly rearBrakeFraction: number;
  readonly frontWindow: BoreWindow;
  readonly rearWindow: BoreWindow;
}

export function boreFinder({ truck, frontBores, rearBores, pedalRatios, frontShares }: BoreSearch):
  | { readonly pairs: readonly PairResult[]; readonly tried: number; readonly of: number }
  | Impossible {
  const shares = 'from' in frontShares ? evenSteps(frontShares) : frontShares;
  for (const [name, list] of Object.entries({ frontBores, rearBores, pedalRatios, frontShares: shares })) {
    if (list.length === 0) throw new RangeError(`${name}: expected one or more, found none`);
    for (const x of list) requirePositive({ [name]: x });
  }
  for (const s of shares) if (!(s < 1)) throw new RangeError(`frontShares: expected less than 1, found ${s}`);
  const bench = pairBench(truck);
  if (isImpossible(bench)) return bench;

  const pairs: Choice[] = [];
  for (const frontBore of frontBores) {
    for (const rearBore of rearBores) {
      const frontArea = circleArea({ diameter: frontBore }).area;
      const rearArea = circleArea({ diameter: rearBore }).area;
      let best: Choice | undefined;
      for (const frontShare of shares) {
        const masters: Masters = { frontArea, rearArea, frontShare };
        const at = atTargetRate(bench, masters);
        for (const pedalRatio of pedalRatios) {
          const mayMiss: number = best === undefined ? criteria.length : criteria.length - best.rank.met;
          const rank = rankOf(bench.rules, findings(bench, masters, at, pedalRatio), mayMiss);
          if (rank && (best === undefined || better(rank, best.rank) > 0)) best = { frontBore, rearBore, masters, pedalRatio, rank };
        }
      }
      pairs.push(best as Choice);
    }
  }
  pairs.sort((a, b) => better(b.rank, a.rank));
  return { pairs: pairs.map((c) => describe(bench, c)), tried: pairs.length * pedalRatios.length * shares.length, of: criteria.length };
}

interface Choice {
  readonly frontBore: number;
  readonly rearBore: number;
  readonly masters: Masters;
  readonly pedalRatio: number;
  readonly rank: Rank;
}

/**
 * The bores of one circuit that a push can bring to a pressure, and that hold enough fluid for it.
 *
 *   effort  A ≤ (F_clevis − F_s)/p        volume  A ≥ (V_0 + k p)/(x_use − x_port)        d = √(4 A/π)
 *
 * clevisForce F_clevis (N): this circuit's part of the rod force. springForce F_s (N). pressure p (Pa, above 0).
 * takeUpVolume V_0, compliance k, portStroke x_port: see fluid.ts. usableStroke x_use (m).
 * empty: no bore does both. Then p V(p) > (F_clevis − F_s)(x_use − x_port): the work asked is more than the push can do on
 * the way it has, whatever the bore. Change the caliper, the ratio or the share. lowest is Infinity where no stroke is
 * left after the port; highest is 0 where the spring takes all.
 *
 * @throws RangeError if the pressure is not above 0 or another value negative
 * Source: derived. Worked value: reference truck A's front at 65.0 bar, 22.4 mm usable, 1634 N: 17.6 to 17.9 mm.
 */
export function boreWindow(p: {
  readonly clevisForce: number;
  readonly springForce: number;
  readonly pressure: number;
  readonly takeUpVolume: number;
  readonly compliance: number;
  readonly portStroke: number;
  readonly usableStroke: number;
}): BoreWindow {
  requirePositive({ pressure: p.pressure });
  const bore = (area: number): number => Math.sqrt((4 * area) / Math.PI);
  const way = p.usableStroke - p.portStroke;
  const highest = bore(Math.max(0, p.clevisForce - p.springForce) / p.pressure);
  const lowest = way > 0 ? bore((p.takeUpVolume + p.compliance * p.pressure) / way) : Infinity;
  return { lowest, highest, empty: lowest > highest };
}

const touch = 1e-9;

interface Rank {
  readonly met: number;
  readonly worst: number;
  readonly worstMargin: number;
  readonly sum: number;
}

/** undefined as soon as more are missed than a better choice may miss: most candidates end here, half looked at. */
function rankOf({ limits, perRoom }: PairBench['rules'], found: readonly number[], mayMiss: number): Rank | undefined {
  let missed = 0;
  let worst = 0;
  let worstMargin = Infinity;
  let sum = 0;
  for (let i = 0; i < found.length; i += 1) {
    const margin = ((found[i] as number) - (limits[i] as number)) * (perRoom[i] as number);
    if (margin < -touch) {
      missed += 1;
      if (missed > mayMiss) return undefined;
    }
    if (margin < worstMargin) {
      worst = i;
      worstMargin = margin;
    }
    sum += margin;
  }
  return { met: found.length - missed, worst, worstMargin, sum };
}

function better(a: Rank, b: Rank): number {
  return a.met - b.met || a.worstMargin - b.worstMargin || a.sum - b.sum;
}

function describe(bench: PairBench, { frontBore, rearBore, masters, pedalRatio, rank }: Choice): PairResult {
  const { frontShare } = masters;
  const at = atTargetRate(bench, masters);
  const found = findings(bench, masters, at, pedalRatio);
  const { shareLow, shareHigh } = bench.limits;
  const judgements = criteria.map((criterion, i): Judgement => {
    const limit = bench.rules.limits[i] as number;
    const over = (found[i] as number) - limit;
    const margin = over * (bench.rules.perRoom[i] as number);
    const met = margin >= -touch;
    const shown = criterion === 'share'
      ? { found: frontShare, limit: frontShare < (shareLow + shareHigh) / 2 ? shareLow : shareHigh }
      : { found: found[i] as number, limit };
    return { criterion, ...shown, margin, met, missedBy: met ? 0 : Math.abs(over) };
  });
  const rodForce = bench.driverForce * pedalRatio * bench.efficiency;
  const window = (side: 'front' | 'rear', clevisForce: number, pressure: number): BoreWindow => {
    const { takeUp, compliance, stroke } = bench[side];
    const { springForce, portStroke } = bench;
    return boreWindow({ clevisForce, springForce, pressure, portStroke, takeUpVolume: takeUp, compliance, usableStroke: bench.limits.strokePart * stroke });
  };
  return {
    frontBore, rearBore, pedalRatio, frontShare, met: rank.met, worstMargin: rank.worstMargin, worst: criteria[rank.worst] as Criterion, judgements,
    frontPressure: at.frontPressure, rearPressure: at.rearPressure, rearBrakeFraction: at.rearBrakeFraction,
    frontWindow: window('front', frontShare * rodForce, at.frontPressure),
    rearWindow: window('rear', (1 - frontShare) * rodForce, at.rearPressure),
  };
}

function evenSteps({ from, to, count }: { readonly from: number; readonly to: number; readonly count: number }): readonly number[] {
  if (!Number.isInteger(count) || count < 2) throw new RangeError(`count: expected a whole number of 2 or more, found ${count}`);
  return Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1));
}
