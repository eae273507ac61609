import { minutesBetween } from '../calendar/index.js';
import type { PlanDocument } from '../model/index.js';
import { costCurve, expectedCost, overrunCost, type OverrunCount } from '../price/index.js';
import { planFromDocument } from '../tables/index.js';
import type { PriceAnswer, PriceRequest } from './types.js';

/** Runs by whole minutes of overrun; an early handback counts as 0. */
export function overrunsOf(handbackMinutes: Float64Array, bookedMinutes: number): OverrunCount[] {
  const counts = new Map<number, number>();
  for (const at of handbackMinutes) {
    const minutes = Math.max(0, Math.ceil(at - bookedMinutes));
    counts.set(minutes, (counts.get(minutes) ?? 0) + 1);
  }
  return [...counts].map(([minutes, count]) => ({ minutes, count }));
}

/** @throws {RangeError} When the document has no price book, or the plan no such window. */
export function priceOf(document: PlanDocument, request: PriceRequest): PriceAnswer {
  const { plan, trains } = planFromDocument(document);
  const window = plan.windows.find((one) => one.id === request.window);
  if (!window) throw new RangeError(`there is no window "${request.window}" in the plan`);
  if (!document.prices) throw new RangeError('the plan has no price book');
  const inputs = {
    window,
    prices: document.prices,
    trains,
    resources: plan.resources,
    ...(request.holidays && { holidays: request.holidays }),
    ...(request.placements && { placements: request.placements, activities: plan.activities }),
  };
  const overruns =
    request.handbackMinutes &&
    overrunsOf(request.handbackMinutes, minutesBetween(window.start, window.end));
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
  };
}
