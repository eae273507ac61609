import type { TableKind } from '../../src/model/index.js';
import type { Objective } from '../../src/planner/search/types.js';

// What the desk can show, in the order of its tabs, and what each is called.

export const deskViews = [
  'windows',
  'work',
  'rules',
  'fit',
  'plan',
  'handback',
  'cost',
  'site',
  'booking',
  'files',
] as const;
export type DeskView = (typeof deskViews)[number];

export const viewText: Readonly<Record<DeskView, string>> = {
  windows: 'Windows',
  work: 'Work',
  rules: 'Rules',
  fit: 'Fit',
  plan: 'Plan',
  handback: 'Handback',
  cost: 'Cost',
  site: 'Site',
  booking: 'Booking',
  files: 'Files',
};

/** Views that fill the desk until a figure of theirs is asked about. */
export const wholeViews: readonly DeskView[] = ['rules', 'handback', 'cost', 'site', 'booking'];

/** What the plan view shows. */
export type PlanPart = 'plan' | 'units' | 'compare';
export const planParts: Readonly<Record<PlanPart, string>> = {
  plan: 'In the windows',
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

/** The tables of the work view; windows have a view of their own. */
export type WorkTable = Exclude<TableKind, 'windows'>;
