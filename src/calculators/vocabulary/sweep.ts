import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { deg, inch, mm } from '../../units/si.ts';

const coordinate = {
  dimension: 'length',
  hard: { min: -400 * inch, max: 400 * inch, reason: 'the point lies within 400 in of the frame mark' },
} as const;
const along = { ...coordinate, measure: 'Tape from the mark on the frame: forward is +.', tolerance: { absolute: 3 * mm } } as const;
const sideways = { ...coordinate, measure: 'Plumb bob, tape from the truck’s center line: left is +.', tolerance: { absolute: 3 * mm } } as const;
const height = { ...coordinate, measure: 'Tape up from a level line through the frame mark: up is +.', tolerance: { absolute: 3 * mm } } as const;
const lock = {
  dimension: 'angle',
  usual: { min: 20 * deg, max: 42 * deg, source: commonPractice },
  hard: { min: 0, max: 80 * deg, reason: 'a wheel turns between 0 and 80° from straight' },
  measure: 'Truck on the ground, front wheels on cardboard. Chalk a line along the tire straight and at this lock; a protractor between the lines.', tolerance: { absolute: 1 * deg },
} as const;

/** Parts through every movement, and a hose to a wheel that steers. */
export const sweep = {
  sweepParts: {
    name: 'parts', row: 'part', least: 2, most: 20,
    measure: 'After the drop, at drive height, steering straight, pedal up, engine still. A straight piece with a radius for each part; a bent part takes several. A joint is its shaft and one short piece for an ear.',
    columns: {
      name: { name: 'name', letters: 24, unique: true, measure: 'Short, so that you find it again: shaft, upper ear, exhaust.' },
      on: {
        name: 'rides with',
        options: { frame: 'frame', body: 'body', engine: 'engine or exhaust', pedal: 'pedal', rod: 'pushrod', steering: 'steering shaft', frontAxle: 'front axle', rearAxle: 'rear axle' },
        measure: 'Body: masters, column, floor. Steering shaft: the shaft and its joints. Pushrod: its start at the pedal, its end where it enters the master. Axle: tie rods, hose ends, calipers.',
      },
      x1: { name: 'start, forward', ...along },
      y1: { name: 'start, left', ...sideways },
      z1: { name: 'start, up', ...height },
      x2: { name: 'end, forward', ...along },
      y2: { name: 'end, left', ...sideways },
      z2: { name: 'end, up', ...height },
      radius: {
        name: 'radius', dimension: 'length', usual: { min: 0, max: 4 * inch, source: commonPractice },
        hard: { min: 0, max: 40 * inch, reason: 'a radius lies between 0 and 40 in' }, measure: 'Half the diameter, calipers. 0 for an edge.',
      },
      touches: { name: 'meant to touch', labelIn: 'sweepParts', optional: true, measure: 'A part it is joined to, so that the two are not compared: an ear and its shaft, a rod and its pedal.' },
    },
  },
  engineRoll: {
    name: 'engine roll, each way', symbol: 'θ_e', dimension: 'angle', usual: { min: 1 * deg, max: 6 * deg, source: commonPractice },
    hard: { min: 0, max: 30 * deg, reason: 'an engine on its mounts rolls between 0 and 30°' },
    measure: 'A ruler taped beside the pipe, filmed while a helper loads the engine as the guide says: the ruler’s reading over the distance to the roll line is the sine of the roll.', tolerance: { absolute: 0.5 * deg },
  },
  rollLineSide: { name: 'line the engine rolls about, sideways', symbol: 'y_e', ...sideways, usual: { min: -6 * inch, max: 6 * inch, source: commonPractice }, measure: 'About the crankshaft: the middle of the crank pulley, taped from the truck’s center line. Left is +.', tolerance: { absolute: 25 * mm } },
  rollLineHeight: { name: 'line the engine rolls about, height', symbol: 'z_e', ...height, usual: { min: 4 * inch, max: 20 * inch, source: commonPractice }, measure: 'About the crankshaft: the middle of the crank pulley, taped up from the level line through the frame mark.', tolerance: { absolute: 25 * mm } },
  mountSideways: {
    name: 'body moves sideways on its mounts, each way', symbol: 'm_y', dimension: 'length', usual: { min: 0, max: 8 * mm, source: `${commonPractice}: 1/8 in (3 mm)` },
    hard: { min: 0, max: 2 * inch, reason: 'rubber mounts move between 0 and 2 in' }, measure: 'A helper levers the cab sideways at a mount with a bar while you watch a ruler on the rail.', tolerance: { absolute: 1 * mm },
  },
  mountForeAft: {
    name: 'body moves forward and back on its mounts, each way', symbol: 'm_x', dimension: 'length', usual: { min: 0, max: 10 * mm, source: `${commonPractice}: 1/8 in (3 mm), more on old rubber` },
    hard: { min: 0, max: 2 * inch, reason: 'rubber mounts move between 0 and 2 in' }, measure: 'A helper levers the cab forward and back at a mount with a bar while you watch a ruler on the rail. A hard stop moves it forward as far as the rubber lets it.', tolerance: { absolute: 1 * mm },
  },
  pivotStation: { name: 'pedal pivot, fore and aft', symbol: 'x_pv', ...along },
  pivotHeight: { name: 'pedal pivot, height', symbol: 'z_pv', ...height },
  pedalSwing: {
    name: 'swing of the pedal, up-stop to floor', symbol: 'α_pd', dimension: 'angle', usual: { min: 15 * deg, max: 40 * deg, source: commonPractice },
    hard: { min: -70 * deg, max: 70 * deg, reason: 'a pedal swings less than 70°' },
    measure: 'Angle finder on the arm, up and down to the floor, as with a dead circuit. + if its pad hangs below the pivot, − if the pivot is at the floor.', tolerance: { absolute: 1 * deg },
  },
  hoseFrameX: { name: 'hose on the frame, fore and aft', symbol: 'x_h1', ...along },
  hoseFrameY: { name: 'hose on the frame, sideways', symbol: 'y_h1', ...sideways },
  hoseFrameZ: { name: 'hose on the frame, height', symbol: 'z_h1', ...height },
  hoseWheelX: { name: 'hose at the wheel, fore and aft, steering straight', symbol: 'x_h2', ...along },
  hoseWheelY: { name: 'hose at the wheel, sideways, steering straight', symbol: 'y_h2', ...sideways },
  hoseWheelZ: { name: 'hose at the wheel, height, steering straight', symbol: 'z_h2', ...height },
  kingpinLowX: { name: 'lower ball joint, fore and aft', symbol: 'x_k1', ...along },
  kingpinLowY: { name: 'lower ball joint, sideways', symbol: 'y_k1', ...sideways },
  kingpinLowZ: { name: 'lower ball joint, height', symbol: 'z_k1', ...height },
  kingpinHighX: { name: 'upper ball joint, fore and aft', symbol: 'x_k2', ...along },
  kingpinHighY: { name: 'upper ball joint, sideways', symbol: 'y_k2', ...sideways },
  kingpinHighZ: { name: 'upper ball joint, height', symbol: 'z_k2', ...height },
  lockLeft: { name: 'this wheel’s angle at full left lock', symbol: 'δ_l', ...lock },
  lockRight: { name: 'this wheel’s angle at full right lock', symbol: 'δ_r', ...lock },
  hoseOwnLength: {
    name: 'free length of the hose', symbol: 'ℓ_h', dimension: 'length', usual: { min: 6 * inch, max: 30 * inch, source: commonPractice },
    hard: { min: 1 * inch, max: 100 * inch, reason: 'the hose is between 1 and 100 in long' }, measure: 'Laid straight, from where it leaves one fitting to where it enters the other: what can bend.', tolerance: { absolute: 3 * mm },
  },
  hoseOutside: {
    name: 'outside diameter of the hose', symbol: 'd_hose', dimension: 'length', usual: { min: 6 * mm, max: 16 * mm, source: commonPractice },
    hard: { min: 1 * mm, max: 4 * inch, reason: 'the diameter lies between 1 mm and 4 in' }, measure: 'Calipers over the outside of the hose.', tolerance: { absolute: 0.3 * mm },
  },
  // results: the sweep
  sweepLeast: { name: 'least gap through every movement, less twice the measuring error', symbol: 'c_s', dimension: 'length' },
  sweepGap: { name: 'gap of that pair in its worst state', symbol: 'c_w', dimension: 'length' },
  sweepGapError: { name: 'measuring error of that gap (two times in three)', symbol: 'σ_w', dimension: 'length' },
  sweepFloor: { name: 'gap of that pair that no state between the steps can be below', symbol: 'c_fl', dimension: 'length' },
  pairsTooNear: { name: 'pairs with less than 6 mm left', symbol: 'n_6', dimension: 'count' },
  pairsToWatch: { name: 'pairs with 6 to 12 mm left', symbol: 'n_12', dimension: 'count' },
  pairsNearEngine: { name: 'pairs with less than 25 mm left to engine or exhaust', symbol: 'n_25', dimension: 'count' },
  pairsSwept: { name: 'pairs compared', symbol: 'n_pr', dimension: 'count' },
  statesSwept: { name: 'states of the truck', symbol: 'n_st', dimension: 'count' },
  // results: the hose
  hoseLeastSlack: { name: 'least slack of the hose at any height and lock, − is too short', symbol: 'e_h', dimension: 'length' },
  hoseFarthest: { name: 'farthest apart its ends come', symbol: 'd_hmax', dimension: 'length' },
  hoseNearest: { name: 'nearest its ends come', symbol: 'd_hmin', dimension: 'length' },
  hoseKinkDistance: { name: 'nearest its ends may come: below it no route is gentle enough', symbol: 'd_hk', dimension: 'length' },
  hoseLeastBend: { name: 'bend radius to keep: five outside diameters', symbol: 'R_5', dimension: 'length' },
} as const satisfies Record<string, Entry>;
