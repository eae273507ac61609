// Each German catalogue against the English words that it stands for. That none is missing, the compiler sees.
import { describe, expect, it } from 'vitest';
import { defaultStrings as ledger } from '../../../components/ledger/strings.js';
import { strings as ledgerDe } from '../../../components/ledger/strings.de.js';
import { defaultStrings as ribbon } from '../../../components/ribbon/strings.js';
import { strings as ribbonDe } from '../../../components/ribbon/strings.de.js';
import { defaultStrings as sheet } from '../../../components/sheet/strings.js';
import { strings as sheetDe } from '../../../components/sheet/strings.de.js';
import { defaultStrings as why } from '../../../components/why/strings.js';
import { strings as whyDe } from '../../../components/why/strings.de.js';

/** Every text by its path; a function is called with a mark for each of its figures. */
function texts(words: object, path = ''): [string, string][] {
  return Object.entries(words).flatMap(([name, value]: [string, unknown]) => {
    const at = `${path}${name}`;
    if (typeof value === 'function') {
      const marks = Array.from({ length: value.length }, (_, i) => 901 + i);
      return [[at, String((value as (...all: number[]) => string)(...marks))]];
    }
    return typeof value === 'object' && value !== null
      ? texts(value, `${at}.`)
      : [[at, String(value)]];
  });
}

const marksOf = (text: string): string[] => [...text.matchAll(/90\d/g)].map(String).sort();

describe.each([
  ['ribbon', ribbon, ribbonDe],
  ['ledger', ledger, ledgerDe],
  ['sheet', sheet, sheetDe],
  ['why', why, whyDe],
] as const)('the German words of %s', (_, english, german) => {
  const own = new Map(texts(german));
  it.each(texts(english))('say %s otherwise, with the same figures', (path, text) => {
    const other = own.get(path)!;
    expect(other).not.toBe(text);
    expect(marksOf(other)).toEqual(marksOf(text));
    expect(/\{|undefined/.test(other)).toBe(false);
  });
});
