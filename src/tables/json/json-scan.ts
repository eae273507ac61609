/** What a look through JSON text found; each place is an offset in the text. */
export interface JsonScan {
  /** Where the text stops being JSON, where it does. */
  readonly brokenAt?: number;
  /** The first key that its object already has: `JSON.parse` would drop the earlier value without a word. */
  readonly twice?: { readonly key: string; readonly at: number };
}

const deepest = 200;
const text = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const plainValue = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const space = /[ \t\n\r]*/y;

/** Finds where text stops being JSON (RFC 8259), or repeats a key. Nesting beyond 200 counts as broken. */
export function scanJson(source: string): JsonScan {
  const scanner = new Scanner(source);
  const end = scanner.value(0, 0);
  const rest = end === undefined ? undefined : scanner.skip(end);
  const brokenAt =
    rest === undefined || rest < source.length ? (rest ?? scanner.brokenAt) : undefined;
  return {
    ...(brokenAt !== undefined && { brokenAt }),
    ...(scanner.twice && { twice: scanner.twice }),
  };
}

/** Each method takes the offset of what it expects and gives the offset after it; `undefined` once broken. */
class Scanner {
  readonly #source: string;
  brokenAt = 0;
  twice: { key: string; at: number } | undefined;

  constructor(source: string) {
    this.#source = source;
  }

  skip(at: number): number {
    return this.#match(space, at) ?? at;
  }

  value(from: number, depth: number): number | undefined {
    const at = this.skip(from);
    const sign = this.#source[at];
    if (depth > deepest) return this.#broken(at);
    if (sign === '{') {
      const keys = new Set<string>();
      return this.#list(at + 1, '}', (value) => this.#entry(value, depth, keys));
    }
    if (sign === '[') return this.#list(at + 1, ']', (value) => this.value(value, depth + 1));
    return this.#match(sign === '"' ? text : plainValue, at) ?? this.#broken(at);
  }

  #entry(from: number, depth: number, keys: Set<string>): number | undefined {
    const at = this.skip(from);
    const end = this.#match(text, at);
    if (end === undefined) return this.#broken(at);
    const key = JSON.parse(this.#source.slice(at, end)) as string;
    if (keys.has(key)) this.twice ??= { key, at };
    keys.add(key);
    const colon = this.skip(end);
    return this.#source[colon] === ':' ? this.value(colon + 1, depth + 1) : this.#broken(colon);
  }

  #list(from: number, close: string, item: (at: number) => number | undefined): number | undefined {
    let at = this.skip(from);
    if (this.#source[at] === close) return at + 1;
    for (;;) {
      const end = item(at);
      if (end === undefined) return undefined;
      at = this.skip(end);
      if (this.#source[at] === close) return at + 1;
      if (this.#source[at] !== ',') return this.#broken(at);
      at += 1;
    }
  }

  #match(pattern: RegExp, at: number): number | undefined {
    pattern.lastIndex = at;
    return pattern.test(this.#source) ? pattern.lastIndex : undefined;
  }

  #broken(at: number): undefined {
    this.brokenAt = at;
    return undefined;
  }
}
