import { svg } from 'lit';
import { startOfLocalDay } from '../../src/calendar/index.js';
import { dayText } from '../shared/format.js';

// The frame of both pictures, in CSS pixels.
export const LEFT = 34;
export const RIGHT = 8;
export const TOP = 18;
export const BASE = 150;
export const HEIGHT = 172;

/** Where a moment and a value lie, in CSS pixels. */
export interface Axes {
  readonly x: (at: number) => number;
  readonly y: (value: number) => number;
}

/** Axes of a stretch of time and of values from 0 to `most`, in a picture so many pixels wide. */
export function axesOf(from: number, to: number, most: number, width: number): Axes {
  const round = (value: number): number => Math.round(value * 10) / 10;
  return {
    x: (at) => round(LEFT + ((at - from) / Math.max(1, to - from)) * (width - LEFT - RIGHT)),
    y: (value) => round(BASE - (value / most) * (BASE - TOP)),
  };
}

/** Local midnights with their dates as far as they have room, and the figures of the upright axis. */
export function grid(
  from: number,
  to: number,
  most: number,
  zone: string,
  width: number,
  { x, y }: Axes,
): unknown {
  const days: number[] = [];
  for (let day = startOfLocalDay(from, zone, 1); day < to; day = startOfLocalDay(day, zone, 1))
    days.push(day);
  const every = Math.max(1, Math.ceil((days.length * 66) / Math.max(1, width - LEFT)));
  const step = most > 400 ? 200 : most > 150 ? 100 : most > 60 ? 25 : most > 16 ? 5 : 2;
  const figures = Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
  return svg`${figures.map(
    (
      value,
    ) => svg`<line class="hair" x1=${LEFT} x2=${width - RIGHT} y1=${y(value)} y2=${y(value)}></line>
      <text class="soft" text-anchor="end" x=${LEFT - 4} y=${y(value) + 4}>${value}</text>`,
  )}${days.map(
    (day, index) => svg`<line class="hair" x1=${x(day)} x2=${x(day)} y1=${TOP} y2=${BASE}></line>
      ${index % every === 0 && x(day) + 58 < width ? svg`<text class="soft" x=${x(day) + 2} y=${BASE + 15}>${dayText(day, zone)}</text>` : ''}`,
  )}<line class="rule" x1=${LEFT} x2=${width - RIGHT} y1=${BASE} y2=${BASE}></line>`;
}

/** The line of the limit or of what is asked for. */
export function limitLine(at: number, width: number): unknown {
  return svg`<line class="limit" x1=${LEFT} x2=${width - RIGHT} y1=${at} y2=${at}></line>`;
}
