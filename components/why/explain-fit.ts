import { durationText } from '../../src/calendar/index.js';
import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import type { AccessWindow, Activity } from '../../src/model/index.js';
import { minutesInOneVisit } from '../../src/model/index.js';
import { dayText, stretchText } from '../shared/format.js';
import { goesInPart, partText, shareOf } from '../../src/engine/index.js';
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
  const titles = new Map(activities.map((activity) => [activity.id, activity.title]));
  const placed: ExplanationRow[] = verdict.placements.map((placement) => ({
    label: `${placement.activity} ${titles.get(placement.activity) ?? ''}`,
    figure: durationText((placement.to - placement.from) / 60_000),
    note: `${placement.window === null ? 'outside, ' : ''}${stretchText(placement.from, placement.to, window.zone)}${placement.units === undefined ? '' : `, ${placement.units} units`}`,
    place: { to: 'activity', id: placement.activity },
  }));
  const causes = verdict.reasons.filter((reason) => reason.enough).length;
  const reasons: ExplanationRow[] = verdict.reasons.map((reason) => ({
    label: reason.text,
    figure:
      reason.shortByMinutes === undefined ? '' : `short ${durationText(reason.shortByMinutes)}`,
    ...(reason.enough && { note: enoughText(causes, reason.enough) }),
  }));
  const isAtMost =
    verdict.proven === false ||
    verdict.reasons.some(
      (reason) => reason.atMost === true && reason.shortByMinutes === -(spare ?? 0),
    );
  const short = isAtMost ? 'at most ' : '';
  const { most } = verdict;
  const part = goesInPart(most)
    ? `${partText(most)} can be done in it on its own: as many pieces finished as can be, then as many units; nothing that opens the line and is not made good. `
    : '';
  return {
    title: `Package ${pack.id} in window ${window.id}`,
    figure: verdict.fits
      ? `${durationText(spare ?? 0)} spare`
      : goesInPart(most)
        ? partText(most)
        : spare === null
          ? verdict.proven === false
            ? 'Not shown to fit'
            : 'Cannot be done'
          : `${short}${durationText(-spare)} short`,
    tone: verdict.fits ? 'good' : 'bad',
    sentence: verdict.fits ? fitsText(verdict) : `${part}${notWhole(verdict, isAtMost)}`,
    rowsTitle: verdict.fits ? 'How it would go' : 'Every reason',
    rows: verdict.fits ? placed : reasons,
    links: [
      { text: `Window ${window.id}`, place: { to: 'window', id: window.id } },
      { text: `Package ${pack.id}`, place: { to: 'package', id: pack.id } },
    ],
  };
}

function fitsText({ spareAtMost }: FitVerdict): string {
  const more =
    spareAtMost === undefined
      ? 'No way of placing it leaves more.'
      : `Not every way was looked at: up to ${durationText(spareAtMost)} may be possible.`;
  return `Fits on its own, with the required handback margin held. This is usable time left over, not handback margin and not float before a key date. ${more}`;
}

/** What a cause that is marked does, among so many that are. */
function enoughText(causes: number, sure: 'proven' | 'found'): string {
  const conclusion = causes === 1 ? 'this alone keeps it out' : 'these together keep it out';
  return sure === 'proven' ? conclusion : `${conclusion}, as far as was looked`;
}

/** Why not all of a package fits, in a sentence. `isAtMost`: a window less long may do. */
function notWhole({ spareMinutes: spare, proven }: FitVerdict, isAtMost: boolean): string {
  const unproven = 'No way to fit all of it was found, and not every way was looked at.';
  if (spare === null)
    return proven === false
      ? unproven
      : 'No later end was found that cures this by itself for the whole: the reasons say what stands in the way.';
  const later = durationText(-spare);
  if (proven === false) return `${unproven} With an end ${later} later it would fit.`;
  return `All of it would fit if the window ended ${later} later${isAtMost ? '; less may do' : ', and with nothing less'}.`;
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
  open === 0
    ? []
    : [{ label: `In part: ${open} more not looked at here; the map tells each`, figure: '' }];

/** What goes in a window, each package on its own: whole ones with the least to spare first, then the most of others. */
export function fitsIn(window: string, fits: readonly FitVerdict[]): ExplanationRow[] {
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
      .map((verdict) => row(verdict, `whole, ${durationText(verdict.spareMinutes ?? 0)} spare`)),
    ...parts.map((part) => row(part, partText(part.most!))),
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
          ? `${activity.work.units - activity.work.done} units left`
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
      row(verdict, `fits ${verdict.window}`, `${durationText(verdict.spareMinutes ?? 0)} spare`),
    ),
    ...parts.map((part) => row(part, `in part in ${part.window}`, partText(part.most!))),
    ...openRow(open),
  ];
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
    rowsTitle: 'Its pieces, then where all of it fits, then where the most of it goes',
    rows: [...pieces, ...best],
    links: [{ text: `Package ${pack.id} in the sheet`, place: { to: 'package', id: pack.id } }],
  };
}
