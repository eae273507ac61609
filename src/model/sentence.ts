import type { Instant } from '../calendar/index.js';

/**
 * A sentence apart from the words of a language: which of its catalogue it is, and what it is made with. Pages in other
 * languages word it by this; JSON holds the English text alone.
 */
export class Sentence {
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

/** A text in English, with the sentence that it words; without one where it is put together of others' words. */
export interface Worded {
  readonly text: string;
  readonly sentence?: Pick<Sentence, 'key' | 'given'>;
}

/** Why something is so, in English, with the sentence that it words. */
export interface Reasoned {
  readonly why: string;
  readonly sentence?: Worded['sentence'];
}

/** A text as a reason. */
export const because = ({ text, sentence }: Worded): Reasoned =>
  sentence ? { why: text, sentence } : { why: text };

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
    sentence: new Sentence(key, given),
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
