import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { initialFlux, surfaceRise } from '../../src/engine/surfaceHeat.ts';

// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const iron = { density: 7200, specificHeat: 480, conductivity: 50 };
const stop = { ...iron, initialFlux: 1.74e6, haltTime: 3.42, time: 1 };
const unit = (p: typeof stop) => (p.initialFlux * Math.sqrt(p.haltTime)) / Math.sqrt(p.density * p.specificHeat * p.conductivity);

/**
 * Heat conduction cell by cell (implicit in time), insulated at the back: no formula of the engine in it.
 * The skin is half a cell outside the first cell's middle.
 */
function byCells({ wall, steps = 3000, cells = 300 }: { readonly wall: number; readonly steps?: number; readonly cells?: number }) {
  const dx = wall / cells;
  const dt = stop.haltTime / steps;
  const r = (iron.conductivity * dt) / (iron.density * iron.specificHeat * dx ** 2);
  const t = new Float64Array(cells);
  const c = new Float64Array(cells);
  let peak = { rise: 0, time: 0 };
  let halt = 0;
  for (let k = 1; k <= steps; k += 1) {
    const flux = stop.initialFlux * (1 - k / steps);
    const heat = (stop.initialFlux * (1 - (k - 0.5) / steps) * dt) / (iron.density * iron.specificHeat * dx);
    const d = t.map((x, i) => x + (i === 0 ? heat : 0));
    for (let i = 0; i < cells; i += 1) {
      const neighbors = i === 0 || i === cells - 1 ? 1 : 2;
      const pivot = 1 + neighbors * r + (i > 0 ? r * (c[i - 1] as number) : 0);
      c[i] = i < cells - 1 ? -r / pivot : 0;
      d[i] = ((d[i] as number) + (i > 0 ? r * (d[i - 1] as number) : 0)) / pivot;
    }
    for (let i = cells - 2; i >= 0; i -= 1) d[i] = (d[i] as number) - (c[i] as number) * (d[i + 1] as number);
    t.set(d);
    halt = (t[0] as number) + (flux * dx) / 2 / iron.conductivity;
    if (halt > peak.rise) peak = { rise: halt, time: k * dt };
  }
  const mean = t.reduce((a, b) => a + b, 0) / cells;
  return { peak, halt, mean };
}

describe('initialFlux', () => {
  test('the flux falling to nothing brings the whole energy through both faces', () => {
    const { initialFlux: q } = initialFlux({ rotorEnergy: 177e3, sweptArea: 0.0298, haltTime: 3.42 });
    let energy = 0;
    for (let k = 0; k < 1000; k += 1) energy += 2 * 0.0298 * q * (1 - (k + 0.5) / 1000) * (3.42 / 1000);
    expect(Math.abs(energy / 177e3 - 1)).toBeLessThan(1e-9);
    expect(() => initialFlux({ rotorEnergy: 1, sweptArea: 0, haltTime: 1 })).toThrow(/sweptArea/);
  });
});

describe('surfaceRise', () => {
  test('in a thick wall the highest is 0.532 q₀√t/√(ρck), at half the stop; at the halt 0.376 are left', () => {
    const s = surfaceRise(stop);
    expect(s.peakRise / unit(stop)).toBeCloseTo((Math.SQRT2 / 3) * (2 / Math.sqrt(Math.PI)), 12);
    expect(s.peakRise / unit(stop)).toBeCloseTo(0.532, 3);
    expect(s.peakTime).toBe(stop.haltTime / 2);
    expect(s.haltRise / unit(stop)).toBeCloseTo(0.376, 3);
  });

  test('0.527 is 1 % under the highest and 40 % over the end of the stop', () => {
    const s = surfaceRise(stop);
    expect(Math.abs((1 - (0.527 * unit(stop)) / s.peakRise) * 100 - 1)).toBeLessThan(0.1);
    expect(Math.abs(((0.527 * unit(stop)) / s.haltRise - 1) * 100 - 40)).toBeLessThan(0.2);
  });

  test('adding up bursts of heat, each spreading as 1/√(π ρ c k t), gives the rise at any time', () => {
    fc.assert(
      fc.property(range(0.05, 1), (part) => {
        const time = part * stop.haltTime;
        const n = 2000;
        let rise = 0;
        for (let k = 0; k < n; k += 1) {
          // With t − τ = u² the integrand has no pole: 2 q(t − u²) du/√(π ρ c k).
          const u = ((k + 0.5) * Math.sqrt(time)) / n;
          rise += (2 * stop.initialFlux * (1 - (time - u ** 2) / stop.haltTime) * Math.sqrt(time)) / n;
        }
        rise /= Math.sqrt(Math.PI * 7200 * 480 * 50);
        expect(Math.abs(surfaceRise({ ...stop, time }).riseAt / rise - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 30 },
    );
  });

  test.each([0.003, 0.005, 0.007, 0.01, 0.02])('conduction cell by cell through a wall of %f m gives the same highest, its time, the halt and the mean', (wallThickness) => {
    const s = surfaceRise({ ...stop, wallThickness });
    const cells = byCells({ wall: wallThickness });
    expect(Math.abs(s.peakRise / cells.peak.rise - 1)).toBeLessThan(0.002);
    expect(Math.abs(s.peakTime - cells.peak.time)).toBeLessThan(0.02);
    expect(Math.abs(s.haltRise / cells.halt - 1)).toBeLessThan(0.002);
    expect(Math.abs((s.meanRise as number) / cells.mean - 1)).toBeLessThan(1e-6);
  });

  test('a wall as deep as the heat goes is as good as a thick one, to 1 %; half of it is not', () => {
    const thick = surfaceRise(stop);
    const rise = (wallThickness: number) => surfaceRise({ ...stop, wallThickness });
    expect(rise(thick.heatedDepth).haltRise / thick.haltRise - 1).toBeLessThan(0.01);
    expect(rise(thick.heatedDepth).peakRise / thick.peakRise - 1).toBeLessThan(0.001);
    expect(rise(thick.heatedDepth / 2).haltRise / thick.haltRise).toBeGreaterThan(1.3);
  });

  test('a thinner wall gets hotter and later, at last as a lump of iron that warms all through', () => {
    let last = { peakRise: 0, peakTime: 0 };
    for (const wallThickness of [0.05, 0.014, 0.01, 0.007, 0.005, 0.003, 0.001]) {
      const s = surfaceRise({ ...stop, wallThickness });
      expect(s.peakRise).toBeGreaterThanOrEqual(last.peakRise);
      expect(s.peakTime).toBeGreaterThanOrEqual(last.peakTime - 1e-9);
      expect(s.peakRise).toBeGreaterThan(s.meanRise as number);
      last = s;
    }
    const lump = surfaceRise({ ...stop, wallThickness: 1e-4 });
    expect(lump.haltRise / (lump.meanRise as number)).toBeCloseTo(1, 5);
  });

  test('no time of the stop is hotter than the highest, and the two ways of adding meet without a step', () => {
    for (const wallThickness of [undefined, 0.02, 0.007, 0.003]) {
      const { peakRise } = surfaceRise({ ...stop, wallThickness });
      for (let k = 0; k <= 200; k += 1) {
        expect(surfaceRise({ ...stop, wallThickness, time: (k / 200) * stop.haltTime }).riseAt).toBeLessThanOrEqual(peakRise * (1 + 1e-9));
      }
    }
    const meet = (0.007 ** 2 * 7200 * 480) / 50 / 20;
    const [before, after] = [meet * (1 - 1e-9), meet * (1 + 1e-9)].map((time) => surfaceRise({ ...stop, wallThickness: 0.007, time }).riseAt);
    expect(Math.abs((after as number) / (before as number) - 1)).toBeLessThan(1e-7);
  });

  test('twice the flux is twice the rise; a cold wheel, no rise; and better conducting iron stays cooler', () => {
    const s = surfaceRise({ ...stop, wallThickness: 0.007 });
    expect(surfaceRise({ ...stop, wallThickness: 0.007, initialFlux: 2 * stop.initialFlux }).peakRise).toBeCloseTo(2 * s.peakRise, 9);
    expect(surfaceRise({ ...stop, time: 0 }).riseAt).toBe(0);
    expect(surfaceRise({ ...stop, conductivity: 60 }).peakRise).toBeLessThan(surfaceRise(stop).peakRise);
    expect(surfaceRise({ ...stop, initialFlux: 0 }).peakRise).toBe(0);
  });

  test('a moment after the halt, or a wall of no thickness, is a mistake of the caller', () => {
    expect(() => surfaceRise({ ...stop, time: 3.5 })).toThrow(/time/);
    expect(() => surfaceRise({ ...stop, wallThickness: 0 })).toThrow(/wallThickness/);
    expect(() => surfaceRise({ ...stop, conductivity: -1 })).toThrow(/conductivity/);
  });
});
