import { braceForce, bucklingLoad, weldShear } from '../../engine/brace.ts';
import { deg, inch, mm } from '../../units/si.ts';
import { loadsOf } from '../helpers/firewall.ts';
import { ends, tubes } from '../helpers/brace-show.ts';
import { defineCalculator } from '../record.ts';
import { braceScene } from '../scenes/brace.ts';

/** Repeated load on a fillet weld's throat (common practice, no source). */
const weldLimit = 70e6;

export default defineCalculator({
  id: 'firewall-brace',
  version: 1,
  title: 'Firewall brace',
  purpose: 'What a brace from the pedal frame to the cowl must carry in a panic stop, and whether the tube and its welds do.',
  inputs: [
    { title: 'Pedal', of: ['mountCase', 'pedalRatio', 'padBelowPlate', 'panicForce'] },
    { title: 'Brace', of: ['braceHeight', 'braceAngle', 'braceLength', 'braceEnds'] },
    { title: 'Tube', of: ['braceOutside', 'braceWall', 'steelModulus', 'steelYield'] },
    { title: 'Weld at one end', of: ['weldLeg', 'weldLength'] },
  ],
  outputs: ['bucklingFactor', 'braceAlong', 'braceBuckling', 'weldThroat', 'braceLevel', 'panicMoment', 'braceEffectiveLength', 'braceSlenderness', 'slenderLimit'],
  compute: (v) => {
    const over = v.braceWall - v.braceOutside / 2;
    if (over > 1e-9) return { refused: (say) => `The wall is ${say(over, 'length')} more than half of the tube. A solid bar’s wall is half its outside.` };
    const { moment, pivotPull } = loadsOf(v, v.panicForce);
    const lever = v.mountCase === 'frame' ? { moment, height: v.braceHeight } : { moment: pivotPull, height: 1 };
    const { level, along } = braceForce({ ...lever, angle: v.braceAngle });
    if (!(along > 0)) return { refused: () => (v.mountCase === 'frame' ? 'With the pad level with the bolts nothing tips the frame, and a brace has nothing to carry.' : 'At a pedal ratio of 1 nothing pulls on the pivot, and a brace has nothing to carry.') };
    const column = bucklingLoad({ length: v.braceLength, endFactor: ends[v.braceEnds], outside: v.braceOutside, bore: Math.max(0, v.braceOutside - 2 * v.braceWall), modulus: v.steelModulus, yieldStress: v.steelYield });
    return {
      bucklingFactor: column.load / along, braceAlong: along, braceBuckling: column.load, weldThroat: weldShear({ force: along, leg: v.weldLeg, length: v.weldLength }).stress,
      braceLevel: level, panicMoment: moment, braceEffectiveLength: ends[v.braceEnds] * v.braceLength, braceSlenderness: column.slenderness, slenderLimit: Math.PI * Math.sqrt((2 * v.steelModulus) / v.steelYield),
    };
  },
  summary: (v, say) => `In a panic stop the brace carries ${say(v.braceAlong, 'force')} and buckles at ${say(v.braceBuckling, 'force')}: a factor of ${say(v.bucklingFactor, 'ratio', 2)}. Its weld sees ${say(v.weldThroat, 'stress', 2)}. ${v.mountCase === 'frame' ? `The firewall gets ${say(v.braceLevel, 'force')} on top of the foot’s own ${say(v.panicForce, 'force')}, in the middle, and no tipping: it bulges more and the pad moves less.` : 'It holds the pivot that the rods push away from the firewall.'}`,
  equations: [
    { result: 'panicMoment', expression: 'panicForce * padBelowPlate', words: 'The foot pushes below the bolts and tips the frame.', source: 'derived: moments', when: (v) => v.mountCase === 'frame' },
    { result: 'braceLevel', expression: 'panicMoment / braceHeight', words: 'The higher the brace, the less it needs to hold the same moment.', source: 'derived: moments about the middle of the bolts', when: (v) => v.mountCase === 'frame' },
    { result: 'braceLevel', expression: '(pedalRatio - 1) * panicForce', words: 'The rods push the pivot to the rear with all that the foot did not put in itself.', source: 'derived: moments, then the sum of forces', when: (v) => v.mountCase === 'apart' },
    { result: 'braceAlong', expression: 'braceLevel / cos(braceAngle)', words: 'A leaning brace carries more to give the same push.', source: 'derived' },
    { result: 'braceEffectiveLength', expression: 'braceLength', words: 'Between ends that turn the whole length bows.', source: 'textbook columns, from memory', when: (v) => v.braceEnds === 'pinned' },
    { result: 'braceEffectiveLength', expression: 'braceLength / 2', words: 'Held ends leave half of it to bow.', source: 'textbook columns, from memory', when: (v) => v.braceEnds === 'held' },
    { result: 'braceEffectiveLength', expression: '2 * braceLength', words: 'A loose end bows like twice the length.', source: 'textbook columns, from memory', when: (v) => v.braceEnds === 'loose' },
    { result: 'braceSlenderness', expression: '4 * braceEffectiveLength / sqrt(braceOutside^2 + (braceOutside - 2 * braceWall)^2)', words: 'Length over the tube’s radius of gyration.', source: 'textbook columns, from memory' },
    { result: 'slenderLimit', expression: 'pi * sqrt(2 * steelModulus / steelYield)', words: 'Where a column buckles at half its yield stress.', source: 'textbook columns, from memory' },
    { result: 'braceBuckling', expression: 'pi^2 * steelModulus * pi * (braceOutside^2 - (braceOutside - 2 * braceWall)^2) / 4 / braceSlenderness^2', words: 'A slender tube bows out at a load that stiffness alone decides (Euler).', source: 'textbook columns, from memory', when: (v) => Number(v.braceSlenderness) >= Number(v.slenderLimit) },
    { result: 'braceBuckling', expression: 'steelYield * pi * (braceOutside^2 - (braceOutside - 2 * braceWall)^2) / 4 * (1 - (braceSlenderness / slenderLimit)^2 / 2)', words: 'A short tube crushes, a little early for its bow (Johnson).', source: 'textbook columns, from memory', when: (v) => Number(v.braceSlenderness) < Number(v.slenderLimit) },
    { result: 'bucklingFactor', expression: 'braceBuckling / braceAlong', words: 'How many times over it would hold, if it were straight.', source: 'derived' },
    { result: 'weldThroat', expression: 'braceAlong * sqrt(2) / (weldLeg * weldLength)', words: 'The force over the throat of the bead, 0.707 of its leg.', source: 'textbook welds, from memory' },
  ],
  cautions: [
    {
      id: 'never-the-column', level: 'danger',
      words: 'A brace to the steering column’s break-away bracket, or one that stands in the column’s way, keeps the column from giving in a crash and drives the wheel at the driver.',
      todo: 'Brace to the cowl, the dash bar or the pillar, clear of the column’s path. If the stock pedal bracket held the column, that part stays. Have a qualified welder and your inspection office look at welds in cab structure.',
    },
    {
      id: 'buckles', level: 'danger', when: (v) => v.bucklingFactor < 1.5,
      words: (v, say) => `The tube would buckle at ${say(v.braceBuckling, 'force')}, ${say(v.bucklingFactor, 'ratio', 2)} times what a panic stop puts on it, and a real one is never quite straight. When it folds, the pedal goes with it.`,
      todo: 'More tube, shorter, or straighter along the push.',
      fires: { braceOutside: 0.25 * inch, braceWall: 0.03 * inch }, silent: {},
    },
    {
      id: 'thin-margin', level: 'warning', when: (v) => v.bucklingFactor >= 1.5 && v.bucklingFactor < 3,
      words: (v, say) => `A factor of ${say(v.bucklingFactor, 'ratio', 2)} is less than 3 (common practice, no source). A tube bowed by 1 % of its length, or pushed off its center by a tab, loses about half.`,
      todo: 'The next size of tube costs a few ounces.',
      fires: { braceOutside: 0.5 * inch, braceWall: 0.049 * inch, braceLength: 20 * inch }, silent: {},
    },
    {
      id: 'weld', level: 'warning', when: (v) => v.weldThroat > weldLimit,
      words: (v, say) => `${say(v.weldThroat, 'stress', 2)} in the weld is above ${say(weldLimit, 'stress', 2)}, what a fillet stands for years of stops (common practice, no source). Cracks start at its toe.`,
      todo: 'Longer bead, both sides, a gusset; no undercut. Look at the toes with light and a magnifier after 100 miles.',
      fires: { weldLength: 0.3 * inch, weldLeg: 2 * mm }, silent: {},
    },
    {
      id: 'leans', level: 'caution', when: (v) => v.braceAngle > 45 * deg,
      words: (v, say) => `At ${say(v.braceAngle, 'angle', 2)} the brace stands more across the push than along it. It carries ${say(1 / Math.cos(v.braceAngle), 'ratio', 2)} times the push and pries its ends sideways.`,
      todo: 'Find an anchor farther to the rear, or use two braces.',
      fires: { braceAngle: 55 * deg }, silent: {},
    },
    {
      id: 'thin-anchor', level: 'notice',
      words: 'The tube is seldom the weak part. The sheet at its far end is: a tube welded square to bare cowl sheet pushes a dimple into it.',
      todo: 'Spread each end on a plate or a flange that reaches a seam, and put the dial gauge there too.',
    },
  ],
  picture: {
    title: 'The brace and what it holds',
    describe: (v, say) => `Side view, engine on the left. ${v.mountCase === 'frame' ? `The foot pushes ${say(v.padBelowPlate, 'length')} below the bolts; the brace meets the frame ${say(v.braceHeight, 'length')} above them` : 'The rods push the pivot to the rear; the brace holds it'} and runs back ${say(v.braceLength, 'length')} at ${say(v.braceAngle, 'angle', 2)}, drawn rising. It is pushed with ${say(v.braceAlong, 'force')}.`,
    scene: (v, _at, say) => braceScene({ padBelow: v.padBelowPlate, height: v.braceHeight, angle: v.braceAngle, length: v.braceLength, outside: v.braceOutside, apart: v.mountCase === 'apart', foot: say(v.panicForce, 'force'), along: say(v.braceAlong, 'force'), span: say(v.braceLength, 'length') }),
  },
  tables: [tubes],
  paper: {
    assumptions: ['The brace carries the whole moment: the bolts below get none of it. That is the bound it must be built for.', 'Straight tube, pushed along its middle.', 'The far end does not give.', 'The weld’s force is spread evenly over its throat.'],
    leftOut: ['Bowed tube and tabs that push off center: they can halve the load. The factor of 3 is for that.', 'The push across at the brace’s ends.', 'Metal softened beside the weld.', 'A brace that is pulled, as on the other side of the pivot: it does not buckle, but its welds and sheet see the same force.'],
    sources: [
      { of: 'force in the brace', kind: 'derived', note: 'moments' },
      { of: 'Euler and Johnson columns, weld throat', kind: 'from memory', id: 'shigley', note: 'any textbook of machine design' },
      { of: 'factor 3, 45 degrees, 70 MPa in repeated load', kind: 'common practice' },
      { of: 'panic push of 2,000 N', kind: 'published', id: 'fsae', note: 'T.3, competition rules; a yardstick' },
    ],
    examples: [
      {
        source: 'Worked by hand: 400 N·m held 0.2 m up at 30 degrees; 19.05 by 1.65 mm tube, 0.4 m, pinned, 200 GPa, 250 MPa',
        inputs: { mountCase: 'frame', panicForce: 2000, padBelowPlate: 0.2, braceHeight: 0.2, braceAngle: 30 * deg, braceLength: 0.4, braceEnds: 'pinned', braceOutside: 19.05 * mm, braceWall: 1.65 * mm, steelModulus: 200e9, steelYield: 250e6, weldLeg: 3 * mm, weldLength: 60 * mm },
        results: { braceAlong: { value: 2309.4, within: 1e-4 }, braceBuckling: { value: 19557, within: 1e-3 }, weldThroat: { value: 18.14e6, within: 1e-3 }, bucklingFactor: { value: 8.47, within: 1e-3 } },
      },
    ],
    related: ['firewall', 'firewall-plate'],
  },
});
