import type { Scene, Shape } from '../show.ts';

export interface StopScene {
  readonly reaction: number;
  readonly braking: number;
  readonly labels: { readonly reaction: string; readonly braking: string; readonly whole: string };
}

/** A strip of road with what passes before the brakes bite and what they need. Lengths to scale; heights only keep the labels apart. */
export function stopScene(v: StopScene): Scene {
  const whole = Math.max(v.reaction + v.braking, 0.01);
  const row = whole * 0.075;
  const bite = v.reaction;
  const post = (x: number, top: number): Shape => ({ line: [[x, 0], [x, top * row]], tone: 'ghost' });
  return {
    box: [-whole * 0.05, -row * 0.5, whole * 1.05, row * 6.1],
    shapes: [
      { line: [[-whole * 0.04, 0], [whole * 1.04, 0]], tone: 'ground' },
      post(0, 4.7), post(bite, 2.3), post(whole, 4.7),
      { line: [[0, row * 0.55], [bite, row * 0.55]], tone: 'ghost' },
      { line: [[bite, row * 0.55], [whole, row * 0.55]], tone: 'accent' },
      { text: `reaction ${v.labels.reaction}`, at: [whole * 0.02, row * 3], anchor: 'start' },
      { text: `braking ${v.labels.braking}`, at: [whole * 0.98, row * 1.6], anchor: 'end' },
      { span: [[0, row * 4.7], [whole, row * 4.7]], label: `stopping ${v.labels.whole}` },
    ],
  };
}
