// Words for what is wrong with columns, and the order of day and month in their dates. They are loaded when they are first shown.
import type { ProblemWords } from '../../model/index.js';

const theOrder =
  'Write dates as 2027-03-28, or say the order: --dates day-first or --dates month-first, or choose it for the file.';

const listed = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');
const or = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)!}`;
const datesLike = (count: number): string =>
  `${count} ${count === 1 ? 'date' : 'dates'} such as this`;

/** Dates that nothing decides: how many windows each order would make odd. */
export interface Guessed {
  readonly dates: number;
  /** By day first, and by month first. */
  readonly odd: number;
  readonly oddOther: number;
  readonly longDays: number;
}
const guessed =
  (order: string) =>
  ({ dates, odd, oddOther, longDays }: Guessed): ProblemWords => {
    const because =
      odd > oddOther
        ? `, since day first would make ${odd} of them end before they start or last more than ${longDays} days`
        : odd < oddOther
          ? ', since month first would make windows of many days'
          : ', which is usual here';
    return [
      `${datesLike(dates)} can be read two ways and nothing else says which; they are read ${order}${because}.`,
      theOrder,
    ];
  };

export const headingProblems = {
  'heading-not-read': ({
    name,
    other,
    field,
    cells,
    quoted,
  }: {
    readonly name: string;
    readonly other: string;
    readonly field: string;
    readonly cells: readonly string[];
    readonly quoted: string;
  }): ProblemWords => [
    `"${name}" is not read, and "${other}" is, though both may hold the ${field}. Lines, isolation and status decide who is in danger. It holds ${listed(cells)}.`,
    `Say which is meant: --columns "${quoted}=${field}", or, where it is meant to stay unread, --columns "${quoted}=".`,
  ],
  'mapped-column-missing/chosen': ({
    heading,
    field,
    files,
  }: {
    readonly heading: string;
    readonly field: string;
    readonly files: readonly string[];
  }): ProblemWords => [
    `"${heading}" was chosen for "${field === '' ? 'not read' : field}", but ${files.length === 0 ? 'no table that was given' : files.join(', ')} has no such column.`,
    'Write the heading as the file has it.',
  ],
  'column-missing': ({
    kind,
    field,
    dated,
  }: {
    readonly kind: string;
    readonly field: string;
    readonly dated: string | undefined;
  }): ProblemWords => [
    `A ${kind} table needs a column "${field}".${dated === undefined ? '' : ` "${dated}" holds dates: perhaps it is that one.`}`,
    `Add it, or rename the column that holds it to "${field}".`,
  ],
  'column-missing/perhaps': ({
    kind,
    field,
    maybe,
    quoted,
  }: {
    readonly kind: string;
    readonly field: string;
    readonly maybe: string;
    readonly quoted: string;
  }): ProblemWords => [
    `A ${kind} table needs a column "${field}". Perhaps it is "${maybe}".`,
    `Add it, rename that column to "${field}", or say what it holds: --columns "${quoted}=${field}".`,
  ],
  'column-twice': ({
    names,
    field,
  }: {
    readonly names: readonly string[];
    readonly field: string;
  }): ProblemWords => [
    `${names.map((name) => `"${name}"`).join(' and ')} all answer to "${field}", so none is used.`,
    `Rename or delete all but one, or choose the column for "${field}" by hand.`,
  ],
  'mapped-column-missing': ({
    heading,
    field,
  }: {
    readonly heading: string;
    readonly field: string;
  }): ProblemWords => [
    `"${heading}" was chosen for "${field}", but there is no such column or field.`,
    'Choose again.',
  ],
  'dates-month-first': (): ProblemWords => [
    'All dates of this file are read month first: some have a second number above 12, and none a first.',
    'Write dates as 2027-03-28 to leave no doubt.',
  ],
  'dates-in-two-orders': ({ dayFirst }: { readonly dayFirst: readonly string[] }): ProblemWords => [
    `Its dates are month first, as some have a second number above 12; those of ${dayFirst.join(' and ')} are day first.`,
    theOrder,
  ],
  'dates-read-two-ways': ({
    dates,
    dayFirst,
    monthFirst,
  }: {
    readonly dates: number;
    readonly dayFirst: readonly string[];
    readonly monthFirst: readonly string[];
  }): ProblemWords => [
    `${datesLike(dates)} can be read day first, as in ${dayFirst.join(' and ')}, or month first, as in ${monthFirst.join(' and ')}.`,
    theOrder,
  ],
  'dates-month-first/told': ({
    dates,
    monthFirst,
  }: {
    readonly dates: number;
    readonly monthFirst: readonly string[];
  }): ProblemWords => [
    `${datesLike(dates)} can be read two ways and are read month first, as in ${monthFirst.join(' and ')}.`,
    theOrder,
  ],
  'date-far-off': ({
    text,
    away,
    maybe,
  }: {
    readonly text: string;
    readonly away: number;
    readonly maybe: number | undefined;
  }): ProblemWords => [
    `${text} is ${away} years from the windows of the plan.${maybe === undefined ? '' : ` Meant ${maybe}?`}`,
    'Correct the year, or leave it where it is meant so.',
  ],
  'heading-not-read/lacking': ({
    name,
    quoted,
    lacking,
    likely,
    field,
    cells,
  }: {
    readonly name: string;
    readonly quoted: string;
    readonly lacking: readonly string[];
    readonly likely: readonly string[];
    readonly field: string;
    readonly cells: readonly string[];
  }): ProblemWords => {
    const maybe = likely.length > 0 ? ` Did you mean ${or(likely)}?` : '';
    const holds = cells.length > 0 ? ` It holds ${listed(cells)}.` : '';
    const asIs = `--columns "${quoted}="`;
    return [
      `"${name}" is not read, and the table has no column for ${or(lacking)}. Lines, isolation and status decide who is in danger.${maybe}${holds}`,
      likely.length > 0
        ? `Rename it "${field}", or say what it holds: --columns "${quoted}=${field}". Where it is meant to stay unread: ${asIs}.`
        : `Where it is meant to stay unread, say so: ${asIs}. Where it holds ${or(lacking)}, rename it so, or say --columns "${quoted}=${field}".`,
    ];
  },
  'dates-day-first': guessed('day first'),
  'dates-month-first/guessed': guessed('month first'),
};
