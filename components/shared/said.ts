import { html, type TemplateResult } from 'lit';
import type { PhraseBook, Reasoned, Sentence, Told, Worded } from '../../src/model/index.js';
import type { LedgerRow } from '../../src/rules/types.js';
import { spokenNow } from './language.js';
import { LateWords } from './late-words.js';
import { problemText } from './problem-words.js';

/** What is said beside the words of the elements: sentences of the core, and explanations of figures. */
interface Loaded {
  readonly sentences: object;
  readonly explanations: object;
}

/** English words of the core are loaded when they are first shown, those of another language before any is spoken. */
const books = new LateWords<Partial<Loaded>>({
  en: async () => ({
    sentences: (await import('../../src/engine/english/sentences.js')).englishSentences,
  }),
  de: () => import('../sentences/german.js'),
});

/** Has what is said in a language at hand. */
export const loadSentences = (language?: string): Promise<void> => books.load(language);

/** The explanations of figures in the language in force; undefined where those are English. */
export const otherExplanations = (): object | undefined =>
  spokenNow().words === 'en' ? undefined : books.now?.explanations;

function ownText({ sentence }: Worded): string | undefined {
  if (!sentence || spokenNow().words === 'en') return undefined;
  return inBook(sentence);
}

/** A sentence in the language in force; empty until its words are there. */
function inBook({ key, given }: Sentence): string {
  const sayings = books.now?.sentences as PhraseBook | undefined;
  return sayings?.[key]?.(inOwnWords(given) as never, saidText) ?? '';
}

/** What a sentence is made with, the sentences within it in the language in force. */
function inOwnWords(given: unknown): unknown {
  if (Array.isArray(given)) return given.map(inOwnWords);
  if (typeof given !== 'object' || given === null) return given;
  if ('text' in given && 'sentence' in given) return { ...given, text: saidText(given as Worded) };
  return Object.fromEntries(Object.entries(given).map(([key, part]) => [key, inOwnWords(part)]));
}

/** What the core says, in the language in force; a text that somebody typed as it is. */
export function saidText(phrase: Told): string {
  if (typeof phrase === 'string') return phrase;
  if ('key' in phrase) return inBook(phrase);
  return 'text' in phrase ? (ownText(phrase) ?? phrase.text) : problemText(phrase);
}

/** Why something is so, in the language in force. */
export const whyText = (reasoned: Reasoned): string => saidText(worded(reasoned));

/** The same to be drawn: what is English in another language is marked so. */
export function said(worded: Told): string | TemplateResult {
  if (typeof worded === 'string' || !('text' in worded)) return saidText(worded);
  const own = ownText(worded);
  if (own !== undefined || spokenNow().words === 'en') return own ?? worded.text;
  return html`<span lang="en">${worded.text}</span>`;
}

/** Why something is so, to be drawn. */
export const saidWhy = (reasoned: Reasoned): string | TemplateResult => said(worded(reasoned));

const worded = ({ why, sentence }: Reasoned): Worded =>
  sentence ? { text: why, sentence } : { text: why };

/** What a row of a ledger is called: as the rule set words it, else in the language in force. */
export const ruleName = ({ rule, named }: Pick<LedgerRow, 'rule' | 'named'>): string =>
  saidText({ text: rule, ...(named && { sentence: named }) });
