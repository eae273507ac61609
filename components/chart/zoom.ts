import type { ChartShown } from './shown.js';

/** A stretch of the scale along the points, from less to more. */
export type Span = readonly [from: number, to: number];

/** The least part of the whole that is looked at. */
const LEAST = 1 / 256;

/** From the first point to the last; null where points are words, which stand on no scale. */
export function wholeOf({ points }: ChartShown): Span | null {
  const [first, last] = [points[0], points.at(-1)];
  return typeof first === 'number' && typeof last === 'number' && last > first
    ? [first, last]
    : null;
}

/** The part of the whole that is shown until a reader looks at another. */
export function firstSpan(shown: ChartShown): Span | null {
  const whole = wholeOf(shown);
  return whole && shown.stretch ? within(shown.stretch, whole) : whole;
}

/** Half of the stretch, about a place in it. */
export function nearer([from, to]: Span, whole: Span, at: number): Span {
  const long = Math.max((to - from) / 2, (whole[1] - whole[0]) * LEAST);
  return within([at - long / 2, at + long / 2], whole);
}

/** Twice the stretch about its middle, or the whole. */
export function wider([from, to]: Span, whole: Span): Span {
  const long = to - from;
  return within([from - long / 2, to + long / 2], whole);
}

/** The stretch moved as little as holds a place. */
export function holding([from, to]: Span, whole: Span, at: number): Span {
  const by = at < from ? at - from : at > to ? at - to : 0;
  return by === 0 ? [from, to] : within([from + by, to + by], whole);
}

/** As long as before where the whole has room for it, moved into it. */
function within([from, to]: Span, [first, last]: Span): Span {
  const long = Math.min(to - from, last - first);
  const start = Math.min(Math.max(from, first), last - long);
  return [start, start + long];
}
