import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boilMargin, downGrade, repeatedStops, singleStop } from '../../src/engine/heat.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const stop = {
  mass: 1340, speedFrom: 26.8224, speedTo: 0, rotatingFraction: 0.04, axleShare: 0.76, rotorFraction: 0.93, rotorMass: 6, specificHeat: 480,
};
const hill = {
  mass: 1340, grade: 0.08, speed: 20, rollingCoefficient: 0.012, dragArea: 1, airDensity: 1.2, engineForce: 200, axleShare: 0.76, rotorFraction: 0.93,
  rotorMass: 6, specificHeat: 480, conductance: 10, ambient: 293, limitTemperature: 573,
};

describe('singleStop', () => {
  test('60 mph into a pair of 6 kg front rotors: 501 kJ of truck, 177 kJ and 61.5 K a rotor', () => {
    const s = possible(singleStop(stop));
    expect(s.stopEnergy / 1e3).toBeCloseTo(501.3, 1);
    expect(s.rotorEnergy / 1e3).toBeCloseTo(177.2, 1);
    expect(s.rise).toBeCloseTo(61.5, 1);
  });

  test('with wheels and drivetrain left out the same stop lies in the range 55 to 60 K of common practice', () => {
    const { rise } = possible(singleStop({ ...stop, rotatingFraction: 0 }));
    expect(rise).toBeGreaterThan(55);
    expect(rise).toBeLessThan(60);
  });

  test('all rotors and pads together take up exactly the energy of the stop', () => {
    fc.assert(
      fc.property(range(5, 40), range(0, 1), range(0, 1), (speedFrom, axleShare, rotorFraction) => {
        const at = (share: number, part: number) => possible(singleStop({ ...stop, speedFrom, axleShare: share, rotorFraction: part }));
        const total = 2 * (at(axleShare, rotorFraction).rotorEnergy + at(axleShare, 1 - rotorFraction).rotorEnergy + at(1 - axleShare, 1).rotorEnergy);
        expect(Math.abs(total / at(1, 1).stopEnergy - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test('heat follows the square of speed, and a stop in two parts warms like one in a piece', () => {
    const rise = (speedFrom: number, speedTo = 0) => possible(singleStop({ ...stop, speedFrom, speedTo })).rise;
    expect(rise(30) / rise(15)).toBeCloseTo(4, 12);
    expect(rise(30, 12) + rise(12)).toBeCloseTo(rise(30), 10);
    expect(rise(20, 20)).toBe(0);
  });

  test('a stop that ends faster than it began is returned; a share above 1 thrown', () => {
    const s = singleStop({ ...stop, speedTo: 30 });
    expect(isImpossible(s) && s.impossible).toBe('speeds-up');
    expect(isImpossible(s) && s.by).toBeCloseTo(3.1776, 10);
    expect(() => singleStop({ ...stop, axleShare: 1.1 })).toThrow(/axleShare/);
    expect(() => singleStop({ ...stop, rotorMass: 0 })).toThrow(/rotorMass/);
  });
});

describe('repeatedStops', () => {
  const series = { rise: 58, interval: 60, coolingTime: 250, stops: 10 };

  test('ten 58 K stops a minute apart come near 245 K over the air', () => {
    expect(Math.abs(repeatedStops(series).peak - 245)).toBeLessThanOrEqual(2.5);
  });

  test('warming and cooling stop by stop gives the same peak', () => {
    fc.assert(
      fc.property(range(5, 200), range(5, 600), range(50, 600), fc.integer({ min: 1, max: 60 }), (rise, interval, coolingTime, stops) => {
        let t = 0;
        let before = 0;
        for (let k = 0; k < stops; k += 1) {
          before = t;
          t += rise;
          if (k < stops - 1) t *= Math.exp(-interval / coolingTime);
        }
        const r = repeatedStops({ rise, interval, coolingTime, stops });
        expect(Math.abs(r.peak / t - 1)).toBeLessThan(1e-10);
        if (stops > 1) expect(Math.abs(r.beforeLast / before - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('one stop is one rise, and each more makes it hotter, toward a limit it does not pass', () => {
    expect(repeatedStops({ ...series, stops: 1 }).peak).toBeCloseTo(58, 12);
    let last = 0;
    for (const stops of [1, 2, 5, 20, 100]) {
      const { peak, limit } = repeatedStops({ ...series, stops });
      expect(peak).toBeGreaterThan(last);
      expect(peak).toBeLessThanOrEqual(limit * (1 + 1e-12));
      last = peak;
    }
    expect(repeatedStops({ ...series, stops: 500 }).peak).toBeCloseTo(repeatedStops(series).limit, 9);
  });

  test('at the limit the pause gives off just what a stop brings', () => {
    const { limit, kept } = repeatedStops(series);
    expect(limit * (1 - kept)).toBeCloseTo(58, 10);
  });

  test('without time to cool the rises simply add, and with plenty nothing is left of the last one', () => {
    expect(repeatedStops({ ...series, interval: 1e-9 }).peak).toBeCloseTo(580, 6);
    expect(repeatedStops({ ...series, interval: 1e5 }).peak).toBeCloseTo(58, 10);
    expect(() => repeatedStops({ ...series, stops: 1.5 })).toThrow(/stops/);
    expect(() => repeatedStops({ ...series, interval: 0 })).toThrow(/interval/);
  });
});

describe('downGrade', () => {
  test('by hand: 8 % at 20 m/s leaves 9.0 kW for the brakes and makes 319 K over the air at 10 W/K', () => {
    const d = downGrade(hill);
    const weight = 1340 * 9.80665;
    const along = weight * (Math.sin(Math.atan(0.08)) - 0.012 * Math.cos(Math.atan(0.08))) - 0.6 * 400 - 200;
    expect(d.brakePower).toBeCloseTo(20 * along, 6);
    expect(d.brakePower / 1e3).toBeCloseTo(9.01, 2);
    expect(d.steadyTemperature - 293).toBeCloseTo((d.brakePower * 0.76 * 0.93) / 2 / 10, 9);
    expect(d.steadyTemperature).toBeCloseTo(611.6, 1);
    expect(d.timeTo95 / 60).toBeCloseTo(14.4, 1);
  });

  test('stepping the rotor’s heat balance second by second reaches the limit at the time given, and 95 % at the other', () => {
    const d = downGrade(hill);
    const step = 0.01;
    let t = 293;
    let reached: number | undefined;
    let ninetyFive: number | undefined;
    for (let k = 1; k * step < 1500; k += 1) {
      t += (step * (d.rotorPower - 10 * (t - 293))) / (6 * 480);
      if (reached === undefined && t >= 573) reached = k * step;
      if (ninetyFive === undefined && t - 293 >= 0.95 * (d.steadyTemperature - 293)) ninetyFive = k * step;
    }
    expect(Math.abs((reached as number) - (d.timeToLimit as number))).toBeLessThan(0.1);
    expect(Math.abs((ninetyFive as number) - d.timeTo95)).toBeLessThan(0.1);
  });

  test('a limit above the steady temperature is never reached, one below the air is passed already', () => {
    expect(downGrade({ ...hill, limitTemperature: 612 }).timeToLimit).toBeUndefined();
    expect(downGrade({ ...hill, limitTemperature: 280 }).timeToLimit).toBe(0);
    expect(downGrade({ ...hill, limitTemperature: 611 }).timeToLimit).toBeGreaterThan(1500);
  });

  test('a gear that holds the truck leaves the rotors at the temperature of the air', () => {
    const d = downGrade({ ...hill, engineForce: 700 });
    expect(d).toMatchObject({ brakePower: 0, rotorPower: 0, steadyTemperature: 293, timeToLimit: undefined });
    expect(downGrade({ ...hill, grade: 0.01 }).brakePower).toBe(0);
  });

  test('steeper, heavier or with less engine is hotter; a slower descent in the same gear force is cooler', () => {
    const t = (over: Partial<typeof hill>) => downGrade({ ...hill, ...over }).steadyTemperature;
    expect(t({ grade: 0.09 })).toBeGreaterThan(t({}));
    expect(t({ mass: 1700 })).toBeGreaterThan(t({}));
    expect(t({ engineForce: 100 })).toBeGreaterThan(t({}));
    expect(t({ speed: 12 })).toBeLessThan(t({}));
    const power = (dragArea: number) => downGrade({ ...hill, dragArea }).brakePower;
    expect(power(0.7) - power(1.2)).toBeCloseTo(20 * 0.6 * 0.5 * 400, 6); // v × ½ ρ × area × v²
    expect(t({ conductance: 20 }) - 293).toBeCloseTo((t({}) - 293) / 2, 9);
    expect(() => downGrade({ ...hill, conductance: 0 })).toThrow(/conductance/);
  });
});

describe('boilMargin', () => {
  const fluid = { ambient: 293, rotorTemperature: 573, soakFraction: 0.5, dryBoilingPoint: 478.15, wetBoilingPoint: 413.15 };

  test('half of a 280 K excess leaves a fresh fill 45 K and puts a wet one 20 K over', () => {
    const b = possible(boilMargin(fluid));
    expect(b.fluidTemperature).toBeCloseTo(433, 10);
    expect(b.dryMargin).toBeCloseTo(45.15, 10);
    expect(b.wetMargin).toBeCloseTo(-19.85, 10);
  });

  test('a rotor at the temperature given boils the fluid just so', () => {
    fc.assert(
      fc.property(range(250, 315), range(0.05, 1), (ambient, soakFraction) => {
        const b = possible(boilMargin({ ...fluid, ambient, soakFraction }));
        const dry = possible(boilMargin({ ...fluid, ambient, soakFraction, rotorTemperature: b.rotorAtDryBoil }));
        const wet = possible(boilMargin({ ...fluid, ambient, soakFraction, rotorTemperature: b.rotorAtWetBoil }));
        expect(Math.abs(dry.dryMargin)).toBeLessThan(1e-9);
        expect(Math.abs(wet.wetMargin)).toBeLessThan(1e-9);
      }),
    );
  });

  test('the fluid stands between the air and the rotor, and at full soak is as hot as the rotor', () => {
    expect(possible(boilMargin({ ...fluid, soakFraction: 1 })).fluidTemperature).toBe(573);
    for (const soakFraction of [0.1, 0.5, 0.9]) {
      const { fluidTemperature } = possible(boilMargin({ ...fluid, soakFraction }));
      expect(fluidTemperature).toBeGreaterThan(293);
      expect(fluidTemperature).toBeLessThan(573);
    }
  });

  test('a wet boiling point above the dry one is returned; no soak at all, or more than all, thrown', () => {
    const b = boilMargin({ ...fluid, wetBoilingPoint: 480.15 });
    expect(isImpossible(b) && b.impossible).toBe('wet-boils-above-dry');
    expect(isImpossible(b) && b.by).toBeCloseTo(2, 10);
    expect(() => boilMargin({ ...fluid, soakFraction: 0 })).toThrow(/soakFraction/);
    expect(() => boilMargin({ ...fluid, soakFraction: 1.5 })).toThrow(/soakFraction/);
  });
});
