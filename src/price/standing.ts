import { minutesBetween } from '../calendar/index.js';
import type { AccessWindow, Activity, Phrase, PriceBook, Resource } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';
import { paidTime } from './call-outs.js';
import { plainStanding } from './heads/plain-standing.js';
import { staysIn, type Stay } from './on-site.js';
import { sayPrice } from './say-price.js';
import type { OnSiteRow } from './types.js';

/** A resource with a rate, and all its stays in a window. */
export interface Standing {
  readonly resource: Resource;
  readonly stays: readonly Stay[];
}

export interface StandingInputs {
  readonly resources: readonly Resource[];
  readonly placements?: readonly Placement[];
  readonly activities?: readonly Activity[];
}

/** Plant and labour on site, by resource; those without a rate go to `notPriced`. */
export function standingIn(
  window: AccessWindow,
  inputs: StandingInputs & { readonly prices: PriceBook },
  tell: { readonly note: (text: Phrase) => void; readonly notPriced: (text: Phrase) => void },
): readonly Standing[] {
  const { prices, ...rest } = inputs;
  const { onSite } = prices.standing ?? plainStanding;
  if (
    (!inputs.placements || !inputs.activities) &&
    inputs.resources.some((resource) => resource.ratePerHour !== undefined)
  )
    tell.note(sayPrice('stands-from-start'));
  const byResource = new Map<string, Stay[]>();
  for (const stay of staysIn(window, { ...rest, onSite })) {
    const list = byResource.get(stay.resource.id);
    if (list) list.push(stay);
    else byResource.set(stay.resource.id, [stay]);
  }
  const standing: Standing[] = [];
  for (const [id, stays] of byResource) {
    const { resource } = stays[0]!;
    if (resource.ratePerHour === undefined) tell.notPriced(sayPrice('no-rate', { resource: id }));
    else if (!(resource.ratePerHour >= 0 && resource.ratePerHour < Infinity))
      throw new RangeError(`${id} has a rate an hour of ${resource.ratePerHour}`);
    else standing.push({ resource, stays });
  }
  if (byResource.size === 0) tell.notPriced(sayPrice('nobody-on-site'));
  return standing.sort((a, b) => (a.resource.id < b.resource.id ? -1 : 1));
}

/** Every stay with its cost as planned. */
export function onSiteRows(
  window: AccessWindow,
  standing: readonly Standing[],
  prices: PriceBook,
  holidays: readonly string[],
): readonly OnSiteRow[] {
  return standing.flatMap(({ resource, stays }) =>
    stays.map(({ resource: _, ...stay }): OnSiteRow => {
      const span = { start: stay.call, end: stay.leaves };
      const paid = paidTime(resource, stay.amount, span, window, { prices, holidays });
      return {
        ...stay,
        resource: resource.id,
        plannedMinutes: minutesBetween(span.start, span.end),
        owed: paid.amount,
        owedFormula: paid.formula,
      };
    }),
  );
}
