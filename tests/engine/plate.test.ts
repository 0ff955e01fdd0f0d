import { describe, expect, test } from 'vitest';
import { plateUnderLoad } from '../../src/engine/plate.ts';
import type { PlateEdge } from '../../src/engine/plate.ts';

const steel = 207e9;
const base = { force: 2500, sideA: 0.3, sideB: 0.25, thickness: 0.003, modulus: 200e9, loadRadius: 0.04 };
const coefficientOf = (aspect: number, edge: PlateEdge): number => plateUnderLoad({ ...base, sideA: aspect * 0.25, edge }).coefficient;

describe('deflection against handbook and physics', () => {
  test.each([[1, 0.1267], [1.2, 0.1478], [1.4, 0.1621], [1.6, 0.1715], [1.8, 0.177], [2, 0.1805], [50, 0.1851]])('Roark table 11.4 case 1b, supported, a/b %f: α %f (read in the text)', (aspect, alpha) => {
    expect(Math.abs(coefficientOf(aspect, 'supported') / alpha - 1)).toBeLessThan(2e-3);
  });

  test.each([[1, 0.0611], [1.2, 0.0706], [1.4, 0.0754], [1.6, 0.0777], [1.8, 0.0786], [2, 0.0788], [1e4, 0.0791]])('Roark table 11.4 case 8b, clamped, a/b %f: α %f (read in the text)', (aspect, alpha) => {
    expect(Math.abs(coefficientOf(aspect, 'clamped') / alpha - 1)).toBeLessThan(1e-3);
  });

  test.each([[1.1], [1.3], [1.5], [1.7], [3]])('supported agrees with the double series of Navier at a/b %f', (aspect) => {
    let sum = 0;
    for (let m = 1; m < 200; m += 2) for (let n = 1; n < 200; n += 2) sum += 1 / ((m / aspect) ** 2 + n ** 2) ** 2;
    const navier = (4 / (Math.PI ** 4 * aspect)) * sum * 12 * (1 - 0.09);
    expect(Math.abs(coefficientOf(aspect, 'supported') / navier - 1)).toBeLessThan(1e-4);
  });

  test.each([[1], [1.1], [1.5], [2]])('clamped lies above, and close to, what a plate with fewer ways to bend gives (Ritz), at a/b %f', (aspect) => {
    expect(coefficientOf(aspect, 'clamped') / ritzClamped(aspect)).toBeGreaterThan(0.999);
    expect(coefficientOf(aspect, 'clamped') / ritzClamped(aspect)).toBeLessThan(1.03);
  });

  test('a firewall patch of 250 by 300 mm under 2,500 N: 4.2 and 2.0 mm at 3 mm, 1.02 and 0.49 mm at 4.8 mm (worked by hand)', () => {
    const w = (thickness: number, edge: PlateEdge): number => plateUnderLoad({ ...base, modulus: 205e9, thickness, edge }).deflection * 1e3;
    expect(w(0.003, 'supported')).toBeCloseTo(4.2, 1);
    expect(w(0.003, 'clamped')).toBeCloseTo(2, 1);
    expect(w(0.0048, 'supported')).toBeCloseTo(1.02, 2);
    expect(w(0.0048, 'clamped')).toBeCloseTo(0.49, 2);
    expect(w(0.0012, 'supported')).toBeCloseTo(65, 0);
  });

  test('twice as thick bends an eighth, twice as wide four times; the order of the sides does not matter', () => {
    const { deflection } = plateUnderLoad({ ...base, edge: 'clamped' });
    expect(plateUnderLoad({ ...base, thickness: 0.006, edge: 'clamped' }).deflection * 8).toBeCloseTo(deflection, 12);
    expect(plateUnderLoad({ ...base, sideA: 0.6, sideB: 0.5, edge: 'clamped' }).deflection).toBeCloseTo(deflection * 4, 12);
    expect(plateUnderLoad({ ...base, sideA: 0.25, sideB: 0.3, edge: 'clamped' }).deflection).toBeCloseTo(deflection, 15);
  });
});

describe('stress', () => {
  test.each([[1], [1.5], [2]])('of a supported plate agrees with the double series for a round patch at a/b %f', (aspect) => {
    const [b, c] = [0.25, 0.03];
    const a = aspect * b;
    let moment = 0;
    for (let m = 1; m < 320; m += 2) {
      for (let n = 1; n < 320; n += 2) {
        const [kx, ky] = [(m * Math.PI) / a, (n * Math.PI) / b];
        const k2 = kx * kx + ky * ky;
        const x = Math.sqrt(k2) * c;
        moment += ((4 * 2500) / (a * b)) * ((2 * besselJ1(x)) / x) * ((ky * ky + 0.3 * kx * kx) / k2 ** 2);
      }
    }
    const series = (6 * moment) / 0.003 ** 2;
    const { stress } = plateUnderLoad({ ...base, sideA: a, sideB: b, loadRadius: c, edge: 'supported' });
    expect(Math.abs(stress / series - 1)).toBeLessThan(0.02);
  });

  test('a clamped plate is worst at its long edge under a wide load and at the middle under a narrow one', () => {
    const at = (loadRadius: number): number => plateUnderLoad({ ...base, loadRadius, edge: 'clamped' }).stress;
    expect(at(0.1)).toBeCloseTo(at(0.08), 3);
    expect(at(0.01)).toBeGreaterThan(at(0.08));
  });

  test('a load patch narrower than half the thickness no longer raises it without end', () => {
    const at = (loadRadius: number): number => plateUnderLoad({ ...base, loadRadius, edge: 'supported' }).stress;
    expect(at(1e-9) / at(1e-6)).toBeCloseTo(1, 6);
  });
});

test('a clamped square stands to the circle inside it as Timoshenko’s figures say: 0.0056 P a²/D (from memory) to P r²/(16 π D), here 0.0874 in (read)', () => {
  const inch = 0.0254;
  const { deflection } = plateUnderLoad({ force: 7539.82 * 4.4482216, sideA: 80 * inch, sideB: 80 * inch, thickness: inch, modulus: 30e6 * 6894.757, loadRadius: inch, edge: 'clamped' });
  const circle = (7539.82 * 40 ** 2 * 12 * (1 - 0.09)) / (16 * Math.PI * 30e6);
  expect(circle).toBeCloseTo(0.0874, 4);
  expect(deflection / inch / circle).toBeCloseTo(0.0056 * 4 * 16 * Math.PI, 2);
});

test('a patch wider than the plate is the programmer’s error', () => {
  expect(() => plateUnderLoad({ ...base, modulus: steel, loadRadius: 0.2, edge: 'clamped' })).toThrow(/loadRadius/);
  expect(() => plateUnderLoad({ ...base, thickness: 0, edge: 'clamped' })).toThrow(/thickness/);
});

/** Central deflection coefficient of a clamped plate by Ritz with products of (1 − cos 2πmx/a): never more than the truth. */
function ritzClamped(aspect: number): number {
  const terms = 7;
  const pairs = Array.from({ length: terms * terms }, (_, k) => [1 + Math.floor(k / terms), 1 + (k % terms)] as const);
  const wave = 2 * Math.PI;
  // ∫ f f, ∫ f' f', ∫ f'' f'' of 1 − cos over a unit length
  const i0 = (p: number, q: number): number => (p === q ? 1.5 : 1);
  const i1 = (p: number, q: number): number => (p === q ? (wave * p) ** 2 / 2 : 0);
  const i2 = (p: number, q: number): number => (p === q ? (wave * p) ** 4 / 2 : 0);
  const a = aspect;
  const matrix = pairs.map(([m, n]) => pairs.map(([p, q]) => (i2(m, p) * i0(n, q)) / a ** 3 + i0(m, p) * i2(n, q) * a + (2 * i1(m, p) * i1(n, q)) / a));
  const atMiddle = pairs.map(([m, n]) => (1 - Math.cos(Math.PI * m)) * (1 - Math.cos(Math.PI * n)));
  const x = solve(matrix.map((row) => [...row]), [...atMiddle]);
  return x.reduce((sum, c, k) => sum + c * (atMiddle[k] as number), 0) * 12 * (1 - 0.09);
}

function solve(m: number[][], y: number[]): number[] {
  const n = y.length;
  for (let k = 0; k < n; k++) {
    for (let r = k + 1; r < n; r++) {
      const f = (m[r]![k] as number) / (m[k]![k] as number);
      for (let c = k; c < n; c++) m[r]![c]! -= f * (m[k]![c] as number);
      y[r]! -= f * (y[k] as number);
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let c = k + 1; c < n; c++) y[k]! -= (m[k]![c] as number) * (y[c] as number);
    y[k]! /= m[k]![k] as number;
  }
  return y;
}

/** By its integral, 1/π ∫ cos(t − x sin t) dt. */
function besselJ1(x: number): number {
  const steps = 60 + Math.ceil(x);
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const t = (Math.PI * (k + 0.5)) / steps;
    sum += Math.cos(t - x * Math.sin(t));
  }
  return sum / steps;
}
