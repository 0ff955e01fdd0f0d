import { isImpossible } from '../../engine/outcome.ts';
import { deg, inch, lbf, mm } from '../../units/si.ts';
import { barAtStop, barFeed, solveBar } from '../helpers/balance-bar.ts';
import { defineCalculator } from '../record.ts';
import { barScene } from '../scenes/bar.ts';

export default defineCalculator({
  ...barFeed,
  version: 1,
  purpose: 'How the bar divides the push, how far it tilts at your foot force, and how well friction lets it decide.',
  howSure: { band: 'frictionBand' },
  summary: (v, say) => `The front gets ${say(v.frontShare, 'share')} of the push. At ${say(v.controlForce, 'force')} the bar tilts ${say(v.barTilt, 'angle')}, ${say(v.tiltOfStop, 'share')} of the way to its stop. Friction lets the share sit anywhere from ${say(v.frontShareLow, 'share')} to ${say(v.frontShareHigh, 'share')}.`,
  equations: [
    { result: 'frontShare', expression: '1 / 2 + barOffset / barSpacing', words: 'Moments about the bar’s pivot: the clevis nearer the pivot gets the larger share.', source: 'derived: free body of the bar' },
    { result: 'barTilt', expression: 'asin((barRestLead + frontStroke - rearStroke) / barSpacing)', words: 'The bar tilts because one circuit swallows more fluid than the other.', source: 'derived: rigid bar' },
    { result: 'tiltOfStop', expression: 'abs(barTilt) / barStopAngle', words: 'How much of the swing is used up.', source: 'derived' },
    { result: 'shareTilted', expression: 'frontShare + barPinOffset * tan(barTilt) / barSpacing', words: 'With the pivot on the line through the clevis pins, tilt changes nothing. Off that line it does.', source: 'derived: free body of the tilted bar' },
    { result: 'frictionBand', expression: 'barFriction * barBearingRadius / (barSpacing * cos(barTilt))', words: 'A dry bearing resists turning, so the bar stays where it was last pushed.', source: 'derived: friction torque of the bearing' },
    { result: 'sharePerTurn', expression: 'threadPitch / barSpacing', words: 'One turn moves the pivot by one thread.', source: 'derived' },
  ],
  cautions: [
    {
      id: 'never-swings', level: 'warning',
      words: 'A bar that cannot swing freely gives a different truck every stop. Dirt, paint, no side gap or twisted clevises all bind it.',
      todo: 'With both rods off, swing it by hand to both stops before the first drive and after each change: greased and free. Side gap 0.06 to 0.10 in (1.5 to 2.5 mm) at each clevis (common practice, no source).',
    },
    {
      id: 'tilt-on-stop', level: 'danger', when: barAtStop,
      words: (v, say) => `The bar is at ${say(v.tiltOfStop, 'share')} of its stop in ordinary braking. On the stop it no longer shares by your setting, and one circuit takes what the other should have.`,
      todo: 'Change a bore or the fluid a circuit swallows. Do not turn the adjuster: tilt comes from volume.',
      fires: { barStopAngle: 9 * deg }, silent: { controlForce: 40 * lbf },
    },
    {
      id: 'tilt-far', level: 'caution', when: (v) => v.tiltOfStop >= 0.6 && v.tiltOfStop < 0.9,
      words: (v, say) => `The bar has used ${say(v.tiltOfStop, 'share')} of its swing. Worn brake pads, air or heat will use the rest.`,
      todo: 'Set the rods so that the bar leans half its tilt one way at rest and half the other way at hard braking. That lengthens the lead when the circuit with the longer rod dies: type the lean as “front clevis ahead at rest” and read the failed-circuit check again. If that is not enough, change a bore.',
      fires: { barStopAngle: 13 * deg }, silent: { controlForce: 20 * lbf },
    },
    {
      id: 'friction-wide', level: 'caution', when: (v) => v.frictionBand > 0.015,
      words: (v, say) => `Friction alone can move the share by ${say(v.frictionBand, 'share')} either way. A fine adjustment is lost in that.`,
      todo: 'Clean and grease the bearing, then check with two gauges, read pushing harder, then easing off.',
      fires: {}, silent: { barFriction: 0.05 },
    },
    {
      id: 'share-far', level: 'caution', when: (v) => v.frontShare > 0.65 || v.frontShare < 0.35,
      words: (v, say) => `A share of ${say(v.frontShare, 'share')} is outside what a bar is good for.`,
      todo: 'Change bores so that the bar works near its middle; keep it for the last few points.',
      fires: { barOffset: 0.5 * inch }, silent: {},
    },
    {
      id: 'rod-splay', level: 'caution', when: (v) => Math.max(Math.abs(v.frontSplay), Math.abs(v.rearSplay)) > 5 * deg,
      words: (v, say) => `A pushrod stands ${say(Math.max(Math.abs(v.frontSplay), Math.abs(v.rearSplay)), 'angle')} off its bore seen from above. It loads the piston sideways and wears it.`,
      todo: 'Bring clevis spacing and master spacing together, or use longer rods. Past 5 degrees stop.',
      fires: { masterSpacing: 3.6 * inch }, silent: {},
    },
  ],
  picture: {
    title: 'The bar from above, front on the left, at your foot force',
    describe: (v, say) => `The bar from above, masters at the top, front on the left. Pivot to front clevis ${say(v.barSpacing / 2 - v.barOffset, 'length')}, to rear clevis ${say(v.barSpacing / 2 + v.barOffset, 'length')}. It stands ${say(v.barTilt, 'angle')} off square, ${v.barTilt >= 0 ? 'front' : 'rear'} clevis ahead; the stop is at ${say(v.barStopAngle, 'angle')}.`,
    scene: (v, _at, say) => barScene({ ...v, dead: undefined, labels: { front: say(v.shareTilted, 'share'), rear: say(1 - v.shareTilted, 'share') } }),
  },
  tables: [{
    caption: 'Tilt as foot force rises',
    head: ['Foot force', 'Front stroke', 'Rear stroke', 'Tilt'],
    rows: (v, say) => [25, 50, 75, 100].map((pounds) => {
      const r = solveBar({ ...v, controlForce: pounds * lbf });
      return [{ value: pounds * lbf, dimension: 'force' }, ...(isImpossible(r) ? ['–', '–', 'bar cannot follow'] : [say(r.frontStroke, 'length'), say(r.rearStroke, 'length'), say(r.tilt, 'angle')])];
    }),
  }],
  paper: {
    assumptions: ['The bar is rigid.', 'The rods stay parallel as seen from the side.', 'Turning the adjuster slides the pivot in its tube while the clevises stay in line with their bores. If yours carries the clevises along, each rod splays more, by the angle whose sine is the offset over the rod’s length.', 'Each circuit swallows a fixed volume before pressure builds, then a volume in proportion to pressure.', 'Strokes are found with the share the bar has when square.'],
    leftOut: ['Bending of the bar and play in the clevises.', 'A bar that rubs the ends of its tube: nothing on this page holds for it.', 'The return springs of the masters, a few pounds.'],
    sources: [
      { of: 'share, tilt and friction band', kind: 'derived', note: 'no published worked example was found' },
      { of: 'bearing friction 0.05 greased to 0.2 dry', kind: 'from memory' },
      { of: 'keep the share between 35 and 65 %, tilt below half of the swing', kind: 'common practice' },
    ],
    examples: [{
      source: 'Reference truck worked by hand: 500 N, bar 63.5 mm, pivot 7.62 mm toward the front',
      inputs: {
        controlForce: 500, pedalRatio: 6.2, linkageEfficiency: 0.85, barSpacing: 63.5 * mm, barOffset: 7.62 * mm, frontMasterBore: 17.78 * mm, rearMasterBore: 17.78 * mm,
        portStroke: 1 * mm, frontTakeUp: 1.874e-6, rearTakeUp: 0.884e-6, frontCompliance: 0.051e-11, rearCompliance: 0.033e-11, barStopAngle: 12 * deg,
      },
      results: { frontShare: { value: 0.62, within: 1e-9 }, frontStroke: { value: 22.1 * mm, within: 0.003 }, rearStroke: { value: 9.9 * mm, within: 0.006 }, barTilt: { value: 11.0 * deg, within: 0.01 } },
    }],
    related: ['bias', 'two-circuits', 'line-pressure', 'circuit-failure'],
  },
});
