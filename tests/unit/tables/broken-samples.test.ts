import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planFrom, type Source } from '../../../src/tables/index.js';
import { mendOf, messageOf } from '../../helpers/problem-words.js';

const folder = new URL('../../../sample-csv/', import.meta.url);
const source = (file: string): Source => ({ file, content: readFileSync(new URL(file, folder)) });

const listed = ['broken', 'questionable'].flatMap((where) =>
  readFileSync(new URL(`${where}/README.md`, folder), 'utf8')
    .split('\n')
    .filter((line) => /^\| [a-z-]+\.csv /.test(line))
    .map((line) => {
      const [file, kind, severity, line_, column] = line
        .split('|')
        .slice(1)
        .map((cell) => cell.trim());
      return {
        where,
        file: file!,
        kind: kind!,
        severity,
        line: Number(line_),
        column: column || undefined,
      };
    }),
);

describe('each broken sample', () => {
  it.each([
    ['broken', 'error'],
    ['questionable', 'warning'],
  ])('in %s is listed, and nothing else is, as an %s', (where, severity) => {
    const files = readdirSync(new URL(`${where}/`, folder)).filter((name) => name.endsWith('.csv'));
    const here = listed.filter((item) => item.where === where);
    expect(here.map((item) => item.file).sort()).toEqual(files.sort());
    expect(new Set(here.map((item) => item.severity))).toEqual(new Set([severity]));
  });

  it.each(listed)(
    '$where/$file gives its one fault at line $line',
    ({ where, file, kind, severity, line, column }) => {
      const sources = {
        windows: source('windows.csv'),
        [kind]: source(`${where}/${file}`),
      };
      const { faults } = planFrom(sources);
      expect(faults.map((fault) => ({ ...fault, sentence: 'one', value: '', row: 0 }))).toEqual([
        {
          code: file.replace('.csv', ''),
          severity,
          file: `${where}/${file}`,
          line,
          ...(column !== undefined && { column }),
          sentence: 'one',
          value: '',
          row: 0,
        },
      ]);
      expect(messageOf(faults[0]!)).not.toBe('');
      expect(mendOf(faults[0]!)).not.toBe('');
    },
  );
});
