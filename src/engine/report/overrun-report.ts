import { joined, type Phrase } from '../../model/index.js';
import type { PriceResult } from '../../price/index.js';
import type { PriceAnswer } from '../types.js';
import { basisFacts, money, timeText, type ReportBasis } from './facts.js';
import type { Report, ReportFact, ReportTable } from './report.js';
import { cautionsSaid, say, word, words } from './say.js';

/** What some overruns of a window cost, by head, with sums, sources, assumptions and what is left out. */
export function overrunReport(answer: PriceAnswer, basis: ReportBasis): Report {
  const { at } = answer;
  const overruns = answer.overruns.length > 0 ? answer.overruns : [at];
  const { window } = basis;
  const longest = overruns.reduce((a, b) => (b.overrunMinutes > a.overrunMinutes ? b : a));
  return {
    title: say('overrun-title', { window: window.id }),
    fileName: say('overrun-file', { window: window.id }),
    facts: [
      ...basisFacts(basis),
      ...overruns.map((overrun): ReportFact => ({
        label: say('handed-back-late', { minutes: overrun.overrunMinutes }),
        value: joined(
          [timeText(overrun.handbackAt, window), money(overrun.currency, overrun.total)],
          ': ',
        ),
      })),
      {
        label: word('Money'),
        value: say('amounts-in', { currency: at.currency, rounding: at.rounding }),
      },
      {
        label: word('Counted'),
        value: word(at.basis === 'damages' ? 'delay damages' : 'actual loss'),
      },
      ...expectedFacts(answer),
    ],
    tables: [
      headTable(overruns),
      howTable(overruns),
      trainTable(longest, basis),
      onSiteTable(longest, basis),
    ].filter((table) => table.rows.length > 0),
    lists: [
      { title: word('Cost nothing here'), items: freeHeads(overruns, longest) },
      { title: word('Not priced'), items: longest.notPriced },
      { title: word('Assumed'), items: longest.notes },
    ].filter((item) => item.items.length > 0),
    cautions: cautionsSaid(at.cautions),
  };
}

function expectedFacts({ expected }: PriceAnswer): readonly ReportFact[] {
  if (!expected) return [];
  const { currency } = expected;
  const sum = (amount: string) => ({ amount, currency });
  return [
    {
      label: word('Expected cost of an overrun'),
      value: say('expected-cost', {
        sum: sum(expected.expected),
        error: expected.standardError,
        shifts: expected.runs,
      }),
    },
    {
      label: word('P50, P80, P95 cost of an overrun'),
      value: say('cost-percentiles', {
        sums: [expected.p50, expected.p80, expected.p95].map(sum),
      }),
    },
  ];
}

const free = (overruns: readonly PriceResult[], at: number): boolean =>
  overruns.every((overrun) => Number(overrun.rows[at]!.amount) === 0);

/** Heads as rows, lengths as columns; heads that cost nothing at any length stand in a list of their own. */
function headTable(overruns: readonly PriceResult[]): ReportTable {
  const rows = overruns[0]!.rows.flatMap((row, i) =>
    free(overruns, i)
      ? []
      : [
          [
            row.title,
            ...overruns.map((overrun) => overrun.rows[i]!.amount),
            word(row.counted ? 'yes' : 'no'),
            row.source,
          ],
        ],
  );
  const totals = overruns.map((overrun) => overrun.total);
  return {
    title: word('By head of cost'),
    columns: [
      word('head of cost'),
      ...overruns.map(({ overrunMinutes, currency }) =>
        say('minutes-late-in', { minutes: overrunMinutes, currency }),
      ),
      ...words('counted', 'source'),
    ],
    figures: overruns.map((_, i) => i + 1),
    rows: [...rows, [word('Total of what is counted'), ...totals, '', '']],
  };
}

function howTable(overruns: readonly PriceResult[]): ReportTable {
  return {
    title: word('How each came about'),
    columns: words('head of cost', 'minutes late', 'amount', 'how'),
    figures: [1, 2],
    rows: overruns[0]!.rows.flatMap((row, i) =>
      free(overruns, i)
        ? []
        : overruns.map((overrun) => [
            row.title,
            String(overrun.overrunMinutes),
            overrun.rows[i]!.amount,
            overrun.rows[i]!.formula,
          ]),
    ),
  };
}

/** Heads that cost nothing at any of the lengths, each with the reason at the longest. */
function freeHeads(overruns: readonly PriceResult[], longest: PriceResult): readonly Phrase[] {
  return longest.rows.flatMap((row, i) =>
    free(overruns, i) ? [joined([row.title, ': ', row.formula, '.'], '')] : [],
  );
}

/** Trains late or cancelled at the longest of the lengths. */
function trainTable(result: PriceResult, { window }: ReportBasis): ReportTable {
  return {
    title: say('trains-late-at', { minutes: result.overrunMinutes }),
    columns: words('train', 'due', 'passes', 'minutes late', 'weight', 'charged minutes'),
    figures: [3, 4, 5],
    rows: result.trains.map((train) => [
      train.train,
      timeText(train.dueAt, window),
      train.cancelled ? word('cancelled') : timeText(train.leavesAt, window),
      String(train.minutesLate),
      String(train.weight),
      String(train.countedMinutes),
    ]),
  };
}

function onSiteTable(result: PriceResult, { window }: ReportBasis): ReportTable {
  return {
    title: word('Plant and people on site'),
    columns: words(
      'resource',
      'number',
      'called',
      'last work',
      'leaves',
      'kept by an overrun',
      'owed',
    ),
    figures: [1, 6],
    rows: result.onSite.map((stay) => [
      stay.resource,
      String(stay.amount),
      timeText(stay.call, window),
      timeText(stay.lastWork, window),
      stay.kept ? word('at handback') : timeText(stay.leaves, window),
      joined([word(stay.kept ? 'yes' : 'no'), stay.why], ': '),
      stay.owed,
    ]),
  };
}
