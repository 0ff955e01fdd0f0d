import type { Say } from '../record.ts';
import type { At, Scene, Shape } from '../show.ts';

export interface ClutchScene {
  readonly slaveType: string;
  readonly clutchPedalRatio: number;
  readonly clutchFreePlay: number;
  readonly clutchFloorTravel: number;
  readonly clutchStopTravel: number;
  readonly clutchMasterStroke: number;
  readonly forkRatioUsed: number;
  readonly slavePlay: number;
  readonly bearingTravelNeeded: number;
  readonly bearingLimit: number;
  readonly padTravel: number;
  readonly masterStroke: number;
  readonly slaveStroke: number;
  readonly bearingTravel: number;
  readonly say: Say;
}

/** Arm of the pedal as drawn, and how much larger the slave's side is. Travels are true; no other size is. */
const arm = 0.3;
const larger = 4;

/**
 * Pedal, master, slave, fork and fingers of the diaphragm from the side, front of the truck to the left. The fork turns
 * about its lower end, so slave and bearing move the same way; a fork with its pivot between them works the same.
 */
export function clutchScene(v: ClutchScene): Scene {
  const rest = -v.clutchFloorTravel / arm / 2;
  const on = (radius: number, travel: number): At => [-radius * Math.sin(rest + travel / arm), -radius * Math.cos(rest + travel / arm)];
  const clevisArm = arm / v.clutchPedalRatio;
  const clevis = on(clevisArm, v.padTravel);
  const pad = on(arm, v.padTravel);
  const axis = -clevisArm;
  // Along the bore: piston at rest, then as far ahead as its stroke. The rod reaches it when the free play is gone.
  const piston = -0.075 - v.masterStroke;
  const rodEnd = -0.075 - v.masterStroke + Math.max(0, v.clutchFreePlay - v.padTravel) / v.clutchPedalRatio;
  const bottom = -0.085 - v.clutchMasterStroke;
  const carpet = on(arm, v.clutchFloorTravel);
  const stop = on(arm * 0.72, v.clutchStopTravel);
  const f = v.forkRatioUsed;
  const bearingArm = 0.2 / Math.max(1, f);
  const shaft = Math.min(-0.22, axis - 0.17);
  const pivot: At = [-0.42, shaft - bearingArm];
  const slaveEnd: At = [pivot[0] - larger * v.slaveStroke, pivot[1] + bearingArm * f];
  const bearing = pivot[0] - (larger * v.slaveStroke) / f;
  const touch = pivot[0] - 0.014 - (larger * v.slavePlay) / f;
  const tip = touch - larger * v.bearingTravel;
  const level = (travel: number): number => touch - larger * travel;
  const left = Math.min(level(v.bearingLimit), level(v.bearingTravelNeeded), tip, slaveEnd[0]) - 0.1;
  const fulcrum = touch - 0.035;
  const fingers = [1, -1].map((side): Shape => ({ line: [[tip, shaft + side * 0.016], [fulcrum, shaft + side * 0.085], [fulcrum - 0.012, shaft + side * 0.105]], tone: 'frame' }));
  // A ruler above the fingers: a line from their tip, and the two travels it must come between.
  const [low, high] = [shaft + 0.115, shaft + 0.15];
  const ruler: Shape[] = [
    { line: [[tip, shaft + 0.02], [tip, high]], tone: 'accent' },
    { line: [[level(v.bearingTravelNeeded), low], [level(v.bearingTravelNeeded), high + 0.012]], tone: 'plain' },
    { line: [[level(v.bearingLimit), low], [level(v.bearingLimit), high + 0.012]], tone: 'alert' },
    { text: 'lets go', at: [level(v.bearingTravelNeeded) + 0.004, high + 0.02], anchor: 'start', small: true },
    { text: 'limit', at: [level(v.bearingLimit) - 0.004, high + 0.02], anchor: 'end', small: true, tone: 'alert' },
  ];
  const rear = -0.27;
  const ring = v.slaveType === 'ring';
  const slave: Shape[] = ring
    ? [1, -1].flatMap((side): Shape[] => [
      { line: [[-0.36, shaft + side * 0.02], [rear, shaft + side * 0.02], [rear, shaft + side * 0.05], [-0.36, shaft + side * 0.05]], tone: 'plain' },
      { capsule: [[-0.34 - larger * v.slaveStroke, shaft + side * 0.035], [bearing + 0.006, shaft + side * 0.035]], radius: 0.008, tone: 'accent' },
    ])
    : [
      { line: [[-0.37, slaveEnd[1] + 0.02], [rear, slaveEnd[1] + 0.02], [rear, slaveEnd[1] - 0.02], [-0.37, slaveEnd[1] - 0.02]], tone: 'plain' },
      { line: [[-0.345 - larger * v.slaveStroke, slaveEnd[1] - 0.018], [-0.345 - larger * v.slaveStroke, slaveEnd[1] + 0.018]], tone: 'frame' },
      { capsule: [[-0.345 - larger * v.slaveStroke, slaveEnd[1]], slaveEnd], radius: 0.004, tone: 'accent' },
      { capsule: [pivot, slaveEnd], radius: 0.007, tone: 'plain' },
      { circle: pivot, radius: 0.011, tone: 'plain', filled: true },
    ];
  const inlet: At = [rear, ring ? shaft + 0.035 : slaveEnd[1]];
  return {
    box: [left, Math.min(pivot[1] - 0.03, -arm - 0.06), Math.max(on(arm, 0)[0] + 0.1, 0.08), 0.05],
    shapes: [
      { line: [[left + 0.01, shaft], [ring ? rear + 0.03 : -0.3, shaft]], tone: 'ghost' },
      { line: [[bottom, axis], [-0.22, axis], [-0.22, inlet[1]], inlet], tone: 'body' },
      ...slave,
      { capsule: [[bearing, shaft - 0.02], [bearing, shaft + 0.02]], radius: 0.012, tone: 'accent' },
      ...fingers,
      ...ruler,
      { line: [[-0.06, axis + 0.015], [bottom, axis + 0.015], [bottom, axis - 0.015], [-0.06, axis - 0.015]], tone: 'plain' },
      { line: [[piston, axis + 0.013], [piston, axis - 0.013]], tone: 'frame' },
      { capsule: [clevis, [rodEnd, axis]], radius: 0.003, tone: 'accent' },
      { line: [[carpet[0] - 0.06, carpet[1] - 0.012], [carpet[0] - 0.018, carpet[1] - 0.012], [carpet[0] - 0.018, carpet[1] + 0.05]], tone: 'ground' },
      { line: [[0, 0], on(arm, 0)], tone: 'ghost' },
      { capsule: [[0, 0], pad], radius: 0.006, tone: 'plain' },
      { line: [on(arm - 0.025, v.padTravel), on(arm + 0.025, v.padTravel)], tone: 'frame' },
      { capsule: [stop, [stop[0] - 0.03, stop[1]]], radius: 0.006, tone: v.padTravel > v.clutchStopTravel + 1e-6 ? 'alert' : 'accent' },
      { circle: clevis, radius: 0.006, tone: 'accent', filled: true },
      { circle: [0, 0], radius: 0.01, tone: 'plain', filled: true },
      { text: 'stop', at: [stop[0] - 0.042, stop[1] - 0.008], anchor: 'end', small: true },
      { text: 'carpet', at: [carpet[0] - 0.01, carpet[1] - 0.04], anchor: 'end', small: true },
      { text: 'master', at: [bottom, axis + 0.026], anchor: 'start' },
      { text: 'slave', at: [rear - 0.005, inlet[1] + (ring ? 0.022 : 0.03)], anchor: 'end' },
      { text: `slave side × ${larger}`, at: [left + 0.01, 0.02], anchor: 'start', small: true },
    ],
  };
}
