import { localTimeOf, MINUTE, type Instant } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import { histogramOf, type Histogram } from './histogram.js';

/** Where the picture of a window's end lies in time, and its bars. */
export interface EndScale {
  readonly from: Instant;
  readonly to: Instant;
  readonly windowStart: Instant;
  readonly histogram: Histogram;
}

const tickSteps = [5, 10, 15, 30, 60, 120, 180, 360, 720, 1440];

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

/** Round clock times within the stretch, at most one for each `room` of pixels over `width`. */
export function ticksOf(
  scale: Pick<EndScale, 'from' | 'to'>,
  zone: string,
  width: number,
  room: number,
): Instant[] {
  const span = (scale.to - scale.from) / MINUTE;
  const step = tickSteps.find((one) => (span / one) * room <= width) ?? 2880;
  const { hour, minute } = localTimeOf(scale.from, zone);
  const past = (hour * 60 + minute) % step;
  const start = Math.floor(scale.from / MINUTE) * MINUTE;
  const ticks: Instant[] = [];
  for (let at = start + (step - past) * MINUTE; at < scale.to; at += step * MINUTE) ticks.push(at);
  return ticks;
}
