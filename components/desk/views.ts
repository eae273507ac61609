import type { TableKind } from '../../src/model/index.js';

// The places of the desk, one home for each kind of question, and the ways to look at each.

export const placeIds = ['programme', 'handback', 'cost', 'checks', 'data'] as const;
export type PlaceId = (typeof placeIds)[number];

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

export const placeOf = (view: DeskView): PlaceId =>
  placeIds.find((place) => viewsOf[place].includes(view)) ?? 'programme';

/** What the plan view shows. */
export type PlanPart = 'plan' | 'where' | 'wanted' | 'units' | 'compare';

/** What the view of people and site shows. */
export type SitePart = 'people' | 'noise' | 'lifting';

/** What the view of costs shows. */
export type CostPart = 'overrun' | 'options' | 'account';

/** The tables that carry results beside their rows. */
export type ResultTable = 'windows' | 'work';
export type WorkTable = TableKind;
