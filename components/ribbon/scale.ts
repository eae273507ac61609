import { MINUTE, type Instant } from '../../src/calendar/index.js';
import { spanOf, type RibbonLine } from './lines.js';

/** Width before the drawing, for the day each line starts on. */
export const GUTTER = 76;
/** Height of one line of the drawing, where at most one piece of work is drawn at a time. */
export const LINE = 28;
/** Height of a lane of work, and the rest of a line's height. */
export const LANE = 16;
const BESIDE = 12;

/** Line height of a window whose work has this many lanes. */
export const lineHeight = (lanes: number): number => Math.max(LINE, lanes * LANE + BESIDE);
const EDGE = 8;
/** Width of `23:30` beside a bar that ends near the edge. */
const TIME_WIDTH = 44;
/** Additional width of `clocks +1 h`. */
const CHANGE_TEXT_WIDTH = 92;

/** Shared by all rows: the hours shown and the space at the edges. */
export interface Frame {
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
}

export const emptyFrame: Frame = { from: 0, to: 1440, left: EDGE, right: EDGE };

/** A bar that starts or ends near the edge needs room outside it for the time it starts or ends. */
export function frameOf(lines: readonly RibbonLine[]): Frame {
  const { from, to } = spanOf(lines);
  const near = 120;
  const after = (line: RibbonLine, at: Instant): number => (at - line.noon) / MINUTE;
  const left = lines.some((line) => line.first && after(line, line.start) - from < near);
  const right = lines.some((line) => line.last && to - after(line, line.end) < near);
  // The text of a clock change near both edges goes past the end.
  const words = lines.some(
    (line) => line.changes.length > 0 && to - after(line, line.end) < near && left,
  );
  return {
    from,
    to,
    left: left ? TIME_WIDTH : EDGE,
    right: words ? TIME_WIDTH + CHANGE_TEXT_WIDTH : right ? TIME_WIDTH : EDGE,
  };
}

/** Converts minutes after noon to pixels for one drawing width. */
export class Scale {
  readonly wide: number;
  readonly frame: Frame;
  readonly perHour: number;

  constructor(wide: number, frame: Frame) {
    this.wide = wide;
    this.frame = frame;
    const room = wide - GUTTER - frame.left - frame.right;
    this.perHour = Math.max(1, (room / (frame.to - frame.from)) * 60);
  }

  /** Pixels from the start, to a hundredth. */
  x(minutesAfterNoon: number): number {
    const { from, left } = this.frame;
    const at = GUTTER + left + ((minutesAfterNoon - from) / 60) * this.perHour;
    return Math.round(at * 100) / 100;
  }

  /** The full hours labelled on the axis: all, or every second or third when they are close. */
  get hours(): readonly { readonly at: number; readonly text: string }[] {
    const step = this.perHour > 26 ? 1 : this.perHour > 13 ? 2 : 3;
    const found: { at: number; text: string }[] = [];
    for (let at = this.frame.from; at <= this.frame.to; at += 60) {
      const hour = (at / 60 + 12) % 24;
      if (hour % step === 0) found.push({ at, text: String(hour).padStart(2, '0') });
    }
    return found;
  }

  /** Whether two scales are equal, so that nothing needs to be drawn again. */
  equals(other: Scale): boolean {
    return this.wide === other.wide && this.frame === other.frame;
  }
}
