import type { DropMotion } from './bodyDrop.ts';
import { movePoint } from './bodyDrop.ts';
import type { Impossible } from './outcome.ts';
import { isImpossible } from './outcome.ts';
import { requireFinite, requireNonNegative, requirePositive } from './require.ts';

/**
 * Knee pressure of a rear valve that reads the load from the height of the frame over the axle.
 *
 *   p_k = p_e + (p_l − p_e) λ      λ = (H_e − H)/(H_e − H_l), held between 0 and 1
 *
 * A link turns the valve's lever as the springs give. The valve knows no load: it knows a height, and takes a low frame
 * for a full bed. height H (m, 0.10–0.35), frame to axle at the link; emptyHeight H_e, ladenHeight H_l (m): the two
 * heights it was set at; emptyKnee p_e, ladenKnee p_l (Pa, 7e5–7e6): what gauges showed there.
 *
 * believedLoad λ_raw: part of the calibrated load that the height says, below 0 or above 1 outside the two heights;
 * there `standing` says so and the knee is held. Nobody has measured it there: past the laden height a real valve may
 * go on to wide open.
 *
 * Neglected: the lever's turn in place of a straight line, hysteresis, wear. Air springs hold H whatever the bed
 * carries, so on them the valve is blind to load.
 * Impossible 'laden-height-above-empty', by how much (m); 'laden-knee-below-empty', by how much (Pa).
 * @throws RangeError if a height is not above 0 or a knee is negative
 * Source: definition. Worked value: 0.22 m and 20 bar empty, 0.16 m and 60 bar laden; at 0.19 m → 40 bar.
 */
export interface HeightValve {
  readonly emptyHeight: number;
  readonly ladenHeight: number;
  readonly emptyKnee: number;
  readonly ladenKnee: number;
}

export interface HeightKnee {
  readonly knee: number;
  readonly believedLoad: number;
  readonly standing: 'above-empty-height' | 'between' | 'below-laden-height';
}

export function kneeAtHeight({ height, emptyHeight, ladenHeight, emptyKnee, ladenKnee }: HeightValve & { readonly height: number }):
  | HeightKnee
  | Impossible {
  requirePositive({ emptyHeight, ladenHeight });
  requireFinite({ height });
  requireNonNegative({ emptyKnee, ladenKnee });
  if (ladenHeight >= emptyHeight) return { impossible: 'laden-height-above-empty', by: ladenHeight - emptyHeight };
  if (ladenKnee < emptyKnee) return { impossible: 'laden-knee-below-empty', by: emptyKnee - ladenKnee };
  const believedLoad = (emptyHeight - height) / (emptyHeight - ladenHeight);
  const held = Math.min(1, Math.max(0, believedLoad));
  return {
    knee: emptyKnee + (ladenKnee - emptyKnee) * held,
    believedLoad,
    standing: believedLoad < 0 ? 'above-empty-height' : believedLoad > 1 ? 'below-laden-height' : 'between',
  };
}

/**
 * What a drop does to that knee, the bed as full as before.
 *
 *   H' = z_frame − z_axle after movePoint      rise = p_k(H') − p_k(H)
 *
 * Both ends of the link are moved by the drop's own rules: the upper rides with the frame, the lower with the rear axle.
 * A body drop moves neither, so it leaves the knee alone; a suspension drop takes S off H, and the empty truck gets the
 * rear pressure of a full one: its rear wheels lock first. height H (m): before the work, as loaded now.
 *
 * before, after: as kneeAtHeight; heightAfter H' (m); linkCorrection (m): what has to come out of the link's length to
 * give the valve its old knee back, the ride height being the new one; negative where the tail was raised. The lever sees
 * H less the link that stands on the axle, so a frame lower by S wants a link shorter by S (longer, where the link hangs
 * from the axle down to a lever).
 * The loads themselves stay: a drop changes them far less than it changes H.
 *
 * Impossible as kneeAtHeight and dropPitch, and 'frame-on-axle', by how far they would overlap (m).
 * @throws RangeError as those, or if height is not above 0
 * Source: plane rigid motion. Worked value: the valve above at 0.22 m, 5 in (127 mm) off the suspension at the rear →
 * 20 bar before, 60 after, believing 2.1 times the load; 3 in off the body → 20 and 20.
 */
export function kneeAfterDrop(p: HeightValve & DropMotion & { readonly height: number }):
  | {
      readonly before: HeightKnee;
      readonly after: HeightKnee;
      readonly heightAfter: number;
      readonly kneeRise: number;
      readonly linkCorrection: number;
    }
  | Impossible {
  const { height } = p;
  requirePositive({ height });
  const before = kneeAtHeight(p);
  if (isImpossible(before)) return before;
  const upper = movePoint({ ...p, point: { x: p.xRearAxle, y: 0, z: height, attached: 'frame' } });
  const lower = movePoint({ ...p, point: { x: p.xRearAxle, y: 0, z: 0, attached: 'axle-rear' } });
  if (isImpossible(upper)) return upper;
  if (isImpossible(lower)) return lower;
  const heightAfter = upper.z - lower.z;
  if (heightAfter <= 0) return { impossible: 'frame-on-axle', by: -heightAfter };
  const after = kneeAtHeight({ ...p, height: heightAfter }) as HeightKnee;
  return { before, after, heightAfter, kneeRise: after.knee - before.knee, linkCorrection: height - heightAfter };
}
