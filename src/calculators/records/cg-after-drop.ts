import { cgAfterDrop } from '../../engine/cgHeight.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { inch, lb } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { dropHeightScene } from '../scenes/drop-height.ts';

type Inputs = 'frontAxleLoad' | 'rearAxleLoad' | 'stockCgHeight' | 'bodyMass' | 'bodyDrop' | 'sprungMass' | 'suspensionDropFront' | 'suspensionDropRear';
type V = ValuesOf<Inputs>;

const solve = (v: V) => cgAfterDrop({
  mass: v.frontAxleLoad + v.rearAxleLoad, stockCgHeight: v.stockCgHeight, bodyMass: v.bodyMass, bodyDrop: v.bodyDrop, sprungMass: v.sprungMass,
  frontSuspensionDrop: v.suspensionDropFront, rearSuspensionDrop: v.suspensionDropRear, frontLoad: v.frontAxleLoad, rearLoad: v.rearAxleLoad,
});

function refuse(code: string, by: number): Refusal {
  return {
    refused: (say) => ({
      'body-above-sprung-mass': `The body is ${say(by, 'mass')} heavier than all that rides on the springs, and it is part of that. Check both masses.`,
      'sprung-above-total-mass': `What rides on the springs is ${say(by, 'mass')} heavier than the truck on the scales. Check both.`,
      'cg-not-above-ground': `So much drop would put the center of gravity ${say(by, 'length')} under the road. Check the drops and the masses.`,
    })[code] ?? 'These masses and drops fit no truck.',
  };
}

const down = (change: number): string => (change <= 0 ? 'comes down' : 'goes up');

export default defineCalculator({
  id: 'cg-after-drop',
  version: 1,
  title: 'Height of the center of gravity after the drop',
  purpose: 'How much of the drop the center of gravity follows, and where that leaves it.',
  inputs: [
    { title: 'Truck before the drop', of: ['frontAxleLoad', 'rearAxleLoad', 'stockCgHeight'] },
    { title: 'Body drop', of: ['bodyMass', 'bodyDrop'] },
    { title: 'Suspension', of: ['sprungMass', 'suspensionDropFront', 'suspensionDropRear'] },
  ],
  outputs: ['cgHeightAfterDrop', 'cgHeightChange', 'cgChangeByBody', 'cgChangeBySuspension', 'mass', 'rearLoadFraction'],
  compute: (v) => {
    const r = solve(v);
    if (isImpossible(r)) return refuse(r.impossible, r.by ?? 0);
    const mass = v.frontAxleLoad + v.rearAxleLoad;
    return { cgHeightAfterDrop: r.cgHeight, cgHeightChange: r.change, cgChangeByBody: r.byBody, cgChangeBySuspension: r.bySuspension, mass, rearLoadFraction: v.rearAxleLoad / mass };
  },
  summary: (v, say) => `The center of gravity ${down(v.cgHeightChange)} by ${say(Math.abs(v.cgHeightChange), 'length')}, to ${say(v.cgHeightAfterDrop, 'length')} above the road. The body drop moves it ${say(v.cgChangeByBody, 'length')}, the suspension ${say(v.cgChangeBySuspension, 'length')} (− is down).`,
  equations: [
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'The rear’s part of it. It also says how far back the center of gravity stands.', source: 'derived' },
    { result: 'cgChangeByBody', expression: '-bodyMass * bodyDrop / mass', words: 'Only what came down counts, by its part of the whole. Engine, transmission and frame stay.', source: 'derived: first moment of mass' },
    { result: 'cgChangeBySuspension', expression: '-sprungMass * (suspensionDropFront * (1 - rearLoadFraction) + suspensionDropRear * rearLoadFraction) / mass', words: 'Lower suspension brings down all that rides on it. Each end’s drop counts with the load that end carries.', source: 'derived: first moment of mass' },
    { result: 'cgHeightChange', expression: 'cgChangeByBody + cgChangeBySuspension', words: 'Both together.', source: 'derived' },
    { result: 'cgHeightAfterDrop', expression: 'stockCgHeight + cgHeightChange', words: 'What is left of the height.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'reckoned-not-measured', level: 'warning',
      words: 'This is figured from a body mass that most people guess. A bar turned toward the rear because the truck “must be low now” can lock the rear first and spin it.',
      todo: 'Set the brakes for the height before the drop until an axle lift on the finished truck has shown the new one.',
    },
    {
      id: 'load-sensing-valve', level: 'warning', when: (v) => v.suspensionDropRear > 0,
      words: (v, say) => `A rear suspension ${say(v.suspensionDropRear, 'length')} lower looks like a loaded bed to a load-sensing valve. It passes full pressure to an empty rear axle, which then locks first. The body drop does not move that valve; the suspension does.`,
      todo: 'Trace the rear line. If there is such a valve, set it to its maker’s figure at the new height or take it out whole, then check the lock order.',
      fires: {}, silent: { suspensionDropRear: 0 },
    },
    {
      id: 'raised', level: 'caution', when: (v) => v.cgHeightChange > 0,
      words: (v, say) => `The center of gravity goes up by ${say(v.cgHeightChange, 'length')}: more load leaves the rear in a stop, and the truck rolls more.`,
      todo: 'Give the rear brakes less, not more.',
      fires: { bodyDrop: -4 * inch, suspensionDropFront: 0, suspensionDropRear: 0 }, silent: {},
    },
    {
      id: 'very-low', level: 'notice', when: (v) => v.cgHeightAfterDrop < 0.4,
      words: (v, say) => `${say(v.cgHeightAfterDrop, 'length')} is lower than an engine on its mounts usually allows.`,
      todo: 'Check the body mass and the drops before you use it.',
      fires: { bodyMass: 1800 * lb, bodyDrop: 10 * inch, suspensionDropFront: 5 * inch, suspensionDropRear: 5 * inch }, silent: {},
    },
  ],
  picture: {
    title: 'The center of gravity follows a part of the drop',
    describe: (v, say, at) => `A pickup, front on the left, outline invented, heights moved to scale. ${at === 0 ? `Before the drop: center of gravity ${say(v.stockCgHeight, 'length')} above the road.` : `After: the frame is ${say(v.suspensionDropFront, 'length')} lower at the front axle and ${say(v.suspensionDropRear, 'length')} at the rear, the body ${say(v.bodyDrop, 'length')} lower over the frame, its old place dashed. The center of gravity is at ${say(v.cgHeightAfterDrop, 'length')}; a dashed tick shows where it was.`}`,
    states: { label: 'Truck', names: ['before', 'after'], start: 1 },
    scene: (v, at, say) => {
      const now = at === 0 ? v.stockCgHeight : v.cgHeightAfterDrop;
      return dropHeightScene({
        frameDown: at === 0 ? { front: 0, rear: 0 } : { front: v.suspensionDropFront, rear: v.suspensionDropRear }, bodyDown: at === 0 ? 0 : v.bodyDrop,
        rearFraction: v.rearLoadFraction, before: v.stockCgHeight, now, label: say(now, 'length'),
      });
    },
  },
  charts: [{
    title: 'Height of the center of gravity against the body drop',
    x: { label: 'body drop', dimension: 'length' },
    y: { label: 'height', dimension: 'length' },
    series: (v) => {
      const end = Math.max(6 * inch, v.bodyDrop);
      const line = (start: number) => [[0, start], [end, start - (v.bodyMass * end) / v.mass]] as const;
      return [
        { label: 'suspension as it was', tone: 'ghost', points: line(v.stockCgHeight) },
        { label: 'suspension as typed', tone: 'plain', points: line(v.stockCgHeight + v.cgChangeBySuspension) },
      ];
    },
    marks: (v, say) => [{ at: [v.bodyDrop, v.cgHeightAfterDrop], label: say(v.cgHeightAfterDrop, 'length'), tone: 'alert' }],
    describe: (v, say) => `Two straight lines that fall by ${say((v.bodyMass / v.mass) * inch, 'length', 2)} for each inch of body drop, ${say(-v.cgChangeBySuspension, 'length')} apart: the upper without the suspension drop, the lower with it. This truck is at ${say(v.cgHeightAfterDrop, 'length')}.`,
  }],
  tables: [{
    caption: 'What each drop brings',
    head: ['', 'Mass that moves', 'Drop', 'Center of gravity', 'Follows'],
    rows: (v, say) => {
      const suspension = v.suspensionDropFront * (1 - v.rearLoadFraction) + v.suspensionDropRear * v.rearLoadFraction;
      return [
        ['body over frame', say(v.bodyMass, 'mass'), say(v.bodyDrop, 'length'), say(v.cgChangeByBody, 'length'), say(v.bodyMass / v.mass, 'share')],
        ['suspension', say(v.sprungMass, 'mass'), say(suspension, 'length'), say(v.cgChangeBySuspension, 'length'), say(v.sprungMass / v.mass, 'share')],
      ];
    },
  }],
  paper: {
    assumptions: ['With a channeled floor, the floor, seats and driver keep their height over the frame and are no part of the mass that moves. With a stock floor they come down too.', 'Smaller tires lower all of it: take their loss of radius off the height before the drop.', 'The body comes down straight; its drop is the one at its own center.', 'The axle loads are those of the truck before the drop, and the drop does not move the center of gravity fore and aft.'],
    leftOut: ['Metal cut out or added, wheels and tires changed: weigh and lift the finished truck.', 'The center of the sprung mass is not quite that of the truck: a few percent of the difference between the two suspension drops.'],
    sources: [
      { of: 'first moment of mass', kind: 'derived' },
      { of: 'body mass of 350 to 520 kg, sprung mass of 0.88 of the total', kind: 'common practice' },
      { of: 'range of stock heights', kind: 'published', id: 'pickup-inertia' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: 430 kg of 1340 kg comes down 3 in over the frame',
        inputs: { frontAxleLoad: 777.2, rearAxleLoad: 562.8, stockCgHeight: 0.65, bodyMass: 430, bodyDrop: 3 * inch, sprungMass: 1180, suspensionDropFront: 0, suspensionDropRear: 0 },
        results: { cgHeightChange: { value: -0.96 * inch, within: 0.004 } },
      },
      {
        source: 'Reference truck worked by hand: 1180 kg of 1340 kg comes down 5 in on its suspension',
        inputs: { frontAxleLoad: 777.2, rearAxleLoad: 562.8, stockCgHeight: 0.65, bodyMass: 430, bodyDrop: 0, sprungMass: 1180, suspensionDropFront: 5 * inch, suspensionDropRear: 5 * inch },
        results: { cgHeightChange: { value: -4.4 * inch, within: 0.002 } },
      },
    ],
    related: ['bias', 'body-drop-clearance', 'cg-by-axle-lift', 'load-transfer', 'body-drop'],
  },
});
