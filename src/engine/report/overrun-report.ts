import { durationText } from '../../calendar/index.js';
import { joined, type Phrase } from '../../model/index.js';
import type { PriceResult } from '../../price/index.js';
import type { PriceAnswer } from '../types.js';
import { basisFacts, sumText, timeText, type ReportBasis } from './facts.js';
import type { Report, ReportFact, ReportTable } from './report.js';

/** What some overruns of a window cost, by head, with sums, sources, assumptions and what is left out. */
export function overrunReport(answer: PriceAnswer, basis: ReportBasis): Report {
  const { at } = answer;
  const overruns = answer.overruns.length > 0 ? answer.overruns : [at];
  const { window } = basis;
  const longest = overruns.reduce((a, b) => (b.overrunMinutes > a.overrunMinutes ? b : a));
  const money = `amounts in ${at.currency}, each row rounded once (${at.rounding})`;
  return {
    title: `Cost of a late handback of ${window.id}`,
    fileName: `overrun ${window.id}`,
    facts: [
      ...basisFacts(basis),
      ...overruns.map((overrun): ReportFact => ({
        label: `Handed back ${durationText(overrun.overrunMinutes)} late`,
        value: `${timeText(overrun.handbackAt, window)}: ${sumText(overrun.currency, overrun.total)}`,
      })),
      { label: 'Money', value: money },
      { label: 'Counted', value: at.basis === 'damages' ? 'delay damages' : 'actual loss' },
      ...expectedFacts(answer),
    ],
    tables: [
      headTable(overruns),
      howTable(overruns),
      trainTable(longest, basis),
      onSiteTable(longest, basis),
    ].filter((table) => table.rows.length > 0),
    lists: [
      { title: 'Cost nothing here', items: freeHeads(overruns, longest) },
      { title: 'Not priced', items: longest.notPriced },
      { title: 'Assumed', items: longest.notes },
    ].filter((item) => item.items.length > 0),
    cautions: at.cautions,
  };
}

function expectedFacts({ expected }: PriceAnswer): readonly ReportFact[] {
  if (!expected) return [];
  const { currency } = expected;
  return [
    {
      label: 'Expected cost of an overrun',
      value: `${sumText(currency, expected.expected)}, standard error ${expected.standardError}: the mean over ${expected.runs} simulated shifts, those on time included`,
    },
    {
      label: 'P50, P80, P95 cost of an overrun',
      value: `${[expected.p50, expected.p80, expected.p95].map((text) => sumText(currency, text)).join(', ')}: 50, 80 and 95 in 100 shifts cost no more`,
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
            row.counted ? 'yes' : 'no',
            row.source,
          ],
        ],
  );
  const totals = overruns.map((overrun) => overrun.total);
  return {
    title: 'By head of cost',
    columns: [
      'head of cost',
      ...overruns.map((overrun) => `${overrun.overrunMinutes} min late, ${overrun.currency}`),
      'counted',
      'source',
    ],
    figures: overruns.map((_, i) => i + 1),
    rows: [...rows, ['Total of what is counted', ...totals, '', '']],
  };
}

function howTable(overruns: readonly PriceResult[]): ReportTable {
  return {
    title: 'How each came about',
    columns: ['head of cost', 'minutes late', 'amount', 'how'],
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
    title: `Trains late or cancelled, ${result.overrunMinutes} min late`,
    columns: ['train', 'due', 'passes', 'minutes late', 'weight', 'charged minutes'],
    figures: [3, 4, 5],
    rows: result.trains.map((train) => [
      train.train,
      timeText(train.dueAt, window),
      train.cancelled ? 'cancelled' : timeText(train.leavesAt, window),
      String(train.minutesLate),
      String(train.weight),
      String(train.countedMinutes),
    ]),
  };
}

function onSiteTable(result: PriceResult, { window }: ReportBasis): ReportTable {
  return {
    title: 'Plant and people on site',
    columns: ['resource', 'number', 'called', 'last work', 'leaves', 'kept by an overrun', 'owed'],
    figures: [1, 6],
    rows: result.onSite.map((stay) => [
      stay.resource,
      String(stay.amount),
      timeText(stay.call, window),
      timeText(stay.lastWork, window),
      stay.kept ? 'at handback' : timeText(stay.leaves, window),
      joined([stay.kept ? 'yes' : 'no', stay.why], ': '),
      stay.owed,
    ]),
  };
}
