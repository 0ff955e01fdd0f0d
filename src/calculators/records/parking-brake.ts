import { deg, lbf, mm } from '../../units/si.ts';
import { discFeed } from '../helpers/disc-torque.ts';
import { emptyTruck, held, loadedTruck, parkingResults, quickParking, wheel } from '../helpers/parking-brake.ts';
import type { ParkingValues } from '../helpers/parking-brake.ts';
import { defineCalculator } from '../record.ts';
import type { Values } from '../record.ts';
import { parkingScene } from '../scenes/parking.ts';

const caliper = (v: Values): boolean => v['parkingKind'] === 'caliper';
const shoe = (v: Values): boolean => v['parkingKind'] === 'shoe';
const num = (v: Values, key: string): number => v[key] as number;
const tips = (grip: number, psi: number, chi: number): boolean => grip * chi > 1 - psi;
const emptyTips = (v: Values): boolean => tips(num(v, 'grip'), num(v, 'rearLoadFraction'), num(v, 'heightRatio'));
const ladenTips = (v: Values): boolean => tips(num(v, 'grip'), num(v, 'ladenRearLoadFraction'), num(v, 'ladenHeightRatio'));
const pull = (v: Values, side: 'Up' | 'Down'): number => (2 * num(v, `parkingTorque${side}`)) / (num(v, 'ladenMass') * 9.80665 * num(v, 'loadedRadius'));

/** The four ways to stand: nose down and up, empty and loaded. */
function ways(v: ParkingValues) {
  const loaded = loadedTruck(v);
  const trucks = [['empty', emptyTruck(v)] as const, ...('refused' in loaded || v.payload === 0 ? [] : [['loaded', loaded] as const])];
  return trucks.flatMap(([name, truck]) => { const h = held(v, truck); return [[`${name}, nose down`, h.noseDown] as const, [`${name}, nose up`, h.noseUp] as const]; });
}

export default defineCalculator({
  id: 'parking-brake',
  version: 1,
  title: 'Parking brake on a hill',
  purpose: 'How hard the lever must be pulled to hold the truck on a hill, and at what hill the tires let go whatever the lever does.',
  inputs: [
    { title: 'Hill and road', of: ['parkingGrade', 'grip'] },
    { title: 'Lever and cable', of: ['leverForce', 'leverRatio', 'frontWrap', 'rearWrap', 'cableFriction', 'equalizerRatio'] },
    { title: 'At the wheel', of: ['parkingKind', 'actuatorEfficiency'] },
    { title: 'If it is a lever on the caliper', of: ['caliperGain', 'staticFriction', 'rearEffectiveRadius', 'coolingLoss'] },
    { title: 'If it is shoes in the hat', of: ['shoeGain', 'forwardFactor', 'reverseFactor', 'hatRadius'] },
    { title: 'Truck, empty', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight', 'loadedRadius'] },
    { title: 'Load in the bed', of: ['payload', 'payloadAhead', 'payloadHeight'] },
  ],
  feeds: [discFeed],
  outputs: [
    'leverForceNeeded', 'steepestDown', 'steepestUp', 'parkingTorqueNeeded', 'parkingTorqueDown', 'parkingTorqueUp', 'gradeForce', 'frontCableTension', 'wheelCableTension', 'parkingClamp', 'tiresDown', 'tiresUp', 'ladenTiresDown', 'ladenTiresUp',
    'mass', 'rearLoadFraction', 'heightRatio', 'ladenMass', 'ladenRearLoadFraction', 'ladenHeightRatio',
  ],
  compute: parkingResults,
  howSure: { quick: quickParking },
  summary: (v, say) => `Holding ${v.payload > 0 ? 'the loaded truck' : 'the truck'} on ${say(v.parkingGrade, 'grade')} takes ${say(v.leverForceNeeded, 'force')} at the lever. At ${say(v.leverForce, 'force')} it holds ${say(v.steepestDown, 'grade')} nose down and ${say(v.steepestUp, 'grade')} nose up, ${v.payload > 0 ? 'empty or loaded, whichever is less' : 'empty'}. The empty truck’s rear tires slide at ${say(v.tiresDown, 'grade')} nose down and ${emptyTips(v) ? 'its front wheels leave the road at ' : ''}${say(v.tiresUp, 'grade')} nose up, whatever the brake${v.tiresDown <= v.tiresUp ? ': nose down is the worse way for a rear brake' : ''}.`,
  equations: [
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales added.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'What the rear tires carry on the level.', source: 'derived' },
    { result: 'heightRatio', expression: 'cgHeight / wheelbase', words: 'How much a hill moves from axle to axle.', source: 'derived: statics' },
    { result: 'ladenMass', expression: 'mass + payload', words: 'The load comes on top.', source: 'derived' },
    { result: 'ladenRearLoadFraction', expression: '(rearAxleLoad + payload * (wheelbase - payloadAhead) / wheelbase) / ladenMass', words: 'Moments about the front axle: the load puts most of itself on the rear.', source: 'derived: statics' },
    { result: 'ladenHeightRatio', expression: '(mass * cgHeight + payload * payloadHeight) / (ladenMass * wheelbase)', words: 'The two centers averaged by their masses.', source: 'derived' },
    { result: 'gradeForce', expression: 'ladenMass * g * parkingGrade / sqrt(1 + parkingGrade^2)', words: 'The part of the weight that points down the road.', source: 'derived: statics' },
    { result: 'parkingTorqueNeeded', expression: 'gradeForce * loadedRadius / 2', words: 'Two wheels share it, each with the tire’s radius as lever.', source: 'derived: statics' },
    { result: 'frontCableTension', expression: 'leverForce * leverRatio * exp(-cableFriction * frontWrap)', words: 'The lever multiplies, every bend of the sheath takes its part.', source: 'derived: a cable on a bend presses with its own tension' },
    { result: 'wheelCableTension', expression: 'frontCableTension / 2 * equalizerRatio * exp(-cableFriction * rearWrap)', words: 'The equalizer halves it, and the rear bends take theirs.', source: 'derived' },
    { result: 'parkingClamp', expression: 'wheelCableTension * caliperGain * actuatorEfficiency', words: 'Lever and ramp squeeze the pads.', source: 'derived', when: caliper },
    { result: 'parkingClamp', expression: 'wheelCableTension * shoeGain * actuatorEfficiency', words: 'The lever between the shoes spreads them.', source: 'derived', when: shoe },
    { result: 'parkingTorqueDown', expression: '2 * staticFriction * parkingClamp * rearEffectiveRadius * (1 - coolingLoss)', words: 'Two faces hold; what the rotor’s shrinking takes is off.', source: 'derived', when: caliper },
    { result: 'parkingTorqueUp', expression: '2 * staticFriction * parkingClamp * rearEffectiveRadius * (1 - coolingLoss)', words: 'A disc does not know which way.', source: 'derived', when: caliper },
    { result: 'parkingTorqueDown', expression: 'parkingClamp * forwardFactor * hatRadius', words: 'Nose down the wheel would roll forward.', source: 'derived', when: shoe },
    { result: 'parkingTorqueUp', expression: 'parkingClamp * reverseFactor * hatRadius', words: 'Nose up it would roll back.', source: 'derived', when: shoe },
    { result: 'leverForceNeeded', expression: 'parkingTorqueNeeded * leverForce / min(parkingTorqueDown, parkingTorqueUp)', words: 'Torque goes as the pull, so scale the pull to the torque needed, the worse way.', source: 'derived' },
    { result: 'tiresDown', expression: 'grip * rearLoadFraction / (1 + grip * heightRatio)', words: 'Nose down the hill leans the truck on its front wheels, and the braked rear ones lose load.', source: 'derived: moments about the front contact' },
    { result: 'tiresUp', expression: 'grip * rearLoadFraction / (1 - grip * heightRatio)', words: 'Nose up it leans on the braked ones.', source: 'derived: moments about the front contact', when: (v) => !emptyTips(v) },
    { result: 'tiresUp', expression: '(1 - rearLoadFraction) / heightRatio', words: 'Before it slides, its front wheels leave the road.', source: 'derived: moments about the rear contact', when: emptyTips },
    { result: 'ladenTiresDown', expression: 'grip * ladenRearLoadFraction / (1 + grip * ladenHeightRatio)', words: 'The same with the load.', source: 'derived' },
    { result: 'ladenTiresUp', expression: 'grip * ladenRearLoadFraction / (1 - grip * ladenHeightRatio)', words: 'The same with the load.', source: 'derived', when: (v) => !ladenTips(v) },
    { result: 'ladenTiresUp', expression: '(1 - ladenRearLoadFraction) / ladenHeightRatio', words: 'With the load its front wheels leave the road first.', source: 'derived', when: ladenTips },
    { result: 'steepestDown', expression: 'min(tiresDown, ladenTiresDown, tan(asin(2 * parkingTorqueDown / (ladenMass * g * loadedRadius))))', words: 'Tires empty, tires loaded, brake with the whole mass on it: whatever gives first.', source: 'derived: statics', when: (v) => pull(v, 'Down') < 0.999 },
    { result: 'steepestDown', expression: 'min(tiresDown, ladenTiresDown)', words: 'This brake would hold a wall; the tires would not.', source: 'derived: statics', when: (v) => pull(v, 'Down') > 1 },
    { result: 'steepestUp', expression: 'min(tiresUp, ladenTiresUp, tan(asin(2 * parkingTorqueUp / (ladenMass * g * loadedRadius))))', words: 'The same nose up.', source: 'derived: statics', when: (v) => pull(v, 'Up') < 0.999 },
    { result: 'steepestUp', expression: 'min(tiresUp, ladenTiresUp)', words: 'This brake would hold a wall; the tires would not.', source: 'derived: statics', when: (v) => pull(v, 'Up') > 1 },
  ],
  cautions: [
    {
      id: 'not-alone', level: 'danger',
      words: 'This is a sum for a dry, still day. Cables creep, rotors cool, a neighbor’s bumper nudges, and a truck that rolls kills whoever stands below it. A line lock, or any valve that traps line pressure, is not a parking brake: it leaks down as the fluid cools.',
      todo: 'Lever, gear and chock, all three, the front wheels turned so that the curb stops them. Prove the brake on your steepest hill, both ways, 5 minutes, a driver at the pedal and nobody below.',
    },
    {
      id: 'tires-let-go', level: 'danger', when: (v) => Math.min(v.tiresDown, v.ladenTiresDown, v.tiresUp, v.ladenTiresUp) < v.parkingGrade,
      words: (v, say) => `On this road the rear wheels let the truck go at ${say(Math.min(v.tiresDown, v.ladenTiresDown, v.tiresUp, v.ladenTiresUp), 'grade')}, sliding or, if it is tall, tipping off them: below the hill of ${say(v.parkingGrade, 'grade')}. No lever and no brake can cure that.`,
      todo: 'Do not park there. Gear does not help: it holds by the same two tires. Only chocks against the front wheels add to them.',
      fires: { grip: 0.45 }, silent: {},
    },
    {
      id: 'brake-lets-go', level: 'danger', when: (v) => v.leverForceNeeded > v.leverForce,
      words: (v, say) => `At ${say(v.leverForce, 'force')} the brake does not hold ${say(v.parkingGrade, 'grade')}${v.payload > 0 ? ' with this load' : ''} once it has cooled: ${say(v.leverForceNeeded, 'force')} would be needed.`,
      todo: 'More lever, fewer bends, a better ratio at the wheel. Until then no parking on such a hill.',
      fires: { leverForce: 40 * lbf }, silent: { leverForce: 100 * lbf },
    },
    {
      id: 'pull-too-hard', level: 'warning', when: (v) => v.leverForceNeeded > 400,
      words: (v, say) => `${say(v.leverForceNeeded, 'force')} is more than a hand lever may ask of a test driver: 400 N (90 lbf) by hand, 500 N (112 lbf) by foot, on 20 % for 5 minutes (FMVSS 135, from memory, not checked against the text). A smaller person cannot set it.`,
      todo: 'Count on the weakest driver’s pull, not on yours.',
      fires: { parkingGrade: 0.3 }, silent: { parkingGrade: 0.1 },
    },
    {
      id: 'cooling', level: 'warning', when: (v) => v.parkingKind === 'caliper',
      words: (v, say) => `A caliper set on a hot rotor loses grip as the rotor shrinks away from it: ${say(v.coolingLoss, 'share')} is counted here. A truck that stood still when you left it can roll an hour later.`,
      todo: 'After a hard drive pull the lever again once it has cooled, and leave it in gear.',
      fires: {}, silent: { parkingKind: 'shoe' },
    },
    {
      id: 'cable-eats', level: 'caution', when: (v) => 2 * v.wheelCableTension < 0.5 * v.leverForce * v.leverRatio * v.equalizerRatio,
      words: (v, say) => `The cable’s bends eat ${say(1 - (2 * v.wheelCableTension) / (v.leverForce * v.leverRatio * v.equalizerRatio), 'share')} of the pull, and a rusty sheath eats more. What it holds back going on it also holds back going off: the brakes drag.`,
      todo: 'Wider, fewer bends; lined cables; slack of 1/8 to 1/4 in (3 to 6 mm) at every ride height (common practice, no source).',
      fires: { cableFriction: 0.2 }, silent: { cableFriction: 0.05 },
    },
    {
      id: 'adjuster', level: 'warning', when: (v) => v.parkingKind === 'caliper',
      words: 'A caliper with a parking lever adjusts itself only if the lever comes all the way back to its stop. A cable that is tight at rest stops that, and the parking brake is gone in weeks.',
      todo: 'Let the pistons adjust first, then set the cable so that both levers touch their stops, aired out and lifted as well.',
      fires: {}, silent: { parkingKind: 'shoe' },
    },
  ],
  picture: {
    title: 'On your hill, empty: what the road carries, what the rear tires must hold',
    describe: (v, say, at) => {
      const down = at === 0;
      const limit = down ? v.tiresDown : v.tiresUp;
      return `The empty truck on ${say(v.parkingGrade, 'grade')}, nose ${down ? 'down' : 'up'}. The hill leans it on its ${down ? 'front' : 'rear'} wheels. Only the rear tires hold, and on this road they slide at ${say(limit, 'grade')}${limit < v.parkingGrade ? ': it does not stay' : ''}.`;
    },
    states: { label: 'The truck stands', names: ['nose down', 'nose up'] },
    scene: (v, at, say) => {
      const nose = at === 0 ? 'down' : 'up';
      const c = 1 / Math.hypot(1, v.parkingGrade);
      const moved = v.heightRatio * v.parkingGrade * (nose === 'up' ? 1 : -1);
      const [rear, front] = [Math.max(0, (v.rearLoadFraction + moved) * c), Math.max(0, (1 - v.rearLoadFraction - moved) * c)];
      const slides = (nose === 'up' ? v.tiresUp : v.tiresDown) < v.parkingGrade;
      const weight = v.mass * 9.80665;
      return parkingScene({
        wheelbase: v.wheelbase, cgHeight: v.cgHeight, rearFraction: v.rearLoadFraction, grade: v.parkingGrade, nose, front, rear, pull: v.parkingGrade * c, slides,
        labels: { pull: slides ? 'slides' : `holds ${say(v.parkingGrade * c * weight, 'force')}`, front: say(front * weight, 'force'), rear: say(rear * weight, 'force'), grade: `${say(v.parkingGrade, 'grade')}, nose ${nose}` },
      });
    },
  },
  charts: [{
    title: 'Steepest hill against the pull on the lever, cold',
    x: { label: 'pull on the lever', dimension: 'force' },
    y: { label: 'hill', dimension: 'grade' },
    series: (v) => {
      const last = Math.max(150 * lbf, 1.2 * v.leverForce);
      const loaded = loadedTruck(v);
      const truck = 'refused' in loaded ? emptyTruck(v) : loaded;
      const points = Array.from({ length: 25 }, (_, k) => (k * last) / 24).map((leverForce) => ({ leverForce, trucks: [held({ ...v, leverForce }, truck), held({ ...v, leverForce }, emptyTruck(v))] }));
      const line = (side: 'noseUp' | 'noseDown') => points.map(({ leverForce, trucks }) => [leverForce, Math.min(...trucks.map((t) => t[side].grade))] as const);
      return [
        { label: 'nose up', tone: 'front', points: line('noseUp') },
        { label: 'nose down', tone: 'rear', points: line('noseDown') },
        { label: 'your hill', tone: 'ghost', points: [[0, v.parkingGrade], [last, v.parkingGrade]] },
      ];
    },
    marks: (v) => [{ at: [v.leverForce, v.steepestDown], label: 'you', tone: 'rear' }],
    describe: (v, say) => `The hill held rises with the pull until the tires, not the brake, are the limit: ${say(Math.min(v.tiresDown, v.ladenTiresDown), 'grade')} nose down, ${say(Math.min(v.tiresUp, v.ladenTiresUp), 'grade')} nose up. Past that no pull helps. Your pull of ${say(v.leverForce, 'force')} holds ${say(v.steepestDown, 'grade')} nose down.`,
  }],
  tables: [
    {
      caption: 'What gives first, each way to stand',
      head: ['Truck', 'Tires', 'Brake, cold', 'Holds'],
      rows: (v) => ways(v).map(([name, h]) => [name, { value: h.byTires, dimension: 'grade' }, h.byBrake === undefined || h.byBrake > 2 ? 'a wall' : { value: h.byBrake, dimension: 'grade' }, { value: h.grade, dimension: 'grade' }]),
    },
    {
      caption: 'Where the empty truck’s tires let go on other roads',
      head: ['Grip', 'Nose down', 'Nose up'],
      rows: (v) => [0.9, 0.7, 0.5, 0.3, 0.15].map((grip) => { const h = held(v, emptyTruck(v), grip); return [{ value: grip, dimension: 'friction' }, { value: h.noseDown.byTires, dimension: 'grade' }, { value: h.noseUp.byTires, dimension: 'grade' }]; }),
    },
    {
      caption: 'Where the pull goes',
      head: ['Place', 'Force'],
      rows: (v) => { const w = wheel(v); return [
        ['hand', { value: v.leverForce, dimension: 'force' }], ['front cable, at the lever', { value: v.leverForce * v.leverRatio, dimension: 'force' }], ['front cable, at the equalizer', { value: w.frontTension, dimension: 'force' }],
        ['each rear cable, at the wheel', { value: w.wheelTension, dimension: 'force' }], [v.parkingKind === 'caliper' ? 'brake pads' : 'shoe tips', { value: w.clamp, dimension: 'force' }],
      ]; },
    },
  ],
  paper: {
    assumptions: ['Only the rear wheels are braked, both alike, out of gear. Dry and still.', 'The hill asked for is held by the loaded truck; the tires are looked at empty and loaded.', 'The cable bends in its sheath, so each bend takes a part whatever its radius.', 'Grip and friction as typed; a caliper’s torque is counted after it has cooled, a hat’s shoes lose nothing by cooling.'],
    leftOut: ['The gearbox in gear and the chock, which belong there as well.', 'Rolling resistance, which helps by one or two percent of the weight.', 'One rear wheel on ice or in a rut, creep of the cable, a truck that rocks.', 'Stretch: how many clicks the lever takes is not computed. Full hold by half of its travel is the rule (common practice, no source).'],
    sources: [
      { of: 'hill, cable and tires', kind: 'derived', note: 'statics; the grip on a grade is tested against College Physics 2e, example in 5.1' },
      { of: 'grip on a grade', kind: 'published', id: 'openstax', note: 'section 5.1, a car on a 4 degree slope' },
      { of: 'yardstick 20 %, 400 N by hand, 500 N by foot, 5 minutes', kind: 'from memory', id: 'fmvss-135', note: 'section S7.12, from memory, not checked against the text' },
      { of: 'yardstick 18 % for light commercial vehicles', kind: 'published', id: 'nsw-manual', note: 'page 48' },
      { of: 'cable friction, lever ratios, cooling loss of 10 to 20 %', kind: 'common practice' },
    ],
    examples: [
      {
        source: 'Reference truck worked by hand: 1,340 kg on 20 %, tire 300 mm, no load: 2,577 N, 387 N·m a wheel; grip 0.7 slides at 25.6 % nose down and 34.5 % nose up',
        inputs: { parkingGrade: 0.2, frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, loadedRadius: 0.3, payload: 0, grip: 0.7 },
        results: { gradeForce: { value: 2577, within: 2e-4 }, parkingTorqueNeeded: { value: 387, within: 0.0013 }, tiresDown: { value: 0.256, within: 0.002 }, tiresUp: { value: 0.345, within: 0.0015 } },
      },
      {
        source: 'The same truck on 30 %: 566 N·m a wheel',
        inputs: { parkingGrade: 0.3, frontAxleLoad: 777.2, rearAxleLoad: 562.8, wheelbase: 2.743, cgHeight: 0.58, loadedRadius: 0.3, payload: 0 },
        results: { parkingTorqueNeeded: { value: 566, within: 0.001 } },
      },
      {
        source: 'Worked by hand: 300 N at a lever of 8, bends of 180 and 270 degrees at friction 0.15: 1,498 N after the front cable, 369 N at each wheel',
        inputs: { leverForce: 300, leverRatio: 8, frontWrap: 180 * deg, rearWrap: 270 * deg, cableFriction: 0.15, equalizerRatio: 1 },
        results: { frontCableTension: { value: 1498, within: 0.0005 }, wheelCableTension: { value: 369, within: 0.0015 } },
      },
      {
        source: 'Worked by hand: 4,931 N of clamp at friction 0.35 and 112 mm is 387 N·m; no bends, no losses',
        inputs: { leverForce: 493.1, leverRatio: 2, frontWrap: 0, rearWrap: 0, equalizerRatio: 1, parkingKind: 'caliper', caliperGain: 10, actuatorEfficiency: 1, staticFriction: 0.35, rearEffectiveRadius: 112 * mm, coolingLoss: 0 },
        results: { parkingClamp: { value: 4931, within: 1e-9 }, parkingTorqueDown: { value: 387, within: 0.0013 } },
      },
      {
        source: 'Worked by hand: 1,137 N on each shoe tip, brake factor 4, hat of 85 mm radius: 387 N·m',
        inputs: { leverForce: 379, leverRatio: 2, frontWrap: 0, rearWrap: 0, equalizerRatio: 1, parkingKind: 'shoe', shoeGain: 3, actuatorEfficiency: 1, forwardFactor: 4, reverseFactor: 4, hatRadius: 85 * mm },
        results: { parkingClamp: { value: 1137, within: 1e-9 }, parkingTorqueUp: { value: 387, within: 0.0013 } },
      },
    ],
    related: ['rear-discs', 'disc-to-match', 'disc-torque', 'load-transfer'],
  },
});
