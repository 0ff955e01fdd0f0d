import type { VNode } from 'preact';
import type { System } from '../build/fields.ts';
import type { Say } from '../calculators/record.ts';
import type { At, Chart } from '../calculators/show.ts';
import type { Unit } from '../units/index.ts';
import { formatNumber, fromSi, unitFor, unitOf } from '../units/index.ts';
import { boxOf, dashesFor, placeLabels, smallWords, textWidth } from './labels.ts';
import { n, pointsOf } from './path.ts';

const width = 360;
const height = 250;
const right = 12;
const top = 26;
const bottom = 42;

/** Ticks at 1, 2 or 5 times a power of ten, about `count` of them, from `low` to `high`. */
export function ticks(low: number, high: number, count: number): number[] {
  const raw = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 5].find((m) => m * power >= raw) ?? 10);
  const first = Math.ceil(low / step - 1e-9);
  return Array.from({ length: Math.floor(high / step + 1e-9) - first + 1 }, (_, k) => (first + k) * step);
}

export function ChartView({ chart, values, system, say }: { chart: Chart<never>; values: unknown; system: System; say: Say }): VNode | null {
  const v = values as never;
  const [xUnit, yUnit] = [chart.x, chart.y].map(({ dimension }) => unitOf(dimension, unitFor(dimension, system))) as [Unit, Unit];
  const inUnits = ([x, y]: At): At => [fromSi(x, xUnit), fromSi(y, yUnit)];
  const series = chart.series(v).map((s) => ({ ...s, points: s.points.map(inUnits).filter((p) => p.every(Number.isFinite)) })).filter((s) => s.points.length > 1);
  const marks = (chart.marks?.(v, say) ?? []).map((m) => ({ ...m, at: inUnits(m.at) })).filter((m) => m.at.every(Number.isFinite));
  const all = [...series.flatMap((s) => s.points), ...marks.map((m) => m.at)];
  if (all.length === 0) return null;
  const xs = all.map((p) => p[0]);
  const ys = all.map((p) => p[1]);
  const [x0, x1] = [Math.min(0, ...xs), Math.max(...xs)];
  const highest = Math.max(...ys);
  const lowest = Math.min(...ys);
  const y0 = chart.y.near && lowest > 0 ? lowest - (highest - lowest) * 0.3 : Math.min(0, lowest);
  const y1 = highest + (highest - y0) * 0.08; // room for a label above the highest point
  if (!(x1 > x0) || !(y1 > y0)) return null;
  const [across, up] = [ticks(x0, x1, 5), ticks(y0, y1, 5)];
  const left = Math.max(46, ...up.map((y) => textWidth(formatNumber(y), smallWords) + 9));
  const px = (x: number): number => left + ((x - x0) / (x1 - x0)) * (width - left - right);
  const py = (y: number): number => height - bottom - ((y - y0) / (y1 - y0)) * (height - top - bottom);
  const place = (p: At): At => [px(p[0]), py(p[1])];
  const labels = placeLabels(marks.map((m) => {
    const [x, y] = place(m.at);
    const late = x > width * 0.6;
    return { text: m.label, x: x + (late ? -8 : 8), y: y + (late ? -8 : 14), anchor: late ? 'end' : 'start', size: 13 };
  }), { left: left + 2, top, right: width - 2, bottom: height - bottom - 2 }, marks.map((m) => {
    const [x, y] = place(m.at);
    return { left: x - 6, top: y - 6, right: x + 6, bottom: y + 6 };
  }));
  const dashes = dashesFor(series.map((s) => s.tone));
  const axis = (label: string, unit: Unit): string => [label, unit.label].filter(Boolean).join(', ');
  return (
    <figure class="chart">
      <figcaption>{chart.title}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={chart.title}>
        <path class="grid" d={[...across.map((x) => `M${n(px(x))} ${top}V${height - bottom}`), ...up.map((y) => `M${n(left)} ${n(py(y))}H${width - right}`)].join('')} />
        <g class="tick" text-anchor="middle">{across.map((x) => <text x={n(Math.min(px(x), width - textWidth(formatNumber(x), smallWords) / 2))} y={height - bottom + 15}>{formatNumber(x)}</text>)}</g>
        <g class="tick" text-anchor="end">{up.map((y) => <text x={n(left - 5)} y={n(py(y) + 4)}>{formatNumber(y)}</text>)}</g>
        {series.map((s, k) => <polyline class={`line ${s.tone} dash${dashes[k]}`} points={pointsOf(s.points.map(place))} />)}
        {marks.map((m) => <circle class={`mark ${m.tone ?? 'plain'}`} cx={n(px(m.at[0]))} cy={n(py(m.at[1]))} r="4.5" />)}
        {labels.map((label, k) => {
          if (!label) return null;
          const [x, y] = place((marks[k] as (typeof marks)[number]).at);
          const box = boxOf(label);
          const [nearX, nearY] = [Math.min(box.right, Math.max(box.left, x)), Math.min(box.bottom, Math.max(box.top, y))];
          return <>{Math.hypot(nearX - x, nearY - y) > 14 && <line class="leader" x1={n(x)} y1={n(y)} x2={n(nearX)} y2={n(nearY)} />}<text class="label" x={n(label.x)} y={n(label.y)} text-anchor={label.anchor}>{label.text}</text></>;
        })}
        <text class="label" x={4} y={14}>{axis(chart.y.label, yUnit)}</text>
        <text class="label" x={n((left + width - right) / 2)} y={height - 6} text-anchor="middle">{axis(chart.x.label, xUnit)}</text>
      </svg>
      <ul class="legend">
        {series.map((s, k) => <li><svg viewBox="0 0 40 10" aria-hidden="true"><path class={`line ${s.tone} dash${dashes[k]}`} d="M0 5h40" /></svg> {s.label}</li>)}
      </ul>
      <p class="describe">{chart.describe(v, say)}</p>
    </figure>
  );
}
