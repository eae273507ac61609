import { readFileSync } from 'node:fs';
import { join, dirname } from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { shiftLogFile } from '../../../src/risk/index.js';
import { cli, files, type CliRun } from '../../helpers/cli.js';

const tables = {
  'windows.csv': 'window,start,end,zone\nW1,2027-03-27 23:00,2027-03-28 06:00,Europe/London\n',
  'work.csv':
    'package,activity,title,minutes,minutes low,minutes high\nP1,CUT,Cut out the deck,120,100,180\n',
  'rules.json': JSON.stringify({
    schema: 1,
    name: 'r',
    leadIn: [
      { step: 'Protect', minutes: 30 },
      { step: 'Test', minutes: 10 },
    ],
    leadOut: [{ step: 'Test', minutes: 20 }],
    margin: { minutes: 45 },
  }),
};

/** @param options A `--no-json` among them asks for the words for people. */
function run(more: Record<string, string>, ...options: string[]): { run: CliRun; folder: string } {
  const paths: Record<string, string> = files({ ...tables, ...more });
  const named = options.map((option) => paths[option] ?? option);
  const done = cli(
    'handback',
    ...['--windows', paths['windows.csv']!, '--work', paths['work.csv']!],
    ...['--rules', paths['rules.json']!, '--zone', 'Europe/London', '--seconds', '1'],
    ...['--runs', '500', ...(options.includes('--no-json') ? [] : ['--json'])],
    ...named.filter((option) => option !== '--no-json'),
  );
  return { run: done, folder: dirname(paths['windows.csv']!) };
}

const panels = {
  'work.csv':
    'package,activity,title,units,minutes per unit,minutes low,minutes high,make safe,made good by,window\nP1,LAY,Lay panels,4,60,50,90,10,none,W1\nP1,RAIL,Rail,9,60,,,10,none,W1\n',
};

interface Told {
  windows: {
    cutOffs: { name: string; kind: string; state: string; latestStart: string }[];
    goPoints: { at: string; tooLateFor: string[] }[];
    decisions: { pointOfNoReturn: string | null; latestAbort: string | null }[];
    live: {
      forecastHandback: string;
      advice: { say: string; more: number | null; why: string };
      askedBack: { by: string; pOnTime: number } | null;
      marginLeftMinutes: number;
      options: {
        activity?: string;
        units?: number;
        more?: number;
        pOnTime: number;
        leaveOut: string[];
      }[];
    } | null;
    verdict: string;
    marginMinutes: number;
    p50: string;
    verdictParts: { chance: { wanted: number | null; marginNeededMinutes: number } };
    notPlaced: { activity: string; units?: number }[];
    speedLimits: { activity: string }[];
  }[];
}
const told = (done: CliRun): Told['windows'][number] =>
  (JSON.parse(done.stdout) as Told).windows[0]!;

describe('handback on the command line', () => {
  it('takes what was seen from a table whose headings are matched loosely', () => {
    const seen =
      'Activity ID;Step Name;Stage;Actual Start;Actual Finish\n;Protect;;27/03/2027 23:00;27/03/2027 23:40\n;Test;lead-in;27/03/2027 23:40;27/03/2027 23:50\nCUT;;;28/03/2027 00:00;\n';
    const { run: done } = run(
      { 'seen.csv': seen },
      '--at',
      '2027-03-28 00:30',
      '--actuals',
      'seen.csv',
    );
    expect(done.stderr).toBe('');
    const { cutOffs, live } = told(done);
    expect(cutOffs.map((cutOff) => [cutOff.name, cutOff.kind, cutOff.state])).toEqual([
      ['Possession granted', 'lead-in', 'done'],
      ['Protect', 'lead-in', 'done'],
      ['Test', 'lead-in', 'done'],
      ['Cut out the deck', 'work', 'begun'],
      ['Test', 'lead-out', 'to-come'],
    ]);
    // 00:00 + 2 h of work + 20 min: the hour from 01:00 to 02:00 is skipped that night.
    expect(live!.forecastHandback).toBe('2027-03-28T03:20:00+01:00');
  });

  it('tells nobody to carry on where no grant is recorded', () => {
    const said = (seen: string): string => {
      const files = { 'seen.csv': `step,started,finished\n${seen}` };
      return run(files, '--at', '2027-03-27 23:00', '--actuals', 'seen.csv', '--no-json').run
        .stdout;
    };
    expect(said('')).toContain('NO GRANT RECORDED');
    expect(said('')).not.toContain('CARRY ON');
    expect(said('Possession granted,2027-03-27 23:00,2027-03-27 23:00\n')).toContain('CARRY ON');
  });

  it('takes what was seen from the log of a shift', () => {
    const at = Date.parse('2027-03-28T00:10:00Z');
    const log = shiftLogFile('W1', [
      { id: '1', at, enteredAt: at, by: 'x', event: { kind: 'activity-started', activity: 'CUT' } },
    ]);
    const { run: done } = run(
      { 'log.json': log },
      '--at',
      '2027-03-28 00:30',
      '--actuals',
      'log.json',
    );
    expect(told(done).live!.forecastHandback).toBe('2027-03-28T03:30:00+01:00');
  });

  it.each([
    ['started,finished\n', 'line 1', 'column "activity"'],
    ['activity,step\nCUT,Protect\n', 'line 2', 'not both'],
    ['activity,step\nX9,\n', 'line 2', 'no activity "X9"'],
    ['step\nPaint\n', 'column "step"', 'no step "Paint" in the rules'],
    ['step\nTest\n', 'column "stage"', 'Both the lead-in and the lead-out'],
    ['step,stage\nProtect,lead-out\n', 'column "stage"', 'has no step "Protect"'],
    ['step,stage\nTest,middle\n', 'column "stage"', 'lead-in or lead-out'],
    ['activity,started\nCUT,soon\n', 'column "started"', 'soon'],
    ['activity,started\nCUT,2027-03-28 01:30\n', 'column "started"', 'Mend:'],
    [
      'activity,started,finished\nCUT,2027-03-28 00:30,2027-03-28 00:10\n',
      'column "finished"',
      'finished before it started',
    ],
    ['activity,units done\nCUT,2.5\n', 'column "units done"', 'not a whole number'],
    ['activity,minutes left,most left\nCUT,30,20\n', 'column "minutes left"', 'do not rise'],
    ['activity,most left\nCUT,20\n', 'column "minutes left"', 'most likely are not'],
    ['activity,units done\nCUT,2\n', 'column "units done"', 'not repeated work'],
    ['activity,started\nCUT,2026-03-28 00:10\n', 'column "started"', 'half a day before'],
    [
      'activity,started\nCUT,2027-03-28 00:10\nCUT,2027-03-28 00:20\n',
      'line 3',
      'Line 2 records CUT already',
    ],
    ['line,finished\nUp,2027-03-28 00:10\n', 'column "line"', 'No window has a line "Up"'],
    ['activity,asked back by\nCUT,2027-03-28 04:00\n', 'column "asked back by"', 'names nothing'],
    ['activity,agreed end\nCUT,2027-03-28 04:00\n', 'column "agreed end"', 'names nothing'],
  ])('refuses %j and says where and why', (seen, where, why) => {
    const { run: done } = run(
      { 'seen.csv': seen },
      '--at',
      '2027-03-28 00:30',
      '--actuals',
      'seen.csv',
    );
    expect(done.code).toBe(1);
    expect(done.stderr).toContain('seen.csv');
    expect(done.stderr).toContain(where);
    expect(done.stderr).toContain(why);
  });

  it('takes lines granted one by one and an early asking from the same table', () => {
    const { run: done } = run(
      {
        'windows.csv':
          'window,start,end,zone,lines\nW1,2027-03-27 23:00,2027-03-28 06:00,Europe/London,Up;Down\n',
        'seen.csv':
          'line,finished,expected,asked back by\nUp,2027-03-27 23:10,,\nDown,,2027-03-28 02:30,\n,,,2027-03-28 04:00\n',
      },
      ...['--at', '2027-03-28 00:30', '--actuals', 'seen.csv'],
    );
    expect(done.stderr).toBe('');
    const { live } = told(done);
    // The work names no line and needs both: 02:30, 30 to protect, 10 to test, 2 h of work, 20 to test.
    expect(live!.forecastHandback).toBe('2027-03-28T05:30:00+01:00');
    expect(live!.askedBack).toMatchObject({ by: '2027-03-28T04:00:00+01:00', pOnTime: 0 });
  });

  it('takes the log of an earlier shift beside, for what it opened alone, and refuses two of one shift', () => {
    const two = {
      'windows.csv':
        'window,start,end,zone\nW0,2027-03-26 23:00,2027-03-27 06:00,Europe/London\nW1,2027-03-27 23:00,2027-03-28 06:00,Europe/London\n',
      'work.csv':
        'package,activity,title,minutes,made good by,may wait\nP1,LIFT,Lift out,60,TAMP,\nP1,TAMP,Tamp,90,,yes\n',
      'plan.csv': 'activity,window,from,to\nTAMP,W1,2027-03-27 23:40,2027-03-28 02:10\n',
      'seen.csv': 'step,finished\nProtect,2027-03-27 23:30\n',
      'w0.json': shiftLogFile(
        'W0',
        [
          {
            ...{ id: '1', at: Date.UTC(2027, 2, 27, 2), enteredAt: Date.UTC(2027, 2, 27, 2) },
            ...{ by: 'R.T.', event: { kind: 'activity-finished', activity: 'LIFT' } },
          },
        ],
        Date.UTC(2027, 2, 26, 23),
      ),
    };
    const now = ['--plan', 'plan.csv', '--at', '2027-03-28 04:00', '--actuals', 'seen.csv'];
    const without = run(two, ...now).run;
    const leavesOut = (done: CliRun): boolean =>
      told(done).live!.options.some((option) => option.leaveOut.includes('TAMP'));
    expect(leavesOut(without)).toBe(true);
    const beside = run(two, ...now, '--actuals', 'w0.json').run;
    expect(beside.code).toBe(0);
    expect(beside.stderr).toContain('It is the log of W0, 2027-03-26');
    expect(leavesOut(beside)).toBe(false);
    expect(beside.stdout).toContain('is needed to make good Lift out');
    const twice = run(two, ...now, '--actuals', 'seen.csv').run;
    expect([twice.code, twice.stderr]).toEqual([
      1,
      expect.stringContaining('is a record of this shift too'),
    ]);
  });

  it('takes an earlier end that was agreed, keeps the booked one beside it, and notes it', () => {
    const seen = {
      'seen.csv': 'activity,started,agreed end\nCUT,2027-03-27 23:40,\n,,2027-03-28 05:00\n',
    };
    const { run: done } = run(seen, '--at', '2027-03-28 00:30', '--actuals', 'seen.csv');
    expect(done.stderr).toBe('');
    // 23:40 and 2 h of work is 01:40, an hour of which the clocks skip: 02:40; 20 to test, so 03:00, two hours early.
    expect(told(done)).toMatchObject({
      bookedEnd: '2027-03-28T06:00:00+01:00',
      agreedEnd: '2027-03-28T05:00:00+01:00',
      live: { forecastHandback: '2027-03-28T03:00:00+01:00', marginLeftMinutes: 120 },
    });
    const { notes } = JSON.parse(done.stdout) as { notes: { code: string }[] };
    expect(notes.map((note) => note.code)).toContain('end-agreed');
  });

  it.each([
    ['2027-03-28 12:00', 'The booked end of W1'],
    ['2027-03-27 12:00', 'W1 opens Sat 27 Mar 2027 23:00'],
    ['2027-04-28 12:00', 'W1 ended Sun 28 Mar 2027 06:00'],
  ])('at %s says what became of the forecast', (moment, words) => {
    const { run: done } = run({}, '--at', moment);
    expect(done.code).toBe(0);
    const { notes } = JSON.parse(done.stdout) as { notes: { code: string; text: string }[] };
    expect(notes.filter((note) => note.code === 'no-shift').map((note) => note.text)).toEqual([
      expect.stringContaining(words),
    ]);
  });

  it('tells points of no return and go/no-go points, and writes the cut-offs for a diary', () => {
    const decisions = JSON.stringify({
      commitments: [{ activity: 'CUT', irreversible: true, reinstatementMinutes: 90 }],
      goPoints: [
        { id: 'G1', window: 'W1', name: 'Begin?', holder: 'Site manager', before: 'CUT' },
        { id: 'G2', window: 'W1', name: 'Late', holder: '', at: '2027-03-28T04:30:00+01:00' },
      ],
    });
    const { run: done, folder } = run(
      { 'decisions.json': decisions, 'out.ics': '' },
      ...['--decisions', 'decisions.json', '--calendar', 'out.ics'],
    );
    expect(done.code).toBe(0);
    const one = told(done);
    // 06:00 less 45 of margin, 20 of test and 120 of work.
    expect(one.decisions[0]!.pointOfNoReturn).toBe('2027-03-28T02:55:00+01:00');
    // 06:00 less 45 of margin, 20 of test and 90 to put the railway back.
    expect(one.decisions[0]!.latestAbort).toBe('2027-03-28T03:25:00+01:00');
    expect(one.goPoints.map((point) => point.at)).toEqual([
      '2027-03-28T02:55:00+01:00',
      '2027-03-28T04:30:00+01:00',
    ]);
    const calendar = new ICAL.Component(
      ICAL.parse(readFileSync(join(folder, 'out.ics'), 'utf8')) as unknown[] as never,
    );
    expect(calendar.getAllSubcomponents('vevent')).toHaveLength(one.cutOffs.length + 5);
  });

  it('gives the one line of advice with stopping now among the ways on', () => {
    const seen = 'activity,started,units done,units at\nLAY,2027-03-27 23:30,2,2027-03-28 03:40\n';
    const rules = JSON.stringify({
      ...JSON.parse(tables['rules.json']),
      handback: { chance: 0.9 },
    });
    const { run: done } = run(
      { ...panels, 'rules.json': rules, 'seen.csv': seen },
      ...['--at', '2027-03-28 03:40', '--actuals', 'seen.csv'],
    );
    const { live, notPlaced } = told(done);
    expect(live!.options.filter((option) => option.activity === 'LAY').at(-1)).toMatchObject({
      units: 2,
      more: 0,
    });
    // 03:40, an hour or more for each panel, 10 to make safe, 20 to test, back by 06:00: one more fits.
    expect(live!.advice).toMatchObject({ say: 'more', more: 1 });
    expect(notPlaced).toMatchObject([{ activity: 'RAIL', units: 5 }]);
  });

  it('calls a window held only with the chance wanted, and tells what nobody asked for', () => {
    const asked = (more: object) =>
      run({ 'rules.json': JSON.stringify({ ...JSON.parse(tables['rules.json']), ...more }) }).run;
    const notes = (done: CliRun): string[] =>
      (JSON.parse(done.stdout) as { notes: { code: string }[] }).notes.map((note) => note.code);
    const plain = asked({});
    expect(told(plain).verdict).toBe('held');
    expect(notes(plain)).toContain('no-chance-wanted');
    const late = { name: 'Late grant', chance: 0.5, delay: { low: 300, likely: 300, high: 300 } };
    const risky = asked({
      handback: { chance: 0.8 },
      risk: { events: [{ ...late, step: 'Possession granted' }] },
    });
    expect(told(risky).verdict).toBe('chance-low');
    expect(notes(risky)).not.toContain('no-chance-wanted');
    // Five hours and the longest work: the margin wanted is known to the minute.
    expect(told(risky).verdictParts.chance).toMatchObject({ wanted: 0.8 });
    expect(told(risky).verdictParts.chance.marginNeededMinutes).toBeGreaterThan(280);
  });

  it('takes events from a table, and refuses one that names nothing of the plan', () => {
    const head = 'event,chance,minutes low,minutes,minutes high,step,activity\n';
    const events = (rows: string): CliRun =>
      run({ 'risk.csv': `${head}${rows}` }, '--risk', 'risk.csv').run;
    const none = told(run({}).run);
    const sure = told(events('Late grant,100 %,60,60,60,Possession granted,\n'));
    expect(Date.parse(sure.p50) - Date.parse(none.p50)).toBe(60 * 60_000);
    for (const [row, what] of [
      ['Late grant,10,60,60,60,Possession granted,', 'no chance'],
      ['Late grant,0.1,60,50,60,Possession granted,', 'do not rise'],
      ['Late grant,0.1,60,60,60,,', 'one of "activity"'],
      ['Late grant,0.1,60,60,60,,X9', 'no activity "X9"'],
    ] as const) {
      const bad = events(`${row}\n`);
      expect(bad.code).toBe(1);
      expect(bad.stderr).toContain(what);
      expect(bad.stderr).toContain('risk.csv');
    }
  });

  it('refuses decisions that make no sense, with their place', () => {
    const bad = JSON.stringify({ goPoints: [{ id: 'G1', window: 'W1', name: 'x', holder: 'y' }] });
    const { run: done } = run({ 'decisions.json': bad }, '--decisions', 'decisions.json');
    expect(done.code).toBe(1);
    expect(done.stderr).toContain('goPoints[0]');
  });
});
