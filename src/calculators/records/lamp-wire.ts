import { isImpossible } from '../../engine/outcome.ts';
import { awgArea, lampWiring } from '../../engine/stopLamp.ts';
import { defineCalculator } from '../record.ts';
import type { ValuesOf } from '../record.ts';

type Wire = ValuesOf<'lampCurrent' | 'wireLength' | 'wireArea' | 'wireReturn' | 'supplyVoltage'>;
const dropOf = (v: Wire) => lampWiring({ current: v.lampCurrent, length: v.wireLength, area: v.wireArea, returnBy: v.wireReturn, supply: v.supplyVoltage });
const copper = 1.7241e-8;

export default defineCalculator({
  id: 'lamp-wire',
  version: 1,
  title: 'Wire to the stop lamps',
  purpose: 'How much voltage the wire takes from the lamps, and which gauge leaves enough.',
  inputs: [
    { title: 'Lamps', of: ['lampCurrent', 'supplyVoltage'] },
    { title: 'Wire', of: ['wireLength', 'wireArea', 'wireReturn'] },
  ],
  outputs: ['wireDrop', 'lampVoltage', 'wireDropShare', 'copperResistivity'],
  compute: (v) => {
    const r = dropOf(v);
    if (isImpossible(r)) return { refused: (say) => `This wire would take ${say(r.by ?? 0, 'voltage')} more than the battery has, so the lamps cannot draw that current through it. A thicker or shorter wire.` };
    return { wireDrop: r.drop, lampVoltage: r.atLamp, wireDropShare: r.dropFraction, copperResistivity: copper };
  },
  summary: (v, say) => `The wire takes ${say(v.wireDrop, 'voltage')} and leaves ${say(v.lampVoltage, 'voltage')} at the lamps.`,
  equations: [
    { result: 'wireDrop', expression: 'lampCurrent * copperResistivity * 2 * wireLength / wireArea', words: 'There and back: the ground wire is as long.', source: 'derived: Ohm’s law', when: (v) => v['wireReturn'] === 'wire' },
    { result: 'wireDrop', expression: 'lampCurrent * copperResistivity * wireLength / wireArea', words: 'One way; the frame counts as nothing, if its joints are clean.', source: 'derived: Ohm’s law', when: (v) => v['wireReturn'] === 'frame' },
    { result: 'lampVoltage', expression: 'supplyVoltage - wireDrop', words: 'What is left for the filament.', source: 'defined' },
    { result: 'wireDropShare', expression: 'wireDrop / supplyVoltage', words: 'The part that only warms the wire.', source: 'defined' },
  ],
  cautions: [
    {
      id: 'drop-high', level: 'warning', when: (v) => v.wireDrop > 0.5,
      words: (v, say) => `${say(v.wireDrop, 'voltage')} are lost before switch, fuse and ground have taken theirs. Filament lamps dim much faster than their voltage falls.`,
      todo: 'One gauge thicker, or a relay at the back fed by its own wire. Keep the whole drop to 0.5 V, meter from battery to lamp, lamps on (common practice, no source).',
      fires: {}, silent: { wireArea: 3.31e-6 },
    },
    {
      id: 'switch-load', level: 'caution', when: (v) => v.lampCurrent > 4,
      words: (v, say) => `${say(v.lampCurrent, 'current')} through a small switch burns its contacts. They fail open, and the lamps are dark; or welded, and they are always on.`,
      todo: 'Let the switch work a relay unless its rating is above the lamps’ current. Fuse at the battery, 10 to 15 A (common practice, no source).',
      fires: {}, silent: { lampCurrent: 1 },
    },
    { id: 'measure-it', level: 'notice', words: 'A rusty ground or a bad crimp often costs more than the wire.', todo: 'Meter from the battery’s minus to the lamp’s own shell, lamps on: it should show nearly nothing.' },
  ],
  tables: [{
    caption: 'Voltage lost by gauge, this length and current',
    head: ['Gauge', 'Copper', 'Lost'],
    rows: (v, say) => [18, 16, 14, 12].map((gauge) => {
      const wireArea = awgArea({ gauge }).area;
      const r = dropOf({ ...v, wireArea });
      return [`${gauge} AWG`, `${(wireArea * 1e6).toFixed(2)} mm²`, isImpossible(r) ? 'all of it' : say(r.drop, 'voltage')];
    }),
  }],
  paper: {
    assumptions: ['Copper at 68 °F (20 °C).', 'The lamps draw the current you typed.'],
    leftOut: ['Switch, fuse, connectors and ground.', 'Heat: 4 % more for each 18 °F (10 °C).', 'A dimmed lamp draws a little less.'],
    sources: [{ of: 'voltage drop', kind: 'derived', note: 'Ohm’s law' }, { of: 'resistivity of copper 1.7241e-8 Ω·m; gauge sizes', kind: 'from memory' }, { of: '0.5 V, relay, fuse', kind: 'common practice' }],
    examples: [{
      source: 'Worked by hand: 5 A, 5 m, 1.0 mm², ground wire',
      inputs: { lampCurrent: 5, wireLength: 5, wireArea: 1e-6, wireReturn: 'wire' },
      results: { wireDrop: { value: 0.86, within: 0.006 } },
    }],
    related: ['stop-lamp', 'plumbing-and-lamps'],
  },
});
