import type { At, Scene, Shape } from '../show.ts';

export interface FirewallScene {
  readonly apart: boolean;
  readonly height: number;
  readonly pattern: number;
  readonly padBelow: number;
  readonly thickness: number;
  readonly pedalRatio: number;
  /** Of the plate's middle, forward, and of the flange, top toward the driver. */
  readonly bulge: number;
  readonly turn: number;
  readonly label: string;
  readonly foot: string;
  readonly onSheet: string;
}

/** Plate, frame and foot from the side, engine on the left, to scale but for the bend, which is blown up to be seen. */
export function firewallScene(v: FirewallScene): Scene {
  const top = v.height / 2;
  const c = v.pattern / 2;
  const size = Math.max(v.height, v.padBelow + v.height / 3);
  const depth = size * 0.34;
  const pad: At = [depth, -v.padBelow];
  const pivot: At = [depth * 0.72, Math.max(c, v.height * 0.3)];
  const clevisY = pivot[1] - (pivot[1] + v.padBelow) / v.pedalRatio;
  const most = v.bulge + v.turn * c;
  const swell = most > 0 ? (size * 0.07) / most : 0;
  const shift = (y: number): number => {
    if (Math.abs(y) <= c) return -swell * (v.bulge - v.turn * y);
    const end = top - c;
    const part = (top - Math.abs(y)) / end; // 1 beside the flange, 0 at the support
    const edge = v.bulge - v.turn * Math.sign(y) * c;
    return -swell * edge * part * part * (3 - 2 * part);
  };
  const bent = Array.from({ length: 41 }, (_, k): At => {
    const y = -top + (k / 40) * v.height;
    return [shift(y), y];
  });
  const support = (y: number, sign: number): Shape => ({ line: [[-size * 0.05, y], [size * 0.05, y], [0, y + sign * size * 0.05]], closed: true, tone: 'ground' });
  const box = size * 0.03;
  const master: Shape = { line: [[-size * 0.3, clevisY + box], [-v.thickness, clevisY + box], [-v.thickness, clevisY - box], [-size * 0.3, clevisY - box]], closed: true, tone: 'body' };
  const frame: Shape[] = v.apart
    ? [{ line: [[pivot[0] + size * 0.16, pivot[1]], pivot], tone: 'frame' }]
    : [{ line: [[0, c], pivot], tone: 'frame' }, { line: [[0, -c], [depth * 0.3, clevisY]], tone: 'frame' }, { line: [[depth * 0.3, clevisY], pivot], tone: 'frame' }];
  const low = Math.min(-top, pad[1]) - size * 0.16;
  return {
    box: [-size * 0.46, low, size * 0.78, Math.max(top, pivot[1]) + size * 0.14],
    shapes: [
      { line: [[0, -top], [0, top]], tone: 'frame' },
      { line: bent, tone: 'alert' },
      support(top, 1), support(-top, -1),
      { line: [[0, -c], [0, c]], tone: 'accent' },
      ...frame, master,
      { line: [[-v.thickness, clevisY], [pivot[0] - (pivot[0] - pad[0]) * ((pivot[1] - clevisY) / (pivot[1] - pad[1])), clevisY]], tone: 'accent' },
      { capsule: [pivot, pad], radius: size * 0.012, tone: 'plain' },
      { circle: pivot, radius: size * 0.02, tone: 'plain', filled: true },
      { arrow: [[pad[0] + size * 0.2, pad[1]], pad], tone: 'accent' },
      { text: v.foot, at: [pad[0] + size * 0.08, pad[1] - size * 0.085], anchor: 'start' },
      { arrow: [[-size * 0.06, -top * 0.72], [-size * 0.24, -top * 0.72]], tone: 'alert' },
      { text: v.onSheet, at: [-size * 0.06, -top * 0.72 - size * 0.085], anchor: 'end' },
      { text: 'master', at: [-size * 0.3, clevisY + size * 0.055], anchor: 'start' },
      { text: 'pivot', at: [pivot[0] + size * 0.035, pivot[1] + size * 0.03], anchor: 'start' },
      { text: `moves ${v.label}`, at: [-size * 0.44, Math.max(top, pivot[1]) + size * 0.06], anchor: 'start' },
    ],
  };
}
