// The one file that knows the library of charts. Only the parts in use are registered; it is loaded with the first chart.
import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  type ChartConfiguration,
  type ChartDataset,
  type Plugin,
  type ScaleOptionsByType,
} from 'chart.js';
import { dashesOf, fillOf, type ChartLook } from './look.js';
import type { ChartSeries, ChartShown } from './shown.js';
import type { Span } from './zoom.js';

Chart.register(
  BarController,
  BarElement,
  CategoryScale,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
);

/** Pixels kept for a writing of the scale along the points. */
const TICK_ROOM = 84;

/** Names of marks stand over each other where they would meet, in so many rows at most. */
const MARK_ROWS = 3;
const MARK_ROW = 14;
const rowsOf = ({ marks = [] }: ChartShown): number => Math.min(MARK_ROWS, marks.length);

type Kind = 'bar' | 'line';
type Place = { readonly x: number; readonly y: number | null };
type Value = number | null | Place;

export interface DrawingSize {
  /** The part of the scale along the points that is drawn; null: all of it. */
  readonly span: Span | null;
  readonly width: number;
  readonly height: number;
  /** Dots of the picture to a CSS pixel: 4 on paper is 384 to the inch. */
  readonly ratio: number;
}

/** A chart on a canvas. */
export interface Drawing {
  /** Draws it anew, at once and without moving. */
  show(shown: ChartShown, look: ChartLook, size: DrawingSize, picked: number | null): void;
  /** The point nearest to a place on the canvas, in CSS pixels; null when there is none. */
  pointAt(x: number, y: number): number | null;
  destroy(): void;
}

/** What the plugins below draw besides what the library does. */
interface Extra {
  shown: ChartShown;
  look: ChartLook;
  picked: number | null;
}

export function drawingOn(canvas: HTMLCanvasElement): Drawing {
  let chart: Chart<Kind, Value[], unknown> | undefined;
  let drawn: { readonly extra: Extra; readonly of: string } | undefined;
  return {
    show(shown, look, size, picked) {
      const of = JSON.stringify([look, size]);
      if (chart && drawn?.extra.shown === shown && drawn.of === of) {
        // Only the point that is read has moved.
        drawn.extra.picked = picked;
        chart.draw();
        return;
      }
      const extra: Extra = { shown, look, picked };
      drawn = { extra, of };
      chart?.destroy();
      canvas.width = size.width;
      canvas.height = size.height;
      chart = new Chart<Kind, Value[], unknown>(canvas, configOf(extra, size));
    },
    pointAt(x, y) {
      if (!chart) return null;
      // Beside the plot, on its scales, the nearest point is read too.
      const { left, right, top, bottom } = chart.chartArea;
      const event = {
        x: Math.min(right, Math.max(left, x)),
        y: Math.min(bottom, Math.max(top, y)),
        native: null,
        type: 'mousemove',
      } as unknown as Event;
      const axis = chart.options.indexAxis === 'y' ? 'y' : 'x';
      const found = chart.getElementsAtEventForMode(
        event,
        'index',
        { intersect: false, axis },
        false,
      );
      return found[0]?.index ?? null;
    },
    destroy: () => chart?.destroy(),
  };
}

function configOf(
  extra: Extra,
  { ratio, span, width }: DrawingSize,
): ChartConfiguration<Kind, Value[], unknown> {
  const { shown, look } = extra;
  const numeric = typeof shown.points[0] === 'number';
  const [along, across] = shown.lying ? (['y', 'x'] as const) : (['x', 'y'] as const);
  const stacked = shown.series.some((item) => item.stack !== undefined);
  const right = shown.series.some((item) => item.onRight);
  return {
    type: 'bar',
    data: {
      ...(!numeric && { labels: [...shown.points] }),
      // The first series is drawn on top of those after it.
      datasets: shown.series.map((item, i) => datasetOf(item, shown, look, numeric, i)),
    },
    options: {
      animation: false,
      responsive: false,
      maintainAspectRatio: false,
      devicePixelRatio: ratio,
      events: [],
      indexAxis: along,
      layout: { padding: { top: 8 + rowsOf(shown) * MARK_ROW, right: 10 } },
      font: { family: look.font, size: 12 },
      scales: {
        [along]: {
          type: numeric ? 'linear' : 'category',
          ...(numeric && {
            min: span?.[0] ?? (shown.points[0] as number),
            max: span?.[1] ?? (shown.points.at(-1) as number),
          }),
          ...(shown.pointTicks && {
            afterBuildTicks: (axis: { min: number; max: number; ticks: { value: number }[] }) => {
              const most = Math.max(2, Math.floor(width / TICK_ROOM));
              axis.ticks = shown.pointTicks!(axis.min, axis.max, most).map((value) => ({ value }));
            },
          }),
          stacked,
          offset: !numeric,
          grid: { display: false },
          border: { color: look.quiet },
          title: titleOf(shown.pointTitle, look),
          ticks: {
            color: look.quiet,
            font: { family: look.font, size: 12 },
            maxRotation: 0,
            autoSkipPadding: 12,
            ...(numeric && {
              callback: (value: number | string, index: number) =>
                shown.pointAxisText?.(Number(value), index === 0) ?? String(Number(value)),
            }),
          },
        },
        [across]: {
          ...axisOf(shown.valueTitle, shown.axisText, stacked, look),
          ...(shown.most !== undefined && { max: shown.most }),
        },
        ...(right && {
          right: {
            ...axisOf(
              shown.rightTitle ?? '',
              (value) => `${Math.round(100 * value)} %`,
              false,
              look,
            ),
            position: 'right' as const,
            max: shown.mostOnRight,
            grid: { display: false },
          },
        }),
      } as unknown as ChartConfiguration<Kind, Value[], unknown>['options'] extends infer O
        ? O extends { scales?: infer S }
          ? S
          : never
        : never,
    },
    plugins: [extras(extra)],
  };
}

const titleOf = (text: string, look: ChartLook) => ({
  display: text !== '',
  text,
  color: look.quiet,
  font: { family: look.font, size: 12 },
});

const axisOf = (
  title: string,
  text: (value: number) => string,
  stacked: boolean,
  look: ChartLook,
): Partial<ScaleOptionsByType<'linear'>> =>
  ({
    type: 'linear',
    beginAtZero: true,
    stacked,
    grid: { color: look.hair, drawTicks: false },
    border: { display: false },
    title: titleOf(title, look),
    ticks: {
      color: look.quiet,
      font: { family: look.font, size: 12 },
      maxTicksLimit: 6,
      padding: 6,
      callback: (value: number | string) => text(Number(value)),
    },
  }) as unknown as Partial<ScaleOptionsByType<'linear'>>;

function datasetOf(
  item: ChartSeries,
  shown: ChartShown,
  look: ChartLook,
  numeric: boolean,
  order: number,
): ChartDataset<Kind, Value[]> {
  const colour = look.tones[item.tone] ?? look.ink;
  const data: Value[] = item.values.map((value, i) =>
    numeric ? { x: shown.points[i] as number, y: value } : value,
  );
  const common = {
    label: item.name,
    data,
    order: item.onRight ? -1 : order,
    stack: item.stack ?? `alone ${order}`,
    ...(item.onRight && { yAxisID: 'right' }),
  };
  if (item.kind === 'bar')
    return {
      ...common,
      type: 'bar',
      backgroundColor: fillOf(look, item.tone),
      borderColor: look.bare ? look.ink : colour,
      borderWidth: 1,
      maxBarThickness: 34,
    };
  const area = item.kind === 'area';
  return {
    ...common,
    type: 'line',
    borderColor: colour,
    backgroundColor: area ? fillOf(look, item.tone) : colour,
    borderWidth: area ? 1 : 2,
    borderDash: area ? [] : dashesOf(item.tone),
    pointRadius: 0,
    pointHitRadius: 0,
    stepped: item.stepped ? 'before' : false,
    fill: area ? (item.stack === undefined ? 'origin' : 'stack') : false,
  };
}

/** Whiskers, marks and the line at the point that is read. */
function extras(extra: Extra): Plugin<Kind> {
  const { shown, look } = extra;
  return {
    id: 'possession-extras',
    beforeDatasetsDraw(chart) {
      drawBands(chart, extra);
    },
    afterDatasetsDraw(chart) {
      const { picked } = extra;
      const pen = chart.ctx;
      const { chartArea: area } = chart;
      pen.save();
      pen.strokeStyle = look.ink;
      pen.fillStyle = look.ink;
      pen.lineWidth = 1.5;
      pen.font = `12px ${look.font}`;
      shown.series.forEach((item, s) => {
        if (!item.low || !item.high) return;
        const scale = chart.scales[shown.lying ? 'x' : 'y'];
        chart.getDatasetMeta(s).data.forEach((bar, i) => {
          const [low, high] = [item.low?.[i], item.high?.[i]];
          if (typeof low !== 'number' || typeof high !== 'number' || !scale) return;
          whisker(
            pen,
            shown.lying ?? false,
            bar,
            scale.getPixelForValue(low),
            scale.getPixelForValue(high),
          );
        });
      });
      const along = chart.scales[shown.lying ? 'y' : 'x'];
      if (!along) return pen.restore();
      const taken = Array.from({ length: rowsOf(shown) }, () => -Infinity);
      for (const mark of [...(shown.marks ?? [])].sort((a, b) => a.at - b.at)) {
        const x = along.getPixelForValue(mark.at);
        if (x < area.left - 1 || x > area.right + 1) continue;
        pen.setLineDash([3, 3]);
        const wide = pen.measureText(mark.text).width;
        const left = Math.min(Math.max(area.left, x - wide / 2), area.right - wide);
        const row = taken.findIndex((end) => left > end);
        const y = area.top - 8 - Math.max(0, row) * MARK_ROW;
        stroke(pen, x, y + 3, x, area.bottom);
        if (row < 0) continue;
        pen.fillText(mark.text, left, y);
        taken[row] = left + wide + 6;
      }
      if (picked !== null && shown.points[picked] !== undefined) {
        const point = shown.points[picked];
        const at = along.getPixelForValue(typeof point === 'number' ? point : picked);
        pen.setLineDash([]);
        pen.lineWidth = 2;
        if (shown.lying) stroke(pen, area.left - 8, at, area.left - 2, at);
        else stroke(pen, at, area.top, at, area.bottom + 5);
      }
      pen.restore();
    },
  };
}

/** Bands behind the values, each named at its foot where there is room for the name. */
function drawBands(chart: Chart, { shown, look }: Extra): void {
  const along = chart.scales['x'];
  if (!shown.bands || shown.lying || !along) return;
  const { ctx: pen, chartArea: area } = chart;
  pen.save();
  pen.font = `12px ${look.font}`;
  let taken = -Infinity;
  for (const { from, to, text } of shown.bands) {
    const left = Math.max(area.left, along.getPixelForValue(from));
    const right = Math.min(area.right, along.getPixelForValue(to));
    if (right < left) continue;
    pen.fillStyle = look.hair;
    pen.globalAlpha = look.bare ? 0.25 : 0.55;
    pen.fillRect(left, area.top, Math.max(1.5, right - left), area.bottom - area.top);
    pen.globalAlpha = 1;
    const wide = pen.measureText(text).width;
    const at = Math.min(left + 3, area.right - wide);
    if (at <= taken) continue;
    pen.fillStyle = look.quiet;
    pen.fillText(text, at, area.bottom - 5);
    taken = at + wide + 6;
  }
  pen.restore();
}

function stroke(
  pen: CanvasRenderingContext2D,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): void {
  pen.beginPath();
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
  pen.stroke();
}

function whisker(
  pen: CanvasRenderingContext2D,
  lying: boolean,
  { x, y }: { readonly x: number; readonly y: number },
  low: number,
  high: number,
): void {
  if (lying) {
    stroke(pen, low, y, high, y);
    for (const end of [low, high]) stroke(pen, end, y - 4, end, y + 4);
  } else {
    stroke(pen, x, low, x, high);
    for (const end of [low, high]) stroke(pen, x - 4, end, x + 4, end);
  }
}
