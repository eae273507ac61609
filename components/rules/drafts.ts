/** A text that could not be used, kept as it was typed. */
export interface Draft {
  readonly text: string;
  /** What is wrong and how to mend it. */
  readonly trouble: string;
}

/** Texts that could not be used, by field. A field's key begins with that of its row, which stays when rows move. */
export class Drafts {
  readonly #kept = new Map<string, Draft>();

  get size(): number {
    return this.#kept.size;
  }

  get(key: string): Draft | undefined {
    return this.#kept.get(key);
  }

  keep(key: string, draft: Draft): void {
    this.#kept.set(key, draft);
  }

  drop(key: string): void {
    this.#kept.delete(key);
  }

  /** Forgets the fields of a row that is gone. */
  dropRow(row: string): void {
    for (const key of [...this.#kept.keys()]) if (key.startsWith(`${row}.`)) this.#kept.delete(key);
  }

  clear(): void {
    this.#kept.clear();
  }
}

/** Keys for the rows of a list that move with them. */
export class RowKeys {
  #keys: string[] = [];
  #made = 0;
  readonly #prefix: string;

  constructor(prefix: string) {
    this.#prefix = prefix;
  }

  /** As many keys as there are rows; new ones at the end. */
  fit(count: number): void {
    while (this.#keys.length < count) this.#keys.push(this.#next());
    this.#keys.length = count;
  }

  at(index: number): string {
    return this.#keys[index] ?? '';
  }

  move(from: number, to: number): void {
    this.#keys.splice(to, 0, ...this.#keys.splice(from, 1));
  }

  remove(index: number): void {
    this.#keys.splice(index, 1);
  }

  #next(): string {
    this.#made += 1;
    return `${this.#prefix}${this.#made}`;
  }
}
