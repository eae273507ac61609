/** A list of an answer that is made while it is written, so that it is never in memory as a whole. */
export class Listed<T> {
  readonly #make: () => Iterable<T>;

  constructor(make: () => Iterable<T>) {
    this.#make = make;
  }

  [Symbol.iterator](): Iterator<T> {
    return this.#make()[Symbol.iterator]();
  }

  toJSON(): T[] {
    return [...this];
  }
}

/** Characters of text written at once. */
const PIECE = 65_536;

/** Like `JSON.stringify`, in pieces; only top-level lists may be `Listed`. */
export function* jsonPieces(value: object): Generator<string> {
  let text = '{';
  let isFirst = true;
  for (const [key, item] of Object.entries(value)) {
    if (item === undefined) continue;
    text += `${isFirst ? '' : ','}${JSON.stringify(key)}:`;
    isFirst = false;
    if (!(item instanceof Listed)) {
      text += JSON.stringify(item);
      continue;
    }
    text += '[';
    let between = '';
    for (const row of item) {
      text += between + JSON.stringify(row);
      between = ',';
      if (text.length < PIECE) continue;
      yield text;
      text = '';
    }
    text += ']';
  }
  yield `${text}}`;
}
