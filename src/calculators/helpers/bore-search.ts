import { boreFinder } from '../../engine/boreFinder.ts';
import type { PairResult } from '../../engine/boreFinder.ts';
import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import type { TruckForPairs } from '../../engine/pairScore.ts';
import { standardBores } from '../../units/index.ts';
import type { ValuesOf } from '../record.ts';

export type FinderInputs =
  | 'brakingRate' | 'driverForce' | 'ratioFrom' | 'ratioTo'
  | 'frontMasterBore' | 'rearMasterBore' | 'pedalRatio' | 'barOffset'
  | 'barSpacing' | 'barReach' | 'barRestLead' | 'barStop' | 'barStopAngle'
  | 'linkageEfficiency' | 'pushrodFreePlay' | 'floorTravel' | 'frontMasterStroke' | 'rearMasterStroke' | 'portStroke' | 'masterSpring'
  | 'frontTakeUp' | 'rearTakeUp' | 'frontCompliance' | 'rearCompliance' | 'frontBrakeGain' | 'rearBrakeGain' | 'pushOutPressure'
  | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'payload' | 'payloadAhead' | 'payloadHeight' | 'grip'
  | 'strokePart' | 'travelPart' | 'tiltPart' | 'shareLow' | 'shareHigh' | 'rateMargin' | 'floorMargin' | 'failedRate';
export type FinderValues = ValuesOf<FinderInputs>;

export function truckOf(v: FinderValues): TruckForPairs {
  return {
    frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad, wheelbase: v.wheelbase, cgHeight: v.cgHeight, payload: v.payload, payloadAhead: v.payloadAhead, payloadHeight: v.payloadHeight, grip: v.grip,
    targetRate: v.brakingRate, driverForce: v.driverForce, efficiency: v.linkageEfficiency, springForce: v.masterSpring, freePlay: v.pushrodFreePlay, floorTravel: v.floorTravel,
    frontGain: v.frontBrakeGain, rearGain: v.rearBrakeGain, pushOut: v.pushOutPressure, frontStroke: v.frontMasterStroke, rearStroke: v.rearMasterStroke, portStroke: v.portStroke,
    frontTakeUpVolume: v.frontTakeUp, rearTakeUpVolume: v.rearTakeUp, frontCompliance: v.frontCompliance, rearCompliance: v.rearCompliance,
    barSpacing: v.barSpacing, stopAngle: v.barStop === 'none' ? undefined : v.barStopAngle, frontLead: v.barRestLead,
    limits: {
      strokePart: v.strokePart, travelPart: v.travelPart, tiltPart: v.tiltPart, shareLow: v.shareLow, shareHigh: v.shareHigh,
      rateMargin: v.rateMargin, floorMargin: v.floorMargin, failedRate: v.failedRate,
    },
  };
}

/** The share the bar has now, and those it can be set to within the band. */
export const ownShare = (v: FinderValues): number => 0.5 + v.barOffset / v.barSpacing;
export function reachableShares(v: FinderValues): { readonly from: number; readonly to: number } {
  const reach = v.barReach / v.barSpacing;
  return { from: Math.max(v.shareLow, 0.5 - reach), to: Math.min(v.shareHigh, 0.5 + reach) };
}

/** Even steps no larger than `step`, both ends included; few enough that the search stays quick. */
function steps({ from, to }: { readonly from: number; readonly to: number }, step: number, most: number): number[] {
  const n = Math.min(most, Math.ceil((to - from) / step - 1e-9));
  return n < 1 ? [from] : Array.from({ length: n + 1 }, (_, k) => from + ((to - from) * k) / n);
}

const withOwn = (list: readonly number[], own: number): number[] => (list.some((x) => Math.abs(x - own) < 1e-6 * own) ? [...list] : [...list, own]);

export interface Found {
  /** Best first. */
  readonly pairs: readonly PairResult[];
  /** The truck as it stands. */
  readonly own: PairResult;
  readonly tried: number;
}

function listsOf(v: FinderValues) {
  const bores = standardBores.map(({ si }) => si);
  const ratios = steps({ from: v.ratioFrom, to: v.ratioTo }, 0.25, 24);
  const band = reachableShares(v);
  const shares = steps(band, 0.0125, 40);
  const [hasRatio, hasShare] = [v.pedalRatio >= v.ratioFrom && v.pedalRatio <= v.ratioTo, ownShare(v) >= band.from && ownShare(v) <= band.to];
  return {
    frontBores: withOwn(bores, v.frontMasterBore), rearBores: withOwn(bores, v.rearMasterBore),
    pedalRatios: hasRatio ? withOwn(ratios, v.pedalRatio) : ratios, frontShares: hasShare ? withOwn(shares, ownShare(v)) : shares,
  };
}

function find(v: FinderValues): Found | Impossible {
  const found = boreFinder({ truck: truckOf(v), ...listsOf(v) });
  if (isImpossible(found)) return found;
  const own = judge(v, { frontBore: v.frontMasterBore, rearBore: v.rearMasterBore, pedalRatio: v.pedalRatio, frontShare: ownShare(v) });
  return isImpossible(own) ? own : { pairs: found.pairs, tried: found.tried, own };
}

/** The same judgement of one set alone. */
export function judge(v: FinderValues, { frontBore, rearBore, pedalRatio, frontShare }: Pick<PairResult, 'frontBore' | 'rearBore' | 'pedalRatio' | 'frontShare'>): PairResult | Impossible {
  const found = boreFinder({ truck: truckOf(v), frontBores: [frontBore], rearBores: [rearBore], pedalRatios: [pedalRatio], frontShares: [frontShare] });
  return isImpossible(found) ? found : (found.pairs[0] as PairResult);
}

/**
 * The first search in a browser takes ten times as long as the next, because its code is not compiled yet. Made piece by
 * piece, with the numbers it will be asked about, none of them is long enough to hold up a keystroke. The first pieces are
 * the slowest, so they are the smallest. Twice, as half of it is compiled by then. Only for numbers that are not refused.
 */
export function* warmSearch(v: FinderValues): Generator<void> {
  const { frontBores, rearBores, ...lists } = listsOf(v);
  for (const [k, bore] of [...frontBores, ...frontBores].entries()) {
    for (const rear of k < 2 ? rearBores.map((one) => [one]) : [rearBores]) {
      boreFinder({ truck: truckOf(v), ...lists, frontBores: [bore], rearBores: rear });
      yield;
    }
  }
}

/** Answer, cautions, picture and tables of one set of numbers ask for the same search: it is made once. */
let last: { readonly of: string; readonly found: Found | Impossible } | undefined;
export function search(v: FinderValues): Found | Impossible {
  const of = JSON.stringify([truckOf(v), v.ratioFrom, v.ratioTo, v.pedalRatio, v.barOffset, v.barReach, v.frontMasterBore, v.rearMasterBore]);
  if (last?.of !== of) last = { of, found: find(v) };
  return last.found;
}

/** Only for values whose search is known to have an answer. */
export function foundFor(v: FinderValues): Found {
  const found = search(v);
  if (isImpossible(found)) throw new RangeError(`bore search: expected an answer, found ${found.impossible}`);
  return found;
}

export const passes = (p: PairResult): boolean => p.verdict === 'reaches' && p.met === p.judgements.length;
