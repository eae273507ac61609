import { certificateWords } from '../../src/engine/index.js';
import { minutesBetween } from '../../src/calendar/index.js';
import type { Allocation, KeyDateForecast } from '../../src/engine/types.js';
import type { CompareFigure } from '../shared/figure-ask-event.js';
import { floatText, momentText } from '../shared/format.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** Programme float of a package before its key date, and what of it is shared. */
export function explainKeyDate(date: KeyDateForecast, zone: string): Explanation {
  return {
    title: `Programme float of ${date.package}`,
    figure: date.floatMinutes === null ? 'not known' : floatText(date.floatMinutes),
    tone: date.met ? 'good' : 'bad',
    sentence:
      date.floatMinutes === null
        ? 'Some of the package is not placed, so it has no finish to count from.'
        : 'How far the package can slip before its key date is missed. It is neither usable time nor handback margin.',
    rows: [
      ...dateRows(date, zone),
      ...date.sharesFloatWith.map((text): ExplanationRow => ({
        label: `Shares this float with ${text}`,
        figure: '',
        note: 'what one of them spends the other may miss',
        place: { to: 'package', id: text },
      })),
    ],
    links: [packageLink(date.package)],
  };
}

/** One figure of two plans: its value in each, and what it is made of. */
export function explainCompareFigure(
  before: Allocation,
  after: Allocation,
  figure: CompareFigure,
  zone: string,
): Explanation {
  const label = figures[figure];
  const [old, now] = [label.value(before, zone), label.value(after, zone)];
  return {
    title: label.title,
    figure: label.change(before, after),
    sentence: label.sentence,
    rows: [
      { label: 'Before', figure: old },
      { label: 'After', figure: now, strong: true },
      ...label.rows(before, after),
    ],
    links: [],
  };
}

/** What became of the float before one key date between two plans. */
export function explainCompareKeyDate(
  before: Allocation,
  after: Allocation,
  name: string,
  zone: string,
): Explanation {
  const [old, now] = [before, after].map((allocation) =>
    allocation.keyDates.find((date) => date.package === name),
  );
  const [was, is] = [old?.floatMinutes ?? null, now?.floatMinutes ?? null];
  const side = (told: string, date: KeyDateForecast | undefined): ExplanationRow[] =>
    date
      ? dateRows(date, zone).map((row) => ({ ...row, label: `${told}: ${row.label}` }))
      : [{ label: `${told}: no key date`, figure: '' }];
  return {
    title: `Key date of ${name} in two plans`,
    figure: was === null || is === null ? 'not comparable' : signed(is - was),
    sentence: 'Programme float after less programme float before; more is better.',
    rows: [...side('Before', old), ...side('After', now)],
    links: [packageLink(name)],
  };
}

interface ToldFigure {
  readonly title: string;
  readonly sentence: string;
  value(allocation: Allocation, zone: string): string;
  change(before: Allocation, after: Allocation): string;
  rows(before: Allocation, after: Allocation): ExplanationRow[];
}

const counted = (
  count: (allocation: Allocation) => number,
): Pick<ToldFigure, 'value' | 'change'> => ({
  value: (allocation) => String(count(allocation)),
  change: (before, after) => signedCount(count(after) - count(before)),
});
const windowsOf = (allocation: Allocation): string[] => [
  ...new Set(allocation.placements.flatMap((each) => each.window ?? [])),
];

const figures: Readonly<Record<CompareFigure, ToldFigure>> = {
  finish: {
    title: 'Finish of two plans',
    sentence: 'The end of the last piece of work; none while work is left over.',
    value: (allocation, zone) =>
      allocation.finishesAt === null ? 'none' : momentText(allocation.finishesAt, zone),
    change: (before, after) =>
      before.finishesAt === null || after.finishesAt === null
        ? 'not comparable'
        : signed(minutesBetween(before.finishesAt, after.finishesAt)),
    rows: () => [],
  },
  'windows-used': {
    title: 'Windows used by two plans',
    sentence: 'Windows in which any work is placed.',
    ...counted((allocation) => allocation.windowsUsed),
    rows: (before, after) => [
      ...different('No longer used', windowsOf(before), windowsOf(after), 'window'),
      ...different('Used now', windowsOf(after), windowsOf(before), 'window'),
    ],
  },
  'dates-met': {
    title: 'Key dates met by two plans',
    sentence: 'Packages that are forecast to finish by their key date.',
    ...counted((allocation) => allocation.keyDates.filter((date) => date.met).length),
    rows: (before, after) => {
      const met = (allocation: Allocation): string[] =>
        allocation.keyDates.filter((date) => date.met).map((date) => date.package);
      return [
        ...different('No longer met', met(before), met(after), 'package'),
        ...different('Met now', met(after), met(before), 'package'),
      ];
    },
  },
  'left-over': {
    title: 'Work left over by two plans',
    sentence: 'Activities that found no place in any window.',
    ...counted((allocation) => allocation.unplaced.length),
    rows: (before, after) => {
      const left = (allocation: Allocation): string[] =>
        allocation.unplaced.map((each) => each.activity);
      return [
        ...different('Placed now', left(before), left(after), 'activity'),
        ...different('Left over now', left(after), left(before), 'activity'),
      ];
    },
  },
  quality: {
    title: 'How good two plans are',
    sentence:
      'What is proved of each plan, aim by aim; a plan that the separate check did not pass is not to be used.',
    value: (allocation) =>
      `${certificateWords(allocation)}${allocation.certificate.verified ? '' : ' (check not passed)'}`,
    change: (before, after) =>
      certificateWords(before) === certificateWords(after) ? 'same' : 'other',
    rows: () => [],
  },
};

function different(
  label: string,
  has: readonly string[],
  lacks: readonly string[],
  to: 'window' | 'package' | 'activity',
): ExplanationRow[] {
  return has
    .filter((text) => !lacks.includes(text))
    .map((text) => ({ label: `${label}: ${text}`, figure: '', place: { to, id: text } }));
}

function dateRows(date: KeyDateForecast, zone: string): ExplanationRow[] {
  return [
    { label: 'Due', figure: momentText(date.due, zone) },
    {
      label: 'Forecast finish',
      figure: date.forecast === null ? 'not all placed' : momentText(date.forecast, zone),
    },
    {
      label: 'Float: due less forecast',
      figure: date.floatMinutes === null ? 'not known' : floatText(date.floatMinutes),
      strong: true,
    },
    {
      label: 'Windows between them that could take some of it',
      figure: date.floatWindows === null ? 'not known' : String(date.floatWindows),
    },
  ];
}

function packageLink(id: string): Explanation['links'][number] {
  return { text: `Package ${id} in the sheet`, place: { to: 'package', id } };
}

function signed(minutes: number): string {
  return minutes > 0 ? `+${floatText(minutes)}` : floatText(minutes);
}

function signedCount(count: number): string {
  return count > 0 ? `+${count}` : count < 0 ? `\u2212${-count}` : '0';
}
