import { joined } from '../../model/index.js';
import type { OptionsAnswer, PricedOption } from '../options/types.js';
import { basisFacts, inCurrency, money, timeText, type ReportBasis } from './facts.js';
import type { Report } from './report.js';
import { cautionsSaid, say, word, words } from './say.js';

/** Ways to do the work of one window side by side, as a report. */
export function optionsReport(answer: OptionsAnswer, basis: ReportBasis): Report {
  const { window } = basis;
  const { currency } = answer;
  const priced = answer.options.filter(
    (option): option is PricedOption => option.state === 'priced',
  );
  const cheapest = priced.find((option) => option.id === answer.cheapest);
  return {
    title: say('options-title', { window: window.id }),
    fileName: say('options-file', { window: window.id }),
    facts: [
      ...basisFacts(basis),
      {
        label: word('Least expected total'),
        value: cheapest
          ? joined([cheapest.name, money(currency, cheapest.expectedTotal)], ': ')
          : word('none could be priced'),
      },
      {
        label: word('Simulated'),
        value: say('simulated-shifts', { shifts: answer.runs, seed: answer.seed }),
      },
    ],
    tables: [
      {
        title: word('Options'),
        columns: [
          word('option'),
          inCurrency('expected total', currency),
          ...words('standard error', 'P50 total', 'P80 total', 'P95 total', 'on time, per cent'),
        ],
        figures: [1, 2, 3, 4, 5, 6],
        rows: priced.map((option) => [
          option.name,
          option.expectedTotal,
          option.standardError,
          option.p50Total,
          option.p80Total,
          option.p95Total,
          option.handbacks.map((each) => (100 * each.onTime.probability).toFixed(1)).join('; '),
        ]),
      },
      {
        title: word('Against as planned'),
        columns: [
          word('option'),
          inCurrency('difference', currency),
          ...words('its standard error', 'P80 handback', 'what changes'),
        ],
        figures: [1, 2],
        rows: priced.flatMap((option) =>
          option.verdict === 'the reference'
            ? []
            : [
                [
                  option.name,
                  option.difference,
                  option.differenceError,
                  joined(
                    option.handbacks.map((each) => timeText(each.p80, window)),
                    '; ',
                  ),
                  joined(option.changes, '; '),
                ],
              ],
        ),
      },
      {
        title: word('Parts of each total'),
        columns: [
          ...words('option', 'part'),
          inCurrency('amount', currency),
          ...words('how', 'source'),
        ],
        figures: [2],
        rows: priced.flatMap((option) =>
          option.parts.map((part) => [
            option.name,
            part.what,
            part.amount,
            part.formula,
            part.source,
          ]),
        ),
      },
    ],
    lists: [
      {
        title: word('When another would be cheaper'),
        items: answer.breakEvens.map((breakEven) => breakEven.text),
      },
      {
        title: word('Not among them'),
        items: answer.options.flatMap((option) =>
          option.state === 'priced' ? [] : [joined([option.name, option.reason], ': ')],
        ),
      },
      { title: word('Not priced'), items: answer.notPriced },
      {
        title: word('Assumed'),
        items: [
          ...answer.notes,
          ...priced.flatMap(({ name, notes }) => notes.map((note) => joined([name, note], ': '))),
        ],
      },
    ].filter((item) => item.items.length > 0),
    cautions: cautionsSaid(answer.cautions),
  };
}
