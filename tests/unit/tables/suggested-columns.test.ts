import { describe, expect, it } from 'vitest';
import { chosenColumns, planFrom, type PlanResult } from '../../../src/tables/index.js';
import { mendOf, messageOf } from '../../helpers/problem-words.js';

const own = `Possession;Opens;Closes;Lines blocked;Isolation;Status
WK12;Sat 27/03/2027 22:40;Sun 28/03/2027 08:50;Up Main;E1;confirmed
WK13;20/03/2027 23:15;21/03/2027 07:05;Up Main;E1;requested
`;
const read = (columns = ''): PlanResult =>
  planFrom({
    windows: { file: 'own.csv', content: own },
    zone: 'Europe/London',
    columns: chosenColumns(columns),
  });

describe('a table of moments under headings of its own', () => {
  it('is told which of its columns may be the start and which the end, and how to say so', () => {
    const missing = read().faults.filter((fault) => fault.code === 'column-missing');
    expect(missing.map((fault) => [fault.column, messageOf(fault), mendOf(fault)])).toEqual([
      [
        'start',
        expect.stringContaining('Perhaps it is "Opens".'),
        expect.stringContaining('--columns "Opens=start"'),
      ],
      [
        'end',
        expect.stringContaining('Perhaps it is "Closes".'),
        expect.stringContaining('--columns "Closes=end"'),
      ],
    ]);
  });

  it('has no heading put into a command that a shell would read into', () => {
    const { faults } = planFrom({
      windows: { file: 'own.csv', content: own.replace('Opens', '$(opens)') },
      zone: 'Europe/London',
    });
    const missing = faults.find((fault) => fault.column === 'start')!;
    expect(messageOf(missing)).toContain('Perhaps it is "$(opens)".');
    expect(mendOf(missing)).toContain('--columns "HEADING=start"');
  });

  it('is read once what was told is said', () => {
    const { plan, faults } = read('Opens=start; Closes=end');
    expect(faults.filter((fault) => fault.severity === 'error')).toEqual([]);
    // The first is the night on which clocks go on: 10 h 10 by the clock, an hour less in fact.
    expect(plan.windows.map(({ id, start, end }) => [id, (end - start) / 60_000])).toEqual([
      ['WK12', 550],
      ['WK13', 470],
    ]);
  });
});
