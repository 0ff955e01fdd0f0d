import { describe, expect, test } from 'vitest';
import { lineFit } from '../../src/engine/brokenLine.ts';
import type { Line } from '../../src/engine/brokenLine.ts';
import { isImpossible } from '../../src/engine/outcome.ts';

function line(x: readonly number[], y: readonly number[]): Line {
  const fit = lineFit({ points: x.map((value, k) => ({ x: value, y: y[k] as number })) });
  if (isImpossible(fit)) throw new Error(`expected a line, found ${fit.impossible}`);
  return fit;
}

describe('a line through gauge readings, against published fits', () => {
  test('NIST, Statistical Reference Datasets, Norris: calibration of ozone monitors (read in texts that quote it)', () => {
    const x = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5];
    const y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2];
    const fit = line(x, y);
    expect(fit.slope / 1.00211681802045).toBeCloseTo(1, 12);
    expect(fit.intercept / -0.262323073774029).toBeCloseTo(1, 10);
    expect((fit.slopeError as number) / 0.429796848199937e-3).toBeCloseTo(1, 10);
    expect(fit.squares / 26.6173985294224).toBeCloseTo(1, 10);
  });

  test('Anscombe, Graphs in Statistical Analysis, The American Statistician 27, 1973, first data set (read in texts that quote it): y = 3.00 + 0.500 x, slope ± 0.118, 13.76 left over', () => {
    const fit = line([10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5], [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]);
    expect(fit.slope).toBeCloseTo(0.5001, 4);
    expect(fit.intercept).toBeCloseTo(3.0001, 4);
    expect(fit.slopeError).toBeCloseTo(0.1179, 4);
    expect(fit.squares).toBeCloseTo(13.7627, 4);
  });
});
