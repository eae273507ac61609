import { durationText } from '../../src/calendar/index.js';
import type { ExpectedCost, PriceAnswer, PriceResult } from '../../src/engine/types.js';

import { moneyText } from '../overrun/money-text.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';
import { numberText } from '../shared/format.js';
import { percentText } from '../shared/chance.js';
import { saidText } from '../shared/said.js';

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
  const { price: words } = explainWords();
  const row = price.rows.find((item) => item.code === code);
  if (!row) throw new RangeError(`the price has no row "${code}"`);
  return {
    title: words.row(saidText(row.title), price.window, durationText(price.overrunMinutes)),
    figure: money(row.amount, price),
    sentence: `${ended(saidText(row.formula))} ${
      row.counted ? words.counted : words.notCounted
    } ${words.rounding(price.rounding)}`,
    rowsTitle: words.wentIn,
    rows: row.inputs.map((input): ExplanationRow => ({
      label: saidText(input.name),
      figure: [input.value, input.unit].map(saidText).join(' ').trim(),
    })),
    rule: { name: saidText(row.title), text: saidText(row.formula), source: saidText(row.source) },
    links: windowLink(price.window),
  };
}

/** The total of an overrun: its counted heads, and what is shown but not counted. */
export function explainCostTotal(price: PriceResult): Explanation {
  const { price: words } = explainWords();
  const basis = price.basis === 'damages' ? words.damages : words.loss;
  return {
    title: words.total(durationText(price.overrunMinutes), price.window),
    figure: money(price.total, price),
    sentence: words.sum(basis),
    rows: [
      ...price.rows.map((row): ExplanationRow => ({
        label: saidText(row.title),
        figure: money(row.amount, price),
        note: row.counted ? saidText(row.formula) : words.notCountedRow(saidText(row.formula)),
      })),
      { label: words.countedTotal, figure: money(price.total, price), strong: true },
      ...[...price.notPriced, ...price.notes].map((phrase): ExplanationRow => ({
        label: saidText(phrase),
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
  const { price: words, chance } = explainWords();
  const { expected, at, curve } = answer;
  if (!expected) throw new RangeError('the price was worked out without a simulation');
  const figures: Readonly<Record<50 | 80 | 95, string>> = {
    50: expected.p50,
    80: expected.p80,
    95: expected.p95,
  };
  return {
    title: percent === null ? words.expectedOf(at.window) : words.pOf(percent, at.window),
    figure: money(percent === null ? expected.expected : figures[percent], at),
    sentence: percent === null ? words.mean : words.least(percent),
    rows: [
      { label: chance.runs, figure: numberText(expected.runs) },
      {
        label: words.expected,
        figure: money(expected.expected, at),
        note: words.error(money(expected.standardError, at)),
        strong: percent === null,
      },
      { label: words.p(50), figure: money(expected.p50, at), strong: percent === 50 },
      { label: words.p(80), figure: money(expected.p80, at), strong: percent === 80 },
      { label: words.p(95), figure: money(expected.p95, at), strong: percent === 95 },
      ...stepRows(expected, curve.steps),
    ],
    links: windowLink(at.window),
  };
}

/** The steps of the curve that any run reached, with how often. */
function stepRows(expected: ExpectedCost, rises: PriceAnswer['curve']['steps']): ExplanationRow[] {
  const { price: words } = explainWords();
  return expected.steps
    .filter((step) => step.counted && step.chance > 0)
    .map((step): ExplanationRow => {
      const rise = rises.find((each) => each.atMinute === step.atMinute && each.code === step.code);
      return {
        label: words.step(saidText(step.name), durationText(step.atMinute)),
        figure: percentText(step.chance, expected.runs),
        note: rise ? words.gains(moneyText(rise.rise)) : words.reach,
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
  return [{ text: explainWords().windowInSheet(window), place: { to: 'window', id: window } }];
}
