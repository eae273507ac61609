import type { ImportChoices } from '../../src/engine/types.js';

// How a person said that files with certain headings are to be read is kept on the device, the newest files of it only.

const KEY = 'possession-fit/reading';
const MOST = 40;
/** Longer headings than any table has: nothing is kept of them. */
const LONGEST = 20_000;

type Kept = readonly (readonly [headings: string, choices: ImportChoices])[];

/** Choices that hold for the next file too: not where it goes, which is asked each time. */
export function lasting({ leave: _leave, take: _take, ...choices }: ImportChoices): ImportChoices {
  return choices;
}

/** What was chosen for these headings; undefined where nothing was. */
export const readingOf = (headings: string): ImportChoices | undefined =>
  all().find(([key]) => key === headings)?.[1];

/** Keeps what was chosen for these headings; null forgets it. */
export function keepChoices(headings: string, choices: ImportChoices | null): void {
  if (headings.length > LONGEST) return;
  const others = all().filter(([key]) => key !== headings);
  const next = choices ? [[headings, choices] as const, ...others].slice(0, MOST) : others;
  try {
    localStorage.setItem(KEY, JSON.stringify(next));
  } catch {
    // Full or barred: the person is asked again next time.
  }
}

/** What files with these headings are kept under. */
export const headingsKey = (headings: readonly string[]): string => JSON.stringify(headings);

/** Adds to what was chosen for these headings. */
export function keepAnswer(headings: readonly string[], answer: ImportChoices): void {
  const key = headingsKey(headings);
  keepChoices(key, { ...readingOf(key), ...answer });
}

function all(): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? (kept as unknown[]).filter(isEntry) : [];
  } catch {
    return [];
  }
}

const isText = (value: unknown): value is string => typeof value === 'string';

const tests: { readonly [K in keyof ImportChoices]: (value: unknown) => boolean } = {
  encoding: isText,
  delimiter: isText,
  sheet: isText,
  headingLine: (value) => Number.isSafeInteger(value) && Number(value) > 0,
  dateOrder: (value) => value === 'day-first' || value === 'month-first',
  kind: isText,
  map: (value) => typeof value === 'object' && value !== null && Object.values(value).every(isText),
  unread: (value) => Array.isArray(value) && value.every(isText),
};

/** Whether it is an entry as this page writes it: others may write under this name too. */
function isEntry(value: unknown): value is Kept[number] {
  if (!Array.isArray(value) || value.length !== 2) return false;
  const [headings, choices] = value as unknown[];
  return (
    isText(headings) &&
    typeof choices === 'object' &&
    choices !== null &&
    Object.entries(choices).every(([name, value]) => tests[name as keyof ImportChoices]?.(value))
  );
}
