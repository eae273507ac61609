import { html, type TemplateResult } from 'lit';
import type { Worded } from '../../src/model/index.js';
import { spokenNow } from './language.js';

type Catalogue = Readonly<Record<string, ((given: object) => string) | undefined>>;

/** What the core says in another language, loaded when the first page asks for it. */
const others: Readonly<Record<string, () => Promise<{ readonly sentences: object }>>> = {
  de: () => import('../sentences/german.js'),
};
const loaded = new Map<string, Catalogue>();

/** Has the sentences of a language at hand; without any, what the core says stays English. */
export async function loadSentences(language: string): Promise<void> {
  const load = others[language];
  if (load && !loaded.has(language)) loaded.set(language, (await load()).sentences as Catalogue);
}

function ownText({ sentence }: Worded): string | undefined {
  return sentence && loaded.get(spokenNow().words)?.[sentence.key]?.(sentence.given);
}

/** What the core says, in the language in force; in English where that has no words for it. */
export const saidText = (worded: Worded): string => ownText(worded) ?? worded.text;

/** The same to be drawn: what is English in another language is marked so. */
export function said(worded: Worded): string | TemplateResult {
  const own = ownText(worded);
  if (own !== undefined || spokenNow().words === 'en') return own ?? worded.text;
  return html`<span lang="en">${worded.text}</span>`;
}
