import { all, create } from 'mathjs';
import type { FactoryFunctionMap, Unit as MathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { calculators, entryOf, evaluate, inputKeys } from '../../src/calculators/index.ts';
import type { AnyCalculator, Values } from '../../src/calculators/index.ts';
import { functionNames, namesIn, parseExpression } from '../../src/calculators/expression.ts';
import type { Node } from '../../src/calculators/expression.ts';
import { isQuantity } from '../../src/calculators/vocabulary/index.ts';
import type { Dimension } from '../../src/units/index.ts';
import { anywhere, near, randomFrom } from './sample.ts';

// An independent reader of the same expressions.
const math = create(all as FactoryFunctionMap);
const draws = 150;

/** Values of a record at random inputs around the demo truck; refused ones are left out. */
function samples(record: AnyCalculator): Values[] {
  const random = randomFrom(20261125);
  const found: Values[] = [];
  for (let k = 0; k < draws; k++) {
    const result = evaluate(record, near(record, random, k % 3 === 0 ? 1.2 : 0.3));
    if (result.ok) found.push(result.values);
  }
  // Some equations hold only far from any sensible truck.
  for (let k = 0; k < 4 * draws; k++) {
    const result = evaluate(record, anywhere(record, random));
    if (result.ok) found.push(result.values);
  }
  return found;
}

/** What our own reading of an expression is worth: compared with mathjs so that the displayed tree is the computed one. */
function worth(node: Node, scope: Record<string, number>): number {
  switch (node.kind) {
    case 'number': return node.value;
    case 'name': return scope[node.name] as number;
    case 'minus': return -worth(node.of, scope);
    case 'call': {
      const args = node.args.map((arg) => worth(arg, scope));
      return (Math[node.name as 'sqrt'] as (...x: number[]) => number)(...args);
    }
    case 'binary': {
      const [a, b] = [worth(node.left, scope), worth(node.right, scope)];
      return node.op === '+' ? a + b : node.op === '-' ? a - b : node.op === '*' ? a * b : node.op === '/' ? a / b : a ** b;
    }
  }
}

// Angles, shares, grades, braking rates and frictions are pure numbers; so are counts.
const unitOf: Partial<Record<Dimension, string>> = {
  length: 'm', distance: 'm', area: 'm^2', volume: 'm^3', mass: 'kg', force: 'N', pressure: 'Pa', vacuum: 'Pa', speed: 'm/s', time: 's', torque: 'N m', brakeGain: 'N/Pa', compliance: 'm^3/Pa', energy: 'J', temperature: 'K', temperatureRise: 'K', power: 'W', specificHeat: 'J/(kg K)', conductivity: 'W/(m K)', density: 'kg/m^3', stress: 'Pa', current: 'A', voltage: 'V', resistivity: 'ohm m',
};

/** Compares where a plain 0 may stand beside a unit, which mathjs itself refuses. */
function pickWithUnits(better: (a: number, b: number) => boolean) {
  const size = (x: number | MathUnit): number => (typeof x === 'number' ? x : (x.toSI().toNumeric as (u?: string) => number)());
  return (...args: (number | MathUnit)[]): number | MathUnit => {
    const withUnits = args.filter((arg): arg is MathUnit => typeof arg !== 'number');
    for (const arg of args) if (typeof arg === 'number' && withUnits.length > 0 && arg !== 0) throw new TypeError('a plain number beside a quantity');
    for (const arg of withUnits) if (!arg.equalBase(withUnits[0] as MathUnit)) throw new TypeError('quantities of different kinds');
    const best = args.reduce((a, b) => (better(size(b), size(a)) ? b : a));
    return best === 0 && withUnits[0] ? math.multiply(withUnits[0], 0) as MathUnit : best;
  };
}

describe.each(calculators.map((c) => [c.id, c] as const))('the equations of %s', (_id, record) => {
  const values = samples(record);

  test('can be tried on at least a third of the random trucks', () => {
    expect(values.length).toBeGreaterThan(draws / 3);
  });

  test('use only quantities that the record knows, and functions that are drawn', () => {
    const known = [...inputKeys(record), ...(record.outputs as readonly string[])] as string[];
    for (const equation of record.equations) {
      expect(known, equation.result).toContain(equation.result);
      for (const name of namesIn(parseExpression(equation.expression))) expect(known, equation.expression).toContain(name);
      for (const name of namesIn(parseExpression(equation.expression))) expect(isQuantity(entryOf(name)), `${name} is a number, not a choice or a list`).toBe(true);
    }
    expect(functionNames).toContain('sqrt');
  });

  // A record may find everything by a search, and then has words instead.
  if (record.equations.length === 0) return;
  test.each(record.equations.map((e) => [`${e.result} = ${e.expression}`, e] as const))('agree with the code: %s', (_name, equation) => {
    const code = math.compile(equation.expression);
    const tree = parseExpression(equation.expression);
    const tried = values.filter((v) => equation.when?.(v) ?? true);
    expect(tried.length, 'random trucks on which it holds').toBeGreaterThan(2);
    for (const v of tried) {
      const scope = { ...(v as unknown as Record<string, number>), g: 9.80665 };
      const shown = code.evaluate({ ...scope }) as number;
      const computed = v[equation.result] as number;
      const scale = Math.max(Math.abs(computed), Math.abs(shown), 1e-12);
      expect(Math.abs(shown - computed) / scale, `${equation.result}: shown ${shown}, computed ${computed}`).toBeLessThan(1e-9);
      const own = worth(tree, { ...scope, pi: Math.PI });
      expect(Math.abs(own - shown) / scale, 'our tree against mathjs').toBeLessThan(1e-12);
    }
  });

  test.each(record.equations.map((e) => [`${e.result} = ${e.expression}`, e] as const))('have the right dimension: %s', (_name, equation) => {
    const v = values.find((candidate) => equation.when?.(candidate) ?? true) as Values;
    const scope: Record<string, unknown> = { g: math.unit(9.80665, 'm/s^2'), max: pickWithUnits((a, b) => a > b), min: pickWithUnits((a, b) => a < b) };
    for (const [key, value] of Object.entries(v)) {
      const entry = entryOf(key);
      const unit = isQuantity(entry) ? unitOf[entry.dimension] : undefined;
      // A value of exactly 0 would hide its unit in a sum.
      scope[key] = unit ? math.unit((value as number) || 1e-9, unit) : value;
    }
    const result = math.evaluate(equation.expression, scope) as number | MathUnit;
    const entry = entryOf(equation.result);
    const unit = isQuantity(entry) ? unitOf[entry.dimension] : undefined;
    if (unit) expect(math.unit(1, unit).equalBase(result as MathUnit), `${equation.result} should be in ${unit}, the expression gives ${String(result)}`).toBe(true);
    else expect(typeof result, `${equation.result} is a pure number, the expression gives ${String(result)}`).toBe('number');
  });
});
