import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planFrom, type Source } from '../../../src/tables/index.js';

const folder = new URL('../../../sample-csv/', import.meta.url);
const source = (file: string): Source => ({ file, content: readFileSync(new URL(file, folder)) });

const listed = readFileSync(new URL('broken/README.md', folder), 'utf8')
  .split('\n')
  .filter((line) => /^\| [a-z-]+\.csv /.test(line))
  .map((line) => {
    const [file, kind, severity, line_, column] = line
      .split('|')
      .slice(1)
      .map((cell) => cell.trim());
    return { file: file!, kind: kind!, severity, line: Number(line_), column: column || undefined };
  });

describe('each broken sample', () => {
  it('is listed, and nothing else is', () => {
    const files = readdirSync(new URL('broken/', folder)).filter((name) => name.endsWith('.csv'));
    expect(listed.map((one) => one.file).sort()).toEqual(files.sort());
    expect(files.length).toBeGreaterThanOrEqual(20);
  });

  it.each(listed)(
    '$file gives its one fault at line $line',
    ({ file, kind, severity, line, column }) => {
      const sources = {
        windows: source('windows.csv'),
        [kind]: source(`broken/${file}`),
      };
      const { faults } = planFrom(sources);
      expect(
        faults.map((fault) => ({ ...fault, message: '', mend: '', value: '', row: 0 })),
      ).toEqual([
        {
          code: file.replace('.csv', ''),
          severity,
          file: `broken/${file}`,
          line,
          ...(column !== undefined && { column }),
          message: '',
          mend: '',
          value: '',
          row: 0,
        },
      ]);
      expect(faults[0]!.message).not.toBe('');
      expect(faults[0]!.mend).not.toBe('');
    },
  );
});
