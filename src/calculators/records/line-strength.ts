import { isImpossible } from '../../engine/outcome.ts';
import { hoopStress, hoseMargin, tubeStrength } from '../../engine/tube.ts';
import { tubeYield } from '../../engine/tubeYield.ts';
import { inch, lbf, psi } from '../../units/si.ts';
import { barFeed } from '../helpers/balance-bar.ts';
import { linePressures } from '../helpers/line-pressure.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';

type Tube = ValuesOf<'tubeDiameter' | 'tubeWall' | 'tubeTensile' | 'tubeYield'>;

const strengthAt = (v: Tube, wall: number, pressure: number) => tubeStrength({ outsideDiameter: v.tubeDiameter, wall, tensileStrength: v.tubeTensile, pressure });
const yieldAt = (v: Tube, boreDiameter: number, pressure: number) => tubeYield({ outerRadius: v.tubeDiameter / 2, boreRadius: boreDiameter / 2, yieldStrength: v.tubeYield, pressure });

/** Around a tight bend the wall outside is a sixth thinner and carries a tenth more. */
const bendReserve = 1.15;

function refuse(code: string, by: number): Refusal {
  return {
    refused: (say) => (code === 'wall-fills-tube'
      ? `The wall is ${say(by / 2, 'length')} thicker than half the tube: no bore is left. Check wall and diameter.`
      : `The pit is as deep as the wall${by > 0 ? `, and ${say(by, 'length')} more` : ''}: nothing is left to hold. Replace the tube.`),
  };
}

export default defineCalculator({
  id: 'line-strength',
  version: 1,
  title: 'Strength of tube and hose',
  purpose: 'What pressure the hardest push can put into one line, and how far tube and hose are above it.',
  inputs: [
    { title: 'Foot and pedal', of: ['panicForce', 'controlForce', 'pedalRatio', 'linkageEfficiency'] },
    { title: 'Bar and masters', of: ['frontShare', 'frontMasterBore', 'rearMasterBore'] },
    { title: 'Tube', of: ['tubeDiameter', 'tubeWall', 'pitDepth', 'tubeTensile', 'tubeYield'] },
    { title: 'Hose', of: ['hoseProof', 'hoseBurst'] },
  ],
  feeds: [barFeed],
  outputs: [
    'worstPressure', 'burstFactorWorst', 'wallYieldFactor', 'yieldFactorWorst', 'hoseProofFactor', 'hoseBurstFactor', 'hardStopPressure', 'burstFactorStop', 'tubeBurst', 'wallYieldPressure', 'tubeYieldPressure', 'yieldedPart',
    'boreFormulaRatio', 'thickWallRatio', 'outsideFormulaRatio', 'wallLeft', 'tubeBore', 'frontMasterArea', 'rearMasterArea',
  ],
  compute: (v) => {
    const line = linePressures({ ...v, masterSpring: 0 });
    const worst = (v.panicForce * v.pedalRatio) / Math.min(line.frontArea, line.rearArea);
    const hard = Math.max(line.frontPressure, line.rearPressure);
    if (!(hard > 0)) return { refused: () => 'With no foot on the pedal there is no pressure to compare with. Type a hard stop’s foot force.' };
    const t = strengthAt(v, v.tubeWall - v.pitDepth, worst);
    if (isImpossible(t)) return refuse(t.impossible, t.by ?? 0);
    const hose = hoseMargin({ proof: v.hoseProof, burst: v.hoseBurst, pressure: worst });
    if (isImpossible(hose)) return { refused: (say) => `A hose cannot burst ${say(hose.by ?? 0, 'pressure')} below what it has held. Swap the two figures.` };
    const yields = v.tubeYield / t.yieldPerPressure;
    const wall = yieldAt(v, t.boreDiameter, worst);
    const wallLeft = v.tubeWall - v.pitDepth;
    return {
      worstPressure: worst, burstFactorWorst: t.lame.burst / worst, wallYieldFactor: wall.wallPressure / worst, yieldFactorWorst: yields / worst, hoseProofFactor: v.hoseProof / worst, hoseBurstFactor: v.hoseBurst / worst,
      hardStopPressure: hard, burstFactorStop: t.lame.burst / hard, tubeBurst: t.lame.burst, wallYieldPressure: wall.wallPressure, tubeYieldPressure: yields, yieldedPart: Math.min(1, (wall.yieldedRadius - t.boreDiameter / 2) / wallLeft),
      boreFormulaRatio: t.bore.stressPerPressure, thickWallRatio: t.lame.stressPerPressure, outsideFormulaRatio: t.outside.stressPerPressure, wallLeft, tubeBore: t.boreDiameter,
      frontMasterArea: line.frontArea, rearMasterArea: line.rearArea,
    };
  },
  summary: (v, say) => `${say(v.panicForce, 'force')} with all of it on one master can make up to ${say(v.worstPressure, 'pressure')}. The tube’s bore yields at ${say(v.tubeYieldPressure, 'pressure')}, its whole wall at ${say(v.wallYieldPressure, 'pressure')}, and the formula bursts it at ${say(v.tubeBurst, 'pressure')}; a hose of this kind has held ${say(v.hoseProof, 'pressure')}.`,
  equations: [
    { result: 'frontMasterArea', expression: 'pi * frontMasterBore^2 / 4', words: 'The piston’s face is a circle.', source: 'derived' },
    { result: 'rearMasterArea', expression: 'pi * rearMasterBore^2 / 4', words: 'The same for the rear.', source: 'derived' },
    { result: 'worstPressure', expression: 'panicForce * pedalRatio / min(frontMasterArea, rearMasterArea)', words: 'One circuit dead and the bar on its stop: the whole push stands on one piston, the smaller one at worst. Friction is not counted on: shaken or just greased, a linkage passes nearly all of the push.', source: 'derived: free body of the bar' },
    { result: 'hardStopPressure', expression: 'max(frontShare * controlForce * pedalRatio * linkageEfficiency / frontMasterArea, (1 - frontShare) * controlForce * pedalRatio * linkageEfficiency / rearMasterArea)', words: 'Both circuits alive, the usual share on each.', source: 'derived: balance of forces on the piston' },
    { result: 'wallLeft', expression: 'tubeWall - pitDepth', words: 'Pits count as wall that is not there.', source: 'defined' },
    { result: 'tubeBore', expression: 'tubeDiameter - 2 * wallLeft', words: 'Outside less two walls.', source: 'defined' },
    { result: 'boreFormulaRatio', expression: 'tubeBore / (2 * wallLeft)', words: 'Cut the tube lengthwise: pressure on the bore’s width is carried by two walls. It is the mean over the wall, so it says too little of the bore.', source: 'derived: Barlow’s formula on the bore' },
    { result: 'thickWallRatio', expression: '(tubeDiameter^2 + tubeBore^2) / (tubeDiameter^2 - tubeBore^2)', words: 'In a thick wall the bore carries more than the mean. This is the stress there.', source: 'derived: Lamé’s formula' },
    { result: 'outsideFormulaRatio', expression: 'tubeDiameter / (2 * wallLeft)', words: 'The thin-wall formula with the outside diameter: always a little above the bore’s hoop stress.', source: 'derived: Barlow’s formula on the outside' },
    { result: 'tubeBurst', expression: 'tubeTensile / thickWallRatio', words: 'Where the bore’s stress reaches the tensile strength. Sound ductile tube holds somewhat more.', source: 'derived' },
    { result: 'tubeYieldPressure', expression: 'tubeYield * (tubeDiameter^2 - tubeBore^2) / (sqrt(3) * tubeDiameter^2)', words: 'Where the bore begins to stretch for good. The fluid presses on the bore’s face while the hoop stress pulls along it, and steel yields by the difference of the two: sooner than by the hoop stress alone.', source: 'derived: von Mises, ends closed' },
    { result: 'wallYieldPressure', expression: '2 / sqrt(3) * tubeYield * log(tubeDiameter / tubeBore)', words: 'Where the last of the wall, its outside, yields as well. Up to here a ring that is still springy holds the rest; from here the tube swells until it splits.', source: 'derived: von Mises, equilibrium of a ring' },
    { result: 'burstFactorWorst', expression: 'tubeBurst / worstPressure', words: 'Strength over need, tube.', source: 'defined' },
    { result: 'yieldFactorWorst', expression: 'tubeYieldPressure / worstPressure', words: 'The same against the first yield, at the bore.', source: 'defined' },
    { result: 'wallYieldFactor', expression: 'wallYieldPressure / worstPressure', words: 'And against yield of the whole wall: the one to judge the tube by.', source: 'defined' },
    { result: 'burstFactorStop', expression: 'tubeBurst / hardStopPressure', words: 'Against the pressure it sees every day.', source: 'defined' },
    { result: 'hoseProofFactor', expression: 'hoseProof / worstPressure', words: 'A hose’s strength is a tested figure, not one to compute from its wall.', source: 'defined' },
    { result: 'hoseBurstFactor', expression: 'hoseBurst / worstPressure', words: 'The same against the figure a sample must reach.', source: 'defined' },
  ],
  methods: [
    { result: 'yieldedPart', words: 'The radius out to which the wall yields is found by halving: with c that radius, a the bore’s and b the outside’s, the pressure over yield strength is (2 ln(c/a) + 1 − c²/b²)/√3.', source: 'derived: von Mises, equilibrium of a ring' },
  ],
  cautions: [
    {
      id: 'tube-yields', level: 'danger', when: (v) => v.wallYieldFactor < bendReserve,
      words: (v, say) => `The worst push brings the tube to ${say(1 / v.wallYieldFactor, 'share')} of the pressure at which its whole wall yields, and a bend in it a tenth nearer. It can swell and split in the one push that matters.`,
      todo: 'Replace pitted tube. Smaller tube or a thicker wall is stronger; so is a larger bore of master, which makes less pressure.',
      fires: { pitDepth: 0.014 * inch }, silent: {},
    },
    {
      id: 'bore-yields', level: 'notice', when: (v) => v.yieldFactorWorst < 1 && v.wallYieldFactor >= bendReserve,
      words: (v, say) => `At the worst push ${v.yieldedPart < 0.01 ? 'the skin of the bore just begins to yield' : `the wall yields ${say(v.yieldedPart, 'share', 2)} deep from the bore`}, if the steel is no stronger than it must be. That is no burst: the rest of the wall stays springy and holds it, and yields only at ${say(v.wallYieldPressure, 'pressure')}.`,
      todo: 'Sound new tube bears it. What it leaves no room for is old tube: pits, kinks and flares made twice.',
      fires: {}, silent: { panicForce: 300 * lbf },
    },
    {
      id: 'daily-factor', level: 'warning', when: (v) => v.burstFactorStop < 4,
      words: (v, say) => `In an ordinary hard stop the tube has only ${say(v.burstFactorStop, 'ratio')} times the strength it needs. Four times is the usual rule for lines that see their pressure every day (common practice, no source).`,
      todo: 'Thicker wall, smaller tube or better material.',
      fires: { tubeTensile: 5000 * psi, tubeYield: 4000 * psi }, silent: {},
    },
    {
      id: 'hose-proof', level: 'warning', when: (v) => v.hoseProofFactor < 1,
      words: (v, say) => `The worst push makes more than the ${say(v.hoseProof, 'pressure')} that every hose of this kind has held for minutes${v.hoseBurstFactor < 1 ? `, and more than the ${say(v.hoseBurst, 'pressure')} a sample must reach` : ''}.${v.wallYieldPressure > v.hoseBurst ? ' The hose is the weak link here, not the tube.' : ''}`,
      todo: 'Use hoses rated above the worst pressure, new, with a date on them. Or a larger master: it also shortens the pedal. Whether your truck can get there is for the masters’ stroke to say: type this push as the foot force in the calculator for one dead circuit.',
      fires: { panicForce: 400 * lbf }, silent: { panicForce: 200 * lbf },
    },
    {
      id: 'flares-first', level: 'warning',
      words: 'Flares, fittings and chafed hoses fail long before sound tube. A rubbed hose holds in the driveway and bursts in the emergency.',
      todo: 'Look at every flare with a light before it goes together. Then 125 lbf on the pedal for 10 seconds without further sink, and one minute as hard as you can, dry paper under every joint.',
    },
    {
      id: 'gauge-too', level: 'notice', when: (v) => v.worstPressure > 3000 * psi,
      words: (v, say) => `${say(v.worstPressure, 'pressure')} is more than a 3,000 psi gauge holds, and more than some pressure switches.`,
      todo: 'Take the gauge off before anyone stands on the pedal. Ask the switch’s maker for its proof pressure.',
      fires: {}, silent: { panicForce: 150 * lbf },
    },
  ],
  charts: [{
    title: 'Stress through the tube’s wall at the worst pressure',
    x: { label: 'depth from the bore', dimension: 'length' },
    y: { label: 'stress', dimension: 'stress' },
    series: (v) => {
      const [inner, outer] = [v.tubeBore / 2, v.tubeDiameter / 2];
      const wall = outer - inner;
      const depths = Array.from({ length: 25 }, (_, k) => (k / 24) * wall);
      const { counted } = yieldAt(v, v.tubeBore, v.worstPressure);
      const hoop = (radius: number): number => {
        const s = hoopStress({ pressure: v.worstPressure, outerRadius: outer, boreRadius: inner, radius });
        return isImpossible(s) ? 0 : s.stress;
      };
      const flat = (y: number) => [[0, y], [wall, y]] as const;
      return [
        { label: 'what yield goes by (von Mises)', tone: 'accent', points: depths.map((depth) => [depth, counted(inner + depth)] as const) },
        { label: 'hoop stress, were it all springy (Lamé)', tone: 'plain', points: depths.map((depth) => [depth, hoop(Math.min(outer, inner + depth))] as const) },
        { label: 'hoop stress by the thin-wall formula: the mean', tone: 'ghost', points: flat(v.worstPressure * v.boreFormulaRatio) },
        { label: 'yield strength', tone: 'ground', points: flat(v.tubeYield) },
      ];
    },
    describe: (v, say) => `What yield goes by is ${say(Math.min(v.tubeYield, v.tubeYield / v.yieldFactorWorst), 'stress')} at the bore${v.wallYieldFactor <= 1 ? ' and all through the wall: all of it yields' : v.yieldFactorWorst < 1 ? `, the yield strength${v.yieldedPart < 0.01 ? '' : `, and as much for ${say(v.yieldedPart, 'share', 2)} of the way out`}; from there it falls` : `, falling outward; yield is ${say(v.tubeYield, 'stress')}`}. Hoop stress alone would be ${say(v.worstPressure * v.thickWallRatio, 'stress')} at the bore and ${say(v.worstPressure * (v.thickWallRatio - 1), 'stress')} outside. At the bore it tells too little, since the fluid presses across it as well.`,
  }],
  tables: [
    {
      caption: 'Three formulas, at the worst pressure',
      head: ['Formula', 'Stress per pressure', 'Burst', 'Factor'],
      rows: (v, say) => [['thin wall, bore', v.boreFormulaRatio], ['thick wall', v.thickWallRatio], ['thin wall, outside', v.outsideFormulaRatio]].map(([name, k]) => [
        name as string, say(k as number, 'ratio'), say(v.tubeTensile / (k as number), 'pressure'), say(v.tubeTensile / (k as number) / v.worstPressure, 'ratio'),
      ]),
    },
    {
      caption: 'As pits eat the wall (thick wall)',
      head: ['Wall left', 'Bore yields at', 'All of it at', 'Bursts at'],
      rows: (v, say) => [1, 0.75, 0.5, 0.25].map((left) => {
        const t = strengthAt(v, left * v.tubeWall, v.worstPressure);
        return [say(left, 'share'), ...(isImpossible(t) ? ['–', '–', '–'] : [v.tubeYield / t.yieldPerPressure, yieldAt(v, t.boreDiameter, 0).wallPressure, t.lame.burst].map((p) => say(p, 'pressure')))];
      }),
    },
  ],
  paper: {
    assumptions: ['Sound, round tube away from bends, flares and fittings.', 'Worst case: one circuit dead, the bar on its stop, neither the carpet nor the dead master’s bottom in the way. In many trucks one of those comes first and the pressure stays below this.', 'No return springs. The worst push loses nothing on its way; a hard stop loses what you typed.', 'The masters have the stroke for the worst pressure. Many have not: the circuit swells and the piston bottoms far below it. Then this bound is never met, and that is another fault.', 'Steel of just the strength typed, which does not harden.'],
    leftOut: ['Flares, fittings, banjo bolts.', 'Bends, but for the reserve of 15 % in the danger above: around a tight one the outer wall is a sixth thinner and carries about a tenth more.', 'Fatigue, heat, chafing, age.', 'A pressure wave from a stab.'],
    sources: [
      { of: 'stress in the wall', kind: 'published', id: 'boresi', note: 'example 11.1 agrees' },
      { of: 'yield 170 MPa, tensile 290 MPa, bore 0.1315 in of 3/16 × 0.028 in steel tube', kind: 'published', id: 'sae-j527', note: 'read in a text that quotes it' },
      { of: 'hose: 4,000 psi held 2 min, burst 5,000 psi', kind: 'published', id: 'fmvss-106', note: 'S5.3.2, older text, in an agency letter; 7,000 psi up to 1/8 in today is from memory' },
      { of: 'hardest push 300 to 450 lbf', kind: 'common practice', note: 'competition rules build a pedal for 2,000 N (Formula SAE Rules 2026 T.3)' },
      { of: 'where bore and whole wall yield', kind: 'derived' },
      { of: 'a factor of 4 on everyday pressure; the whole wall not at yield in the worst', kind: 'common practice', note: 'a factor of 4 on the worst case too would ask for tube that nobody sells' },
    ],
    examples: [
      {
        source: 'Worked by hand: 4.75 × 0.71 mm tube, stress per pressure by three formulas',
        inputs: { tubeDiameter: 4.75e-3, tubeWall: 0.71e-3, pitDepth: 0 },
        results: { boreFormulaRatio: { value: 2.35, within: 0.0022 }, thickWallRatio: { value: 2.93, within: 0.0017 }, outsideFormulaRatio: { value: 3.35, within: 0.0015 } },
      },
      {
        source: 'Worked by hand: a bore half the outside, 100 MPa yield. Hoop 5/3, along 1/3, across −1 of the pressure; von Mises 4/√3, so it yields at 43.3 MPa; the whole wall at 2 ln 2/√3 of 100 MPa',
        inputs: { tubeDiameter: 0.01, tubeWall: 0.0025, pitDepth: 0, tubeYield: 100e6 },
        results: { thickWallRatio: { value: 5 / 3, within: 1e-9 }, tubeYieldPressure: { value: 43.301e6, within: 1e-4 }, wallYieldPressure: { value: 80.037e6, within: 1e-4 } },
      },
      {
        source: 'SAE J527 as quoted in a text: 3/16 × 0.028 in has a bore of 0.1315 in',
        inputs: { tubeDiameter: 3 / 16 * inch, tubeWall: 0.028 * inch, pitDepth: 0 },
        results: { tubeBore: { value: 0.1315 * inch, within: 1e-9 } },
      },
      {
        source: 'Boresi and Schmidt, Advanced Mechanics of Materials, example 11.1, scaled by a tenth (read in a worked-solution companion): outer radius five times the bore’s, 325 MPa at the bore for 300 MPa',
        inputs: { tubeDiameter: 0.01, tubeWall: 0.004, pitDepth: 0 },
        results: { thickWallRatio: { value: 325 / 300, within: 0.001 } },
      },
    ],
    related: ['circuit-failure', 'line-pressure', 'plumbing-and-lamps'],
  },
});
