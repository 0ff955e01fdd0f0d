import { areFinite, arePositive, requireFinite, requirePositive } from './require.ts';

/**
 * How far the lower edge of a hung pedal stands off a flat floor, and the travel at which it meets it.
 *
 *   D = x_t sin τ + z_p cos τ                 the pivot's distance from the floor's plane
 *   clearance = D − R_e cos(φ − τ) − stack    φ = φ₀ + travel/R_p
 *   meets at  φ = τ − acos((D − stack)/R_e)
 *   least so far = the same at min(φ, max(φ₀, τ)): nearest at φ = τ, where arm and floor are square
 *
 * Side view, origin under the pivot on the bare floor, x forward, z up. pivotHeight z_p (m, above 0); slope τ (rad, 0 to
 * below π/2): 0 for the floor itself, more for a toe board that rises forward; start x_t (m): where the toe board leaves
 * the floor, ahead of the pivot (minus behind it); padArm R_p (m) to the pad's center, edgeArm R_e to its lower edge (m);
 * restAngle φ₀ (rad): pivot to pad center, + forward of straight down; stack (m, 0 or more): lining, carpet and mat, loose.
 *
 * clearance (m): at that travel; least (m): the smallest on the way there. toContact (m of pad travel, 0 where it touches at
 * rest): undefined where the pad swings past without touching, or hangs past the square already and swings away. Neglected: a pad wider than the arm's
 * plane, a boot under it, carpet that a pad presses flat (which gives back a little).
 *
 * @throws RangeError as said
 * Source: derived. Worked value: pivot 0.40 over a level floor, edge 0.36 from it, straight down, 20 mm of carpet → 20 mm.
 */
export function padOverFloor({ pivotHeight, slope, start, padArm, edgeArm, restAngle, stack, travel }: {
  readonly pivotHeight: number;
  readonly slope: number;
  readonly start: number;
  readonly padArm: number;
  readonly edgeArm: number;
  readonly restAngle: number;
  readonly stack: number;
  readonly travel: number;
}): { readonly clearance: number; readonly least: number; readonly toContact: number | undefined } {
  if (!arePositive(pivotHeight, padArm, edgeArm)) requirePositive({ pivotHeight, padArm, edgeArm });
  if (!areFinite(slope, start, restAngle, stack, travel)) requireFinite({ slope, start, restAngle, stack, travel });
  if (slope < 0 || slope >= Math.PI / 2) throw new RangeError(`slope: expected 0 to below π/2, found ${slope}`);
  const room = start * Math.sin(slope) + pivotHeight * Math.cos(slope) - stack;
  const at = (angle: number): number => room - edgeArm * Math.cos(angle - slope);
  const angle = restAngle + travel / padArm;
  const seen = { clearance: at(angle), least: Math.min(at(restAngle), at(Math.min(angle, Math.max(restAngle, slope)))) };
  if (at(restAngle) <= 0) return { ...seen, toContact: 0 };
  if (restAngle >= slope || room >= edgeArm) return { ...seen, toContact: undefined };
  return { ...seen, toContact: (slope - Math.acos(Math.max(-1, room / edgeArm)) - restAngle) * padArm };
}
