import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boreFinder, verdicts } from '../../src/engine/boreFinder.ts';
import type { BoreSearch, PairResult } from '../../src/engine/boreFinder.ts';
import { circuitFailure } from '../../src/engine/circuitFailure.ts';
import { footToRoad, footWhere } from '../../src/engine/footToRoad.ts';
import { withPayload } from '../../src/engine/loads.ts';
import { lockOrder } from '../../src/engine/lockOrder.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { criteria, ends, usualLimits } from '../../src/engine/pairScore.ts';
import type { Criterion, End, TruckForPairs } from '../../src/engine/pairScore.ts';
import { brakesPerRodForce } from '../../src/engine/valve.ts';

const deg = Math.PI / 180;
const truckA: TruckForPairs = {
  frontLoad: 0.58 * 1340, rearLoad: 0.42 * 1340, wheelbase: 2.743, cgHeight: 0.58, payload: 350, payloadAhead: 0.25, payloadHeight: 0.75, grip: 0.9,
  targetRate: 0.8, driverForce: 500, efficiency: 0.85, springForce: 0, freePlay: 0, floorTravel: 0.14,
  frontGain: 122.84e-5, rearGain: 63.4e-5, pushOut: 0, frontStroke: 0.028, rearStroke: 0.028, portStroke: 0.001,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, barSpacing: 0.0635, stopAngle: 12 * deg,
};
const standardBores = [15.875, 17.78, 19.05, 20.6375, 22.225, 23.8125, 25.4].map((mm) => mm / 1000);
const usualSearch = { frontBores: standardBores, rearBores: standardBores, pedalRatios: [5.5, 5.75, 6, 6.25, 6.5, 6.75, 7], frontShares: { from: 0.5, to: 0.7, count: 9 } };

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const search = (over: Partial<BoreSearch> = {}) => possible(boreFinder({ truck: truckA, ...usualSearch, ...over }));
const single = (truck: TruckForPairs, p: { frontBore: number; rearBore: number; pedalRatio: number; frontShare: number }): PairResult =>
  search({ truck, frontBores: [p.frontBore], rearBores: [p.rearBore], pedalRatios: [p.pedalRatio], frontShares: [p.frontShare] }).pairs[0] as PairResult;
const reach = (p: PairResult) => verdicts.length - verdicts.indexOf(p.verdict);
const judged = (p: PairResult, c: Criterion) => p.judgements[criteria.indexOf(c)]!;

// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const orNone = (min: number, max: number) => fc.oneof(fc.constant(0), range(min, max));
const anyTruck: fc.Arbitrary<TruckForPairs> = fc.record({
  frontLoad: range(600, 1200), rearLoad: range(400, 900), wheelbase: range(2.3, 3.2), cgHeight: range(0.4, 0.8),
  payload: orNone(50, 600), payloadAhead: range(-0.4, 0.6), payloadHeight: range(0.5, 1), grip: range(0.3, 1.1), targetRate: range(0.4, 0.9),
  driverForce: range(300, 900), efficiency: range(0.6, 1), springForce: orNone(5, 40), freePlay: orNone(0, 0.002), floorTravel: range(0.08, 0.25),
  frontGain: range(5e-4, 2e-3), rearGain: range(3e-4, 1.2e-3), pushOut: orNone(1e4, 1e5), frontStroke: range(0.02, 0.036), rearStroke: range(0.02, 0.036),
  portStroke: range(0, 0.002), frontTakeUpVolume: range(0, 2.5e-6), rearTakeUpVolume: range(0, 2.5e-6), frontCompliance: range(1e-13, 6e-13), rearCompliance: range(1e-13, 6e-13),
  barSpacing: range(0.05, 0.08), stopAngle: fc.oneof(fc.constant(undefined), range(8 * deg, 30 * deg)), frontLead: fc.oneof(fc.constant(undefined), range(-0.005, 0.005)),
});
const bore = range(0.0155, 0.0255);
const ratio = range(4.5, 8);
const share = range(0.4, 0.75);
const anyLists = fc.record({
  frontBores: fc.array(bore, { minLength: 1, maxLength: 3 }), rearBores: fc.array(bore, { minLength: 1, maxLength: 2 }),
  pedalRatios: fc.array(ratio, { minLength: 1, maxLength: 3 }), frontShares: fc.array(share, { minLength: 1, maxLength: 3 }),
});

/** Verdicts and margins from the slow functions alone: no closed form, no early end. */
function bruteForce(t: TruckForPairs, p: { frontBore: number; rearBore: number; pedalRatio: number; frontShare: number }): Record<Criterion, { met: boolean; margin: number }> {
  const limits = { ...usualLimits, ...t.limits };
  const mass = t.frontLoad + t.rearLoad;
  const pedal = { ...t, ...p, mass };
  const foot = footWhere({ pedal, excess: (s) => s.rate - t.targetRate, upTo: 1e6 }) as number;
  const chain = footToRoad({ ...pedal, controlForce: foot });
  const { rearBrakeFraction } = brakesPerRodForce({ ...t, ...p });
  const stop = t.stopAngle ?? Math.PI / 2;
  const dead = (side: 'front' | 'rear') => possible(circuitFailure({
    ...t, ...p, dead: side, barOffset: (p.frontShare - 0.5) * t.barSpacing, frontLead: t.frontLead ?? 0, frontPortStroke: t.portStroke, rearPortStroke: t.portStroke,
    mass, rearLoadFraction: t.rearLoad / mass, controlForce: t.driverForce,
  }));
  const most = (found: number, limit: number, scale = limit) => ({ met: found <= limit, margin: (limit - found) / scale });
  const least = (found: number, limit: number) => ({ met: found >= limit, margin: found / limit - 1 });
  const lock = (on: { rearFraction: number; cgHeight: number }) => {
    const order = possible(lockOrder({ rearBrakeFraction, rearFraction: on.rearFraction, heightRatio: on.cgHeight / t.wheelbase, grip: t.grip }));
    const asked = t.targetRate + limits.rateMargin;
    return { met: order.criticalRate >= asked && order.first !== 'rear', margin: order.criticalRate / Math.max(asked, t.grip) - 1 };
  };
  const tilt = Math.asin(Math.min(1, Math.abs((t.frontLead ?? 0) + chain.frontStroke - chain.rearStroke) / t.barSpacing));
  const apart = Math.abs((t.frontLead ?? 0) + chain.frontStroke - chain.rearStroke);
  const [frontDead, rearDead] = [dead('front'), dead('rear')];
  const { shareLow, shareHigh } = limits;
  return {
    'effort': most(foot, t.driverForce),
    'front-stroke': most(chain.frontStroke, limits.strokePart * t.frontStroke),
    'rear-stroke': most(chain.rearStroke, limits.strokePart * t.rearStroke),
    'pad-travel': most(chain.padTravel, limits.travelPart * t.floorTravel),
    'bar-tilt': { met: tilt <= limits.tiltPart * stop, margin: 1 - apart / (t.barSpacing * Math.sin(limits.tiltPart * stop)) },
    'share': { met: p.frontShare >= shareLow && p.frontShare <= shareHigh, margin: Math.min(p.frontShare - shareLow, shareHigh - p.frontShare) / ((shareHigh - shareLow) / 2) },
    'lock-empty': lock({ rearFraction: t.rearLoad / mass, cgHeight: t.cgHeight }),
    'lock-laden': lock(possible(withPayload(t))),
    'front-dead-travel': most(frontDead.travelWithoutFloor, t.floorTravel - limits.floorMargin, t.floorTravel),
    'front-dead-rate': least(frontDead.rate, limits.failedRate),
    'rear-dead-travel': most(rearDead.travelWithoutFloor, t.floorTravel - limits.floorMargin, t.floorTravel),
    'rear-dead-rate': least(rearDead.rate, limits.failedRate),
  };
}

/** How far each end is overrun at the target rate: strokes and ways from footToRoad, sliding from lockOrder. */
function endsMet(t: TruckForPairs, p: { frontBore: number; rearBore: number; pedalRatio: number; frontShare: number }): Record<End, number> {
  const mass = t.frontLoad + t.rearLoad;
  const pedal = { ...t, ...p, mass };
  const foot = footWhere({ pedal, excess: (s) => s.rate - t.targetRate, upTo: 1e6 }) as number;
  const chain = footToRoad({ ...pedal, controlForce: foot });
  const { rearBrakeFraction } = brakesPerRodForce({ ...t, ...p });
  // Rates alone: lockOrder says 'rear-axle-lifts' only where there is no rear brake, and here there is.
  const order = possible(lockOrder({ rearBrakeFraction, rearFraction: t.rearLoad / mass, heightRatio: t.cgHeight / t.wheelbase, grip: t.grip }));
  return {
    'front-bottom': chain.frontStroke - t.frontStroke, 'rear-bottom': chain.rearStroke - t.rearStroke,
    'bar-stop': Math.abs((t.frontLead ?? 0) + chain.frontStroke - chain.rearStroke) - t.barSpacing * Math.sin(t.stopAngle ?? Math.PI / 2),
    'front-slides': t.targetRate - (order.frontLockRate ?? Infinity), 'rear-slides': t.targetRate - (order.rearLockRate ?? Infinity),
    carpet: chain.padTravel - t.floorTravel,
  };
}

function rearLocksFirst(t: TruckForPairs, p: { frontBore: number; rearBore: number; frontShare: number }): boolean {
  const { rearBrakeFraction } = brakesPerRodForce({ ...t, ...p });
  const rear = (on: { rearFraction: number; cgHeight: number }) => possible(lockOrder({ rearBrakeFraction, rearFraction: on.rearFraction, heightRatio: on.cgHeight / t.wheelbase, grip: t.grip })).first === 'rear';
  return rear({ rearFraction: t.rearLoad / (t.frontLoad + t.rearLoad), cgHeight: t.cgHeight }) || rear(possible(withPayload(t)));
}

describe('boreFinder against the slow functions', () => {
  const onEdge = (margins: Record<Criterion, { margin: number }>): boolean => Object.values(margins).some(({ margin }) => Math.abs(margin) < 1e-7);

  test('every verdict and every margin of a pair are those of footToRoad, lockOrder and circuitFailure', () => {
    const tally = new Map<Criterion, [number, number]>(criteria.map((c) => [c, [0, 0]]));
    fc.assert(
      fc.property(anyTruck, bore, bore, ratio, share, (truck, frontBore, rearBore, pedalRatio, frontShare) => {
        const p = { frontBore, rearBore, pedalRatio, frontShare };
        const slow = bruteForce(truck, p);
        fc.pre(!onEdge(slow));
        const fast = single(truck, p);
        for (const j of fast.judgements) {
          expect(j.met, j.criterion).toBe(slow[j.criterion].met);
          expect(Math.abs(j.margin - slow[j.criterion].margin), j.criterion).toBeLessThan(1e-7 * (1 + Math.abs(j.margin)));
          tally.get(j.criterion)![j.met ? 0 : 1] += 1;
        }
      }),
      { numRuns: 1500 },
    );
    for (const [criterion, [met, missed]] of tally) {
      expect(met, `${criterion} met`).toBeGreaterThan(20);
      expect(missed, `${criterion} missed`).toBeGreaterThan(20);
    }
  });

  test('of all ratios and shares each pair gets the best: one that reaches the rate front first, then rear first, then with more force, then by number met, then by worst margin; and the best pair is first', () => {
    const reached = [0, 0, 0, 0];
    fc.assert(
      fc.property(anyTruck, anyLists, (truck, lists) => {
        const score = (p: Parameters<typeof bruteForce>[1]) => {
          const all = bruteForce(truck, p);
          const margins = Object.values(all);
          const met = endsMet(truck, p);
          return {
            edge: margins.some(({ margin }) => Math.abs(margin) < 1e-7) || Object.values(met).some((by) => Math.abs(by) < 1e-9),
            reaches: Object.values(met).some((by) => by > 0) ? 0 : !all.effort.met ? 1 : rearLocksFirst(truck, p) ? 2 : 3, lack: all.effort.met || Object.values(met).some((by) => by > 0) ? 0 : -all.effort.margin, met: margins.filter((j) => j.met).length, worst: Math.min(...margins.map((j) => j.margin)),
          };
        };
        const { pairs, tried } = possible(boreFinder({ truck, ...lists }));
        expect(pairs.length).toBe(lists.frontBores.length * lists.rearBores.length);
        expect(tried).toBe(pairs.length * lists.pedalRatios.length * lists.frontShares.length);
        for (const pair of pairs) {
          const all = lists.pedalRatios.flatMap((pedalRatio) => lists.frontShares.map((frontShare) => score({ frontBore: pair.frontBore, rearBore: pair.rearBore, pedalRatio, frontShare })));
          fc.pre(all.every((s) => !s.edge));
          const best = [...all].sort((a, b) => b.reaches - a.reaches || (Math.abs(a.lack - b.lack) > 1e-7 ? a.lack - b.lack : 0) || b.met - a.met || b.worst - a.worst)[0]!;
          expect(pair.verdict).toBe(verdicts[3 - best.reaches]);
          expect(pair.ends.length === 0).toBe(best.reaches > 0);
          expect(pair.met).toBe(best.met);
          expect(Math.abs(pair.worstMargin - best.worst)).toBeLessThan(1e-7 * (1 + Math.abs(pair.worstMargin)));
          expect(score(pair)).toMatchObject({ reaches: best.reaches, met: best.met });
          reached[best.reaches] = (reached[best.reaches] ?? 0) + 1;
        }
        for (let k = 1; k < pairs.length; k += 1) {
          const [a, b] = [pairs[k - 1]!, pairs[k]!];
          const [first, second] = [a, b].map(reach) as [number, number];
          const [less, more] = [a, b].map((p) => (p.verdict === 'too-hard' ? judged(p, 'effort').missedBy : 0)) as [number, number];
          expect(first > second || (first === second && (less < more || a.met > b.met || (a.met === b.met && a.worstMargin >= b.worstMargin)))).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
    expect(Math.min(...reached)).toBeGreaterThan(5);
  });

  test('what ends a pair on its way to the target rate is what the slow functions meet there, by as much', () => {
    const count = new Map<End, [number, number]>(ends.map((e) => [e, [0, 0]]));
    fc.assert(
      fc.property(anyTruck, bore, bore, ratio, share, (truck, frontBore, rearBore, pedalRatio, frontShare) => {
        const p = { frontBore, rearBore, pedalRatio, frontShare };
        const slow = endsMet(truck, p);
        fc.pre(Object.values(slow).every((by) => Math.abs(by) > 1e-9));
        const found = new Map(single(truck, p).ends.map(({ end, by }) => [end, by]));
        for (const end of ends) {
          expect(found.has(end), end).toBe(slow[end] > 0);
          count.get(end)![slow[end] > 0 ? 0 : 1] += 1;
          if (slow[end] > 0 && !end.endsWith('slides')) expect(found.get(end)).toBeCloseTo(slow[end], 9);
        }
      }),
      { numRuns: 600 },
    );
    for (const [end, [met, free]] of count) {
      expect(met, `${end} met`).toBeGreaterThan(5);
      expect(free, `${end} not met`).toBeGreaterThan(20);
    }
  });
});

describe('boreFinder', () => {
  test('the reference truck meets seven of twelve as it stands: it has the force and lacks the way', () => {
    const p = single(truckA, { frontBore: 0.01778, rearBore: 0.01778, pedalRatio: 6.2, frontShare: 0.62 });
    expect(p.judgements.filter((j) => !j.met).map((j) => j.criterion)).toEqual(['bar-tilt', 'lock-empty', 'pad-travel', 'front-dead-travel', 'rear-dead-travel']);
    expect(judged(p, 'effort').found).toBeCloseTo(494, 0);
    expect(judged(p, 'front-stroke').found * 1e3).toBeCloseTo(21.9, 1);
    expect(judged(p, 'bar-tilt').missedBy * 1e3).toBeCloseTo(12.05 - 6.64, 1);
    expect(p.worst).toBe('bar-tilt');
    expect(p.rearBrakeFraction).toBeCloseTo(0.24, 3);
  });

  test('of the usual bores two pairs bring the reference truck to 0.8 g at 500 N with the front first, and the better one lacks way in five limits', () => {
    const { pairs, tried, of } = search({ frontShares: { from: 0.5, to: 0.65, count: 13 } });
    expect([pairs.length, tried, of]).toEqual([49, 49 * 7 * 13, 12]);
    expect(pairs.filter((p) => p.verdict === 'reaches').map((p) => [p.frontBore, p.rearBore])).toEqual([[0.01905, 0.01905], [0.01778, 0.01778]]);
    expect(pairs[0]!.judgements.filter((j) => !j.met).map((j) => j.criterion)).toEqual(['bar-tilt', 'lock-empty', 'pad-travel', 'front-dead-travel', 'rear-dead-travel']);
    expect(new Set(pairs.map((p) => `${p.frontBore}/${p.rearBore}`)).size).toBe(49);
  });

  test('with stiffer circuits, a longer floor and grabbier pads there are pairs that meet all twelve', () => {
    const better = { ...truckA, frontTakeUpVolume: 1.2e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.03e-11, frontGain: 160e-5, rearGain: 66e-5, floorTravel: 0.165 };
    const { pairs } = search({ truck: better });
    expect(pairs[0]!.met).toBe(12);
    expect(pairs[0]!.worstMargin).toBeGreaterThanOrEqual(-1e-9);
    expect(pairs[pairs.length - 1]!.met).toBeLessThan(10);
  });

  test('a pair that does not brake the truck never stands before one that does, though its figures would meet more', () => {
    const truck = { ...truckA, grip: 1.1, frontTakeUpVolume: 1.2e-6, driverForce: 520, floorTravel: 0.155 };
    const { pairs } = search({ truck, frontBores: [0.01778, 0.0205], rearBores: [0.01778], pedalRatios: [6.2], frontShares: [0.62] });
    expect(pairs.map((q) => q.verdict)).toEqual(['rear-first', 'too-hard']);
    expect(pairs[1]!.met).toBeGreaterThanOrEqual(pairs[0]!.met);
    const short = search({ truck: { ...truck, driverForce: 900, frontStroke: 0.0215, frontTakeUpVolume: 1.9e-6 }, frontBores: [0.01778, 0.0205], rearBores: [0.01778], pedalRatios: [6.2], frontShares: [0.62] }).pairs;
    expect(short.map((q) => q.verdict)).toEqual(['rear-first', 'never']);
    expect(short[1]!.ends.map((e) => e.end)).toContain('front-bottom');
  });

  test('a near miss says which master runs out of stroke and by how much: the stroke it needs less the part it may use', () => {
    const p = single(truckA, { frontBore: 0.015875, rearBore: 0.01905, pedalRatio: 6, frontShare: 0.6 });
    const j = judged(p, 'front-stroke');
    const area = (Math.PI / 4) * 0.015875 ** 2;
    expect(j.missedBy).toBeCloseTo(0.001 + (1.874e-6 + 0.051e-11 * p.frontPressure) / area - 0.8 * 0.028, 12);
    expect(j.missedBy).toBeGreaterThan(0.004);
    expect(judged(p, 'rear-stroke').missedBy).toBe(0);
  });

  test('a share outside the band names the nearer edge and how far it is', () => {
    const p = single(truckA, { frontBore: 0.01778, rearBore: 0.01778, pedalRatio: 6.2, frontShare: 0.68 });
    expect(judged(p, 'share')).toMatchObject({ found: 0.68, limit: 0.65, met: false });
    expect(judged(p, 'share').missedBy).toBeCloseTo(0.03, 12);
    expect(judged(single(truckA, { frontBore: 0.01778, rearBore: 0.01778, pedalRatio: 6.2, frontShare: 0.45 }), 'share').limit).toBe(0.5);
  });

  test('a limit that is just touched is met', () => {
    const p = single({ ...truckA, driverForce: judged(single(truckA, { frontBore: 0.01778, rearBore: 0.01778, pedalRatio: 6.2, frontShare: 0.65 }), 'effort').found }, { frontBore: 0.01778, rearBore: 0.01778, pedalRatio: 6.2, frontShare: 0.65 });
    expect(judged(p, 'effort').met).toBe(true);
    expect(judged(p, 'share').met).toBe(true);
    expect(judged(p, 'share').margin).toBeLessThan(0); // by the last digit of a double
    expect(p.met).toBe(p.judgements.filter((j) => j.met).length);
  });

  test('a bore lies in its window exactly where its effort and its stroke are met', () => {
    fc.assert(
      fc.property(anyTruck, bore, bore, ratio, share, (truck, frontBore, rearBore, pedalRatio, frontShare) => {
        const p = single(truck, { frontBore, rearBore, pedalRatio, frontShare });
        for (const [side, d, w, pressure] of [['front', frontBore, p.frontWindow, p.frontPressure], ['rear', rearBore, p.rearWindow, p.rearPressure]] as const) {
          const [effort, stroke] = [judged(p, 'effort'), judged(p, `${side}-stroke`)];
          fc.pre(Math.abs(effort.margin) > 1e-6 && Math.abs(stroke.margin) > 1e-6 && pressure > 0);
          expect(d <= w.highest).toBe(effort.met);
          expect(d >= w.lowest).toBe(stroke.met);
          if (effort.met && stroke.met) expect(w.empty).toBe(false);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('more to choose from never makes the best of a pair worse', () => {
    const rank = (r: ReturnType<typeof search>) => new Map(r.pairs.map((p) => [`${p.frontBore}/${p.rearBore}`, p]));
    fc.assert(
      fc.property(anyTruck, anyLists, ratio, share, (truck, lists, moreRatio, moreShare) => {
        const few = rank(search({ truck, ...lists }));
        const many = rank(search({ truck, ...lists, pedalRatios: [...lists.pedalRatios, moreRatio], frontShares: [...lists.frontShares, moreShare] }));
        for (const [key, a] of few) {
          const b = many.get(key)!;
          const [before, after] = [a, b].map(reach) as [number, number];
          expect(after > before || (after === before && (judged(b, 'effort').missedBy < judged(a, 'effort').missedBy || b.met > a.met || (b.met === a.met && b.worstMargin >= a.worstMargin)))).toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('a stronger driver, a deeper floor, a longer stroke and a better bar stop never miss what was met at the target rate', () => {
    const atTarget: readonly Criterion[] = ['effort', 'front-stroke', 'rear-stroke', 'pad-travel', 'bar-tilt', 'share', 'lock-empty', 'lock-laden'];
    fc.assert(
      fc.property(anyTruck, bore, bore, ratio, share, (truck, frontBore, rearBore, pedalRatio, frontShare) => {
        const p = { frontBore, rearBore, pedalRatio, frontShare };
        const before = single(truck, p);
        const eased = { driverForce: truck.driverForce * 1.2, floorTravel: truck.floorTravel * 1.2, frontStroke: truck.frontStroke * 1.2, rearStroke: truck.rearStroke * 1.2, stopAngle: truck.stopAngle && truck.stopAngle * 1.2 };
        const after = single({ ...truck, ...eased }, p);
        for (const c of atTarget) expect(judged(after, c).margin, c).toBeGreaterThanOrEqual(judged(before, c).margin - 1e-12);
      }),
    );
  });

  test('lists in another order find the same pairs, ratios and shares', () => {
    const forward = search();
    const backward = search({ frontBores: [...standardBores].reverse(), rearBores: [...standardBores].reverse(), pedalRatios: [...usualSearch.pedalRatios].reverse(), frontShares: { from: 0.7, to: 0.5, count: 9 } });
    const show = (r: ReturnType<typeof search>) => r.pairs.map((p) => [p.frontBore, p.rearBore, p.pedalRatio, p.frontShare.toFixed(9), p.met].join(' ')).sort();
    expect(show(backward)).toEqual(show(forward));
  });

  test('where no ratio and no share can change the worst miss, the rest decides and not the order of the list', () => {
    // On this grip the rear tires alone cannot hold 0.25 g: every choice misses that by the same.
    const slippery = { ...truckA, grip: 0.3, limits: { rateMargin: 0 } };
    const at = (pedalRatios: readonly number[]) => search({ truck: slippery, frontBores: [0.01905], rearBores: [0.0254], pedalRatios, frontShares: [0.62] }).pairs[0]!;
    expect(at([6, 6.5]).pedalRatio).toBe(at([6.5, 6]).pedalRatio);
  });

  test('a share range is its steps with both ends', () => {
    const one = { frontBores: [0.01778], rearBores: [0.01778], pedalRatios: [6.2] };
    const range = search({ ...one, frontShares: { from: 0.5, to: 0.7, count: 3 } });
    expect(range.pairs[0]).toEqual(search({ ...one, frontShares: [0.5, 0.6, 0.7] }).pairs[0]);
    expect(range.tried).toBe(3);
  });

  test('an impossible load is handed on; an empty list, a share of 1 or a bore of 0 is a mistake of the caller', () => {
    expect(boreFinder({ truck: { ...truckA, payload: 3000, payloadAhead: -2 }, ...usualSearch })).toMatchObject({ impossible: 'front-axle-lifts' });
    expect(() => search({ frontBores: [] })).toThrow(/frontBores: expected one or more/);
    expect(() => search({ frontShares: [1] })).toThrow(/frontShares/);
    expect(() => search({ frontShares: { from: 0.5, to: 0.6, count: 1 } })).toThrow(/count/);
    expect(() => search({ rearBores: [0] })).toThrow(/rearBores/);
  });
});
