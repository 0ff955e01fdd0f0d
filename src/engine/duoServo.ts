import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import type { Lining } from './pinnedShoe.ts';
import { liningArms } from './pinnedShoe.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Brake factor of a duo-servo drum from the places of its shoe ends and the angles of its lining.
 *
 *   primary     N_1/F = h/(a_1 − μ c_1)      P/F = (a_t + μ c_t)/(h/(N_1/F))     P pushes the link
 *   secondary   N_2/F = [(d + q) P/F + e]/(a_2 − μ c_2)       BF = μ (N_1 + N_2)/F
 *   arms about a point at distance x from the drum's center: a = x s, c = r ∓ x m (− for the link, + for the upper end)
 *
 * s, m: means of sin θ and cos θ over the lining, weighted with its pressure; θ from the line down to the link. Free
 * bodies: the primary turns about the link and is dragged toward it; its moments about the cylinder's line, u = h − d
 * above center, give the link's push P; the secondary is pushed by the link at d + q and by its own cylinder piston at e,
 * turns about the anchor pin, q = u + e above center, and is dragged toward that. brakeFactor in drum.ts is this with
 * m = 0, u = d and e = 0, in which a_1 = a_t = a_2 and every c is r.
 *
 * drumRadius r; hingeRadius d (m): center to link; applyArm h (m, 0.15–0.24): link to the cylinder's line; anchorOffset e
 * (m, 0–0.04): anchor pin beyond that line; startAngle, endAngle (rad) as liningArms; friction μ.
 * factors as brakeFactor; lockFriction: the lower μ at which one of the shoes needs no push; sensitivity d ln BF/d ln μ.
 *
 * Neglected: as brakeFactor; both linings have the same angles. That the link cannot push along the shoe makes BF lower by
 * 6–10 % at μ 0.30 and 14–20 % at 0.40.
 * Impossible as liningArms; 'cylinder-below-center', by d − h (m); 'anchor-outside-drum', by q − r (m); 'self-locks', by how
 * much μ is at or past lockFriction.
 * @throws RangeError as liningArms, if a length or μ is not above 0 or the offset is negative
 * Source: derived. Worked value: r 114.3, d 91.4, h 177.8, e 0 mm, 35–145°, μ 0.30 → 4.30; e 15.2 mm → 3.82.
 */
export function duoServoFactor(p: Lining & { readonly applyArm: number; readonly anchorOffset: number; readonly friction: number }):
  | { readonly brakeFactor: number; readonly firstFactor: number; readonly secondFactor: number; readonly sensitivity: number; readonly lockFriction: number }
  | Impossible {
  const { drumRadius: r, hingeRadius: d, applyArm: h, anchorOffset: e, friction: mu } = p;
  requirePositive({ applyArm: h, friction: mu });
  requireNonNegative({ anchorOffset: e });
  const lining = liningArms(p);
  if (isImpossible(lining)) return lining;
  const u = h - d;
  const q = u + e;
  if (u <= 0) return { impossible: 'cylinder-below-center', by: -u };
  if (q >= r) return { impossible: 'anchor-outside-drum', by: q - r };
  const s = lining.normalArm / d;
  const m = (r - lining.frictionArm) / d;
  const [a1, c1] = [lining.normalArm, lining.frictionArm];
  const [a2, c2] = [q * s, r + q * m];
  const lockFriction = Math.min(a1 / c1, a2 / c2);
  if (mu >= lockFriction) return { impossible: 'self-locks', by: mu - lockFriction };
  const [free1, free2] = [a1 - mu * c1, a2 - mu * c2];
  const n1 = h / free1;
  const push = (n1 * (u * s + mu * (r + u * m))) / h;
  const n2 = (push * (d + q) + e) / free2;
  // Each logarithm's slope in turn: 1/free, then the link's push, then the secondary.
  const rise1 = (n1 * c1) / free1;
  const risePush = (rise1 * push) / n1 + (n1 * (r + u * m)) / h;
  const rise2 = (risePush * (d + q)) / free2 + (n2 * c2) / free2;
  return {
    brakeFactor: mu * (n1 + n2),
    firstFactor: mu * n1,
    secondFactor: mu * n2,
    sensitivity: 1 + (mu * (rise1 + rise2)) / (n1 + n2),
    lockFriction,
  };
}
