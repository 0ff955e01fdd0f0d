import type { Point } from '../../engine/capsule.ts';
import { wheelEnd } from '../../engine/hoseSlack.ts';
import type { HoseState } from '../../engine/hoseSlack.ts';
import type { Say } from '../record.ts';
import type { At, Scene, Shape } from '../show.ts';

export const hoseViews = ['from above', 'from the front'] as const;

export function hoseScene(p: { readonly frame: Point; readonly wheel: Point; readonly low: Point; readonly high: Point; readonly states: readonly HoseState[]; readonly farthest: HoseState; readonly nearest: HoseState }, at: number, say: Say): Scene {
  const seen = ({ x, y, z }: Point): At => (at === 0 ? [-x, -y] : [y, z]);
  const end = ({ steer, height }: HoseState): At => seen(wheelEnd(p, steer, height));
  const frame = seen(p.frame);
  const ends = [...p.states, p.farthest, p.nearest].map(end);
  const all = [frame, seen(p.low), seen(p.high), ...ends];
  const [x0, x1] = [Math.min(...all.map((q) => q[0])), Math.max(...all.map((q) => q[0]))];
  const [y0, y1] = [Math.min(...all.map((q) => q[1])), Math.max(...all.map((q) => q[1]))];
  const size = Math.max(x1 - x0, y1 - y0, 0.05);
  const dot = (q: At, tone: 'plain' | 'frame' | 'alert' | 'accent', radius = 0.012): Shape => ({ circle: q, radius: radius * size, tone, filled: true });
  const middle = (a: At, b: At): At => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  // One line for each height through right, straight and left: the path of the wheel's end as it steers.
  const paths = [0, 1, 2].map((row): Shape => ({ line: p.states.slice(3 * row, 3 * row + 3).flatMap((state, k, three) => {
    const next = three[k + 1];
    return next ? [0, 0.25, 0.5, 0.75].map((part) => end({ ...state, steer: state.steer + part * (next.steer - state.steer) })) : [end(state)];
  }), tone: 'plain' }));
  return {
    box: [x0 - 0.22 * size, y0 - 0.14 * size, x1 + 0.22 * size, y1 + 0.14 * size],
    shapes: [
      ...p.states.map((state): Shape => ({ line: [frame, end(state)], tone: 'ghost' })), ...paths,
      { line: [seen(p.low), seen(p.high)], tone: 'ghost' }, dot(seen(p.low), 'frame', 0.016), dot(seen(p.high), 'frame', 0.016),
      ...p.states.map((state) => dot(end(state), 'plain')),
      { line: [frame, end(p.nearest)], tone: 'accent' }, dot(end(p.nearest), 'accent'),
      { line: [frame, end(p.farthest)], tone: 'alert' }, dot(end(p.farthest), 'alert'),
      dot(frame, 'frame', 0.02),
      { text: 'frame', at: [frame[0], frame[1] - 0.07 * size], small: true },
      { text: say(p.farthest.distance, 'length'), at: middle(frame, end(p.farthest)), tone: 'alert' },
      { text: say(p.nearest.distance, 'length'), at: middle(frame, end(p.nearest)) },
      { text: 'ball joints', at: [seen(p.high)[0], seen(p.high)[1] + 0.04 * size], small: true },
    ],
  };
}
