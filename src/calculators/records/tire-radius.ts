import { isImpossible } from '../../engine/outcome.ts';
import { tireRadius } from '../../engine/tireRadius.ts';
import { inch } from '../../units/si.ts';
import { brakingFeed } from '../helpers/braking-rate.ts';
import { defineCalculator } from '../record.ts';
import type { Say, ValuesOf } from '../record.ts';
import { tireScene } from '../scenes/tires.ts';

type Inputs = 'loadedRadius' | 'frontNewRadius' | 'rearNewRadius' | 'brakingRate' | 'controlForce' | 'rearBrakeFraction' | 'frontAxleLoad' | 'rearAxleLoad' | 'wheelbase' | 'cgHeight' | 'grip' | 'speedometerAxle' | 'indicatedSpeed';
type V = ValuesOf<Inputs>;

const change = (v: V) => tireRadius({
  frontBefore: v.loadedRadius, rearBefore: v.loadedRadius, frontAfter: v.frontNewRadius, rearAfter: v.rearNewRadius, rate: v.brakingRate, rearBrakeFraction: v.rearBrakeFraction,
  rearFraction: v.rearAxleLoad / (v.frontAxleLoad + v.rearAxleLoad), cgHeight: v.cgHeight, wheelbase: v.wheelbase, grip: v.grip, speedometerAxle: v.speedometerAxle,
});

/** A change as percent with its direction: '6.2 % less'. */
const percent = (factor: number, say: Say, more = 'more', less = 'less'): string => `${say(Math.abs(factor - 1), 'share', 2)} ${factor < 1 ? less : more}`;
const differ = (v: V): boolean => Math.abs(v.frontNewRadius - v.rearNewRadius) > 0.01 * v.frontNewRadius;

const byTorque = 'derived: brake torque over loaded radius';

export default defineCalculator({
  id: 'tire-radius',
  version: 1,
  title: 'Other tires: brake force and balance',
  purpose: 'What a larger or smaller loaded radius, alike or unlike front and rear, does to braking, balance and speedometer.',
  inputs: [
    { title: 'Tires', of: ['loadedRadius', 'frontNewRadius', 'rearNewRadius'] },
    { title: 'Stop on the old tires', of: ['brakingRate', 'controlForce', 'rearBrakeFraction'] },
    { title: 'Truck, empty, old tires', of: ['frontAxleLoad', 'rearAxleLoad', 'wheelbase', 'cgHeight', 'grip'] },
    { title: 'Speedometer', of: ['speedometerAxle', 'indicatedSpeed'] },
  ],
  feeds: [brakingFeed],
  outputs: ['newBrakingRate', 'rateFactor', 'newControlForce', 'frontTorqueFactor', 'rearTorqueFactor', 'newRearBrakeFraction', 'fixedShareCriticalRate', 'newCriticalRate', 'newCgHeight', 'trueSpeed', 'mass', 'rearLoadFraction'],
  compute: (v) => {
    const r = change(v);
    if (isImpossible(r)) {
      return {
        refused: (say) => ({
          'cg-below-ground': `Tires that much smaller would put the center of gravity ${say(r.by ?? 0, 'length')} under the road. Check the radii: axle center to ground, not diameters.`,
        })[r.impossible] ?? 'With these numbers the truck would have no rear brakes at all to compare.',
      };
    }
    const mass = v.frontAxleLoad + v.rearAxleLoad;
    return {
      newBrakingRate: r.after.rate, rateFactor: r.rateFactor, newControlForce: v.controlForce * r.controlForceFactor, frontTorqueFactor: r.frontTorqueFactor, rearTorqueFactor: r.rearTorqueFactor,
      newRearBrakeFraction: r.after.rearBrakeFraction, fixedShareCriticalRate: Math.max(0, r.before.criticalRate), newCriticalRate: Math.max(0, r.after.criticalRate), newCgHeight: r.after.cgHeight,
      trueSpeed: v.indicatedSpeed * r.trueOverIndicated, mass, rearLoadFraction: v.rearAxleLoad / mass,
    };
  },
  summary: (v, say) => `The foot that gave ${say(v.brakingRate, 'brakingRate')} gives ${say(v.newBrakingRate, 'brakingRate')} on the new tires, ${percent(v.rateFactor, say)}; the old rate takes ${say(v.newControlForce, 'force')}. ${differ(v) ? `The rear’s share goes from ${say(v.rearBrakeFraction, 'share')} to ${say(v.newRearBrakeFraction, 'share')}.` : 'The balance of forces stays.'} When the dash shows ${say(v.indicatedSpeed, 'speed')}, you drive ${say(v.trueSpeed, 'speed')}.`,
  equations: [
    { result: 'rateFactor', expression: '(1 - rearBrakeFraction) * loadedRadius / frontNewRadius + rearBrakeFraction * loadedRadius / rearNewRadius', words: 'The same brake torque pushes on the road with a longer or shorter lever, at each axle.', source: byTorque },
    { result: 'newBrakingRate', expression: 'brakingRate * rateFactor', words: 'Same foot, same pressure, same torque; the road feels this.', source: byTorque },
    { result: 'newControlForce', expression: 'controlForce / rateFactor', words: 'What the foot must give to get the old rate back.', source: byTorque },
    { result: 'frontTorqueFactor', expression: 'frontNewRadius / loadedRadius', words: 'Torque needed for the old brake force.', source: byTorque },
    { result: 'rearTorqueFactor', expression: 'rearNewRadius / loadedRadius', words: 'And at the rear.', source: byTorque },
    { result: 'newRearBrakeFraction', expression: 'rearBrakeFraction * loadedRadius / (rearNewRadius * rateFactor)', words: 'A larger rear tire or a smaller front one takes share from the rear; the other way round gives it more.', source: byTorque },
    { result: 'mass', expression: 'frontAxleLoad + rearAxleLoad', words: 'Both scales added.', source: 'derived' },
    { result: 'rearLoadFraction', expression: 'rearAxleLoad / mass', words: 'What the rear tires carry standing still.', source: 'derived' },
    { result: 'newCgHeight', expression: 'cgHeight + (1 - rearLoadFraction) * (frontNewRadius - loadedRadius) + rearLoadFraction * (rearNewRadius - loadedRadius)', words: 'The center of gravity rides on the line between the axle centers.', source: 'derived: geometry' },
    { result: 'fixedShareCriticalRate', expression: 'max(0, (rearLoadFraction - rearBrakeFraction) * wheelbase / cgHeight)', words: 'Above this rate the rear works harder than the front, on the old tires; at 0 it always does.', source: 'derived: statics' },
    { result: 'newCriticalRate', expression: 'max(0, (rearLoadFraction - newRearBrakeFraction) * wheelbase / newCgHeight)', words: 'The same on the new ones.', source: 'derived: statics' },
    { result: 'trueSpeed', expression: 'indicatedSpeed * rearNewRadius / loadedRadius', words: 'The speedometer counts turns of the wheel, and each turn is now another length of road.', source: 'derived', when: (v) => v['speedometerAxle'] === 'rear' },
    { result: 'trueSpeed', expression: 'indicatedSpeed * frontNewRadius / loadedRadius', words: 'The speedometer counts turns of the wheel, and each turn is now another length of road.', source: 'derived', when: (v) => v['speedometerAxle'] === 'front' },
  ],
  cautions: [
    {
      id: 'grip-changes-too', level: 'warning',
      words: 'Radius is one of three things a tire changes. Grip and width are the others, and a tire that grips better in front than in the rear moves the lock order as much as any valve.',
      todo: 'Same make, type and age on one axle, front and rear of like grip, and a proof on a closed lot, wet and dry, bed empty, with the tires that will stay.',
    },
    {
      id: 'rear-first', level: 'danger', when: (v) => v.newCriticalRate < v.grip && v.fixedShareCriticalRate >= v.grip,
      words: (v, say) => `On the old tires the front locked first on grip ${say(v.grip, 'friction')}. On the new ones the rear does, above ${say(v.newCriticalRate, 'brakingRate')}. An empty truck whose rear wheels lock turns around.`,
      todo: 'Move the balance bar toward the front, or choose tires whose front is not larger than the rear, before it is driven.',
      fires: { frontNewRadius: 12.6 * inch, rearNewRadius: 11.3 * inch, rearBrakeFraction: 0.22 }, silent: {},
    },
    {
      id: 'rear-leads', level: 'danger', when: (v) => v.newCriticalRate < v.grip && v.fixedShareCriticalRate < v.grip,
      words: (v, say) => `Old tires or new, the rear locks first on grip ${say(v.grip, 'friction')}: above ${say(v.fixedShareCriticalRate, 'brakingRate')} before, above ${say(v.newCriticalRate, 'brakingRate')} now. An empty truck whose rear wheels lock turns around.`,
      todo: 'The tires are not the cause and not the cure. Set the balance first: which axle locks first has a page of its own.',
      fires: { rearBrakeFraction: 0.3 }, silent: { rearBrakeFraction: 0.2 },
    },
    {
      id: 'balance-moves', level: 'caution', when: (v) => Math.abs(v.newRearBrakeFraction - v.rearBrakeFraction) > 0.01,
      words: (v, say) => `Unlike tires move the rear’s share from ${say(v.rearBrakeFraction, 'share')} to ${say(v.newRearBrakeFraction, 'share')}, with no wrench touched.`,
      todo: 'Set the bar with these tires on, and again when they change.',
      fires: {}, silent: { frontNewRadius: 12 * inch, rearNewRadius: 12 * inch },
    },
    {
      id: 'needs-more-foot', level: 'caution', when: (v) => v.rateFactor < 0.95,
      words: (v, say) => `Brakes that gave ${say(v.brakingRate, 'brakingRate')} give ${say(v.newBrakingRate, 'brakingRate')}: taller tires are a taller gear for the brakes too.`,
      todo: 'Count on the new radius when you choose bores and rotors; a tire chosen last undoes that choice.',
      fires: { frontNewRadius: 13 * inch, rearNewRadius: 13 * inch }, silent: {},
    },
    {
      id: 'speedometer', level: 'notice', when: (v) => Math.abs(v.trueSpeed - v.indicatedSpeed) > 0.02 * v.indicatedSpeed && v.indicatedSpeed > 0,
      words: (v, say) => `At a shown ${say(v.indicatedSpeed, 'speed')} you drive ${say(v.trueSpeed, 'speed')}. Odometer and any braking test you time by the dash are off by as much.`,
      todo: 'Change the drive gear or the sender’s setting, and check against satellite speed. Your inspection may ask for it.',
      fires: {}, silent: { rearNewRadius: 11.8 * inch },
    },
  ],
  picture: {
    title: 'Brake torque, radius and push on the road',
    describe: (v, say) => `Both axles from the side, front on the left, new tires drawn over the old ones, dashed. Same torque at the hub: the front pushes the road with ${say(v.loadedRadius / v.frontNewRadius, 'share')} of what it did, the rear with ${say(v.loadedRadius / v.rearNewRadius, 'share')}.`,
    scene: (v, _at, say) => tireScene({ old: v.loadedRadius, front: v.frontNewRadius, rear: v.rearNewRadius, frontLabel: say(v.loadedRadius / v.frontNewRadius, 'share'), rearLabel: say(v.loadedRadius / v.rearNewRadius, 'share') }),
  },
  tables: [{
    caption: 'Old tires, new tires',
    head: ['', 'Old', 'New'],
    rows: (v) => [
      ['Braking rate, same foot', { value: v.brakingRate, dimension: 'brakingRate' }, { value: v.newBrakingRate, dimension: 'brakingRate' }],
      ['Foot for the old rate', { value: v.controlForce, dimension: 'force' }, { value: v.newControlForce, dimension: 'force' }],
      ['Rear share of brake force', { value: v.rearBrakeFraction, dimension: 'share' }, { value: v.newRearBrakeFraction, dimension: 'share' }],
      ['Critical rate, empty', { value: v.fixedShareCriticalRate, dimension: 'brakingRate' }, { value: v.newCriticalRate, dimension: 'brakingRate' }],
      ['Center of gravity', { value: v.cgHeight, dimension: 'length' }, { value: v.newCgHeight, dimension: 'length' }],
      ['Speed at the shown one', { value: v.indicatedSpeed, dimension: 'speed' }, { value: v.trueSpeed, dimension: 'speed' }],
    ],
  }],
  paper: {
    assumptions: ['The old tires are alike front and rear, as they are on the demo truck and in the chain from foot to road.', 'The same foot makes the same pressure and the same torque.', 'The tires do not yet slide: past their grip no radius helps.', 'A tire rolls on a little more than its loaded radius, by nearly the same factor old and new.'],
    leftOut: ['Grip, width and weight of the new tires.', 'The lean of a truck on unlike tires, which moves less than half a percent of its weight per degree.', 'Springs in the masters and the brakes’ push-out pressure, a few psi.', 'A suspension that lets the body down by what the tires lift it.'],
    sources: [
      { of: 'brake force as torque over loaded radius, the share, the critical rate', kind: 'derived' },
      { of: 'loaded radius about 3 % less than half the diameter', kind: 'common practice' },
    ],
    examples: [{
      source: 'Reference truck worked by hand: 0.810 g, 24 % rear, both tires from 300 to 330 mm: 0.736 g, 24 % rear, 60 shown is 66',
      inputs: { loadedRadius: 0.3, frontNewRadius: 0.33, rearNewRadius: 0.33, brakingRate: 0.81, rearBrakeFraction: 0.24, speedometerAxle: 'rear', indicatedSpeed: 26.8224 },
      results: { newBrakingRate: { value: 0.736, within: 0.001 }, newRearBrakeFraction: { value: 0.24, within: 1e-9 }, trueSpeed: { value: 66 * 0.44704, within: 1e-9 } },
    }],
    related: ['heat-and-tires', 'disc-torque', 'lock-order', 'braking-rate'],
  },
});
