import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { ClassicLevel } from 'classic-level';

/** Why the store would not, in words. */
function reasonOf(error: unknown): string {
  const { cause, message } = error as Error & { cause?: NodeJS.ErrnoException };
  return cause?.code === 'LEVEL_LOCKED'
    ? 'another server has it open; stop that one, or name another folder by --folder'
    : (cause?.message ?? message);
}

/** The folder cannot be used; the message says why and what helps. */
export class ShelfError extends Error {
  override name = 'ShelfError';
}

/** `next` is the number of the next change of a document. */
interface Line {
  next: number;
}

const stateKey = (name: string): string => `${name}!state`;
const changeKey = (name: string, number: number): string =>
  `${name}!change!${String(number).padStart(12, '0')}`;

/**
 * Keeps documents in a folder: the state of each, and the changes since, each written to the disk by itself as it comes.
 * So a server that is killed has lost at most what it was just being sent, and that the sender still has.
 */
export class Shelf {
  readonly #level: ClassicLevel<string, Uint8Array>;
  readonly #lines = new Map<string, Line>();
  #writing: Promise<void> = Promise.resolve();

  private constructor(level: ClassicLevel<string, Uint8Array>) {
    this.#level = level;
  }

  /** @throws {ShelfError} Another server has the folder open, or it cannot be written. */
  static async open(folder: string): Promise<Shelf> {
    const path = join(folder, 'plans');
    try {
      mkdirSync(path, { recursive: true, mode: 0o700 });
      const level = new ClassicLevel<string, Uint8Array>(path, { valueEncoding: 'view' });
      await level.open();
      const shelf = new Shelf(level);
      await shelf.#readLines();
      return shelf;
    } catch (error) {
      throw new ShelfError(`${path} cannot be opened: ${reasonOf(error)}`);
    }
  }

  /** Names of the documents kept. */
  get names(): readonly string[] {
    return [...this.#lines.keys()];
  }

  has(name: string): boolean {
    return this.#lines.has(name);
  }

  /** The state and the changes since; they make the same document in any order. */
  read(name: string): Promise<readonly Uint8Array[]> {
    return this.#level.values({ gte: `${name}!`, lt: `${name}"` }).all();
  }

  /** Keeps one change; resolved once the disk has it. */
  append(name: string, change: Uint8Array): Promise<void> {
    const line = this.#lines.get(name) ?? { next: 0 };
    this.#lines.set(name, line);
    const key = changeKey(name, line.next);
    line.next += 1;
    return this.#queue(() => this.#level.put(key, change, { sync: true }));
  }

  /** Keeps the state of a document in place of the changes that it holds. */
  fold(name: string, state: Uint8Array): Promise<void> {
    const upTo = changeKey(name, this.#lines.get(name)?.next ?? 0);
    this.#lines.set(name, this.#lines.get(name) ?? { next: 0 });
    return this.#queue(async () => {
      const old = await this.#level.keys({ gte: changeKey(name, 0), lt: upTo }).all();
      await this.#level.batch(
        [
          { type: 'put', key: stateKey(name), value: state },
          ...old.map((key) => ({ type: 'del' as const, key })),
        ],
        { sync: true },
      );
    });
  }

  /** Writes what waits and lets the folder go. */
  async close(): Promise<void> {
    await this.#writing.catch(() => undefined);
    await this.#level.close();
  }

  #queue(write: () => Promise<void>): Promise<void> {
    const done = this.#writing.then(write);
    // One that failed must not stop those after it.
    this.#writing = done.catch(() => undefined);
    return done;
  }

  async #readLines(): Promise<void> {
    for (const key of await this.#level.keys().all()) {
      const [name, kind, number] = key.split('!') as [string, string, string?];
      const line = this.#lines.get(name) ?? { next: 0 };
      if (kind === 'change') line.next = Math.max(line.next, Number(number) + 1);
      this.#lines.set(name, line);
    }
  }
}
