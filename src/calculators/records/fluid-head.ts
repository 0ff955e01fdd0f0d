import { standardGravity } from '../../engine/constants.ts';
import { inch, psi } from '../../units/si.ts';
import { sides } from '../helpers/circuit-volume.ts';
import type { Side } from '../helpers/circuit-volume.ts';
import { headsOf, least, movesHere, stateName } from '../helpers/fluid-head.ts';
import type { Heads } from '../helpers/fluid-head.ts';
import { defineCalculator } from '../record.ts';
import type { Equation, Refusal } from '../record.ts';
import { headScene } from '../scenes/head.ts';
import type { QuantityKey } from '../vocabulary/index.ts';

type Advice = 'none' | 'slope' | 'level';
const advice = (leastHead: number, levelHead: number): Advice => (leastHead >= 0 ? 'none' : levelHead >= 0 ? 'slope' : 'level');

/** Inside no wheel a caliper can be farther from its axle. */
const wheel = 16 * inch;

/** States of the picture: which ride height, and how the truck is turned. */
const states = [
  ['drive', 0, 'none'], ['aired out', 0, 'out'], ['aired out, nose up', 1, 'out'], ['aired out, nose down', -1, 'out'], ['lifted', 0, 'up'], ['rear jacked', -2, 'none'],
] as const;

function turned(v: Heads, turn: number): number {
  return Math.abs(turn) === 2 ? Math.sign(turn) * Math.asin(v.jackLift / v.wheelbase) : turn * Math.atan(v.steepestGrade);
}

function sideEquations(side: Side): readonly Equation[] {
  const key = (name: string): QuantityKey => `${side}${name}` as QuantityKey;
  const apart = `abs(reservoirStation - ${side}BleederStation)`;
  const over = `(reservoirHeight - ${side}BleederHeight)`;
  return [
    { result: key('LevelHead'), expression: `reservoirHeight - ${side}BleederHeight + min(min(0, airedOutHere), liftedHere)`, words: 'The reservoir goes up and down with the frame, the caliper stays with its axle: the lowest of three ride heights.', source: 'derived' },
    {
      result: key('LeastHead'), expression: `min(${side}LevelHead, min((${side}LevelHead - ${apart} * steepestGrade) / sqrt(1 + steepestGrade^2), ${over} * sqrt(1 - (jackLift / wheelbase)^2) - ${apart} * jackLift / wheelbase))`,
      words: 'Turn the truck and whatever stands apart fore and aft rises or sinks: on the steepest grade either way at the lowest ride height, or with an axle on the jack.', source: 'derived: rotation',
    },
    { result: key('HeadPressure'), expression: `fluidDensity * g * ${side}LeastHead`, words: 'The weight of that column.', source: 'derived: hydrostatics' },
  ];
}

function refuse(v: Heads): Refusal | undefined {
  if (v.jackLift >= v.wheelbase) return { refused: (say) => `An axle lifted by ${say(v.jackLift, 'length')} on a wheelbase of ${say(v.wheelbase, 'length')} stands the truck on its end.` };
  for (const side of sides) {
    const at = v[`${side}BleederStation`];
    const off = side === 'front' ? at : at + v.wheelbase;
    if (Math.abs(off) > wheel) {
      return {
        refused: (say) => `The ${side} caliper at ${say(at, 'length')} stands ${say(Math.abs(off), 'length')} ${off > 0 ? 'ahead of' : 'behind'} the ${side} axle${side === 'rear' ? `, which is at ${say(-v.wheelbase, 'length')}` : ''}. A caliper sits inside its wheel, so ${say(wheel, 'length')} is the most: ${say(Math.abs(off) - wheel, 'length')} too far. Forward is +, from the front axle line.`,
      };
    }
  }
  return undefined;
}

export default defineCalculator({
  id: 'fluid-head',
  version: 1,
  title: 'Reservoir height and residual valve',
  purpose: 'Whether the reservoir stands above every caliper at every ride height, on a slope and on the jack, or fluid can run back.',
  inputs: [
    { title: 'Heights at drive height', of: ['reservoirHeight', 'frontBleederHeight', 'rearBleederHeight'] },
    { title: 'Fore and aft', of: ['reservoirStation', 'frontBleederStation', 'rearBleederStation', 'wheelbase'] },
    { title: 'Ride heights', of: ['airedOutFront', 'airedOutRear', 'liftedFront', 'liftedRear'] },
    { title: 'Slope, jack and fluid', of: ['steepestGrade', 'jackLift', 'fluidDensity'] },
  ],
  outputs: ['rearLeastHead', 'frontLeastHead', 'rearHeadAdvice', 'frontHeadAdvice', 'rearLevelHead', 'frontLevelHead', 'rearHeadPressure', 'frontHeadPressure', 'airedOutHere', 'liftedHere'],
  compute: (v) => {
    const no = refuse(v);
    if (no) return no;
    const of = (side: Side) => {
      const heads = headsOf(v, side);
      const worst = least(heads).height;
      const level = least(heads.filter((head) => head.slope === 'level')).height;
      return { worst, level, advice: advice(worst, level) };
    };
    const [f, r] = [of('front'), of('rear')];
    return {
      rearLeastHead: r.worst, frontLeastHead: f.worst, rearHeadAdvice: r.advice, frontHeadAdvice: f.advice, rearLevelHead: r.level, frontLevelHead: f.level,
      rearHeadPressure: v.fluidDensity * standardGravity * r.worst, frontHeadPressure: v.fluidDensity * standardGravity * f.worst,
      airedOutHere: movesHere(v, v.airedOutFront, v.airedOutRear), liftedHere: movesHere(v, v.liftedFront, v.liftedRear),
    };
  },
  howSure: { draws: 7000, quick: (v) => refuse(v) ?? { rearLeastHead: least(headsOf(v, 'rear')).height } },
  summary: (v, say) => {
    const one = (side: Side): string => {
      const worst = least(headsOf(v, side));
      return `${side}: ${worst.height >= 0 ? `never less than ${say(worst.height, 'length')} above` : `down to ${say(-worst.height, 'length')} below`} the calipers (${stateName(worst)})`;
    };
    return `Reservoir against brakes, ${one('front')}; ${one('rear')}.`;
  },
  equations: [
    { result: 'airedOutHere', expression: 'airedOutFront - (airedOutRear - airedOutFront) * reservoirStation / wheelbase', words: 'Between the axles the frame moves by a part of each.', source: 'derived: straight frame' },
    { result: 'liftedHere', expression: 'liftedFront - (liftedRear - liftedFront) * reservoirStation / wheelbase', words: 'The same, lifted.', source: 'derived: straight frame' },
    ...sides.flatMap(sideEquations),
  ],
  cautions: [
    {
      id: 'below-level', level: 'danger', when: (v) => v.frontHeadAdvice === 'level' || v.rearHeadAdvice === 'level',
      words: (v) => `On level ground the reservoir can stand below the ${v.frontHeadAdvice === 'level' ? (v.rearHeadAdvice === 'level' ? 'brakes' : 'front brakes') : 'rear brakes'}. Fluid runs back, pistons retract, seals can let in air: the first push finds nothing.`,
      todo: 'Raise the reservoir, with a hose from a remote one if need be. Where that cannot be done, a 2 psi residual valve in that circuit, and no free pedal without it.',
      fires: { reservoirHeight: 12 * inch }, silent: {},
    },
    {
      id: 'below-on-slope', level: 'warning', when: (v) => v.frontHeadAdvice === 'slope' || v.rearHeadAdvice === 'slope',
      words: (v, say) => {
        const only = sides.filter((side) => v[`${side}HeadAdvice`] === 'slope');
        const side = only.length === 1 ? only[0]! : v.rearLeastHead <= v.frontLeastHead ? 'rear' : 'front';
        const state = stateName(least(headsOf(v, side)));
        return `Level, the reservoir is above the ${v.frontLevelHead >= 0 && v.rearLevelHead >= 0 ? '' : `${side} `}brakes. ${state[0]!.toUpperCase()}${state.slice(1)}, it stands ${say(-v[`${side}LeastHead`], 'length')} below the ${side} ones: ${say(-v[`${side}HeadPressure`], 'pressure')} of suction. Tight seals hold that; a seal that weeps lets in air overnight.`;
      },
      todo: 'Raise the reservoir first: it costs nothing later. Until then do not leave the truck so, and feel for a long first pedal when it has stood. A residual valve is the second choice, as it can make discs drag.',
      fires: {}, silent: { reservoirHeight: 45 * inch },
    },
    {
      id: 'valve-drags', level: 'warning',
      words: 'A residual valve where none is needed keeps the pads rubbing. A drum’s valve, 6 to 12 psi and often hidden in a master’s port, drags a disc until its fluid boils.',
      todo: 'Take every drum valve out of a disc circuit. Proof: crack the bleeder a minute after letting go of the pedal; it may weep, it must not spurt. Then spin the wheel.',
    },
    {
      id: 'head-is-harmless', level: 'notice', when: (v) => Math.max(v.frontHeadPressure, v.rearHeadPressure) < 5 * psi,
      words: (v, say) => `A foot of fluid is ${say(v.fluidDensity * standardGravity * 12 * inch, 'pressure', 2)}. However high the reservoir, its head cannot put brakes on; it can only empty it through a seal that leaks.`,
      todo: 'Mount it as high as the hood allows.',
      fires: {}, silent: { reservoirHeight: 119 * inch, frontBleederHeight: 0, rearBleederHeight: 0, steepestGrade: 0, jackLift: 0, fluidDensity: 2000, airedOutFront: 24 * inch, airedOutRear: 24 * inch, liftedFront: 24 * inch, liftedRear: 24 * inch },
    },
  ],
  picture: {
    title: 'Reservoir level against both calipers',
    describe: (v, say, at) => {
      const [name, turn, ride] = states[at] ?? states[0];
      const f = stateHeight(v, 'front', turn, ride);
      const r = stateHeight(v, 'rear', turn, ride);
      const words = (side: string, h: number): string => `${say(Math.abs(h), 'length')} ${h < 0 ? 'below' : 'above'} the ${side} caliper`;
      return `${name}: the reservoir’s level is ${words('front', f)} and ${words('rear', r)}.`;
    },
    states: { label: 'Truck', names: states.map(([name]) => name), start: 3 },
    scene: (v, at, say) => {
      const [, turn, ride] = states[at] ?? states[0];
      const moved = { none: [0, 0], out: [v.airedOutFront, v.airedOutRear], up: [v.liftedFront, v.liftedRear] }[ride] as [number, number];
      return headScene({
        wheelbase: v.wheelbase, tilt: turned(v, turn), moved, reservoir: [v.reservoirStation, v.reservoirHeight + movesHere(v, ...moved)],
        calipers: sides.map((side) => {
          const h = stateHeight(v, side, turn, ride);
          return { at: [v[`${side}BleederStation`], v[`${side}BleederHeight`]] as const, tone: side, label: `${say(Math.abs(h), 'length')} ${h < 0 ? 'below' : 'above'}`, below: h < 0 };
        }),
      });
    },
  },
  tables: [{
    caption: 'Height of the reservoir’s level over the calipers',
    head: ['Truck', 'Front', 'Rear'],
    rows: (v, say) => {
      const [f, r] = sides.map((side) => headsOf(v, side));
      return f!.map((head, k) => [stateName(head), say(head.height, 'length'), say(r![k]!.height, 'length')]);
    },
  }],
  paper: {
    assumptions: ['The reservoir moves with the frame, the calipers with their axles.', 'The frame is straight between the axles.', 'The grade is met at every ride height; an axle is jacked at drive height.', 'The level is the lowest you let it fall to.'],
    leftOut: ['Braking and speeding up: 0.3 g forward tilts the fluid as a 30 % climb does, for moments.', 'Side slope.', 'The stiction of caliper seals, which hold a small suction for a long time.', 'The suspension that droops when the frame is jacked instead of the axle.'],
    sources: [{ of: 'heights and pressure of a column', kind: 'derived', note: 'hydrostatics, rotation' }, { of: '2 psi for discs, 6 to 12 psi for drums', kind: 'common practice' }, { of: 'density of glycol fluid', kind: 'from memory' }],
    examples: [
      {
        source: 'Worked by hand: reservoir 350 mm above a rear caliper 2.243 m behind it, 20 % nose down',
        inputs: {
          reservoirHeight: 0.8, rearBleederHeight: 0.45, reservoirStation: -0.5, rearBleederStation: -2.743, wheelbase: 2.743, airedOutFront: 0, airedOutRear: 0, liftedFront: 0, liftedRear: 0, steepestGrade: 0.2, jackLift: 0, fluidDensity: 1060,
        },
        results: { rearLeastHead: { value: -0.0967, within: 0.002 }, rearLevelHead: { value: 0.35, within: 1e-9 }, rearHeadPressure: { value: -1005, within: 0.002 } },
      },
      {
        source: 'Worked by hand: one foot of fluid of 1,060 kg/m³ is 0.46 psi',
        inputs: {
          reservoirHeight: 24 * inch, frontBleederHeight: 12 * inch, reservoirStation: 0, frontBleederStation: 0, airedOutFront: 0, airedOutRear: 0, liftedFront: 0, liftedRear: 0, steepestGrade: 0, jackLift: 0, fluidDensity: 1060,
        },
        results: { frontHeadPressure: { value: 0.46 * psi, within: 0.011 } },
      },
    ],
    related: ['reservoir-volume', 'plumbing-and-lamps', 'body-drop'],
  },
});

function stateHeight(v: Heads, side: Side, turn: number, ride: 'none' | 'out' | 'up'): number {
  const moves = ride === 'out' ? movesHere(v, v.airedOutFront, v.airedOutRear) : ride === 'up' ? movesHere(v, v.liftedFront, v.liftedRear) : 0;
  const tilt = turned(v, turn);
  return (v.reservoirHeight + moves - v[`${side}BleederHeight`]) * Math.cos(tilt) + (v.reservoirStation - v[`${side}BleederStation`]) * Math.sin(tilt);
}
