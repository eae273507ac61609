import { minutesBetween, type Instant } from '../../src/calendar/index.js';
import { certificateSaid, type Allocation } from '../../src/engine/index.js';
import { floatText, momentText } from '../shared/format.js';
import { saidText } from '../shared/said.js';
import type { CompareFigure } from '../shared/figure-ask-event.js';
import type { Sense } from './change-mark.js';
import type { DatePair } from './changes.js';
import type { CompareStrings } from './strings.js';

export interface ChangeText {
  readonly sense: Sense;
  readonly text: string;
}

export interface SummaryRow {
  /** Which figure it is, for a reader who asks where it comes from. */
  readonly figure: CompareFigure;
  readonly name: string;
  readonly before: string;
  readonly after: string;
  readonly sense: Sense;
  readonly change: string;
  /** Whether the row speaks of the plan's quality, where a failed check is told. */
  readonly quality?: true;
}

const minus = '\u2212';

/** The figures of two plans with what changed in each. */
export function summaryRows(
  before: Allocation,
  after: Allocation,
  zone: string,
  words: CompareStrings,
): SummaryRow[] {
  const finish = (at: Instant | null) => (at === null ? words.noFinish : momentText(at, zone));
  const met = (allocation: Allocation) => allocation.keyDates.filter((date) => date.met).length;
  const dates = (allocation: Allocation) =>
    words.ofDates(String(met(allocation)), String(allocation.keyDates.length));
  const ended = finishChange(before.finishesAt, after.finishesAt, words);
  const quality = [before, after].map((plan) => saidText(certificateSaid(plan))) as [
    string,
    string,
  ];
  const counted = (
    figure: CompareFigure,
    name: string,
    old: number,
    now: number,
    good: 'more' | 'fewer',
  ) => {
    const { sense, text } = countChange(old, now, good, words);
    return { figure, name, before: String(old), after: String(now), sense, change: text };
  };
  return [
    {
      figure: 'finish',
      name: words.finish,
      before: finish(before.finishesAt),
      after: finish(after.finishesAt),
      sense: ended.sense,
      change: ended.text,
    },
    counted('windows-used', words.windowsUsed, before.windowsUsed, after.windowsUsed, 'fewer'),
    {
      ...counted('dates-met', words.datesMet, met(before), met(after), 'more'),
      before: dates(before),
      after: dates(after),
    },
    counted('left-over', words.leftOver, before.unplaced.length, after.unplaced.length, 'fewer'),
    {
      figure: 'quality',
      name: words.quality,
      before: quality[0],
      after: quality[1],
      sense: 'even',
      change: quality[0] === quality[1] ? words.same : words.other,
      quality: true,
    },
  ];
}

/** What became of a key date: of its float where both plans have one. */
export function dateChange({ before, after }: DatePair, words: CompareStrings): ChangeText {
  if (!before) return { sense: 'even', text: words.dateAdded };
  if (!after) return { sense: 'even', text: words.dateRemoved };
  const old = before.floatMinutes;
  const now = after.floatMinutes;
  if (old === null && now === null) return { sense: 'even', text: words.same };
  if (old === null) return { sense: 'better', text: words.nowAllPlaced };
  if (now === null) return { sense: 'worse', text: words.noLongerAllPlaced };
  if (now === old) return { sense: 'even', text: words.same };
  const word = now > old ? words.moreFloat : words.lessFloat;
  return { sense: now > old ? 'better' : 'worse', text: `${signed(now - old)} ${word}` };
}

/** `float 3 d 4 h, `; empty where the plan knows of none. */
export function floatShown(minutes: number | null, words: CompareStrings): string {
  return minutes === null ? '' : `${words.float(floatText(minutes))}, `;
}

function finishChange(old: Instant | null, now: Instant | null, words: CompareStrings): ChangeText {
  if (old === now) return { sense: 'even', text: words.same };
  if (old === null) return { sense: 'better', text: words.nowFinishes };
  if (now === null) return { sense: 'worse', text: words.noLongerFinishes };
  const later = minutesBetween(old, now);
  const word = later > 0 ? words.later : words.earlier;
  return { sense: later > 0 ? 'worse' : 'better', text: `${signed(later)} ${word}` };
}

function countChange(
  old: number,
  now: number,
  good: 'more' | 'fewer',
  words: CompareStrings,
): ChangeText {
  if (old === now) return { sense: 'even', text: words.same };
  const direction = now > old ? 'more' : 'fewer';
  const sign = now > old ? '+' : minus;
  return {
    sense: direction === good ? 'better' : 'worse',
    text: `${sign}${Math.abs(now - old)} ${words[direction]}`,
  };
}

function signed(minutes: number): string {
  return minutes > 0 ? `+${floatText(minutes)}` : floatText(minutes);
}
