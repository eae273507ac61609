import type { Instant } from '../calendar/index.js';

/** A sentence apart from the words of a language: which of its catalogue it is, and what it is made with. */
export interface Sentence {
  readonly key: string;
  readonly given: object;
}

/** A sentence beside its English text, which JSON holds alone. */
export class HiddenSentence implements Sentence {
  readonly key: string;
  readonly given: object;

  constructor(key: string, given: object) {
    this.key = key;
    this.given = given;
  }

  toJSON(): undefined {
    return undefined;
  }
}

/** What is wrong with, or worth saying about, something: as a sentence of the catalogue that its code is of. */
export interface Problem {
  /** kebab-case, stable: tests hang on it, not on words. */
  readonly code: string;
  readonly sentence: Sentence;
}

/** A text as somebody typed it, or a sentence or problem by its key: its words are those of whoever shows it. */
export type Phrase = string | Sentence | Problem;

/** A phrase, or a text with its English beside it. */
export type Told = Phrase | Worded;

/** What a text within a sentence is, in the same language. */
export type SayPhrase = (phrase: Told) => string;

/** Sentences by their keys, each a function of what it is made with. */
type PhraseCatalogue = Readonly<Record<string, (given: never, say: SayPhrase) => string>>;

/** Makes the sentences of a catalogue; its words stay out of whatever makes them. */
export const phrasesOf =
  <C extends PhraseCatalogue>() =>
  <K extends keyof C & string>(key: K, ...given: GivenTo<C[K]>): Sentence => ({
    key,
    given: given[0] ?? {},
  });

/** A text in English, with the sentence that it words; without one where it is put together of others' words. */
export interface Worded {
  readonly text: string;
  readonly sentence?: Sentence;
}

/** Why something is so, in English, with the sentence that it words. */
export interface Reasoned {
  readonly why: string;
  readonly sentence?: Worded['sentence'];
}

/** A text as a reason. */
export const because = ({ text, sentence }: Worded): Reasoned =>
  sentence ? { why: text, sentence } : { why: text };

/** What a sentence is made with: one thing with names, or nothing. */
export type GivenTo<F extends (...all: never) => unknown> =
  Parameters<F> extends readonly [infer G, ...unknown[]] ? [given: G] : [];

export const commonPhrases = {
  joined: (
    { all, between }: { readonly all: readonly Told[]; readonly between: string },
    say: SayPhrase,
  ) => all.map(say).join(between),
};

/** Several texts as one, in their order. */
export const joined = <T extends Told>(all: readonly T[], between: string): T | Sentence =>
  all.length === 1 ? all[0]! : phrasesOf<typeof commonPhrases>()('joined', { all, between });

/** Texts, each once. */
export const eachOnce = (phrases: readonly Phrase[]): readonly Phrase[] => [
  ...new Map(phrases.map((phrase) => [JSON.stringify(phrase), phrase])).values(),
];

/** A moment as a sentence takes it: by the clocks of a zone. */
export interface Moment {
  readonly at: Instant;
  readonly zone: string;
}

/** English sentences by their keys, each with names for what it is made with. */
type Catalogue = Readonly<Record<string, (given: never) => string>>;

/** Says a sentence of a catalogue. */
export type Say<C extends Catalogue> = <K extends keyof C & string>(
  key: K,
  given: Parameters<C[K]>[0],
) => Required<Worded>;

/** What says the sentences of a catalogue. */
export function saysBy<C extends Catalogue>(english: C): Say<C> {
  return (key, given) => ({
    text: english[key]!(given),
    sentence: new HiddenSentence(key, given),
  });
}

export const commonSentences = {
  together: ({ all, between }: { readonly all: readonly Worded[]; readonly between: string }) =>
    all.map(({ text }) => text).join(between),
};

/** Several texts as one, in their order. */
export function together(all: readonly Worded[], between = ' '): Worded {
  if (all.length === 1) return all[0]!;
  const one = saysBy(commonSentences)('together', { all, between });
  // Where a part is English alone, the whole is.
  return all.every(({ sentence }) => sentence) ? one : { text: one.text };
}
