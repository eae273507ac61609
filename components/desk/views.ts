import type { TableKind } from '../../src/model/index.js';
import type { Objective } from '../../src/planner/search/types.js';

// The places of the desk, one home for each kind of question, and the ways to look at each.

export const placeIds = ['programme', 'handback', 'cost', 'checks', 'data'] as const;
export type PlaceId = (typeof placeIds)[number];

export const placeText: Readonly<Record<PlaceId, string>> = {
  programme: 'Programme',
  handback: 'Handback',
  cost: 'Cost',
  checks: 'Checks',
  data: 'Tables and rules',
};

export const deskViews = [
  'windows',
  'table',
  'fit',
  'plan',
  'ahead',
  'summary',
  'handback',
  'cost',
  'urgent',
  'booking',
  'site',
  'work',
  'rules',
  'files',
] as const;
export type DeskView = (typeof deskViews)[number];

/** The views of each place, the one it opens with first. */
export const viewsOf: Readonly<Record<PlaceId, readonly DeskView[]>> = {
  programme: ['windows', 'table', 'fit', 'plan', 'ahead', 'summary'],
  handback: ['handback'],
  cost: ['cost'],
  checks: ['urgent', 'booking', 'site'],
  data: ['work', 'rules', 'files'],
};

export const viewText: Readonly<Record<DeskView, string>> = {
  windows: 'Week by week',
  table: 'As a table',
  fit: 'What fits where',
  plan: 'Pieces of work',
  ahead: 'Look-ahead',
  summary: 'Summary',
  handback: 'Handback',
  cost: 'Cost',
  urgent: 'To see to',
  booking: 'Booking dates',
  site: 'Hours, noise, weather',
  work: 'Tables',
  rules: 'Rules',
  files: 'Bring files in',
};

export const placeOf = (view: DeskView): PlaceId =>
  placeIds.find((place) => viewsOf[place].includes(view)) ?? 'programme';

/** What the plan view shows. */
export type PlanPart = 'plan' | 'where' | 'wanted' | 'units' | 'compare';
export const planParts: Readonly<Record<PlanPart, string>> = {
  plan: 'In the windows',
  where: 'Where and when',
  wanted: 'People and plant by week',
  units: 'Units in place',
  compare: 'Against the plan before',
};

/** What the view of people and site shows. */
export type SitePart = 'people' | 'noise' | 'lifting';
export const siteParts: Readonly<Record<SitePart, string>> = {
  people: 'Hours of people',
  noise: 'Noise',
  lifting: 'Wind and concrete',
};

/** What the view of costs shows. */
export type CostPart = 'overrun' | 'options' | 'account';
export const costParts: Readonly<Record<CostPart, string>> = {
  overrun: 'An overrun',
  options: 'Options side by side',
  account: 'After the event',
};

export const objectives: Readonly<Record<Objective, string>> = {
  'key-dates': 'key dates met',
  margins: 'margins held',
  finish: 'earliest finish',
  'fewest-windows': 'fewest windows',
};

/** What the desk shows, in words: the place, and which way it is looked at. */
export function shownName(
  view: DeskView,
  parts: { readonly planPart: PlanPart; readonly costPart: CostPart; readonly sitePart: SitePart },
): string {
  const way =
    view === 'plan' && parts.planPart !== 'plan'
      ? planParts[parts.planPart]
      : view === 'cost'
        ? costParts[parts.costPart]
        : view === 'site'
          ? siteParts[parts.sitePart]
          : viewText[view];
  const place = placeText[placeOf(view)];
  return way === place ? place : `${place}, ${way.toLowerCase()}`;
}

/** The tables that carry results beside their rows. */
export type ResultTable = 'windows' | 'work';
export type WorkTable = TableKind;
