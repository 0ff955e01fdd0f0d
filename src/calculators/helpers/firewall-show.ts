import { mm } from '../../units/si.ts';
import type { Chart, Table } from '../show.ts';
import type { ValuesOf } from '../record.ts';
import { bound, drumhead, loadsOf, padLost } from './firewall.ts';
import type { V } from './firewall.ts';

const edges = ['supported', 'clamped'] as const;

export const thicknessChart: Chart<V & ValuesOf<'flangeMoveSoft' | 'flangeMoveStiff'>> = {
  title: 'Flange movement against plate thickness',
  x: { label: 'plate thickness', dimension: 'length' },
  y: { label: 'flange movement', dimension: 'length' },
  series: (v) => {
    const test = loadsOf(v, v.dialTestForce);
    const steps = Array.from({ length: 49 }, (_, k) => v.plateThickness * (0.6 + k / 40));
    const curve = (edge: (typeof edges)[number]) => steps.map((plateThickness) => [plateThickness, bound({ ...v, plateThickness }, test, edge).flange] as const);
    return [
      { label: 'edges free to turn', tone: 'accent', points: curve('supported') },
      { label: 'edges held', tone: 'plain', points: curve('clamped') },
      { label: 'limit', tone: 'alert', points: [steps[0] as number, steps[48] as number].map((t) => [t, 1 * mm] as const) },
    ];
  },
  marks: (v) => [{ at: [v.plateThickness, v.flangeMoveSoft], label: 'yours, at most' }, { at: [v.plateThickness, v.flangeMoveStiff], label: 'at least' }],
  describe: (v, say) => `Movement falls with the cube of the thickness. Yours, ${say(v.plateThickness, 'length', 2)}, gives ${say(v.flangeMoveStiff, 'length', 2)} to ${say(v.flangeMoveSoft, 'length', 2)}; half as thick again would give ${say(v.flangeMoveStiff / 3.375, 'length', 2)} to ${say(v.flangeMoveSoft / 3.375, 'length', 2)}. The limit line is 0.04 in (1.0 mm).`,
};

export const cases: Table<V> = {
  caption: 'The same plate in three places',
  head: ['What it holds', 'On the sheet', 'Flange moves at most', 'Pedal loses'],
  rows: (v) => [
    { name: 'brake, one frame', at: { ...v, mountCase: 'frame' as const }, force: v.dialTestForce },
    { name: 'brake, firewall between', at: { ...v, mountCase: 'apart' as const }, force: v.dialTestForce },
    { name: 'clutch master alone', at: { ...v, mountCase: 'apart' as const, pedalRatio: v.clutchPedalRatio }, force: v.clutchLegForce },
  ].map(({ name, at, force }) => {
    const load = loadsOf(at, force);
    if (!(load.push > 0)) return [name, { value: 0, dimension: 'force' as const }, 'nothing', 'nothing'];
    const soft = bound(at, load, 'supported');
    const absurd = soft.flange > drumhead * v.plateThickness;
    return [name, { value: load.push, dimension: 'force' as const }, absurd ? 'bulges: no plate' : { value: soft.flange, dimension: 'length' as const, digits: 2 }, absurd ? '–' : { value: padLost(at, soft), dimension: 'length' as const, digits: 2 }];
  }),
};
