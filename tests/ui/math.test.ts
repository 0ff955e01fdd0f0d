import { expect, test } from 'vitest';
import { parseExpression } from '../../src/calculators/expression.ts';
import { InNumbers, lettersOf } from '../../src/ui/math.tsx';

/** The characters of a formula, a power after ^. */
function text(node: unknown): string {
  if (node === null || node === undefined || typeof node === 'boolean') return '';
  if (Array.isArray(node)) return node.map(text).join('');
  if (typeof node !== 'object') return String(node);
  const { type, props } = node as { type: string; props: { children?: unknown } };
  const children = [props.children].flat(9);
  return type === 'msup' ? `${text(children[0])}^${text(children[1])}` : type === 'mfrac' ? `${text(children[0])}/${text(children[1])}` : children.map(text).join('');
}
const shown = (expression: string, number: (name: string, turned?: boolean) => string): string => text(InNumbers({ tree: parseExpression(expression), number }));

test('a number with a unit is raised as a whole: the square of 10 in is 100 square inches, not 10', () => {
  expect(shown('plateShortSide^2', () => '10 in')).toBe('(10 in)^2');
  expect(shown('pedalRatio^2', () => '6.2')).toBe('6.2^2');
});

test('an angle is asked for as one to turn by inside a sine, and as a number beside a length', () => {
  const number = (name: string, turned?: boolean): string => (name === 'padArm' ? '12.4 in' : turned ? '5°' : '0.08727 rad');
  expect(shown('padArm * sin(restAngle)', number)).toContain('5°');
  expect(shown('padArm * restAngle', number)).toContain('0.08727 rad');
  expect(shown('asin(padArm * restAngle)', number)).toContain('0.08727 rad');
});

test('a formula’s width is that of what stands beside each other: a fraction is as wide as its wider part', () => {
  const wide = (expression: string, width = 10): number => lettersOf(parseExpression(expression), () => width);
  expect(wide('padArm + restAngle')).toBe(22);
  expect(wide('(padArm + restAngle) / padArm')).toBe(22);
  expect(wide('padArm * (padArm + restAngle)')).toBeGreaterThan(wide('padArm + padArm + restAngle')); // parentheses
  expect(wide('sqrt(padArm)')).toBeGreaterThan(wide('padArm'));
  expect(wide('padArm^2')).toBeLessThan(wide('padArm * 2'));
});
