import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Say } from '../calculators/record.ts';
import type { At, Picture, Scene, Shape } from '../calculators/show.ts';
import { placeLabels, smallWords } from './labels.ts';
import type { Label } from './labels.ts';
import { n, pointsOf } from './path.ts';

const width = 360;
const tallest = 420;

/** Draws a scene to scale. Lengths of arrow heads, ticks and letters are in picture units, not in the truck's. */
export function SceneView({ scene, label }: { scene: Scene; label: string }): VNode {
  const [l, b, r, t] = scene.box;
  const scale = Math.min(width / (r - l), tallest / (t - b));
  const height = Math.round((t - b) * scale);
  const px = (p: At): At => [(p[0] - (l + r) / 2) * scale + width / 2, (t - p[1]) * scale];
  const words = scene.shapes.flatMap((shape) => wordsOf(shape, px));
  const labels = placeLabels(words, { left: 1, top: 1, right: width - 1, bottom: height - 1 });
  return (
    <svg class="scene" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      {scene.shapes.map((shape) => <ShapeView shape={shape} px={px} scale={scale} />)}
      {labels.map((label, k) => label && <text class={`label ${words[k]?.look}`} x={n(label.x)} y={n(label.y)} text-anchor={label.anchor}>{label.text}</text>)}
    </svg>
  );
}

function ShapeView({ shape, px, scale }: { shape: Shape; px: (p: At) => At; scale: number }): VNode {
  if ('line' in shape) {
    const points = pointsOf(shape.line.map(px));
    return shape.closed ? <polygon class={`line ${shape.tone}${shape.filled ? ' filled' : ''}`} points={points} /> : <polyline class={`line ${shape.tone}`} points={points} />;
  }
  if ('circle' in shape) {
    const [cx, cy] = px(shape.circle);
    return <circle class={`line ${shape.tone}${shape.filled ? ' filled' : ''}`} cx={n(cx)} cy={n(cy)} r={n(Math.max(shape.radius * scale, 1))} />;
  }
  if ('capsule' in shape) {
    const [a, c] = [px(shape.capsule[0]), px(shape.capsule[1])];
    const radius = Math.max(shape.radius * scale, 0.75);
    const along = Math.hypot(c[0] - a[0], c[1] - a[1]) || 1;
    const [ux, uy] = [((c[0] - a[0]) / along) * radius, ((c[1] - a[1]) / along) * radius];
    const d = `M${n(a[0] - uy)},${n(a[1] + ux)}A${n(radius)},${n(radius)} 0 0 1 ${n(a[0] + uy)},${n(a[1] - ux)}L${n(c[0] + uy)},${n(c[1] - ux)}A${n(radius)},${n(radius)} 0 0 1 ${n(c[0] - uy)},${n(c[1] + ux)}Z`;
    return <path class={`line ${shape.tone} filled`} d={d} />;
  }
  if ('arrow' in shape) {
    const [a, c] = [px(shape.arrow[0]), px(shape.arrow[1])];
    const along = Math.hypot(c[0] - a[0], c[1] - a[1]);
    if (along < 1) return <g />;
    const [ux, uy] = [(c[0] - a[0]) / along, (c[1] - a[1]) / along];
    const head = [[c[0], c[1]], [c[0] - 8 * ux - 3.5 * uy, c[1] - 8 * uy + 3.5 * ux], [c[0] - 8 * ux + 3.5 * uy, c[1] - 8 * uy - 3.5 * ux]];
    return (
      <g class={shape.tone}>
        <line class={`line ${shape.tone}`} x1={n(a[0])} y1={n(a[1])} x2={n(c[0] - 6 * ux)} y2={n(c[1] - 6 * uy)} />
        <polygon class="head" points={head.map((p) => p.map(n).join()).join(' ')} />
      </g>
    );
  }
  if ('span' in shape) {
    const [a, c] = [px(shape.span[0]), px(shape.span[1])];
    const along = Math.hypot(c[0] - a[0], c[1] - a[1]) || 1;
    const [tx, ty] = [(-(c[1] - a[1]) / along) * 4, ((c[0] - a[0]) / along) * 4];
    return (
      <g class="span">
        <line x1={n(a[0])} y1={n(a[1])} x2={n(c[0])} y2={n(c[1])} />
        <line x1={n(a[0] - tx)} y1={n(a[1] - ty)} x2={n(a[0] + tx)} y2={n(a[1] + ty)} />
        <line x1={n(c[0] - tx)} y1={n(c[1] - ty)} x2={n(c[0] + tx)} y2={n(c[1] + ty)} />
      </g>
    );
  }
  return <g />;
}

/** The words of a shape, where it wants them. They are drawn last, over every line. */
function wordsOf(shape: Shape, px: (p: At) => At): (Label & { readonly look: string })[] {
  if ('text' in shape) {
    const [x, y] = px(shape.at);
    return [{ text: shape.text, x, y, anchor: shape.anchor ?? 'middle', size: shape.small ? smallWords : 13, look: `${shape.tone ?? ''}${shape.small ? ' small' : ''}` }];
  }
  if ('span' in shape) {
    const [a, c] = [px(shape.span[0]), px(shape.span[1])];
    const upright = Math.abs(c[1] - a[1]) > Math.abs(c[0] - a[0]);
    return [{ text: shape.label, x: (a[0] + c[0]) / 2 + (upright ? 6 : 0), y: (a[1] + c[1]) / 2 + (upright ? 4 : -5), anchor: upright ? 'start' : 'middle', size: smallWords, look: 'span' }];
  }
  if (!('arrow' in shape) || !shape.label) return [];
  const [a, c] = [px(shape.arrow[0]), px(shape.arrow[1])];
  const along = Math.hypot(c[0] - a[0], c[1] - a[1]);
  if (along < 1) return [];
  const [ux, uy] = [(c[0] - a[0]) / along, (c[1] - a[1]) / along];
  return [{ text: shape.label, x: a[0] - ux * 4, y: a[1] - uy * 4 + 4, anchor: Math.abs(ux) < 0.3 ? 'middle' : ux > 0 ? 'end' : 'start', size: 13, look: shape.tone }];
}

/** Of a slider, counted whole: in steps of a fraction it would never quite reach its end. */
const steps = 200;

/** A record's picture with what moves it: a slider and a play button, or a row of named states. */
export function PictureView({ id, picture, values, say }: { id: string; picture: Picture<never>; values: unknown; say: Say }): VNode {
  const v = values as never;
  const [low, high] = picture.motion?.range(v) ?? [0, 1];
  const [picked, pick] = useState<number | undefined>(undefined);
  const [playing, play] = useState(false);
  const start = picture.motion ? picture.motion.start(v) : (picture.states?.start ?? 0);
  const at = picture.motion ? Math.min(high, Math.max(low, picked ?? start)) : (picked ?? start);
  useEffect(() => {
    if (!playing) return undefined;
    const began = performance.now();
    let frame = requestAnimationFrame(function tick(now) {
      const part = (now - began) / 5000;
      pick(low + (high - low) * Math.min(1, part));
      if (part < 1) frame = requestAnimationFrame(tick);
      else play(false);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing]);
  const words = picture.describe(v, say, at);
  const position = picture.motion && (picture.motion.say?.(v, at, say) ?? say(at, picture.motion.dimension));
  return (
    <figure class="picture">
      <figcaption>{picture.title}</figcaption>
      <SceneView scene={picture.scene(v, at, say)} label={picture.title} />
      {picture.motion && (
        <div class="motion">
          <button type="button" class="play" onClick={() => play(!playing)}>{playing ? 'Stop' : 'Play'}</button>
          <label for={`${id}-motion`}>{picture.motion.label}: {position}</label>
          <input id={`${id}-motion`} type="range" min={0} max={steps} value={high > low ? Math.round(((at - low) / (high - low)) * steps) : 0} aria-valuetext={position} onInput={(event) => { play(false); pick(low + ((high - low) * Number(event.currentTarget.value)) / steps); }} />
        </div>
      )}
      {picture.states && (
        <fieldset class="states">
          <legend>{picture.states.label}</legend>
          {picture.states.names.map((name, k) => (
            <label><input type="radio" name={`${id}-state`} checked={k === at} onChange={() => pick(k)} />{name}</label>
          ))}
        </fieldset>
      )}
      <p class="describe">{words}</p>
    </figure>
  );
}
