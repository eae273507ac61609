import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../src/model/index.js';
import { chosenColumns, planFrom, type PlanResult } from '../../../src/tables/index.js';
import { mendOf, messageOf } from '../../helpers/problem-words.js';

const read = (windows: string, work?: string, columns = ''): PlanResult =>
  planFrom({
    windows: { file: 'windows.csv', content: windows },
    ...(work !== undefined && { work: { file: 'work.csv', content: work } }),
    columns: chosenColumns(columns),
  });
const table = (heading: string, cell: string, more = ''): string =>
  `window,start,end,${heading}${more}\nW1,2027-03-02 23:00,05:00,${cell}${more.replace(/[a-z]+/g, 'x')}\n`;
const notRead = (faults: readonly Fault[]): readonly Fault[] =>
  faults.filter((fault) => fault.code === 'heading-not-read');

describe('a table that may hold who is in danger under a heading nobody reads', () => {
  it('is refused by the name of the heading, with what might be meant, its cells and the mend', () => {
    const { plan, faults } = read(table('Blokked lnes', 'Up;Down'));
    expect(plan.windows).toEqual([]);
    expect(notRead(faults)).toMatchObject([
      { severity: 'error', file: 'windows.csv', line: 1, column: 'Blokked lnes' },
    ]);
    expect(messageOf(faults[0]!)).toContain('Did you mean lines?');
    expect(messageOf(faults[0]!)).toContain('"Up;Down"');
    expect(mendOf(faults[0]!)).toContain('--columns "Blokked lnes=lines"');
  });

  it('is refused for each heading that is not read, be it ever so plain', () => {
    const { faults } = read(table('lines', 'Up', ',Remarks,Foreman'));
    expect(notRead(faults).map((fault) => fault.column)).toEqual(['Remarks', 'Foreman']);
    expect(mendOf(faults[0]!)).toContain('--columns "Remarks="');
  });

  it('is read once somebody says what the heading holds, or that it stays unread', () => {
    const { plan, faults } = read(table('Strips', 'Up'), undefined, 'Strips=lines');
    expect(faults).toEqual([]);
    expect(plan.windows[0]!.lines).toEqual(['Up']);
    for (const said of ['Remarks=', 'remarks = not read', 'windows:Remarks=', 'column 4=']) {
      const { plan: kept, notes } = read(table('Remarks', 'x'), undefined, said);
      expect(kept.windows).toHaveLength(1);
      expect(notes.map((note) => note.code)).not.toContain('headings-not-read');
    }
  });

  it('is read where lines, isolation and status are all there, and the heading is told of', () => {
    const { plan, faults, notes } = read(
      'window,start,end,lines,isolation,status,Remarks\nW1,2027-03-02 23:00,05:00,Up,,confirmed,x\n',
    );
    expect(faults).toEqual([]);
    expect(plan.windows).toHaveLength(1);
    expect(notes.find((note) => note.code === 'headings-not-read')).toMatchObject({
      count: 1,
      places: [{ table: 'windows', column: 'Remarks', rows: [] }],
    });
  });

  it('is read where every heading is read, and where a column has neither heading nor cell', () => {
    expect(read(table('title', 'x')).plan.windows).toHaveLength(1);
    expect(read(table('', '')).plan.windows).toHaveLength(1);
    expect(read(table('', 'Up')).plan.windows).toHaveLength(0);
  });

  it('is refused among work where lines or isolation are not there, whatever the status', () => {
    const windows = table('lines', 'Up');
    const work = 'activity,minutes,lines,Dead stretch\nA,60,Up,OV9\n';
    const { plan, faults } = read(windows, work);
    expect(plan.activities).toEqual([]);
    expect(messageOf(notRead(faults)[0]!)).toContain('Did you mean isolation?');
    const said = read(windows, work, 'work:Dead stretch=isolation');
    expect(said.plan.activities[0]!.isolation).toEqual(['OV9']);
  });
});

describe('the headings seen in trials', () => {
  it.each([
    ['lines possessed', 'Up', { lines: ['Up'] }],
    ['Isolated sections', 'OV1', { isolation: [{ section: 'OV1' }] }],
    ['ISOLATION SECTIONS', 'OV1', { isolation: [{ section: 'OV1' }] }],
    ['Gesperrte Gleise', 'Up', { lines: ['Up'] }],
    ['Voies interceptées', 'Up', { lines: ['Up'] }],
    ['state', 'requested', { status: 'requested' }],
    ['Buchungsstatus', 'requested', { status: 'requested' }],
  ])('%s is known among windows, and read', (heading, cell, expected) => {
    const { plan, faults } = read(table(heading, cell));
    expect(faults).toEqual([]);
    expect(plan.windows[0]).toMatchObject(expected);
  });

  it.each([
    ['possession lines', 'Up', 'lines'],
    ['Possession Line(s)', 'Up', 'lines'],
    ['Track blocked', 'Up', 'lines'],
    ['Lines affected', 'Up', 'lines'],
    ['Planned isolation', 'OV1', 'isolation'],
    ['Coupures', 'OV1', 'isolation'],
    ['Agreed state', 'requested', 'status'],
    ['Staus', 'requested', 'status'],
  ])(
    '%s is refused among windows by its name, with its meaning offered',
    (heading, cell, field) => {
      const { plan, faults } = read(table(heading, cell));
      expect(plan.windows).toEqual([]);
      expect(notRead(faults)).toMatchObject([{ severity: 'error', line: 1, column: heading }]);
      expect(messageOf(faults[0]!)).toContain(`Did you mean ${field}`);
      expect(mendOf(faults[0]!)).toContain(`--columns "${heading}=${field}"`);
      const said = read(table(heading, cell), undefined, `${heading}=${field}`);
      expect(said.faults).toEqual([]);
      expect(said.plan.windows).toHaveLength(1);
    },
  );

  it.each([
    ['isolated sections', 'OV9', 'isolation'],
    ['Sections isolated', 'OV9', 'isolation'],
    ['Isolation sections', 'OV9', 'isolation'],
    ['possession lines', 'Down', 'lines'],
    ['Track blocked', 'Down', 'lines'],
  ])('%s is refused among work by its name, with its meaning offered', (heading, cell, field) => {
    const { plan, faults } = read(
      table('lines', 'Up'),
      `activity,minutes,${heading}\nA,60,${cell}\n`,
    );
    expect(plan.activities).toEqual([]);
    expect(notRead(faults)).toMatchObject([
      { severity: 'error', file: 'work.csv', column: heading },
    ]);
    expect(messageOf(faults[0]!)).toContain(`Did you mean ${field}`);
    expect(mendOf(faults[0]!)).toContain(`--columns "${heading}=${field}"`);
  });

  it('refuse a table that has the column too, until somebody says which is meant', () => {
    const both =
      'window,start,end,lines,isolation,status,possession lines\nW1,2027-03-02 23:00,05:00,Up,,confirmed,Down\n';
    const { plan, faults } = read(both);
    expect(plan.windows).toEqual([]);
    expect(notRead(faults)).toMatchObject([{ column: 'possession lines' }]);
    expect(messageOf(faults[0]!)).toContain('"lines" is, though both may hold the lines');
    const linesOf = (said: string): unknown =>
      read(both, undefined, said).plan.windows.map((window) => window.lines);
    expect(linesOf('possession lines=lines')).toEqual([['Down']]);
    expect(linesOf('possession lines=')).toEqual([['Up']]);
    expect(read(both.replace(',Down', ',')).plan.windows).toHaveLength(1);
    const work = 'activity,minutes,lines,isolation,isolated sections\nA,60,Up,OV1,OV9\n';
    expect(notRead(read(table('lines', 'Up'), work).faults)).toHaveLength(1);
  });

  it('are read among work', () => {
    const { plan, faults } = read(
      table('lines', 'Up'),
      'Task,Mins per unit,Units,Installed,Isolation,Lines required,Required by\nA,30,8,2,OV1,Up,2027-05-01\n',
    );
    expect(faults).toEqual([]);
    expect(plan.activities[0]).toMatchObject({
      work: { units: 8, done: 2, minutesPerUnit: 30 },
      isolation: ['OV1'],
      lines: ['Up'],
    });
    expect(plan.activities[0]!.keyDate).toBeDefined();
  });

  it('do not pass for what they are not', () => {
    for (const heading of ['Lines open', 'Lines not blocked', 'Line speed', 'Isolation status'])
      expect(notRead(read(table(heading, 'x')).faults)).toHaveLength(1);
  });

  it('keep the unit they name', () => {
    const { plan } = read(table('lines', 'Up'), 'activity,units,hours per unit\nA,3,2\n');
    expect(plan.activities[0]!.work).toMatchObject({ minutesPerUnit: 120 });
  });
});

describe('columns said on a command line', () => {
  it('that no table has are told of', () => {
    const { faults } = read(table('lines', 'Up'), undefined, 'Nowhere=title');
    expect(faults).toMatchObject([{ code: 'mapped-column-missing', column: 'Nowhere' }]);
  });

  it('come before what would be read, and leave every other heading as it is', () => {
    const { plan } = read(
      'window,start,end,lines,other\nW1,2027-03-02 23:00,05:00,Up,Down\n',
      undefined,
      'other=lines;lines=',
    );
    expect(plan.windows[0]!.lines).toEqual(['Down']);
  });

  it('are refused where they are not HEADING=COLUMN', () => {
    for (const text of ['lines', '=lines', 'a=wings', 'work:a=zone'])
      expect(() => chosenColumns(text)).toThrow(RangeError);
  });
});
