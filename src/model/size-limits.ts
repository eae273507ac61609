/**
 * Far above any real table, and still read within seconds. A file beyond any of these limits is refused; `typed` is the most
 * characters of a text that is typed.
 */
export const sizeLimits = {
  bytes: 64 * 1024 * 1024,
  rows: 250_000,
  columns: 2_000,
  typed: 100_000,
} as const;
