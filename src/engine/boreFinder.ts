import { boreWindow } from './boreWindow.ts';
import type { BoreWindow } from './boreWindow.ts';
import { circleArea } from './circle.ts';
import { isImpossible } from './outcome.ts';
import type { Impossible } from './outcome.ts';
import { atTargetRate, carpetOverrun, criteria, deadFindings, ends, endsBehindPedal, mastersFindings, pairBench, pedalFindings } from './pairScore.ts';
import type { Criterion, End, Masters, PairBench, TruckForPairs } from './pairScore.ts';
import { requirePositive } from './require.ts';

/**
 * Every pair of master bores, each with the pedal ratio and bar share that suit it best, best pair first.
 *
 * A bore is bounded from above by effort and from below by volume; the rest is search. For each pair all ratios and shares
 * are tried. Better is: a better verdict; where it is 'too-hard', less force; then more criteria met; then a larger worst margin; then a larger sum of margins, which
 * decides where a criterion that no pair can change is the worst for all; then what comes first in the lists.
 * verdict, from best to worst: 'reaches', where the driver brings the truck to the target rate with the front axle first to
 * lock on the grip given, empty and laden; 'rear-first', where it is the rear; 'too-hard', where only more force would do;
 * 'never', where an end of pairScore.ts comes first: `ends` says which and by how much. So a pair that does not brake the
 * truck never stands before one that does, however many of the other criteria its figures would meet.
 * A near miss reads off `judgements`: criterion, and missedBy in its own unit ('front-stroke', 0.0021 m).
 *
 * truck: see TruckForPairs. frontBores, rearBores (m), pedalRatios, frontShares: what to try, in any order, one or more of
 * each; shares as a list or as `count` (2 or more) even steps from `from` to `to`, each between 0 and 1.
 *
 * frontWindow, rearWindow: bores of each circuit that make the pair's own pressure at the target rate with the driver's
 * force and have stroke for it, at the chosen ratio and share: see boreWindow.ts. A pair's bore lies in its window exactly
 * where its effort and that circuit's stroke are met. An empty window says that this ratio and share ask for another caliper.
 *
 * Met means a margin of −1e-9 or more: a limit that is just touched is met, whatever the last digit of a double says.
 *
 * Neglected: as pairScore.ts. Impossible: as pairScore.ts.
 * @throws RangeError if a list is empty, a bore or ratio is not above 0, a share is not between 0 and 1; as pairScore.ts
 * Source: derived, by search. Worked value: reference truck A (500 N, 0.8 g, 140 mm of floor, stop 12°) as it stands, both 17.78
 * mm, 6.2, 0.62, meets seven of twelve; of 49 usual pairs with 5.5–7 and 0.50–0.70 two reach 0.8 g front first.
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

/** Best first. */
export const verdicts = ['reaches', 'rear-first', 'too-hard', 'never'] as const;

export interface PairResult {
  readonly frontBore: number;
  readonly rearBore: number;
  readonly pedalRatio: number;
  readonly frontShare: number;
  readonly met: number;
  readonly worstMargin: number;
  readonly worst: Criterion;
  readonly verdict: (typeof verdicts)[number];
  readonly ends: readonly { readonly end: End; readonly by: number }[];
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
        const beyondPedal = mastersFindings(bench, { masters, at });
        const verdict = endsBehindPedal(bench, at).some((by) => by > 0) ? never : rearFirst(bench, beyondPedal) ? 1 : 0;
        const behindPedal = tally(bench.rules, beyondPedal, { ...unranked, verdict });
        for (const pedalRatio of pedalRatios) {
          if (cannotWin(behindPedal, best?.rank)) break;
          const found = pedalFindings(bench, { masters, at, pedalRatio });
          const withPedal = carpetOverrun(bench, found[1]) > 0 ? never : found[0] > bench.driverForce * (1 + touch) ? tooHard : 0;
          const all = Math.max(verdict, withPedal);
          const sound = tally(bench.rules, found, { ...behindPedal, verdict: all, lack: all === tooHard ? found[0] - bench.driverForce : 0 });
          if (cannotWin(sound, best?.rank)) continue;
          const rank = tally(bench.rules, deadFindings(bench, { masters, pedalRatio }), sound);
          if (best === undefined || better(rank, best.rank) > 0) best = { frontBore, rearBore, masters, pedalRatio, rank };
        }
      }
      pairs.push(best as Choice);
    }
  }
  pairs.sort((a, b) => better(b.rank, a.rank));
  return { pairs: pairs.map((c) => describe(bench, c)), tried: pairs.length * pedalRatios.length * shares.length, of: criteria.length };
}

const touch = 1e-9;

interface Rank {
  /** Index in `verdicts`. */
  readonly verdict: number;
  /** N of foot force missing, where that is the verdict; else 0 */
  readonly lack: number;
  readonly counted: number;
  readonly missed: number;
  readonly worst: number;
  readonly worstMargin: number;
  readonly sum: number;
}

const tooHard = verdicts.indexOf('too-hard');
const never = verdicts.indexOf('never');
const unranked: Rank = { verdict: 0, lack: 0, counted: 0, missed: 0, worst: 0, worstMargin: Infinity, sum: 0 };

interface Choice {
  readonly frontBore: number;
  readonly rearBore: number;
  readonly masters: Masters;
  readonly pedalRatio: number;
  readonly rank: Rank;
}

/** The rank with the next criteria counted in, in their order. */
function tally({ limits, perRoom }: PairBench['rules'], found: readonly number[], before: Rank): Rank {
  let { counted, missed, worst, worstMargin, sum } = before;
  for (let k = 0; k < found.length; k += 1) {
    const margin = ((found[k] as number) - (limits[counted] as number)) * (perRoom[counted] as number);
    if (margin < -touch) missed += 1;
    if (margin < worstMargin) {
      worst = counted;
      worstMargin = margin;
    }
    sum += margin;
    counted += 1;
  }
  return { verdict: before.verdict, lack: before.lack, counted, missed, worst, worstMargin, sum };
}

/** Either critical rate below the grip: on this road the rear locks first. */
function rearFirst({ grip }: PairBench, behindPedal: readonly number[]): boolean {
  return Math.min(behindPedal[lockEmpty] as number, behindPedal[lockLaden] as number) < grip * (1 - touch);
}

const lockEmpty = criteria.indexOf('lock-empty');
const lockLaden = criteria.indexOf('lock-laden');

function better(a: Rank, b: Rank): number {
  return b.verdict - a.verdict || b.lack - a.lack || b.missed - a.missed || a.worstMargin - b.worstMargin || a.sum - b.sum;
}

/** Counting more criteria in can only add misses and lower the worst margin: so some are out before their failures are asked. */
function cannotWin(part: Rank, best: Rank | undefined): boolean {
  return best !== undefined && (part.verdict - best.verdict || part.lack - best.lack || part.missed - best.missed || best.worstMargin - part.worstMargin) > 0;
}

function describe(bench: PairBench, { frontBore, rearBore, masters, pedalRatio, rank }: Choice): PairResult {
  const { frontShare } = masters;
  const at = atTargetRate(bench, masters);
  const sound = pedalFindings(bench, { masters, at, pedalRatio });
  const found = [...mastersFindings(bench, { masters, at }), ...sound, ...deadFindings(bench, { masters, pedalRatio })];
  const overruns = [...endsBehindPedal(bench, at), carpetOverrun(bench, sound[1])];
  const { shareLow, shareHigh, strokePart } = bench.limits;
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
  const { springForce, portStroke } = bench;
  const window = (side: 'front' | 'rear', share: number, pressure: number): BoreWindow => {
    const { takeUp, compliance, stroke } = bench[side];
    return boreWindow({ clevisForce: share * rodForce, springForce, pressure, portStroke, takeUpVolume: takeUp, compliance, usableStroke: strokePart * stroke });
  };
  return {
    frontBore, rearBore, pedalRatio, frontShare, met: criteria.length - rank.missed, worstMargin: rank.worstMargin, worst: criteria[rank.worst] as Criterion, judgements,
    verdict: verdicts[rank.verdict] as PairResult['verdict'],
    ends: ends.flatMap((end, k) => ((overruns[k] as number) > 0 ? [{ end, by: overruns[k] as number }] : [])),
    frontPressure: at.frontPressure, rearPressure: at.rearPressure, rearBrakeFraction: at.rearBrakeFraction,
    frontWindow: window('front', frontShare, at.frontPressure),
    rearWindow: window('rear', 1 - frontShare, at.rearPressure),
  };
}

function evenSteps({ from, to, count }: { readonly from: number; readonly to: number; readonly count: number }): readonly number[] {
  if (!Number.isInteger(count) || count < 2) throw new RangeError(`count: expected a whole number of 2 or more, found ${count}`);
  return Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1));
}
