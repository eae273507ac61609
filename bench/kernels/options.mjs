// The options the benches share: --seconds N, --only TEXT, and flags such as --highs.
/** Reads `--name value` and bare `--flag` from the command line. */
export function options(defaults) {
  const read = { ...defaults };
  for (let i = 2; i < process.argv.length; i++) {
    const name = process.argv[i].replace(/^--/, '');
    if (!(name in defaults)) {
      console.error(`unknown option --${name}; known: ${Object.keys(defaults).join(', ')}`);
      process.exit(2);
    }
    if (typeof defaults[name] === 'boolean') read[name] = true;
    else
      read[name] =
        typeof defaults[name] === 'number' ? Number(process.argv[++i]) : process.argv[++i];
  }
  return read;
}

export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length === 0) return NaN;
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;
}

/** A row of text cells, padded to `widths`; negative widths align left. */
export function row(cells, widths) {
  return cells
    .map((cell, i) =>
      widths[i] < 0 ? String(cell).padEnd(-widths[i]) : String(cell).padStart(widths[i]),
    )
    .join('  ');
}

/** A clock in ms: by the wall or, with `cpu`, by this process's own processor time, for a machine shared with others. */
export function clockOf(cpu) {
  return cpu ? () => process.cpuUsage().user / 1000 : () => performance.now();
}
