import { MINUTE, type Instant } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { histogramOf, type Histogram } from './histogram.js';

/** Where the picture of a window's end lies in time, and its bars. */
export interface EndScale {
  readonly from: Instant;
  readonly to: Instant;
  readonly windowStart: Instant;
  readonly histogram: Histogram;
}

/** The stretch that holds the planned clear time, the booked end, every bar and P95, with a little room at both ends. */
export function endScale(result: HandbackResult, mostBars: number): EndScale {
  const { simulation, bookedEnd } = result;
  const { deadlineMinutes } = simulation.outlook;
  const windowStart = bookedEnd - deadlineMinutes * MINUTE;
  const histogram = histogramOf(simulation.handbackMinutes, deadlineMinutes, mostBars);
  const at = (minutes: number): Instant => windowStart + minutes * MINUTE;
  const marks = [
    result.plannedClear,
    result.plannedHandback,
    bookedEnd,
    bookedEnd - result.requiredMinutes * MINUTE,
    simulation.p95,
    ...histogram.bars.flatMap((bar) => [at(bar.from), at(bar.to)]),
  ];
  const from = Math.min(...marks);
  const to = Math.max(...marks);
  const room = Math.max(5 * MINUTE, (to - from) * 0.03);
  return { from: from - room, to: to + room, windowStart, histogram };
}

/** The stretch of the plan's own arithmetic: from some work before it is clear to the end, with a little room. */
export function planScale(result: HandbackResult): Pick<EndScale, 'from' | 'to'> {
  const { plannedClear, plannedHandback, bookedEnd, requiredMinutes } = result;
  const marks = [plannedClear, plannedHandback, bookedEnd, bookedEnd - requiredMinutes * MINUTE];
  const [from, to] = [Math.min(...marks), Math.max(...marks)];
  const room = Math.max(5 * MINUTE, (to - from) * 0.08);
  return { from: from - 2 * room, to: to + room };
}
