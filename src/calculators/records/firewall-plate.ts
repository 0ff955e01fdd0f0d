import { inch, lbf, mm } from '../../units/si.ts';
import { bound, boltPull, loadsOf, noSuchPlate, padLost } from '../helpers/firewall.ts';
import { cases, thicknessChart } from '../helpers/firewall-show.ts';
import { defineCalculator } from '../record.ts';
import { firewallScene } from '../scenes/firewall.ts';

/** Common practice, no source, at about 100 lbf. */
const good = 0.5 * mm;
const limit = 1 * mm;
/** Shear at which metal yields, of its yield stress: 1/√3 (distortion energy). */
const shearYield = 1 / Math.sqrt(3);
/** Bare body sheet and what is hardly more. */
const sheet = 2.5 * mm;

/** At the held edge, where the weld is, in the push of every hard stop: all of it grows with the push. */
const workingStress = (v: { plateStressStiff: number; dialTestForce: number; panicForce: number }): number => (v.plateStressStiff * v.dialTestForce) / v.panicForce;

export default defineCalculator({
  id: 'firewall-plate',
  version: 1,
  title: 'Firewall plate',
  purpose: 'How far the firewall gives under the foot, between two bounds, what that takes from the pedal, and what the metal and the bolts carry.',
  inputs: [
    { title: 'Pedal', of: ['mountCase', 'pedalRatio', 'padBelowPlate'] },
    { title: 'Push', of: ['dialTestForce', 'panicForce', 'clutchLegForce', 'clutchPedalRatio'] },
    { title: 'Plate', of: ['plateHeight', 'plateWidth', 'plateThickness', 'steelModulus', 'steelYield'] },
    { title: 'Bolts', of: ['boltRowSpacing', 'boltPatternWidth', 'boltsPerRow', 'washerDiameter'] },
  ],
  outputs: [
    'flangeMoveSoft', 'flangeMoveStiff', 'padLostSoft', 'padLostStiff', 'plateStressSoft', 'plateStressStiff', 'mountBoltTension', 'pullThrough',
    'sheetPush', 'sheetMoment', 'panicSheetPush', 'panicMoment', 'plateShortSide', 'bareStrip', 'plateFactorSoft', 'plateFactorStiff', 'plateTurnSoft', 'plateTurnStiff',
  ],
  compute: (v) => {
    const no = noSuchPlate(v);
    if (no) return no;
    const [test, panic] = [loadsOf(v, v.dialTestForce), loadsOf(v, v.panicForce)];
    const [soft, stiff] = [bound(v, test, 'supported'), bound(v, test, 'clamped')];
    const pull = boltPull(v);
    return {
      flangeMoveSoft: soft.flange, flangeMoveStiff: stiff.flange, padLostSoft: padLost(v, soft), padLostStiff: padLost(v, stiff),
      plateStressSoft: bound(v, panic, 'supported').stress, plateStressStiff: bound(v, panic, 'clamped').stress, mountBoltTension: pull, pullThrough: pull / (Math.PI * v.washerDiameter * v.plateThickness),
      sheetPush: test.push, sheetMoment: test.moment, panicSheetPush: panic.push, panicMoment: panic.moment, plateShortSide: Math.min(v.plateHeight, v.plateWidth), bareStrip: (v.plateHeight - v.boltRowSpacing) / 2,
      plateFactorSoft: soft.coefficient, plateFactorStiff: stiff.coefficient, plateTurnSoft: soft.turn, plateTurnStiff: stiff.turn,
    };
  },
  howSure: { draws: 3000, quick: (v) => noSuchPlate(v) ?? { flangeMoveSoft: bound(v, loadsOf(v, v.dialTestForce), 'supported').flange } },
  summary: (v, say) => `Under ${say(v.dialTestForce, 'force')} the flange moves between ${say(v.flangeMoveStiff, 'length', 2)} and ${say(v.flangeMoveSoft, 'length', 2)}, and the pedal loses ${say(v.padLostStiff, 'length', 2)} to ${say(v.padLostSoft, 'length', 2)} of travel to it. ${v.mountCase === 'apart' ? `With the firewall between pivot and masters the sheet takes ${say(v.sheetPush, 'force')}, the foot times the pedal ratio.` : `One frame keeps the rods’ push to itself: the sheet feels the foot alone, and its tipping moment of ${say(v.sheetMoment, 'torque')}.`} A dial gauge tells where between the two your truck is.`,
  equations: [
    { result: 'sheetPush', expression: 'dialTestForce', words: 'One frame closes the loop of pivot, pedal and rods. Only the foot itself comes out of it.', source: 'derived: sum of forces', when: (v) => v.mountCase === 'frame' },
    { result: 'sheetPush', expression: 'pedalRatio * dialTestForce', words: 'Every rod pushes its master, and the masters push the sheet: the foot times the ratio.', source: 'derived: moments about the pivot', when: (v) => v.mountCase === 'apart' },
    { result: 'sheetMoment', expression: 'dialTestForce * padBelowPlate', words: 'The foot pushes below the bolts, so it tips the frame.', source: 'derived: moments', when: (v) => v.mountCase === 'frame' },
    { result: 'plateShortSide', expression: 'min(plateHeight, plateWidth)', words: 'The shorter way to a support carries most of it.', source: 'defined' },
    { result: 'bareStrip', expression: '(plateHeight - boltRowSpacing) / 2', words: 'The flange is stiff; only the plate above and below it bends.', source: 'derived' },
    { result: 'plateTurnSoft', expression: 'sheetMoment * bareStrip^3 / (6 * steelModulus * boltPatternWidth * plateThickness^3 / 12 * (bareStrip + boltRowSpacing / 2)^2)', words: 'Two strips as wide as the flange, one above and one below, held so that their far ends may turn.', source: 'derived: two beams with a rigid block between them' },
    { result: 'plateTurnStiff', expression: 'sheetMoment * bareStrip^3 / (8 * steelModulus * plateWidth * plateThickness^3 / 12 * (3 * (boltRowSpacing / 2)^2 + 3 * boltRowSpacing / 2 * bareStrip + bareStrip^2))', words: 'The same with the whole width of the plate helping and the far ends held.', source: 'derived: two beams with a rigid block between them' },
    { result: 'flangeMoveSoft', expression: 'plateFactorSoft * sheetPush * plateShortSide^2 / (steelModulus * plateThickness^3) + plateTurnSoft * boltRowSpacing / 2', words: 'Bulge in the middle, and what the flange’s lower edge moves on by tipping. Twice the thickness bends an eighth.', source: 'Roark, table 11.4 case 1b (read in the text), and the tipping' },
    { result: 'flangeMoveStiff', expression: 'plateFactorStiff * sheetPush * plateShortSide^2 / (steelModulus * plateThickness^3) + plateTurnStiff * boltRowSpacing / 2', words: 'The same with edges that cannot turn.', source: 'Roark, table 11.4 case 8b (read in the text), and the tipping' },
    { result: 'padLostSoft', expression: 'flangeMoveSoft + plateTurnSoft * (padBelowPlate - boltRowSpacing / 2)', words: 'The frame carries the pad with it: forward with the bulge, and farther by the tipping.', source: 'derived', when: (v) => v.mountCase === 'frame' },
    { result: 'padLostSoft', expression: 'pedalRatio * flangeMoveSoft', words: 'What a master moves away, its rod must make up, and the pedal multiplies that.', source: 'derived', when: (v) => v.mountCase === 'apart' },
    { result: 'padLostStiff', expression: 'flangeMoveStiff + plateTurnStiff * (padBelowPlate - boltRowSpacing / 2)', words: 'The same for held edges.', source: 'derived', when: (v) => v.mountCase === 'frame' },
    { result: 'padLostStiff', expression: 'pedalRatio * flangeMoveStiff', words: 'The same for held edges.', source: 'derived', when: (v) => v.mountCase === 'apart' },
    { result: 'panicSheetPush', expression: 'panicForce', words: 'The panic push, straight through.', source: 'derived', when: (v) => v.mountCase === 'frame' },
    { result: 'panicSheetPush', expression: 'pedalRatio * panicForce', words: 'The panic push times the ratio.', source: 'derived', when: (v) => v.mountCase === 'apart' },
    { result: 'panicMoment', expression: 'panicForce * padBelowPlate', words: 'And its moment.', source: 'derived', when: (v) => v.mountCase === 'frame' },
    { result: 'mountBoltTension', expression: 'max(0, panicMoment - panicSheetPush * boltRowSpacing / 2) / (boltRowSpacing * boltsPerRow)', words: 'The frame tips about its lower bolts; the upper ones hold what the foot’s own push does not.', source: 'derived: moments about the lower row', when: (v) => v.mountCase === 'frame' },
    { result: 'mountBoltTension', expression: 'panicSheetPush / (2 * boltsPerRow)', words: 'Masters on the far side of the sheet pull on all bolts alike. With a circuit dead one master can get all of it: then count its own bolts only.', source: 'derived', when: (v) => v.mountCase === 'apart' },
    { result: 'pullThrough', expression: 'mountBoltTension / (pi * washerDiameter * plateThickness)', words: 'A washer pulls out a disk: its rim times the thickness carries the bolt.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'bound-only', level: 'warning',
      words: 'These are bounds for a flat plate on supports that do not move. Holes, a joint in the sheet, thin metal beyond the plate’s edge and a cowl that gives are not in them, and any of these can be the largest part. A pedal mount that gives in a hard stop moves away from the foot just then, and one that cracks lets go.',
      todo: 'Build it, then let a dial gauge decide before paint: helper pushes 100 lbf (445 N), gauge between flange and frame. Up to 0.02 in (0.5 mm) is good, 0.04 in (1.0 mm) the end (common practice, no source). Have structural welds in the firewall done or looked at by a qualified welder, and ask your inspection office first.',
    },
    {
      id: 'sheet-between', level: 'danger', when: (v) => v.mountCase === 'apart' && v.plateThickness < sheet,
      words: (v, say) => `Metal ${say(v.plateThickness, 'length', 2)} thick stands between pivot and masters and takes ${say(v.panicSheetPush, 'force')} in a panic stop. Body sheet tears there, first at the spot welds, and a torn firewall leaves no brakes at all.`,
      todo: 'Tie pivot and masters together on one rigid frame, or put at least 3/16 in (4.8 mm) plate there and carry it to real supports.',
      fires: { mountCase: 'apart', plateThickness: 2 * mm, plateHeight: 4 * inch, plateWidth: 5 * inch, boltRowSpacing: 2 * inch, boltPatternWidth: 2 * inch }, silent: {},
    },
    {
      id: 'moves-too-much', level: 'warning', when: (v) => v.flangeMoveStiff > limit,
      words: (v, say) => `Even with its edges held the plate moves ${say(v.flangeMoveStiff, 'length', 2)} under ${say(v.dialTestForce, 'force')}, more than ${say(limit, 'length', 2)} (common practice, no source). It takes ${say(v.padLostStiff, 'length', 2)} of pedal and works at its welds with every stop until they crack.`,
      todo: 'Thicker plate, a rib or a bent flange to shorten the span, or a brace from the pivot.',
      fires: { plateThickness: 2.5 * mm, mountCase: 'apart', plateHeight: 6 * inch, plateWidth: 7 * inch }, silent: {},
    },
    {
      id: 'may-move', level: 'caution', when: (v) => v.flangeMoveStiff <= limit && v.flangeMoveSoft > good,
      words: (v, say) => `If its edges can turn the plate moves up to ${say(v.flangeMoveSoft, 'length', 2)}; good is ${say(good, 'length', 2)} or less (common practice, no source). Which of the two it is, no formula knows.`,
      todo: 'Weld it to something that cannot turn, and let the dial gauge say.',
      fires: { plateThickness: 3.4 * mm }, silent: { plateThickness: 8 * mm },
    },
    {
      id: 'yields', level: 'warning', when: (v) => v.plateStressStiff > v.steelYield,
      words: (v, say) => `A panic push of ${say(v.panicForce, 'force')} bends the plate to ${say(v.plateStressStiff, 'stress', 2)} even with its edges held; this metal yields at ${say(v.steelYield, 'stress', 2)}. It stays bent, and the pedal is lower and off its line for the next stop.`,
      todo: 'Thicker plate or ribs, or one frame instead of sheet between pivot and masters.',
      fires: { mountCase: 'apart', plateThickness: 3.4 * mm }, silent: {},
    },
    {
      id: 'may-yield', level: 'caution', when: (v) => v.plateStressStiff <= v.steelYield && v.plateStressSoft > v.steelYield,
      words: (v, say) => `With edges that can turn, a panic push of ${say(v.panicForce, 'force')} bends the plate to ${say(v.plateStressSoft, 'stress', 2)}, past its yield of ${say(v.steelYield, 'stress', 2)}. It dents once and is stiffer after, but the pedal no longer stands where it stood.`,
      todo: 'Make the edges stiff, or the plate thicker.',
      fires: {}, silent: { plateThickness: 8 * mm },
    },
    {
      id: 'works-at-welds', level: 'warning', when: (v) => workingStress(v) > v.steelYield / 3,
      words: (v, say) => `In every hard stop of ${say(v.dialTestForce, 'force')} the held edge is bent to ${say(workingStress(v), 'stress', 2)}, more than a third of its yield of ${say(v.steelYield, 'stress', 2)} (common practice, no source). A weld toe does not take that for years: it cracks, unseen under paint and carpet, and one day the pedal goes forward.`,
      todo: 'Thicker plate, a shorter span, or one frame. Look at the toes with light and a magnifier after 100 miles.',
      fires: { mountCase: 'apart' }, silent: {},
    },
    {
      id: 'beyond-plate', level: 'caution', when: (v) => v.flangeMoveSoft > v.plateThickness / 2,
      words: (v, say) => `The soft bound, ${say(v.flangeMoveSoft, 'length', 2)}, is more than half the plate’s thickness. There a sheet also pulls like a drumhead, and the formula says more than will happen.`,
      todo: 'Read it as “too thin”, not as a number.',
      fires: { plateThickness: 2.4 * mm }, silent: {},
    },
    {
      id: 'tears-out', level: 'danger', when: (v) => v.pullThrough > shearYield * v.steelYield,
      words: (v, say) => `In a panic stop ${say(v.mountBoltTension, 'force')} on one bolt shears the metal around its washer with ${say(v.pullThrough, 'stress', 2)}, more than it stands. The bolt tears out of the sheet and takes the pedal with it.`,
      todo: 'A backing plate the size of the flange, and thicker metal. Do not drive it like this.',
      fires: { washerDiameter: 0.25 * inch, padBelowPlate: 14 * inch, boltRowSpacing: 1.5 * inch, boltsPerRow: 1, panicForce: 900 * lbf, steelYield: 120e6 }, silent: {},
    },
    {
      id: 'pulls-through', level: 'warning', when: (v) => v.pullThrough > (shearYield / 2) * v.steelYield && v.pullThrough <= shearYield * v.steelYield,
      words: (v, say) => `In a panic stop ${say(v.mountBoltTension, 'force')} on one bolt shears the metal around its washer with ${say(v.pullThrough, 'stress', 2)}, more than half of what it takes. Bolts pull through before they break.`,
      todo: 'A backing plate the size of the flange. Fender washers do not spread a tipping moment.',
      fires: { washerDiameter: 0.4 * inch, padBelowPlate: 14 * inch, boltRowSpacing: 1.5 * inch, boltsPerRow: 1, panicForce: 500 * lbf }, silent: {},
    },
    {
      id: 'pivot-mount', level: 'warning', when: (v) => v.mountCase === 'apart',
      words: (v, say) => `Whatever holds the pivot is pulled to the rear with ${say((v.pedalRatio - 1) * v.panicForce, 'force')} in a panic stop. What gives there takes pedal, and it is not in these figures. A column bracket made to break away must never hold it.`,
      todo: 'Push the dial gauge test at the pivot too.',
      fires: { mountCase: 'apart' }, silent: {},
    },
  ],
  picture: {
    title: 'The plate under the foot',
    describe: (v, say) => `Side view, engine on the left. The plate stands between two supports ${say(v.plateHeight, 'length')} apart. ${v.mountCase === 'frame' ? `A frame bolted to its middle carries pivot and masters; the foot pushes ${say(v.padBelowPlate, 'length')} below the bolts, so the plate bulges forward and its flange tips, top toward the driver.` : 'Masters are bolted to its middle, the pivot hangs elsewhere; the rods push the plate forward.'} Red: the plate bent by the test push, drawn many times too large, ${say(v.flangeMoveSoft, 'length', 2)} at most.`,
    scene: (v, _at, say) => firewallScene({
      apart: v.mountCase === 'apart', height: v.plateHeight, pattern: v.boltRowSpacing, padBelow: v.padBelowPlate, thickness: v.plateThickness, pedalRatio: v.pedalRatio,
      bulge: v.flangeMoveSoft - (v.plateTurnSoft * v.boltRowSpacing) / 2, turn: v.plateTurnSoft, label: say(v.flangeMoveSoft, 'length', 2), foot: say(v.dialTestForce, 'force'), onSheet: say(v.sheetPush, 'force'),
    }),
  },
  charts: [thicknessChart],
  tables: [cases],
  paper: {
    assumptions: [
      'Flat plate of one thickness; its four edges lie on supports that do not move. Edges free to turn and edges held are the two ends between which a welded plate lies.', 'The push sits in the middle of the plate and spreads over the bolt pattern.',
      'The soft bound of tipping counts a strip as wide as the bolt pattern, the stiff one the whole width.', 'Stresses of push and tipping are added as if they met in one place: on the safe side.', 'The foot pushes square to the plate.',
    ],
    leftOut: ['Give of the supports: cowl, rails, a seam in thin sheet. It can be the largest part.', 'Holes for rods, which weaken the middle.', 'Ribs and bent edges: shorten the span to the rib and compute again.', 'Cracks from years of stops: keep the working stress at a third of yield at welds (common practice, no source).', 'With the firewall between: the give of the pivot’s own mount, and the bolts of one master alone when a circuit is dead and it carries the whole push.', 'A brace: it takes the tipping away and adds its push to the middle of the plate, see the firewall brace.'],
    sources: [
      { of: 'plate deflection', kind: 'published', id: 'roark', note: 'table 11.4, cases 1b and 8b, ν 0.3; the supported one computed from the series and compared with it' },
      { of: 'plate stress', kind: 'from memory', id: 'roark', note: 'table 11.4; the supported one agrees with a double series within 2 %' },
      { of: 'forces on sheet and pivot, tipping, bolts', kind: 'derived', note: 'statics' },
      { of: '2,000 N on the pedal without failure', kind: 'published', id: 'fsae', note: 'T.3, competition rules; a yardstick' },
      { of: 'pedal and mount rigid under 885 N', kind: 'published', id: 'nsw-manual', note: 'a yardstick for the size of the push' },
      { of: '0.5 mm good, 1.0 mm the end', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Worked by hand with Roark’s coefficients: 250 by 300 mm, 4.8 mm, 205 GPa, 2,500 N in the middle',
        inputs: { mountCase: 'apart', pedalRatio: 5, dialTestForce: 500, plateHeight: 0.25, plateWidth: 0.3, plateThickness: 4.8 * mm, steelModulus: 205e9, boltRowSpacing: 0.08, boltPatternWidth: 0.1 },
        results: { flangeMoveSoft: { value: 1.02 * mm, within: 0.005 }, flangeMoveStiff: { value: 0.487 * mm, within: 0.005 }, padLostSoft: { value: 5.1 * mm, within: 0.005 }, sheetPush: { value: 2500, within: 1e-9 } },
      },
      {
        source: 'Worked by hand: one frame, 2,000 N, pad 0.2 m below two rows of two bolts 80 mm apart',
        inputs: { mountCase: 'frame', panicForce: 2000, padBelowPlate: 0.2, boltRowSpacing: 0.08, boltsPerRow: 2 },
        results: { panicMoment: { value: 400, within: 1e-9 }, mountBoltTension: { value: 2000, within: 1e-9 } },
      },
    ],
    related: ['firewall', 'firewall-brace', 'pedal-ratio', 'braking-rate'],
  },
});
