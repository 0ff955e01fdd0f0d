import { isImpossible } from '../../engine/outcome.ts';
import type { Impossible } from '../../engine/outcome.ts';
import { pedalAt, pedalStroke } from '../../engine/pedal.ts';
import type { PedalState } from '../../engine/pedal.ts';
import { deg, inch, mm } from '../../units/si.ts';
import { defineCalculator } from '../record.ts';
import type { Refusal, ValuesOf } from '../record.ts';
import { pedalScene } from '../scenes/pedal.ts';

type Inputs = 'padArm' | 'clevisArm' | 'boreOffset' | 'rodLength' | 'restAngle' | 'footAngle' | 'pushrodFreePlay' | 'frontMasterStroke' | 'rearMasterStroke' | 'floorTravel';

function pedal(v: ValuesOf<Inputs>) {
  return { padArm: v.padArm, clevisArm: v.clevisArm, boreOffset: v.boreOffset, rodLength: v.rodLength, footAngle: v.footAngle };
}

const strokeOf = (v: ValuesOf<Inputs>): number => Math.max(v.frontMasterStroke, v.rearMasterStroke);

/** The arm after the free play and `stroke` of the piston. */
function swing(v: ValuesOf<Inputs>, stroke: number) {
  return pedalStroke({ ...pedal(v), restAngle: v.restAngle, freePlay: v.pushrodFreePlay, stroke });
}

/** For angles inside a swing that closes, where nothing can be impossible. */
const stateAt = (v: ValuesOf<Inputs>, armAngle: number): PedalState => pedalAt({ ...pedal(v), armAngle }) as PedalState;
const angleAfter = (v: ValuesOf<Inputs>, stroke: number): number => (swing(v, stroke) as { fullAngle: number }).fullAngle;

function refuse({ impossible, by = 0 }: Impossible): Refusal {
  return {
    refused: (say) => ({
      'rod-too-short': `The pushrod does not reach: at rest the clevis pin stands ${say(by, 'length')} farther from the bore axis than the rod is long. Check rod length, clevis arm and bore offset.`,
      'rod-past-dead-point': 'At rest the rod points along the clevis arm, or past it. The pedal would move and the piston would not. Check the rest angle and the bore offset.',
      'arm-beyond-35-degrees': `The arm rests ${say(by, 'angle')} beyond 35 degrees from square. That far over, the rod no longer pushes along the bore.`,
      'foot-pulls-off-arm': 'At this angle the foot pulls the pad along the arm and turns nothing.',
      'stroke-out-of-reach': `The arm cannot bring the piston to its bottom: ${say(by, 'length')} of rod travel are missing where the clevis arm meets 35 degrees from square or its dead point. A longer clevis arm, or a rest angle farther back.`,
    })[impossible] ?? 'This pedal cannot be built like that.',
  };
}

const byGeometry = 'derived: geometry of arm and rod';
const byWork = 'derived: equal work at foot and piston';
const searched = 'Both angles are found together, by search; this is the condition they meet.';
const armAt = (angle: string, advance: string): string => `asin((clevisArm * sin(restAngle) + rodLength * cos(rodAngleAtRest) + ${advance} - rodLength * cos(${angle})) / clevisArm)`;
const rodAt = (angle: string): string => `asin((clevisArm * cos(${angle}) - boreOffset) / rodLength)`;
const ratioAt = (arm: string, rod: string): string => `padArm * cos(footAngle) * cos(${rod}) / (clevisArm * cos(${arm} - ${rod}))`;
const stroke = 'max(frontMasterStroke, rearMasterStroke)';

export default defineCalculator({
  id: 'pedal-ratio',
  version: 1,
  title: 'Pedal ratio through the swing',
  purpose: 'The true pedal ratio at rest, at half and at full stroke, the angle of the pushrod, and the travel at the pedal pad.',
  inputs: [
    { title: 'Pedal', of: ['padArm', 'clevisArm', 'restAngle', 'footAngle'] },
    { title: 'Pushrod and bore', of: ['boreOffset', 'rodLength', 'pushrodFreePlay'] },
    { title: 'Travel', of: ['frontMasterStroke', 'rearMasterStroke', 'floorTravel'] },
  ],
  outputs: ['ratioMid', 'ratioAtRest', 'ratioFull', 'rodAngleWorst', 'padTravel', 'freePlayAtPad', 'ratioFall', 'ratioLowest', 'rodAngleAtRest', 'rodAngleMid', 'rodAngleFull', 'rodAngleFree', 'armAngleFree', 'armAngleMid', 'armAngleFull'],
  compute: (v) => {
    const r = swing(v, strokeOf(v));
    if (isImpossible(r)) return refuse(r);
    const [free, mid] = [angleAfter(v, 0), angleAfter(v, strokeOf(v) / 2)];
    return {
      ratioMid: r.ratioMid, ratioAtRest: r.ratioAtRest, ratioFull: r.ratioFull, rodAngleWorst: r.rodAngleWorst, padTravel: r.padTravel, freePlayAtPad: r.freePlayAtPad,
      ratioFall: r.ratioFall, ratioLowest: r.ratioMid * (1 - r.ratioFall), rodAngleAtRest: stateAt(v, v.restAngle).rodAngle, rodAngleMid: stateAt(v, mid).rodAngle,
      rodAngleFull: stateAt(v, r.fullAngle).rodAngle, rodAngleFree: stateAt(v, free).rodAngle, armAngleFree: free, armAngleMid: mid, armAngleFull: r.fullAngle,
    };
  },
  howSure: {
    draws: 500,
    quick: (v) => {
      const r = swing(v, strokeOf(v));
      return isImpossible(r) ? refuse(r) : { ratioMid: r.ratioMid };
    },
  },
  summary: (v, say) => `The ratio is ${say(v.ratioAtRest, 'ratio')} at rest, ${say(v.ratioMid, 'ratio')} at half stroke and ${say(v.ratioFull, 'ratio')} at full stroke; a tape along the arms says ${say(v.padArm / v.clevisArm, 'ratio')}. The rod stands at most ${say(v.rodAngleWorst, 'angle')} off its bore, and the whole stroke moves the pedal pad ${say(v.padTravel, 'length')}.`,
  equations: [
    { result: 'rodAngleAtRest', expression: rodAt('restAngle'), words: 'How far the clevis pin stands off the bore axis, over the length of the rod.', source: byGeometry },
    { result: 'ratioAtRest', expression: ratioAt('restAngle', 'rodAngleAtRest'), words: 'Long lever arm over short lever arm, each measured square to its force.', source: byWork },
    { result: 'armAngleFree', expression: armAt('rodAngleFree', 'pushrodFreePlay'), words: 'Where the arm stands once the rod has met the piston.', source: byGeometry, found: searched },
    { result: 'rodAngleFree', expression: rodAt('armAngleFree'), words: 'The rod at that moment.', source: byGeometry },
    { result: 'freePlayAtPad', expression: 'padArm * (armAngleFree - restAngle)', words: 'The gap at the rod as the foot feels it.', source: byGeometry },
    { result: 'armAngleMid', expression: armAt('rodAngleMid', `pushrodFreePlay + ${stroke} / 2`), words: 'Where the arm stands at half stroke.', source: byGeometry, found: searched },
    { result: 'rodAngleMid', expression: rodAt('armAngleMid'), words: 'The rod at half stroke.', source: byGeometry },
    { result: 'ratioMid', expression: ratioAt('armAngleMid', 'rodAngleMid'), words: 'Long lever arm over short lever arm, each measured square to its force. The long one runs from the pivot to the line of the foot, the short one to the line of the rod.', source: byWork },
    { result: 'armAngleFull', expression: armAt('rodAngleFull', `pushrodFreePlay + ${stroke}`), words: 'Where the arm stands with the master bottomed.', source: byGeometry, found: searched },
    { result: 'rodAngleFull', expression: rodAt('armAngleFull'), words: 'The rod at full stroke.', source: byGeometry },
    { result: 'ratioFull', expression: ratioAt('armAngleFull', 'rodAngleFull'), words: 'The same at full stroke.', source: byWork },
    { result: 'ratioFall', expression: '1 - ratioLowest / ratioMid', words: 'How far the ratio sinks after half stroke, where the foot works hardest.', source: 'defined here', found: 'The lowest ratio is found by search over the second half of the stroke.' },
    { result: 'rodAngleWorst', expression: 'max(abs(rodAngleAtRest), abs(rodAngleFull), abs(asin((clevisArm * cos(max(restAngle, min(0, armAngleFull))) - boreOffset) / rodLength)))', words: 'The rod stands farthest off at an end of the swing, or where the arm comes closest to square.', source: byGeometry },
    { result: 'padTravel', expression: 'padArm * (armAngleFull - restAngle)', words: 'The pedal pad runs on an arc about the pivot.', source: byGeometry },
  ],
  cautions: [
    {
      id: 'one-arm-one-pin', level: 'warning',
      words: 'Everything the foot gives goes through this arm, its pivot and one pin. If one of them lets go on the road there is no brake at all, front or rear, and that could kill.',
      todo: 'Lock every nut and pin. With the truck parked and its wheels chocked, push as hard as you can ten times while someone watches arm, pivot and bracket for movement. Any that stays is a reason to stop.',
    },
    {
      id: 'no-free-play', level: 'warning', when: (v) => v.pushrodFreePlay < 0.5 * mm,
      words: (v, say) => `${say(v.pushrodFreePlay, 'length')} of free play may leave the master’s port covered at rest. Warm fluid then has nowhere to go: the brakes drag, heat more, and can lock or boil on a drive.`,
      todo: 'Set 0.02 to 0.06 in (0.5 to 1.5 mm) at the rod (common practice, no source) with the pedal on its up-stop, and see fluid move in the reservoir at the first touch.',
      fires: { pushrodFreePlay: 0 }, silent: {},
    },
    {
      id: 'rod-angle-stop', level: 'warning', when: (v) => v.rodAngleWorst > 5 * deg,
      words: (v, say) => `The rod stands ${say(v.rodAngleWorst, 'angle')} off the bore. It pushes the piston sideways with ${say(Math.tan(v.rodAngleWorst), 'share')} of its force, which scores the bore and wears the seal.`,
      todo: 'Move the bore axis or lengthen the rod. 5 degrees is the end (common practice, no source).',
      fires: { boreOffset: 1.4 * inch }, silent: {},
    },
    {
      id: 'rod-angle-watch', level: 'caution', when: (v) => v.rodAngleWorst > 3 * deg && v.rodAngleWorst <= 5 * deg,
      words: (v, say) => `The rod stands ${say(v.rodAngleWorst, 'angle')} off the bore. Above 3 degrees the piston wears on one side (common practice, no source).`,
      todo: 'Set the bore axis so that the rod is off by as much at both ends as in the middle, the other way.',
      fires: { boreOffset: 1.65 * inch }, silent: {},
    },
    {
      id: 'ratio-falls', level: 'warning', when: (v) => v.ratioFall > 0.1,
      words: (v, say) => `From half stroke on, the ratio falls by ${say(v.ratioFall, 'share')}. The pedal turns hard where you need it most.`,
      todo: 'Swing the clevis arm back at rest no farther than it goes forward at the end: have it square to the bore near half stroke.',
      fires: { restAngle: -35 * deg, clevisArm: 2.6 * inch, boreOffset: 0.4 * inch, rodLength: 3 * inch }, silent: {},
    },
    {
      id: 'far-from-tape', level: 'caution', when: (v) => Math.abs(v.ratioMid * v.clevisArm / v.padArm - 1) > 0.05,
      words: (v, say) => `At half stroke the ratio is ${say(v.ratioMid, 'ratio')}, not the ${say(v.padArm / v.clevisArm, 'ratio')} a tape gives. The tape is right only with arm, rod and foot square to each other.`,
      todo: 'Use the half-stroke ratio for pressures.',
      fires: { footAngle: 25 * deg }, silent: {},
    },
    {
      id: 'carpet-before-bottom', level: 'warning', when: (v) => v.padTravel > v.floorTravel,
      words: (v, say) => `The pedal meets the carpet ${say(v.padTravel - v.floorTravel, 'length')} before the masters bottom. With one circuit dead the pedal may need that travel, and the floor stops it first.`,
      todo: 'Work out the travel with one circuit dead before you weld. More room under the pedal or a lower ratio helps; a shorter master only moves the end.',
      fires: {}, silent: { floorTravel: 8 * inch },
    },
    {
      id: 'free-play-long', level: 'notice', when: (v) => v.freePlayAtPad > 9 * mm,
      words: (v, say) => `${say(v.freePlayAtPad, 'length')} of free play at the pedal pad is travel given away. 1/8 to 3/8 in (3 to 9 mm) is common practice, no source.`,
      todo: 'Shorten the gap at the rod, but never to zero.',
      fires: { pushrodFreePlay: 2 * mm }, silent: {},
    },
  ],
  picture: {
    title: 'The pedal from the side, front of the truck to the left',
    motion: {
      label: 'Pedal', dimension: 'angle', range: (v) => [v.restAngle, v.armAngleFull], start: (v) => v.armAngleMid,
      say: (v, at, say) => `pedal pad ${say(v.padArm * (at - v.restAngle), 'length')} down, ratio ${say(stateAt(v, at).ratio, 'ratio')}`,
    },
    describe: (v, say, at) => {
      const s = stateAt(v, at);
      return `A pedal hung from its pivot, the pushrod going left into the master. The clevis arm stands ${say(Math.abs(at), 'angle')} ${at < 0 ? 'back from' : 'past'} square to the bore, the pedal pad ${say(v.padArm * (at - v.restAngle), 'length')} from rest. The rod is ${say(Math.abs(s.rodAngle), 'angle')} off the bore axis and the ratio here is ${say(s.ratio, 'ratio')}.`;
    },
    scene: (v, at) => pedalScene({
      ...pedal(v), armAngle: at, restAngle: v.restAngle, fullAngle: v.armAngleFull,
      rodPosition: stateAt(v, at).rodPosition, restPosition: stateAt(v, v.restAngle).rodPosition, fullPosition: stateAt(v, v.armAngleFull).rodPosition,
    }),
  },
  charts: [
    {
      title: 'Ratio through the stroke',
      x: { label: 'piston stroke', dimension: 'length' },
      y: { label: 'pedal ratio', dimension: 'ratio' },
      series: (v) => [
        { label: 'ratio', tone: 'accent', points: alongStroke(v, (s) => s.ratio) },
        { label: 'by tape', tone: 'ghost', points: [[0, v.padArm / v.clevisArm], [strokeOf(v), v.padArm / v.clevisArm]] },
      ],
      marks: (v, say) => [{ at: [strokeOf(v) / 2, v.ratioMid], label: `half stroke ${say(v.ratioMid, 'ratio')}` }],
      describe: (v, say) => `The ratio starts at ${say(stateAt(v, v.armAngleFree).ratio, 'ratio')}, is ${say(v.ratioMid, 'ratio')} at half stroke and ends at ${say(v.ratioFull, 'ratio')}.`,
    },
    {
      title: 'Pushrod off the bore axis through the stroke',
      x: { label: 'piston stroke', dimension: 'length' },
      y: { label: 'rod angle', dimension: 'angle' },
      series: (v) => [
        { label: 'rod', tone: 'accent', points: alongStroke(v, (s) => s.rodAngle) },
        ...[3, -3].map((limit) => ({ label: `${limit < 0 ? '−' : ''}3° watch`, tone: 'ghost' as const, points: [[0, limit * deg], [strokeOf(v), limit * deg]] as const })),
      ],
      describe: (v, say) => `The rod runs from ${say(v.rodAngleFree, 'angle')} through ${say(v.rodAngleMid, 'angle')} to ${say(v.rodAngleFull, 'angle')}; plus is with the clevis farther from the pivot than the bore. Watch beyond 3 degrees either way.`,
    },
  ],
  tables: [{
    caption: 'Three places in the swing',
    head: ['At', 'Ratio', 'Rod off bore', 'Pedal pad'],
    rows: (v) => ([['rest', v.restAngle, v.ratioAtRest, v.rodAngleAtRest], ['half stroke', v.armAngleMid, v.ratioMid, v.rodAngleMid], ['full stroke', v.armAngleFull, v.ratioFull, v.rodAngleFull]] as const).map(([at, arm, ratio, rod]) => [
      at, { value: ratio, dimension: 'ratio' }, { value: rod, dimension: 'angle' }, { value: v.padArm * (arm - v.restAngle), dimension: 'length' },
    ]),
  }],
  paper: {
    assumptions: ['Everything moves in one plane.', 'Arm and rod are rigid, pins without play.', 'The foot keeps its angle to the arm. That angle takes from the ratio, because only the push across the arm turns it; pad travel is counted along the pad’s own arc, so ratio times travel falls short of the rod’s stroke by the same cosine.', 'With a balance bar, rod and clevis are those of the bar’s pivot; with unlike masters the longer stroke is shown.'],
    leftOut: ['Friction: linkage efficiency stands for it on the other pages.', 'The bar’s tilt and the two rods’ own angles.', 'Flex of arm, bracket and firewall.'],
    sources: [
      { of: 'ratio as the quotient of two lever arms', kind: 'derived', note: 'moments about the pivot, checked by equal work' },
      { of: '3 and 5 degrees of rod angle, free play 0.5 to 1.5 mm', kind: 'common practice' },
      { of: 'foot force greatest with the pedal 15 to 35 degrees forward of vertical', kind: 'published', id: 'hertzberg' },
    ],
    examples: [{
      source: 'Worked by hand: 310, 50, 49 and 120 mm from 10 degrees back; 21.62 mm of rod brings the arm to 15 degrees past square',
      inputs: { padArm: 0.31, clevisArm: 0.05, boreOffset: 0.049, rodLength: 0.12, restAngle: -10 * deg, footAngle: 0, pushrodFreePlay: 0, frontMasterStroke: 21.62 * mm, rearMasterStroke: 21.62 * mm },
      results: {
        ratioAtRest: { value: 6.298, within: 1e-4 }, ratioFull: { value: 6.429, within: 2e-4 }, rodAngleFull: { value: -0.34 * deg, within: 0.015 },
        armAngleFull: { value: 15 * deg, within: 3e-4 }, rodAngleWorst: { value: 0.48 * deg, within: 0.01 }, padTravel: { value: 0.135, within: 0.003 },
      },
    }],
    related: ['manual-or-boosted', 'line-pressure', 'braking-rate', 'circuit-failure'],
  },
});

/** A value of the pedal along the piston's stroke, equally spaced in arm angle. */
function alongStroke(v: ValuesOf<Inputs | 'armAngleFree' | 'armAngleFull'>, of: (s: PedalState) => number) {
  const start = stateAt(v, v.armAngleFree).rodPosition;
  return Array.from({ length: 25 }, (_, k) => {
    const s = stateAt(v, v.armAngleFree + ((v.armAngleFull - v.armAngleFree) * k) / 24);
    return [s.rodPosition - start, of(s)] as const;
  });
}
