import { countText } from '../shared/format.js';
import { countFits } from '../shared/verdicts.js';
import { provedText } from '../why/explain-plan.js';
import type { Desk } from './desk-parts.js';
import type { DeskView, PlaceId } from './views.js';

// What stands under the name of a place and beside that of a view: how much there is. Nothing is said of what was
// not looked at.

export function countOfPlace(desk: Desk, place: PlaceId): string {
  const { figures, planning } = desk;
  const { results } = figures;
  if (!results) return figures.busy ? 'working' : 'nothing yet';
  switch (place) {
    case 'programme': {
      const dates = planning.shown?.keyDates ?? [];
      if (planning.busy && !planning.draft) return 'planning';
      if (planning.broken.length > 0) return 'changed since';
      if (dates.length === 0) return countText(results.plan.windows.length, 'window');
      return `${dates.filter((one) => one.met).length} of ${dates.length} dates met`;
    }
    case 'handback':
      return heldText(desk);
    case 'cost':
      return desk.outlooks.price ? `${desk.outlooks.price.curve.currency} by minute` : 'by minute';
    case 'checks':
      return lateText(desk) || siteText(desk);
    case 'data':
      return `${countText(results.plan.windows.length, 'window')}, ${countText(results.packages.length, 'package')}`;
  }
}

export function countOfView(desk: Desk, view: DeskView): string {
  const { planning, figures } = desk;
  const { results } = figures;
  if (!results) return '';
  switch (view) {
    case 'windows':
      return `${results.plan.windows.length} booked`;
    case 'work':
      return countText(results.packages.length, 'package');
    case 'rules':
      return ruleText(desk);
    case 'site':
      return siteText(desk);
    case 'fit':
      if (results.fits.length === 0) return results.packages.length === 0 ? '' : 'not worked out';
      return `${countFits(results.fits)} of ${results.fits.length} pairs`;
    case 'plan':
      if (planning.allocation) return provedText(planning.allocation).toLowerCase();
      return planning.busy ? 'searching' : 'not yet';
    case 'booking':
      return lateText(desk);
    case 'ahead':
    case 'summary':
    case 'handback':
    case 'cost':
    case 'table':
    case 'urgent':
    case 'files':
      return '';
  }
}

function heldText({ outlooks }: Desk): string {
  const { handbacks } = outlooks;
  if (!outlooks.hasAllHandbacks) return outlooks.isBusy('handback') ? 'working' : 'margins';
  const held = handbacks.filter((one) => one.verdict === 'held').length;
  return `${held} of ${handbacks.length} held`;
}

function lateText({ outlooks }: Desk): string {
  const { booked } = outlooks;
  if (!booked || booked.milestones.length === 0) return '';
  const late = booked.milestones.filter((one) => one.state === 'late').length;
  return late === 0 ? 'no date late' : `${late} late`;
}

function ruleText({ document }: Desk): string {
  const rules = document?.rules;
  return rules ? countText(rules.leadIn.length + rules.leadOut.length, 'step') : 'none';
}

function siteText({ document, outlooks }: Desk): string {
  if (outlooks.people && document?.tables.roster)
    return countText(outlooks.people.breaches.length, 'breach', 'breaches');
  return document?.tables.roster ? 'roster' : 'limits';
}
