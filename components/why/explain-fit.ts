import { durationText } from '../../src/calendar/index.js';
import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict, MostThatFits, Placement } from '../../src/planner/fit/types.js';
import type { PlanFault } from '../../src/engine/types.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { minutesInOneVisit } from '../../src/model/index.js';
import { dayText, stretchText } from '../shared/format.js';
import { goesInPart, partText, shareOf } from '../../src/engine/index.js';
import { saidText } from '../shared/said.js';
import { verdictsInWindow, verdictsOfPackage } from '../shared/verdicts.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** What the independent check says of a fit: all that is wrong with it, an empty list where nothing is; or why it says nothing. */
export type Looked = readonly PlanFault[] | 'looking' | 'not-looked';

/** Why a package fits a window or does not. */
export function explainFit(
  verdict: FitVerdict,
  pack: PackageSummary,
  window: AccessWindow,
  activities: readonly Activity[],
  looked: Looked = 'not-looked',
): Explanation {
  const words = explainWords();
  const { fit } = words;
  const links = [
    { text: words.window(window.id), place: { to: 'window' as const, id: window.id } },
    { text: words.package(pack.id), place: { to: 'package' as const, id: pack.id } },
  ];
  const title = fit.title(pack.id, window.id);
  if (typeof looked === 'object' && looked.length > 0)
    return {
      title,
      figure: fit.notShown,
      tone: 'bad',
      sentence: fit.fault,
      rowsTitle: fit.faultsFound,
      rows: looked.map(({ text }) => ({ label: saidText(text), figure: '' })),
      links,
    };
  const spare = verdict.spareMinutes;
  const titles = new Map(activities.map((activity) => [activity.id, activity.title]));
  const placed: ExplanationRow[] = verdict.placements.map((placement) => ({
    label: `${placement.activity} ${titles.get(placement.activity) ?? ''}`,
    figure: durationText((placement.to - placement.from) / 60_000),
    note: placedNote(placement, window.zone),
    place: { to: 'activity', id: placement.activity },
  }));
  const causes = verdict.reasons.filter((reason) => reason.enough).length;
  const reasons: ExplanationRow[] = verdict.reasons.map((reason) => ({
    label: saidText(reason),
    figure:
      reason.shortByMinutes === undefined ? '' : fit.short(durationText(reason.shortByMinutes)),
    ...(reason.enough && { note: enoughText(causes, reason.enough) }),
  }));
  const isAtMost =
    verdict.proven === false ||
    verdict.reasons.some(
      (reason) => reason.atMost === true && reason.shortByMinutes === -(spare ?? 0),
    );
  const missing = isAtMost ? fit.missingAtMost : fit.missing;
  const { most } = verdict;
  const part = goesInPart(most) ? `${fit.part(amountText(most))} ` : '';
  return {
    title,
    figure: verdict.fits
      ? fit.spare(durationText(spare ?? 0))
      : goesInPart(most)
        ? amountText(most)
        : spare === null
          ? verdict.proven === false
            ? fit.notShown
            : fit.cannot
          : missing(durationText(-spare)),
    tone: verdict.fits ? 'good' : 'bad',
    sentence: `${verdict.fits ? fitsText(verdict) : `${part}${notWhole(verdict, isAtMost)}`} ${lookedText(looked)}`,
    rowsTitle: verdict.fits ? fit.howItGoes : fit.everyReason,
    rows: verdict.fits ? placed : reasons,
    links,
  };
}

/** What the independent check says of a fit with which it found nothing wrong. */
function lookedText(looked: Looked): string {
  const { fit } = explainWords();
  if (looked === 'looking') return fit.looking;
  return looked === 'not-looked' ? fit.unchecked : fit.noFault;
}

/** Where a piece lies, and how much of it. */
function placedNote({ window, from, to, units }: Placement, zone: string): string {
  const words = explainWords();
  const stretch = stretchText(from, to, zone);
  const where = window === null ? words.outsideFirst(stretch) : stretch;
  return units === undefined ? where : `${where}, ${words.units(units)}`;
}

/** How much of a package goes. */
const amountText = (most: MostThatFits): string => partText(most, explainWords().part);

function fitsText({ spareAtMost }: FitVerdict): string {
  const { fit } = explainWords();
  const more =
    spareAtMost === undefined ? fit.noWayLeavesMore : fit.upTo(durationText(spareAtMost));
  return `${fit.fits} ${more}`;
}

/** What a cause that is marked does, among so many that are. */
function enoughText(causes: number, sure: 'proven' | 'found'): string {
  const { fit } = explainWords();
  const conclusion = causes === 1 ? fit.alone : fit.together;
  return sure === 'proven' ? conclusion : fit.asFar(conclusion);
}

/** Why not all of a package fits, in a sentence. `isAtMost`: a window less long may do. */
function notWhole({ spareMinutes: spare, proven }: FitVerdict, isAtMost: boolean): string {
  const { fit } = explainWords();
  if (spare === null) return proven === false ? fit.unproven : fit.noLaterEnd;
  const later = durationText(-spare);
  if (proven === false) return `${fit.unproven} ${fit.withEnd(later)}`;
  return isAtMost ? fit.wouldFitLess(later) : fit.wouldFit(later);
}

/** Parts of packages worked out for one list at most, so that a pick is answered at once. */
const MOST_PARTS = 60;

/** How much goes, of those of which not all does, the most of it first; how many were not looked at. */
function partsOf(verdicts: readonly FitVerdict[]): {
  readonly parts: readonly FitVerdict[];
  readonly open: number;
} {
  const rest = verdicts.filter((verdict) => !verdict.fits);
  const known = rest.slice(0, MOST_PARTS);
  return {
    parts: known
      .filter((verdict) => goesInPart(verdict.most))
      .sort((a, b) => shareOf(b.most!) - shareOf(a.most!)),
    open: rest.length - known.length,
  };
}

const openRow = (open: number): ExplanationRow[] =>
  open === 0 ? [] : [{ label: explainWords().fit.open(open), figure: '' }];

/** What goes in a window, each package on its own: whole ones with the least to spare first, then the most of others. */
export function fitsIn(window: string, fits: readonly FitVerdict[]): ExplanationRow[] {
  const { fit } = explainWords();
  const own = verdictsInWindow(fits, window);
  const row = (verdict: FitVerdict, figure: string): ExplanationRow => ({
    label: verdict.package,
    figure,
    place: { to: 'fit', package: verdict.package, window },
  });
  const { parts, open } = partsOf(own);
  return [
    ...own
      .filter((verdict) => verdict.fits)
      .sort((a, b) => (a.spareMinutes ?? 0) - (b.spareMinutes ?? 0))
      .map((verdict) => row(verdict, fit.whole(durationText(verdict.spareMinutes ?? 0)))),
    ...parts.map((part) => row(part, amountText(part.most!))),
    ...openRow(open),
  ];
}

/** What a package asks for and where it fits. */
export function explainPackage(
  pack: PackageSummary,
  fits: readonly FitVerdict[],
  windows: readonly AccessWindow[],
  activities: readonly Activity[],
): Explanation {
  const words = explainWords();
  const { fit } = words;
  const own = verdictsOfPackage(fits, pack.id);
  const good = own.filter((verdict) => verdict.fits);
  const starts = new Map(windows.map((window) => [window.id, dayText(window.start, window.zone)]));
  const pieces: ExplanationRow[] = activities
    .filter((activity) => activity.package === pack.id)
    .map((activity) => ({
      label: `${activity.id} ${activity.title}`,
      figure: durationText(minutesInOneVisit(activity.work)),
      note:
        activity.work.kind === 'units'
          ? fit.unitsLeft(activity.work.units - activity.work.done)
          : '',
      place: { to: 'activity', id: activity.id },
    }));
  const { parts, open } = partsOf(own);
  const row = (verdict: FitVerdict, label: string, figure: string): ExplanationRow => ({
    label,
    figure,
    note: starts.get(verdict.window) ?? '',
    place: { to: 'fit', package: pack.id, window: verdict.window },
  });
  const best: ExplanationRow[] = [
    ...good.map((verdict) =>
      row(
        verdict,
        fit.fitsWindow(verdict.window),
        fit.spare(durationText(verdict.spareMinutes ?? 0)),
      ),
    ),
    ...parts.map((part) => row(part, fit.inPart(part.window), amountText(part.most!))),
    ...openRow(open),
  ];
  const needs = [
    ...(pack.needs.isolation.length > 0
      ? [fit.isolationOf(pack.needs.isolation.join(', '))]
      : [fit.noIsolation]),
    pack.needs.loud ? fit.loud : fit.notLoud,
  ].join(', ');
  return {
    title: fit.workLeft(pack.id),
    figure: durationText(pack.minutes),
    sentence: fit.workNeeds(needs, good.length, own.length),
    rowsTitle: fit.pieces,
    rows: [...pieces, ...best],
    links: [{ text: words.packageInSheet(pack.id), place: { to: 'package', id: pack.id } }],
  };
}
