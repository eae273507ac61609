import { joined } from '../../model/index.js';
import type { OptionsAnswer, PricedOption } from '../options/types.js';
import { basisFacts, sumText, timeText, type ReportBasis } from './facts.js';
import type { Report } from './report.js';

/** Ways to do the work of one window side by side, as a report. */
export function optionsReport(answer: OptionsAnswer, basis: ReportBasis): Report {
  const { window } = basis;
  const priced = answer.options.filter(
    (option): option is PricedOption => option.state === 'priced',
  );
  const cheapest = priced.find((option) => option.id === answer.cheapest);
  return {
    title: `Options for ${window.id}`,
    fileName: `options ${window.id}`,
    facts: [
      ...basisFacts(basis),
      {
        label: 'Least expected total',
        value: cheapest
          ? joined([cheapest.name, sumText(answer.currency, cheapest.expectedTotal)], ': ')
          : 'none could be priced',
      },
      {
        label: 'Simulated',
        value: `${answer.runs} shifts each, seed ${answer.seed}, the same draws for every option`,
      },
    ],
    tables: [
      {
        title: 'Options',
        columns: [
          'option',
          `expected total, ${answer.currency}`,
          'standard error',
          'P50 total',
          'P80 total',
          'P95 total',
          'on time, per cent',
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
        title: 'Against as planned',
        columns: [
          'option',
          `difference, ${answer.currency}`,
          'its standard error',
          'P80 handback',
          'what changes',
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
                  option.handbacks.map((each) => timeText(each.p80, window)).join('; '),
                  joined(option.changes, '; '),
                ],
              ],
        ),
      },
      {
        title: 'Parts of each total',
        columns: ['option', 'part', `amount, ${answer.currency}`, 'how', 'source'],
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
        title: 'When another would be cheaper',
        items: answer.breakEvens.map((breakEven) => breakEven.text),
      },
      {
        title: 'Not among them',
        items: answer.options.flatMap((option) =>
          option.state === 'priced' ? [] : [joined([option.name, option.reason], ': ')],
        ),
      },
      { title: 'Not priced', items: answer.notPriced },
      { title: 'Assumed', items: answer.notes },
    ].filter((item) => item.items.length > 0),
    cautions: answer.cautions,
  };
}
