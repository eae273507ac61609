import { addMinutes, minutesBetween } from '../calendar/index.js';
import type { Plan, PriceBook, Train } from '../model/index.js';
import {
  costCurve,
  countOverruns,
  expectedCost,
  keyDateLines,
  lengthThresholds,
  overrunCost,
} from '../price/index.js';
import type { PriceAnswer, PriceRequest } from './types.js';

/** What the price of a window is worked out from. */
export interface Priced {
  readonly plan: Plan;
  readonly trains: readonly Train[];
  readonly prices: PriceBook;
}

/** @throws {RangeError} When the plan has no such window. */
export function priceOf({ plan, trains, prices }: Priced, request: PriceRequest): PriceAnswer {
  const window = plan.windows.find((one) => one.id === request.window);
  if (!window) throw new RangeError(`there is no window "${request.window}" in the plan`);
  const inputs = {
    window,
    prices,
    trains,
    resources: plan.resources,
    ...(request.holidays && { holidays: request.holidays }),
    ...(request.placements && { placements: request.placements, activities: plan.activities }),
  };
  const booked = minutesBetween(window.start, window.end);
  // A minute begun is a minute late; an early handback costs what a prompt one does.
  const overruns =
    request.handbackMinutes &&
    countOverruns(Array.from(request.handbackMinutes, (at) => Math.max(0, Math.ceil(at - booked))));
  const reach = Math.max(
    request.maxMinutes,
    request.overrunMinutes,
    ...(overruns ?? []).map((one) => one.minutes),
  );
  const curve = costCurve(inputs, reach);
  return {
    at: overrunCost({ ...inputs, overrunMinutes: request.overrunMinutes }),
    curve,
    expected: overruns ? expectedCost(curve, overruns) : null,
    ...(request.placements && {
      keyDates: keyDateLines(plan.activities, request.placements, plan.zone, prices),
    }),
    lengths: lengthThresholds(
      { start: window.start, end: addMinutes(window.end, request.overrunMinutes) },
      window.zone,
      prices.lengths,
      request.holidays,
    ).map(({ threshold: { code, name }, measure }) => ({
      code,
      name,
      exceeded: measure.exceeded,
      clockChangeDecides: measure.clockChangeDecides,
      text: measure.text,
    })),
  };
}
