import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fluidHead, residualPressure } from '../../src/engine/head.ts';

const psi = (0.45359237 * 9.80665) / 0.0254 ** 2;
const drive = { name: 'drive', reservoirHeight: 0.8, brakeHeight: 0.35 };
const airedOut = { name: 'aired out', reservoirHeight: 0.7, brakeHeight: 0.35 };
const lifted = { name: 'lifted', reservoirHeight: 0.88, brakeHeight: 0.35 };
// x forward from the front axle: masters 0.5 m behind it, rear calipers 2.743 m behind it.
const rear = { attitudes: [drive, airedOut, lifted], reservoirX: -0.5, brakeX: -2.743, grade: 0.2, density: 1060, brake: 'disc' as const, cupExpanders: false };
const front = { ...rear, brakeX: 0 };
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);

describe('fluidHead', () => {
  test('a foot of brake fluid is 0.46 psi (derived vector)', () => {
    const h = fluidHead({ ...rear, grade: 0, attitudes: [{ name: 'x', reservoirHeight: 0.3048, brakeHeight: 0 }] });
    expect(Math.abs(h.worst.pressure / psi - 0.46)).toBeLessThanOrEqual(0.005);
  });

  test('the front brake is worst nose up, the rear nose down, both aired out', () => {
    expect(fluidHead(front).worst).toMatchObject({ name: 'aired out', slope: 'nose-up' });
    expect(fluidHead(rear).worst).toMatchObject({ name: 'aired out', slope: 'nose-down' });
  });

  test('a reservoir 350 mm above a rear caliper on the level is below it on a 20 % slope nose down: the wheelbase decides', () => {
    const h = fluidHead(rear);
    const level = h.heads.find((x) => x.name === 'aired out' && x.slope === 'level')!;
    expect(level.height).toBeCloseTo(0.35, 12);
    // Rotation by hand: 11.31° takes 2.243 m down by 0.440 m and shortens 0.350 m to 0.343 m.
    expect(h.worst.height).toBeCloseTo(0.3432 - 0.4399, 4);
    expect(h.valve).toBe('disc');
    expect(h.because).toBe('reservoir-below-brake');
    expect(h.residualPressure / psi).toBeCloseTo(2, 12);
    expect(h.covers).toBe(true);
    expect(fluidHead(front).valve).toBe('none');
  });

  test('tilting the truck carries points round, so the distance between reservoir and brake stays', () => {
    fc.assert(fc.property(range(-1, 1), range(-3, 3), range(0, 0.5), (z, x, grade) => {
      const { heads } = fluidHead({ ...rear, attitudes: [{ name: 'x', reservoirHeight: z, brakeHeight: 0 }], reservoirX: x, brakeX: 0, grade });
      const [level, up, down] = heads.map((h) => h.height);
      // The height over a slope and over its mirror give back both coordinates.
      const cos = Math.cos(Math.atan(grade));
      expect(level).toBe(z);
      expect((up! + down!) / 2).toBeCloseTo(z * cos, 12);
      expect((up! - down!) / 2).toBeCloseTo(x * Math.sin(Math.atan(grade)), 12);
    }));
  });

  test('only heights and stations between the two count, and pressure is in step with height', () => {
    fc.assert(fc.property(range(-1, 1), range(-3, 3), (dz, dx) => {
      const moved = fluidHead({
        ...rear, reservoirX: rear.reservoirX + dx, brakeX: rear.brakeX + dx,
        attitudes: rear.attitudes.map((a) => ({ ...a, reservoirHeight: a.reservoirHeight + dz, brakeHeight: a.brakeHeight + dz })),
      });
      const h = fluidHead(rear);
      expect(moved.worst.height).toBeCloseTo(h.worst.height, 12);
      for (const one of h.heads) expect(one.pressure / one.height).toBeCloseTo(1060 * 9.80665, 6);
    }));
  });

  test('the worst is the least of all, and more attitudes or a steeper slope never improve it', () => {
    fc.assert(fc.property(range(0, 0.4), range(1, 2), range(-0.5, 1), (grade, more, reservoirHeight) => {
      const h = fluidHead({ ...rear, grade });
      expect(h.worst.height).toBe(Math.min(...h.heads.map((x) => x.height)));
      expect(h.heads).toHaveLength(9);
      expect(fluidHead({ ...rear, grade: grade * more }).worst.height).toBeLessThanOrEqual(h.worst.height);
      const extra = { name: 'jacked', reservoirHeight, brakeHeight: 0.35 };
      expect(fluidHead({ ...rear, grade, attitudes: [...rear.attitudes, extra] }).worst.height).toBeLessThanOrEqual(h.worst.height);
    }));
  });

  test('discs need a valve only below the brake; drums also for want of cup expanders, and then of 10 psi', () => {
    const high = { ...front, attitudes: [lifted] };
    const low = { ...front, attitudes: [{ name: 'low', reservoirHeight: 0.3, brakeHeight: 0.35 }] };
    expect(fluidHead(high)).toMatchObject({ valve: 'none', because: undefined, residualPressure: 0, covers: true });
    expect(fluidHead({ ...high, brake: 'drum', cupExpanders: true }).valve).toBe('none');
    const cups = fluidHead({ ...high, brake: 'drum', cupExpanders: false });
    expect(cups).toMatchObject({ valve: 'drum', because: 'no-cup-expanders' });
    expect(cups.residualPressure / psi).toBeCloseTo(10, 12);
    expect(fluidHead(low)).toMatchObject({ valve: 'disc', because: 'reservoir-below-brake' });
    expect(fluidHead({ ...low, brake: 'drum', cupExpanders: true })).toMatchObject({ valve: 'drum', because: 'reservoir-below-brake' });
  });

  test('2 psi holds a column of 1.33 m and no more', () => {
    const at = (dz: number) => fluidHead({ ...front, grade: 0, attitudes: [{ name: 'x', reservoirHeight: 0, brakeHeight: dz }] }).covers;
    expect(at(1.32)).toBe(true);
    expect(at(1.33)).toBe(false);
    expect(residualPressure.disc / (1060 * 9.80665)).toBeCloseTo(1.3265, 4);
  });

  test('no attitude, or fluid without density, is a mistake of the caller', () => {
    expect(() => fluidHead({ ...rear, attitudes: [] })).toThrow(/attitudes/);
    expect(() => fluidHead({ ...rear, density: 0 })).toThrow(/density/);
    expect(() => fluidHead({ ...rear, grade: -0.1 })).toThrow(/grade/);
    expect(() => fluidHead({ ...rear, attitudes: [{ ...drive, brakeHeight: NaN }] })).toThrow(/brakeHeight/);
  });
});
