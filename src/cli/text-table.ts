/** Columns padded to their widest cell; cells that read as numbers or signed durations stand on the right. */
export function textTable(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = heads.map((head, i) =>
    rows.reduce((widest, row) => Math.max(widest, (row[i] ?? '').length), head.length),
  );
  const numeric = heads.map(
    (_, i) => rows.length > 0 && rows.every((row) => /^[-+]?[\d ]|^$|^–$/.test(row[i] ?? '')),
  );
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, i) => (numeric[i] ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd();
  return [line(heads), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join(
    '\n',
  );
}
