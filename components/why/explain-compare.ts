import { certificateSaid } from '../../src/engine/index.js';
import { minutesBetween } from '../../src/calendar/index.js';
import type { Allocation, KeyDateForecast } from '../../src/engine/types.js';
import type { CompareFigure } from '../shared/figure-ask-event.js';
import { floatText, momentText } from '../shared/format.js';
import { saidText } from '../shared/said.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** Programme float of a package before its key date, and what of it is shared. */
export function explainKeyDate(date: KeyDateForecast, zone: string): Explanation {
  const { compare, notKnown } = explainWords();
  return {
    title: compare.float(date.package),
    figure: date.floatMinutes === null ? notKnown : floatText(date.floatMinutes),
    tone: date.met ? 'good' : 'bad',
    sentence: date.floatMinutes === null ? compare.noFinish : compare.canSlip,
    rows: [
      ...dateRows(date, zone),
      ...date.sharesFloatWith.map((text): ExplanationRow => ({
        label: compare.sharesWith(text),
        figure: '',
        note: compare.spends,
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
  const { compare } = explainWords();
  const label = figures[figure];
  const [old, now] = [label.value(before, zone), label.value(after, zone)];
  return {
    title: compare.title[figure],
    figure: label.change(before, after),
    sentence: compare.sentence[figure],
    rows: [
      { label: compare.before, figure: old },
      { label: compare.after, figure: now, strong: true },
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
  const { compare } = explainWords();
  const [old, now] = [before, after].map((allocation) =>
    allocation.keyDates.find((date) => date.package === name),
  );
  const [was, is] = [old?.floatMinutes ?? null, now?.floatMinutes ?? null];
  const side = (told: string, date: KeyDateForecast | undefined): ExplanationRow[] =>
    date
      ? dateRows(date, zone).map((row) => ({ ...row, label: compare.side(told, row.label) }))
      : [{ label: compare.side(told, compare.noKeyDate), figure: '' }];
  return {
    title: compare.keyDateIn(name),
    figure: was === null || is === null ? compare.notComparable : signed(is - was),
    sentence: compare.moreIsBetter,
    rows: [...side(compare.before, old), ...side(compare.after, now)],
    links: [packageLink(name)],
  };
}

const qualityText = (plan: Allocation): string => saidText(certificateSaid(plan));

interface ToldFigure {
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
    value: (allocation, zone) =>
      allocation.finishesAt === null
        ? explainWords().none
        : momentText(allocation.finishesAt, zone),
    change: (before, after) =>
      before.finishesAt === null || after.finishesAt === null
        ? explainWords().compare.notComparable
        : signed(minutesBetween(before.finishesAt, after.finishesAt)),
    rows: () => [],
  },
  'windows-used': {
    ...counted((allocation) => allocation.windowsUsed),
    rows: (before, after) => [
      ...different('noLongerUsed', windowsOf(before), windowsOf(after), 'window'),
      ...different('usedNow', windowsOf(after), windowsOf(before), 'window'),
    ],
  },
  'dates-met': {
    ...counted((allocation) => allocation.keyDates.filter((date) => date.met).length),
    rows: (before, after) => {
      const met = (allocation: Allocation): string[] =>
        allocation.keyDates.filter((date) => date.met).map((date) => date.package);
      return [
        ...different('noLongerMet', met(before), met(after), 'package'),
        ...different('metNow', met(after), met(before), 'package'),
      ];
    },
  },
  'left-over': {
    ...counted((allocation) => allocation.unplaced.length),
    rows: (before, after) => {
      const left = (allocation: Allocation): string[] =>
        allocation.unplaced.map((each) => each.activity);
      return [
        ...different('placedNow', left(before), left(after), 'activity'),
        ...different('leftOverNow', left(after), left(before), 'activity'),
      ];
    },
  },
  quality: {
    value: (allocation) =>
      allocation.certificate.verified
        ? qualityText(allocation)
        : explainWords().compare.checkNotPassed(qualityText(allocation)),
    change: (before, after) => {
      const { same, other } = explainWords().compare;
      return qualityText(before) === qualityText(after) ? same : other;
    },
    rows: () => [],
  },
};

type Difference =
  | 'noLongerUsed'
  | 'usedNow'
  | 'noLongerMet'
  | 'metNow'
  | 'placedNow'
  | 'leftOverNow';

function different(
  label: Difference,
  has: readonly string[],
  lacks: readonly string[],
  to: 'window' | 'package' | 'activity',
): ExplanationRow[] {
  const { compare } = explainWords();
  return has
    .filter((text) => !lacks.includes(text))
    .map((text) => ({
      label: compare.side(compare[label], text),
      figure: '',
      place: { to, id: text },
    }));
}

function dateRows(date: KeyDateForecast, zone: string): ExplanationRow[] {
  const { compare, notKnown, notAllPlaced } = explainWords();
  return [
    { label: compare.due, figure: momentText(date.due, zone) },
    {
      label: compare.forecast,
      figure: date.forecast === null ? notAllPlaced : momentText(date.forecast, zone),
    },
    {
      label: compare.dueLess,
      figure: date.floatMinutes === null ? notKnown : floatText(date.floatMinutes),
      strong: true,
    },
    {
      label: compare.windowsBetween,
      figure: date.floatWindows === null ? notKnown : String(date.floatWindows),
    },
  ];
}

function packageLink(id: string): Explanation['links'][number] {
  return { text: explainWords().packageInSheet(id), place: { to: 'package', id } };
}

function signed(minutes: number): string {
  return minutes > 0 ? `+${floatText(minutes)}` : floatText(minutes);
}

function signedCount(count: number): string {
  return count > 0 ? `+${count}` : count < 0 ? `\u2212${-count}` : '0';
}
