import { describe, expect, it } from 'vitest';
import { rosterMend, type RosterMend } from '../../../../src/engine/site/mend-roster.js';
import { applySteps } from '../../../../src/plan/apply-steps.js';
import { peopleOf } from '../../../../src/engine/site/people.js';
import { sitePlan } from '../../../../src/engine/site/site-plan.js';
import { aDocument, tableOf } from '../../../helpers/documents.js';

const two = (n: number): string => String(n).padStart(2, '0');
const roster = tableOf(
  'roster.csv',
  [
    'turn,crew,start,end,travel minutes,window,remark',
    ...Array.from(
      { length: 6 },
      (_, i) => `A${i + 1},Gang A,2027-03-${22 + i} 07:00,16:00,30,,kept`,
    ),
    'A7,Gang A,2027-03-28 06:00,18:30,30,,long',
    ',Gang B,2027-10-30 22:00,2027-10-31 07:00,0,,',
    ...Array.from(
      { length: 9 },
      (_, i) => `C${i + 1},Gang C,2027-04-${two(1 + i)} 08:00,15:00,0,,`,
    ),
  ].join('\n'),
);
const document = aDocument('Roster', { roster });
const people = (table = roster) =>
  peopleOf(sitePlan({ ...document, tables: { ...document.tables, roster: table } }), {});
const before = people();
const made = (table: typeof roster, { cells, removeRows }: RosterMend): typeof roster =>
  applySteps(table, [{ cells }, { removeRows }]);
const mended = (...changes: Parameters<typeof rosterMend>[2]) =>
  made(roster, rosterMend(roster, before.turns, changes, document.zone));

describe('rosterMend', () => {
  it('leaves as many breaches as was said of all changes together, read anew', () => {
    expect(before.breaches.length).toBeGreaterThan(1);
    const after = people(mended(...before.together.changes));
    expect(after.faults).toEqual(before.faults);
    expect(after.breaches).toHaveLength(before.together.left);
  });

  it('ends the breach that each change was offered for', () => {
    for (const breach of before.breaches)
      for (const mend of breach.mends) {
        const after = people(mended(mend));
        const same = after.breaches.filter(
          (item) => item.assignment === breach.assignment && item.limit === breach.limit,
        );
        expect({ mend, same }).toEqual({ mend, same: [] });
      }
  });

  it('refuses to give a turn to a crew without the competence that it needs', () => {
    const table = tableOf(
      'roster.csv',
      `turn,crew,start,end,competence
A1,Gang A,2027-03-22 07:00,16:00,crane; slinger
B1,Gang B,2027-03-24 07:00,16:00,crane
C1,Gang C,2027-03-24 07:00,16:00,slinger
C2,Gang C,2027-03-26 07:00,16:00,Crane`,
    );
    const { turns } = people(table);
    const give = (crew: string) =>
      made(
        table,
        rosterMend(table, turns, [{ change: 'give to', turn: 'A1', crew }], document.zone),
      );
    expect(() => give('Gang B')).toThrow('A1 needs slinger: the roster shows none of Gang B');
    expect(give('Gang C').rows[0]).toEqual([
      'A1',
      'Gang C',
      '2027-03-22 07:00',
      '16:00',
      'crane; slinger',
    ]);
  });

  it('writes only the cells that change, and keeps columns that are not read', () => {
    const table = mended({ change: 'finish earlier', turn: 'A7', minutes: 30 });
    expect(table.rows[6]).toEqual([
      'A7',
      'Gang A',
      '2027-03-28 06:00',
      '2027-03-28 18:00',
      '30',
      '',
      'long',
    ]);
    expect(table.rows.filter((_, at) => at !== 6)).toEqual(roster.rows.filter((_, at) => at !== 6));
    expect(roster.rows[6]![3]).toBe('18:30');
  });

  it('finds a turn without a name by who works it and its number', () => {
    const table = mended({ change: 'give to', turn: 'Gang B 1', crew: 'Gang C' });
    expect(table.rows[7]![1]).toBe('Gang C');
    expect(mended({ change: 'drop', turn: 'Gang B 1' }).rows).toHaveLength(roster.rows.length - 1);
  });

  it('writes the offset of a time that clocks show twice', () => {
    // Clocks go back at 02:00 summer time on 31 October 2027: 01:30 comes twice, 330 minutes before 07:00 the second time.
    const second = mended({ change: 'finish earlier', turn: 'Gang B 1', minutes: 330 });
    expect(second.rows[7]![3]).toBe('2027-10-31 01:30+00:00');
    const first = mended({ change: 'finish earlier', turn: 'Gang B 1', minutes: 390 });
    expect(first.rows[7]![3]).toBe('2027-10-31 01:30+01:00');
    const read = (table: typeof roster) =>
      people(table).turns.find((turn) => turn.crew === 'Gang B')!;
    expect(read(second).end - read(first).end).toBe(60 * 60_000);
  });

  it('makes several changes of one turn one after another', () => {
    const table = mended(
      { change: 'move later', turn: 'A1', minutes: 60 },
      { change: 'finish earlier', turn: 'A1', minutes: 30 },
    );
    expect(table.rows[0]!.slice(2, 4)).toEqual(['2027-03-22 08:00', '2027-03-22 16:30']);
  });

  it('refuses a turn that the table does not hold', () => {
    expect(() => mended({ change: 'drop', turn: 'Z9' })).toThrow(RangeError);
  });
});
