import { farthestApart, hoseSlack } from '../../engine/hoseSlack.ts';
import type { HoseState } from '../../engine/hoseSlack.ts';
import { isImpossible } from '../../engine/outcome.ts';
import { deg, inch, mm } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, Say, ValuesOf } from '../record.ts';
import { hoseScene, hoseViews } from '../scenes/hose.ts';

type Input = 'hoseFrameX' | 'hoseFrameY' | 'hoseFrameZ' | 'hoseWheelX' | 'hoseWheelY' | 'hoseWheelZ' | 'hoseOwnLength' | 'hoseOutside' | 'kingpinLowX' | 'kingpinLowY' | 'kingpinLowZ'
  | 'kingpinHighX' | 'kingpinHighY' | 'kingpinHighZ' | 'lockLeft' | 'lockRight' | 'airedOutFront' | 'liftedFront';
type V = ValuesOf<Input>;

/** Common practice, no source: a hose is bent to no less than this many outside diameters. */
const bendDiameters = 5;
/** About what two taped ends and a taped hose can be wrong by together. */
const tapeSlack = 12 * mm;
const farKnuckle = 14 * inch;

const points = (v: V) => ({
  frame: { x: v.hoseFrameX, y: v.hoseFrameY, z: v.hoseFrameZ }, wheel: { x: v.hoseWheelX, y: v.hoseWheelY, z: v.hoseWheelZ },
  low: { x: v.kingpinLowX, y: v.kingpinLowY, z: v.kingpinLowZ }, high: { x: v.kingpinHighX, y: v.kingpinHighY, z: v.kingpinHighZ },
});

const hose = (v: V) => ({ ...points(v), lockLeft: v.lockLeft, lockRight: v.lockRight, airedOut: v.airedOutFront, lifted: v.liftedFront, length: v.hoseOwnLength });
const solve = (v: V) => hoseSlack(hose(v));

function found(v: V): Exclude<ReturnType<typeof solve>, { impossible: string }> {
  const r = solve(v);
  if (isImpossible(r)) throw new RangeError(`hose: expected numbers that compute lets pass, found ${r.impossible}`);
  return r;
}

function refusal(code: string, by: number): Refusal {
  return code === 'heights-crossed'
    ? { refused: (say) => `The front ride height lifted lies ${say(by, 'length')} below the one aired out. Exchange them, or check their signs: + is up from drive height.` }
    : { refused: (say) => `The two ball joints stand ${say(by, 'length')} apart. The wheel steers about the line through them, so they must be two places, ${say(10 * mm, 'length')} apart at the least.` };
}

const where = ({ steer, height }: HoseState, v: V, say: Say): string => {
  const lock = Math.abs(steer) < 1e-9 ? 'steering straight' : `${Math.abs(steer - v.lockLeft) < 1e-9 ? 'at full left lock' : Math.abs(steer + v.lockRight) < 1e-9 ? 'at full right lock' : `turned ${say(Math.abs(steer), 'angle', 2)} ${steer > 0 ? 'left' : 'right'}`}`;
  const level = height === 0 ? 'at drive height' : height === v.airedOutFront ? 'aired out' : height === v.liftedFront ? 'lifted' : `${say(Math.abs(height), 'length', 2)} ${height > 0 ? 'above' : 'below'} drive height`;
  return `${level}, ${lock}`;
};

const nine = (v: V, of: (state: HoseState) => number) => ['aired out', 'drive height', 'lifted'].map((name, row) => [
  name, ...found(v).states.slice(3 * row, 3 * row + 3).map((state) => ({ value: of(state), dimension: 'length' as const })),
]);

export default defineCalculator({
  id: 'hose-slack',
  version: 1,
  title: 'Hose to a steered wheel',
  purpose: 'Whether a front brake hose still reaches, and still bends gently enough, at every ride height and steering lock.',
  inputs: [
    { title: 'Hose', of: ['hoseFrameX', 'hoseFrameY', 'hoseFrameZ', 'hoseWheelX', 'hoseWheelY', 'hoseWheelZ', 'hoseOwnLength', 'hoseOutside'] },
    { title: 'Line the wheel steers about', of: ['kingpinLowX', 'kingpinLowY', 'kingpinLowZ', 'kingpinHighX', 'kingpinHighY', 'kingpinHighZ'] },
    { title: 'How far it moves', of: ['lockLeft', 'lockRight', 'airedOutFront', 'liftedFront'] },
  ],
  outputs: ['hoseLeastSlack', 'hoseFarthest', 'hoseNearest', 'hoseKinkDistance', 'hoseLeastBend'],
  compute: (v) => {
    const r = solve(v);
    if (isImpossible(r)) return refusal(r.impossible, r.by ?? 0);
    const hoseLeastBend = bendDiameters * v.hoseOutside;
    return {
      hoseLeastSlack: v.hoseOwnLength - r.farthest.distance, hoseFarthest: r.farthest.distance, hoseNearest: r.nearest.distance,
      hoseKinkDistance: hoseLeastBend * Math.sqrt(2 - 2 * Math.cos(Math.min(2 * Math.PI, v.hoseOwnLength / hoseLeastBend))), hoseLeastBend,
    };
  },
  howSure: {
    draws: 5000,
    quick: (v) => {
      const r = farthestApart(hose(v));
      return isImpossible(r) ? refusal(r.impossible, r.by ?? 0) : { hoseLeastSlack: v.hoseOwnLength - r.farthest.distance };
    },
  },
  summary: (v, say) => {
    const { farthest, nearest } = found(v);
    return `${v.hoseLeastSlack < 0 ? `The hose is ${say(-v.hoseLeastSlack, 'length')} too short` : `The hose has ${say(v.hoseLeastSlack, 'length')} to spare where its ends are farthest apart`}: ${where(farthest, v, say)}. They come nearest ${where(nearest, v, say)}: ${say(v.hoseNearest, 'length')}, ${v.hoseNearest < v.hoseKinkDistance ? `and below ${say(v.hoseKinkDistance, 'length')} it must bend too tight somewhere` : v.hoseKinkDistance === 0 ? 'and a hose this long can be laid gently at any distance' : `and down to ${say(v.hoseKinkDistance, 'length')} some route is gentle enough`}.`;
  },
  equations: [
    { result: 'hoseLeastSlack', expression: 'hoseOwnLength - hoseFarthest', words: 'What the hose is long, less how far its ends come apart.', source: 'derived' },
    { result: 'hoseLeastBend', expression: '5 * hoseOutside', words: 'Bent tighter, a hose kinks or its layers part.', source: 'common practice, no source' },
    { result: 'hoseKinkDistance', expression: 'hoseLeastBend * sqrt(2 - 2 * cos(min(2 * pi, hoseOwnLength / hoseLeastBend)))', words: 'Of all curves that bend nowhere tighter than R, the circular arc brings its ends nearest. This is the chord of an arc as long as the hose; a hose as long as a whole circle can always be laid in one.', source: 'derived; that the arc is the extreme case is Schur’s comparison theorem, from memory' },
  ],
  methods: [
    { result: 'hoseFarthest', words: 'The wheel’s end turns about the line of the two ball joints and goes up and down with the axle. The greatest of three heights by three places of the steering, and of any angle between the locks at which the distance stops growing.', source: 'derived: rigid motion' },
    { result: 'hoseNearest', words: 'The same for the least, over every height and angle of the travel.', source: 'derived: rigid motion' },
  ],
  cautions: [
    {
      id: 'both-sides', level: 'warning',
      words: 'This is the straight distance between two ends of one hose. A hose that reaches can still rub on the tire, the spring or the frame, and a rubbed hose holds in the driveway and bursts in the emergency.',
      todo: 'Look at the real hose, both wheels, at three heights by three places of the steering: nine photographs a side. Keep 1 in (25 mm) to anything that moves (common practice, no source).',
    },
    {
      id: 'too-short', level: 'danger', when: (v) => v.hoseLeastSlack < 0,
      words: (v, say) => `The hose is ${say(-v.hoseLeastSlack, 'length')} too short, ${where(found(v).farthest, v, say)}. It tears off there, and that circuit is gone.`,
      todo: 'Fit a longer hose made for brakes, or move its frame end. Limit the lift until then. Do not drive it.',
      fires: { hoseOwnLength: 8 * inch }, silent: {},
    },
    {
      id: 'taut', level: 'warning', when: (v) => v.hoseLeastSlack >= 0 && v.hoseLeastSlack < tapeSlack,
      words: (v, say) => `Only ${say(v.hoseLeastSlack, 'length')} to spare, ${where(found(v).farthest, v, say)}: about what the tape can be wrong by. A hose that is pulled straight works at its fittings until they crack.`,
      todo: 'Frame on stands, axle hanging, the other axle chocked: turn the wheel there by hand and feel the hose. Give it more length.',
      fires: { hoseOwnLength: 11.6 * inch }, silent: {},
    },
    {
      id: 'bent-tight', level: 'warning', when: (v) => v.hoseNearest < v.hoseKinkDistance,
      words: (v, say) => `Where its ends come to ${say(v.hoseNearest, 'length')} (${where(found(v).nearest, v, say)}) even the gentlest curve bends tighter than ${say(v.hoseLeastBend, 'length')}, five outside diameters (common practice, no source). A kinked hose closes: the brake does not apply, or does not let go.`,
      todo: 'Shorten the hose, turn a fitting, or carry it on a bracket in between and compute both stretches.',
      fires: { hoseWheelY: 20 * inch, hoseWheelZ: 6 * inch, hoseOutside: 15 * mm, hoseOwnLength: 12 * inch }, silent: {},
    },
    {
      id: 'far-from-its-line', level: 'notice', when: (v) => Math.hypot(v.hoseWheelX - v.kingpinLowX, v.hoseWheelY - v.kingpinLowY) > farKnuckle,
      words: (_v, say) => `The wheel’s end of the hose is more than ${say(farKnuckle, 'length')} from the lower ball joint.`,
      todo: 'Check both: same side of the truck, same mark, left is +.',
      fires: { hoseWheelY: 50 * inch }, silent: {},
    },
  ],
  picture: {
    title: 'The hose’s two ends in nine states',
    describe: (v, say, at) => {
      const { farthest, nearest } = found(v);
      return `${at === 0 ? 'From above, the truck’s left side down, front on the left' : 'From the front, the truck’s left side on the right'}, to scale. Dashed lines join the hose’s end on the frame to where its other end goes, at three heights and three places of the steering, and the two ball joints as they stand at drive height. Heavy red line: farthest, ${say(farthest.distance, 'length')}, ${where(farthest, v, say)}. Heavy green line: nearest, ${say(nearest.distance, 'length')}, ${where(nearest, v, say)}.`;
    },
    states: { label: 'View', names: hoseViews, start: 1 },
    scene: (v, at, say) => hoseScene({ ...points(v), ...found(v) }, at, say),
  },
  tables: [
    { caption: 'Slack of the hose, − is too short', head: ['', 'Full right', 'Straight', 'Full left'], rows: (v) => nine(v, ({ slack }) => slack) },
    { caption: 'Between its ends', head: ['', 'Full right', 'Straight', 'Full left'], rows: (v) => nine(v, ({ distance }) => distance) },
  ],
  paper: {
    assumptions: [
      'The hose runs from a bracket on the frame to a point that steers with the wheel. All points at drive height, steering straight, from one mark on the frame: x forward, y left, z up.',
      'The wheel turns about the line through its two ball joints (or along the kingpin), and goes straight up and down with the axle. The locks are those of this wheel: the two wheels turn by different angles.',
      'The length is what can bend, fittings left out, and the ends are where it leaves them.',
    ],
    leftOut: ['The way the fittings point, which bends the hose tighter than the arc here. Its weight, twist and stiffness.', 'Brackets in between: one stretch at a time. A bracket on an arm moves about half as far as the wheel.', 'Camber and caster that change with height, and the arcs of the arms.', 'What the hose can rub on.'],
    sources: [
      { of: 'rigid motion, slack, chord of an arc', kind: 'derived' },
      { of: 'the circular arc as the extreme case (Schur’s comparison theorem)', kind: 'from memory' },
      { of: 'five outside diameters, 1 in to moving things', kind: 'common practice' },
      { of: 'axes', kind: 'published', id: 'iso-8855', note: 'x forward, y left, z up' },
    ],
    examples: [
      {
        source: 'Worked by hand: upright kingpin, hose end 100 mm outside it, frame end 300 mm inside it at the same level, steering 90° would bring 316 mm; locks of 60°: straight 400 mm is the farthest, at a lock √(0.35² + 0.0866²) = 360.6 mm the nearest',
        inputs: {
          hoseFrameX: 0, hoseFrameY: 0.3, hoseFrameZ: 0.1, hoseWheelX: 0, hoseWheelY: 0.7, hoseWheelZ: 0.1, kingpinLowX: 0, kingpinLowY: 0.6, kingpinLowZ: 0, kingpinHighX: 0, kingpinHighY: 0.6, kingpinHighZ: 0.2,
          lockLeft: 60 * deg, lockRight: 60 * deg, airedOutFront: 0, liftedFront: 0, hoseOwnLength: 0.45,
        },
        results: { hoseFarthest: { value: 0.4, within: 1e-9 }, hoseNearest: { value: 0.36056, within: 1e-4 }, hoseLeastSlack: { value: 0.05, within: 1e-9 } },
      },
    ],
    related: ['every-state', 'clearance-sweep', 'drop-points', 'line-strength'],
  },
});
