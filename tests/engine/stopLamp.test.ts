import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { failureAtForce } from '../../src/engine/circuitFailure.ts';
import type { CircuitFailure } from '../../src/engine/circuitFailure.ts';
import { footToRoad } from '../../src/engine/footToRoad.ts';
import type { Pedal } from '../../src/engine/footToRoad.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { awgArea, lampWiring, stopLamp, stopLampWithDeadCircuit } from '../../src/engine/stopLamp.ts';
import type { LampSwitch } from '../../src/engine/stopLamp.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const deg = Math.PI / 180;
const psi = (0.45359237 * 9.80665) / 0.0254 ** 2;
const pedal: Pedal = {
  pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, springForce: 0, frontBore: 0.01778, rearBore: 0.01778, portStroke: 0.001, freePlay: 0.001,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, frontGain: 122.84e-5, rearGain: 63.4e-5, pushOut: 0, mass: 1340,
};
const truck: Omit<CircuitFailure, 'dead'> = {
  pedalRatio: 6.2, efficiency: 0.85, barSpacing: 0.0635, barOffset: 0.00762, stopAngle: 12 * deg, frontBore: 0.01778, rearBore: 0.01778, frontStroke: 0.028, rearStroke: 0.028,
  frontTakeUpVolume: 1.874e-6, rearTakeUpVolume: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, frontPortStroke: 0.001, rearPortStroke: 0.001, floorTravel: 0.3,
  frontGain: 122.84e-5, rearGain: 63.4e-5, mass: 1340, rearLoadFraction: 0.42, cgHeight: 0.58, wheelbase: 2.743, grip: 0.9,
};
const noSpring = { springPreload: 0, springRate: 0 };
const at = (circuit: 'front' | 'rear', pounds: number): LampSwitch => ({ kind: 'pressure', circuit, makesAt: pounds * psi });
const onPad = (makesAt: number): LampSwitch => ({ kind: 'pedal', makesAt });
const area = (Math.PI / 4) * 0.01778 ** 2;
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyPedal: fc.Arbitrary<Pedal> = fc.record({
  pedalRatio: range(4, 8), efficiency: range(0.6, 1), frontShare: fc.oneof(fc.constant(0.5), range(0.2, 0.8)), springForce: fc.oneof(fc.constant(0), range(0, 60)),
  frontBore: range(0.0155, 0.0255), rearBore: range(0.0155, 0.0255), portStroke: range(0, 0.002), freePlay: range(0, 0.002),
  frontTakeUpVolume: range(0, 4e-6), rearTakeUpVolume: range(0, 4e-6), frontCompliance: range(1e-13, 1e-12), rearCompliance: range(1e-13, 1e-12),
  frontGain: range(5e-4, 2e-3), rearGain: range(3e-4, 1.5e-3), pushOut: range(0, 1e5), mass: range(900, 2500),
  valve: fc.oneof(fc.constant(undefined), fc.record({ knee: range(5e5, 5e6), slope: range(0.2, 0.9) })),
});

/** Pad travel of each master from its own balance, nothing taken from the engine's travel. */
function travelByHand(p: Pedal, force: number): number {
  const rod = force * p.pedalRatio * p.efficiency;
  const stroke = (share: number, bore: number, takeUp: number, k: number, knee = Infinity, slope = 1) => {
    if (share * rod < p.springForce) return 0;
    const a = Math.PI * (bore / 2) ** 2;
    const pressure = (share * rod - p.springForce) / a;
    return (takeUp + k * (Math.min(pressure, knee) + slope * Math.max(0, pressure - knee))) / a + p.portStroke;
  };
  const f = stroke(p.frontShare, p.frontBore, p.frontTakeUpVolume, p.frontCompliance);
  const r = stroke(1 - p.frontShare, p.rearBore, p.rearTakeUpVolume, p.rearCompliance, p.valve?.knee, p.valve?.slope);
  return p.pedalRatio * (p.frontShare * f + (1 - p.frontShare) * r + p.freePlay);
}

describe('stopLamp with pressure switches', () => {
  // By hand on the reference truck: F = p A/(share × 6.2 × 0.85), rate 0.001619 per newton.
  test.each([
    [60, 'front', 31.4, 0.051],
    [60, 'rear', 51.3, 0.083],
    [120, 'front', 62.9, 0.102],
    [120, 'rear', 102.6, 0.166],
  ] as const)('a %i psi switch in the %s circuit of the reference truck lights at %f N, with the truck already at %f g', (pounds, circuit, force, rate) => {
    const { lamp } = stopLamp({ switches: [at(circuit, pounds)], pedal, ...noSpring });
    expect(Math.abs(lamp!.controlForce - force)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(lamp!.rate - rate)).toBeLessThanOrEqual(0.0005);
  });

  test('the master’s return spring is divided by share, ratio and efficiency like the pressure; the pedal’s own is not', () => {
    const lit = (springForce: number, springPreload: number, springRate: number) =>
      stopLamp({ switches: [at('rear', 60)], pedal: { ...pedal, springForce }, springPreload, springRate }).lamp!;
    const bare = lit(0, 0, 0);
    expect(bare.controlForce).toBeCloseTo((60 * psi * area) / (0.38 * 6.2 * 0.85), 9);
    expect(lit(20, 0, 0).controlForce).toBeCloseTo((60 * psi * area + 20) / (0.38 * 6.2 * 0.85), 9);
    expect(lit(0, 15, 0).controlForce).toBeCloseTo(bare.controlForce + 15, 9);
    expect(lit(0, 15, 200).controlForce).toBeCloseTo(bare.controlForce + 15 + 200 * bare.padTravel, 9);
    expect(lit(0, 15, 200).rate).toBeCloseTo(bare.rate, 12);
  });

  test('at the force found the switch’s circuit has its pressure, and the brakes give the rate', () => {
    fc.assert(fc.property(anyPedal, fc.constantFrom('front' as const, 'rear' as const), range(40, 150), (p, circuit, pounds) => {
      const { lamp } = stopLamp({ switches: [at(circuit, pounds)], pedal: p, ...noSpring });
      const state = footToRoad({ ...p, controlForce: lamp!.controlForce });
      expect((circuit === 'front' ? state.frontPressure : state.rearPressure) / (pounds * psi)).toBeCloseTo(1, 9);
      expect(lamp!.rate).toBeCloseTo(state.rate, 12);
      expect(lamp!.padTravel).toBeCloseTo(travelByHand(p, lamp!.controlForce * (1 + 1e-12)), 9);
    }));
  });

  test('two in parallel light with the earlier one, never later than either alone', () => {
    fc.assert(fc.property(anyPedal, range(40, 150), range(40, 150), (p, a, b) => {
      const both = stopLamp({ switches: [at('front', a), at('rear', b)], pedal: p, ...noSpring });
      const alone = [at('front', a), at('rear', b)].map((one) => stopLamp({ switches: [one], pedal: p, ...noSpring }).lamp!);
      expect(both.lamp!.controlForce).toBe(Math.min(alone[0]!.controlForce, alone[1]!.controlForce));
      expect(both.each).toEqual(alone);
      expect(both.lamp).toEqual(both.each[both.lightsAt!]);
    }));
  });

  test('a later switch, a larger bore or a smaller share of that circuit lights later', () => {
    const force = (sw: LampSwitch, over: Partial<Pedal> = {}) => stopLamp({ switches: [sw], pedal: { ...pedal, ...over }, ...noSpring }).lamp!.controlForce;
    const base = force(at('rear', 60));
    expect(force(at('rear', 61))).toBeGreaterThan(base);
    expect(force(at('rear', 60), { rearBore: 0.01905 })).toBeGreaterThan(base);
    expect(force(at('rear', 60), { frontShare: 0.65 })).toBeGreaterThan(base);
    expect(force(at('rear', 60), { frontBore: 0.01905 })).toBeCloseTo(base, 9); // the other circuit’s bore is not its business
  });

  test('a switch that 4000 N cannot make stays dark', () => {
    const never = stopLamp({ switches: [{ kind: 'pressure', circuit: 'rear', makesAt: 1e9 }], pedal, ...noSpring });
    expect(never).toEqual({ each: [undefined], lamp: undefined, lightsAt: undefined });
  });
});

describe('stopLamp with a pedal switch', () => {
  test('in the free play it takes the pedal’s own spring and nothing else, and the brakes give nothing yet', () => {
    const { lamp } = stopLamp({ switches: [onPad(0.006)], pedal: { ...pedal, springForce: 25 }, springPreload: 12, springRate: 150 });
    expect(lamp).toEqual({ controlForce: 12 + 150 * 0.006, padTravel: 0.006, rate: 0 });
  });

  test('past the free play it waits for the first master to leave its spring', () => {
    const { lamp } = stopLamp({ switches: [onPad(0.008)], pedal: { ...pedal, springForce: 25 }, ...noSpring });
    expect(lamp!.controlForce).toBeCloseTo(25 / (0.62 * 6.2 * 0.85), 9);
    expect(lamp!.rate).toBeLessThan(1e-12);
  });

  test('it lights at the least force that brings the pad there, found by halving on each master’s own balance', () => {
    fc.assert(fc.property(anyPedal, range(0.001, 0.15), (p, makesAt) => {
      let [lo, hi] = [0, 4000];
      fc.pre(travelByHand(p, hi) >= makesAt);
      for (let i = 0; i < 100; i += 1) {
        const mid = (lo + hi) / 2;
        if (travelByHand(p, mid) >= makesAt) hi = mid;
        else lo = mid;
      }
      const { lamp } = stopLamp({ switches: [onPad(makesAt)], pedal: p, ...noSpring });
      expect(Math.abs(lamp!.controlForce - (travelByHand(p, 0) >= makesAt ? 0 : hi))).toBeLessThan(1e-6);
      expect(lamp!.padTravel).toBe(makesAt);
    }), { numRuns: 500 });
  });

  test('set within the take-up it beats any pressure switch', () => {
    fc.assert(fc.property(anyPedal, range(40, 150), (p, pounds) => {
      const makesAt = Math.max(1e-4, travelByHand(p, 0) * 0.99);
      const s = stopLamp({ switches: [at('front', pounds), at('rear', pounds), onPad(makesAt)], pedal: p, ...noSpring });
      expect(s.lamp!.controlForce).toBeLessThanOrEqual(Math.min(s.each[0]!.controlForce, s.each[1]!.controlForce));
    }));
  });

  test('no switch, a switch that makes at nothing, or a negative spring is a mistake of the caller', () => {
    expect(() => stopLamp({ switches: [], pedal, ...noSpring })).toThrow(/switches/);
    expect(() => stopLamp({ switches: [onPad(0)], pedal, ...noSpring })).toThrow(/makesAt/);
    expect(() => stopLamp({ switches: [onPad(0.01)], pedal, springPreload: -1, springRate: 0 })).toThrow(/springPreload/);
  });
});

describe('stopLampWithDeadCircuit', () => {
  test('the switch in the dead circuit stays dark; alone it leaves the truck without stop lamps', () => {
    for (const dead of ['front', 'rear'] as const) {
      const s = possible(stopLampWithDeadCircuit({ switches: [at(dead, 60)], truck: { ...truck, dead }, ...noSpring }));
      expect(s).toEqual({ each: [undefined], lamp: undefined, lightsAt: undefined });
    }
  });

  test('rear dead, a 60 psi front switch lights at 19.5 N: on the bar’s stop that circuit gets all of the foot', () => {
    const s = possible(stopLampWithDeadCircuit({ switches: [at('front', 60)], truck: { ...truck, dead: 'rear' }, ...noSpring }));
    expect(s.lamp!.controlForce).toBeCloseTo((60 * psi * area) / (6.2 * 0.85), 9);
    expect(Math.abs(s.lamp!.controlForce - 19.5)).toBeLessThanOrEqual(0.05);
    expect(s.lamp!.rate).toBeCloseTo((122.84e-5 * 60 * psi) / (1340 * 9.80665), 12);
  });

  test('without a bar stop the dead master bottoms first and the good one keeps its share: the usual force, far down the pedal', () => {
    const s = possible(stopLampWithDeadCircuit({ switches: [at('front', 60)], truck: { ...truck, dead: 'rear', stopAngle: undefined }, ...noSpring }));
    const intact = stopLamp({ switches: [at('front', 60)], pedal, ...noSpring });
    expect(s.lamp!.controlForce).toBeCloseTo(intact.lamp!.controlForce, 6);
    expect(s.lamp!.padTravel).toBeGreaterThan(intact.lamp!.padTravel);
  });

  test('of two in parallel the live one lights, in either failure', () => {
    for (const [dead, live] of [['front', 1], ['rear', 0]] as const) {
      const s = possible(stopLampWithDeadCircuit({ switches: [at('front', 90), at('rear', 90)], truck: { ...truck, dead }, ...noSpring }));
      expect(s.lightsAt).toBe(live);
    }
  });

  test('at the force found the good circuit has the switch’s pressure, whatever the truck', () => {
    fc.assert(fc.property(fc.constantFrom('front' as const, 'rear' as const), range(40, 150), range(0, 30), range(0.02, 0.3), range(0.015, 0.03), (dead, pounds, stop, floorTravel, stroke) => {
      const t: CircuitFailure = { ...truck, dead, stopAngle: stop * deg, floorTravel, frontStroke: stroke, rearStroke: stroke };
      const live = dead === 'front' ? 'rear' : 'front';
      const { lamp } = possible(stopLampWithDeadCircuit({ switches: [at(live, pounds)], truck: t, ...noSpring }));
      if (lamp === undefined) expect(possible(failureAtForce({ ...t, controlForce: 1e5 })).pressure).toBeLessThan(pounds * psi);
      else {
        // Where the pressure stands still the least force counts, so look a hair below as well.
        expect(possible(failureAtForce({ ...t, controlForce: lamp.controlForce })).pressure / (pounds * psi)).toBeCloseTo(1, 9);
        expect(possible(failureAtForce({ ...t, controlForce: lamp.controlForce * 0.999 })).pressure).toBeLessThan(pounds * psi);
        expect(lamp.padTravel).toBeLessThanOrEqual(floorTravel + 1e-12);
      }
    }), { numRuns: 300 });
  });

  test('a pad on the floor before the pressure comes leaves the pressure switch dark and the pedal switch lit', () => {
    const t: CircuitFailure = { ...truck, dead: 'rear', floorTravel: 0.05 };
    const s = possible(stopLampWithDeadCircuit({ switches: [at('front', 60), onPad(0.008), onPad(0.06)], truck: t, springPreload: 10, springRate: 100 }));
    expect(s.each[0]).toBeUndefined();
    expect(s.each[1]).toEqual({ controlForce: 10 + 0.8, padTravel: 0.008, rate: 0 });
    expect(s.each[2]).toBeUndefined(); // a switch below the carpet
    expect(s.lightsAt).toBe(1);
  });

  test('a bar whose pivot is outside its clevises has no answer', () => {
    const r = stopLampWithDeadCircuit({ switches: [onPad(0.01)], truck: { ...truck, dead: 'rear', barOffset: 0.04 }, ...noSpring });
    expect(isImpossible(r) && r.impossible).toBe('pivot-outside-clevises');
  });
});

describe('lampWiring and awgArea', () => {
  test('5 A through 5 m of 1.0 mm² and back loses 0.86 V, and half of that with the frame as return', () => {
    const wires = { current: 5, length: 5, area: 1e-6, supply: 13 };
    const both = possible(lampWiring({ ...wires, returnBy: 'wire' }));
    expect(both.drop).toBeCloseTo(0.862, 3);
    expect(possible(lampWiring({ ...wires, returnBy: 'frame' })).drop).toBeCloseTo(both.drop / 2, 12);
    expect(both.atLamp + both.drop).toBeCloseTo(13, 12);
    expect(both.dropFraction).toBeCloseTo(both.drop / 13, 12);
  });

  test('the drop is in step with current and length and against area', () => {
    fc.assert(fc.property(range(0.5, 6), range(0.5, 6), range(0.5e-6, 2.5e-6), range(1, 1.5), (current, length, wire, more) => {
      const w = { current, length, area: wire, supply: 1e3, returnBy: 'wire' as const };
      const drop = possible(lampWiring(w)).drop;
      expect(possible(lampWiring({ ...w, current: current * more })).drop / drop).toBeCloseTo(more, 9);
      expect(possible(lampWiring({ ...w, length: length * more })).drop / drop).toBeCloseTo(more, 9);
      expect(possible(lampWiring({ ...w, area: wire * more })).drop / drop).toBeCloseTo(1 / more, 9);
    }));
  });

  test('more drop than there is voltage cannot be', () => {
    const r = lampWiring({ current: 20, length: 50, area: 0.5e-6, returnBy: 'wire', supply: 12 });
    expect(isImpossible(r) && r.impossible).toBe('drop-exceeds-supply');
    expect(isImpossible(r) && r.by).toBeCloseTo((20 * 1.7241e-8 * 100) / 0.5e-6 - 12, 9);
    expect(() => lampWiring({ current: 1, length: 1, area: 0, returnBy: 'wire', supply: 12 })).toThrow(/area/);
  });

  test('39 gauge steps are a factor 92 in diameter, from 0.127 mm at 36 gauge; 3 steps nearly halve the area', () => {
    expect(awgArea({ gauge: 36 }).area).toBeCloseTo((Math.PI / 4) * 0.127e-3 ** 2, 15);
    expect(awgArea({ gauge: 0 }).area / awgArea({ gauge: 39 }).area).toBeCloseTo(92 ** 2, 6);
    expect(awgArea({ gauge: 15 }).area / awgArea({ gauge: 18 }).area).toBeCloseTo(2, 1);
    expect(() => awgArea({ gauge: 50 })).toThrow(/gauge/);
  });
});
