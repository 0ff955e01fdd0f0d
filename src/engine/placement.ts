import type { Impossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';
import { eigenSymmetric3 } from './symmetric3.ts';
import type { Row3 } from './symmetric3.ts';

/** One measurement of a point: its distance from a known one, or its height or sideways place alone. */
export type Reference =
  | { readonly from: Row3; readonly distance: number }
  | { readonly height: number }
  | { readonly lateral: number };

export interface Place {
  readonly point: Row3;
  /** Root mean square and largest of what the measurements are off it, m: nothing where three fix it. */
  readonly residual: number;
  readonly worst: number;
  /** One standard deviation along x, y, z, m. */
  readonly sigma: Row3;
  /** The longest half-axis of the error ellipsoid (one standard deviation, m) and its direction. */
  readonly longest: number;
  readonly direction: Row3;
  /** All three half-axes of it, as vectors, m. */
  readonly axes: readonly [Row3, Row3, Row3];
  /** longest over the error of one measurement: how badly the references see it. */
  readonly weakness: number;
}

/** Beyond this the references do not fix the point in one direction. */
const hopeless = 1e4;

/**
 * Where a point is that was measured from known ones, with both mirror answers where there are two.
 *
 *   distance    |X − P| = r        height    z = h        lateral    y = l
 *   three measurements: all met;  more: Σ (miss)² least (Gauss–Newton, damped)
 *   error       cov = σ² (UᵀU)⁻¹, σ² = tape² + mark², U the unit vectors from the references to X
 *
 * Axes by ISO 8855: x forward, y left, z up, m. references: 3 or more; tapeError, markError (m, one standard deviation, 0
 * or more): of one measurement, and of the place of one reference mark. places: one or two, the lower first.
 * Three marks in a plane see a point and its image on the other side of it alike; only the reader knows which is meant.
 *
 * Impossible: 'marks-coincide', by how near (m); 'marks-in-line', by the height of their triangle (m); 'do-not-meet', by
 * what the distances miss each other (m); 'not-fixed': no such measurements fix a point.
 * @throws RangeError for fewer than 3 references, a distance not above 0, or anything not finite
 * Source: derived. Worked value: (0,0,0), (900,0,0), (200,600,0) mm at 758.29, 463.68, 644.20 → (650, 250, ∓300).
 */
export function locate({ references, tapeError = 0.002, markError = 0 }: {
  readonly references: readonly Reference[];
  readonly tapeError?: number;
  readonly markError?: number;
}): { readonly places: readonly Place[] } | Impossible {
  requireNonNegative({ tapeError, markError });
  if (references.length < 3) throw new RangeError(`references: expected 3 or more, found ${references.length}`);
  const marks = references.filter((r) => 'from' in r);
  for (const mark of marks) {
    requirePositive({ distance: mark.distance });
    requireFinite({ x: mark.from[0], y: mark.from[1], z: mark.from[2] });
  }
  const poor = poorMarks(marks.map((m) => m.from), references.length - marks.length);
  if (poor) return poor;
  const found: Place[] = [];
  let least = Infinity;
  const sigma = Math.hypot(tapeError, markError);
  for (const start of starts(references, marks)) {
    const point = descend(references, start);
    if (!point) continue;
    const misses = references.map((r) => look(r, point).miss);
    const rms = Math.sqrt(misses.reduce((sum, m) => sum + m * m, 0) / misses.length);
    const worst = Math.max(...misses.map(Math.abs));
    least = Math.min(least, worst);
    if (references.length === 3 && worst > 1e-6) continue;
    if (found.some((p) => Math.hypot(...minus(p.point, point)) < 1e-5)) continue;
    const place = { point, residual: rms, worst, ...errorOf(references, point, sigma) };
    if (place.weakness < hopeless) found.push(place);
  }
  if (found.length === 0) return least > 1e-6 && Number.isFinite(least) ? { impossible: 'do-not-meet', by: least } : { impossible: 'not-fixed' };
  // With a measurement to spare the image does not fit as well: what fits ten times worse is no answer.
  const best = Math.min(...found.map((p) => p.residual));
  const fits = found.filter((p) => references.length === 3 || p.residual <= Math.max(10 * best, 1e-6) + sigma);
  return { places: fits.sort((a, b) => a.point[2] - b.point[2] || a.point[0] - b.point[0]).slice(0, 2) };
}

const minus = (a: Row3, b: Row3): Row3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Row3, b: Row3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Row3, b: Row3): Row3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const length = (a: Row3): number => Math.hypot(a[0], a[1], a[2]);

/** Marks on top of each other, or three or more in one line with nothing else to help. */
function poorMarks(marks: readonly Row3[], others: number): Impossible | undefined {
  let height = 0;
  for (let i = 0; i < marks.length; i++) {
    for (let j = 0; j < i; j++) {
      const base = minus(marks[i] as Row3, marks[j] as Row3);
      if (length(base) < 1e-3) return { impossible: 'marks-coincide', by: length(base) };
      for (let k = 0; k < j; k++) height = Math.max(height, length(cross(base, minus(marks[k] as Row3, marks[j] as Row3))) / length(base));
    }
  }
  return others === 0 && height < 5e-3 ? { impossible: 'marks-in-line', by: height } : undefined;
}

/** The direction in which a reference's measurement grows, and by how much the point misses it. */
function look(reference: Reference, point: Row3): { readonly along: Row3; readonly miss: number } {
  if ('height' in reference) return { along: [0, 0, 1], miss: point[2] - reference.height };
  if ('lateral' in reference) return { along: [0, 1, 0], miss: point[1] - reference.lateral };
  const away = minus(point, reference.from);
  const far = length(away) || 1e-12;
  return { along: [away[0] / far, away[1] / far, away[2] / far], miss: far - reference.distance };
}

/** On either side of what the references cannot tell apart: both images lie near one of these. */
function starts(references: readonly Reference[], marks: readonly { readonly from: Row3; readonly distance: number }[]): Row3[] {
  const across = mirrorNormal(references, marks.map((m) => m.from));
  const size = length(across);
  const height = references.find((r) => 'height' in r);
  const lateral = references.find((r) => 'lateral' in r);
  const middle = ([0, 1, 2] as const).map((k) => marks.reduce((sum, m) => sum + m.from[k], 0) / Math.max(1, marks.length)) as unknown as Row3;
  const reach = marks.reduce((sum, m) => sum + m.distance, 0) / Math.max(1, marks.length);
  if (!(size > 0) || marks.length === 0) return [];
  return [1, -1].map((side): Row3 => {
    const p = middle.map((x, k) => x + (side * reach * (across[k] as number)) / size) as unknown as Row3;
    return [p[0], lateral && 'lateral' in lateral ? lateral.lateral : p[1], height && 'height' in height ? height.height : p[2]];
  });
}

/** Square to the plane in which the references mirror a point, of no length where they leave it free. */
function mirrorNormal(references: readonly Reference[], marks: readonly Row3[]): Row3 {
  const axes = references.flatMap((r): Row3[] => ('height' in r ? [[0, 0, 1]] : 'lateral' in r ? [[0, 1, 0]] : []));
  const lines = marks.slice(1).map((m) => minus(m, marks[0] as Row3));
  const inPlane = [...axes, ...lines];
  let best: Row3 = [0, 0, 0];
  inPlane.forEach((a, i) => inPlane.slice(0, i).forEach((b) => {
    const n = cross(a, b);
    if (length(n) > length(best)) best = n;
  }));
  return best;
}

function normal(references: readonly Reference[], point: Row3): { readonly matrix: number[][]; readonly pull: number[]; readonly cost: number } {
  const matrix = [[0, 0, 0], [0, 0, 0], [0, 0, 0]];
  const pull = [0, 0, 0];
  let cost = 0;
  for (const reference of references) {
    const { along, miss } = look(reference, point);
    cost += miss * miss;
    for (let r = 0; r < 3; r++) {
      pull[r]! += (along[r] as number) * miss;
      for (let c = 0; c < 3; c++) matrix[r]![c]! += (along[r] as number) * (along[c] as number);
    }
  }
  return { matrix, pull, cost };
}

/** Levenberg's damped Gauss–Newton steps. */
function descend(references: readonly Reference[], start: Row3): Row3 | undefined {
  let point = start;
  let damping = 1e-3;
  let now = normal(references, point);
  for (let k = 0; k < 80; k++) {
    const step = solve3(now.matrix.map((row, r) => row.map((x, c) => (r === c ? x + damping : x))), now.pull);
    if (!step) return undefined;
    const next: Row3 = [point[0] - step[0], point[1] - step[1], point[2] - step[2]];
    const then = normal(references, next);
    if (then.cost <= now.cost) {
      point = next;
      now = then;
      damping = Math.max(1e-12, damping / 10);
      if (length(step) < 1e-13) break;
    } else {
      damping *= 10;
      if (damping > 1e6) break;
    }
  }
  return point.every(Number.isFinite) ? point : undefined;
}

function solve3(m: readonly (readonly number[])[], y: readonly number[]): Row3 | undefined {
  const [a, b, c] = m.map((row) => row as unknown as Row3) as [Row3, Row3, Row3];
  const det = dot(a, cross(b, c));
  if (!(Math.abs(det) > 1e-300)) return undefined;
  const v = y as unknown as Row3;
  // The matrix is symmetric, so its rows are its columns.
  return [dot(v, cross(b, c)) / det, dot(a, cross(v, c)) / det, dot(a, cross(b, v)) / det];
}

function errorOf(references: readonly Reference[], point: Row3, sigma: number): Pick<Place, 'sigma' | 'longest' | 'direction' | 'axes' | 'weakness'> {
  const { matrix } = normal(references, point);
  const { values, vectors } = eigenSymmetric3({ matrix: matrix as unknown as readonly [Row3, Row3, Row3] });
  const weakest = Math.max(values[2], 1e-12);
  const along = (axis: 0 | 1 | 2): number => sigma * Math.sqrt(vectors.reduce((sum, vector, k) => sum + vector[axis] ** 2 / Math.max(values[k] as number, 1e-12), 0));
  const half = (k: 0 | 1 | 2): Row3 => {
    const size = sigma / Math.sqrt(Math.max(values[k], 1e-12));
    return [size * vectors[k][0], size * vectors[k][1], size * vectors[k][2]];
  };
  return { sigma: [along(0), along(1), along(2)], longest: sigma / Math.sqrt(weakest), direction: vectors[2], axes: [half(0), half(1), half(2)], weakness: 1 / Math.sqrt(weakest) };
}
