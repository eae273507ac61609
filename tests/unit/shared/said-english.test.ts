// A report is one document in one language, whatever the page speaks.
import { beforeAll, expect, it } from 'vitest';
import { speaking } from '../../../components/shared/language.js';
import { loadSentences, saidEnglish, saidText } from '../../../components/shared/said.js';
import { joined, type Phrase } from '../../../src/model/index.js';

beforeAll(() => Promise.all([loadSentences('de'), loadSentences('en')]));

it('is said in English on a German page, with what stands in it', () => {
  const held: Phrase = { key: 'no-train-held', given: {} };
  const both = joined(['gang', held], ': ');
  speaking({ figures: 'de', words: 'de' }, () => {
    expect(saidText(both)).toBe('gang: kein Zug wird aufgehalten');
    expect(saidEnglish(both)).toBe('gang: no train is held');
  });
});
