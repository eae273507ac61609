import type {
  Allocation,
  FitVerdict,
  Placement,
  Replan,
  Results,
  ShortNotice,
} from '../../../src/engine/types.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { tableKinds } from '../../../src/model/index.js';
import type { LedgerAskEvent } from '../../ledger/ledger-ask-event.js';
import { clockText, floatText } from '../../shared/format.js';
import { saidText, whyText } from '../../shared/said.js';
import { verdictAt, verdictsInWindow } from '../../shared/verdicts.js';
import { explainFit, explainPackage, fitsIn, type Looked } from '../../why/explain-fit.js';
import { explainLedger } from '../../why/explain-ledger.js';
import { explainFaults } from '../../why/explain-plan.js';
import { explainWords } from '../../why/explain-words.js';
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
  const { ledger: words } = explainWords();
  // A plan of very many pairs has no verdicts: nobody may read that as none that fits.
  if (results.fits.length === 0 && results.packages.length > 0)
    return {
      ...explained,
      sentence: `${explained.sentence} ${words.fitsNotWorkedOut}`,
    };
  const rows = fitsIn(id, results.fits);
  const whole = verdictsInWindow(results.fits, id).filter((verdict) => verdict.fits).length;
  return {
    ...explained,
    sentence: `${explained.sentence} ${words.wouldFit(whole, results.packages.length)}`,
    rowsTitle: words.whatGoes,
    rows,
  };
}

/** A package against a window. */
export function tellFit(
  results: Results | null,
  at: { readonly package: string; readonly window: string },
  lookedAt: (verdict: FitVerdict) => Looked,
): Explanation | null {
  const verdict = results ? verdictAt(results.fits, at) : undefined;
  const pack = results?.packages.find((summary) => summary.id === at.package);
  const window = results?.plan.windows.find((item) => item.id === at.window);
  if (!results || !verdict || !pack || !window) return null;
  return explainFit(verdict, pack, window, results.plan.activities, lookedAt(verdict));
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
  const all = explainWords();
  const { picked: words } = all;
  return {
    title: words.plannedIn(id),
    figure: words.pieces(pieces.length),
    sentence:
      pieces.length === 0
        ? words.noWork
        : words.lastClear(clockText(Math.max(...pieces.map((piece) => piece.to)), window.zone)),
    rowsTitle: words.inOrder,
    rows: pieces.map((piece) => ({
      label: pieceText(piece),
      figure: all.fromTo(clockText(piece.from, window.zone), clockText(piece.to, window.zone)),
      note: titles.get(piece.activity) ?? '',
      place: { to: 'activity', id: piece.activity },
    })),
    links: [{ text: all.window(id), place: { to: 'window', id } }],
  };
}

/** Why an activity is in no window of the plan; null where it is not left over. */
export function tellLeftOver(plan: Allocation, id: string): Explanation | null {
  const left = plan.unplaced.find((item) => item.activity === id);
  if (!left) return null;
  const all = explainWords();
  const { picked: words } = all;
  const [first] = left.reasons;
  return {
    title: words.leftOver(id),
    figure: all.notPlaced,
    tone: 'bad',
    sentence: first ? saidText(first) : words.noWindow,
    rowsTitle: words.reasons,
    rows: left.reasons.slice(1).map((reason) => ({ label: saidText(reason), figure: '' })),
    links: [{ text: all.rowOf(id), place: { to: 'activity', id } }],
  };
}

/** Everything that could not be used as typed. */
export function tellFaults(results: Results | null, document: PlanDocument | null): Explanation {
  return explainFaults(results?.faults ?? [], (file) =>
    tableKinds.find((kind) => document?.tables[kind]?.file === file),
  );
}

function windowsOf(placements: readonly Placement[]): string {
  const { outside, notPlaced } = explainWords();
  const windows = new Set(placements.map((placement) => placement.window ?? outside));
  return [...windows].join(', ') || notPlaced;
}

/** What moved when the plan was made anew, and why. */
export function tellMoves(
  { moved, fewest, more }: Pick<Replan, 'moved' | 'fewest' | 'more'>,
  allocation: Allocation,
): Explanation {
  const { picked: words } = explainWords();
  const missed = allocation.keyDates.filter((date) => !date.met).length;
  return {
    title: words.moved,
    figure: moved.length === 0 ? words.nothing : words.piecesOfWork(moved.length),
    tone: missed === 0 && allocation.unplaced.length === 0 ? 'good' : 'bad',
    sentence: `${fewestText(fewest)}${moreText(more)} ${missed === 0 ? words.allMet : words.datesMissed(missed)}; ${allocation.unplaced.length === 0 ? words.allPlaced : words.piecesNotPlaced(allocation.unplaced.length)}.`,
    rowsTitle: words.fromAndTo,
    rows: moved.map((move) => ({
      label: move.activity,
      figure: `${windowsOf(move.before)} → ${windowsOf(move.after)}`,
      note: whyText(move),
      place: { to: 'activity', id: move.activity },
    })),
    links: [],
  };
}

/** How few pieces leave their windows, against how few can. */
function fewestText({ moved, atLeast, proven }: Replan['fewest']): string {
  const { picked: words } = explainWords();
  if (moved === 0) return words.allStay;
  return proven ? words.leaveProven(moved) : words.leaveFound(moved, atLeast);
}

/** What moving more would gain, in words; nothing where that is nothing. */
function moreText(more: Replan['more']): string {
  if (!more) return '';
  const { picked: words } = explainWords();
  const gains = [
    ...(more.keyDatesMet > 0 ? [words.moreDates(more.keyDatesMet)] : []),
    ...(more.placed > 0 ? [words.morePlaced(more.placed)] : []),
  ];
  const gain = gains.length > 0 ? gains.reduce(words.and) : words.lessLate;
  return ` ${words.wouldGain(more.moved, gain)}`;
}

/** What was found for a window offered at short notice, and what it buys. */
export function tellShortNotice(found: ShortNotice, zone: string): Explanation {
  const all = explainWords();
  const { picked: words, plan } = all;
  const gained = found.finishGainedMinutes;
  return {
    title: words.foundFor(found.window),
    figure: words.visits(found.use.length),
    tone: found.use.length > 0 ? 'good' : 'bad',
    sentence:
      found.use.length === 0
        ? words.noGain
        : gained === null
          ? words.noFinish
          : gained === 0
            ? words.finishSame
            : gained > 0
              ? words.finishSooner(floatText(gained))
              : words.finishLater(floatText(-gained)),
    rowsTitle: words.toDo,
    rows: [
      ...found.use.map((placement) => ({
        label: placement.activity,
        figure: all.fromTo(clockText(placement.from, zone), clockText(placement.to, zone)),
        ...(placement.units !== undefined && { note: all.units(placement.units) }),
      })),
      ...found.keyDates.map((date) => ({
        label: plan.keyDateOf(date.package),
        figure: date.gainedMinutes === null ? words.notTold : floatText(date.gainedMinutes),
        note: date.metAfter ? all.met : all.missed,
      })),
    ],
    links: [],
  };
}
