// Each German catalogue against the English words that it stands for.
import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultStrings as sharingStrings } from '../../../components/desk/sharing/strings.js';
import { strings as sharingGerman } from '../../../components/desk/sharing/strings.de.js';
import { explanations } from '../../../components/sentences/explanations.de.js';
import { explainStrings } from '../../../components/why/explain-strings.js';

/** Every text by its path; a function is called with a mark for each of its figures. */
function texts(words: object, path = ''): [string, string][] {
  return Object.entries(words).flatMap(([name, value]: [string, unknown]) => {
    const at = `${path}${name}`;
    if (typeof value === 'function') {
      const marks = Array.from({ length: value.length }, (_, i) => 901 + i);
      return [[at, String((value as (...all: unknown[]) => string)(...given(at, marks)))]];
    }
    return typeof value === 'object' && value !== null
      ? texts(value, `${at}.`)
      : [[at, String(value)]];
  });
}

/** What a sentence takes that is no figure. */
function given(path: string, marks: number[]): unknown[] {
  if (path === 'logFault') return [{ code: 'clock', text: '901' }];
  if (path === 'fault') return [{ file: '901', line: 902, column: '903' }, ['904', '905']];
  return ['limit', 'shown', 'otherReason'].includes(path) ? marks.map(String) : marks;
}

const marksOf = (text: string): string[] => [...text.matchAll(/90\d/g)].map(String).sort();

/** Words that are the same in both languages: signs and units, names of forms, and words that German has taken over. */
const same = new Set([
  'km + m',
  'Name',
  'Plan',
  'UTF-8',
  'Windows-1252',
  'in 901',
  '901',
  'ArrowUp',
]);
const isAlike = (text: string): boolean => same.has(text) || !/[a-z]{2}/i.test(text);

const folders = readdirSync('components').filter((text) =>
  existsSync(`components/${text}/strings.ts`),
);

it('all elements with words of their own have them in German', () => {
  expect(folders.length).toBeGreaterThan(20);
  expect(folders.filter((folder) => !existsSync(`components/${folder}/strings.de.ts`))).toEqual([]);
});

const catalogues = await Promise.all(
  folders.map(async (folder) => {
    const { defaultStrings } = (await import(`../../../components/${folder}/strings.ts`)) as {
      defaultStrings: object;
    };
    const { strings } = (await import(`../../../components/${folder}/strings.de.ts`)) as {
      strings: object;
    };
    return [folder, defaultStrings, strings] as const;
  }),
);

const alone = [
  ['explanations', explainStrings, explanations],
  ['desk/sharing', sharingStrings, sharingGerman],
] as const;

describe.each([...catalogues, ...alone])('the German words of %s', (_, english, german) => {
  const own = new Map(texts(german));

  it('have the keys of the English ones', () => {
    // Lists may be longer in a language, and keys are printed otherwise on its boards.
    const keys = (words: object): string[] =>
      texts(words)
        .map(([path]) => path)
        .filter((path) => !/(cancelledWords|keyNames)\./.test(path));
    expect(keys(german)).toEqual(expect.arrayContaining(keys(english)));
    expect(keys(english)).toEqual(expect.arrayContaining(keys(german)));
  });

  it.each(texts(english).filter(([, text]) => !isAlike(text)))(
    'say %s otherwise, with the same figures',
    (path, text) => {
      const other = own.get(path) ?? '';
      if (!path.startsWith('cancelledWords')) expect(other).not.toBe(text);
      expect(marksOf(other)).toEqual(marksOf(text));
      expect(/\{|undefined/.test(other)).toBe(false);
    },
  );
});
