import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { discAxle } from '../../src/engine/disc.ts';
import { caliperAreas } from '../../src/engine/caliper.ts';
import { circuitVolume, equivalentCircuit } from '../../src/engine/circuitVolume.ts';
import type { CircuitParts } from '../../src/engine/circuitVolume.ts';
import { explainExcess, partExcess } from '../../src/engine/excessTravel.ts';
import { pedalLedger } from '../../src/engine/fluidLedger.ts';
import type { CircuitOnMaster, LedgerPedal } from '../../src/engine/fluidLedger.ts';
import { footToRoad } from '../../src/engine/footToRoad.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { linePressure } from '../../src/engine/pressure.ts';

const bar = 1e5;
const cc = 1e-6;
const mm = 1e-3;
const foot = 0.3048;
const psi = (0.45359237 * 9.80665) / 0.0254 ** 2;

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
const front: CircuitParts = {
  pistonDiameter: 54 * mm, pistonsPerSide: 1, type: 'floating', gapPerPad: 0.15 * mm, knockBack: 0, fluidVolume: 120 * cc, bulkModulus: 1.6e9,
  hoses: 2, hoseLength: (14 / 12) * foot, hoseExpansion: (0.66 * cc) / foot, hosePressure: 1000 * psi,
  caliperGive: 0.45 * cc, caliperPressure: 70 * bar, padGive: 0.15 * mm, padPressure: 100 * bar, airVolume: 0.5 * cc, polytropic: 1.2,
};
const rear: CircuitParts = { ...front, pistonDiameter: 38.1 * mm, airVolume: 0.2 * cc, caliperGive: 0.25 * cc };
const onMaster = (parts: CircuitParts, pressure: number): CircuitOnMaster => ({ ...parts, pressure, bore: 17.78 * mm, portStroke: 1 * mm, masterStroke: 28 * mm });
const pedal: LedgerPedal = {
  front: onMaster(front, 65.8 * bar), rear: onMaster(rear, 40.3 * bar), frontShare: 0.62, pedalRatio: 6.2, freePlay: 0.8 * mm, flex: 0.5 * mm, flexForce: 450,
  controlForce: 500, floorTravel: 0.2,
};
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const anyParts: fc.Arbitrary<CircuitParts> = fc.record({
  pistonDiameter: range(0.028, 0.065), pistonsPerSide: fc.integer({ min: 1, max: 3 }), type: fc.constantFrom('floating' as const, 'opposed' as const),
  gapPerPad: range(0, 4e-4), knockBack: range(0, 5e-4), fluidVolume: range(5e-5, 2e-4), bulkModulus: range(8e8, 2e9), hoses: fc.integer({ min: 0, max: 4 }),
  hoseLength: range(0.1, 0.6), hoseExpansion: range(1e-6, 4e-6), hosePressure: range(5e6, 8e6), caliperGive: range(0, 8e-7), caliperPressure: range(5e6, 1e7),
  padGive: range(0, 3e-4), padPressure: range(5e6, 1.6e7), airVolume: range(0, 4e-6), polytropic: range(1, 1.4),
});
const anyPedal: fc.Arbitrary<LedgerPedal> = fc.record({
  parts: fc.tuple(anyParts, anyParts), pressures: fc.tuple(range(1e5, 1.2e7), range(1e5, 1.2e7)), bores: fc.tuple(range(0.0155, 0.0255), range(0.0155, 0.0255)),
  port: range(0, 0.002), frontShare: range(0.2, 0.8), pedalRatio: range(4, 8), freePlay: range(0, 0.002), flex: range(0, 0.002), controlForce: range(20, 900),
}).map(({ parts, pressures, bores, port, ...p }) => ({
  ...p,
  flexForce: 450,
  floorTravel: 3,
  front: { ...parts[0], pressure: pressures[0], bore: bores[0], portStroke: port, masterStroke: 0.03 },
  rear: { ...parts[1], pressure: pressures[1], bore: bores[1], portStroke: port, masterStroke: 0.03 },
}));

describe('caliperAreas', () => {
  test('agrees with the disc torque for both kinds of caliper: clamp by one side, volume by all that moves', () => {
    for (const type of ['floating', 'opposed'] as const) for (const pistonsPerSide of [1, 2, 3]) {
      const axle = possible(discAxle({
        pistonDiameter: 0.04, pistonsPerSide, type, friction: 0.38, outer: 0.13, inner: 0.09, law: 'worn-in', efficiency: 1, loadedRadius: 0.3, pushOut: 0, pressure: 0,
      }));
      const a = caliperAreas({ pistonDiameter: 0.04, pistonsPerSide, type });
      expect(a.clampArea).toBeCloseTo(axle.clampArea, 15);
      expect(a.pistonArea * a.travelPerGap).toBeCloseTo(axle.volumeArea, 15);
    }
  });

  test('work of the fluid is work of the pads: p times volume is clamp times both gaps', () => {
    for (const type of ['floating', 'opposed'] as const) {
      const { clampArea, pistonArea, travelPerGap } = caliperAreas({ pistonDiameter: 0.0381, pistonsPerSide: 2, type });
      expect(3e6 * pistonArea * travelPerGap * 1e-4).toBeCloseTo(3e6 * clampArea * 2 * 1e-4, 12);
    }
  });

  test('half a piston is a mistake of the caller', () => {
    expect(() => caliperAreas({ pistonDiameter: 0.04, pistonsPerSide: 0.5, type: 'floating' })).toThrow(/pistonsPerSide/);
    expect(() => caliperAreas({ pistonDiameter: 0, pistonsPerSide: 1, type: 'floating' })).toThrow(/diameter/);
  });
});

describe('circuitVolume', () => {
  // Derived vectors, to their printing.
  const item = (over: Partial<CircuitParts>, pressure: number) => circuitVolume({ ...front, ...over, pressure }).items;
  test('two 54 mm floating calipers with 0.30 mm of gap each swallow 1.37 cm³', () => {
    expect(Math.abs(item({}, 0).gaps / cc - 1.37)).toBeLessThanOrEqual(0.005);
  });

  test('120 cm³ of fluid gives way by 0.53 cm³ at 70 bar', () => {
    expect(Math.abs(item({}, 70 * bar).fluid / cc - 0.53)).toBeLessThanOrEqual(0.005 + 1e-12); // exactly 0.525, rounded up in print
  });

  test('two 14 in hoses swell by 1.54 cm³ at 1000 psi, low-expansion ones by 0.77', () => {
    expect(Math.abs(item({}, 1000 * psi).hoses / cc - 1.54)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(item({ hoseExpansion: (0.33 * cc) / foot }, 1000 * psi).hoses / cc - 0.77)).toBeLessThanOrEqual(0.005);
  });

  test('0.25 mm of knock-back in each front caliper takes 1.15 cm³ and 17.7 mm of the reference truck’s pad', () => {
    const p = { ...pedal, front: { ...pedal.front, knockBack: 0.25 * mm } };
    const line = pedalLedger(p).front.lines.find((l) => l.item === 'knockBack')!;
    expect(Math.abs(line.volume / cc - 1.15)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(line.padTravel / mm - 17.7)).toBeLessThanOrEqual(0.05);
  });

  test('1 cm³ of air, squeezed until little is left, costs a 3/4 in master 3.5 mm and the pad 21 mm at 6:1', () => {
    const p = { ...pedal, pedalRatio: 6, front: { ...pedal.front, airVolume: 1 * cc, polytropic: 1, bore: 19.05 * mm, pressure: 1e9 } };
    const line = pedalLedger(p).front.lines.find((l) => l.item === 'air')!;
    expect(Math.abs(line.stroke / mm - 3.5)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(line.padTravel / 0.62 / mm - 21)).toBeLessThanOrEqual(0.5); // the vector is for a pedal without a bar
  });

  test('both calipers swell: each gives its own 0.45 cm³ at 70 bar, and half at half the pressure', () => {
    expect(item({}, 70 * bar).calipers / cc).toBeCloseTo(0.9, 12);
    expect(item({}, 35 * bar).calipers / cc).toBeCloseTo(0.45, 12);
  });

  test('at no pressure only gaps and knock-back take fluid', () => {
    const { items, total } = circuitVolume({ ...front, knockBack: 0.1 * mm, pressure: 0 });
    expect(total).toBeCloseTo(items.gaps + items.knockBack, 18);
    expect([items.fluid, items.hoses, items.calipers, items.pads, items.air]).toEqual([0, 0, 0, 0, 0]);
  });

  test('the gas law holds for the trapped air: p V^m is the same before and after, in absolute pressure', () => {
    for (const polytropic of [1, 1.2, 1.4]) for (const pressure of [0.1 * bar, 5 * bar, 80 * bar]) {
      const left = 0.5 * cc - item({ polytropic }, pressure).air;
      expect(((101325 + pressure) * left ** polytropic) / (101325 * (0.5 * cc) ** polytropic)).toBeCloseTo(1, 9);
    }
  });

  test('5 bar squeezes away 72 to 83 % of the air, not all of it, and 20 bar 88.5 to 95 %', () => {
    const gone = (polytropic: number, p: number) => item({ polytropic, airVolume: 1 }, p * bar).air;
    expect(gone(1.4, 5)).toBeCloseTo(1 - (1.01325 / 6.01325) ** (1 / 1.4), 12);
    expect([gone(1.4, 5), gone(1, 5), gone(1.4, 20), gone(1, 20)].map((x) => Math.round(x * 1000))).toEqual([720, 831, 885, 952]);
  });

  test('each of two pads is compressed: the volume is the push of the piston area over the way of both', () => {
    const a1 = (Math.PI / 4) * 0.054 ** 2;
    expect(item({}, 100 * bar).pads).toBeCloseTo(2 * a1 * 2 * 0.15 * mm, 15);
    expect(item({ type: 'opposed' }, 100 * bar).pads).toBeCloseTo(2 * a1 * 2 * 0.15 * mm, 15);
  });

  test('the parts add up, and more of any part or more pressure never takes less', () => {
    fc.assert(fc.property(anyParts, range(0, 1.5e7), range(1, 2), (parts, pressure, more) => {
      const { items, total } = circuitVolume({ ...parts, pressure });
      expect(Math.abs(Object.values(items).reduce((a, b) => a + b, 0) - total)).toBeLessThan(1e-18);
      for (const v of Object.values(items)) expect(v).toBeGreaterThanOrEqual(0);
      expect(items.air).toBeLessThanOrEqual(parts.airVolume);
      for (const key of ['gapPerPad', 'knockBack', 'fluidVolume', 'hoses', 'hoseLength', 'hoseExpansion', 'caliperGive', 'padGive', 'airVolume', 'pistonDiameter'] as const) {
        expect(circuitVolume({ ...parts, [key]: parts[key] * more, pressure }).total).toBeGreaterThanOrEqual(total);
      }
      for (const key of ['bulkModulus', 'hosePressure', 'caliperPressure', 'padPressure'] as const) {
        expect(circuitVolume({ ...parts, [key]: parts[key] * more, pressure }).total).toBeLessThanOrEqual(total);
      }
      expect(circuitVolume({ ...parts, pressure: pressure * more }).total).toBeGreaterThanOrEqual(total);
    }));
  });

  test('a negative size, a stiffness of none or a gas exponent below 1 is a mistake of the caller', () => {
    const at = (over: Partial<CircuitParts>) => () => circuitVolume({ ...front, ...over, pressure: 1e6 });
    expect(at({ airVolume: -1 })).toThrow(/airVolume/);
    expect(at({ bulkModulus: 0 })).toThrow(/bulkModulus/);
    expect(at({ padPressure: 0 })).toThrow(/padPressure/);
    expect(at({ polytropic: 0.9 })).toThrow(/polytropic/);
    expect(() => circuitVolume({ ...front, pressure: -1 })).toThrow(/pressure/);
  });
});

describe('equivalentCircuit', () => {
  test('meets the true volume at both pressures, lies below it between them and above it outside', () => {
    fc.assert(fc.property(anyParts, range(1e5, 4e6), range(1.2, 4), range(0, 1), (parts, low, times, part) => {
      const high = low * times;
      const { takeUpVolume, compliance } = possible(equivalentCircuit({ ...parts, low, high }));
      const line = (p: number) => takeUpVolume + compliance * p;
      const volume = (pressure: number) => circuitVolume({ ...parts, pressure }).total;
      expect(Math.abs(line(low) - volume(low))).toBeLessThan(1e-16);
      expect(Math.abs(line(high) - volume(high))).toBeLessThan(1e-16);
      const inside = low + part * (high - low);
      expect(volume(inside)).toBeGreaterThan(line(inside) - 1e-16);
      expect(volume(low * part)).toBeLessThan(line(low * part) + 1e-16);
      expect(volume(high * (1 + part))).toBeLessThan(line(high * (1 + part)) + 1e-16);
      expect(takeUpVolume).toBeGreaterThan(volume(0) - 1e-16);
    }));
  });

  test('a circuit without air is a straight line: the pair of pressures does not matter, and V0 is the gaps', () => {
    const a = possible(equivalentCircuit({ ...front, airVolume: 0, low: 5 * bar, high: 10 * bar }));
    const b = possible(equivalentCircuit({ ...front, airVolume: 0, low: 30 * bar, high: 90 * bar }));
    expect(a.compliance / b.compliance).toBeCloseTo(1, 9);
    expect(a.takeUpVolume).toBeCloseTo(circuitVolume({ ...front, airVolume: 0, pressure: 0 }).total, 15);
  });

  test('air goes into V0, not into k, as soon as the lower pressure is past the first bars', () => {
    const dry = possible(equivalentCircuit({ ...front, airVolume: 0, low: 20 * bar, high: 70 * bar }));
    const wet = possible(equivalentCircuit({ ...front, airVolume: 1 * cc, polytropic: 1, low: 20 * bar, high: 70 * bar }));
    expect((wet.takeUpVolume - dry.takeUpVolume) / cc).toBeGreaterThan(0.9);
    expect(((wet.compliance - dry.compliance) * 50 * bar) / cc).toBeLessThan(0.04);
  });

  test('put into the whole chain, it gives the pad travel of the ledger', () => {
    const p = linePressure({ controlForce: 500, pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, frontBore: 17.78 * mm, rearBore: 17.78 * mm, springForce: 0 });
    const f = possible(equivalentCircuit({ ...front, low: 20 * bar, high: p.frontPressure }));
    const r = possible(equivalentCircuit({ ...rear, low: 10 * bar, high: p.rearPressure }));
    const chain = footToRoad({
      controlForce: 500, pedalRatio: 6.2, efficiency: 0.85, frontShare: 0.62, springForce: 0, frontBore: 17.78 * mm, rearBore: 17.78 * mm, portStroke: 1 * mm, freePlay: 0.8 * mm,
      frontTakeUpVolume: f.takeUpVolume, rearTakeUpVolume: r.takeUpVolume, frontCompliance: f.compliance, rearCompliance: r.compliance,
      frontGain: 122.84 / bar, rearGain: 63.4 / bar, pushOut: 0, mass: 1340,
    });
    const ledger = pedalLedger({ ...pedal, flex: 0, front: onMaster(front, p.frontPressure), rear: onMaster(rear, p.rearPressure) });
    expect(ledger.padTravel).toBeCloseTo(chain.padTravel, 12);
    expect(ledger.front.stroke).toBeCloseTo(chain.frontStroke, 12);
  });

  test('two pressures that do not rise make no line', () => {
    const r = equivalentCircuit({ ...front, low: 3e6, high: 2e6 });
    expect(isImpossible(r) && r.impossible).toBe('pressures-not-rising');
    expect(isImpossible(r) && r.by).toBe(1e6);
    expect(isImpossible(equivalentCircuit({ ...front, low: 3e6, high: 3e6 }))).toBe(true);
  });
});

describe('pedalLedger', () => {
  test('every millimeter of pad is on one line of the ledger', () => {
    fc.assert(fc.property(anyPedal, (p) => {
      const l = pedalLedger(p);
      const lines = [...l.front.lines, ...l.rear.lines];
      expect(lines.reduce((sum, x) => sum + x.padTravel, 0) + l.freePlayTravel + l.flexTravel).toBeCloseTo(l.padTravel, 12);
      for (const [circuit, { bore }] of [[l.front, p.front], [l.rear, p.rear]] as const) {
        expect(circuit.lines.reduce((sum, x) => sum + x.volume, 0)).toBeCloseTo(circuit.volume, 15);
        expect(circuit.lines.reduce((sum, x) => sum + x.stroke, 0)).toBeCloseTo(circuit.stroke, 12);
        for (const x of circuit.lines) if (x.item !== 'port') expect(x.stroke * (Math.PI / 4) * bore ** 2).toBeCloseTo(x.volume, 15);
      }
      expect(l.padTravel + l.padReserve).toBeCloseTo(p.floorTravel, 12);
    }));
  });

  test('the bar weighs motion as it weighs force: what the foot does more, for more fluid at the same push, is p dV', () => {
    const work = { controlForce: 500, pedalRatio: 6.2, efficiency: 1, frontShare: 0.62, frontBore: 17.78 * mm, rearBore: 17.78 * mm, springForce: 0 };
    const p = linePressure(work);
    const at = (knockBack: number) => pedalLedger({
      ...pedal, front: { ...onMaster(front, p.frontPressure), knockBack }, rear: { ...onMaster(rear, p.rearPressure), knockBack: knockBack / 2 },
    });
    const [a, b] = [at(0), at(0.2 * mm)];
    const fluid = p.frontPressure * (b.front.volume - a.front.volume) + p.rearPressure * (b.rear.volume - a.rear.volume);
    expect(500 * (b.padTravel - a.padTravel)).toBeCloseTo(fluid, 9);
  });

  test('free play and flex at the rod are multiplied by the pedal ratio, flex in step with the foot', () => {
    const l = pedalLedger(pedal);
    expect(l.freePlayTravel).toBeCloseTo(6.2 * 0.8 * mm, 15);
    expect(l.flexTravel).toBeCloseTo((6.2 * 0.5 * mm * 500) / 450, 15);
    expect(pedalLedger({ ...pedal, controlForce: 0 }).flexTravel).toBe(0);
  });

  test('front and rear exchanged, with the share turned round, is the same pedal', () => {
    fc.assert(fc.property(anyPedal, (p) => {
      const turned = pedalLedger({ ...p, front: p.rear, rear: p.front, frontShare: 1 - p.frontShare });
      expect(turned.padTravel).toBeCloseTo(pedalLedger(p).padTravel, 12);
    }));
  });

  test('a larger bore in either master shortens the travel, a larger ratio lengthens all of it', () => {
    const travel = pedalLedger(pedal).padTravel;
    expect(pedalLedger({ ...pedal, front: { ...pedal.front, bore: 19.05 * mm } }).padTravel).toBeLessThan(travel);
    expect(pedalLedger({ ...pedal, rear: { ...pedal.rear, bore: 19.05 * mm } }).padTravel).toBeLessThan(travel);
    expect(pedalLedger({ ...pedal, pedalRatio: 2 * 6.2 }).padTravel).toBeCloseTo(2 * travel, 12);
  });

  test('a demand past the master’s bottom shows as a reserve below 0', () => {
    const l = pedalLedger({ ...pedal, front: { ...pedal.front, airVolume: 3 * cc } });
    expect(l.front.strokeReserve).toBeCloseTo(28 * mm - l.front.stroke, 15);
    expect(l.front.strokeReserve).toBeLessThan(0);
    expect(l.rear.strokeReserve).toBeGreaterThan(0);
  });

  test('a bar with its pivot on a clevis, or no reference force for the flex, is a mistake of the caller', () => {
    expect(() => pedalLedger({ ...pedal, frontShare: 1 })).toThrow(/rearShare/);
    expect(() => pedalLedger({ ...pedal, frontShare: 0 })).toThrow(/frontShare/);
    expect(() => pedalLedger({ ...pedal, flexForce: 0 })).toThrow(/flexForce/);
    expect(() => pedalLedger({ ...pedal, freePlay: -1e-3 })).toThrow(/freePlay/);
  });
});

describe('explainExcess', () => {
  const sides = ['front', 'rear'] as const;
  const explained = (p: LedgerPedal, which: 'front' | 'rear', measured: number) => {
    const l = pedalLedger(p);
    const circuit = p[which];
    return explainExcess({
      excess: measured - l.padTravel, pedalRatio: p.pedalRatio, weight: which === 'front' ? p.frontShare : 1 - p.frontShare, bore: circuit.bore, strokeLeft: l[which].strokeReserve,
      caliper: circuit, pressure: circuit.pressure, polytropic: circuit.polytropic,
    });
  };

  test('air put into a circuit is found again from the travel it causes, in either circuit', () => {
    fc.assert(fc.property(anyPedal, range(1e-8, 3e-6), (p, air) => {
      for (const which of sides) {
        const measured = pedalLedger({ ...p, [which]: { ...p[which], airVolume: p[which].airVolume + air } }).padTravel;
        expect(Math.abs(explained(p, which, measured)!.air! / air - 1)).toBeLessThan(1e-6);
      }
    }));
  });

  test('knock-back put into a caliper is found again, in either circuit', () => {
    fc.assert(fc.property(anyPedal, range(1e-5, 1e-3), (p, more) => {
      for (const which of sides) {
        const measured = pedalLedger({ ...p, [which]: { ...p[which], knockBack: p[which].knockBack + more } }).padTravel;
        expect(Math.abs(explained(p, which, measured)!.knockBack / more - 1)).toBeLessThan(1e-6);
      }
    }));
  });

  test('17.7 mm too long is 1.15 cm³ at the front, 0.25 mm in each caliper', () => {
    const found = explained(pedal, 'front', pedalLedger(pedal).padTravel + 17.7 * mm)!;
    expect(Math.abs(found.volume / cc - 1.15)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(found.knockBack / mm - 0.25)).toBeLessThanOrEqual(0.005);
  });

  test('a pedal no longer than computed needs no air and no knock-back', () => {
    const { padTravel } = pedalLedger(pedal);
    for (const measured of [0, padTravel - 1 * mm, padTravel]) for (const which of sides) expect(explained(pedal, which, measured)).toBeUndefined();
  });

  test('air in a circuit without pressure takes no travel, so none explains it; knock-back does', () => {
    const still = { ...pedal, rear: { ...pedal.rear, pressure: 0 } };
    const found = explained(still, 'rear', pedalLedger(still).padTravel + 5 * mm)!;
    expect(found.air).toBeUndefined();
    expect(found.knockBack).toBeGreaterThan(0);
  });

  test('an explanation that needs more stroke than the master has is marked', () => {
    const { padTravel, front: f } = pedalLedger(pedal);
    const last = padTravel + 6.2 * 0.62 * f.strokeReserve;
    expect(explained(pedal, 'front', last - 0.1 * mm)!.withinStroke).toBe(true);
    expect(explained(pedal, 'front', last + 0.1 * mm)!.withinStroke).toBe(false);
    expect(explained(pedal, 'rear', last + 0.1 * mm)!.withinStroke).toBe(true);
  });

  test('a gas squeezed slowly takes more travel, so less of it explains the same excess', () => {
    const at = (polytropic: number) => explained({ ...pedal, front: { ...pedal.front, polytropic } }, 'front', 1)!;
    expect(at(1).air! / at(1).volume).toBeLessThan(at(1.4).air! / at(1.4).volume);
  });
});

describe('partExcess', () => {
  test('knock-back is all dead, swell all soft, and the two parts make up the excess at the firm push', () => {
    fc.assert(fc.property(range(0, 0.03), range(0, 1e-4), range(10, 100), range(150, 600), (dead, soft, f1, f2) => {
      const parts = partExcess({ light: { force: f1, excess: dead + soft * f1 }, firm: { force: f2, excess: dead + soft * f2 } });
      expect(parts.dead).toBeCloseTo(dead, 12);
      expect(parts.softAtFirm).toBeCloseTo(soft * f2, 12);
    }));
  });

  test('air looks dead: with 5 bar at the light push and 60 at the firm one, two thirds or more of it', () => {
    for (const polytropic of [1, 1.2, 1.4]) {
      const air = (pressure: number) => circuitVolume({ ...front, polytropic, airVolume: 1, pressure }).items.air;
      const { dead, softAtFirm } = partExcess({ light: { force: 40, excess: air(5 * bar) }, firm: { force: 480, excess: air(60 * bar) } });
      expect(dead / (dead + softAtFirm)).toBeGreaterThan(2 / 3);
      expect(softAtFirm).toBeGreaterThan(0);
    }
  });

  test('a firm push no harder than the light one is a mistake of the caller', () => {
    const same = { force: 50, excess: 0 };
    expect(() => partExcess({ light: same, firm: same })).toThrow(/forceBetween/);
    expect(() => partExcess({ light: { force: -1, excess: 0 }, firm: same })).toThrow(/lightForce/);
  });
});
