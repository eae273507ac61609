import { drawerNow, spokenNow } from './language.js';

/** How often words were wanted that were not there yet: whatever was made meanwhile lacks them. */
export let missed = 0;

/** Words that are loaded when they are first needed, by language. */
export class LateWords<Book> {
  readonly #books: Readonly<Record<string, () => Promise<Book>>>;
  readonly #loaded = new Map<string, Book>();
  /** Languages that could not be loaded: a drawing does not ask again, as telling of it draws anew. */
  readonly #failed = new Set<string>();

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
    if (this.#failed.has(words)) return undefined;
    void this.load(words).then(
      () => drawer?.requestUpdate(),
      (error: unknown) => {
        this.#failed.add(words);
        // For the page to tell: whoever draws has no place for it.
        throw error;
      },
    );
    return undefined;
  }
}
