import { durationText, MINUTE } from '../../src/calendar/index.js';
import {
  usableWithIsolation,
  type Allocation,
  type HandbackResult,
  type Placement,
  type Results,
} from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { defaultStrings, type ResultStrings } from './strings.js';
import { dayText, clockText, floatText } from '../shared/format.js';
import { nothingKnown, type ResultColumn, type ResultValue } from '../sheet/result-column.js';
import { percentText } from '../shared/chance.js';

/** What is known of the windows: from the document, the plan of the work, and its simulation. */
export interface WindowsKnown {
  readonly results: Results;
  readonly plan: Allocation | null;
  readonly handbacks: readonly HandbackResult[];
  /** Index of the column that names the window. */
  readonly idColumn: number;
}

const minutes = (value: number): ResultValue => ({ text: durationText(value), sort: value });

/** For each window: its hours, what the plan does in it, and how its handback stands. */
export function windowColumns(
  { results, plan, handbacks, idColumn }: WindowsKnown,
  words: ResultStrings = defaultStrings,
): readonly ResultColumn[] {
  const notYet: ResultValue = { text: words.notYet, tone: 'quiet' };
  /** Of a window that is withdrawn nothing is usable, whatever its hours. */
  const noneUsable: ResultValue = { text: words.none, sort: 0 };
  const windows = new Map(results.plan.windows.map((window) => [window.id, window]));
  const ledgers = new Map(results.ledgers.map((ledger) => [ledger.window, ledger]));
  const placed = placementsBy(plan);
  const known = new Map(handbacks.map((handback) => [handback.window, handback]));
  const column = (
    id: string,
    heading: string,
    of: (window: AccessWindow) => ResultValue,
    figures = true,
  ): ResultColumn => ({
    id,
    heading,
    lang: words.lang,
    figures,
    value: (_, cells) => {
      const window = windows.get(cells[idColumn]?.trim() ?? '');
      return window ? of(window) : nothingKnown;
    },
  });
  /** Only a window that the plan uses has a clear time and a handback. */
  const planned = (
    window: AccessWindow,
    of: (handback: HandbackResult) => ResultValue,
  ): ResultValue => {
    if (!plan) return notYet;
    if (!placed.has(window.id)) return nothingKnown;
    const handback = known.get(window.id);
    return handback ? of(handback) : notYet;
  };
  return [
    column('gross', words.gross, ({ start, end }) => minutes((end - start) / MINUTE)),
    column('usable', words.usable, ({ id }) => {
      const ledger = ledgers.get(id);
      if (!ledger) return nothingKnown;
      return ledger.barred.length > 0 ? noneUsable : minutes(ledger.usableMinutes);
    }),
    column('usable-isolated', words.usableIsolated, (window) => {
      if ((ledgers.get(window.id)?.barred.length ?? 0) > 0) return noneUsable;
      const left = usableWithIsolation(window, results.plan.rules);
      return left === null ? { text: words.noIsolation, tone: 'quiet', sort: -1 } : minutes(left);
    }),
    column(
      'holds',
      words.holds,
      ({ id }) => {
        if (!plan) return notYet;
        const pieces = placed.get(id) ?? [];
        return pieces.length === 0
          ? { text: words.nothing, tone: 'quiet' }
          : { text: pieces.map((piece) => pieceText(piece, words)).join(', ') };
      },
      false,
    ),
    column('clear', words.clear, (window) =>
      planned(window, ({ plannedClear }) => ({
        text: `${dayText(plannedClear, window.zone)} ${clockText(plannedClear, window.zone)}`,
        sort: plannedClear,
      })),
    ),
    column('margin', words.margin, (window) =>
      planned(window, ({ marginMinutes, requiredMinutes }) => ({
        text: floatText(marginMinutes),
        sort: marginMinutes,
        ...(marginMinutes < requiredMinutes && { tone: 'harm' as const }),
      })),
    ),
    column('chance', words.chance, (window) =>
      planned(window, ({ simulation, chanceWanted }) => {
        const { onTime } = simulation.outlook;
        return {
          text: percentText(onTime.probability, simulation.runs),
          sort: onTime.probability,
          ...(chanceWanted !== null &&
            onTime.probability < chanceWanted && { tone: 'harm' as const }),
        };
      }),
    ),
    column(
      'verdict',
      words.verdict,
      (window) =>
        planned(window, ({ verdict }) => ({
          text: words.verdicts[verdict],
          ...(verdict !== 'held' && { tone: 'harm' as const }),
        })),
      false,
    ),
  ];
}

export function placementsBy(plan: Allocation | null): ReadonlyMap<string, readonly Placement[]> {
  const found = new Map<string, Placement[]>();
  for (const placement of plan?.placements ?? []) {
    if (placement.window === null) continue;
    const list = found.get(placement.window);
    if (list) list.push(placement);
    else found.set(placement.window, [placement]);
  }
  for (const list of found.values()) list.sort((a, b) => a.from - b.from || a.to - b.to);
  return found;
}

/** `T10`, or `T10 (3 units)`. */
export const pieceText = (
  { activity, units }: Placement,
  words: ResultStrings = defaultStrings,
): string => (units === undefined ? activity : words.pieceOf(activity, units));
