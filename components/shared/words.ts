import type { ReactiveControllerHost } from 'lit';
import { Language, speaking, type Spoken } from './language.js';
import { loadSentences } from './said.js';

interface Worded<W> extends ReactiveControllerHost, HTMLElement {
  readonly strings: Partial<W>;
}

/** The words of an element in another language, loaded when the first page asks for them. */
export type Catalogues<W> = Readonly<Record<string, () => Promise<{ readonly strings: W }>>>;

/** The words of an element in the language of the place where it stands; English where there are no others. */
export class Words<W extends object> extends Language {
  readonly #worded: Worded<W>;
  readonly #english: W;
  readonly #others: Catalogues<W>;
  #spoken: W;
  #own: Partial<W> | undefined;
  #all: W;

  constructor(host: Worded<W>, english: W, others: Catalogues<W>) {
    super(host);
    this.#worded = host;
    this.#english = this.#spoken = this.#all = english;
    this.#others = others;
  }

  /** The words in force, with those that the page gave in their place. The same object until one of them is another. */
  get now(): W {
    const { strings } = this.#worded;
    if (this.#own !== strings) {
      this.#own = strings;
      this.#all = { ...this.#spoken, ...strings };
    }
    return this.#all;
  }

  /** Does something outside of a drawing in the element's language. */
  speaking<T>(work: () => T): T {
    return speaking(this.spoken, work);
  }

  protected override speak(spoken: Spoken): void {
    const wanted = spoken.figures.split('-')[0] ?? '';
    const load = this.#others[wanted];
    if (load === undefined) this.#take({ ...spoken, words: 'en' }, this.#english);
    else {
      super.speak(spoken);
      void Promise.all([load(), loadSentences(wanted)]).then(([{ strings }]) => {
        if (this.spoken.figures === spoken.figures)
          this.#take({ ...spoken, words: wanted }, strings);
      });
    }
  }

  #take(spoken: Spoken, words: W): void {
    this.#spoken = words;
    this.#own = undefined;
    super.speak(spoken);
  }
}
