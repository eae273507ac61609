/** Far above any real table, and still read within seconds. A file beyond any of these limits is refused. */
export const sizeLimits = { bytes: 64 * 1024 * 1024, rows: 250_000, columns: 2_000 } as const;
