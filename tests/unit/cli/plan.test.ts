import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { speaking } from '../../../components/shared/language.js';
import { loadSentences, saidText } from '../../../components/shared/said.js';
import { english } from '../../../src/engine/english/say.js';
import { createInlineEngine } from '../../../src/engine/index.js';
import {
  cautions,
  withAgreed,
  planFile,
  type PlanDocument,
  type SayPhrase,
} from '../../../src/model/index.js';
import { nameAmong } from '../../../src/engine/plan-out/plan-name.js';
import { planOutFile, type PlanFormat } from '../../../src/engine/plan-out/plan-file.js';
import { planFromDocument } from '../../../src/tables/index.js';
import { planId } from '../../../src/planner/plan-id.js';
import { cli, files, type CliRun } from '../../helpers/cli.js';
import { at } from '../../helpers/clock.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../../helpers/documents.js';

const windows = `window,start,end,zone,status
N1,2027-03-27 22:00,2027-03-28 06:00,Europe/London,confirmed
N2,2027-04-03 22:00,2027-04-04 06:00,Europe/London,confirmed`;
const work = `package,activity,minutes,minutes low,minutes high,units,minutes per unit,set up,make safe,after,key date
P,CUT,120,100,180,,,,,,
P,FIX,,,,6,40,10,10,CUT,2027-04-05`;
const plan = `Activity ID,Possession,Starts,Finishes,Units
CUT,N1,27/03/2027 22:20,28/03/2027 00:20,
FIX,N1,2027-03-28 00:20,2027-03-28 03:00,2
FIX,N2,2027-04-03T22:20:00+01:00,2027-04-04T01:20:00+01:00,4`;
const placements = [
  { activity: 'CUT', window: 'N1', from: at('2027-03-27T22:20'), to: at('2027-03-28T00:20') },
  {
    activity: 'FIX',
    window: 'N1',
    from: at('2027-03-28T00:20'),
    to: at('2027-03-28T03:00'),
    units: 2,
  },
  {
    activity: 'FIX',
    window: 'N2',
    from: at('2027-04-03T22:20'),
    to: at('2027-04-04T01:20'),
    units: 4,
  },
];
const document: PlanDocument = aDocument(
  'Plan of work',
  { windows: tableOf('windows.csv', windows), work: tableOf('work.csv', work) },
  { rules: stepRules(), prices: minuteBook },
);

interface Told {
  plan: { id: string; given: boolean };
  broken?: { activity: string; code: string; text: string }[];
  notes: { code: string }[];
  moved?: { activity: string; from: string | null; to: string | null; reason: string }[];
  from?: { id: string };
  placements: { activity: string; window: string }[];
  windows: { window: string; marginMinutes: number; pOnTime: number; work?: string[] }[];
  total: string;
  risk: { expectedCost: string };
}

function run(more: Record<string, string | Uint8Array>, verb: string, ...words: string[]): CliRun {
  const paths: Record<string, string> = files({
    'windows.csv': windows,
    'work.csv': work,
    'rules.json': JSON.stringify(stepRules()),
    'prices.json': JSON.stringify(minuteBook),
    'plan.csv': plan,
    ...more,
  });
  const named = words.map((word) => paths[word] ?? word);
  return cli(
    verb,
    ...['--windows', paths['windows.csv']!, '--work', paths['work.csv']!],
    ...['--rules', paths['rules.json']!, '--zone', 'Europe/London', '--json', ...named],
  );
}
const told = (done: CliRun): Told => {
  expect(done.stderr).toBe('');
  return JSON.parse(done.stdout) as Told;
};
const priced = ['--prices', 'prices.json', '--window', 'N1', '--minutes', '30', '--runs', '500'];

describe('a plan of work given to the command line', () => {
  it('is read from a table with loose headings and times of either kind, and named', () => {
    const found = told(run({}, 'handback', '--plan', 'plan.csv', '--runs', '200'));
    expect(found.plan).toEqual({ id: planId(placements), given: true });
    expect(found.broken).toEqual([]);
    expect(found.notes.map((note) => note.code)).not.toContain('plan-made');
  });

  it('is read from what allocate prints', () => {
    const printed = run({}, 'allocate', '--seconds', '1').stdout;
    const { plan: made } = JSON.parse(printed) as Told;
    const found = told(
      run({ 'plan.json': printed }, 'handback', '--plan', 'plan.json', '--runs', '200'),
    );
    expect(found.plan).toEqual({ id: made.id, given: true });
  });

  // The desk saves by the same calls: `planFile` of its document, `planOutFile` of the plan that it shows.
  it('that the desk saved as plan file, table or workbook has the figures that the desk shows', async () => {
    const agreed = withAgreed(undefined, { name: 'First', agreedAt: 0, placements });
    const engine = createInlineEngine();
    const shown = await engine.handback(document, { placements, seed: 1, runs: 300 });
    const { allocation } = await engine.assess(document, placements);
    const { plan: read } = planFromDocument(document);
    const save = async (format: PlanFormat, say: SayPhrase = english): Promise<Uint8Array> => {
      const named = nameAmong(agreed, placements);
      const out = { plan: read, allocation, named, document: document.name };
      return (await planOutFile(out, format, 0, say)).bytes;
    };
    await loadSentences('de');
    const german: SayPhrase = (phrase) =>
      speaking({ figures: 'de', words: 'de' }, () => saidText(phrase));
    const saved = {
      'saved.json': planFile({ ...document, agreed }),
      'saved.csv': await save('csv'),
      'saved.xlsx': await save('xlsx'),
      'german.csv': await save('csv', german),
      'german.xlsx': await save('xlsx', german),
    };
    for (const name of Object.keys(saved)) {
      const found = told(run(saved, 'handback', '--plan', name, '--runs', '300'));
      expect(found.plan).toMatchObject({ id: planId(placements), given: true, name: 'First' });
      expect(found.broken).toEqual([]);
      expect(
        found.windows.map(({ window, marginMinutes, pOnTime }) => [window, marginMinutes, pOnTime]),
      ).toEqual(
        shown.map(({ window, marginMinutes, simulation }) => [
          ...[window, marginMinutes],
          simulation.outlook.onTime.probability,
        ]),
      );
    }
  });

  it('is saved in German where the page speaks it, times and names as they are', async () => {
    const { allocation } = await createInlineEngine().assess(document, placements);
    const { plan: read } = planFromDocument(document);
    const out = { plan: read, allocation, named: { id: 'I' }, document: 'D' };
    await loadSentences('de');
    const { name, bytes } = await planOutFile(out, 'ics', 0, (phrase) =>
      speaking({ figures: 'de', words: 'de' }, () => saidText(phrase)),
    );
    expect(name).toBe('Arbeitsplan D.ics');
    const events = new ICAL.Component(ICAL.parse(new TextDecoder().decode(bytes)) as unknown[])
      .getAllSubcomponents('vevent')
      .map((part) => new ICAL.Event(part));
    expect(events.map((event) => event.summary)).toEqual([
      ...[
        'N1: CUT, FIX x 2',
        'N2: FIX x 4',
        'CUT in Sperrpause N1',
        'FIX x 2 in Sperrpause N1',
        'FIX x 4 in Sperrpause N2',
      ],
      'Ecktermin von P: nach diesem Plan gehalten',
    ]);
    expect(events[0]?.description).toContain('Sperrpause bestätigt.');
    expect(events[0]?.description).toContain('CUT: Sa., 27. März 2027, 22:20 bis');
    expect(events.at(-1)?.description).toContain('Vorhersage So., 4. Apr. 2027, 01:20');
    for (const { description } of events) {
      expect(description).toContain('Arbeitsplan: Vorschlag, nicht vereinbart (Kennung I).');
      for (const caution of cautions) expect(description).not.toContain(caution);
    }
  });

  it('that was agreed in a plan file has the figures that the engine has of it', async () => {
    const agreed = withAgreed(undefined, { name: 'First', agreedAt: 0, placements });
    const text = planFile({ ...document, agreed });
    const engine = createInlineEngine();
    const [first] = await engine.handback(document, { placements, seed: 1, runs: 500 });
    const cost = await engine.price(document, {
      ...{ window: 'N1', overrunMinutes: 30, maxMinutes: 30, placements },
      handbackMinutes: first!.simulation.handbackMinutes,
    });
    const handback = told(
      run({ 'kept.json': text }, 'handback', '--plan', 'kept.json', '--runs', '500'),
    );
    expect(handback.windows[0]).toMatchObject({
      window: 'N1',
      marginMinutes: first!.marginMinutes,
      pOnTime: first!.simulation.outlook.onTime.probability,
    });
    const price = told(run({ 'kept.json': text }, 'price', '--plan', 'kept.json', ...priced));
    expect(price.total).toBe(cost.at.total);
    expect(price.risk.expectedCost).toBe(cost.expected!.expected);
    expect([handback.plan.id, price.plan.id]).toEqual([planId(placements), planId(placements)]);
  });

  it('gives the same bytes each time', () => {
    const once = (): string => run({}, 'price', '--plan', 'plan.csv', ...priced).stdout;
    const first = once();
    for (let again = 0; again < 4; again += 1) expect(once()).toBe(first);
  });

  it('says what of it no longer holds, and moves nothing', () => {
    const withdrawn = windows.replace(/confirmed$/, 'withdrawn');
    const found = told(
      run({ 'windows.csv': withdrawn }, 'handback', '--plan', 'plan.csv', '--runs', '200'),
    );
    expect(found.plan.id).toBe(planId(placements));
    expect(found.broken).toEqual([
      { activity: 'FIX', code: 'withdrawn', text: 'FIX is in N2, which is withdrawn' },
    ]);
    expect(found.notes.map((note) => note.code)).toContain('plan-broken');
    expect(found.windows.map((window) => window.window)).toEqual(['N1']);
  });

  it('is mended from, with what moved, from where, to where and why', () => {
    const three = `${windows.replace(/confirmed$/, 'withdrawn')}\nN3,2027-04-10 22:00,2027-04-11 06:00,Europe/London,confirmed`;
    const found = told(
      run({ 'windows.csv': three }, 'allocate', '--from', 'plan.csv', '--seconds', '2'),
    );
    expect(found.from).toEqual({ id: planId(placements) });
    expect(found.moved!.every((item) => item.activity === 'FIX' && item.from === 'N2')).toBe(true);
    expect(found.moved![0]!.reason).toContain('withdrawn');
    expect(found.placements.some((placement) => placement.window === 'N2')).toBe(false);
  });

  it('says what is planned in each window beside its booking dates', () => {
    const found = told(
      run(
        { 'booking.json': '{"schema":1,"name":"B","milestones":[]}' },
        'book',
        '--plan',
        'plan.csv',
        '--at',
        '2027-01-01',
        '--booking',
        'booking.json',
      ),
    );
    expect(found.windows.map((window) => window.work)).toEqual([['CUT', 'FIX'], ['FIX']]);
  });

  it('is made where none is given, and the answer says so', () => {
    const found = told(run({}, 'handback', '--runs', '200', '--seconds', '1'));
    expect(found.plan.given).toBe(false);
    expect(found.notes.map((note) => note.code)).toContain('plan-made');
  });

  it.each([
    [
      'an activity that is not there',
      'CUT,N1',
      'CUTT,N1',
      'line 2, column "Activity ID"',
      'no activity "CUTT"',
    ],
    [
      'a window that is not there',
      'FIX,N2',
      'FIX,N9',
      'line 4, column "Possession"',
      'no window "N9"',
    ],
    [
      'a time that cannot be read',
      '2027-03-28 03:00',
      'later',
      'line 3, column "Finishes"',
      '"later"',
    ],
    ['units beyond what is left', '+01:00,4', '+01:00,5', 'line 4, column "Units"', '4 are left'],
    [
      'an end before its start',
      '28/03/2027 00:20',
      '27/03/2027 21:20',
      'line 2, column "Finishes"',
      'before it begins',
    ],
  ])('refuses %s, with its place', (_, was, is, place, words) => {
    const done = run({ 'plan.csv': plan.replace(was, is) }, 'handback', '--plan', 'plan.csv');
    expect(done.code).toBe(1);
    expect(done.stdout).toBe('');
    expect(done.stderr).toContain(`plan.csv, ${place}`);
    expect(done.stderr).toContain(words);
  });

  it('refuses a text that is no plan of work', () => {
    const done = run(
      { 'plan.json': '{"placements": 3}' },
      'price',
      '--plan',
      'plan.json',
      ...priced,
    );
    expect(done.code).toBe(1);
    expect(done.stderr).toContain('plan.json');
  });
});
