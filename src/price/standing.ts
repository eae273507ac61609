import { minutesBetween } from '../calendar/index.js';
import type { AccessWindow, Activity, PriceBook, Resource } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';
import { paidTime } from './call-outs.js';
import { plainStanding } from './heads/plain-standing.js';
import { staysIn, type Stay } from './on-site.js';
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
  tell: { readonly note: (text: string) => void; readonly notPriced: (text: string) => void },
): readonly Standing[] {
  const { prices, ...rest } = inputs;
  const { onSite } = prices.standing ?? plainStanding;
  if (
    (!inputs.placements || !inputs.activities) &&
    inputs.resources.some((resource) => resource.ratePerHour !== undefined)
  )
    tell.note(
      'No plan of the work was given, so everything with a rate that is there at the booked end is taken to stand by from the start of the window.',
    );
  const byResource = new Map<string, Stay[]>();
  for (const stay of staysIn(window, { ...rest, onSite })) {
    const list = byResource.get(stay.resource.id);
    if (list) list.push(stay);
    else byResource.set(stay.resource.id, [stay]);
  }
  const standing: Standing[] = [];
  for (const [id, stays] of byResource) {
    const { resource } = stays[0]!;
    if (resource.ratePerHour === undefined)
      tell.notPriced(`The time of ${id} is not priced: it has no rate an hour.`);
    else if (!(resource.ratePerHour >= 0 && resource.ratePerHour < Infinity))
      throw new RangeError(`${id} has a rate an hour of ${resource.ratePerHour}`);
    else standing.push({ resource, stays });
  }
  if (byResource.size === 0)
    tell.notPriced('Plant and people standing by are not priced: no resource is on site.');
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
