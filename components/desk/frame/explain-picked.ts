import { isoText } from '../../../src/calendar/index.js';
import type {
  Allocation,
  Placement,
  Replan,
  Results,
  ShortNotice,
} from '../../../src/engine/types.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { tableKinds } from '../../../src/model/index.js';
import type { LedgerAskEvent } from '../../ledger/ledger-ask-event.js';
import { clockText, countText, floatText } from '../../shared/format.js';
import { verdictAt, verdictsInWindow } from '../../shared/verdicts.js';
import { explainFit, explainPackage, fitsIn } from '../../why/explain-fit.js';
import { explainLedger } from '../../why/explain-ledger.js';
import { explainFaults } from '../../why/explain-plan.js';
import type { Explanation } from '../../why/explanation.js';

import { pieceText, placementsBy } from '../../results/window-results.js';

// What the panel says for each thing that can be picked; null where the results do not hold it.

/** A figure of a window's ledger. The ledger stands above it, so the sum says what the time is good for. */
export function tellLedger(
  results: Results | null,
  id: string,
  row: LedgerAskEvent['row'],
): Explanation | null {
  const window = results?.plan.windows.find((item) => item.id === id);
  const ledger = results?.ledgers.find((item) => item.window === id);
  if (!results || !window || !ledger) return null;
  const explained = explainLedger(ledger, window, results.plan.rules, row);
  if (row !== 'usable') return explained;
  // A plan of very many pairs has no verdicts: nobody may read that as none that fits.
  if (results.fits.length === 0 && results.packages.length > 0)
    return {
      ...explained,
      sentence: `${explained.sentence} Which packages would fit is not worked out.`,
    };
  const rows = fitsIn(id, results.fits);
  const whole = verdictsInWindow(results.fits, id).filter((verdict) => verdict.fits).length;
  const count = `${whole} of ${countText(results.packages.length, 'package')}`;
  return {
    ...explained,
    sentence: `${explained.sentence} Whole and on its own, ${count} would fit.`,
    rowsTitle: 'What would go, each on its own: whole ones first, then the most of others',
    rows,
  };
}

/** A package against a window. */
export function tellFit(
  results: Results | null,
  at: { readonly package: string; readonly window: string },
): Explanation | null {
  const verdict = results ? verdictAt(results.fits, at) : undefined;
  const pack = results?.packages.find((summary) => summary.id === at.package);
  const window = results?.plan.windows.find((item) => item.id === at.window);
  if (!results || !verdict || !pack || !window) return null;
  return explainFit(verdict, pack, window, results.plan.activities);
}

/** A package against all windows. */
export function tellPackage(results: Results | null, id: string): Explanation | null {
  const pack = results?.packages.find((summary) => summary.id === id);
  if (!results || !pack) return null;
  return explainPackage(pack, results.fits, results.plan.windows, results.plan.activities);
}

/** What the plan does in one window, in order. */
export function tellWindowWork(
  results: Results | null,
  plan: Allocation | null,
  id: string,
): Explanation | null {
  const window = results?.plan.windows.find((item) => item.id === id);
  if (!results || !window || !plan) return null;
  const titles = new Map(results.plan.activities.map((activity) => [activity.id, activity.title]));
  const pieces = placementsBy(plan).get(id) ?? [];
  return {
    title: `Work planned in ${id}`,
    figure: countText(pieces.length, 'piece'),
    sentence:
      pieces.length === 0
        ? 'The plan places no work in it.'
        : `The last is clear at ${clockText(Math.max(...pieces.map((piece) => piece.to)), window.zone)}.`,
    rowsTitle: 'In order of start',
    rows: pieces.map((piece) => ({
      label: pieceText(piece),
      figure: `${clockText(piece.from, window.zone)} to ${clockText(piece.to, window.zone)}`,
      note: titles.get(piece.activity) ?? '',
      place: { to: 'activity', id: piece.activity },
    })),
    links: [{ text: `Window ${id}`, place: { to: 'window', id } }],
  };
}

/** Why an activity is in no window of the plan; null where it is not left over. */
export function tellLeftOver(plan: Allocation, id: string): Explanation | null {
  const left = plan.unplaced.find((item) => item.activity === id);
  if (!left) return null;
  return {
    title: `${id} is left over`,
    figure: 'not placed',
    tone: 'bad',
    sentence: left.reasons[0]?.text ?? 'No window takes it.',
    rowsTitle: 'Reasons',
    rows: left.reasons.slice(1).map((reason) => ({ label: reason.text, figure: '' })),
    links: [{ text: `Row of ${id}`, place: { to: 'activity', id } }],
  };
}

/** Everything that could not be used as typed. */
export function tellFaults(results: Results | null, document: PlanDocument | null): Explanation {
  return explainFaults(results?.faults ?? [], (file) =>
    tableKinds.find((kind) => document?.tables[kind]?.file === file),
  );
}

const windowsOf = (placements: readonly Placement[]): string =>
  [...new Set(placements.map((placement) => placement.window ?? 'outside'))].join(', ') ||
  'not placed';

/** What moved when the plan was made anew, and why. */
export function tellMoves(
  { moved, fewest, more }: Pick<Replan, 'moved' | 'fewest' | 'more'>,
  allocation: Allocation,
): Explanation {
  const missed = allocation.keyDates.filter((date) => !date.met).length;
  return {
    title: 'What moved',
    figure:
      moved.length === 0 ? 'nothing' : countText(moved.length, 'piece of work', 'pieces of work'),
    tone: missed === 0 && allocation.unplaced.length === 0 ? 'good' : 'bad',
    sentence: `${fewestText(fewest)}${moreText(more)} ${missed === 0 ? 'Every key date is met' : `${countText(missed, 'key date')} missed`}; ${allocation.unplaced.length === 0 ? 'all work is placed' : `${countText(allocation.unplaced.length, 'piece', 'pieces')} not placed`}.`,
    rowsTitle: 'From and to, with the reason',
    rows: moved.map((move) => ({
      label: move.activity,
      figure: `${windowsOf(move.before)} → ${windowsOf(move.after)}`,
      note: move.why,
      place: { to: 'activity', id: move.activity },
    })),
    links: [],
  };
}

/** How few pieces leave their windows, against how few can. */
function fewestText({ moved, atLeast, proven }: Replan['fewest']): string {
  if (moved === 0) return 'Every piece stays in its window.';
  const count = countText(moved, 'piece leaves its window', 'pieces leave their windows');
  return proven
    ? `${count}: no plan that places as much and keeps as many key dates moves fewer.`
    : `${count}, the fewest found; at least ${atLeast} have to.`;
}

/** What moving more would gain, in words; nothing where that is nothing. */
function moreText(more: Replan['more']): string {
  if (!more) return '';
  const gains = [
    ...(more.keyDatesMet > 0 ? [`${countText(more.keyDatesMet, 'more key date')} met`] : []),
    ...(more.placed > 0 ? [`${countText(more.placed, 'more piece')} placed`] : []),
  ];
  const gain = gains.length > 0 ? gains.join(' and ') : 'less lateness';
  return ` Moving ${countText(more.moved, 'piece')} would gain: ${gain}.`;
}

/** What was found for a window offered at short notice, and what it buys. */
export function tellShortNotice(found: ShortNotice, zone: string): Explanation {
  const gained = found.finishGainedMinutes;
  return {
    title: `Work found for ${found.window}`,
    figure: countText(found.use.length, 'visit'),
    tone: found.use.length > 0 ? 'good' : 'bad',
    sentence:
      found.use.length === 0
        ? 'No work was found that gains by it.'
        : gained === null
          ? 'Not all work is placed, so no finish can be told.'
          : `Everything finishes ${gained === 0 ? 'when it did' : gained > 0 ? `${floatText(gained)} sooner` : `${floatText(-gained)} later`}.`,
    rowsTitle: 'Work to do in it, then what each key date gains',
    rows: [
      ...found.use.map((placement) => ({
        label: placement.activity,
        figure: `${isoText(placement.from, zone).slice(11, 16)} to ${isoText(placement.to, zone).slice(11, 16)}`,
        ...(placement.units !== undefined && { note: countText(placement.units, 'unit') }),
      })),
      ...found.keyDates.map((date) => ({
        label: `Key date of ${date.package}`,
        figure: date.gainedMinutes === null ? 'not told' : floatText(date.gainedMinutes),
        note: date.metAfter ? 'met' : 'missed',
      })),
    ],
    links: [],
  };
}
