/**
 * Nearest places of two straight pieces, for loops that ask tens of thousands of times: nothing is allocated, nothing
 * checked. Same physics and same candidates as segmentDistance (capsule.ts), which the tests compare it with.
 *
 *   minimize |A(s) − B(t)|²,  A(s) = a1 + s u,  B(t) = b1 + t v,  0 ≤ s, t ≤ 1
 *
 * If the bottom of the bowl lies inside the square it is the answer; otherwise the nearest of the four edges is, each
 * one end against the whole of the other piece. Nearly parallel pieces have a poor bottom: then all five are compared.
 *
 * a, b: x, y, z of both ends (m, finite, any size), from place i or j of the list on. found: s and t are written into it. Returns the distance squared.
 * Source: derived. Worked value: as segmentDistance, 15.651394495590².
 */
export function nearestSquared(a: Float64Array, b: Float64Array, found: Float64Array, i = 0, j = 0): number {
  const ax = a[i]!, ay = a[i + 1]!, az = a[i + 2]!;
  const ux = a[i + 3]! - ax, uy = a[i + 4]! - ay, uz = a[i + 5]! - az;
  const bx = b[j]!, by = b[j + 1]!, bz = b[j + 2]!;
  const vx = b[j + 3]! - bx, vy = b[j + 4]! - by, vz = b[j + 5]! - bz;
  const wx = bx - ax, wy = by - ay, wz = bz - az;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const wu = wx * ux + wy * uy + wz * uz;
  const wv = wx * vx + wy * vy + wz * vz;
  let best = Infinity;
  const square = uu * vv - uv * uv;
  if (square > 0) { // a poor bottom does no harm: it is compared with the edges below
    const s = part(wu * vv - uv * wv, square);
    const t = part(s * uv - wv, vv);
    const dx = wx + t * vx - s * ux;
    const dy = wy + t * vy - s * uy;
    const dz = wz + t * vz - s * uz;
    best = dx * dx + dy * dy + dz * dz;
    found[0] = s;
    found[1] = t;
    if (s > 0 && s < 1 && t > 0 && t < 1 && square > 1e-6 * uu * vv) return best;
  }
  for (let edge = 0; edge < 4; edge++) {
    const s = edge === 0 ? 0 : edge === 1 ? 1 : edge === 2 ? part(wu, uu) : part(wu + uv, uu);
    const t = edge === 0 ? part(-wv, vv) : edge === 1 ? part(uv - wv, vv) : edge === 2 ? 0 : 1;
    const dx = wx + t * vx - s * ux;
    const dy = wy + t * vy - s * uy;
    const dz = wz + t * vz - s * uz;
    const d = dx * dx + dy * dy + dz * dz;
    if (d < best) {
      best = d;
      found[0] = s;
      found[1] = t;
    }
  }
  return best;
}

/** A quotient kept between 0 and 1; 0 on a piece of no length. */
function part(over: number, under: number): number {
  if (!(over > 0) || !(under > 0)) return 0;
  return over < under ? over / under : 1;
}
