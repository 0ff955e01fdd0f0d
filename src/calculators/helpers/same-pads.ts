import type { Correlation } from '../draws.ts';

/**
 * The gains of two axles with brake pads of one compound, so much off together: batch, weather and bedding are common
 * to both, heat and glaze are each axle's own. Of the variance of one pad's friction 0.8 is taken as common (our
 * judgment, no source). Friction is 8 of the gain's 9 %, so 0.8 × 8²/9² = 0.63; tire radius and caliper efficiency, 1 %
 * each, are common too: 0.63 + 2/9² = 0.66. With two compounds that 0.02 would be left, which is nothing.
 */
export const padsOfOneCompound: readonly Correlation[] = [['frontBrakeGain', 'rearBrakeGain', 0.66]];
