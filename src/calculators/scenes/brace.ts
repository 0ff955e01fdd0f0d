import type { At, Scene } from '../show.ts';

export interface BraceScene {
  readonly apart: boolean;
  readonly padBelow: number;
  readonly height: number;
  readonly angle: number;
  readonly length: number;
  readonly outside: number;
  readonly foot: string;
  readonly along: string;
  readonly span: string;
}

/** Frame, pedal and brace from the side, engine on the left. The brace is drawn to scale and rising to the rear. */
export function braceScene(v: BraceScene): Scene {
  const size = Math.max(v.height + v.padBelow, v.length);
  const depth = size * 0.22;
  const joint: At = [depth, v.height];
  const anchor: At = [depth + v.length * Math.cos(v.angle), v.height + v.length * Math.sin(v.angle)];
  const pad: At = [depth, -v.padBelow];
  const row = Math.min(v.height, size * 0.14);
  const side: At = [Math.sin(v.angle) * size * 0.13, -Math.cos(v.angle) * size * 0.13];
  const right = Math.max(anchor[0], pad[0] + size * 0.3) + size * 0.22;
  return {
    box: [-size * 0.2, Math.min(-v.padBelow, -row) - size * 0.16, right, Math.max(anchor[1], joint[1]) + size * 0.16],
    shapes: [
      { line: [[0, -Math.max(v.padBelow, row) - size * 0.04], [0, Math.max(v.height, row) + size * 0.08]], tone: 'body' },
      ...(v.apart ? [] : [{ line: [[0, row], joint, [0, -row]] as const, tone: 'frame' as const }]),
      { capsule: [joint, pad], radius: size * 0.01, tone: 'plain' },
      { circle: joint, radius: size * 0.02, tone: 'plain', filled: true },
      { capsule: [joint, anchor], radius: v.outside / 2, tone: 'accent' },
      { line: [[anchor[0], anchor[1] - size * 0.09], [anchor[0], anchor[1] + size * 0.09]], tone: 'ground' },
      { span: [[joint[0] + side[0], joint[1] + side[1]], [anchor[0] + side[0], anchor[1] + side[1]]], label: v.span },
      { arrow: [[pad[0] + size * 0.2, pad[1]], pad], tone: 'accent' },
      { text: v.foot, at: [pad[0] + size * 0.05, pad[1] - size * 0.1], anchor: 'start' },
      { text: v.along, at: [(joint[0] + anchor[0]) / 2 - size * 0.02, (joint[1] + anchor[1]) / 2 + size * 0.06], anchor: 'end' },
      { text: 'cowl', at: [anchor[0] + size * 0.03, anchor[1]], anchor: 'start' },
      { text: 'firewall', at: [-size * 0.18, Math.max(v.height, row) + size * 0.1], anchor: 'start' },
    ],
  };
}
