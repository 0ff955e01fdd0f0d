/**
 * Nearest places of two straight pieces, for loops that ask tens of thousands of times: nothing is allocated, nothing
 * checked. Same physics and same candidates as segmentDistance (capsule.ts), which the tests compare it with.
 *
 *   minimize |A(s) − B(t)|²,  A(s) = a1 + s u,  B(t) = b1 + t v,  0 ≤ s, t ≤ 1
 *
 * If the bottom of the bowl lies inside the square it is the answer; otherwise the nearest of the four edges is, each
 * one end against the whole of the other piece. Nearly parallel pieces have a poor bottom: then all five are compared.
 *
 * a, b: x, y, z of both ends (m, finite, any size). found: s and t are written into it. Returns the distance squared.
 * Source: derived. Worked value: as segmentDistance, 15.651394495590².
 */
export function nearestSquared(a: Float64Array, b: Float64Array, found: Float64Array): number {
  const ax = a[0]!, ay = a[1]!, az = a[2]!;
  const ux = a[3]! - ax, uy = a[4]! - ay, uz = a[5]! - az;
  const vx = b[3]! - b[0]!, vy = b[4]! - b[1]!, vz = b[5]! - b[2]!;
  const wx = b[0]! - ax, wy = b[1]! - ay, wz = b[2]! - az;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const wu = wx * ux + wy * uy + wz * uz;
  const wv = wx * vx + wy * vy + wz * vz;
  const away = (s: number, t: number): number => {
    const dx = wx + t * vx - s * ux;
    const dy = wy + t * vy - s * uy;
    const dz = wz + t * vz - s * uz;
    return dx * dx + dy * dy + dz * dz;
  };
  let best = Infinity;
  const square = uu * vv - uv * uv;
  if (square > 1e-12 * uu * vv) {
    const s = part(wu * vv - uv * wv, square);
    const t = part(s * uv - wv, vv);
    best = away(s, t);
    found[0] = s;
    found[1] = t;
    if (s > 0 && s < 1 && t > 0 && t < 1 && square > 1e-6 * uu * vv) return best;
  }
  for (let edge = 0; edge < 4; edge++) {
    const s = edge === 0 ? 0 : edge === 1 ? 1 : edge === 2 ? part(wu, uu) : part(wu + uv, uu);
    const t = edge === 0 ? part(-wv, vv) : edge === 1 ? part(uv - wv, vv) : edge === 2 ? 0 : 1;
    const square2 = away(s, t);
    if (square2 < best) {
      best = square2;
      found[0] = s;
      found[1] = t;
    }
  }
  return best;
}

/** A quotient kept between 0 and 1; 0 on a piece of no length. */
function part(over: number, under: number): number {
  return under > 0 ? Math.min(1, Math.max(0, over / under)) : 0;
}
