import type {
  Allocation,
  BookAnswer,
  HandbackResult,
  PriceAnswer,
  Results,
} from '../../src/engine/types.js';
import type { Figure } from '../shared/figure-ask-event.js';
import { explainMilestone } from './explain-booking.js';
import { explainLateness, explainOnTime, explainPValue, explainUnits } from './explain-chance.js';
import { explainCompareFigure, explainCompareKeyDate, explainKeyDate } from './explain-compare.js';
import { explainCutOff, explainDecision, explainMargin } from './explain-handback.js';
import {
  explainCostRow,
  explainCostTotal,
  explainExpectedCost,
  overrunOf,
} from './explain-price.js';
import { explainUnitsPlaced } from './explain-units.js';
import type { Explanation } from './explanation.js';

/** The results on show; what was not worked out is null. */
export interface ShownResults {
  readonly results: Results | null;
  readonly handbacks: readonly HandbackResult[] | null;
  readonly price: PriceAnswer | null;
  readonly book: BookAnswer | null;
  readonly allocation: Allocation | null;
  /** The plan that `allocation` is compared with. */
  readonly before: Allocation | null;
  /** IANA zone of the plan. */
  readonly zone: string;
}

/**
 * Where a figure comes from, out of the results on show; null where they do not hold it, as when they have changed
 * since the reader asked.
 */
export function explainFigure(figure: Figure, shown: ShownResults): Explanation | null {
  try {
    return explained(figure, shown);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function explained(figure: Figure, shown: ShownResults): Explanation | null {
  const { results, price, book, allocation, before, zone } = shown;
  switch (figure.of) {
    case 'cost-row':
      return price && explainCostRow(overrunOf(price, figure.minutes), figure.code);
    case 'cost-total':
      return price && explainCostTotal(overrunOf(price, figure.minutes));
    case 'cost-expected':
      return price && explainExpectedCost(price, null);
    case 'cost-p':
      return price && explainExpectedCost(price, figure.percent);
    case 'key-date': {
      const date = allocation?.keyDates.find((forecast) => forecast.package === figure.package);
      return date ? explainKeyDate(date, zone) : null;
    }
    case 'units-placed': {
      const activity = results?.plan.activities.find((item) => item.id === figure.activity);
      return allocation && results && activity
        ? explainUnitsPlaced(allocation, activity, results.plan.windows, zone)
        : null;
    }
    case 'compare':
      return before && allocation
        ? explainCompareFigure(before, allocation, figure.figure, zone)
        : null;
    case 'compare-key-date':
      return before && allocation
        ? explainCompareKeyDate(before, allocation, figure.package, zone)
        : null;
    case 'booking-date': {
      const found = book?.milestones.find(
        (milestone) =>
          milestone.window === figure.window && milestone.milestone === figure.milestone,
      );
      const window = results?.plan.windows.find((item) => item.id === figure.window);
      return book && found ? explainMilestone(found, window, book.rules) : null;
    }
    default:
      return ofHandback(figure, shown);
  }
}

type HandbackFigure = Extract<
  Figure,
  {
    readonly of:
      | 'handback-margin'
      | 'cut-off'
      | 'point-of-no-return'
      | 'latest-abort'
      | 'on-time'
      | 'p-value'
      | 'expected-overrun'
      | 'later-than'
      | 'units-on-time';
  }
>;

function ofHandback(figure: HandbackFigure, shown: ShownResults): Explanation | null {
  const result = shown.handbacks?.find((handback) => handback.window === figure.window);
  const plan = shown.results?.plan;
  const window = plan?.windows.find((item) => item.id === figure.window);
  if (!result || !plan || !window) return null;
  switch (figure.of) {
    case 'handback-margin':
      return explainMargin(result, window, plan.rules);
    case 'cut-off':
      return explainCutOff(result, window, figure.index);
    case 'point-of-no-return':
    case 'latest-abort':
      return explainDecision(result, window, figure.activity, figure.of);
    case 'on-time':
      return explainOnTime(result, window);
    case 'p-value':
      return explainPValue(result, window, figure.percent);
    case 'expected-overrun':
      return explainLateness(result, null);
    case 'later-than':
      return explainLateness(result, figure.minutes);
    case 'units-on-time':
      return explainUnits(result, figure.activity, figure.units);
  }
}
