import { expect, test } from 'vitest';
import { plateUnderMoment } from '../../src/engine/plateMoment.ts';

const base = { moment: 100, span: 0.3, flange: 0.08, width: 0.1, thickness: 0.0048, modulus: 200e9 };

test('without a flange it is the beam twisted at its middle: M·span/(12EI) supported, M·span/(16EI) clamped', () => {
  const inertia = (0.1 * 0.0048 ** 3) / 12;
  const bare = { ...base, flange: 1e-9 };
  expect(plateUnderMoment({ ...bare, edge: 'supported' }).rotation).toBeCloseTo((100 * 0.3) / (12 * 200e9 * inertia), 6);
  expect(plateUnderMoment({ ...bare, edge: 'clamped' }).rotation).toBeCloseTo((100 * 0.3) / (16 * 200e9 * inertia), 6);
});

test('beside a flange of no height the strip carries half the moment on either side', () => {
  for (const edge of ['supported', 'clamped'] as const) {
    expect(plateUnderMoment({ ...base, flange: 1e-9, edge }).stress).toBeCloseTo((50 * 6) / (0.1 * 0.0048 ** 2), -2);
  }
});

test.each(['supported', 'clamped'] as const)('agrees with a strip cut into 400 slices, %s', (edge) => {
  // Shoot: both halves are alike, so one half with deflection θc and slope θ at the flange, its far end held.
  const { rotation, stress } = plateUnderMoment({ ...base, edge });
  const stiffness = (200e9 * 0.1 * 0.0048 ** 3) / 12;
  const [c, l, n] = [0.04, 0.11, 4000];
  const end = (m0: number, v: number): { w: number; slope: number; bend: number } => {
    let [w, slope] = [rotation * c, rotation];
    const dx = l / n;
    for (let k = 0; k < n; k++) {
      const x = (k + 0.5) * dx;
      const curvature = -(m0 - v * x) / stiffness;
      w += slope * dx + (curvature * dx * dx) / 2;
      slope += curvature * dx;
    }
    return { w, slope, bend: m0 - v * l };
  };
  // Linear in the moment and the reaction at the flange: two trials give both.
  const m0 = (stress * 0.1 * 0.0048 ** 2) / 6;
  const v = (100 / 2 - m0) / c;
  const far = end(m0, v);
  expect(Math.abs(far.w)).toBeLessThan(1e-7);
  if (edge === 'supported') expect(Math.abs(far.bend)).toBeLessThan(1e-6 * m0);
  else expect(Math.abs(far.slope)).toBeLessThan(1e-5 * rotation + 1e-9);
});

test('held ends and a taller flange turn less', () => {
  const at = (flange: number, edge: 'supported' | 'clamped'): number => plateUnderMoment({ ...base, flange, edge }).rotation;
  expect(at(0.08, 'clamped')).toBeLessThan(at(0.08, 'supported'));
  expect(at(0.12, 'supported')).toBeLessThan(at(0.08, 'supported'));
});

test('a flange as high as the span is the programmer’s error', () => {
  expect(() => plateUnderMoment({ ...base, flange: 0.3, edge: 'clamped' })).toThrow(/flange/);
});
