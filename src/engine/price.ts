import { addMinutes, minutesBetween } from '../calendar/index.js';
import {
  costModel,
  countOverruns,
  curveOf,
  decimalText,
  expectedCost,
  type OverrunCount,
  keyDateLines,
  lengthThresholds,
  resultAt,
} from '../price/index.js';
import { costInputs, type Priced } from './cost-inputs.js';
import { namedWindow } from './named-window.js';
import type { PriceAnswer, PriceRequest } from './types.js';

/**
 * What an overrun of a window costs, minute by minute as far as is asked or was simulated.
 *
 * @throws {RangeError} When the plan has no such window.
 */
export function priceOf(priced: Priced, request: PriceRequest): PriceAnswer {
  const { plan, prices } = priced;
  const window = namedWindow(plan, request.window);
  const inputs = costInputs(priced, window, request.holidays, request.placements);
  const booked = minutesBetween(window.start, window.end);
  // A minute begun is a minute late; an early handback costs what a prompt one does.
  const overruns =
    request.handbackMinutes &&
    countOverruns(Array.from(request.handbackMinutes, (at) => Math.max(0, Math.ceil(at - booked))));
  const reach = Math.max(
    request.maxMinutes,
    request.overrunMinutes + 15,
    ...(request.compareMinutes ?? []),
    ...(overruns ?? []).map((overrun) => overrun.minutes),
  );
  const model = costModel(inputs, reach);
  const curve = curveOf(model);
  const now = curve.minor[request.overrunMinutes]!;
  const soon = curve.minor[request.overrunMinutes + 15]! - now;
  return {
    at: resultAt(model, request.overrunMinutes),
    overruns: (request.compareMinutes ?? []).map((minutes) => resultAt(model, minutes)),
    nextMinute: {
      one: decimalText(curve.minor[request.overrunMinutes + 1]! - now, prices),
      meanOfFifteen: decimalText(Math.round(soon / 15), prices),
    },
    curve,
    chanceLater: overruns ? chancesLater(overruns, reach) : null,
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
      sentence: measure.sentence,
    })),
  };
}

/** Share of the runs that hand back later than each minute from 0 to `reach`. */
function chancesLater(overruns: readonly OverrunCount[], reach: number): readonly number[] {
  const at = new Array<number>(reach + 1).fill(0);
  let runs = 0;
  for (const { minutes, count } of overruns) {
    at[minutes]! += count;
    runs += count;
  }
  let later = runs;
  return at.map((count) => (later -= count) / runs);
}
