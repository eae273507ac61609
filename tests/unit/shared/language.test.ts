// Days, numbers and money of languages. What is expected is what the Unicode CLDR gives for each language (from memory),
// and, for English, what the core itself writes.
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moneyText, sumText } from '../../../components/overrun/money-text.js';
import { percentText } from '../../../components/shared/chance.js';
import {
  dateText,
  dayText,
  dueText,
  momentText,
  numberText,
  stretchText,
  weekdayText,
} from '../../../components/shared/format.js';
import { speaking } from '../../../components/shared/language.js';
import { clockWords } from '../../../src/calendar/index.js';
import { chanceText } from '../../../src/engine/index.js';
import { at, zone } from '../../helpers/clock.js';

const spring = at('2027-03-27 23:30');
const inLanguage = <T>(figures: string, work: () => T, words = 'en'): T =>
  speaking({ figures, words }, work);

describe('a moment', () => {
  it.each([
    ['en', 'Sat 27 Mar 2027, 23:30'],
    ['en-GB', 'Sat 27 Mar 2027, 23:30'],
    ['en-US', 'Sat, Mar 27, 2027, 23:30'],
    ['de', 'Sa., 27. März 2027, 23:30'],
    ['fr', 'sam. 27 mars 2027, 23:30'],
  ])('is written in %s as %s', (language, text) => {
    expect(inLanguage(language, () => momentText(spring, zone))).toBe(text);
  });

  it('is written in English as the core writes it, on any day of many years', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2e12, max: 4e12 }), (moment) => {
        const text = inLanguage('en', () => momentText(moment, 'Asia/Tokyo'));
        expect(text.replace(',', '')).toBe(clockWords(moment, 'Asia/Tokyo'));
      }),
    );
  });

  it('keeps the day of the zone, not that of the machine', () => {
    const moment = Date.parse('2027-03-27T11:30:00Z');
    expect(inLanguage('de', () => dayText(moment, 'Pacific/Auckland'))).toBe('So., 28. März');
    expect(inLanguage('de', () => dateText(moment, 'Pacific/Honolulu'))).toBe('27. März');
  });

  it('is joined to another by the words of the element, not by those of its figures', () => {
    const to = at('2027-03-28 06:00');
    const text = (words: string): string =>
      inLanguage('de', () => stretchText(spring, to, zone), words);
    expect(text('de')).toBe('Sa., 27. März 23:30 bis So., 28. März 06:00');
    expect(text('en')).toBe('Sa., 27. März 23:30 to So., 28. März 06:00');
    expect(inLanguage('de', () => dueText(at('2027-04-01 00:00'), zone), 'de')).toBe(
      'Tagesende Mi., 31. März 2027',
    );
  });
});

it('names the days of the week', () => {
  const names = (language: string): string[] =>
    inLanguage(language, () => [1, 2, 3, 4, 5, 6, 7].map((day) => weekdayText(day)));
  expect(names('en').join(' ')).toBe('Mon Tue Wed Thu Fri Sat Sun');
  expect(names('de').join(' ')).toBe('Mo Di Mi Do Fr Sa So');
});

describe('a number', () => {
  it.each([
    ['en', '12,345.5', 'GBP\u00a0\u22121,843.50'],
    ['de', '12.345,5', '\u22121.843,50\u00a0GBP'],
    ['fr', '12\u202f345,5', '\u22121\u202f843,50\u00a0GBP'],
    // Of the digits of clocks, as those beside it.
    ['ar-EG', '12,345.5', '\u22121,843.50\u00a0GBP'],
  ])('has the signs of %s', (language, number, money) => {
    expect(inLanguage(language, () => numberText(12345.5))).toBe(number);
    expect(inLanguage(language, () => sumText('-1843.50', 'GBP'))).toBe(money);
  });

  it('loses no digit of a sum, however large', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 30n }),
        fc.nat(99),
        fc.constantFrom('en', 'de', 'fr', 'hi', 'de-CH'),
        (whole, coins, language) => {
          const cents = String(coins).padStart(2, '0');
          const text = inLanguage(language, () => moneyText(`${whole}.${cents}`));
          expect(text.replaceAll(/\D/g, '')).toBe(`${whole}${cents}`);
        },
      ),
    );
  });
});

describe('a chance', () => {
  it('is written in English as the core writes it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 9999 }),
        (share, runs) => {
          const text = inLanguage('en', () => percentText(share, runs));
          expect(text.replace(',', '')).toBe(chanceText(share, runs));
        },
      ),
    );
  });

  it('has German words and signs', () => {
    const text = (share: number): string => inLanguage('de', () => percentText(share), 'de');
    expect([text(0.947), text(1), text(0)]).toEqual(['94,7 %', 'über 99,9 %', 'unter 0,1 %']);
  });
});

it('is asked for wherever an element writes a figure: no language is fixed in the components', () => {
  const sources = readdirSync('components', { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts') && path !== 'shared/format.ts')
    .map((path) => [path, readFileSync(`components/${path}`, 'utf8')] as const);
  expect(sources.length).toBeGreaterThan(300);
  const fixed = sources.filter(([, text]) =>
    /toLocaleString|new Intl\.(?:Number|DateTime)Format|'en-GB'|'Jan|'Mon'|'Monday'/.test(text),
  );
  expect(fixed.map(([path]) => path)).toEqual([]);
});
