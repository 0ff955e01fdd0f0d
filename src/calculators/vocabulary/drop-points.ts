import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, mm } from '../../units/si.ts';

const coordinate = {
  dimension: 'length',
  hard: { min: -400 * inch, max: 400 * inch, reason: 'the point lies within 400 in of the frame mark' },
  tolerance: { absolute: 3 * mm },
} as const;

/** Lists of points on the truck, and of what spans them. */
export const dropPoints = {
  truckPoints: {
    name: 'points of the truck', row: 'point', least: 2, most: 40,
    measure: 'Tape from the mark on the frame, before anything is cut: forward, left and up are +. One name for each point; the pairs below use it.',
    columns: {
      name: { name: 'name', letters: 24, unique: true, measure: 'Short, so that you find it again: column end, box, front clip.' },
      on: { name: 'rides with', options: { body: 'body', floor: 'floor', frame: 'frame', frontAxle: 'front axle', rearAxle: 'rear axle' }, measure: 'Body: firewall, dash, hood, pedals, column, roof. Floor: floor, tunnel and seat. Frame: engine, steering box, tank, lines on the rails. Axle: calipers, knuckles, hose and cable ends there.' },
      x: { name: 'x, forward', ...coordinate, measure: 'Tape along the rail from the frame mark: forward is +.' },
      y: { name: 'y, left', ...coordinate, measure: 'Plumb bob and tape from the truck’s center line: left is +.' },
      z: { name: 'z, up', ...coordinate, measure: 'Tape up from a level line through the frame mark: up is +.' },
    },
  },
  pointPairs: {
    name: 'pairs of points', row: 'pair', least: 1, most: 40,
    measure: 'What runs from one of your points to another. The length is that of the line, cable or hose itself, string along it; leave it empty where you do not know it.',
    columns: {
      from: { name: 'from', labelIn: 'truckPoints', measure: 'One of your points.' },
      to: { name: 'to', labelIn: 'truckPoints', measure: 'Another one.' },
      kind: { name: 'what spans them', options: { shaft: 'shaft', line: 'brake or fuel line', cable: 'cable', hose: 'hose', gap: 'gap' }, measure: 'A gap is counted along the line between the two points: put them where the parts face each other.' },
      length: {
        name: 'its own length', dimension: 'length', optional: true,
        hard: { min: 1 * mm, max: 800 * inch, reason: 'the length lies between 1 mm and 800 in' },
        measure: 'String along the whole part, end fitting to end fitting, then tape the string.', tolerance: { absolute: 6 * mm },
      },
      diameter: {
        name: 'outside diameter', dimension: 'length', optional: true,
        usual: { min: 3 * mm, max: 3 * inch, source: commonPractice },
        hard: { min: 1 * mm, max: 12 * inch, reason: 'the diameter lies between 1 mm and 12 in' },
        measure: 'Calipers over the outside of the hose, line or cable sheath.', tolerance: { absolute: 0.5 * mm },
      },
    },
  },
  // results
  worstShortening: { name: 'largest loss between two of your points', symbol: 'Δd_max', dimension: 'length' },
  worstBefore: { name: 'distance of that pair before the drop', symbol: 'd_0max', dimension: 'length' },
  worstAfter: { name: 'distance of that pair after it, at the ride height where it is least', symbol: 'd_1max', dimension: 'length' },
  pairsCloser: { name: 'pairs that come closer', symbol: 'n_closer', dimension: 'count' },
  gapsClosed: { name: 'gaps too small for the movement of the mounts', symbol: 'n_gap', dimension: 'count' },
  partsTooShort: { name: 'lines, cables and hoses pulled tight at some ride height', symbol: 'n_short', dimension: 'count' },
  bendsTooTight: { name: 'lines, cables and hoses bent too tight at some ride height', symbol: 'n_bend', dimension: 'count' },
} as const satisfies Record<string, Entry>;
