/**
 * Factors for writing SI values in the units a drawing or a standard states them in: `2 * inch`.
 *
 * Three are exact by definition (NIST SP 811, appendix B): the inch, the pound and the standard
 * acceleration of free fall. Every other customary unit is derived from them, here and in
 * dimensions.ts, so that psi, lbf and lbf·ft cannot disagree with each other.
 */
export const inch = 0.0254; // m, exact
export const lb = 0.45359237; // kg, exact
export const standardGravity = 9.80665; // m/s², exact
export const mm = 1e-3;
export const foot = 12 * inch;
export const mph = 0.44704; // 5280 × 12 × 0.0254 / 3600, exact
export const lbf = lb * standardGravity;
export const psi = lbf / (inch * inch);
export const bar = 1e5;
export const kPa = 1e3;
export const cm3 = 1e-6;
export const deg = Math.PI / 180;
export const percent = 0.01;
