import type { At, Scene, Shape } from '../show.ts';

export interface PedalSpacingScene {
  readonly throttleToBrake: number;
  readonly brakeToClutch: number;
  readonly clutchToSide: number;
  readonly throttleWidth: number;
  readonly brakeWidth: number;
  readonly clutchWidth: number;
  readonly bootWidth: number;
  readonly labels: readonly [string, string, string];
}

/** Pads seen by the driver, widths to scale, heights the same for all. */
export function pedalSpacingScene(v: PedalSpacingScene): Scene {
  const brake = 0;
  const throttle = v.throttleToBrake;
  const clutch = -v.brakeToClutch;
  const side = clutch - v.clutchToSide;
  const right = throttle + v.throttleWidth;
  const size = right - side;
  const h = size * 0.1;
  const pad = (x: number, width: number, y: number): Shape => ({ line: [[x - width / 2, y - h], [x + width / 2, y - h], [x + width / 2, y + h], [x - width / 2, y + h]], closed: true, tone: 'frame' });
  const span = (from: number, to: number, label: string, k: number): Shape[] => {
    const y = -size * (0.15 + 0.075 * k);
    return [{ span: [[from, y], [to, y]], label }];
  };
  const name = (text: string, x: number): Shape => ({ text, at: [x, size * 0.14] as At, anchor: 'middle', small: true });
  return {
    box: [side - size * 0.05, -size * 0.42, right + size * 0.06, size * 0.24],
    shapes: [
      { line: [[side, -size * 0.32], [side, size * 0.2]], tone: 'ground' },
      pad(clutch, v.clutchWidth, 0), pad(brake, v.brakeWidth, 0), pad(throttle, v.throttleWidth, 0),
      { line: [[-v.bootWidth / 2, -h * 1.2], [v.bootWidth / 2, -h * 1.2], [v.bootWidth / 2, h * 1.2], [-v.bootWidth / 2, h * 1.2]], closed: true, tone: 'ghost' },
      ...span(side, clutch - v.clutchWidth / 2, v.labels[2], 0), ...span(clutch + v.clutchWidth / 2, -v.brakeWidth / 2, v.labels[1], 1), ...span(v.brakeWidth / 2, throttle - v.throttleWidth / 2, v.labels[0], 2),
      name('clutch', clutch), name('brake', brake), name('throttle', throttle),
    ],
  };
}
