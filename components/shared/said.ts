import { html, type TemplateResult } from 'lit';
import type { Worded } from '../../src/model/index.js';
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
  if (!sentence) return undefined;
  return (otherWords('sentences') as Sayings | undefined)?.[sentence.key]?.(sentence.given);
}

/** What the core says, in the language in force; in English where that has no words for it. */
export const saidText = (worded: Worded): string => ownText(worded) ?? worded.text;

/** The same to be drawn: what is English in another language is marked so. */
export function said(worded: Worded): string | TemplateResult {
  const own = ownText(worded);
  if (own !== undefined || spokenNow().words === 'en') return own ?? worded.text;
  return html`<span lang="en">${worded.text}</span>`;
}
