import type { TableKind } from '../../src/model/index.js';
import type { Objective } from '../../src/schedule/types.js';

// What the desk can show, in the order of its tabs, and what each is called.

export const deskViews = [
  'windows',
  'work',
  'fit',
  'plan',
  'handback',
  'cost',
  'booking',
  'files',
] as const;
export type DeskView = (typeof deskViews)[number];

export const viewText: Readonly<Record<DeskView, string>> = {
  windows: 'Windows',
  work: 'Work',
  fit: 'Fit',
  plan: 'Plan',
  handback: 'Handback',
  cost: 'Cost',
  booking: 'Booking',
  files: 'Files',
};

/** Views that fill the desk: they say themselves where their figures come from. */
export const wholeViews: readonly DeskView[] = ['handback', 'cost', 'booking'];

/** What the plan view shows. */
export type PlanPart = 'plan' | 'units' | 'compare';
export const planParts: Readonly<Record<PlanPart, string>> = {
  plan: 'In the windows',
  units: 'Units in place',
  compare: 'Against the plan before',
};

export const objectives: Readonly<Record<Objective, string>> = {
  'key-dates': 'key dates met',
  margins: 'margins held',
  finish: 'earliest finish',
  'fewest-windows': 'fewest windows',
};

/** The tables of the work view; windows have a view of their own. */
export type WorkTable = Exclude<TableKind, 'windows'>;
