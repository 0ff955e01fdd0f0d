import { requireNonNegative, requirePositive } from './require.ts';

/** Whether pedal pivot and masters stand on one rigid frame, or the firewall is between them. */
export type Mounting = 'one-frame' | 'apart';

/**
 * What a foot on the pedal does to the sheet the masters stand on.
 *
 *   one frame   the frame closes the loop of pivot and rods: out of it come the foot's own push F and its moment F·h
 *   apart       every rod pushes its master: i F on the sheet, forward; the pivot's mount gets (i − 1) F, rearward
 *
 * controlForce F (N, 0 or more), square to the sheet; pedalRatio i (above 0); padBelow h (m, 0 or more): how far the pad
 * stands below the middle of the bolts. push (N) on the sheet, moment (N·m) on it, pivotPull (N) on the pivot's own mount.
 *
 * With the pivot elsewhere the sheet carries push only: rods cannot hold a moment.
 * Neglected: weight, friction (which only lowers what reaches the masters), rods that are not square to the sheet.
 *
 * @throws RangeError if F or h is negative or i not above 0
 * Source: derived; moments about the pivot, then the sum of forces. Worked value: 450 N at 6.2 → 2,790 N on the sheet and
 * 2,340 N on the pivot; on one frame 450 N, and 90 N·m with the pad 0.2 m below the bolts.
 */
export function mountLoads({ controlForce, pedalRatio, padBelow, mounting }: {
  readonly controlForce: number;
  readonly pedalRatio: number;
  readonly padBelow: number;
  readonly mounting: Mounting;
}): { readonly push: number; readonly moment: number; readonly pivotPull: number } {
  requireNonNegative({ controlForce, padBelow });
  requirePositive({ pedalRatio });
  return mounting === 'one-frame'
    ? { push: controlForce, moment: controlForce * padBelow, pivotPull: 0 }
    : { push: controlForce * pedalRatio, moment: 0, pivotPull: controlForce * Math.abs(pedalRatio - 1) };
}

/**
 * Tension in the upper bolts of a frame that a foot tips, turning on its lower row.
 *
 *   T = max(0, M − F r/2)/(r n)        r the distance of the rows, n bolts in the upper one
 *
 * The foot presses the flange against the sheet, which takes from the tension what the moment puts in. A flange that
 * reaches below the lower bolts turns on its edge, and the bolts get less.
 *
 * push F (N), moment M (N·m, about the middle of the bolts), both 0 or more; rowSpacing r (m); boltsPerRow n (1 or more).
 * Neglected: preload, which only adds until the flange lifts, and prying at a thin flange.
 *
 * @throws RangeError as said
 * Source: derived, moments about the lower row. Worked value: 2,000 N, 400 N·m, rows 80 mm apart, 2 bolts → 2,000 N each.
 */
export function tippingBoltTension({ push, moment, rowSpacing, boltsPerRow }: {
  readonly push: number;
  readonly moment: number;
  readonly rowSpacing: number;
  readonly boltsPerRow: number;
}): { readonly tension: number } {
  requireNonNegative({ push, moment });
  requirePositive({ rowSpacing, boltsPerRow });
  return { tension: Math.max(0, moment - (push * rowSpacing) / 2) / (rowSpacing * boltsPerRow) };
}
