import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { bar, cm3, deg, inch, mm, psi } from '../../units/si.ts';

const bore = {
  dimension: 'length', standard: 'bores',
  usual: { min: 0.6 * inch, max: 1.05 * inch, source: commonPractice },
  hard: { min: 12 * mm, max: 30 * mm, reason: 'master cylinder bores lie between 12 and 30 mm' },
  measure: 'Cast or stamped on the body; to be sure, the piston under calipers.', tolerance: { relative: 0.002 },
} as const;
const stroke = {
  dimension: 'length',
  usual: { min: 25 * mm, max: 38 * mm, source: commonPractice },
  hard: { min: 3 * mm, max: 100 * mm, reason: 'a master strokes between 3 and 100 mm' },
  measure: 'Depth gauge on the bare master: rest to bottom.', tolerance: { absolute: 0.5 * mm },
} as const;
const takeUp = {
  dimension: 'volume',
  usual: { min: 0.3 * cm3, max: 4 * cm3, source: commonPractice },
  hard: { min: 0, max: 50 * cm3, reason: 'the fluid needed before pressure builds is between 0 and 50 cm³' },
  measure: 'Per caliper: floating, piston area of its one side times both brake pads’ gaps; opposed, area of all pistons, both sides, times one pad’s gap. Two calipers per axle, plus air. Or the stroke at first pressure, less the stroke that closes the port, times bore area.', tolerance: { relative: 0.2 },
} as const;
const compliance = {
  dimension: 'compliance',
  usual: { min: 0.01 * cm3 / bar, max: 0.15 * cm3 / bar, source: commonPractice },
  hard: { min: 0, max: 2 * cm3 / bar, reason: 'brake lines swell by 0 to 2 cm³ for each bar' },
  measure: 'Stroke and pressure read together at two foot forces: extra stroke times bore area, divided by extra pressure.', tolerance: { relative: 0.2 },
} as const;

/** Master cylinders, balance bar, lines, rear valve. */
export const hydraulics = {
  frontMasterBore: { name: 'front master cylinder bore', symbol: 'd_mf', ...bore },
  rearMasterBore: { name: 'rear master cylinder bore', symbol: 'd_mr', ...bore },
  frontMasterStroke: { name: 'front master stroke, rest to bottom', symbol: 'x_maxf', ...stroke },
  rearMasterStroke: { name: 'rear master stroke, rest to bottom', symbol: 'x_maxr', ...stroke },
  masterSpring: {
    name: 'return spring in each master', symbol: 'F_ret', dimension: 'force',
    usual: { min: 0, max: 40, source: 'from memory, not checked against a text' },
    hard: { min: 0, max: 500, reason: 'a master’s return spring is between 0 and 112 lbf' },
    measure: 'Push the dry master’s piston against a kitchen scale.', tolerance: { absolute: 5 },
  },
  portStroke: {
    name: 'stroke that closes the port', symbol: 'x_0', dimension: 'length',
    usual: { min: 0.8 * mm, max: 1.5 * mm, source: commonPractice },
    hard: { min: 0, max: 15 * mm, reason: 'the port closes within the first 15 mm' },
    measure: 'Rod movement until the reservoir stops spurting.', tolerance: { absolute: 0.2 * mm },
  },
  frontTakeUp: { name: 'front fluid taken up before pressure', symbol: 'V_0f', ...takeUp },
  rearTakeUp: { name: 'rear fluid taken up before pressure', symbol: 'V_0r', ...takeUp },
  frontCompliance: { name: 'front fluid per pressure (swell)', symbol: 'k_f', ...compliance },
  rearCompliance: { name: 'rear fluid per pressure (swell)', symbol: 'k_r', ...compliance },
  frontShare: {
    name: 'front share of the rod force', symbol: 's_f', dimension: 'share',
    usual: { min: 0.35, max: 0.65, source: commonPractice + '; outside it change bores' },
    hard: { min: 0.02, max: 0.98, reason: 'each master needs some of the force: the front share lies between 2 and 98 %' },
    measure: 'From the bar: pivot to rear clevis, divided by clevis spacing.', tolerance: { absolute: 0.01 },
  },
  barSpacing: {
    name: 'clevis spacing on the bar', symbol: 'L_b', dimension: 'length',
    usual: { min: 55 * mm, max: 70 * mm, source: commonPractice },
    hard: { min: 15 * mm, max: 300 * mm, reason: 'the clevises stand between 15 and 300 mm apart' },
    measure: 'Calipers between the clevis centers on the bar.', tolerance: { absolute: 0.3 * mm },
  },
  barOffset: {
    name: 'bar pivot off center, + toward the front master’s clevis', symbol: 'u', dimension: 'length',
    usual: { min: -10 * mm, max: 10 * mm, source: commonPractice },
    hard: { min: -150 * mm, max: 150 * mm, reason: 'the pivot must stay between the clevises' },
    measure: 'Turns from center times thread pitch, checked with calipers from the pivot’s center to each clevis.', tolerance: { absolute: 0.3 * mm },
  },
  barRestLead: {
    name: 'front clevis ahead of the rear one at rest', symbol: 'e_b', dimension: 'length',
    usual: { min: -8 * mm, max: 8 * mm, source: commonPractice },
    hard: { min: -100 * mm, max: 100 * mm, reason: 'the clevises stand within 100 mm of square' },
    measure: 'Pedal on its up-stop: straightedge square to the bores at one clevis, calipers to the other. + when the front one is nearer its master, − when the rear one is.', tolerance: { absolute: 0.5 * mm },
  },
  barStopAngle: {
    name: 'bar tilt at its stop', symbol: 'α_s', dimension: 'angle',
    usual: { min: 8 * deg, max: 16 * deg, source: commonPractice },
    hard: { min: 0, max: 60 * deg, reason: 'a bar stops somewhere between 0 and 60 degrees' },
    measure: 'Masters off the rods: swing the bar by hand to each stop, angle finder on it.', tolerance: { absolute: 1 * deg },
  },
  barStop: {
    name: 'bar stop', options: { fitted: 'stops the bar both ways', none: 'no stop' },
    measure: 'Masters off the rods: swing the bar by hand. Steel must meet steel, the same way each time. A tack of weld or a jammed clevis is no stop.',
  },
  deadCircuit: {
    name: 'circuit that is dead', options: { front: 'front (look at the rear brakes alone)', rear: 'rear (look at the front brakes alone)' },
    measure: 'Look at both. The results give both; the picture and the list of events show the one chosen here.',
  },
  barPinOffset: {
    name: 'clevis-pin line ahead of the pivot', symbol: 'd', dimension: 'length',
    usual: { min: -3 * mm, max: 3 * mm, source: commonPractice },
    hard: { min: -40 * mm, max: 40 * mm, reason: 'the clevis line passes within 40 mm of the pivot' },
    measure: 'Straightedge through both clevis centers: + when that line stands ahead of the pivot, toward the masters; − when the pivot stands ahead of it.', tolerance: { absolute: 0.3 * mm },
  },
  barBearingRadius: {
    name: 'bar bearing radius', symbol: 'r_b', dimension: 'length',
    usual: { min: 7 * mm, max: 13 * mm, source: commonPractice },
    hard: { min: 1 * mm, max: 40 * mm, reason: 'the bearing’s radius is between 1 and 40 mm' },
    measure: 'Half of the ball or bearing diameter, calipers.', tolerance: { absolute: 0.2 * mm },
  },
  barFriction: {
    name: 'bar bearing friction', symbol: 'μ_b', dimension: 'friction',
    usual: { min: 0.05, max: 0.2, source: 'from memory: 0.05 greased, 0.2 dry' },
    hard: { min: 0, max: 1, reason: 'bearing friction lies between 0 and 1' },
    measure: 'Not measured directly: gauges read pushing harder, then easing off, show it as hysteresis.', tolerance: { relative: 0.3 },
  },
  threadPitch: {
    name: 'bar travel per turn', symbol: 'P_b', dimension: 'length',
    usual: { min: 1 * mm, max: 1.6 * mm, source: commonPractice },
    hard: { min: 0.2 * mm, max: 5 * mm, reason: 'a thread advances 0.2 to 5 mm per turn' },
    measure: 'Ten turns, calipers, divide by ten.', tolerance: { relative: 0.01 },
  },
  masterSpacing: {
    name: 'spacing of the master bores', symbol: 'L_m', dimension: 'length',
    usual: { min: 55 * mm, max: 75 * mm, source: commonPractice },
    hard: { min: 15 * mm, max: 300 * mm, reason: 'the masters stand between 15 and 300 mm apart' },
    measure: 'Calipers between bore centers at the flanges.', tolerance: { absolute: 0.5 * mm },
  },
  rearValve: {
    name: 'rear proportioning valve', options: { none: 'none, or wound fully open', fitted: 'fitted in the rear line' },
    measure: 'Trace the rear line from master to axle.',
  },
  kneePressure: {
    name: 'knee pressure of the rear valve', symbol: 'p_k', dimension: 'pressure',
    usual: { min: 100 * psi, max: 1000 * psi, source: 'from memory, not checked against a text' },
    hard: { min: 0, max: 4000 * psi, reason: 'the knee lies between 0 and 4,000 psi' },
    measure: 'One gauge before and one after the valve; the inlet pressure at which they part.', tolerance: { relative: 0.05 },
  },
  valveSlope: {
    name: 'slope of the rear valve above its knee', symbol: 'm_v', dimension: 'ratio',
    usual: { min: 0.25, max: 0.6, source: 'from memory, not checked against a text' },
    hard: { min: 0, max: 1, reason: 'a proportioning valve passes between none and all of the extra pressure' },
    measure: 'Gauges before and after: extra outlet pressure over extra inlet pressure.', tolerance: { relative: 0.05 },
  },
  // results
  frontShareLow: { name: 'front share, lower edge of the friction band', symbol: 's_lo', dimension: 'share' },
  frontShareHigh: { name: 'front share, upper edge of the friction band', symbol: 's_hi', dimension: 'share' },
  sharePerTurn: { name: 'front share moved by one turn of the bar', symbol: 'Δs', dimension: 'share' },
  shareTilted: { name: 'front share with the bar tilted', symbol: 's_α', dimension: 'share' },
  frictionBand: { name: 'friction band of the share, ±', symbol: 's_μ', dimension: 'share' },
  barTilt: { name: 'bar tilt, + front ahead', symbol: 'α', dimension: 'angle' },
  tiltOfStop: { name: 'tilt as a part of the way to the stop', symbol: 'q_α', dimension: 'share' },
  frontStroke: { name: 'front master stroke used', symbol: 'x_f', dimension: 'length' },
  rearStroke: { name: 'rear master stroke used', symbol: 'x_r', dimension: 'length' },
  frontSplay: { name: 'front rod off its bore, seen from above', symbol: 'ε_f', dimension: 'angle' },
  rearSplay: { name: 'rear rod off its bore, seen from above', symbol: 'ε_r', dimension: 'angle' },
  rodForce: { name: 'rod force at the balance bar', symbol: 'F_rod', dimension: 'force' },
  frontMasterArea: { name: 'front master area', symbol: 'A_mf', dimension: 'area' },
  rearMasterArea: { name: 'rear master area', symbol: 'A_mr', dimension: 'area' },
  frontPressure: {
    name: 'front line pressure', symbol: 'p_f', dimension: 'pressure',
    hard: { min: 0, max: 5000 * psi, reason: 'line pressure lies between 0 and 5,000 psi' },
    measure: 'Gauge, 0 to 3,000 psi (200 bar), in a front bleeder port.', tolerance: { relative: 0.02 }, computedTolerance: { relative: 0.05 },
  },
  rearPressure: {
    name: 'rear line pressure', symbol: 'p_r', dimension: 'pressure',
    hard: { min: 0, max: 5000 * psi, reason: 'line pressure lies between 0 and 5,000 psi' },
    measure: 'Gauge, 0 to 3,000 psi (200 bar), in a rear bleeder port.', tolerance: { relative: 0.02 }, computedTolerance: { relative: 0.05 },
  },
} as const satisfies Record<string, Entry>;
