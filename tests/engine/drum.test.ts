import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brakeFactor, drumAxle, shoeFactor } from '../../src/engine/drum.ts';
import { isImpossible } from '../../src/engine/outcome.ts';
import type { Impossible } from '../../src/engine/outcome.ts';
import { bisect } from '../../src/engine/roots.ts';

function possible<T>(x: T | Impossible): T {
  if (isImpossible(x)) throw new Error(`expected a result, found ${x.impossible}`);
  return x;
}
// Evenly spread: fc.double would spend most of its trials within a hair of 0.
const range = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((k) => min + ((max - min) * k) / 1_000_000);
const arms = { applyArm: 0.2, normalArm: 0.1, frictionArm: 0.1 };
const anyShoe = fc
  .record({ applyArm: range(0.14, 0.24), normalArm: range(0.06, 0.13), frictionArm: range(0.07, 0.15), part: range(0.01, 0.97) })
  .map(({ part, ...shoe }) => ({ ...shoe, friction: (part * shoe.normalArm) / shoe.frictionArm }));
const types = ['leading-trailing', 'duo-servo'] as const;
const axle = {
  ...arms, type: 'leading-trailing' as const, friction: 0.38, cylinderDiameter: 0.01905, drumRadius: 0.115, efficiency: 0.96, loadedRadius: 0.3,
  pushOut: 5e5, pressure: 40e5,
};

describe('shoeFactor', () => {
  test('moments about the anchor balance: the drum drags a leading shoe in and pushes a trailing one away', () => {
    fc.assert(
      fc.property(anyShoe, (shoe) => {
        for (const [sense, sign] of [['leading', 1], ['trailing', -1]] as const) {
          const { normalPerForce: n, factor } = possible(shoeFactor({ ...shoe, sense }));
          const turningIn = shoe.applyArm + sign * shoe.friction * n * shoe.frictionArm;
          expect(Math.abs(turningIn / (n * shoe.normalArm) - 1)).toBeLessThan(1e-9);
          expect(factor).toBeCloseTo(shoe.friction * n, 12);
        }
      }),
    );
  });

  test('with little friction both shoes press alike, h/a times the tip force', () => {
    for (const sense of ['leading', 'trailing'] as const) {
      expect(possible(shoeFactor({ ...arms, friction: 1e-9, sense })).normalPerForce).toBeCloseTo(2, 7);
    }
  });

  test('a leading shoe at or past μ = a/c locks by itself, and says by how much; a trailing one never does', () => {
    const at = (friction: number) => shoeFactor({ ...arms, normalArm: 0.06, friction, sense: 'leading' });
    const past = at(0.7);
    expect(isImpossible(past) && past.impossible).toBe('self-locks');
    expect(isImpossible(past) && past.by).toBeCloseTo(0.1, 12);
    expect(isImpossible(at(0.6))).toBe(true);
    expect(possible(at(0.5999)).factor).toBeGreaterThan(1000);
    expect(possible(shoeFactor({ ...arms, normalArm: 0.06, friction: 0.7, sense: 'trailing' })).lockFriction).toBeCloseTo(0.6, 12);
    expect(() => shoeFactor({ ...arms, frictionArm: 0, friction: 0.4, sense: 'leading' })).toThrow(/frictionArm/);
  });
});

describe('brakeFactor', () => {
  test.each([[0.3, 1.32], [0.38, 1.78], [0.45, 2.26]])('leading-trailing arms 200, 100, 100 mm at μ %f: %f', (friction, printed) => {
    expect(Math.abs(possible(brakeFactor({ ...arms, type: 'leading-trailing', friction })).brakeFactor - printed)).toBeLessThanOrEqual(0.005);
  });

  test('at μ 0.38 the leading shoe carries 69 % and 1 % of friction is worth 1.3 % of torque', () => {
    const b = possible(brakeFactor({ ...arms, type: 'leading-trailing', friction: 0.38 }));
    expect(Math.abs(b.firstFactor / b.brakeFactor - 0.69)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(b.sensitivity - 1.3)).toBeLessThanOrEqual(0.05);
  });

  test('usual linings give a duo-servo 2.4 to 6, the secondary shoe carrying what a leading one would', () => {
    const of = (friction: number) => possible(brakeFactor({ ...arms, type: 'duo-servo', friction }));
    expect([0.3, 0.38, 0.45].map((f) => of(f).brakeFactor.toFixed(2))).toEqual(['2.45', '3.95', '5.95']);
    const b = of(0.38);
    expect(b.secondFactor / b.brakeFactor).toBeCloseTo(0.69, 3);
  });

  test('the shoes add up, and the closed forms 2μha/(a² − μ²c²) and 2μha/(a − μc)² hold', () => {
    fc.assert(
      fc.property(anyShoe, (shoe) => {
        const { applyArm: h, normalArm: a, frictionArm: c, friction: mu } = shoe;
        const closed = { 'leading-trailing': (2 * mu * h * a) / (a ** 2 - (mu * c) ** 2), 'duo-servo': (2 * mu * h * a) / (a - mu * c) ** 2 };
        for (const type of types) {
          const b = possible(brakeFactor({ ...shoe, type }));
          expect(Math.abs(b.brakeFactor / closed[type] - 1)).toBeLessThan(1e-9);
          expect(b.firstFactor + b.secondFactor).toBeCloseTo(b.brakeFactor, 9);
        }
        expect(possible(brakeFactor({ ...shoe, type: 'leading-trailing' })).secondFactor).toBeCloseTo(possible(shoeFactor({ ...shoe, sense: 'trailing' })).factor, 12);
      }),
    );
  });

  test('sensitivity is the slope d ln BF/d ln μ; it is 1 without servo action, more in a leading-trailing drum, most in a duo-servo', () => {
    fc.assert(
      fc.property(anyShoe, (shoe) => {
        const of = (type: (typeof types)[number], friction: number) => possible(brakeFactor({ ...shoe, type, friction }));
        for (const type of types) {
          const step = 1e-5;
          const slope = Math.log(of(type, shoe.friction * (1 + step)).brakeFactor / of(type, shoe.friction * (1 - step)).brakeFactor) / (2 * step);
          expect(Math.abs(slope / of(type, shoe.friction).sensitivity - 1)).toBeLessThan(1e-4);
        }
        const [plain, servo] = types.map((type) => of(type, shoe.friction).sensitivity) as [number, number];
        expect(plain).toBeGreaterThan(1);
        expect(servo).toBeGreaterThan(plain);
      }),
    );
    for (const type of types) expect(possible(brakeFactor({ ...arms, type, friction: 1e-9 })).sensitivity).toBeCloseTo(1, 7);
  });

  test('without friction both types come down to the same 2μh/a', () => {
    for (const type of types) expect(possible(brakeFactor({ ...arms, type, friction: 1e-7 })).brakeFactor / 1e-7).toBeCloseTo(4, 5);
  });

  test('a duo-servo locks at the friction at which its leading shoe does', () => {
    for (const type of types) {
      const b = brakeFactor({ ...arms, type, friction: 1.05 });
      expect(isImpossible(b) && b.by).toBeCloseTo(0.05, 12);
    }
  });
});

/*
 * A duo-servo by free bodies alone: pressure cos(θ − tilt) over a lining of ±55° on a drum of radius 1, shoe ends on the
 * line through the drum's center at ±y. What the drum does to the primary shoe, cut in thin strips: pressed inward and
 * dragged along the rim toward the link.
 */
function byStrips({ friction, tilt }: { readonly friction: number; readonly tilt: number }) {
  const half = (55 * Math.PI) / 180;
  const n = 4000;
  const sum = { normal: 0, across: 0, along: 0, turning: 0 };
  for (let i = 0; i < n; i += 1) {
    const angle = -half + ((i + 0.5) * 2 * half) / n;
    const p = (Math.max(0, Math.cos(angle - tilt)) * 2 * half) / n; // a lining cannot pull
    sum.normal += p;
    sum.across += p * Math.cos(angle) - friction * p * Math.sin(angle);
    sum.along += p * Math.sin(angle) + friction * p * Math.cos(angle);
    sum.turning += friction * p;
  }
  return sum;
}

describe('the duo-servo as two free bodies', () => {
  // Normal forces pass through the center: their moment about an end is across × y, so a = y across/normal, and c is 1.
  const y = 1 / (byStrips({ friction: 0, tilt: 0 }).across / byStrips({ friction: 0, tilt: 0 }).normal); // makes a = c, as in the worked value
  const model = (friction: number) => ({ applyArm: 2, normalArm: 1, frictionArm: 1, friction });

  test('force balance across the shoe gives the same push on the link as moments about its tip', () => {
    for (const friction of [0.2, 0.3, 0.38, 0.45]) {
      const drum = byStrips({ friction, tilt: 0 });
      const tipForce = (drum.across * y - drum.turning) / (2 * y); // moments about the link
      const linkPush = drum.across - tipForce;
      const servo = possible(brakeFactor({ ...model(friction), type: 'duo-servo' }));
      expect(servo.secondFactor / servo.firstFactor).toBeCloseTo(linkPush / tipForce, 6);
    }
  });

  test('a link that cannot push along the shoe lowers the factor by 7 % at μ 0.30, 12 % at 0.38 and 18 % at 0.45', () => {
    for (const [friction, printed] of [[0.3, 7], [0.38, 12], [0.45, 18]] as const) {
      // The primary creeps round until the drum's push is straight across: the pressure tilts until `along` is 0.
      const tilt = bisect((t) => byStrips({ friction, tilt: t }).along, -1.4, 0, { tolerance: 1e-10 });
      const drum = byStrips({ friction, tilt });
      const tipForce = (drum.across * y - drum.turning) / (2 * y);
      const linkPush = drum.across - tipForce;
      const pinned = byStrips({ friction, tilt: 0 });
      const secondary = pinned.turning / ((pinned.across * y - pinned.turning) / (2 * y));
      const creeping = (drum.turning + linkPush * secondary) / tipForce;
      const still = possible(brakeFactor({ ...model(friction), applyArm: 2 * y, type: 'duo-servo' })).brakeFactor;
      expect(Math.abs((1 - creeping / still) * 100 - printed)).toBeLessThanOrEqual(0.5);
    }
  });
});

describe('drumAxle', () => {
  test('by hand: 35 bar on 285 mm² is 998 N, times 1.777, 115 mm and 0.96 is 196 N·m a wheel and 1304 N at both', () => {
    const d = possible(drumAxle(axle));
    expect(d.tipForce).toBeCloseTo(997.58, 2);
    expect(d.torquePerWheel).toBeCloseTo(195.65, 2);
    expect(d.axleForce).toBeCloseTo(1304.36, 2);
    expect(d.axleForce).toBeCloseTo((2 * d.torquePerWheel) / 0.3, 9);
  });

  test('below the pressure of the shoe springs there is nothing, above it the force rises with the gain', () => {
    expect(possible(drumAxle({ ...axle, pressure: 4.9e5 })).axleForce).toBe(0);
    const d = possible(drumAxle({ ...axle, pressure: 20e5 }));
    expect(d.axleForce).toBeCloseTo(d.gain * 15e5, 9);
  });

  test('10 % less friction costs a leading-trailing drum about 13 %, a duo-servo about 20 %', () => {
    const loss = (type: (typeof types)[number]) =>
      1 - possible(drumAxle({ ...axle, type, friction: 0.342 })).axleForce / possible(drumAxle({ ...axle, type })).axleForce;
    expect(loss('leading-trailing')).toBeCloseTo(0.128, 2);
    expect(loss('duo-servo')).toBeCloseTo(0.20, 2);
  });

  test('a locking shoe is returned, an efficiency above 1 thrown', () => {
    expect(isImpossible(drumAxle({ ...axle, friction: 1 }))).toBe(true);
    expect(() => drumAxle({ ...axle, efficiency: 1.1 })).toThrow(/efficiency/);
  });
});
