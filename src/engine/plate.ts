import { requirePositive } from './require.ts';

export type PlateEdge = 'supported' | 'clamped';

export interface PlateUnderLoad {
  /** Long over short side. */
  readonly aspect: number;
  /** w = coefficient · F b²/(E t³) */
  readonly coefficient: number;
  /** At the middle, m. */
  readonly deflection: number;
  /** The largest bending stress, Pa. */
  readonly stress: number;
}

/** Of steel, and the one the published coefficients are printed for. */
const poisson = 0.3;

/** Printed for a/b = 1.0, 1.2 … 2.0 and endless, here against (b/a)², in which they are nearly straight. */
const squares = [1, 1.2, 1.4, 1.6, 1.8, 2].map((aspect) => aspect ** -2).concat(0);
const printed = {
  clampedDeflection: [0.0611, 0.0706, 0.0754, 0.0777, 0.0786, 0.0788, 0.0791],
  clampedEdge: [0.7542, 0.894, 0.9624, 0.9906, 1, 1.004, 1.008],
  clampedMiddle: [-0.238, -0.078, 0.011, 0.053, 0.068, 0.067, 0.067],
  supportedMiddle: [0.435, 0.65, 0.789, 0.875, 0.927, 0.958, 1],
} as const;

function between(values: readonly number[], square: number): number {
  const k = Math.min(squares.length - 2, squares.findIndex((_, j) => square >= (squares[j + 1] as number)));
  const [from, to] = [squares[k] as number, squares[k + 1] as number];
  const part = (from - square) / (from - to);
  return (values[k] as number) * (1 - part) + (values[k + 1] as number) * part;
}

/**
 * Deflection and stress of a flat rectangular plate pushed at its middle.
 *
 *   w = α F b²/(E t³)                 b the short side, a the long one
 *   supported edges   α = 12(1−ν²)/(2π³) Σ (tanh κ − κ/cosh² κ)/m³,  κ = m π a/(2b), m = 1, 3, 5 …
 *                     σ = 3F/(2π t²) [(1+ν) ln(2b/(π r)) + β]          at the middle
 *   clamped edges     α, β from a table; σ the larger of the same at the middle and β₂ F/t² at the long edges
 *   r = r₀, or for a load narrower than half the thickness √(1.6 r₀² + t²) − 0.675 t
 *
 * force F (N, above 0), sides (m), thickness t (m), modulus E (Pa), loadRadius r₀ (m): of a round patch that carries the
 * load evenly. A rigid flange of the same area bends the plate more at its rim than such a patch does.
 *
 * A welded plate in a body has edges between these two, so the two answers are bounds. Flat plate, small deflection:
 * true up to w = t/2; beyond it the sheet also pulls like a drumhead and the formula says too much.
 * Neglected: holes, ribs, shear, deflection of the supports themselves, which can be the largest part.
 *
 * @throws RangeError if an argument is not above 0, or the load patch is not inside the short side
 * Source: Roark, table 11.4 cases 1b and 8b, ν 0.3 (deflection coefficients read in the text, stress coefficients from
 * memory); the supported sum is Navier's, taken in one direction in closed form.
 * Worked value: 250 × 300 mm, 3 mm steel, 205 GPa, 2,500 N: 4.2 mm supported, 2.0 mm clamped.
 */
export function plateUnderLoad({ force, sideA, sideB, thickness, modulus, loadRadius, edge }: {
  readonly force: number;
  readonly sideA: number;
  readonly sideB: number;
  readonly thickness: number;
  readonly modulus: number;
  readonly loadRadius: number;
  readonly edge: PlateEdge;
}): PlateUnderLoad {
  requirePositive({ force, sideA, sideB, thickness, modulus, loadRadius });
  const short = Math.min(sideA, sideB);
  if (loadRadius > short / 2) throw new RangeError(`loadRadius: expected at most half the short side ${short / 2}, found ${loadRadius}`);
  const aspect = Math.max(sideA, sideB) / short;
  const square = aspect ** -2;
  const coefficient = edge === 'supported' ? supportedDeflection(aspect) : between(printed.clampedDeflection, square);
  const radius = loadRadius >= thickness / 2 ? loadRadius : Math.sqrt(1.6 * loadRadius ** 2 + thickness ** 2) - 0.675 * thickness;
  const spread = (1 + poisson) * Math.log((2 * short) / (Math.PI * radius));
  const middle = (3 / (2 * Math.PI)) * (spread + between(edge === 'supported' ? printed.supportedMiddle : printed.clampedMiddle, square));
  const worst = edge === 'supported' ? middle : Math.max(middle, between(printed.clampedEdge, square));
  return { aspect, coefficient, deflection: (coefficient * force * short ** 2) / (modulus * thickness ** 3), stress: (worst * force) / thickness ** 2 };
}

function supportedDeflection(aspect: number): number {
  let sum = 0;
  for (let m = 1; m < 200; m += 2) {
    const k = (m * Math.PI * aspect) / 2;
    // Beyond 40 the bracket is 1 to the last digit.
    sum += (k > 40 ? 1 : Math.tanh(k) - k / Math.cosh(k) ** 2) / m ** 3;
  }
  return ((12 * (1 - poisson ** 2)) / (2 * Math.PI ** 3)) * sum;
}
