// Which field the words of a heading mean, where it is none of the headings known.
import { doubtful } from './danger-fields.js';
import { headingsOf, synonymsOf, type FieldOf, type SheetKind } from './fields.js';
import { endInLength, withoutUnit } from './heading-units.js';
import { meaningOf, wordsOf } from './heading-words.js';

const meanings = new Map<SheetKind, ReadonlyMap<string, string | null>>();

/** Meaning to field of every heading known of a kind of table; null where two fields share it. */
function meaningsOf(kind: SheetKind): ReadonlyMap<string, string | null> {
  const known = meanings.get(kind);
  if (known) return known;
  const made = new Map<string, string | null>();
  const own = new Set<string>();
  for (const field of headingsOf(kind)) {
    const meaning = meaningOf(wordsOf(field)).join(' ');
    own.add(meaning);
    made.set(meaning, field);
  }
  for (const field of headingsOf(kind))
    for (const synonym of [...synonymsOf(kind, field), ...(doubtful[kind]?.[field] ?? [])]) {
      const meaning = meaningOf(wordsOf(synonym)).join(' ');
      if (own.has(meaning)) continue;
      const before = made.get(meaning);
      made.set(meaning, before === undefined || before === field ? field : null);
    }
  meanings.set(kind, made);
  return made;
}

/** Words that say only which table a heading stands in, and how sure it is. */
const asides: { readonly [K in SheetKind]?: readonly string[] } = {
  windows: ['window', 'access', 'planned', 'agreed', 'granted', 'booked'],
  work: ['work', 'activity', 'planned'],
  resources: ['resource'],
  trains: ['train'],
};

/** Fields of work that may be headed as what is required. */
const mayBeRequired: ReadonlySet<string> = new Set(['lines', 'isolation', 'resources', 'units']);

/** The field that the words of a heading mean; none where they mean none, or two. */
export function fieldMeant<K extends SheetKind>(heading: string, kind: K): FieldOf<K> | undefined {
  const known = meaningsOf(kind);
  const all = wordsOf(heading);
  const bare = withoutUnit(all);
  const isPlace = (kind === 'windows' || kind === 'work') && endInLength(all);
  for (const words of all.length === bare.length ? [all] : [all, bare]) {
    const whole = meaningOf(words);
    const without = (left: readonly string[] | undefined): readonly string[] =>
      whole.filter((token) => !left?.includes(token));
    const tries = [
      whole,
      without(asides[kind]),
      ...(kind === 'work' ? [without([...asides.work!, 'required'])] : []),
    ];
    for (const tokens of tries) {
      if (tokens.length === 0) continue;
      const field = known.get(tokens.join(' '));
      if (field === undefined || field === null) continue;
      const dropped = whole.includes('required') && !tokens.includes('required');
      if (dropped && !mayBeRequired.has(field)) continue;
      if (isPlace && words === bare && field !== 'from' && field !== 'to') continue;
      return field as FieldOf<K>;
    }
  }
  return undefined;
}

/** How much a word tells of what a column holds: these stand in headings of every kind. */
const vague: ReadonlySet<string> = new Set(
  'date time number id name at from to by in on per description work activity'.split(' '),
);
const weight = (token: string): number => (vague.has(token) ? 0.25 : 1);

/** The fields whose headings come nearest to a heading, the nearest first; none where none shares a telling word. */
export function fieldsNear<K extends SheetKind>(heading: string, kind: K): readonly FieldOf<K>[] {
  const asked = meaningOf(wordsOf(heading));
  const scored = headingsOf(kind).map((field) => {
    const scores = [field, ...synonymsOf(kind, field), ...(doubtful[kind]?.[field] ?? [])].map(
      (known) => nearness(asked, meaningOf(wordsOf(known))),
    );
    return { field, score: Math.max(...scores) };
  });
  return scored
    .filter((item) => item.score >= 0.4)
    .sort((a, b) => b.score - a.score)
    .slice(0, 2)
    .map((item) => item.field);
}

/** The weight of the words two headings share, of that of all their words: 0 to 1. */
function nearness(a: readonly string[], b: readonly string[]): number {
  const sum = (tokens: readonly string[]): number =>
    tokens.reduce((total, token) => total + weight(token), 0);
  const shared = a.filter((token) => b.some((other) => alike(token, other)));
  const telling = shared.some((token) => !vague.has(token));
  return telling ? (2 * sum(shared)) / (sum(a) + sum(b)) : 0;
}

/** Whether two words are the same but for a slip of the hand: one letter in four to seven, two in more. */
function alike(a: string, b: string): boolean {
  if (a === b) return true;
  const slips = Math.min(a.length, b.length) < 4 ? 0 : Math.min(a.length, b.length) < 8 ? 1 : 2;
  return slips > 0 && Math.abs(a.length - b.length) <= slips && distance(a, b) <= slips;
}

/** Letters to put in, take out or change to make one word the other. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1)
      next.push(
        Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)),
      );
    row = next;
  }
  return row[b.length]!;
}
