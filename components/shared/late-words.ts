import { drawerNow, spokenNow } from './language.js';

/** How often words were wanted that were not there yet: whatever was made meanwhile lacks them. */
export let missed = 0;

/** Words that are loaded when they are first needed, by language. */
export class LateWords<Book> {
  readonly #books: Readonly<Record<string, () => Promise<Book>>>;
  readonly #loaded = new Map<string, Book>();

  constructor(books: Readonly<Record<string, () => Promise<Book>>>) {
    this.#books = books;
  }

  /** Has the words of a language at hand. */
  async load(language = spokenNow().words): Promise<void> {
    if (!this.#loaded.has(language)) this.#loaded.set(language, await this.#books[language]!());
  }

  /**
   * The words of the language in force; undefined until they are there. The element that was drawing is then drawn anew.
   */
  get now(): Book | undefined {
    const { words } = spokenNow();
    const book = this.#loaded.get(words);
    if (book) return book;
    missed += 1;
    const drawer = drawerNow();
    void this.load(words).then(() => drawer?.requestUpdate());
    return undefined;
  }
}
