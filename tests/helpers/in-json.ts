/** A value as the command line writes it: of what is worded, the English text alone. */
export const inJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
