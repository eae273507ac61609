import { countFits } from '../../shared/verdicts.js';
import { provedCode } from '../../why/proved-code.js';
import type { Desk } from '../desk-parts.js';
import type { DeskView, PlaceId } from '../views.js';

// What stands under the name of a place and beside that of a view: how much there is. Nothing is said of what was
// not looked at.

export function countOfPlace(desk: Desk, place: PlaceId): string {
  const { figures, planning, words } = desk;
  const { results } = figures;
  if (!results) return figures.busy || desk.opening ? words.working : words.nothingYet;
  switch (place) {
    case 'programme': {
      const dates = planning.shown?.keyDates ?? [];
      if (planning.busy && !planning.draft) return words.planning;
      if (planning.broken.length > 0) return words.changedSince;
      if (dates.length === 0) return words.windows(results.plan.windows.length);
      return words.datesMet(dates.filter((date) => date.met).length, dates.length);
    }
    case 'handback':
      return heldText(desk);
    case 'cost':
      return desk.outlooks.price
        ? words.currencyByMinute(desk.outlooks.price.curve.currency)
        : words.byMinute;
    case 'checks':
      return lateText(desk) || siteText(desk);
    case 'data':
      return `${words.windows(results.plan.windows.length)}, ${words.packages(results.packages.length)}`;
  }
}

export function countOfView(desk: Desk, view: DeskView): string {
  const { planning, figures, words } = desk;
  const { results } = figures;
  if (!results) return '';
  switch (view) {
    case 'windows':
      return words.booked(results.plan.windows.length);
    case 'work':
      return words.packages(results.packages.length);
    case 'rules':
      return ruleText(desk);
    case 'site':
      return siteText(desk);
    case 'fit':
      if (results.fits.length === 0) return results.packages.length === 0 ? '' : words.notWorkedOut;
      return words.pairs(countFits(results.fits), results.fits.length);
    case 'plan':
      if (planning.allocation) return words.proved[provedCode(planning.allocation)];
      return planning.busy ? words.searching : words.notYet;
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

function heldText({ outlooks, words }: Desk): string {
  const { handbacks } = outlooks;
  if (!outlooks.hasAllHandbacks) return outlooks.isBusy('handback') ? words.working : words.margins;
  const held = handbacks.filter((handback) => handback.verdict === 'held').length;
  return words.held(held, handbacks.length);
}

function lateText({ outlooks, words }: Desk): string {
  const { booked } = outlooks;
  if (!booked || booked.milestones.length === 0) return '';
  const late = booked.milestones.filter((milestone) => milestone.state === 'late').length;
  return late === 0 ? words.noDateLate : words.datesLate(late);
}

function ruleText({ document, words }: Desk): string {
  const rules = document?.rules;
  return rules ? words.steps(rules.leadIn.length + rules.leadOut.length) : words.none;
}

function siteText({ document, outlooks, words }: Desk): string {
  if (outlooks.people && document?.tables.roster)
    return words.breaches(outlooks.people.breaches.length);
  return document?.tables.roster ? words.roster : words.limits;
}
