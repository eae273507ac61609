/** What a table of works stays far below, and what reads within seconds. A file beyond any of them is not read. */
export const sizeLimits = { bytes: 64 * 1024 * 1024, rows: 250_000, columns: 2_000 } as const;
