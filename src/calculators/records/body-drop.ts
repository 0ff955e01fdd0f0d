import { deg, inch, mm } from '../../units/si.ts';
import { pitchesAt, noSuchDrop, pointAt, readersPair, stands } from '../helpers/body-drop-motion.ts';
import type { DropValues, Stand } from '../helpers/body-drop-motion.ts';
import { clearanceTable, heightsTable, mountMovement, ridesTable } from '../helpers/body-drop-tables.ts';
import { defineCalculator } from '../record.ts';
import { bodyDropScene } from '../scenes/body-drop.ts';
import type { Place } from '../scenes/truck.ts';

const standOf = (at: number): Stand => stands[at] ?? 'drive height';
const bodyPoint = (v: DropValues) => ({ x: v.bodyPointStation, z: v.bodyPointHeight, on: 'body' as const });
const framePoint = (v: DropValues) => ({ x: v.framePointStation, z: v.framePointHeight, on: 'frame' as const });

/** Frame axes to the picture: front on the left, up from the road. */
const placed = (v: DropValues, stand: Stand, on: 'body' | 'frame'): Place => (x, z) => {
  const p = pointAt(v, stand, { x, z, on });
  return [-p.x, p.overRoad];
};

export default defineCalculator({
  id: 'body-drop',
  version: 1,
  title: 'Body drop: what comes together',
  purpose: 'What a body drop does to the distance between a point on the body and a point on the frame, and who pays for the inches.',
  inputs: [
    { title: 'Drop', of: ['bodyDropType', 'bodyDropFront', 'bodyDropRear', 'cabFrontStation', 'cabRearStation'] },
    { title: 'Your two points', of: ['bodyPointStation', 'bodyPointHeight', 'framePointStation', 'framePointHeight'] },
    { title: 'Frame over the road', of: ['frameMarkHeight', 'suspensionDropFront', 'suspensionDropRear', 'wheelbase', 'airedOutFront', 'airedOutRear', 'liftedFront', 'liftedRear'] },
  ],
  outputs: ['distanceChange', 'distanceAfter', 'distanceBefore', 'bodyPointStationAfter', 'bodyPointHeightAfter', 'bodyPitch', 'framePitchAiredOut', 'framePointClearance'],
  compute: (v) => {
    const refusal = noSuchDrop(v);
    if (refusal) return refusal;
    const pair = readersPair(v);
    const after = pointAt(v, 'drive height', bodyPoint(v));
    return {
      distanceChange: pair.change, distanceAfter: pair.after, distanceBefore: pair.before, bodyPointStationAfter: after.x, bodyPointHeightAfter: after.z, bodyPitch: pair.pitch,
      framePitchAiredOut: pitchesAt(v, 'aired out').framePitch, framePointClearance: pointAt(v, 'aired out', framePoint(v)).overRoad,
    };
  },
  howSure: { quick: (v) => noSuchDrop(v) ?? { distanceChange: readersPair(v).change } },
  summary: (v, say) => `Your two points were ${say(v.distanceBefore, 'length')} apart and are ${say(v.distanceAfter, 'length')} after the drop: ${say(Math.abs(v.distanceChange), 'length')} ${v.distanceChange <= 0 ? 'closer' : 'farther'}. ${v.bodyDropType === 'channeled' ? 'Channeled: floor and seat keep their height over the frame, and pedals, column and roof come down toward them; the hip ends up that much higher over the pedals.' : 'Stock floor: the cab stays as it was inside, and what is under the floor must make room.'}`,
  equations: [
    { result: 'bodyPitch', expression: 'asin((bodyDropRear - bodyDropFront) / (cabFrontStation - cabRearStation))', words: 'If one mount comes down more than the other, the cab turns by the difference over the distance between them.', source: 'derived: rigid cab' },
    { result: 'bodyPointStationAfter', expression: 'cabFrontStation + (bodyPointStation - cabFrontStation) * cos(bodyPitch) - bodyPointHeight * sin(bodyPitch)', words: 'A turned cab carries high points fore and aft. With equal drops nothing moves this way.', source: 'derived: plane motion of a rigid body' },
    { result: 'bodyPointHeightAfter', expression: '(bodyPointStation - cabFrontStation) * sin(bodyPitch) + bodyPointHeight * cos(bodyPitch) - bodyDropFront', words: 'The point comes down with the front mount, more or less by the turn.', source: 'derived: plane motion of a rigid body' },
    { result: 'distanceBefore', expression: 'sqrt((bodyPointStation - framePointStation)^2 + (bodyPointHeight - framePointHeight)^2)', words: 'The long side of the triangle between the two points.', source: 'derived' },
    { result: 'distanceAfter', expression: 'sqrt((bodyPointStationAfter - framePointStation)^2 + (bodyPointHeightAfter - framePointHeight)^2)', words: 'The same triangle with the body’s point in its new place. The frame’s point has not moved.', source: 'derived' },
    { result: 'distanceChange', expression: 'distanceAfter - distanceBefore', words: 'A flat shaft hardly notices the drop, an upright one loses all of it.', source: 'derived' },
    { result: 'framePitchAiredOut', expression: 'asin((suspensionDropRear - airedOutRear - suspensionDropFront + airedOutFront) / wheelbase)', words: 'The frame turns if its ends come down by different amounts.', source: 'derived: rigid frame' },
    { result: 'framePointClearance', expression: 'frameMarkHeight + framePointStation * sin(framePitchAiredOut) + framePointHeight * cos(framePitchAiredOut) - suspensionDropFront + airedOutFront', words: 'What the suspension takes, and what letting the air out takes more.', source: 'derived: plane motion of a rigid body' },
  ],
  cautions: [
    {
      id: 'under-the-body', level: 'danger',
      words: 'A cab or frame held up by jacks, air springs or a chain hoist comes down when one of them lets go, and kills whoever is under it.',
      todo: 'Body on cribbing or stands rated for it before a bolt comes out, truck chocked, nobody under a raised body or frame. Fuel tank and filler out before any cutting or welding.',
    },
    {
      id: 'steering-shaft', level: 'danger',
      words: 'The column’s end comes down over the steering box, so the shaft between them shortens. It takes that from the length that folds in a crash, and with none left the wheel is pushed at the driver. A shaft that binds or pulls out of its slip takes the steering with it.',
      todo: 'Measure the slip left after the drop; keep at least 1-5/8 in (40 mm), better 2 in (50 mm) (common practice, no source), and every folding or break-away part. If that cannot be had, stop. Have the steering checked by someone licensed for it before the truck moves.',
    },
    {
      id: 'lines-pinched', level: 'warning',
      words: 'Brake lines, hoses and cables that cross from body to frame now have the wrong length. A line that bows lies on the rail or the exhaust, a line under a rail is crushed when the frame lays out, and the brakes on that circuit are gone.',
      todo: 'Walk every line and cable, and put each into the list of points and pairs. Make new ones with a loop at the crossing, and look at all three ride heights.',
    },
    {
      id: 'points-touch', level: 'danger', when: (v) => v.distanceAfter < mountMovement,
      words: (v, say) => `Your two points end up ${say(v.distanceAfter, 'length')} apart. Rubber mounts let the body move about ${say(mountMovement, 'length')} either way (common practice, no source), so whatever is there touches on the road.`,
      todo: 'Drop less, or move one of the two parts before you cut.',
      fires: { bodyPointStation: 2 * inch, bodyPointHeight: 12.2 * inch }, silent: {},
    },
    {
      id: 'points-part', level: 'warning', when: (v) => v.distanceChange > 1 * mm,
      words: (v, say) => `Your two points move ${say(v.distanceChange, 'length')} apart. A shaft pulls out of its slip, a hose or cable is pulled tight.`,
      todo: 'Measure the overlap or slack that is left at full steering lock and at all three ride heights.',
      fires: { bodyPointHeight: 6 * inch }, silent: {},
    },
    {
      id: 'pads-near-floor', level: 'warning', when: (v) => v.bodyDropType === 'channeled' && v.bodyDropFront + v.bodyDropRear > 0,
      words: (v, say) => `Channeled, floor and seat keep their height over the frame and the pedals come down ${say((v.bodyDropFront + v.bodyDropRear) / 2, 'length')}. Pedal over floor, rim over seat and thigh, and headroom each shrink by that; the hip ends up that much higher over the pedals. With one circuit dead the brake pedal travels farthest, and if it meets the carpet before the other circuit has built its pressure, the truck does not stop.`,
      todo: 'Check pedal travel with each circuit dead against the carpet. Set the seat for bent legs. Belt and seat anchors in a new floor need a licensed engineer or certifier.',
      fires: {}, silent: { bodyDropType: 'stock' },
    },
    {
      id: 'floor-meets-frame', level: 'warning', when: (v) => v.bodyDropType === 'stock' && v.bodyDropFront + v.bodyDropRear > 0,
      words: (v, say) => `With a stock floor, tunnel and floor come down ${say((v.bodyDropFront + v.bodyDropRear) / 2, 'length')} onto transmission, exhaust, lines and crossmembers. A hot pipe against the floor burns, and metal cut from the top of a rail is metal that carried the load.`,
      todo: 'Measure every gap under the floor first: the smallest sets the drop. Replace cut frame metal as someone qualified says.',
      fires: { bodyDropType: 'stock' }, silent: {},
    },
    {
      id: 'cab-raked', level: 'notice', when: (v) => Math.abs(v.bodyPitch) > 0.3 * deg,
      words: (v, say) => `The cab ends up ${say(Math.abs(v.bodyPitch), 'angle', 2)} nose ${v.bodyPitch > 0 ? 'up' : 'down'} against the frame. Column, pedals and firewall turn with it; the steering joints bend differently.`,
      todo: 'Measure all four corners, and the column’s angle against the rail, before and after.',
      fires: { bodyDropRear: 3.5 * inch }, silent: {},
    },
    {
      id: 'frame-point-low', level: 'warning', when: (v) => v.framePointClearance < 25 * mm,
      words: (v, say) => `Aired out, your frame point is ${v.framePointClearance < 0 ? `${say(-v.framePointClearance, 'length')} under the road: it meets the ground before that height is reached` : `${say(v.framePointClearance, 'length')} above the road: a stone reaches it`}. A steering part, line or hose there is crushed or torn off.`,
      todo: 'Stop the suspension higher, or move what hangs there above the rail’s lower edge.',
      fires: { framePointHeight: -5 * inch }, silent: {},
    },
  ],
  picture: {
    title: 'Body, frame and your two points',
    describe: (v, say, at) => {
      const stand = standOf(at);
      const moved = pointAt(v, stand, bodyPoint(v)).overRoad - v.frameMarkHeight - v.bodyPointHeight;
      return `Side view, front on the left, outlines invented, heights and your points to scale. ${stand === 'before' ? 'Before the drop' : `After the drop, ${stand}`}: your body point is ${say(pointAt(v, stand, bodyPoint(v)).overRoad, 'length')} above the road${stand === 'before' ? '' : ` (${say(Math.abs(moved), 'length')} ${moved <= 0 ? 'lower' : 'higher'} than before)`}, your frame point ${say(pointAt(v, stand, framePoint(v)).overRoad, 'length')}. They are ${say(stand === 'before' ? v.distanceBefore : v.distanceAfter, 'length')} apart${stand === 'before' ? '' : ', the same at any ride height'}. Dashed: where the body was.`;
    },
    states: { label: 'The truck', names: ['before the drop', 'after, drive height', 'after, aired out', 'after, lifted'], start: 1 },
    scene: (v, at, say) => {
      const stand = standOf(at);
      return bodyDropScene({
        wheelbase: v.wheelbase, frame: placed(v, stand, 'frame'), body: placed(v, stand, 'body'), bodyBefore: placed(v, 'before', 'body'),
        framePoint: placed(v, stand, 'frame')(v.framePointStation, v.framePointHeight), bodyPoint: placed(v, stand, 'body')(v.bodyPointStation, v.bodyPointHeight),
        bodyPointBefore: placed(v, 'before', 'body')(v.bodyPointStation, v.bodyPointHeight), label: say(stand === 'before' ? v.distanceBefore : v.distanceAfter, 'length'),
      });
    },
  },
  tables: [heightsTable, ridesTable, clearanceTable],
  paper: {
    assumptions: [
      'Cab and frame are rigid. Your body point is bolted to the body: in a channeled drop, floor and seat are not.', 'Stations count from the front axle line, heights from a level line through the frame mark, all taken before the drop.',
      'Each body drop is measured at its cab mount, at the height of the frame mark. A side view: both points at the same distance from the middle of the truck.', 'Aired out and lifted are counted from the new drive height. Ride height moves body and frame together.',
    ],
    leftOut: ['Twist of the cab, and left and right corners that differ.', 'Movement of the rubber mounts: allow 3/8 in (10 mm) either way.', 'What is at the points: a bracket or a bolt head reaches farther than the point you typed. The clearance calculator takes radii.', 'The small fore-and-aft arc of the axles.'],
    sources: [
      { of: 'rigid motion, who rides with what', kind: 'derived', note: 'the list of parts is of kinds, not of one truck: look at yours' },
      { of: 'movement of rubber mounts, slip to keep in the shaft', kind: 'common practice' },
      { of: 'axes', kind: 'published', id: 'iso-8855', note: 'x forward, y left, z up; the turn is counted nose up here, the other way around' },
    ],
    examples: [
      {
        source: 'Worked by hand: body point 0.3 m behind and 0.4 m above a frame point, 75 mm drop: a 3-4-5 triangle becomes 0.3 by 0.325',
        inputs: { bodyDropFront: 75 * mm, bodyDropRear: 75 * mm, bodyPointStation: -0.5, bodyPointHeight: 0.6, framePointStation: -0.2, framePointHeight: 0.2 },
        results: { distanceBefore: { value: 0.5, within: 1e-9 }, distanceAfter: { value: 0.4423, within: 1e-4 }, bodyPointHeightAfter: { value: 0.525, within: 1e-9 } },
      },
      {
        source: 'Worked by hand: 60 mm at the front mount, 70 mm at the rear, 1500 mm apart: 0.382 degrees; a mount point comes down by its own drop',
        inputs: { bodyDropFront: 60 * mm, bodyDropRear: 70 * mm, cabFrontStation: -0.3, cabRearStation: -1.8, bodyPointStation: -1.8, bodyPointHeight: 0 },
        results: { bodyPitch: { value: 0.382 * deg, within: 0.001 }, bodyPointHeightAfter: { value: -70 * mm, within: 1e-9 } },
      },
    ],
    related: ['body-drop-clearance', 'drop-points', 'clearance', 'cg-after-drop', 'pedal-ratio', 'circuit-failure'],
  },
});
