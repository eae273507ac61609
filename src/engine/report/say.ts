import { cautions, phrasesOf, type Phrase } from '../../model/index.js';
import type { reportSentences } from './english/index.js';
import type { ReportWord } from './english/words.js';

/** Says what reports say; its words are those of whoever shows or saves it. */
export const say = phrasesOf<typeof reportSentences>();

/** A word that stands alone. */
export const word = (of: ReportWord): Phrase => say('report-word', { word: of });

/** Several of them, such as the columns of a table. */
export const words = (...all: readonly ReportWord[]): readonly Phrase[] => all.map(word);

/** Cautions, those of the model in the language of the report. */
export const cautionsSaid = (lines: readonly string[]): readonly Phrase[] =>
  lines.map((line) => {
    const caution = cautions.indexOf(line);
    return caution === -1 ? line : say('caution', { caution });
  });
