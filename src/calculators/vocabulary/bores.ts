import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, lbf, mm } from '../../units/si.ts';

const ratioTried = {
  dimension: 'ratio',
  usual: { min: 5, max: 7.5, source: commonPractice + ' for pedals without a booster' },
  hard: { min: 1, max: 15, reason: 'a pedal that multiplies the foot has a ratio above 1, and above 15 it has no travel left' },
} as const;
const shareTried = {
  dimension: 'share',
  hard: { min: 0.05, max: 0.95, reason: 'each master needs some of the force: the front share lies between 5 and 95 %' },
} as const;
const part = { dimension: 'share', hard: { min: 0.05, max: 1, reason: 'a part to plan with lies between 5 and 100 %' } } as const;

/** Choosing bores, pedal ratio and bar: the driver, what to try, the limits to keep. */
export const bores = {
  driverForce: {
    name: 'force the weakest driver can hold', symbol: 'F_w', dimension: 'force',
    usual: { min: 60 * lbf, max: 130 * lbf, source: commonPractice + '; a small driver may have 70 to 90 lbf (from memory, not checked against the text)' },
    hard: { min: 5 * lbf, max: 900 * lbf, reason: 'a driver pushes with between 5 and 900 lbf' },
    measure: 'Seated as in the truck, that driver pushes a bathroom scale against a wall, right foot, five seconds, three times. Take the lowest figure held.',
    tolerance: { relative: 0.05 },
  },
  ratioFrom: { name: 'lowest pedal ratio to try', symbol: 'i_from', ...ratioTried, measure: 'Your choice. Where the pedal is bought already, type its ratio here and as the highest.' },
  ratioTo: { name: 'highest pedal ratio to try', symbol: 'i_to', ...ratioTried, measure: 'Your choice. Above 7 the pedal becomes long (common practice, no source).' },
  rearShareTarget: {
    name: 'rear share of the brake force to aim for', symbol: 'Φ_t', dimension: 'share',
    usual: { min: 0.15, max: 0.4, source: commonPractice },
    hard: { min: 0.01, max: 0.99, reason: 'both axles brake: the rear share lies between 1 and 99 %' },
    measure: 'Your choice, from the ideal distribution of the empty truck, less some points to be safe.',
  },
  barReach: {
    name: 'farthest the pivot moves off center', symbol: 'u_max', dimension: 'length',
    usual: { min: 6 * mm, max: 16 * mm, source: commonPractice },
    hard: { min: 0, max: 150 * mm, reason: 'the pivot moves by between 0 and 150 mm' },
    measure: 'Turn the adjuster until it ends, both ways; calipers from the pivot’s center to each clevis. Half the difference of the two; the shorter way counts.', tolerance: { absolute: 0.3 * mm },
  },
  // limits
  strokePart: { name: 'part of a master’s stroke to plan with', symbol: 'k_x', ...part, usual: { min: 0.6, max: 0.85, source: commonPractice }, measure: 'Your choice. 80 %: the rest is for air, knocked-back brake pads and heat.' },
  travelPart: { name: 'part of the pedal’s travel to plan with', symbol: 'k_T', ...part, usual: { min: 0.5, max: 0.8, source: commonPractice }, measure: 'Your choice. Two thirds: keep a third in reserve.' },
  tiltPart: { name: 'part of the bar’s swing to plan with', symbol: 'k_α', ...part, usual: { min: 0.3, max: 0.7, source: commonPractice }, measure: 'Your choice. Half: knock-back in one circuit tilts it further.' },
  shareLow: { name: 'lowest front share to set the bar to', symbol: 's_min', ...shareTried, usual: { min: 0.35, max: 0.55, source: commonPractice }, measure: 'Your choice. 50 %: below it another pair of bores does better.' },
  shareHigh: { name: 'highest front share to set the bar to', symbol: 's_max', ...shareTried, usual: { min: 0.55, max: 0.65, source: commonPractice }, measure: 'Your choice. 65 %: above it another pair of bores does better.' },
  rateMargin: {
    name: 'critical rate to keep above the target', symbol: 'δ_z', dimension: 'brakingRate',
    usual: { min: 0.1, max: 0.4, source: commonPractice },
    hard: { min: 0, max: 1, reason: 'a margin lies between 0 and 1 g' },
    measure: 'Your choice. 0.2 g: a critical rate of 1.0 g as calculated for a target of 0.8 g covers brake pads, bar friction and the center of gravity.',
  },
  floorMargin: {
    name: 'pedal above the carpet to keep in a failure', symbol: 'c_min', dimension: 'length',
    usual: { min: 0.75 * inch, max: 2 * inch, source: commonPractice },
    hard: { min: 0, max: 10 * inch, reason: 'a margin lies between 0 and 10 in' },
    measure: 'Your choice. 1 in (25 mm), finished carpet and mat in place.',
  },
  failedRate: {
    name: 'braking rate to keep with one circuit dead', symbol: 'z_min', dimension: 'brakingRate',
    usual: { min: 0.2, max: 0.35, source: 'about 0.25 g is what 168 m from 100 km/h asks: FMVSS 135 S7.10, from memory, agrees with the distance formula' },
    hard: { min: 0.005, max: 1, reason: 'what is left lies between 0.005 and 1 g' },
    measure: 'Your choice. An empty pickup’s rear brakes alone seldom reach 0.32 g, whatever the parts.',
  },
  // results: the window of one circuit
  frontBoreLow: { name: 'smallest front bore with the volume', symbol: 'd_minf', dimension: 'length' },
  frontBoreHigh: { name: 'largest front bore the driver can push', symbol: 'd_maxf', dimension: 'length' },
  rearBoreLow: { name: 'smallest rear bore with the volume', symbol: 'd_minr', dimension: 'length' },
  rearBoreHigh: { name: 'largest rear bore the driver can push', symbol: 'd_maxr', dimension: 'length' },
  frontPressureAsked: { name: 'front line pressure the stop asks for', symbol: 'p_zf', dimension: 'pressure' },
  rearPressureAsked: { name: 'rear line pressure the stop asks for', symbol: 'p_zr', dimension: 'pressure' },
  frontVolumeAsked: { name: 'front fluid the stop asks for', symbol: 'V_zf', dimension: 'volume' },
  rearVolumeAsked: { name: 'rear fluid the stop asks for', symbol: 'V_zr', dimension: 'volume' },
  frontClevisForce: { name: 'front rod’s part of the weakest driver’s push', symbol: 'F_cf', dimension: 'force' },
  rearClevisForce: { name: 'rear rod’s part of the weakest driver’s push', symbol: 'F_cr', dimension: 'force' },
  // results: the best set
  bestFrontBore: { name: 'front bore of the best set found', symbol: 'd_bf', dimension: 'length' },
  bestRearBore: { name: 'rear bore of the best set found', symbol: 'd_br', dimension: 'length' },
  bestPedalRatio: { name: 'pedal ratio of the best set found', symbol: 'i_best', dimension: 'ratio' },
  bestFrontShare: { name: 'front share of the best set found', symbol: 's_best', dimension: 'share' },
  bestEffort: { name: 'foot force at the target rate', symbol: 'F_z', dimension: 'force' },
  bestPadTravel: { name: 'pedal travel at the target rate', symbol: 'T_z', dimension: 'length' },
  limitsMet: { name: 'limits the best set found meets, of twelve', symbol: 'n_met', dimension: 'count' },
  pairsPassing: { name: 'pairs of bores that meet every limit', symbol: 'n_pass', dimension: 'count' },
  ladenEffort: { name: 'foot force at the target rate, loaded', symbol: 'F_z,p', dimension: 'force' },
  strokeLead: { name: 'front clevis ahead of the rear one at the target rate', symbol: 'x_Δ', dimension: 'length' },
} as const satisfies Record<string, Entry>;
