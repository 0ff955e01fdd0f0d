import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardGravity } from '../../src/engine/constants.ts';
import { gaugeFit, neededReadings } from '../../src/engine/gaugeFit.ts';
import type { GaugeReading } from '../../src/engine/gaugeHysteresis.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

const lbf = 0.45359237 * standardGravity;
const area = (bore: number): number => (Math.PI / 4) * bore ** 2;

interface Rig {
  readonly share: number;
  readonly efficiency: number;
  readonly pedalRatio: number;
  readonly frontBore: number;
  readonly rearBore: number;
  readonly spring: number;
  /** half the change of push, and of share, between a foot going down and coming up */
  readonly drag: number;
  readonly band: number;
  readonly knee: number;
  readonly slope: number;
}
const rig: Rig = { share: 0.62, efficiency: 0.85, pedalRatio: 6.2, frontBore: 0.01778, rearBore: 0.01778, spring: 0, drag: 0, band: 0, knee: Infinity, slope: 1 };

/** What a rig's gauges would show: statics of the bar, written anew. `noise` spoils scale and gauges, each by its part of the reading. */
function readingsOf(r: Rig, forces: readonly number[], noise: () => number = () => 0, directions: readonly GaugeReading['direction'][] = ['rising', 'falling']): GaugeReading[] {
  return directions.flatMap((direction) =>
    forces.map((force) => {
      const back = direction === 'falling';
      const leverage = r.pedalRatio * r.efficiency * (back ? (1 + r.drag) / (1 - r.drag) : 1);
      const share = back ? r.share + 2 * r.band : r.share;
      const front = Math.max(0, force * leverage * share - r.spring) / area(r.frontBore);
      const inletAt = (f: number): number => Math.max(0, f * leverage * (1 - share) - r.spring) / area(r.rearBore);
      const bent = (p: number): number => (p > r.knee ? r.knee + r.slope * (p - r.knee) : p);
      // Let off, a valve's outlet waits until the inlet has fallen to it.
      const rear = back ? Math.min(inletAt(force), bent(inletAt(Math.max(...forces)))) : bent(inletAt(force));
      return { controlForce: force * (1 + noise()), frontPressure: front * (1 + noise()), rearPressure: rear * (1 + noise()), direction };
    }));
}
const steps = (n: number): number[] => Array.from({ length: n }, (_, k) => (12 + (98 * k) / (n - 1)) * lbf);

type Fit = Exclude<ReturnType<typeof gaugeFit>, Impossible>;
function fitOf(r: Rig, readings: readonly GaugeReading[], paper?: Parameters<typeof gaugeFit>[0]['paper']): Fit {
  const fit = gaugeFit({ readings, frontBore: r.frontBore, rearBore: r.rearBore, pedalRatio: r.pedalRatio, paper });
  if (isImpossible(fit)) throw new Error(`expected a fit, found ${fit.impossible} ${fit.by}`);
  return fit;
}
function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
/** Normal deviates of 1 % from a seed: the same readings on every machine. */
function noiseOf(seed: number, part = 0.01): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => part * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyRig: fc.Arbitrary<Rig> = fc.record({
  share: range(0.45, 0.7), efficiency: range(0.65, 0.95), pedalRatio: range(4.5, 7.5), frontBore: range(0.0158, 0.0254), rearBore: range(0.0158, 0.0254),
  spring: range(0, 30), drag: range(0, 0.06), band: range(-0.02, 0.02), knee: fc.constant(Infinity), slope: fc.constant(1),
});

describe('gaugeFit on readings without error', () => {
  test('the reference truck’s pressures give back its share of 0.62 and efficiency of 0.85, and no knee', () => {
    const forces = [25, 50, 75, 100, 110].map((f) => f * lbf);
    const fit = fitOf(rig, readingsOf(rig, forces));
    expect(fit.frontShare).toBeCloseTo(0.62, 12);
    expect(fit.efficiency).toBeCloseTo(0.85, 12);
    expect(fit.knee).toBeUndefined();
    expect(fit.rising.front.slope * 222).toBeCloseTo(29.2e5, -4);
    expect(fit.rising.rear.slope * 222).toBeCloseTo(17.9e5, -4);
    expect(possible(fit.hysteresis).front).toBeCloseTo(0, 12);
    expect(fit.barSwingsFree).toBe(true);
  });

  test('any bar, linkage and springs are found again, each way, and work is kept: i η is the push per newton of foot', () => {
    fc.assert(
      fc.property(anyRig, (r) => {
        const fit = fitOf(r, readingsOf(r, steps(6)));
        expect(fit.frontShare).toBeCloseTo(r.share, 9);
        expect(fit.efficiency).toBeCloseTo(r.efficiency, 9);
        expect(fit.rising.leverage).toBeCloseTo(r.pedalRatio * r.efficiency, 8);
        expect(fit.falling!.frontShare).toBeCloseTo(r.share + 2 * r.band, 9);
        expect(fit.falling!.efficiency / fit.efficiency).toBeCloseTo((1 + r.drag) / (1 - r.drag), 8);
        expect(fit.rising.front.offsetForce).toBeCloseTo(r.spring / (r.share * r.pedalRatio * r.efficiency), 6);
        expect(fit.shareError).toBeLessThan(1e-9);
        for (const { front, rear } of fit.residuals) expect(Math.abs(front as number) + Math.abs(rear as number)).toBeLessThan(1);
      }),
    );
  });

  test('drag and the bar’s friction at 50 lbf are told apart', () => {
    fc.assert(
      fc.property(anyRig.map((r) => ({ ...r, spring: 0 })), (r) => {
        const h = possible(fitOf(r, readingsOf(r, steps(7))).hysteresis);
        expect(h.drag).toBeCloseTo(r.drag, 9);
        expect(h.share).toBeCloseTo(r.band, 9);
        const front = ((1 + r.drag) / (1 - r.drag)) * (1 + (2 * r.band) / r.share);
        expect(h.front).toBeCloseTo((front - 1) / (front + 1), 9);
      }),
    );
  });

  test('the bar swings free below 5 % of hysteresis in both circuits and not above it in either', () => {
    const free = (drag: number, band: number) => fitOf(rig, readingsOf({ ...rig, drag, band }, steps(5))).barSwingsFree;
    expect(free(0.049, 0)).toBe(true);
    expect(free(0.051, 0)).toBe(false);
    expect(free(0, 0.022)).toBe(false); // 2.2 points of share are 5.8 % of a rear that has 38 %
    expect(free(0, 0.015)).toBe(true);
  });

  test('a valve’s knee and slope are found, and share and efficiency come from below it', () => {
    fc.assert(
      fc.property(anyRig, range(0.35, 0.7), range(0, 0.7), (r, where, slope) => {
        const top = (110 * lbf * r.pedalRatio * r.efficiency * (1 - r.share) - r.spring) / area(r.rearBore);
        const valved = { ...r, knee: where * top, slope };
        const fit = fitOf(valved, readingsOf(valved, steps(10)));
        expect(fit.knee!.pressure / valved.knee).toBeCloseTo(1, 8);
        expect(fit.knee!.slope).toBeCloseTo(slope, 8);
        expect(fit.frontShare).toBeCloseTo(r.share, 8);
        expect(fit.efficiency).toBeCloseTo(r.efficiency, 8);
        for (const { rear, direction } of fit.residuals) if (direction === 'rising') expect(Math.abs(rear as number)).toBeLessThan(1);
      }),
    );
  });

  test('a bend that one line misses by less than 0.2 % of the highest pressure is no gauge’s to tell, however clean the readings', () => {
    const forces = [...steps(10), 109 * lbf, 109.6 * lbf].sort((a, b) => a - b);
    const top = (110 * lbf * 6.2 * 0.85 * 0.38) / area(rig.rearBore);
    const bentAt = (part: number) => fitOf(rig, readingsOf({ ...rig, knee: part * top, slope: 0.43 }, forces, undefined, ['rising']));
    expect(bentAt(0.993).kneeChance).toBeLessThan(0.05);
    expect(bentAt(0.993).knee).toBeUndefined();
    expect(bentAt(0.93).knee).toBeDefined();
  });

  test('blind to the knee, one line through all rear readings would call that bar more forward than it is', () => {
    const valved = { ...rig, knee: 20e5, slope: 0.43 };
    const list = readingsOf(valved, steps(10), undefined, ['rising']);
    const slopeOf = (key: 'frontPressure' | 'rearPressure') => (list[9]![key] - list[0]![key]) / (list[9]!.controlForce - list[0]!.controlForce);
    const [u, v] = [slopeOf('frontPressure') * area(rig.frontBore), slopeOf('rearPressure') * area(rig.rearBore)];
    expect(u / (u + v)).toBeGreaterThan(0.65);
    expect(fitOf(valved, list).frontShare).toBeCloseTo(0.62, 9);
  });
});

describe('gaugeFit on readings with 1 % of noise in scale and gauges', () => {
  // Two-sided 95 % of Student's t.
  const t95: Readonly<Record<number, number>> = { 1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 6: 2.447, 7: 2.365, 8: 2.306, 9: 2.262, 10: 2.228 };
  const within = (off: number, error: number, freedom: number): number => (Math.abs(off) <= (t95[freedom] as number) * error ? 1 : 0);

  test.each([5, 8, 12])('with %i readings each way, share and efficiency lie within their errors in about 95 of 100 rigs', (n) => {
    const noise = noiseOf(40 + n);
    const pick = noiseOf(7, 1);
    const runs = 600;
    let [share, efficiency, used] = [0, 0, 0];
    for (let k = 0; k < runs; k += 1) {
      const r = { ...rig, share: 0.58 + 0.03 * Math.tanh(pick()), efficiency: 0.83 + 0.05 * Math.tanh(pick()), rearBore: 0.0206, spring: 15, drag: 0.03, band: 0.005 };
      const fit = fitOf(r, readingsOf(r, steps(n), noise));
      if (fit.knee) continue;
      used += 1;
      share += within(fit.frontShare - r.share, fit.shareError, fit.rising.freedom);
      efficiency += within(fit.efficiency - r.efficiency, fit.efficiencyError, fit.rising.freedom);
    }
    expect(used / runs).toBeGreaterThan(0.93);
    for (const covered of [share / used, efficiency / used]) {
      expect(covered).toBeGreaterThan(0.9);
      expect(covered).toBeLessThan(0.99);
    }
  });

  test('a scale that scatters spoils the efficiency and leaves the share alone, and the errors know it', () => {
    const noise = noiseOf(5, 0.02);
    let [share, efficiency, shareClaim, efficiencyClaim] = [0, 0, 0, 0];
    for (let k = 0; k < 300; k += 1) {
      const list = readingsOf(rig, steps(8), undefined, ['rising']).map((r) => ({ ...r, controlForce: r.controlForce * (1 + noise()) }));
      const fit = fitOf(rig, list);
      share += (fit.frontShare / 0.62 - 1) ** 2 / 300;
      efficiency += (fit.efficiency / 0.85 - 1) ** 2 / 300;
      shareClaim += (fit.shareError / 0.62) ** 2 / 300;
      efficiencyClaim += (fit.efficiencyError / 0.85) ** 2 / 300;
    }
    expect(Math.sqrt(share)).toBeLessThan(1e-9);
    expect(Math.sqrt(shareClaim)).toBeLessThan(1e-6);
    expect(Math.sqrt(efficiency)).toBeGreaterThan(0.005);
    expect(Math.sqrt(efficiency / efficiencyClaim)).toBeGreaterThan(0.8);
    expect(Math.sqrt(efficiency / efficiencyClaim)).toBeLessThan(1.25);
  });

  test('knee, slope and hysteresis of a valved rig are recovered within about twice their errors', () => {
    const noise = noiseOf(91);
    const r = { ...rig, rearBore: 0.0206, spring: 15, drag: 0.03, knee: 14e5, slope: 0.43 };
    const [at50on, at50off] = readingsOf(r, [50 * lbf, 110 * lbf]).filter((x) => x.controlForce === 50 * lbf);
    const trueFront = (at50off!.frontPressure - at50on!.frontPressure) / (at50off!.frontPressure + at50on!.frontPressure);
    let [found, knee, slope, front, share] = [0, 0, 0, 0, 0];
    const runs = 300;
    for (let k = 0; k < runs; k += 1) {
      const fit = fitOf(r, readingsOf(r, steps(10), noise));
      if (!fit.knee) continue;
      found += 1;
      knee += within(fit.knee.pressure - r.knee, fit.knee.pressureError, 6);
      slope += within(fit.knee.slope - r.slope, fit.knee.slopeError, 6);
      share += within(fit.frontShare - r.share, fit.shareError, fit.rising.freedom);
      front += within(possible(fit.hysteresis).front - trueFront, possible(fit.hysteresis).frontError, 8);
    }
    expect(found / runs).toBeGreaterThan(0.98);
    for (const covered of [knee, slope, front, share]) expect(covered / found).toBeGreaterThan(0.88);
  });

  test('five readings find a usual valve in few cases, eight in nearly all, and a straight bar is seldom called bent', () => {
    const rates = (n: number, r: Rig): number => {
      const noise = noiseOf(300 + n);
      let found = 0;
      for (let k = 0; k < 300; k += 1) if (fitOf(r, readingsOf(r, steps(n), noise, ['rising'])).knee) found += 1;
      return found / 300;
    };
    const valved = { ...rig, knee: 18e5, slope: 0.43 };
    expect(rates(5, valved)).toBeLessThan(0.7);
    expect(rates(6, valved)).toBeGreaterThan(0.8);
    expect(rates(8, valved)).toBeGreaterThan(0.97);
    for (const n of [5, 6, 8, 10, 12]) expect(rates(n, rig)).toBeLessThan(0.06);
  });
});

describe('gaugeFit beside the sheet', () => {
  const paper = { frontShare: 0.62, efficiency: 0.85, springForce: 0 };

  test('pressures within 7 % of the sheet agree with it, and the worst is named', () => {
    const list = readingsOf(rig, steps(6));
    const spoiled = (part: number) => list.map((r, k) => (k === 3 ? { ...r, rearPressure: r.rearPressure * (1 + part) } : r));
    expect(fitOf(rig, list, paper)).toMatchObject({ agreesWithPaper: true });
    expect(fitOf(rig, spoiled(0.069), paper).agreesWithPaper).toBe(true);
    const worse = fitOf(rig, spoiled(-0.071), paper);
    expect(worse.agreesWithPaper).toBe(false);
    expect(worse.worstDeviation).toMatchObject({ circuit: 'rear', controlForce: list[3]!.controlForce });
    expect(worse.worstDeviation!.part).toBeCloseTo(-0.071, 9);
    expect(fitOf(rig, list).agreesWithPaper).toBeUndefined();
  });

  test('the sheet’s valve bends the sheet’s rear too, and its springs come off', () => {
    const valved = { ...rig, spring: 20, knee: 18e5, slope: 0.43 };
    const list = readingsOf(valved, steps(8));
    expect(fitOf(valved, list, { ...paper, springForce: 20, valve: { knee: 18e5, slope: 0.43 } }).worstDeviation!.part).toBeCloseTo(0, 9);
    expect(fitOf(valved, list, { ...paper, springForce: 20 }).agreesWithPaper).toBe(false);
  });

  test('a bar bound 4 points off its turns is seen as such', () => {
    expect(fitOf(rig, readingsOf({ ...rig, share: 0.66 }, steps(6)), paper).shareOff).toBeCloseTo(0.04, 9);
  });

  test('an efficiency above 0.97 or below 0.70 is doubted, one between is not', () => {
    const doubt = (efficiency: number) => fitOf(rig, readingsOf({ ...rig, efficiency }, steps(5))).efficiencyDoubt;
    expect([doubt(0.98), doubt(0.96), doubt(0.71), doubt(0.69)]).toEqual(['too-high', undefined, undefined, 'too-low']);
  });
});

describe('gaugeFit when readings are missing or make no sense', () => {
  const attempt = (readings: readonly GaugeReading[]) => gaugeFit({ readings, frontBore: 0.01778, rearBore: 0.01778, pedalRatio: 6.2 });
  const rising = readingsOf(rig, steps(5), undefined, ['rising']);
  const falling = readingsOf(rig, steps(5), undefined, ['falling']);

  test('it says how many are missing, and a gauge at 0 does not count as one', () => {
    expect(neededReadings).toBe(5);
    expect(attempt(rising.slice(0, 3))).toEqual({ impossible: 'too-few-rising-readings', by: 2 });
    expect(attempt(falling)).toEqual({ impossible: 'too-few-rising-readings', by: 5 });
    expect(attempt([...rising, ...falling.slice(0, 1)])).toEqual({ impossible: 'too-few-falling-readings', by: 4 });
    expect(attempt([{ ...rising[0]!, rearPressure: 0 }, ...rising.slice(1)])).toEqual({ impossible: 'too-few-rising-readings', by: 1 });
  });

  test('without any reading of the foot coming up, share and efficiency stand, and nothing is said of the bar’s swing', () => {
    const fit = fitOf(rig, rising);
    expect(fit.frontShare).toBeCloseTo(0.62, 12);
    expect(fit.falling).toBeUndefined();
    expect(fit.barSwingsFree).toBeUndefined();
    expect(fit.hysteresis).toEqual({ impossible: 'no-falling-readings' });
  });

  test('one force five times is no line, and a pressure that falls as the foot pushes harder is no brake', () => {
    expect(attempt(rising.map((r) => ({ ...r, controlForce: 200 })))).toEqual({ impossible: 'forces-all-alike' });
    const upsideDown = rising.map((r) => ({ ...r, rearPressure: 5e6 - r.rearPressure }));
    expect(attempt(upsideDown)).toMatchObject({ impossible: 'rear-pressure-does-not-rise' });
    expect(attempt(rising.map((r) => ({ ...r, frontPressure: 2e7 - r.frontPressure })))).toMatchObject({ impossible: 'front-pressure-does-not-rise' });
    const stuck = attempt(rising.map((r) => ({ ...r, rearPressure: 1e6 })));
    expect(isImpossible(stuck) && stuck.impossible).toBe('rear-pressure-does-not-rise');
  });

  test('too few readings of the foot coming up below a knee leave the falling line out and keep the rest', () => {
    const valved = { ...rig, knee: 14e5, slope: 0.43 };
    const high = readingsOf(valved, steps(10).slice(5), undefined, ['falling']);
    const fit = fitOf(valved, [...readingsOf(valved, steps(10), undefined, ['rising']), ...high]);
    expect(fit.falling).toBeUndefined();
    expect(fit.knee!.pressure).toBeCloseTo(14e5, 0);
    expect(fit.frontShare).toBeCloseTo(0.62, 9);
  });

  test('50 lbf outside the readings leaves the hysteresis open', () => {
    const fit = fitOf(rig, readingsOf(rig, steps(12).slice(6)));
    expect(isImpossible(fit.hysteresis) && fit.hysteresis.impossible).toBe('force-not-bracketed');
    expect(fit.barSwingsFree).toBeUndefined();
  });

  test('a negative pressure or a force of 0 is a mistake of the caller', () => {
    expect(() => attempt([{ ...rising[0]!, frontPressure: -1 }])).toThrow(/frontPressure/);
    expect(() => attempt([{ ...rising[0]!, controlForce: 0 }])).toThrow(/controlForce/);
  });
});

describe('gaugeFit of a bar that meets its stop', () => {
  /** Front and rear swell (m³/Pa); up to the push at which their strokes differ by the lead the bar shares, from there both pistons advance alike. */
  function stopped(lead: number, forces: readonly number[], noise: () => number = () => 0): GaugeReading[] {
    const [swellFront, swellRear, a] = [5.1e-13, 3.3e-13, area(rig.frontBore)];
    return forces.map((force) => {
      const push = force * rig.pedalRatio * rig.efficiency;
      const [front, rear] = [rig.share * push, (1 - rig.share) * push];
      const ahead = (swellFront * front - swellRear * rear) / a ** 2 - lead;
      // Taking d N from the front and giving them to the rear brings the strokes closer by d (swellFront + swellRear)/a².
      const moved = ahead > 0 ? (ahead * a ** 2) / (swellFront + swellRear) : 0;
      return { controlForce: force * (1 + noise()), frontPressure: ((front - moved) / a) * (1 + noise()), rearPressure: ((rear + moved) / a) * (1 + noise()), direction: 'rising' as const };
    });
  }

  test('the rear rises faster from there, and share and efficiency come from below', () => {
    const list = stopped(0.005, steps(10));
    const bend = fitOf(rig, list).steepening;
    expect(bend?.times).toBeCloseTo((5.1 / 3.3) / (0.38 / 0.62), 6);
    expect(fitOf(rig, list).frontShare).toBeCloseTo(0.62, 9);
    expect(fitOf(rig, list).efficiency).toBeCloseTo(0.85, 9);
    expect(fitOf(rig, list).knee).toBeUndefined();
    const above = list.filter((r) => r.frontPressure > bend!.frontPressure);
    expect(above.length).toBeGreaterThan(1);
    expect(fitOf(rig, list).residuals.filter((r) => r.front === undefined)).toHaveLength(above.length);
  });

  test('one line through all readings would have called that bar more rearward than it is', () => {
    const list = stopped(0.005, steps(10));
    const slope = (of: (r: GaugeReading) => number): number => {
      const [f, p] = [list.map((r) => r.controlForce), list.map(of)];
      const mean = f.reduce((sum, x) => sum + x, 0) / f.length;
      return f.reduce((sum, x, k) => sum + (x - mean) * p[k]!, 0);
    };
    const [front, rear] = [slope((r) => r.frontPressure), slope((r) => r.rearPressure)];
    expect(front / (front + rear)).toBeLessThan(0.57);
  });

  test('it is found through 1 % of noise, and seldom where there is none', () => {
    let [found, false_] = [0, 0];
    for (let seed = 1; seed <= 200; seed += 1) {
      if (fitOf(rig, stopped(0.005, steps(10), noiseOf(seed))).steepening) found += 1;
      if (fitOf(rig, stopped(1, steps(10), noiseOf(1000 + seed))).steepening) false_ += 1;
    }
    expect(found).toBeGreaterThan(195);
    expect(false_).toBeLessThan(12);
  });

  test('a valve never looks like one, whatever it is set to', () => {
    fc.assert(fc.property(anyRig, (r) => {
      const fit = gaugeFit({ readings: readingsOf(r, steps(9)), frontBore: r.frontBore, rearBore: r.rearBore, pedalRatio: r.pedalRatio });
      if (!isImpossible(fit)) expect(fit.steepening).toBeUndefined();
    }), { numRuns: 100 });
  });
});
