import { describe, expect, test } from 'vitest';
import { gradeHeld } from '../../src/engine/parking.ts';

describe('grip on a grade', () => {
  /*
   * OpenStax College Physics 2e, 5.1: a car on a 4° slope with half its weight on the driven axle. Uphill acceleration
   * g (μ cos θ/2 − sin θ), the same balance as a parked axle's: what is left of the grip when the hill is held.
   * The book leaves out that the hill moves load, which is a center of gravity at road height. Its g is 9.80 m/s².
   */
  test.each([[1.0, 4.2], [0.7, 2.74], [0.1, -0.195]])(
    'OpenStax College Physics 2e, 5.1: at grip %f the axle with half the weight has %f m/s² to spare on 4°',
    (grip, printed) => {
      const held = gradeHeld({
        forwardTorque: 1e5, reverseTorque: 1e5, coolingLoss: 0, mass: 1000, loadedRadius: 0.3, rearLoadFraction: 0.5, cgHeight: 0, wheelbase: 2.5, grip,
      });
      const slope = (4 * Math.PI) / 180;
      for (const { byTires } of [held.noseUp, held.noseDown]) {
        const spare = 9.8 * Math.cos(slope) * (byTires - Math.tan(slope));
        expect(Math.abs(spare - printed)).toBeLessThanOrEqual(printed < 0 ? 0.0005 : 0.005);
        expect(byTires < Math.tan(slope)).toBe(printed < 0); // negative: it slides down, whatever its brakes
      }
    },
  );
});
