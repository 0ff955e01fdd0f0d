import { describe, expect, test } from 'vitest';
import { shoeFactor } from '../../src/engine/drum.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { pinnedShoe } from '../../src/engine/pinnedShoe.ts';

/* Tolerance: 0.1 % or half a unit of the last printed figure, whichever is larger. */
function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
function agrees(found: number, printed: number, lastUnit: number): void {
  expect(Math.abs(found - printed)).toBeLessThanOrEqual(Math.max(0.001 * Math.abs(printed), lastUnit / 2));
}

describe('drum shoes', () => {
  // Drum 300 mm, lining 32 mm wide from the pin's line to 126°, f 0.32, 1 MPa at most, pin 112 and 50 mm from the center, c 212 mm.
  const shoe = {
    drumRadius: 0.15, hingeRadius: Math.hypot(0.112, 0.05), startAngle: 0, endAngle: (126 * Math.PI) / 180, liningWidth: 0.032, applyArm: 0.212,
    friction: 0.32,
  };
  const forceFor = (pressure: number) => pressure / possible(pinnedShoe({ ...shoe, sense: 'leading', applyForce: 1 })).peakPressure;

  test('Shigley, Mechanical Engineering Design, ex. 16-2, from memory: at 1 MPa M_f is 304 and M_N 788 N·m, so the shoe is pushed with 2.28 kN', () => {
    const applyForce = forceFor(1e6);
    const s = possible(pinnedShoe({ ...shoe, sense: 'leading', applyForce }));
    agrees(s.frictionMoment, 304, 1);
    agrees(s.normalMoment, 788, 1);
    agrees(applyForce / 1e3, 2.28, 0.01);
  });

  test('Shigley, same example, from memory: 366 N·m leading and 162 trailing on the same force, 528 N·m together', () => {
    const [lead, trail] = (['leading', 'trailing'] as const).map((sense) => possible(pinnedShoe({ ...shoe, sense, applyForce: forceFor(1e6) })).torque);
    agrees(lead as number, 366, 1);
    agrees(trail as number, 162, 1);
    agrees((lead as number) + (trail as number), 528, 1);
  });

  test('short-shoe examination question, read in a question bank: 100 N at 1000 mm, 500 mm to the drum’s normal, 200 mm to its friction, μ 0.35, drum 500 mm: N 232.558 N, 20.35 N·m', () => {
    // The bank's moments are F a = N b − μ N c, the shoe that is dragged in.
    const s = possible(shoeFactor({ applyArm: 1, normalArm: 0.5, frictionArm: 0.2, friction: 0.35, sense: 'leading' }));
    agrees(s.normalPerForce * 100, 232.558, 0.001);
    agrees(s.factor * 100 * 0.25, 20.35, 0.01);
  });
});
