import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { deg, inch, mm } from '../../units/si.ts';

const coordinate = {
  dimension: 'length',
  hard: { min: -400 * inch, max: 400 * inch, reason: 'the mark lies within 400 in of the frame mark' },
  tolerance: { absolute: 2 * mm },
} as const;
const width = { dimension: 'length', hard: { min: 0.5 * inch, max: 20 * inch, reason: 'a pedal pad is between 0.5 and 20 in wide' }, tolerance: { absolute: 1 * mm } } as const;
const spacing = { dimension: 'length', hard: { min: 0, max: 40 * inch, reason: 'pedals stand 0 to 40 in apart' }, tolerance: { absolute: 3 * mm } } as const;
const bone = { dimension: 'length', hard: { min: 4 * inch, max: 30 * inch, reason: 'a leg bone or foot is between 4 and 30 in long' } } as const;

/** Where the pedals are, over which floor, and how the driver's leg meets them. */
export const placement = {
  padMarks: {
    name: 'marks the pedal pad was taped from', row: 'mark', least: 1, most: 8,
    measure: 'Punch marks or bolt heads that stay: dash, cowl, pillar, seat bolt. Their places from the frame mark: forward, left and up are +. The distance by tape, straight, to the middle of the pad.',
    columns: {
      name: { name: 'name', letters: 24, unique: true, measure: 'Short: dash bolt left, seat bolt.' },
      x: { name: 'x, forward', ...coordinate, measure: 'Tape along the truck from the frame mark: forward is +.' },
      y: { name: 'y, left', ...coordinate, measure: 'From the truck’s center line: left is +.' },
      z: { name: 'z, up', ...coordinate, measure: 'Up from a level line through the frame mark: up is +.' },
      distance: {
        name: 'distance to the pad', dimension: 'length',
        usual: { min: 4 * inch, max: 60 * inch, source: commonPractice },
        hard: { min: 0.5 * inch, max: 200 * inch, reason: 'the pad is between 0.5 and 200 in from a mark' },
        measure: 'Tape, straight, pulled tight, from the mark to the middle of the pad. Three times.', tolerance: { absolute: 2 * mm },
      },
    },
  },
  padMethod: {
    name: 'how the pad was measured',
    options: { space: 'three marks or more', plane: 'two marks and how far left it is', floor: 'one mark, its height over the floor and how far left it is' },
    measure: 'Three marks see it alone, four say how well. With fewer, measure the rest by plumb bob and rule.',
  },
  padLateral: { name: 'middle of the pedal pad, left of the center line', symbol: 'y_p', ...coordinate, usual: { min: 4 * inch, max: 24 * inch, source: commonPractice }, measure: 'Plumb bob from the pad to the floor, tape to the center line: left is +.' },
  padBareHeight: {
    name: 'middle of the pedal pad, height', symbol: 'z_pb', ...coordinate,
    measure: 'Rule from the bare floor to the middle of the pad, plus the floor’s own height over the level line through the frame mark.',
  },
  padSide: {
    name: 'which of two places it is',
    options: { lower: 'the lower one', higher: 'the higher one', forward: 'the forward one', rearward: 'the rearward one' },
    measure: 'Marks in one plane see the pad and its image on the other side alike. You know on which side of them it hangs.',
  },
  tapeError: {
    name: 'error of the tape', symbol: 'σ_t', dimension: 'length',
    usual: { min: 0.5 * mm, max: 6 * mm, source: commonPractice },
    hard: { min: 0, max: 2 * inch, reason: 'a tape is wrong by 0 to 2 in' }, measure: 'Measure one distance three times on different days; half the spread.',
  },
  markError: {
    name: 'error of a mark’s own place', symbol: 'σ_k', dimension: 'length',
    usual: { min: 0, max: 8 * mm, source: commonPractice },
    hard: { min: 0, max: 2 * inch, reason: 'a mark’s place is wrong by 0 to 2 in' }, measure: 'The same for the marks. Zero if you only want the pad against these same marks again.',
  },
  padX: { name: 'pedal pad, fore and aft', symbol: 'x_pp', dimension: 'length' },
  padY: { name: 'pedal pad, left of the center line', symbol: 'y_pp', dimension: 'length' },
  padZ: { name: 'pedal pad, height', symbol: 'z_p', dimension: 'length' },
  padErrorX: { name: 'error of the pad’s place, fore and aft', symbol: 'σ_px', dimension: 'length' },
  padErrorY: { name: 'error of the pad’s place, sideways', symbol: 'σ_py', dimension: 'length' },
  padErrorZ: { name: 'error of the pad’s place, in height', symbol: 'σ_pz', dimension: 'length' },
  padErrorLong: { name: 'error of the pad’s place, in its worst direction', symbol: 'σ_max', dimension: 'length' },
  padWeakness: { name: 'times the error of one measurement', symbol: 'k_w', dimension: 'ratio' },
  padResidual: { name: 'largest miss of a measurement', symbol: 'e_max', dimension: 'length' },
  placesFound: { name: 'places that fit', symbol: 'n_pl', dimension: 'count' },

  pivotOverFloor: {
    name: 'pedal pivot over the bare floor', symbol: 'z_v', dimension: 'length',
    usual: { min: 12 * inch, max: 26 * inch, source: commonPractice },
    hard: { min: 2 * inch, max: 60 * inch, reason: 'the pivot is between 2 and 60 in over the floor' },
    measure: 'Rule from the pivot’s center straight down to bare metal; on a toe board, to the level of the flat floor behind it.', tolerance: { absolute: 2 * mm },
  },
  toeBoardStart: {
    name: 'start of the toe board ahead of the pivot', symbol: 'x_tb', dimension: 'length',
    usual: { min: -10 * inch, max: 10 * inch, source: commonPractice },
    hard: { min: -40 * inch, max: 40 * inch, reason: 'the toe board starts within 40 in of the pivot' },
    measure: 'Plumb bob from the pivot, tape along the floor to the bend where it turns up: ahead of the bob is +, behind it −.', tolerance: { absolute: 3 * mm },
  },
  toeBoardSlope: {
    name: 'slope of the toe board', symbol: 'τ_b', dimension: 'angle',
    usual: { min: 25 * deg, max: 75 * deg, source: commonPractice },
    hard: { min: 0, max: 85 * deg, reason: 'a toe board leans between 0 and 85 degrees from the floor' },
    measure: 'Angle finder on the toe board, zeroed on the floor.', tolerance: { absolute: 1 * deg },
  },
  padRestAngle: {
    name: 'pad arm at rest, forward of straight down', symbol: 'φ_p', dimension: 'angle',
    usual: { min: -30 * deg, max: 10 * deg, source: commonPractice },
    hard: { min: -60 * deg, max: 45 * deg, reason: 'a hung pedal rests between 60 degrees back and 45 forward' },
    measure: 'Angle finder on a string from pivot to pad center, against a plumb line. Minus when the pad hangs back toward the driver.', tolerance: { absolute: 1 * deg },
  },
  padToEdge: {
    name: 'pad center to its lower edge', symbol: 'e_p', dimension: 'length',
    usual: { min: 0.6 * inch, max: 2.5 * inch, source: commonPractice },
    hard: { min: 0, max: 8 * inch, reason: 'a pad reaches 0 to 8 in below its center' }, measure: 'Rule on the pad, down its face, to the edge that would touch first.', tolerance: { absolute: 1 * mm },
  },
  floorLayers: {
    name: 'layers of the finished floor', row: 'layer', least: 0, most: 8,
    measure: 'Stack samples of what will lie on the metal and stand on them in your boots.',
    columns: {
      name: { name: 'layer', letters: 24, measure: 'Liner, deadener, foam, carpet, mat.' },
      thickness: { name: 'thickness, loose', dimension: 'length', usual: { min: 0.5 * mm, max: 1.2 * inch, source: commonPractice }, hard: { min: 0, max: 6 * inch, reason: 'a layer is 0 to 6 in thick' }, measure: 'Rule at the cut edge, not pressed.', tolerance: { relative: 0.1 } },
      left: { name: 'left under a boot', dimension: 'share', hard: { min: 0, max: 1, reason: 'between nothing and all of a layer is left' }, measure: 'Stand on it on a bathroom scale, about 55 lbf under the heel: thickness then over thickness loose. Carpet about 50 %, foam 30 %, mat 90 % (common practice, no source).', tolerance: { absolute: 0.08 } },
    },
  },
  failedPadTravel: {
    name: 'pedal travel with a circuit dead', symbol: 'T_dead', dimension: 'length',
    usual: { min: 1 * inch, max: 8 * inch, source: commonPractice },
    hard: { min: 0, max: 30 * inch, reason: 'a pedal travels 0 to 30 in' },
    measure: 'The circuit failure calculator gives it for either side: take the longer. Or open one bleeder, push, and tape it.', tolerance: { absolute: 4 * mm },
  },
  stackLoose: { name: 'finished floor, loose', symbol: 't_ls', dimension: 'length' },
  stackPressed: { name: 'finished floor under a boot', symbol: 't_c', dimension: 'length' },
  padOverHeel: {
    name: 'pedal pad over the heel’s floor', symbol: 'h_heel', dimension: 'length',
    usual: { min: 3 * inch, max: 9 * inch, source: commonPractice }, hard: { min: -10 * inch, max: 40 * inch, reason: 'the pad stands within 40 in of the floor' },
    measure: 'The page on the pedal over the finished floor gives it; or rule from where the heel rests, boot on, to the level of the pad’s middle.', tolerance: { absolute: 4 * mm },
  },
  padOverBare: { name: 'pedal pad over the bare floor', symbol: 'h_bare', dimension: 'length' },
  carpetAtRest: { name: 'pedal to carpet at rest', symbol: 'c_0', dimension: 'length' },
  carpetAtHard: { name: 'pedal to carpet in a hard stop', symbol: 'c_h', dimension: 'length' },
  carpetAtFailed: { name: 'pedal to carpet with a circuit dead', symbol: 'c_d', dimension: 'length' },
  travelToCarpet: { name: 'pedal travel until it meets the carpet', symbol: 'T_m', dimension: 'length' },

  throttleToBrake: { name: 'throttle to brake, centers', symbol: 's_tb', ...spacing, usual: { min: 3 * inch, max: 7 * inch, source: commonPractice }, measure: 'Tape between the middles of the two pads, sideways only.' },
  brakeToClutch: { name: 'brake to clutch, centers', symbol: 's_bc', ...spacing, usual: { min: 3.5 * inch, max: 8 * inch, source: commonPractice }, measure: 'Tape between the middles of the two pads, sideways only.' },
  clutchToSide: { name: 'clutch center to the side trim', symbol: 's_cs', ...spacing, usual: { min: 2.5 * inch, max: 10 * inch, source: commonPractice }, measure: 'Tape, sideways, to the trim, the dead pedal or the parking lever, whatever comes first.' },
  throttleWidth: { name: 'throttle pad width', symbol: 'w_th', ...width, usual: { min: 1 * inch, max: 3.5 * inch, source: commonPractice }, measure: 'Rule, across the pad where it is widest.' },
  brakeWidth: { name: 'brake pedal pad width', symbol: 'w_br', ...width, usual: { min: 2 * inch, max: 5 * inch, source: commonPractice }, measure: 'Rule, rubber included.' },
  clutchWidth: { name: 'clutch pad width', symbol: 'w_cl', ...width, usual: { min: 2 * inch, max: 4 * inch, source: commonPractice }, measure: 'Rule, rubber included.' },
  bootWidth: { name: 'width of the boot', symbol: 'w_bt', dimension: 'length', usual: { min: 3.5 * inch, max: 5.5 * inch, source: commonPractice }, hard: { min: 2 * inch, max: 10 * inch, reason: 'a boot is between 2 and 10 in wide' }, measure: 'The driver’s own boots, at the ball, sole included.', tolerance: { absolute: 2 * mm } },
  brakeOverThrottle: {
    name: 'brake nearer the driver than the throttle, at rest', symbol: 'u_b', dimension: 'length',
    usual: { min: 0, max: 4 * inch, source: commonPractice }, hard: { min: -12 * inch, max: 20 * inch, reason: 'pads stand within 20 in of each other' },
    measure: 'Straightedge on the throttle pad, rule to the brake pad, along the pedal’s path. Minus when the brake is lower.', tolerance: { absolute: 3 * mm },
  },
  gapThrottleBrake: { name: 'free space between throttle and brake', symbol: 'g_tb', dimension: 'length' },
  gapBrakeClutch: { name: 'free space between brake and clutch', symbol: 'g_bc', dimension: 'length' },
  gapClutchSide: { name: 'free space beside the clutch', symbol: 'g_cs', dimension: 'length' },
  brakeOverHard: { name: 'brake over throttle in a hard stop', symbol: 'u_h', dimension: 'length' },
  brakeOverFailed: { name: 'brake over throttle with a circuit dead', symbol: 'u_d', dimension: 'length' },
  bootOverlap: { name: 'what a boot centered on the brake covers of the throttle', symbol: 'o_t', dimension: 'length' },

  hipBehindPad: {
    name: 'hip joint behind the pedal pad', symbol: 'x_h', dimension: 'length',
    usual: { min: 24 * inch, max: 40 * inch, source: commonPractice }, hard: { min: 5 * inch, max: 70 * inch, reason: 'the hip is between 5 and 70 in behind the pad' },
    measure: 'Driver seated, cushion settled. Plumb bob from the bony point at the side of the hip, tape along the floor to under the pad.', tolerance: { absolute: 10 * mm },
  },
  hipOverFloor: {
    name: 'hip joint over the heel’s floor', symbol: 'z_h', dimension: 'length',
    usual: { min: 6 * inch, max: 18 * inch, source: commonPractice }, hard: { min: 0, max: 50 * inch, reason: 'the hip is 0 to 50 in over the floor' },
    measure: 'Driver seated, from the same point down to the finished floor.', tolerance: { absolute: 10 * mm },
  },
  heelBehindPad: {
    name: 'heel behind the pedal pad', symbol: 'x_hl', dimension: 'length',
    usual: { min: 3 * inch, max: 9 * inch, source: commonPractice }, hard: { min: -5 * inch, max: 20 * inch, reason: 'a heel is within 20 in of the pad its foot is on' },
    measure: 'Foot on the brake as you brake, pedal up. Plumb bob from the back of the heel and from the middle of the pad, tape between.', tolerance: { absolute: 6 * mm },
  },
  heelOverFloor: {
    name: 'heel over the floor', symbol: 'z_hl', dimension: 'length',
    usual: { min: 0, max: 6 * inch, source: commonPractice }, hard: { min: 0, max: 20 * inch, reason: 'a heel is 0 to 20 in over the floor' },
    measure: 'In the same pose, rule under the heel. 0 if it rests.', tolerance: { absolute: 6 * mm },
  },
  thighLength: { name: 'thigh, hip to knee joint', symbol: 'ℓ_th', ...bone, usual: { min: 14 * inch, max: 20 * inch, source: commonPractice }, measure: 'Seated, bony point of the hip to the middle of the knee.', tolerance: { absolute: 10 * mm } },
  shinLength: { name: 'shin, knee to ankle joint', symbol: 'ℓ_sh', ...bone, usual: { min: 13 * inch, max: 19 * inch, source: commonPractice }, measure: 'Middle of the knee to the ankle bone.', tolerance: { absolute: 10 * mm } },
  ankleHeight: { name: 'ankle joint over the sole', symbol: 'h_an', dimension: 'length', usual: { min: 3 * inch, max: 5.5 * inch, source: commonPractice }, hard: { min: 1 * inch, max: 12 * inch, reason: 'an ankle is 1 to 12 in over the sole' }, measure: 'In the boots, floor to ankle bone.', tolerance: { absolute: 5 * mm } },
  kneeAtRest: { name: 'knee with the foot on the pedal', symbol: 'κ_0', dimension: 'angle' },
  kneeAtHard: { name: 'knee in a hard stop', symbol: 'κ_h', dimension: 'angle' },
  kneeAtFailed: { name: 'knee with a circuit dead', symbol: 'κ_d', dimension: 'angle' },
  ankleAtRest: { name: 'ankle with the foot on the pedal', symbol: 'ε_a0', dimension: 'angle' },
  soleLeanHard: { name: 'sole in a hard stop, forward of upright', symbol: 'λ_s', dimension: 'angle' },
  pushOffHard: { name: 'leg’s push below the pad’s way, in a hard stop', symbol: 'ω_p', dimension: 'angle' },
  soleStretch: { name: 'heel to pad in a hard stop, over pedal up', symbol: 'k_so', dimension: 'ratio' },
  ankleAtHard: { name: 'ankle in a hard stop', symbol: 'ε_h', dimension: 'angle' },

  armCut: {
    name: 'cut off the pedal arm', symbol: 'n_cut', dimension: 'length',
    usual: { min: 0, max: 4 * inch, source: commonPractice }, hard: { min: 0, max: 40 * inch, reason: 'an arm loses 0 to 40 in' },
    measure: 'From the middle of the pad now to its middle then, along the line to the pivot.', tolerance: { absolute: 1 * mm },
  },
  cutRatio: { name: 'pedal ratio after the cut', symbol: 'i_n', dimension: 'ratio' },
  cutForce: { name: 'foot force for the same stop', symbol: 'F_n', dimension: 'force' },
  cutForceMore: { name: 'foot force, times as much', symbol: 'k_n', dimension: 'ratio' },
  cutTravel: { name: 'pedal travel for the same stop', symbol: 'T_cut', dimension: 'length' },
} as const satisfies Record<string, Entry>;
