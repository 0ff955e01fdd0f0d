import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { inch, mm } from '../../units/si.ts';

const station = {
  dimension: 'length',
  hard: { min: -400 * inch, max: 400 * inch, reason: 'the point lies within 400 in of the reference' },
  measure: 'Tape from the front axle line or a punch mark on the frame: forward is +.', tolerance: { absolute: 3 * mm },
} as const;
const height = { ...station, measure: 'Tape up from a level line through the frame mark: up is +.' } as const;
const lateral = { ...station, measure: 'Tape from the truck’s center line: left is +.' } as const;
const radius = {
  dimension: 'length',
  usual: { min: 0, max: 4 * inch, source: commonPractice },
  hard: { min: 0, max: 40 * inch, reason: 'a radius lies between 0 and 40 in' },
  measure: 'Half the diameter, calipers; for a joint, the circle its ears sweep.', tolerance: { absolute: 1 * mm },
} as const;
const rideHeight = {
  dimension: 'length',
  usual: { min: -8 * inch, max: 8 * inch, source: commonPractice },
  hard: { min: -24 * inch, max: 24 * inch, reason: 'the suspension moves within 24 in of drive height' },
  measure: 'Tape, frame to ground at the axle, compared with drive height; + is up.', tolerance: { absolute: 3 * mm },
} as const;

/** The body drop, points on body and frame, straight parts with a radius. */
export const geometry = {
  bodyDropType: {
    name: 'kind of body drop',
    options: { channeled: 'channeled (floor cut and raised inside the body)', stock: 'stock floor (frame and tunnel reworked under it)' },
    measure: 'Your plan. Channeled, pedals, rim and roof come down toward floor and seat; stock, all of them come down together.',
  },
  cabFrontStation: { name: 'front cab mount, fore and aft', symbol: 'x_cf', ...station },
  cabRearStation: { name: 'rear cab mount, fore and aft', symbol: 'x_cr', ...station },
  bodyPointStation: { name: 'point on the body, fore and aft', symbol: 'x_B', ...station },
  bodyPointHeight: { name: 'point on the body, height before the drop', symbol: 'z_B', ...height },
  framePointStation: { name: 'point on the frame, fore and aft', symbol: 'x_F', ...station },
  framePointHeight: { name: 'point on the frame, height', symbol: 'z_F', ...height },
  frameMarkHeight: {
    name: 'frame mark above the road before the drop', symbol: 'h_m0', dimension: 'length',
    usual: { min: 7 * inch, max: 20 * inch, source: commonPractice },
    hard: { min: 0, max: 60 * inch, reason: 'the mark on the frame stands between 0 and 60 in above the road' },
    measure: 'Tape from the mark down to a level floor, truck at its old drive height, driver in. Put the mark at the rail’s lower edge.', tolerance: { absolute: 3 * mm },
  },
  airedOutFront: { name: 'front ride height aired out or at full bump', symbol: 'a_f', ...rideHeight },
  airedOutRear: { name: 'rear ride height aired out or at full bump', symbol: 'a_r', ...rideHeight },
  liftedFront: { name: 'front ride height lifted or at full droop', symbol: 'l_f', ...rideHeight },
  liftedRear: { name: 'rear ride height lifted or at full droop', symbol: 'l_r', ...rideHeight },
  firstStartX: { name: 'first part, start, fore and aft', symbol: 'x_1', ...station },
  firstStartY: { name: 'first part, start, sideways', symbol: 'y_1', ...lateral },
  firstStartZ: { name: 'first part, start, height', symbol: 'z_1', ...height },
  firstEndX: { name: 'first part, end, fore and aft', symbol: 'x_2', ...station },
  firstEndY: { name: 'first part, end, sideways', symbol: 'y_2', ...lateral },
  firstEndZ: { name: 'first part, end, height', symbol: 'z_2', ...height },
  firstRadius: { name: 'first part, radius', symbol: 'r_1', ...radius },
  secondStartX: { name: 'second part, start, fore and aft', symbol: 'x_3', ...station },
  secondStartY: { name: 'second part, start, sideways', symbol: 'y_3', ...lateral },
  secondStartZ: { name: 'second part, start, height', symbol: 'z_3', ...height },
  secondEndX: { name: 'second part, end, fore and aft', symbol: 'x_4', ...station },
  secondEndY: { name: 'second part, end, sideways', symbol: 'y_4', ...lateral },
  secondEndZ: { name: 'second part, end, height', symbol: 'z_4', ...height },
  secondRadius: { name: 'second part, radius', symbol: 'r_2', ...radius },
  positionError: {
    name: 'measuring error of one end', symbol: 'σ', dimension: 'length',
    usual: { min: 1 * mm, max: 8 * mm, source: commonPractice },
    hard: { min: 0, max: 4 * inch, reason: 'the measuring error lies between 0 and 4 in' },
    measure: 'Measure the same point three times on different days; half the spread. 5 mm is honest for tape under a truck.',
  },
  // results: body drop
  distanceBefore: { name: 'distance from the body point to the frame point before the drop', symbol: 'd_0', dimension: 'length' },
  distanceAfter: { name: 'distance from the body point to the frame point after the drop', symbol: 'd_1', dimension: 'length' },
  distanceChange: { name: 'change of the distance from body point to frame point, − is closer', symbol: 'Δd', dimension: 'length' },
  bodyPitch: { name: 'turn of the body over the frame, + nose up', symbol: 'θ_b', dimension: 'angle' },
  bodyPointStationAfter: { name: 'point on the body, fore and aft after the drop', symbol: 'x_B1', dimension: 'length' },
  bodyPointHeightAfter: { name: 'point on the body, height after the drop', symbol: 'z_B1', dimension: 'length' },
  framePitchAiredOut: { name: 'turn of the frame aired out, + nose up', symbol: 'φ_a', dimension: 'angle' },
  framePointClearance: { name: 'point on the frame above the road, aired out', symbol: 'c_F', dimension: 'length' },
  // results: clearance
  leastGap: { name: 'least gap between the two parts', symbol: 'c', dimension: 'length' },
  leastGapLessError: { name: 'least gap less twice the measuring error', symbol: 'c_2σ', dimension: 'length' },
  gapError: { name: 'measuring error of the gap (two times in three)', symbol: 'σ_c', dimension: 'length' },
  axisDistance: { name: 'distance between the two center lines', symbol: 'd_c', dimension: 'length' },
  firstFraction: { name: 'nearest place on the first part, from its start', symbol: 's_1', dimension: 'share' },
  secondFraction: { name: 'nearest place on the second part, from its start', symbol: 's_2', dimension: 'share' },
} as const satisfies Record<string, Entry>;
