import type { OptionsAnswer, PricedOption } from '../options/types.js';
import { basisFacts, sumText, timeText, type ReportBasis } from './facts.js';
import type { Report } from './report.js';

/** Ways to do the work of one window side by side, as a report. */
export function optionsReport(answer: OptionsAnswer, basis: ReportBasis): Report {
  const { window } = basis;
  const priced = answer.options.filter((one): one is PricedOption => one.state === 'priced');
  const cheapest = priced.find((one) => one.id === answer.cheapest);
  return {
    title: `Options for ${window.id}`,
    fileName: `options ${window.id}`,
    facts: [
      ...basisFacts(basis),
      {
        label: 'Least expected total',
        value: cheapest
          ? `${cheapest.name}: ${sumText(answer.currency, cheapest.expectedTotal)}`
          : 'none could be priced',
      },
      {
        label: 'Simulated',
        value: `${answer.runs} shifts each, seed ${answer.seed}, the same luck for every option`,
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
        rows: priced.map((one) => [
          one.name,
          one.expectedTotal,
          one.standardError,
          one.p50Total,
          one.p80Total,
          one.p95Total,
          one.handbacks.map((each) => (100 * each.onTime.probability).toFixed(1)).join('; '),
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
        rows: priced.flatMap((one) =>
          one.verdict === 'the reference'
            ? []
            : [
                [
                  one.name,
                  one.difference,
                  one.differenceError,
                  one.handbacks.map((each) => timeText(each.p80, window)).join('; '),
                  one.changes.join('; '),
                ],
              ],
        ),
      },
      {
        title: 'Parts of each total',
        columns: ['option', 'part', `amount, ${answer.currency}`, 'how', 'source'],
        figures: [2],
        rows: priced.flatMap((one) =>
          one.parts.map((part) => [one.name, part.what, part.amount, part.formula, part.source]),
        ),
      },
    ],
    lists: [
      { title: 'When another would be cheaper', items: answer.breakEvens.map((one) => one.text) },
      {
        title: 'Not among them',
        items: answer.options.flatMap((one) =>
          one.state === 'priced' ? [] : [`${one.name}: ${one.reason}`],
        ),
      },
      { title: 'Not priced', items: answer.notPriced },
      { title: 'Assumed', items: answer.notes },
    ].filter((one) => one.items.length > 0),
    cautions: answer.cautions,
  };
}
