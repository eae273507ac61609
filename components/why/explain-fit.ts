import { durationText } from '../../src/calendar/index.js';
import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { minutesInOneVisit } from '../../src/model/index.js';
import { dayText, stretchText } from '../shared/format.js';
import { verdictsInWindow, verdictsOfPackage } from '../shared/verdicts.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** Why a package fits a window or does not. */
export function explainFit(
  verdict: FitVerdict,
  pack: PackageSummary,
  window: AccessWindow,
  activities: readonly Activity[],
): Explanation {
  const spare = verdict.spareMinutes;
  const titles = new Map(activities.map((one) => [one.id, one.title]));
  const placed: ExplanationRow[] = verdict.placements.map((one) => ({
    label: `${one.activity} ${titles.get(one.activity) ?? ''}`,
    figure: durationText((one.to - one.from) / 60_000),
    note: `${one.window === null ? 'outside, ' : ''}${stretchText(one.from, one.to, window.zone)}${one.units === undefined ? '' : `, ${one.units} units`}`,
    place: { to: 'activity', id: one.activity },
  }));
  const causes = verdict.reasons.filter((one) => one.enough).length;
  const reasons: ExplanationRow[] = verdict.reasons.map((one) => ({
    label: one.text,
    figure: one.shortByMinutes === undefined ? '' : `short ${durationText(one.shortByMinutes)}`,
    ...(one.enough && { note: enoughText(causes, one.enough) }),
  }));
  const short = verdict.proven === false ? 'at most ' : '';
  return {
    title: `Package ${pack.id} in window ${window.id}`,
    figure: verdict.fits
      ? `${durationText(spare ?? 0)} spare`
      : spare === null
        ? 'Cannot be done'
        : `${short}${durationText(-spare)} short`,
    tone: verdict.fits ? 'good' : 'bad',
    sentence: verdict.fits
      ? 'Fits on its own, with the required handback margin held. This is usable time left over, not handback margin and not float before a key date.'
      : spare === null
        ? 'No longer window would cure this: something the work needs is not there.'
        : verdict.proven === false
          ? `No way to fit it was found, and not every way was looked at. With ${durationText(-spare)} more usable time it would fit.`
          : `Would fit if the window gave ${durationText(-spare)} more usable time.`,
    rowsTitle: verdict.fits ? 'How it would go' : 'Every reason',
    rows: verdict.fits ? placed : reasons,
    links: [
      { text: `Window ${window.id}`, place: { to: 'window', id: window.id } },
      { text: `Package ${pack.id}`, place: { to: 'package', id: pack.id } },
    ],
  };
}

/** What a cause that is marked does, among so many that are. */
function enoughText(causes: number, sure: 'proven' | 'found'): string {
  const told = causes === 1 ? 'this alone keeps it out' : 'these together keep it out';
  return sure === 'proven' ? told : `${told}, as far as was looked`;
}

/** Packages that fit a window on their own, least spare first: what its usable time is good for. */
export function fitsIn(window: string, fits: readonly FitVerdict[]): ExplanationRow[] {
  return verdictsInWindow(fits, window)
    .filter((one) => one.fits)
    .sort((a, b) => (a.spareMinutes ?? 0) - (b.spareMinutes ?? 0))
    .map((one) => ({
      label: one.package,
      figure: `${durationText(one.spareMinutes ?? 0)} spare`,
      place: { to: 'fit', package: one.package, window },
    }));
}

/** What a package asks for and where it fits. */
export function explainPackage(
  pack: PackageSummary,
  fits: readonly FitVerdict[],
  windows: readonly AccessWindow[],
  activities: readonly Activity[],
): Explanation {
  const own = verdictsOfPackage(fits, pack.id);
  const good = own.filter((one) => one.fits);
  const starts = new Map(windows.map((one) => [one.id, dayText(one.start, one.zone)]));
  const pieces: ExplanationRow[] = activities
    .filter((one) => one.package === pack.id)
    .map((one) => ({
      label: `${one.id} ${one.title}`,
      figure: durationText(minutesInOneVisit(one.work)),
      note: one.work.kind === 'units' ? `${one.work.units - one.work.done} units left` : '',
      place: { to: 'activity', id: one.id },
    }));
  const best: ExplanationRow[] = good.map((one) => ({
    label: `fits ${one.window}`,
    figure: `${durationText(one.spareMinutes ?? 0)} spare`,
    note: starts.get(one.window) ?? '',
    place: { to: 'fit', package: pack.id, window: one.window },
  }));
  const needs = [
    ...(pack.needs.isolation.length > 0
      ? [`isolation of ${pack.needs.isolation.join(', ')}`]
      : ['no isolation']),
    pack.needs.loud ? 'loud work allowed' : 'nothing loud',
  ].join(', ');
  return {
    title: `Work left in package ${pack.id}`,
    figure: durationText(pack.minutes),
    sentence: `Inside work left, each piece in one visit, end to end. It needs ${needs}. It fits ${good.length} of ${own.length} windows on its own.`,
    rowsTitle: 'Its pieces, and where it fits',
    rows: [...pieces, ...best],
    links: [{ text: `Package ${pack.id} in the sheet`, place: { to: 'package', id: pack.id } }],
  };
}
