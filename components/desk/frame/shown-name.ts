import type { DeskStrings } from '../strings.js';
import { placeOf, type CostPart, type DeskView, type PlanPart, type SitePart } from '../views.js';

/** What the desk shows, in words: the place, and which way it is looked at. */
export function shownName(
  view: DeskView,
  parts: { readonly planPart: PlanPart; readonly costPart: CostPart; readonly sitePart: SitePart },
  words: DeskStrings,
): string {
  const way =
    view === 'plan' && parts.planPart !== 'plan'
      ? words.planPart[parts.planPart]
      : view === 'cost'
        ? words.costPart[parts.costPart]
        : view === 'site'
          ? words.sitePart[parts.sitePart]
          : words.view[view];
  const place = words.place[placeOf(view)];
  return way === place ? place : words.shown(place, way);
}
