import { html, type TemplateResult } from 'lit';
import type { Reasoned, Worded } from '../../src/model/index.js';
import type { CostStep, PriceRow } from '../../src/price/types.js';
import type { LedgerRow } from '../../src/rules/types.js';
import { spokenNow } from './language.js';

/** What is said beside the words of the elements: sentences of the core, and explanations of figures. */
interface Loaded {
  readonly sentences: object;
  readonly explanations: object;
}

/** In other languages, loaded when the first page asks for one. */
const others: Readonly<Record<string, () => Promise<Loaded>>> = {
  de: () => import('../sentences/german.js'),
};
const loaded = new Map<string, Loaded>();

/** Has what is said in a language at hand; without any, it stays English. */
export async function loadSentences(language: string): Promise<void> {
  const load = others[language];
  if (load && !loaded.has(language)) loaded.set(language, await load());
}

/** The words of one kind in the language in force; undefined where those are English. */
export const otherWords = (kind: keyof Loaded): object | undefined =>
  loaded.get(spokenNow().words)?.[kind];

type Sayings = Readonly<Record<string, ((given: object) => string) | undefined>>;

function ownText({ sentence }: Worded): string | undefined {
  const own = sentence && (otherWords('sentences') as Sayings | undefined)?.[sentence.key];
  return own?.(inOwnWords(sentence!.given) as object);
}

/** What a sentence is made with, the sentences within it in the language in force. */
function inOwnWords(given: unknown): unknown {
  if (Array.isArray(given)) return given.map(inOwnWords);
  if (typeof given !== 'object' || given === null) return given;
  if ('text' in given && 'sentence' in given) return { ...given, text: saidText(given as Worded) };
  return Object.fromEntries(Object.entries(given).map(([key, part]) => [key, inOwnWords(part)]));
}

/** What the core says, in the language in force; in English where that has no words for it. */
export const saidText = (worded: Worded): string => ownText(worded) ?? worded.text;

/** Why something is so, in the language in force. */
export const whyText = (reasoned: Reasoned): string => saidText(worded(reasoned));

/** The same to be drawn: what is English in another language is marked so. */
export function said(worded: Worded): string | TemplateResult {
  const own = ownText(worded);
  if (own !== undefined || spokenNow().words === 'en') return own ?? worded.text;
  return html`<span lang="en">${worded.text}</span>`;
}

/** Why something is so, to be drawn. */
export const saidWhy = (reasoned: Reasoned): string | TemplateResult => said(worded(reasoned));

const worded = ({ why, sentence }: Reasoned): Worded =>
  sentence ? { text: why, sentence } : { text: why };

/** A name with the sentence of it, where it has one, in the language in force. */
const namedText = (text: string, sentence: Worded['sentence'] | undefined): string =>
  saidText({ text, ...(sentence && { sentence }) });

/** What a row of a cost is called: as the price book words it, else in the language in force. */
export const titleText = ({ title, titled }: Pick<PriceRow, 'title' | 'titled'>): string =>
  namedText(title, titled);

/** What happens at a step of a cost. */
export const stepName = ({ name, named }: Pick<CostStep, 'name' | 'named'>): string =>
  namedText(name, named);

/** What a row of a ledger is called: as the rule set words it, else in the language in force. */
export const ruleName = ({ rule, named }: Pick<LedgerRow, 'rule' | 'named'>): string =>
  namedText(rule, named);
