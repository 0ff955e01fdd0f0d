import type { PlateEdge } from './plate.ts';
import { requireNonNegative, requirePositive } from './require.ts';

/**
 * Rotation and bending stress of a strip of plate that a rigid flange at its middle twists.
 *
 *   I = width t³/12     c = flange/2     l = (span − flange)/2, the bare strip on either side
 *   supported ends   θ = M l³/(6 E I (l + c)²)               bending moment M l/(2(l + c)) beside the flange
 *   clamped ends     θ = M l³/(8 E I (3c² + 3cl + l²))       beside the flange E I θ (6c/l² + 4/l)
 *   σ = moment · t/(2I)
 *
 * moment M (N·m, 0 or more); span (m) between the supports in the direction of the twist; flange (m, below span): height
 * of the rigid part; width (m) of strip that helps; thickness t (m); modulus E (Pa). rotation (rad), stress (Pa).
 *
 * The width of the flange alone is the soft bound, the whole plate with its side edges is stiffer: bounds again.
 * Neglected: the plate to either side, shear, flex of the flange.
 *
 * @throws RangeError if a length or E is not above 0, M is negative, or the flange is not below the span
 * Source: derived (two beams with a rigid block between them). Limits: flange 0 gives M·span/(12EI) and M·span/(16EI).
 * Worked value: 100 N·m, span 0.30, flange 0.08, width 0.10 m, 4.8 mm steel → 0.0053 rad supported, 0.0030 clamped (200 GPa).
 */
export function plateUnderMoment({ moment, span, flange, width, thickness, modulus, edge }: {
  readonly moment: number;
  readonly span: number;
  readonly flange: number;
  readonly width: number;
  readonly thickness: number;
  readonly modulus: number;
  readonly edge: PlateEdge;
}): { readonly rotation: number; readonly stress: number } {
  requireNonNegative({ moment });
  requirePositive({ span, flange, width, thickness, modulus });
  if (flange >= span) throw new RangeError(`flange: expected less than the span ${span}, found ${flange}`);
  const c = flange / 2;
  const l = (span - flange) / 2;
  const stiffness = (modulus * width * thickness ** 3) / 12;
  const toStress = 6 / (width * thickness ** 2);
  if (edge === 'supported') {
    return { rotation: (moment * l ** 3) / (6 * stiffness * (l + c) ** 2), stress: (toStress * moment * l) / (2 * (l + c)) };
  }
  const rotation = (moment * l ** 3) / (8 * stiffness * (3 * c * c + 3 * c * l + l * l));
  return { rotation, stress: toStress * stiffness * rotation * ((6 * c) / l ** 2 + 4 / l) };
}
