import { inch, mm } from '../../units/si.ts';
import { failedNearCarpet, hardNearCarpet, over, padFloorFeed, pedal, quickCarpet } from '../helpers/pad-floor.ts';
import { defineCalculator } from '../record.ts';
import { padFloorScene } from '../scenes/pad-floor.ts';

export default defineCalculator({
  ...padFloorFeed,
  version: 1,
  purpose: 'How high the pad stands over the heel, and what is left to the carpet at rest, in a hard stop and with a circuit dead, once liner, foam, carpet and mat are in.',
  howSure: { quick: quickCarpet },
  summary: (v, say) => {
    const touches = over(v, v.stackLoose, 0).meets !== undefined;
    const dead = v.carpetAtFailed > 0 ? `with a circuit dead ${say(v.carpetAtFailed, 'length')} is left` : 'with a circuit dead it gets there and stands on the carpet';
    return `The floor takes ${say(v.stackLoose, 'length')} loose and ${say(v.stackPressed, 'length')} under a boot. The pad stands ${say(v.padOverHeel, 'length')} over the heel. It ${touches ? 'meets the carpet' : 'never touches the carpet and comes nearest'} ${v.travelToCarpet > 0 ? `after ${say(v.travelToCarpet, 'length')} of travel` : 'at rest'}: ${dead}.`;
  },
  equations: [
    { result: 'padOverBare', expression: 'pivotOverFloor - padArm * cos(padRestAngle)', words: 'The pivot’s height less how far the pad hangs below it.', source: 'derived: plane geometry' },
    { result: 'padOverHeel', expression: 'padOverBare - stackPressed', words: 'A heel stands on what it has pressed flat.', source: 'derived' },
  ],
  methods: [
    { result: 'carpetAtFailed', words: 'The pad’s lower edge moves on a circle about the pivot. Its distance from the flat floor and from the toe board is the pivot’s own distance from that plane, less the edge’s radius times the cosine of the angle between arm and plane’s square, less the loose layers. The smaller one counts, and the smallest on the way down: a pad can pass closer than it ends.', source: 'derived: plane geometry' },
    { result: 'stackLoose', words: 'All layers added, loose.', source: 'definition' },
    { result: 'stackPressed', words: 'All layers added, each times what a boot leaves of it.', source: 'definition' },
    { result: 'travelToCarpet', words: 'The travel at which that distance is zero; for a pedal that never touches, where it comes nearest.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'with-a-circuit-dead', level: 'danger', when: failedNearCarpet,
      words: (v, say) => `With a circuit dead ${v.carpetAtFailed > 0 ? `only ${say(v.carpetAtFailed, 'length')} is left` : 'the pedal stands on the carpet'}. A pedal that meets the floor brakes no harder, however hard you push, and this is the day one line has already let go. Keep 1 in (25 mm) (common practice, no source).`,
      todo: 'Thinner floor under the pad, a higher pivot, a larger bore or a bar stop that comes sooner. Then open one bleeder, push, and see, before any drive.',
      fires: {}, silent: { failedPadTravel: 3 * inch },
    },
    {
      id: 'hard-stop', level: 'warning', when: hardNearCarpet,
      words: (v, say) => `In a hard stop ${say(v.carpetAtHard, 'length')} is left; keep 1-1/2 in (40 mm) (common practice, no source). A little air, a worn pad or a second mat uses that up.`,
      todo: 'Find the travel back, or room.',
      fires: { padTravelNormal: 4.6 * inch }, silent: { padTravelNormal: 2 * inch },
    },
    {
      id: 'loose-mat', level: 'warning',
      words: 'A mat that slides forward or doubles up under a pedal takes its travel, and can hold the throttle down.',
      todo: 'Fasten the mat, none on top of another, nothing loose in the footwell. Check travel with the mat pushed as far forward as it goes.',
    },
    {
      id: 'bare-steel', level: 'notice', when: (v) => v.floorLayers.length === 0,
      words: 'The floor is bare steel. Liner, foam, carpet and mat take 1/2 to 1-1/4 in (15 to 30 mm) of it (common practice, no source), and pedals set on bare steel ground on them.',
      todo: 'Add the layers that will lie there.',
      fires: { floorLayers: [] }, silent: {},
    },
  ],
  picture: {
    title: 'Pedal, floor and carpet',
    describe: (v, say, at) => `Side view, front on the left. The pedal hangs from its pivot ${say(v.pivotOverFloor, 'length')} over bare metal; pad down ${say(at, 'length')} of its travel. Heavy line: metal floor and toe board at ${say(v.toeBoardSlope, 'angle', 2)}; thin line above it: the finished floor. Red: the room left. Dashed: the pedal at rest and where it ${over(v, v.stackLoose, 0).meets === undefined ? 'comes nearest to' : 'meets'} the carpet${v.travelToCarpet > 0 ? `, ${say(v.travelToCarpet, 'length')} on` : ''}.`,
    motion: { label: 'Pedal travel', dimension: 'length', range: (v) => [0, Math.max(1 * mm, v.travelToCarpet)], start: (v) => Math.min(v.padTravelNormal, v.travelToCarpet), say: (v, at, say) => `${say(Math.max(0, over(v, v.stackLoose, at).clearance), 'length')} to the carpet` },
    scene: (v, at, say) => padFloorScene({ ...pedal(v), toeStart: v.toeBoardStart, toeSlope: v.toeBoardSlope, stack: v.stackLoose, at, contact: v.travelToCarpet, gap: say(Math.max(0, over(v, v.stackLoose, at).clearance), 'length'), heel: say(v.padOverHeel, 'length') }),
  },
  tables: [{
    caption: 'Layer by layer',
    head: ['Layer', 'Loose', 'Under a boot'],
    rows: (v) => v.floorLayers.map((layer) => [layer.name, { value: layer.thickness, dimension: 'length' as const }, { value: layer.thickness * layer.left, dimension: 'length' as const }]),
  }],
  paper: {
    assumptions: ['Flat floor and flat toe board, both straight across under the pedal.', 'The pad’s lower edge is what meets the carpet first; it lies in line with pivot and pad center.', 'A pedal coming down meets the carpet loose; a heel stands on it pressed.'],
    leftOut: ['Carpet that gives as the pedal presses it: a little is left after it touches, spongy and not to be counted.', 'A boot between pad and floor.', 'Pads wider than their arm, and floors that are not level across.'],
    sources: [
      { of: 'clearance over the arc', kind: 'derived' },
      { of: '25 mm with a circuit dead, 40 mm in a hard stop, what a boot leaves of each layer', kind: 'common practice' },
      { of: 'the layers shown at first', kind: 'defined', note: 'invented, in content/demo-rows.json' },
    ],
    examples: [
      {
        source: 'A fact of the trade (common practice, no source): pad 7 in over the bare floor; then liner 1/16 in, deadener 1/8 in (90 % left under a boot) and carpet 1/2 in (half left), thicknesses invented, worked by hand',
        inputs: {
          pivotOverFloor: 19 * inch, padArm: 12 * inch, padRestAngle: 0, padToEdge: 0, toeBoardSlope: 0, failedPadTravel: 0, padTravelNormal: 0,
          floorLayers: [{ name: 'liner', thickness: inch / 16, left: 1 }, { name: 'deadener', thickness: inch / 8, left: 0.9 }, { name: 'carpet', thickness: inch / 2, left: 0.5 }],
        },
        results: { padOverBare: { value: 7 * inch, within: 1e-9 }, padOverHeel: { value: 6.575 * inch, within: 1e-9 }, carpetAtRest: { value: 6.3125 * inch, within: 1e-9 } },
      },
      {
        source: 'Worked by hand: pivot 400 mm over a level floor, arm 320 mm straight down, edge 40 mm on, 17 mm of floor (11 under a boot)',
        inputs: {
          pivotOverFloor: 0.4, padArm: 0.32, padToEdge: 0.04, padRestAngle: 0, toeBoardSlope: 0, failedPadTravel: 0, padTravelNormal: 0,
          floorLayers: [{ name: 'liner', thickness: 0.002, left: 1 }, { name: 'deadener', thickness: 0.003, left: 1 }, { name: 'carpet', thickness: 0.012, left: 0.5 }],
        },
        results: { carpetAtRest: { value: 0.023, within: 1e-9 }, padOverHeel: { value: 0.069, within: 1e-9 }, stackLoose: { value: 0.017, within: 1e-9 }, stackPressed: { value: 0.011, within: 1e-9 } },
      },
    ],
    related: ['pedal-placement', 'pad-place', 'circuit-failure', 'braking-rate', 'two-circuits'],
  },
});
