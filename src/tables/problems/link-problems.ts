// Words for what is wrong with names that rows have for each other, and windows among their like. They are loaded when they are first shown.
import type { ProblemWords } from '../../model/index.js';

const aWindow = 'Name a window of the file, or leave the cell blank.';

const near = (known: string | undefined): string =>
  known === undefined ? '' : ` There is "${known}".`;
const lengthText = (days: number): string =>
  days >= 730 ? `${Math.round(days / 365.25)} years` : `${days} days`;

export const linkProblems = {
  'window-too-long': ({
    days,
    longestDays,
    maybe,
  }: {
    readonly days: number;
    readonly longestDays: number;
    readonly maybe: number | undefined;
  }): ProblemWords => [
    `The window is ${lengthText(days)} long; at most ${longestDays} days are planned as one.${maybe === undefined ? '' : ` Meant ${maybe}?`}`,
    'Correct the start or the end, or divide it into windows of their own.',
  ],
  'window-long': ({ days }: { readonly days: number }): ProblemWords => [
    `The window is ${lengthText(days)} long.`,
    'Correct the start or the end, or leave it where it is meant so.',
  ],
  'window-far-off': ({
    years,
    middle,
  }: {
    readonly years: number;
    readonly middle: number;
  }): ProblemWords => [
    `It stands ${years} years from the middle window of the plan, ${middle}.`,
    'Correct the year, or make a plan of its own of it.',
  ],
  'year-stands-out': ({
    written,
    maybe,
  }: {
    readonly written: number;
    readonly maybe: number;
  }): ProblemWords => [
    `It is in ${written}, and every other window is more than half a year away. Meant ${maybe}?`,
    'Correct the year, or leave it where it is meant so.',
  ],
  'window-not-known/train': ({ name }: { readonly name: string }): ProblemWords => [
    `There is no window "${name}", so this train counts after none.`,
    aWindow,
  ],
  'made-good-of-outside-work': (): ProblemWords => [
    'Work outside the closure leaves the line as it is, so this is not used.',
    'Leave the cell blank, or write inside under "place".',
  ],
  'made-good-by-itself': (): ProblemWords => [
    'It cannot be what makes itself good.',
    'Name the activity after which the line is fit to run, or write none.',
  ],
  'made-good-not-known': ({
    id,
    known,
  }: {
    readonly id: string;
    readonly known: string | undefined;
  }): ProblemWords => [
    `There is no activity "${id}".${near(known)}`,
    'Name an activity of the file, letter for letter, with ; between several; or write none.',
  ],
  'made-good-outside': ({ id }: { readonly id: string }): ProblemWords => [
    `"${id}" is outside the closure, so it cannot make the line good.`,
    'Name work inside the closure.',
  ],
  'made-good-in-a-circle': ({ cycle }: { readonly cycle: readonly string[] }): ProblemWords => [
    `It would have to come before and after what makes it good: ${cycle.join(', ')}.`,
    'Name work that comes after it.',
  ],
  'made-good-in-another-window': ({
    one,
    window,
    other,
    otherWindow,
  }: {
    readonly one: string;
    readonly window: string;
    readonly other: string;
    readonly otherWindow: string;
  }): ProblemWords => [
    `It must be made good in its own window, but "${one}" is fixed to "${window}" and "${other}" to "${otherWindow}".`,
    'Fix them to one window, or leave the cells of "window" blank.',
  ],
  'made-good-not-used': ({ lost }: { readonly lost: string }): ProblemWords => [
    `"${lost}", which makes it good, cannot be used, so it cannot be begun either.`,
    `Mend the row of "${lost}".`,
  ],
  'curing-not-set': ({ activity }: { readonly activity: string }): ProblemWords => [
    `It waits for "${activity}" to cure, but the plan does not say how concrete cures.`,
    'Give the maturity that is asked for among the limits of the site, and a table of temperatures; or write a gap such as + 48 h.',
  ],
  'predecessor-not-known': ({
    id,
    known,
  }: {
    readonly id: string;
    readonly known: string | undefined;
  }): ProblemWords => [
    `There is no activity "${id}".${near(known)}`,
    'Name an activity of the file, letter for letter, with ; between several.',
  ],
  'predecessors-in-a-circle': ({ cycle }: { readonly cycle: readonly string[] }): ProblemWords => [
    `Each waits for the next, so none can start: ${cycle.join(' after ')}.`,
    'Take one of these out of its "after" cell.',
  ],
  'window-withdrawn': ({ window }: { readonly window: string }): ProblemWords => [
    `Window "${window}" is withdrawn and takes no work.`,
    'Choose another window, or leave the cell blank.',
  ],
  'resource-not-known': ({
    resource,
    known,
  }: {
    readonly resource: string;
    readonly known: string | undefined;
  }): ProblemWords => [
    `"${resource}" is not in the resources file, so it is taken to be without limit.${near(known)}`,
    'Add it to the resources, or correct its name.',
  ],
  'predecessor-not-used': ({ lost }: { readonly lost: string }): ProblemWords => [
    `It waits for "${lost}", whose row has an error, so it cannot be used either.`,
    `Mend the row of "${lost}".`,
  ],
  'window-not-known': ({
    name,
    known,
  }: {
    readonly name: string;
    readonly known: string | undefined;
  }): ProblemWords => [`There is no window "${name}".${near(known)}`, aWindow],
  'window-not-used': ({ name }: { readonly name: string }): ProblemWords => [
    `The row of window "${name}" has an error, so this activity cannot be used either.`,
    'Mend the row of the window.',
  ],
};
