import type { Entry } from './quantity.ts';
import { commonPractice } from './quantity.ts';
import { deg, inch, lbf, mm } from '../../units/si.ts';

const side = {
  dimension: 'length',
  usual: { min: 4 * inch, max: 24 * inch, source: commonPractice },
  hard: { min: 1 * inch, max: 80 * inch, reason: 'a firewall’s bare span is between 1 and 80 in' },
  tolerance: { absolute: 3 * mm },
} as const;
const ksi = 6894757.293168361;

/** What a foot does to the firewall, and the brace behind it. */
export const firewall = {
  mountCase: {
    name: 'how pedal and masters are held',
    options: { frame: 'pivot and masters on one rigid frame', apart: 'firewall between pivot and masters' },
    measure: 'Look: with the firewall sawn out around them, would pedal and masters still be one piece? Then it is one frame.',
  },
  dialTestForce: {
    name: 'push for the dial test', symbol: 'F_t', dimension: 'force',
    usual: { min: 50 * lbf, max: 200 * lbf, source: commonPractice + ': 100 lbf (445 N)' },
    hard: { min: 1 * lbf, max: 900 * lbf, reason: 'a foot pushes with between nothing and about 900 lbf' },
    measure: 'The push you will use on the truck, with a scale between foot and pedal.', tolerance: { relative: 0.03 },
  },
  panicForce: {
    name: 'panic push on the pedal', symbol: 'F_y', dimension: 'force',
    usual: { min: 300 * lbf, max: 500 * lbf, source: 'Formula SAE Rules 2026 T.3 build for 2,000 N (450 lbf); 300 lbf is common practice, no source' },
    hard: { min: 1 * lbf, max: 900 * lbf, reason: 'a foot pushes with between nothing and about 900 lbf' },
    measure: 'Do not measure it: 450 lbf is what a frightened adult can push with a straight leg.', tolerance: { relative: 0.1 },
  },
  clutchLegForce: {
    name: 'heaviest push on the clutch pedal', symbol: 'F_k', dimension: 'force',
    usual: { min: 30 * lbf, max: 150 * lbf, source: commonPractice + ': 90 to 115 lbf (400 to 510 N) against the stop' },
    hard: { min: 0, max: 900 * lbf, reason: 'a foot pushes with between nothing and about 900 lbf' },
    measure: 'Luggage scale on the clutch pad with the pedal held hard on its stop.', tolerance: { relative: 0.1 },
  },
  padBelowPlate: {
    name: 'pedal pad below the middle of the bolts', symbol: 'h_pp', dimension: 'length',
    usual: { min: 2 * inch, max: 14 * inch, source: commonPractice },
    hard: { min: 0, max: 40 * inch, reason: 'the pedal pad hangs 0 to 40 in below the bolts' },
    measure: 'Tape, straight down from the middle of the mounting bolts to the level of the pad’s center.', tolerance: { absolute: 3 * mm },
  },
  plateHeight: { name: 'plate height between real supports', symbol: 'b_v', ...side, measure: 'Tape between what does not move when you push on it: a bent flange, a rib, the cowl, a weld to a stiffener. The edge of a patch in bare sheet is no support.' },
  plateWidth: { name: 'plate width between real supports', symbol: 'b_h', ...side, measure: 'The same, across.' },
  plateThickness: {
    name: 'plate thickness', symbol: 't_p', dimension: 'length',
    usual: { min: 2.5 * mm, max: 6.5 * mm, source: commonPractice },
    hard: { min: 0.3 * mm, max: 40 * mm, reason: 'a plate is between 0.3 and 40 mm thick' },
    measure: 'Calipers on the edge or on a drilled slug, paint off. Where plate lies on sheet, the plate alone.', tolerance: { relative: 0.03 },
  },
  boltRowSpacing: {
    name: 'height of the bolt pattern', symbol: 'r_bp', dimension: 'length',
    usual: { min: 1.5 * inch, max: 8 * inch, source: commonPractice },
    hard: { min: 0.3 * inch, max: 40 * inch, reason: 'bolt rows are 0.3 to 40 in apart' },
    measure: 'Tape or calipers, upper row to lower row.', tolerance: { absolute: 1 * mm },
  },
  boltPatternWidth: {
    name: 'width of the bolt pattern', symbol: 'w_b', dimension: 'length',
    usual: { min: 2 * inch, max: 10 * inch, source: commonPractice },
    hard: { min: 0.3 * inch, max: 40 * inch, reason: 'a bolt pattern is 0.3 to 40 in wide' },
    measure: 'Outermost bolts, side to side.', tolerance: { absolute: 1 * mm },
  },
  boltsPerRow: {
    name: 'bolts in the upper row', symbol: 'n_bo', dimension: 'count',
    hard: { min: 1, max: 8, reason: 'a row has 1 to 8 bolts' }, measure: 'Count those of one row. Masters on bolts of their own, with the firewall between: those of one master.',
  },
  washerDiameter: {
    name: 'washer or backing under each bolt, across', symbol: 'd_w', dimension: 'length',
    usual: { min: 0.5 * inch, max: 3 * inch, source: commonPractice },
    hard: { min: 0.2 * inch, max: 10 * inch, reason: 'a washer is between 0.2 and 10 in across' },
    measure: 'Calipers. For a backing plate the width that bears around one bolt.', tolerance: { absolute: 0.5 * mm },
  },
  steelModulus: {
    name: 'stiffness of the metal (modulus of elasticity)', symbol: 'E_m', dimension: 'stress',
    usual: { min: 9500 * ksi, max: 30500 * ksi, source: 'handbook values: steel 29,000 to 30,000 ksi, aluminum 10,000' },
    hard: { min: 1000 * ksi, max: 60000 * ksi, reason: 'metals lie between 1,000 and 60,000 ksi' },
    measure: 'Any steel: 29,000 ksi (200 GPa). Aluminum: 10,000 ksi (69 GPa).', tolerance: { relative: 0.02 },
  },
  steelYield: {
    name: 'yield stress of the metal', symbol: 'σ_y', dimension: 'stress',
    usual: { min: 25 * ksi, max: 70 * ksi, source: 'handbook values for mild steel and common tube' },
    hard: { min: 2 * ksi, max: 300 * ksi, reason: 'metals yield between 2 and 300 ksi' },
    measure: 'From the mill sheet. Unknown hot-rolled plate: 36 ksi (250 MPa). Next to a weld take the soft figure.', tolerance: { relative: 0.08 },
  },
  braceHeight: {
    name: 'height of the brace over the middle of the bolts', symbol: 'h_b', dimension: 'length',
    usual: { min: 2 * inch, max: 14 * inch, source: commonPractice },
    hard: { min: 0.5 * inch, max: 40 * inch, reason: 'a brace meets the frame 0.5 to 40 in above the bolts' },
    measure: 'Tape, straight up, from the middle of the mounting bolts to where the brace meets the frame: best at the pivot.', tolerance: { absolute: 3 * mm },
  },
  braceAngle: {
    name: 'brace off the line of the foot’s push', symbol: 'φ_b', dimension: 'angle',
    usual: { min: 0, max: 45 * deg, source: commonPractice },
    hard: { min: 0, max: 85 * deg, reason: 'beyond 85 degrees a brace stands square to the push and holds nothing' },
    measure: 'Angle finder on the brace, against the line of the pushrods, at its worst in side view and from above.', tolerance: { absolute: 2 * deg },
  },
  braceLength: {
    name: 'brace length', symbol: 'L_bt', dimension: 'length',
    usual: { min: 4 * inch, max: 36 * inch, source: commonPractice },
    hard: { min: 1 * inch, max: 120 * inch, reason: 'a brace is between 1 and 120 in long' },
    measure: 'Tape between the points where it is held.', tolerance: { absolute: 3 * mm },
  },
  braceOutside: {
    name: 'brace tube, outside', symbol: 'D_bt', dimension: 'length',
    usual: { min: 0.5 * inch, max: 2 * inch, source: commonPractice },
    hard: { min: 0.1 * inch, max: 6 * inch, reason: 'a brace is between 0.1 and 6 in thick' },
    measure: 'Calipers across the tube, twice, a quarter turn apart.', tolerance: { absolute: 0.1 * mm },
  },
  braceWall: {
    name: 'brace tube, wall', symbol: 't_bt', dimension: 'length',
    usual: { min: 0.035 * inch, max: 0.25 * inch, source: commonPractice },
    hard: { min: 0.01 * inch, max: 3 * inch, reason: 'a wall is between 0.01 and 3 in thick' },
    measure: 'Calipers on the cut end, burr off. For a solid bar half the outside.', tolerance: { absolute: 0.05 * mm },
  },
  braceEnds: {
    name: 'ends of the brace',
    options: { pinned: 'bolted or on tabs: free to turn', held: 'welded to something stiff: cannot turn', loose: 'one end free to move sideways' },
    measure: 'A tab bent from sheet turns. Welded to sheet metal, call it pinned.',
  },
  weldLeg: {
    name: 'weld leg', symbol: 'a_w', dimension: 'length',
    usual: { min: 2 * mm, max: 8 * mm, source: commonPractice },
    hard: { min: 0.5 * mm, max: 30 * mm, reason: 'a fillet weld’s leg is between 0.5 and 30 mm' },
    measure: 'Fillet gauge, the smaller leg. No more than the thinner part.', tolerance: { absolute: 0.5 * mm },
  },
  weldLength: {
    name: 'sound weld at one end', symbol: 'ℓ_w', dimension: 'length',
    usual: { min: 0.75 * inch, max: 8 * inch, source: commonPractice },
    hard: { min: 0.1 * inch, max: 40 * inch, reason: 'an end carries 0.1 to 40 in of weld' },
    measure: 'Tape along the bead, less one leg for each start and stop.', tolerance: { absolute: 2 * mm },
  },

  sheetPush: { name: 'push on the firewall in the dial test', symbol: 'P_t', dimension: 'force' },
  sheetMoment: { name: 'tipping moment on the firewall in the dial test', symbol: 'M_t', dimension: 'torque' },
  panicSheetPush: { name: 'push on the firewall in a panic stop', symbol: 'P_y', dimension: 'force' },
  panicMoment: { name: 'tipping moment in a panic stop', symbol: 'M_y', dimension: 'torque' },
  plateShortSide: { name: 'short side of the plate', symbol: 'b_s', dimension: 'length' },
  bareStrip: { name: 'bare plate above and below the flange', symbol: 'ℓ_p', dimension: 'length' },
  plateFactorSoft: { name: 'plate coefficient, edges free to turn', symbol: 'α_1', dimension: 'ratio' },
  plateFactorStiff: { name: 'plate coefficient, edges held', symbol: 'α_2', dimension: 'ratio' },
  plateTurnSoft: { name: 'tipping of the plate, soft bound', symbol: 'θ_s', dimension: 'angle' },
  plateTurnStiff: { name: 'tipping of the plate, stiff bound', symbol: 'θ_c', dimension: 'angle' },
  flangeMoveSoft: { name: 'flange movement in the dial test, at most', symbol: 'w_s', dimension: 'length' },
  flangeMoveStiff: { name: 'flange movement in the dial test, at least', symbol: 'w_c', dimension: 'length' },
  padLostSoft: { name: 'pedal travel lost to it, at most', symbol: 's_p1', dimension: 'length' },
  padLostStiff: { name: 'pedal travel lost to it, at least', symbol: 's_p2', dimension: 'length' },
  plateStressSoft: { name: 'plate stress in a panic stop, edges free to turn', symbol: 'σ_1', dimension: 'stress' },
  plateStressStiff: { name: 'plate stress in a panic stop, edges held', symbol: 'σ_2', dimension: 'stress' },
  mountBoltTension: { name: 'pull on one bolt in a panic stop', symbol: 'T_b', dimension: 'force' },
  pullThrough: { name: 'shear around one washer in a panic stop', symbol: 'τ_w', dimension: 'stress' },

  braceLevel: { name: 'push of the brace along the rods', symbol: 'N_h', dimension: 'force' },
  braceAlong: { name: 'push in the brace', symbol: 'N_b', dimension: 'force' },
  braceEffectiveLength: { name: 'brace length that buckles', symbol: 'L_k', dimension: 'length' },
  braceSlenderness: { name: 'slenderness of the brace', symbol: 'λ', dimension: 'ratio' },
  slenderLimit: { name: 'slenderness where bending takes over from crushing', symbol: 'λ_0', dimension: 'ratio' },
  braceBuckling: { name: 'load at which the brace buckles', symbol: 'N_k', dimension: 'force' },
  bucklingFactor: { name: 'safety factor of the brace against buckling', symbol: 'k_b', dimension: 'ratio' },
  weldThroat: { name: 'shear in the weld at its end', symbol: 'τ_t', dimension: 'stress' },
} as const satisfies Record<string, Entry>;
