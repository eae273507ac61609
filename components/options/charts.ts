import type {
  OptionPart,
  OptionsAnswer,
  PricedOption,
  StopOutlook,
} from '../../src/engine/index.js';
import { saidText } from '../shared/said.js';
import type { ChartSeries, ChartShown } from '../chart/shown.js';
import { shortMoney, sumText } from '../overrun/money-text.js';
import type { OptionsStrings } from './strings.js';

const partsInOrder: readonly OptionPart['part'][] = [
  'overrun',
  'key-dates',
  're-booking',
  'booking',
  'plant',
];
const toneOf: Readonly<Record<OptionPart['part'], number>> = {
  overrun: 1,
  'key-dates': 3,
  're-booking': 5,
  booking: 0,
  plant: 7,
};

/** Each priced option as a bar of its parts, with the P50 to P95 range of its total. */
export function optionsChart(answer: OptionsAnswer, words: OptionsStrings): ChartShown {
  const priced = answer.options.filter(
    (option): option is PricedOption => option.state === 'priced',
  );
  const sum = (option: PricedOption, part: OptionPart['part']): number =>
    option.parts
      .filter((each) => each.part === part)
      .reduce((total, each) => total + Number(each.amount), 0);
  const text = (value: number): string => sumText(value.toFixed(2), answer.currency);
  const shown = partsInOrder.filter((part) => priced.some((option) => sum(option, part) !== 0));
  return {
    title: words.optionsPicture,
    points: priced.map((option) => saidText(option.name)),
    pointTitle: words.option,
    valueTitle: words.cost(answer.currency),
    series: shown.map((part, i): ChartSeries => ({
      name: words.parts[part],
      kind: 'bar',
      values: priced.map((option) => sum(option, part)),
      tone: toneOf[part],
      stack: 'total',
      // The last part ends at the total, so the range is drawn once, with it.
      ...(i === shown.length - 1 && {
        low: priced.map((option) => Number(option.p50Total)),
        high: priced.map((option) => Number(option.p95Total)),
      }),
    })),
    lying: true,
    pointText: String,
    valueText: text,
    axisText: shortMoney,
    atPoint: (i) => {
      const option = priced[i]!;
      return `${words.total} ${sumText(option.expectedTotal, answer.currency)}, P50 ${sumText(option.p50Total, answer.currency)}, P95 ${sumText(option.p95Total, answer.currency)}`;
    },
  };
}

/** Expected cost of stopping after each number of units: the overrun, and stacked on it the re-booking of the rest. */
export function stopChart(
  stop: StopOutlook,
  { currency }: OptionsAnswer,
  words: OptionsStrings,
): ChartShown {
  const text = (value: number): string => sumText(value.toFixed(2), currency);
  return {
    title: words.stopPicture,
    points: stop.rows.map((row) =>
      row.units === stop.bestUnits ? `${row.units} (${words.best})` : String(row.units),
    ),
    pointTitle: words.units,
    valueTitle: words.cost(currency),
    series: [
      {
        name: words.parts.overrun,
        kind: 'bar',
        values: stop.rows.map((row) => Number(row.expectedOverrunCost)),
        tone: toneOf.overrun,
        stack: 'total',
      },
      {
        name: words.parts['re-booking'],
        kind: 'bar',
        values: stop.rows.map((row) => Number(row.reBooking)),
        tone: toneOf['re-booking'],
        stack: 'total',
      },
    ],
    pointText: (point) => `${point} ${words.units.toLowerCase()}`,
    valueText: text,
    axisText: shortMoney,
    atPoint: (i) => text(Number(stop.rows[i]!.expectedTotal)),
  };
}
