import { isImpossible } from '../../engine/outcome.ts';
import { pedalCut } from '../../engine/pedalCut.ts';
import { inch, lbf } from '../../units/si.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { defineCalculator } from '../record.ts';

export default defineCalculator({
  id: 'pedal-cut',
  version: 1,
  title: 'Cutting the pedal',
  purpose: 'What a shorter pedal arm does to ratio, effort and travel, before the saw.',
  inputs: [
    { title: 'Pedal', of: ['padArm', 'pedalRatio', 'armCut'] },
    { title: 'The stop to keep', of: ['controlForce', 'padTravelNormal'] },
  ],
  feeds: [brakingFeed],
  outputs: ['cutRatio', 'cutForce', 'cutTravel', 'cutForceMore'],
  compute: (v) => {
    const r = pedalCut({ padArm: v.padArm, pedalRatio: v.pedalRatio, cut: v.armCut });
    if (isImpossible(r)) return { refused: (say) => `The cut takes ${say(r.by ?? 0, 'length')} more than the whole arm.` };
    return { cutRatio: r.ratio, cutForce: r.effort * v.controlForce, cutTravel: r.travel * v.padTravelNormal, cutForceMore: r.effort };
  },
  summary: (v, say) => (v.armCut === 0 ? `With nothing off the arm the ratio stays ${say(v.pedalRatio, 'ratio')}: ${say(v.controlForce, 'force')} and ${say(v.padTravelNormal, 'length')} of pedal.` : `${say(v.armCut, 'length')} off the arm makes the ratio ${say(v.cutRatio, 'ratio')} instead of ${say(v.pedalRatio, 'ratio')}. The same stop then takes ${say(v.cutForce, 'force')} instead of ${say(v.controlForce, 'force')}, and ${say(v.cutTravel, 'length')} of pedal instead of ${say(v.padTravelNormal, 'length')}.`),
  equations: [
    { result: 'cutForceMore', expression: 'padArm / (padArm - armCut)', words: 'A shorter lever needs more push, in proportion.', source: 'derived: one lever' },
    { result: 'cutRatio', expression: 'pedalRatio / cutForceMore', words: 'The clevis stays where it is, so the ratio falls with the arm.', source: 'derived: one lever' },
    { result: 'cutForce', expression: 'controlForce * cutForceMore', words: 'For the same push on the masters.', source: 'derived' },
    { result: 'cutTravel', expression: 'padTravelNormal / cutForceMore', words: 'What the foot gives in push it gets back in travel.', source: 'derived: work in is work out' },
  ],
  cautions: [
    {
      id: 'ratio-low', level: 'warning', when: (v) => v.cutRatio < 5,
      words: (v, say) => `A ratio of ${say(v.cutRatio, 'ratio')} is low for brakes without a booster, where 5.5 to 7 is usual (common practice, no source). The weakest driver may not stop the truck.`,
      todo: 'Leave the arm longer, or go to smaller bores and look at the travel they cost.',
      fires: { armCut: 3 * inch }, silent: {},
    },
    {
      id: 'force-high', level: 'warning', when: (v) => v.cutForce > 112 * lbf,
      words: (v, say) => `The same stop takes ${say(v.cutForce, 'force')}. New light vehicles must stop within 500 N (112 lbf) (FMVSS 135 S7.5, a yardstick); many drivers have less to give.`,
      todo: 'Have the weakest driver push a bathroom scale against a wall, seated.',
      fires: { armCut: 3 * inch }, silent: { armCut: 0.5 * inch },
    },
    {
      id: 'weld-in-arm', level: 'danger',
      words: 'A pedal arm that breaks at a weld leaves no brake at all. Arms are bent hardest near the clevis; a butt weld there, or one with a notch, cracks after years and lets go in a panic push.',
      todo: 'Move the pad up the arm and leave the arm whole, or have it sleeved and welded by a qualified welder, away from the clevis. Push-test it with 450 lbf before it goes in the truck.',
    },
  ],
  charts: [{
    title: 'Foot force and pedal travel against the cut',
    x: { label: 'cut', dimension: 'length' },
    y: { label: 'times as much', dimension: 'ratio', near: true },
    series: (v) => {
      const cuts = Array.from({ length: 31 }, (_, k) => (k / 30) * Math.min(0.6 * v.padArm, Math.max(2 * v.armCut, 0.3 * v.padArm)));
      return [{ label: 'foot force', tone: 'accent', points: cuts.map((n) => [n, v.padArm / (v.padArm - n)] as const) }, { label: 'pedal travel', tone: 'plain', points: cuts.map((n) => [n, (v.padArm - n) / v.padArm] as const) }];
    },
    describe: (v, say) => `The more comes off, the faster the force rises: at ${say(v.armCut, 'length')} it is ${say(v.cutForceMore, 'ratio')} times as much, while travel falls to ${say(1 / v.cutForceMore, 'ratio')} of what it was.`,
  }],
  paper: {
    assumptions: ['The clevis stays where it is; only the pad moves along the line to the pivot.', 'The stop is the same: the same push and stroke at the masters.'],
    leftOut: ['A pad that ends up nearer the driver or off the foot’s line: place it again.', 'The ratio’s change through the swing, which the pedal ratio calculator has.'],
    sources: [{ of: 'ratio, force, travel', kind: 'derived', note: 'one lever' }, { of: 'ratio 5.5 to 7', kind: 'common practice' }, { of: '500 N', kind: 'published', id: 'fmvss-135', note: 'S7.5; a yardstick, not a target' }],
    examples: [{
      source: 'Worked by hand: 310 mm arm at 6.2, 50 mm cut',
      inputs: { padArm: 0.31, pedalRatio: 6.2, armCut: 0.05, controlForce: 400, padTravelNormal: 0.1 },
      results: { cutRatio: { value: 5.2, within: 1e-9 }, cutForce: { value: 476.92, within: 1e-4 }, cutTravel: { value: 0.08387, within: 1e-3 } },
    }],
    related: ['pedal-placement', 'pedal-ratio', 'pedal-effort', 'braking-rate'],
  },
});
