/**
 * Sixteen hexadecimal digits that change with the inputs: two sheets with the same stamp were worked out from the same
 * plan. No proof against somebody who wants to deceive.
 *
 * @param inputs Anything JSON can hold; `undefined` counts as absent, and the order of keys does not matter.
 * @see the FNV-1a hash of Fowler, Noll and Vo, with two starting values (the first as published, from memory)
 */
export const stampOf = (inputs: unknown): string => stampOfText(sortedJson(inputs));

/** As JSON whose keys are in order, so that equal values have one text. */
export const sortedJson = (value: unknown): string =>
  JSON.stringify(value, (_, item: unknown) =>
    item !== null && typeof item === 'object' && !Array.isArray(item)
      ? Object.fromEntries(
          Object.entries(item).sort(([a], [other]) => (a < other ? -1 : a > other ? 1 : 0)),
        )
      : item,
  );

/** The stamp of what the text says. */
export function stampOfText(text: string): string {
  return [0x811c9dc5, 0x9e3779b9]
    .map((start) => {
      let hash = start;
      for (let k = 0; k < text.length; k += 1) {
        const unit = text.charCodeAt(k);
        hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
        hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
      }
      return (hash >>> 0).toString(16).padStart(8, '0');
    })
    .join('');
}
