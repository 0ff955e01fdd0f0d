import { deg } from '../../units/si.ts';
import { shaftLineFeed } from '../helpers/shaft-line.ts';
import { asBest, asClocked, betweenPins, rippleEquations, shaftsOf } from '../helpers/shaft-ripple.ts';
import { defineCalculator } from '../record.ts';
import type { Say } from '../record.ts';
import { forksScene } from '../scenes/forks.ts';
import type { At } from '../show.ts';

/** Common practice, no source. */
const felt = 0.06;
const doNot = 0.1;

const turns = (low: number, high: number, count: number): number[] => Array.from({ length: count + 1 }, (_, k) => low + ((high - low) * k) / count);
const sense = (angle: number, say: Say): string => (Math.abs(angle) < 0.5 * deg ? 'forks in line' : `${say(Math.abs(angle), 'angle', 2)} ${angle > 0 ? 'clockwise' : 'counterclockwise'}`);
const clocked = (angle: number, say: Say): string => (Math.abs(angle) < 0.5 * deg ? 'with the forks in line' : sense(angle, say));
const shaftNames = ['upper shaft', 'lower shaft'] as const;

export default defineCalculator({
  id: 'shaft-ripple',
  version: 1,
  title: 'Steering shaft ripple and clocking',
  purpose: 'How unevenly the joints turn the box while you turn the rim evenly, and how to turn the forks so that it is least.',
  inputs: [
    { title: 'Bends', of: ['shaftJoints', 'upperJointAngle', 'middleJointAngle', 'lowerJointAngle', 'bendTwistUpper', 'bendTwistLower'] },
    { title: 'Forks', of: ['upperClocking', 'lowerClocking', 'columnForkAngle'] },
  ],
  feeds: [shaftLineFeed],
  outputs: [
    'speedRipple', 'leastSpeedRipple', 'bestUpperClocking', 'bestLowerClocking', 'ratioHighest', 'ratioLowest', 'rimAtQuickest', 'equivalentJointAngle', 'upperJointRipple', 'middleJointRipple', 'lowerJointRipple',
  ],
  compute: (v) => {
    const chain = asClocked(v);
    const best = asBest(v);
    const alone = (bend: number): number => Math.sin(bend) ** 2 / (2 * Math.cos(bend));
    return {
      speedRipple: chain.ripple, leastSpeedRipple: best.ripple, bestUpperClocking: best.scribe[0], bestLowerClocking: best.scribe[1], ratioHighest: chain.highest, ratioLowest: chain.lowest,
      rimAtQuickest: betweenPins(chain.quickest - v.columnForkAngle), equivalentJointAngle: chain.equivalent,
      upperJointRipple: v.shaftJoints === 'one' ? 0 : alone(v.upperJointAngle), middleJointRipple: v.shaftJoints === 'three' ? alone(v.middleJointAngle) : 0, lowerJointRipple: alone(v.lowerJointAngle),
    };
  },
  summary: (v, say) => {
    const scribe = v.shaftJoints === 'one' ? 'One joint has no clocking: only a smaller bend helps.' : `Clocked ${clocked(v.bestUpperClocking, say)}${v.shaftJoints === 'three' ? ` on the upper and ${clocked(v.bestLowerClocking, say)} on the lower shaft` : ''}, seen from the upper end, it would be ± ${say(v.leastSpeedRipple, 'share', 2)} in place of ± ${say(v.speedRipple, 'share', 2)}.`;
    if (v.speedRipple < 5e-4) return 'Turn the rim evenly, and the box turns evenly with it: as clocked, the joints cancel.';
    return `Turn the rim evenly, and the box runs up to ${say(v.ratioHighest - 1, 'share', 2)} quicker and ${say(1 - v.ratioLowest, 'share', 2)} slower, twice in each turn. ${scribe}`;
  },
  equations: rippleEquations,
  cautions: [
    {
      id: 'check-by-turning', level: 'warning',
      words: 'A sign typed the wrong way turns the best clocking into the worst one, and nothing here can see it.',
      todo: 'Before anything is drilled or welded: front wheels off the ground on stands, two paper dials, one on the rim and one on the box’s input. Every 15 degrees of rim, read the box. The two must agree with the chart.',
    },
    {
      id: 'do-not', level: 'danger', when: (v) => v.speedRipple > doNot,
      words: (v, say) => `As clocked, the box is ± ${say(v.speedRipple, 'share', 2)} uneven, over ± ${say(doNot, 'share')} (common practice, no source). The wheel goes heavy and light twice a turn, quick in one lock and slow in the other, and the joints hammer.`,
      todo: 'Do not drive it. Clock the forks, then lessen the larger bend or bring the bends closer together.',
      fires: { lowerJointAngle: 27 * deg }, silent: { lowerJointAngle: 18 * deg },
    },
    {
      id: 'felt', level: 'caution', when: (v) => v.speedRipple > felt && v.speedRipple <= doNot,
      words: (v, say) => `± ${say(v.speedRipple, 'share', 2)} can be felt at the rim, and passes for a notchy steering box (from ± ${say(felt, 'share')}; common practice, no source).`,
      todo: 'Compare with the best clocking below. If that is not clearly better, the bends themselves are too unequal.',
      fires: {}, silent: { lowerJointAngle: 14 * deg },
    },
    {
      id: 'clocking-would-help', level: 'notice', when: (v) => v.speedRipple > 0.02 && v.speedRipple > 1.5 * v.leastSpeedRipple,
      words: (v, say) => `Turning the forks alone would bring ± ${say(v.speedRipple, 'share', 2)} down to ± ${say(v.leastSpeedRipple, 'share', 2)}.`,
      todo: 'Splined joints turn in steps of one tooth: 36 teeth give 10 degrees. A double-D shaft has one way, so the fork must be made to it.',
      fires: { upperJointAngle: 18 * deg, upperClocking: 60 * deg }, silent: { shaftJoints: 'one' },
    },
    {
      id: 'lopsided', level: 'caution', when: (v) => v.speedRipple > 0.03 && Math.abs(Math.abs(Math.abs(v.rimAtQuickest) - 45 * deg) - 45 * deg) > 15 * deg,
      words: (v, say) => `The quickest place lies ${say(Math.abs(v.rimAtQuickest), 'angle', 2)} of rim from straight ahead. So the truck steers more to one side than to the other for the same turn of the rim.`,
      todo: 'Turn the column’s fork, all joints with it, so that the quickest or the slowest place stands straight ahead: then left and right are alike.',
      fires: { columnForkAngle: 60 * deg }, silent: { lowerJointAngle: 10 * deg },
    },
  ],
  picture: {
    title: 'The forks, seen down each shaft from its upper end',
    describe: (v, say) => (v.shaftJoints === 'one'
      ? 'One joint: there is no shaft with a fork at each end, and nothing to clock.'
      : `Each shaft seen from its upper end. The heavy upright line is the pins of its upper fork. The line with dots is the pins of its lower fork as you clocked it: ${[v.upperClocking, v.lowerClocking].slice(0, shaftsOf(v)).map((x, k) => `${say(betweenPins(x), 'angle', 2)} on the ${shaftNames[k]}`).join(', ')}. The dashed line is the best: ${[v.bestUpperClocking, v.bestLowerClocking].slice(0, shaftsOf(v)).map((x, k) => `${sense(x, say)} on the ${shaftNames[k]}`).join(', ')}, the red arc.`),
    scene: (v, _at, say) => {
      const [yours, best] = [[v.upperClocking, v.lowerClocking], [v.bestUpperClocking, v.bestLowerClocking]] as const;
      const count = Math.max(1, shaftsOf(v));
      return forksScene(shaftNames.slice(0, count).map((title, k) => ({
        title: v.shaftJoints === 'one' ? 'no shaft to clock' : title, yours: yours[k] as number, best: best[k] as number,
        labels: [`yours: ${sense(betweenPins(yours[k] as number), say)}`, `best: ${sense(best[k] as number, say)}`],
      })));
    },
  },
  charts: [
    {
      title: 'Box speed over rim speed, one turn of the rim',
      x: { label: 'rim from straight ahead, + right', dimension: 'angle' },
      y: { label: 'ratio', dimension: 'ratio', near: true },
      series: (v) => {
        const [chain, best] = [asClocked(v), asBest(v).chain];
        const curve = (ratioAt: (pins: number) => number): At[] => turns(-Math.PI, Math.PI, 120).map((rim): At => [rim, ratioAt(rim + v.columnForkAngle)]);
        return [{ label: 'as clocked', tone: 'accent', points: curve(chain.ratioAt) }, { label: 'best clocking', tone: 'ghost', points: curve(best.ratioAt) }];
      },
      marks: (v, say) => [{ at: [0, asClocked(v).ratioAt(v.columnForkAngle)], label: `${say(asClocked(v).ratioAt(v.columnForkAngle), 'ratio')} ahead` }],
      describe: (v, say) => `As clocked the box turns between ${say(v.ratioLowest, 'ratio')} and ${say(v.ratioHighest, 'ratio')} times as fast as the rim, twice up and down in one turn, quickest ${say(v.rimAtQuickest, 'angle', 2)} from straight ahead and again half a turn on. At the best clocking it stays within ± ${say(v.leastSpeedRipple, 'share', 2)}.`,
    },
    {
      title: 'How exactly must it be scribed?',
      x: { label: 'upper shaft’s clocking', dimension: 'angle' },
      y: { label: '± ripple', dimension: 'share' },
      series: (v) => [{ label: 'ripple', tone: 'plain', points: turns(-90 * deg, 90 * deg, 90).map((clocking): At => [clocking, asClocked({ ...v, upperClocking: clocking }).ripple]) }],
      marks: (v, say) => [{ at: [betweenPins(v.upperClocking), v.speedRipple], label: `yours ± ${say(v.speedRipple, 'share', 2)}` }],
      describe: (v, say) => `Ripple against the clocking of the upper shaft${v.shaftJoints === 'three' ? ', the lower one as you have it' : ''}. Yours is ± ${say(v.speedRipple, 'share', 2)} at ${say(betweenPins(v.upperClocking), 'angle', 2)}; ten degrees to either side it is ± ${say(asClocked(v, -10 * deg).ripple, 'share', 2)} and ± ${say(asClocked(v, 10 * deg).ripple, 'share', 2)}.`,
    },
  ],
  tables: [{
    caption: 'What each joint does alone',
    head: ['Joint', 'Bend', 'Ripple alone, ±'],
    rows: (v, say) => ([['column', v.upperJointAngle, v.upperJointRipple], ['middle', v.middleJointAngle, v.middleJointRipple], ['box', v.lowerJointAngle, v.lowerJointRipple]] as const)
      .filter((_, k) => k === 2 || (k === 0 ? v.shaftJoints !== 'one' : v.shaftJoints === 'three'))
      .map(([name, bend, ripple]) => [name, say(bend, 'angle'), say(ripple, 'share', 2)]),
  }],
  paper: {
    assumptions: [
      'Each joint is one cross with square pins that meet in a point.', 'Clocking is counted on each shaft from the pins of its upper fork to those of its lower fork, clockwise for who looks down the shaft from its upper end. Half a turn more is the same.',
      'Ripple is half the way from the slowest to the quickest place. Two joints in one housing count as two.', 'Rim angles count + to the right, as a driver sees it.',
    ],
    leftOut: ['Friction, play and wear, which make it feel worse.', 'Flex of the shaft under load.', 'What the side loads of a bent joint do to the bearings.', 'Body movement: on its mounts each bend changes by about a degree.'],
    sources: [
      { of: 'speed ratio of one joint', kind: 'published', id: 'bevan', note: 'derived again; its worked example agrees' },
      { of: 'angle for a given fluctuation', kind: 'published', id: 'khurmi', note: 'two worked examples agree' },
      { of: 'a chain of joints as one joint, clocking for two and three joints', kind: 'derived', note: 'checked against a mechanism solved step by step with an independent geometry library' },
      { of: 'unequal or out-of-plane bends are lessened, not removed', kind: 'published', id: 'fischer-paul', note: 'for two joints' },
      { of: 'felt from ± 6 %, not to be driven over ± 10 %', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Bevan, Theory of Machines, chapter 4, example 1 (read in a worked-solution companion): 20°, 1000 rpm, 111.4 and 98.4 rad/s',
        inputs: { shaftJoints: 'one', lowerJointAngle: 20 * deg },
        results: { ratioHighest: { value: 111.4 / 104.7198, within: 5e-4 }, ratioLowest: { value: 98.4 / 104.7198, within: 5e-4 }, equivalentJointAngle: { value: 20 * deg, within: 1e-9 } },
      },
      {
        source: 'Khurmi and Gupta, Theory of Machines, example 9.4 (read in a worked-solution companion): 19.64° for a total fluctuation of 0.12',
        inputs: { shaftJoints: 'one', lowerJointAngle: 19.64 * deg },
        results: { speedRipple: { value: 0.06, within: 1e-3 } },
      },
      {
        source: 'Worked by hand: two bends of 20° a quarter turn out of step double up to acos(cos² 20°) = 27.99°',
        inputs: { shaftJoints: 'two', upperJointAngle: 20 * deg, lowerJointAngle: 20 * deg, bendTwistUpper: 30 * deg, upperClocking: -60 * deg },
        results: { equivalentJointAngle: { value: 27.9909 * deg, within: 1e-5 }, bestUpperClocking: { value: 30 * deg, within: 1e-9 } },
      },
    ],
    related: ['shaft-line', 'shaft-bearing', 'steering-shaft'],
  },
});
