import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PlanNote } from '../../../src/model/index.js';
import { planFrom, type PlanSources } from '../../../src/tables/index.js';

const notesOf = (files: {
  readonly [K in 'windows' | 'work' | 'resources' | 'rules']?: string;
}): readonly PlanNote[] => {
  const sources = Object.fromEntries(
    Object.entries(files).map(([kind, content]) => [kind, { file: `${kind}.csv`, content }]),
  );
  return planFrom(sources as unknown as PlanSources).notes;
};
const of = (notes: readonly PlanNote[], code: string): readonly PlanNote[] =>
  notes.filter((note) => note.code === code);

const windows = `window,start,end,lines,isolation,status
W1,2027-03-02 23:00,05:00,Up,OV1,confirmed
W2,2027-03-03 23:00,05:00,,,
W3,2027-03-04 23:00,05:00,Up,,requested
W4,2027-03-05 23:00,05:00,Up,OV1,offered
W5,2027-03-06 23:00,05:00,,,withdrawn
`;
const work = `activity,minutes,lines,isolation,resources,place,made good by,occupies
A,60,Up,OV1,crane:1;gang:2,inside,none,alone
B,60,,,crane:1,inside,,
C,60,,,gang:1,outside,,
`;

describe('what nobody said', () => {
  it('is told of windows with counts and cells, withdrawn ones aside', () => {
    const notes = notesOf({ windows });
    expect(of(notes, 'lines-blank')).toMatchObject([
      { count: 1, places: [{ table: 'windows', column: 'lines', rows: [1] }] },
    ]);
    expect(of(notes, 'isolation-blank')).toMatchObject([{ count: 2, places: [{ rows: [1, 2] }] }]);
    expect(of(notes, 'status-blank')).toMatchObject([{ count: 1, places: [{ rows: [1] }] }]);
    expect(of(notes, 'window-requested')).toMatchObject([{ count: 1, places: [{ rows: [2] }] }]);
    expect(of(notes, 'window-offered')).toMatchObject([{ count: 1, places: [{ rows: [3] }] }]);
    expect(of(notes, 'lines-blank')[0]!.text).toBe(
      '1 of 4 windows names no line that is blocked, so it is taken to serve work on any line: W2.',
    );
  });

  it('is told of inside work', () => {
    const notes = notesOf({ windows, work });
    expect(of(notes, 'lines-blank')[1]).toMatchObject({
      count: 1,
      places: [{ table: 'work', rows: [1] }],
    });
    expect(of(notes, 'made-good-blank')).toMatchObject([{ count: 1, places: [{ rows: [1] }] }]);
    expect(of(notes, 'occupies-blank')).toMatchObject([{ count: 1, places: [{ rows: [1] }] }]);
  });

  it('is told of a column that is not there at all', () => {
    const notes = notesOf({ windows: 'window,start,end\nW1,2027-03-02 23:00,05:00\n' });
    expect(of(notes, 'status-blank')).toMatchObject([
      { count: 1, places: [{ table: 'windows', column: 'status', rows: [0] }] },
    ]);
    expect(of(notes, 'lines-blank')).toHaveLength(1);
  });

  it('is told of resources that nobody lists', () => {
    expect(of(notesOf({ windows, work }), 'no-resources')).toMatchObject([{ count: 2 }]);
    const notes = notesOf({ windows, work, resources: 'resource,capacity\ngang,2\n' });
    expect(of(notes, 'no-resources')).toEqual([]);
    expect(of(notes, 'resource-not-listed')).toMatchObject([
      { count: 1, places: [{ table: 'work', column: 'resources', rows: [0, 1] }] },
    ]);
  });

  it('is told of rules that deduct nothing, and not of rules that do', () => {
    expect(of(notesOf({ windows }), 'no-rules')).toHaveLength(1);
    const none = '{"schema":1,"name":"mine"}';
    expect(of(notesOf({ windows, rules: none }), 'no-rules')[0]!.text).toContain('"mine"');
    const margin = '{"schema":1,"name":"m","margin":{"minutes":30}}';
    expect(of(notesOf({ windows, rules: margin }), 'no-rules')).toEqual([]);
  });

  it('is silent where everything is said', () => {
    const read = (name: string): string =>
      readFileSync(new URL(`../../../sample-csv/${name}`, import.meta.url), 'utf8');
    const notes = notesOf({
      windows: windows.split('\n').slice(0, 2).join('\n'),
      work: work.split('\n').slice(0, 2).join('\n'),
      resources: 'resource,capacity\ngang,2\ncrane,1\n',
      rules: read('rules/electrified-two-track.json'),
    });
    expect(notes).toEqual([]);
  });
});

describe('names of lines and sections that do not meet', () => {
  const notes = (lines: string, needs: string, also = ''): readonly PlanNote[] =>
    notesOf({
      windows: `window,start,end,lines,isolation,status\nW1,2027-03-02 23:00,05:00,${lines},OV1,confirmed\n${also}`,
      work: `activity,minutes,lines,isolation,place,made good by,occupies\nA,60,${needs},OV1,inside,none,alone\n`,
    }).filter((note) => /in-no-window|joined/.test(note.code));

  it('are told of by name, with what windows have', () => {
    expect(notes('Up;Down', 'Slow')).toMatchObject([
      {
        code: 'lines-in-no-window',
        count: 1,
        text: 'No window blocks "Slow", which A needs: it finds no window that serves it. Windows block "Up", "Down".',
        places: [{ table: 'work', column: 'lines', rows: [0] }],
      },
    ]);
    expect(notes('UP', 'Up')[0]!.text).toContain('There is "UP".');
    expect(notes('Up;Down', 'Down')).toEqual([]);
  });

  it('are told of where several look joined into one, and only where each part stands alone too', () => {
    const down = 'W2,2027-03-03 23:00,05:00,Down,OV1,confirmed\n';
    for (const sign of ['&', '+', '/', ' and ', ' | '])
      expect(notes(`Up${sign}Down`, 'Up', down).map((note) => note.code)).toEqual([
        'lines-in-no-window',
        'lines-joined',
      ]);
    expect(notes('Up & Down', 'Up', down)[1]!.places).toEqual([
      { table: 'windows', column: 'lines', rows: [0] },
    ]);
    expect(notes('Up & Down;Up', 'Up')).toEqual([]);
  });

  it('say nothing of a withdrawn window, of outside work, or where no window names a line', () => {
    expect(notes('', 'Up')).toEqual([]);
    expect(
      notesOf({ windows, work: work.replace('C,60,,,', 'C,60,Nowhere,,') }).filter((note) =>
        /in-no-window/.test(note.code),
      ),
    ).toEqual([]);
  });
});
