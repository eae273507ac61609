import { durationText } from '../../src/calendar/index.js';
import type { ExpectedCost, PriceAnswer, PriceResult } from '../../src/engine/types.js';

import { moneyText } from '../overrun/money-text.js';
import type { Explanation, ExplanationRow } from './explanation.js';
import { numberText } from '../shared/format.js';
import { percentText } from '../shared/chance.js';

/** The overrun asked about, or one of those side by side. @throws {RangeError} When the answer has none of so many minutes. */
export function overrunOf(answer: PriceAnswer, minutes: number | undefined): PriceResult {
  const found =
    minutes === undefined
      ? answer.at
      : answer.overruns.find((overrun) => overrun.overrunMinutes === minutes);
  if (!found) throw new RangeError(`the answer has no overrun of ${minutes} minutes`);
  return found;
}

/** One head of cost: its formula, each number in it and its source. */
export function explainCostRow(price: PriceResult, code: string): Explanation {
  const row = price.rows.find((item) => item.code === code);
  if (!row) throw new RangeError(`the price has no row "${code}"`);
  return {
    title: `${row.title}, window ${price.window}, ${durationText(price.overrunMinutes)} over`,
    figure: money(row.amount, price),
    sentence: `${ended(row.formula)} ${
      row.counted
        ? 'It is part of the total.'
        : 'It is not part of the total: it is the alternative to what is counted.'
    } Rounding: ${price.rounding}.`,
    rowsTitle: 'What went into it',
    rows: row.inputs.map((input): ExplanationRow => ({
      label: input.name,
      figure: input.unit === '' ? input.value : `${input.value} ${input.unit}`,
    })),
    rule: { name: row.title, text: row.formula, source: row.source },
    links: windowLink(price.window),
  };
}

/** The total of an overrun: its counted heads, and what is shown but not counted. */
export function explainCostTotal(price: PriceResult): Explanation {
  const basis =
    price.basis === 'damages'
      ? 'Damages are counted in place of the loss they stand for.'
      : 'The actual loss is counted, not damages.';
  return {
    title: `Cost of ${durationText(price.overrunMinutes)} over, window ${price.window}`,
    figure: money(price.total, price),
    sentence: `The sum of the counted heads, each rounded once. ${basis} Prices are indicative; the contract governs.`,
    rows: [
      ...price.rows.map((row): ExplanationRow => ({
        label: row.title,
        figure: money(row.amount, price),
        note: row.counted ? row.formula : `not counted: ${row.formula}`,
      })),
      { label: 'Total of what is counted', figure: money(price.total, price), strong: true },
      ...[...price.notPriced, ...price.notes].map((text): ExplanationRow => ({
        label: text,
        figure: '',
      })),
    ],
    links: windowLink(price.window),
  };
}

/** What an overrun costs on average over the simulated runs, or what so many in a hundred do not exceed. */
export function explainExpectedCost(
  answer: PriceAnswer,
  percent: 50 | 80 | 95 | null,
): Explanation {
  const { expected, at, curve } = answer;
  if (!expected) throw new RangeError('the price was worked out without a simulation');
  const figures: Readonly<Record<50 | 80 | 95, string>> = {
    50: expected.p50,
    80: expected.p80,
    95: expected.p95,
  };
  return {
    title: `${percent === null ? 'Expected' : `P${percent}`} cost of an overrun, window ${at.window}`,
    figure: money(percent === null ? expected.expected : figures[percent], at),
    sentence:
      percent === null
        ? 'The mean over the simulated runs, each priced by its own overrun on the cost curve; a run on time costs what no overrun costs.'
        : `The least cost that at least ${percent} in 100 simulated runs do not exceed.`,
    rows: [
      { label: 'Runs', figure: numberText(expected.runs) },
      {
        label: 'Expected cost',
        figure: money(expected.expected, at),
        note: `standard error \u00b1${money(expected.standardError, at)}`,
        strong: percent === null,
      },
      { label: 'P50 cost', figure: money(expected.p50, at), strong: percent === 50 },
      { label: 'P80 cost', figure: money(expected.p80, at), strong: percent === 80 },
      { label: 'P95 cost', figure: money(expected.p95, at), strong: percent === 95 },
      ...stepRows(expected, curve.steps),
    ],
    links: windowLink(at.window),
  };
}

/** The steps of the curve that any run reached, with how often. */
function stepRows(expected: ExpectedCost, rises: PriceAnswer['curve']['steps']): ExplanationRow[] {
  return expected.steps
    .filter((step) => step.counted && step.chance > 0)
    .map((step): ExplanationRow => {
      const rise = rises.find((each) => each.atMinute === step.atMinute && each.code === step.code);
      return {
        label: `${step.name}, from ${durationText(step.atMinute)} over`,
        figure: percentText(step.chance, expected.runs),
        note: `of the runs reach it${rise ? `; the total gains ${moneyText(rise.rise)} there` : ''}`,
      };
    });
}

function money(amount: string, { currency }: { readonly currency: string }): string {
  return `${moneyText(amount)} ${currency}`;
}

function ended(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

function windowLink(window: string): Explanation['links'] {
  return [{ text: `Window ${window} in the sheet`, place: { to: 'window', id: window } }];
}
