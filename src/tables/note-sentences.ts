// What a plan was taken to mean where nobody said. `names` are the first few, `more` how many there are beside them.
import { saysBy } from '../model/index.js';

/** Things of a kind that a note is about: so many of so many, with the names of the first. */
interface Some {
  readonly count: number;
  readonly of: number;
  readonly names: readonly string[];
  readonly more: number;
}
interface Listed {
  readonly count: number;
  readonly names: readonly string[];
  readonly more: number;
}

const plurals: Readonly<Record<string, string>> = { activity: 'activities' };
const counted = (count: number, noun: string): string =>
  `${count} ${count === 1 ? noun : (plurals[noun] ?? `${noun}s`)}`;
const list = (names: readonly string[], more: number): string =>
  more > 0 ? `${names.join(', ')} and ${more} more` : names.join(', ');

const some =
  (noun: string, singular: string, plural: string) =>
  ({ count, of, names, more }: Some): string =>
    `${count} of ${counted(of, noun)} ${count === 1 ? singular : plural}: ${list(names, more)}.`;
const limit = (count: number): string =>
  `${count === 1 ? 'It is' : 'They are'} taken to be without limit.`;

/** Names that work needs and no window has: of one activity, or of a count. `names` are those that windows have. */
interface Unmet extends Omit<Listed, 'count'> {
  readonly name: string;
  readonly one: string | undefined;
  readonly count: number;
  /** A name of a window that is written almost so. */
  readonly near: string | undefined;
}
const unmet =
  (gives: string, give: string) =>
  ({ name, one, count, names, more, near }: Unmet): string =>
    `No window ${gives} "${name}", which ${one === undefined ? `${count} activities need` : `${one} needs`}: it finds no window that serves it. Windows ${give} ${list(
      names.map((known) => `"${known}"`),
      more,
    )}.${near === undefined ? '' : ` There is "${near}".`}`;
interface Joined {
  readonly name: string;
  readonly parts: readonly string[];
}
const joined =
  (thing: string) =>
  ({ name, parts }: Joined): string =>
    `"${name}" is read as the name of one ${thing}, and ${parts.map((part) => `"${part}"`).join(' and ')} also stand by themselves. Where several are meant, put ; between them.`;

/** The first rows of some, by their names, or by their line where they bear none. */
export interface RowNames {
  readonly names: readonly (string | number)[];
  readonly more: number;
}
const rowNames = ({ names, more }: RowNames): string =>
  list(
    names.map((name) => (typeof name === 'number' ? `line ${name}` : name)),
    more,
  );

export const noteSentences = {
  'lines-in-no-window': unmet('blocks', 'block'),
  'isolation-in-no-window': unmet('makes dead', 'make dead'),
  'lines-joined': joined('line'),
  'isolation-joined': joined('section'),
  'rows-left-out': ({
    table,
    own,
    drawn,
    ofOwn,
    ofDrawn,
  }: {
    readonly table: string;
    /** Rows with an error of their own, and those left out because of others. */
    readonly own: number;
    readonly drawn: number;
    readonly ofOwn: RowNames;
    readonly ofDrawn: RowNames;
  }) =>
    [
      ...(own > 0
        ? [
            `${counted(own, 'row')} of ${table} ${own === 1 ? 'has an error and is' : 'have errors and are'} left out: ${rowNames(ofOwn)}.`,
          ]
        : []),
      ...(drawn > 0
        ? [
            `${counted(drawn, 'row')} of ${table} ${drawn === 1 ? 'is' : 'are'} left out because of others: ${rowNames(ofDrawn)}.`,
          ]
        : []),
    ].join(' '),
  'rules-deduct-nothing': ({ rules }: { readonly rules: string }) =>
    `The rule set "${rules}" deducts nothing: no lead-in, no lead-out and no handback margin are held in any window.`,
  'windows-lines-blank': some(
    'window',
    'names no line that is blocked, so it is taken to serve work on any line',
    'name no line that is blocked, so they are taken to serve work on any line',
  ),
  'windows-isolation-blank': some(
    'window',
    'names no isolation, so nothing is taken to be dead in it',
    'name no isolation, so nothing is taken to be dead in them',
  ),
  'status-blank': some(
    'window',
    'has no status and is taken as confirmed',
    'have no status and are taken as confirmed',
  ),
  'window-requested': some(
    'window',
    'is only requested: it may not be granted',
    'are only requested: they may not be granted',
  ),
  'window-offered': some('window', 'is offered and not confirmed', 'are offered and not confirmed'),
  'work-lines-blank': some(
    'activity',
    'names no line that must be blocked, so any window is taken to serve it',
    'name no line that must be blocked, so any window is taken to serve them',
  ),
  'work-isolation-blank': some(
    'activity',
    'names no isolation and is taken to need none',
    'name no isolation and are taken to need none',
  ),
  'made-good-blank': some(
    'activity',
    'does not say what makes the line fit to run again after it',
    'do not say what makes the line fit to run again after them',
  ),
  'opened-before': some(
    'activity',
    'is done and what makes it good is not: unless it was made good some other way, the line is not fit to run now',
    'are done and what makes them good is not: unless they were made good some other way, the line is not fit to run now',
  ),
  'occupies-blank': some(
    'activity',
    'does not say whether others may be in the same place, and is taken as shared',
    'do not say whether others may be in the same place, and are taken as shared',
  ),
  'resource-not-listed': ({ count, names, more }: Listed) =>
    `${counted(count, 'resource')} that work names ${count === 1 ? 'is' : 'are'} not listed: ${list(names, more)}. ${limit(count)}`,
  'no-resources': ({ count, names, more }: Listed) =>
    `No resources are listed, and work names ${counted(count, 'resource')}: ${list(names, more)}. ${limit(count)}`,
  'headings-not-read': ({ count, table, names, more }: Listed & { readonly table: string }) =>
    `${counted(count, 'heading')} of ${table} ${count === 1 ? 'is' : 'are'} kept and not read: ${list(names, more)}.`,
};

export const sayNote = saysBy(noteSentences);
