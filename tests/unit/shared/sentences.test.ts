// What the core says, in German against the English: all that a sentence is made with stands in both.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sentences as german } from '../../../components/sentences/german.js';
import { speaking } from '../../../components/shared/language.js';
import { loadSentences, saidText } from '../../../components/shared/said.js';
import { durationText } from '../../../src/calendar/index.js';
import {
  cautions,
  commonPhrases,
  commonSentences,
  phraseText,
  saysBy,
  type Moment,
  type SayPhrase,
} from '../../../src/model/index.js';
import { certificateSentences } from '../../../src/planner/certificate-words.js';
import { planSentences } from '../../../src/planner/plan-sentences.js';
import { reasonSentences } from '../../../src/planner/reason-sentences.js';
import { unplacedSentences } from '../../../src/planner/search/unplaced-sentences.js';
import { calendarSentences } from '../../../src/engine/handback/english/calendar-sentences.js';
import { bookingCalendarSentences } from '../../../src/engine/english/booking-calendar.js';
import { planCalendarSentences } from '../../../src/engine/plan-out/english/plan-calendar-sentences.js';
import { optionSentences } from '../../../src/engine/options/english/index.js';
import { priceSentences } from '../../../src/price/english/index.js';
import { liveSentences } from '../../../src/risk/shift/live-sentences.js';
import { repairSentences } from '../../../src/planner/repair/repair-sentences.js';
import { ledgerSentences } from '../../../src/rules/ledger-sentences.js';
import { reportWords } from '../../../components/sentences/report-words.de.js';
import { reportSentences } from '../../../src/engine/report/english/index.js';
import { faultSentences } from '../../../src/verify/english/index.js';
import { noteSentences } from '../../../src/tables/note-sentences.js';
import { examples } from './sentence-examples.js';

type Words = Readonly<Record<string, (given: object, say: SayPhrase) => string>>;
const rooms = [
  reasonSentences,
  unplacedSentences,
  planSentences,
  certificateSentences,
  noteSentences,
  ledgerSentences,
  commonSentences,
  commonPhrases,
  priceSentences,
  optionSentences,
  faultSentences,
  liveSentences,
  repairSentences,
  reportSentences,
  calendarSentences,
  planCalendarSentences,
  bookingCalendarSentences,
];
const english = Object.assign({}, ...rooms) as Words;
const keys = Object.keys(english);
const inGerman = (key: string, given: object): string =>
  speaking({ figures: 'de', words: 'de' }, () => saidText({ key, given }));
await loadSentences('de');

const isMoment = (value: object): value is Moment => 'at' in value && 'zone' in value;

/** What is no name, number or moment, but one of a few words that a sentence knows; and a sentence in a sentence. */
const asTheyAre = new Set([
  ...['onTime', 'wanted', 'ways', 'late', 'from', 'kind', 'rule', 'why'],
  ...[
    'once',
    'zone',
    'by',
    'perMinutes',
    'cancelled',
    'liftedAfter',
    'aim',
    'first',
    'known',
    'when',
    'bars',
    'days',
    'counted',
    'all',
    'between',
    'turn',
    'key',
    'word',
    'caution',
    'head',
    'rounding',
    'confidence',
    'verdict',
    'status',
    'chanceWanted',
    'state',
    'anchor',
  ],
]);

/** Something of the same shape as an example: other names, numbers, moments, and lists of up to three. */
function like(example: unknown, name = ''): fc.Arbitrary<unknown> {
  if (asTheyAre.has(name)) return fc.constant(example);
  if (typeof example === 'boolean') return fc.boolean();
  if (typeof example === 'number') return fc.integer({ min: 1, max: 9_999 });
  if (typeof example === 'string')
    return /^\d/.test(example)
      ? fc.integer({ min: 101, max: 9_999 }).map((n) => `${n}.5`)
      : fc.integer({ min: 1e6, max: 9e6 }).map((n) => `Q${n}Q`);
  if (Array.isArray(example))
    return example.length === 0
      ? fc.constant(example)
      : fc.array(like(example[0]), { minLength: 1, maxLength: 3 });
  if (typeof example !== 'object' || example === null) return fc.constant(example);
  const shape = Object.fromEntries(
    Object.entries(example).map(([key, value]) => [key, key === 'at' ? moments : like(value, key)]),
  );
  return fc.record(shape);
}

/** To the minute, never at midnight, which is read as the end of a day. */
const moments = fc
  .integer({ min: 29_000_000, max: 32_000_000 })
  .map((minute) => (minute - (minute % 1440) + 180 + (minute % 1000)) * 60_000);

const numbers = ['de', 'en'].map((language) => new Intl.NumberFormat(language));

/** How each thing that a sentence is made with can be found in it. */
function marksOf(given: unknown, name = ''): (readonly string[])[] {
  if (typeof given === 'number') {
    const percents = numbers.map((form) => form.format(100 * given));
    return name === 'caution'
      ? []
      : [
          [
            durationText(given),
            String(given),
            numbers[0]!.format(given),
            ...percents,
            ...(given === 1 ? ['one '] : []),
          ],
        ];
  }
  if (asTheyAre.has(name)) return name === 'known' ? [['8 h']] : [];
  if (typeof given === 'string')
    return [
      /^\d/.test(given) ? [given, ...numbers.map((form) => form.format(Number(given)))] : [given],
    ];
  if (typeof given !== 'object' || given === null) return [];
  const entries = Object.entries(given).filter(
    ([key]) => key !== 'at' && key !== 'zone' && !(key === 'makers' && hasOpeners(given)),
  );
  const clock = isMoment(given)
    ? [[new Date(given.at).toLocaleTimeString('en-GB', { timeZone: given.zone }).slice(0, 5)]]
    : [];
  return [...clock, ...entries.flatMap(([key, value]) => marksOf(value, key))];
}
const hasOpeners = (given: object): boolean =>
  (given as { openers?: readonly string[] }).openers?.length !== 0;

it('each key is that of one room alone', () => {
  expect(keys.length).toBe(rooms.flatMap((room) => Object.keys(room)).length);
  expect(Object.keys(german).sort()).toEqual(keys.sort());
});

it.each(keys)('%s says all that it is made with, in both languages', (key) => {
  fc.assert(
    fc.property(like(examples[key as keyof typeof examples]), (given) => {
      const [one, other] = [
        english[key]!(given as object, (phrase) => phraseText(phrase, english)),
        inGerman(key, given as object),
      ];
      const wanted = marksOf(given);
      const wrong = [one, other].flatMap((text) => [
        ...(/undefined|NaN|\[object/.test(text) ? [`no word in: ${text}`] : []),
        ...wanted
          .filter((marks) => !marks.some((mark) => text.includes(mark)))
          .map((marks) => `not ${marks[0]} in: ${text}`),
      ]);
      // Asked once a case: `expect` takes longer than all that is asked here.
      expect(one === other ? [`the same in both: ${one}`] : wrong).toEqual([]);
    }),
    { numRuns: 50 },
  );
});

it('each word and caution of a report is said in German', () => {
  const said = (key: string, given: object): readonly string[] => [
    english[key]!(given, String),
    inGerman(key, given),
  ];
  for (const word of Object.keys(reportWords)) {
    const [one, other] = said('report-word', { word });
    expect(other).toMatch(/\p{L}/u);
    expect(other).not.toBe(one);
  }
  cautions.forEach((line, caution) => {
    const [one, other] = said('caution', { caution });
    expect(one).toBe(line);
    expect(other).toMatch(/\p{L}/u);
    expect(other).not.toBe(one);
  });
});

it('a calendar of cut-off times says each verdict, status and chance in German', () => {
  const { 'calendar-verdict': verdict, 'calendar-latest-start': start } = examples;
  const say = (given: object): readonly string[] => [
    english['calendar-verdict']!({ ...verdict, ...given }, String),
    inGerman('calendar-verdict', { ...verdict, ...given }),
  ];
  const all = [
    ...['held', 'chance-low', 'eaten', 'overrun'].map((of) => say({ verdict: of })),
    ...['requested', 'offered', 'withdrawn'].map((status) => say({ status })),
    say({ chanceWanted: null }),
  ];
  for (const text of all.flat()) expect(text).not.toMatch(/undefined|null/);
  expect(new Set(all.map(([one]) => one)).size).toBe(all.length);
  expect(new Set(all.map(([, other]) => other)).size).toBe(all.length);
  expect(say({})[1]).toContain('90,0 % pünktlich');
  expect(say({})[1]).toContain('angestrebt 80,0 %');
  expect(inGerman('calendar-latest-start', start)).toContain('Zu 80,0 % pünktlich');
});

it('a moment in German has its offset where clocks show it twice, as in English', () => {
  const at = Date.parse('2027-10-31T01:30:00+01:00');
  const one = { at, zone: 'Europe/London' };
  const other = { at: at + 3_600_000, zone: 'Europe/London' };
  expect(inGerman('moment', one)).toContain('01:30 (+01:00)');
  expect(inGerman('moment', other)).toContain('01:30 (+00:00)');
});

it('a sentence leaves nothing of itself in JSON', () => {
  expect(
    JSON.stringify({
      text: 'a',
      sentence: saysBy({ a: ({ n }: { readonly n: number }) => `${n}` })('a', { n: 1 }).sentence,
    }),
  ).toBe('{"text":"a"}');
});
