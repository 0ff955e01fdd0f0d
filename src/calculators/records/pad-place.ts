import { inch, mm } from '../../units/si.ts';
import { inWords, marksUsed, placesOf, slipShows, slipsOf } from '../helpers/pad-place.ts';
import { defineCalculator, isRefusal } from '../record.ts';
import { padPlaceScene } from '../scenes/pad-place.ts';

export default defineCalculator({
  id: 'pad-place',
  version: 1,
  title: 'Where the pedal pad is',
  purpose: 'The place of a pedal pad from tape measures to marks that stay, so that it can be found again when the floor and the firewall are gone.',
  inputs: [
    { title: 'Marks and tape', of: ['padMethod', 'padMarks'] },
    { title: 'Instead of a third mark', of: ['padLateral', 'padBareHeight'] },
    { title: 'Which side', of: ['padSide'] },
    { title: 'Tape', of: ['tapeError', 'markError'] },
  ],
  outputs: ['padZ', 'padX', 'padY', 'padErrorLong', 'padResidual', 'padErrorX', 'padErrorY', 'padErrorZ', 'padWeakness', 'placesFound'],
  compute: (v) => {
    const places = placesOf(v);
    if ('refused' in places) return places;
    const place = places[0]!;
    const [x, y, z] = place.point;
    return {
      padX: x, padY: y, padZ: z, padErrorX: place.sigma[0], padErrorY: place.sigma[1], padErrorZ: place.sigma[2],
      padErrorLong: place.longest, padWeakness: place.weakness, padResidual: place.worst, placesFound: places.length,
    };
  },
  howSure: { draws: 500, errorOf: { tapeError: ['padMarks.distance', 'padLateral', 'padBareHeight'], markError: ['padMarks.x', 'padMarks.y', 'padMarks.z'] } },
  summary: (v, say) => {
    const places = placesOf(v);
    if (isRefusal(places)) return '';
    const [place, other] = places;
    const [x, y, z] = place!.point;
    return `The middle of the pad is ${say(Math.abs(x), 'length')} ${x < 0 ? 'behind' : 'ahead of'} the frame mark, ${say(Math.abs(y), 'length')} ${y < 0 ? 'right' : 'left'} of the center line and ${say(Math.abs(z), 'length')} ${z < 0 ? 'below' : 'above'} the level line, give or take ${say(2 * place!.longest, 'length', 2)} ${inWords(place!.direction)}.${other ? ` The tape fits another place too: ${say(other.point[0], 'length')}, ${say(other.point[1], 'length')}, ${say(other.point[2], 'length')} (forward, left, up). You chose ${{ lower: 'the lower', higher: 'the higher', forward: 'the forward', rearward: 'the rearward' }[v.padSide]} one.` : ''}`;
  },
  equations: [],
  methods: [
    { result: 'padZ', words: 'The pad lies on a ball around each mark, as far out as the tape says. Three balls meet in two points, one on either side of the marks’ plane. With a mark to spare the place is the one that all tapes miss least, by squares.', source: 'derived: distances in space, least squares' },
    { result: 'padResidual', words: 'What the worst tape is off the place found. With three measurements it is zero by itself and says nothing; a fourth makes it speak.', source: 'derived' },
    { result: 'padErrorLong', words: 'Every tape and every mark is wrong a little, independently. Together they blur the place into a lens; this is its longest half-axis, the error two times in three.', source: 'derived: errors of distances, seen along the lines of the tapes' },
    { result: 'padWeakness', words: 'The longest half-axis over the error of one measurement: 1 is a tape from every side, more is a view from one side only.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'before-you-cut', level: 'warning',
      words: 'Once the floor is cut nobody can tell where the foot used to be. A pedal rebuilt by eye ends up where a straight leg or a caught boot finds it, in the one stop that counts.',
      todo: 'Tape from marks on metal that stays, write all of it down, take photographs with the tape in them. Then check with a fourth distance.',
    },
    {
      id: 'two-places', level: 'caution', when: (v) => v.placesFound > 1,
      words: 'Two places fit these distances equally well, mirror images of each other. The tape cannot tell them apart.',
      todo: 'Choose the side you know it is on, or add a mark well out of the plane of the others.',
      fires: { padMethod: 'plane' }, silent: {},
    },
    {
      id: 'poorly-seen', level: 'warning', when: (v) => v.padWeakness > 3,
      words: (v, say) => `The marks see the pad from one side: an error of the tape comes out ${say(v.padWeakness, 'ratio', 2)} times as large in the worst direction. A pad close to the plane of its marks is the usual reason.`,
      todo: 'Add a mark that looks along the weak direction.',
      fires: { padMarks: [{ name: 'a', x: -0.762, y: 0.508, z: 0.4 }, { name: 'b', x: -0.787, y: 0.1, z: 0.36 }, { name: 'c', x: -0.4, y: 0.5, z: 0.36 }].map((m) => ({ ...m, distance: Math.hypot(m.x + 0.61, m.y - 0.28, m.z - 0.33) })) }, silent: {},
    },
    {
      id: 'unchecked', level: 'caution', when: (v) => Math.max(...slipsOf(v)) > 1 * inch,
      words: (v, say) => {
        const slips = slipsOf(v);
        const worst = Math.max(...slips);
        return Number.isFinite(worst) ? `A slip of ${say(worst, 'length', 2)} in the tape from ${marksUsed(v)[slips.indexOf(worst)]!.name} would pass unseen: the others say little about it, and the place gives way instead.` : 'Nothing checks these measurements. An inch read wrong moves the pad by an inch or more, and every number still looks right.';
      },
      todo: 'One more mark, roughly in line with the pad and the tape you want to check, or on the far side of the pad.',
      fires: { padMethod: 'plane' }, silent: { padMarks: [[-0.762, 0.508, 0.8636], [-0.7874, 0.1016, 0.8382], [-0.508, 0.6604, 0.5588], [-1.4732, 0.2032, 0.3048], [-0.3, -0.1, 0.25], [-0.62, 0.3, 0.02]].map(([x, y, z], k) => ({ name: String(k), x: x!, y: y!, z: z!, distance: Math.hypot(x! + 0.61, y! - 0.28, z! - 0.3556) })) },
    },
    {
      id: 'remeasure', level: 'warning', when: (v) => v.padResidual > slipShows,
      words: (v, say) => `The tapes disagree: the worst is ${say(v.padResidual, 'length', 2)} off the place that suits them best. That is no tape error, that is a wrong number or a mark that moved. The tape with the largest miss is not always the wrong one: the place gives way toward a slip.`,
      todo: 'Measure all of them again; look for a slip of an inch or a sign.',
      fires: { padMarks: [{ name: 'a', x: -0.762, y: 0.508, z: 0.8636, distance: 0.578 }, { name: 'b', x: -0.7874, y: 0.1016, z: 0.8382, distance: 0.5445 }, { name: 'c', x: -0.508, y: 0.6604, z: 0.5588, distance: 0.4429 }, { name: 'd', x: -1.4732, y: 0.2032, z: 0.3048, distance: 0.9684 }] }, silent: {},
    },
  ],
  picture: {
    title: 'The pad, the marks and the weak direction',
    states: { label: 'Seen', names: ['from the left side', 'from above'] },
    describe: (v, say, at) => `${at === 0 ? 'From the left side' : 'From above, left side down'}, front on the left. Thin lines: the tapes from ${marksUsed(v).length === 1 ? 'the mark' : `${marksUsed(v).length} marks`} to the pad. The pad is at ${say(v.padX, 'length')}, ${say(v.padY, 'length')}, ${say(v.padZ, 'length')} (forward, left, up). The red ellipse is the error of its place, drawn twenty times too large: longest where the pad is least well known, ${say(v.padErrorLong, 'length', 2)} either way, two times in three.`,
    scene: (v, at, say) => {
      const places = placesOf(v);
      return padPlaceScene({ marks: marksUsed(v), places: isRefusal(places) ? [] : places, above: at === 1, label: say(v.padErrorLong, 'length', 2) });
    },
  },
  tables: [{
    caption: 'Every tape against the place found',
    head: ['Mark', 'Taped', 'Off by', 'Slip that shows'],
    rows: (v) => {
      const slips = slipsOf(v);
      return marksUsed(v).map((m, k) => {
        const off = Math.hypot(m.x - v.padX, m.y - v.padY, m.z - v.padZ) - m.distance;
        const slip = slips[k] as number;
        return [m.name, { value: m.distance, dimension: 'length' as const, digits: 4 }, Math.abs(off) < 1e-5 ? 'nothing' : { value: off, dimension: 'length' as const, digits: 2 }, slip < 1 ? { value: slip, dimension: 'length' as const, digits: 2 } : 'none'];
      });
    },
  }],
  paper: {
    assumptions: ['Marks and pad are points, tapes are straight and tight.', 'Every tape and every mark is off by its error on its own; none by a common one.', 'x forward, y left, z up from the frame mark, the truck level with its own rails.'],
    leftOut: ['A mark that sits on the body and moves with it: measure all of it before the drop, or all of it after.', 'Sag of a tape and a hook that has play: they are in the error you typed.', 'The shape of the pad: tape to its middle, found with crossed lines.'],
    sources: [
      { of: 'place from distances, least squares, error lens', kind: 'derived' },
      { of: 'axes', kind: 'published', id: 'iso-8855', note: 'x forward, y left, z up' },
      { of: '5 mm as the sign of a slip', kind: 'common practice' },
      { of: 'how large a slip must be to show by 5 mm', kind: 'derived', note: 'what least squares leave of it' },
      { of: 'the marks shown at first', kind: 'defined', note: 'invented, in content/demo-rows.json' },
    ],
    examples: [
      {
        source: 'Worked by hand: marks at (0, 0, 0), (900, 0, 0) and (200, 600, 0) mm',
        inputs: { padMethod: 'space', padSide: 'lower', padMarks: [{ name: 'a', x: 0, y: 0, z: 0, distance: 0.758288 }, { name: 'b', x: 0.9, y: 0, z: 0, distance: 0.463681 }, { name: 'c', x: 0.2, y: 0.6, z: 0, distance: 0.644205 }] },
        results: { padX: { value: 0.65, within: 1e-4 }, padY: { value: 0.25, within: 1e-4 }, padZ: { value: -0.3, within: 1e-4 }, placesFound: { value: 2, within: 1e-9 } },
      },
      {
        source: 'A fact of the trade (common practice, no source): pad 7 in over the bare floor, 9.5 in from a point of the dash; here with the dash point 15 in up, worked by hand',
        inputs: { padMethod: 'floor', padSide: 'forward', padLateral: 0.3, padBareHeight: 177.8 * mm, padMarks: [{ name: 'dash', x: 0, y: 0.3, z: 381 * mm, distance: 241.3 * mm }] },
        results: { padX: { value: 130.14 * mm, within: 1e-4 }, padZ: { value: 177.8 * mm, within: 1e-9 } },
      },
    ],
    related: ['pedal-placement', 'pad-floor', 'leg-angles', 'drop-points'],
  },
});
