import { MINUTE } from '../../../src/calendar/index.js';
import type { Engine, PackageSummary, Results } from '../../../src/engine/types.js';
import type { FitVerdict } from '../../../src/planner/fit/types.js';
import {
  emptyTable,
  ordinaryNeeds,
  ruleSetSchema,
  type AccessWindow,
  type Activity,
  type PlanDocument,
} from '../../../src/model/index.js';
import type { Ledger, LedgerKind, LedgerRow } from '../../../src/rules/types.js';
import type { Allocation } from '../../../src/planner/search/types.js';
import { at, zone } from '../../helpers/clock.js';

export { at, zone };

export function aWindow(
  id: string,
  start: string,
  end: string,
  more: Partial<AccessWindow> = {},
): AccessWindow {
  return {
    id,
    title: `Night at ${id}`,
    start: at(start),
    end: at(end),
    zone,
    lines: [],
    isolation: [],
    status: 'confirmed',
    trainsAfter: '',
    ...more,
  };
}

/** A ledger of the given rows, back to back from the window's start. */
export function aLedger(
  window: AccessWindow,
  rows: readonly [LedgerKind, string, number][],
): Ledger {
  let start = window.start;
  const made = rows.map(([kind, rule, minutes]): LedgerRow => {
    const row = {
      kind,
      rule,
      minutes,
      start,
      end: start + minutes * MINUTE,
      why: `${rule} applies.`,
    };
    start = row.end;
    return row;
  });
  const usable = made.filter((row) => row.kind === 'usable');
  return {
    window: window.id,
    needs: ordinaryNeeds,
    grossMinutes: Math.round((window.end - window.start) / MINUTE),
    usableMinutes: usable.reduce((sum, row) => sum + row.minutes, 0),
    rows: made,
    usable: usable.map(({ start: from, end }) => ({ start: from, end })),
    shortfallMinutes: 0,
    barred: [],
  };
}

export const night = aWindow('N1', '2027-02-09 23:30', '2027-02-10 05:30');
/** Clocks go forward at 01:00: 9 h 10 by the clock face's 10 h 10. */
export const springNight = aWindow('S2', '2027-03-27 22:50', '2027-03-28 09:00');
export const blockade = aWindow('B3', '2027-05-01 23:00', '2027-05-03 02:00');
export const withdrawn = aWindow('N4', '2027-06-02 23:30', '2027-06-03 05:30', {
  status: 'withdrawn',
});
export const windows = [night, springNight, blockade, withdrawn];

const rowsFor = (minutes: number): [LedgerKind, string, number][] => [
  ['lead-in', 'Take the line', 30],
  ['usable', 'Usable', minutes - 120],
  ['curfew', 'Quiet hour', 30],
  ['lead-out', 'Inspect and test', 30],
  ['margin', 'Required handback margin', 30],
];

export const ledgers: Ledger[] = [
  aLedger(night, rowsFor(360)),
  aLedger(springNight, rowsFor(550)),
  aLedger(blockade, rowsFor(1620)),
  {
    ...aLedger(withdrawn, rowsFor(360)),
    barred: [{ code: 'withdrawn', text: 'The window is withdrawn.' }],
  },
];

export const packages: PackageSummary[] = ['Deck', 'Track', 'Wire'].map((id, index) => ({
  id,
  title: `${id} work`,
  activities: [`${id[0] ?? ''}10`],
  needs: ordinaryNeeds,
  minutes: 120 * (index + 1),
  rowsLeftOut: 0,
}));

export const activities: Activity[] = packages.map((pack) => ({
  id: pack.activities[0]!,
  package: pack.id,
  title: pack.title,
  after: [],
  work: { kind: 'whole', minutes: pack.minutes },
  lines: [],
  isolation: [],
  resources: [],
  loud: false,
  place: 'inside',
}));

/** Deck fits all but the withdrawn window; Track is short by 30; Wire has its reasons. */
export const fits: FitVerdict[] = packages.flatMap((pack, row) =>
  windows.map((window): FitVerdict => {
    const base = { package: pack.id, window: window.id, placements: [] };
    if (window.status === 'withdrawn')
      return {
        ...base,
        fits: false,
        spareMinutes: null,
        reasons: [{ code: 'withdrawn', text: 'The window is withdrawn.' }],
      };
    if (row === 0)
      return {
        ...base,
        fits: true,
        spareMinutes: 80,
        reasons: [],
        placements: [
          {
            activity: 'D10',
            window: window.id,
            from: window.start,
            to: window.start + 120 * MINUTE,
          },
        ],
      };
    return row === 1
      ? {
          ...base,
          fits: false,
          spareMinutes: -30,
          reasons: [{ code: 'too-short', text: 'The window is 30 min short.', shortByMinutes: 30 }],
        }
      : {
          ...base,
          fits: false,
          spareMinutes: null,
          reasons: [{ code: 'isolation-not-booked', text: 'Section OV1 is not booked.' }],
        };
  }),
);

export const allocation: Allocation = {
  placements: [
    {
      activity: 'D10',
      window: 'N1',
      from: night.start + 30 * MINUTE,
      to: night.start + 150 * MINUTE,
    },
    {
      activity: 'T10',
      window: 'S2',
      from: springNight.start + 30 * MINUTE,
      to: springNight.start + 270 * MINUTE,
      units: 4,
    },
  ],
  unplaced: [
    {
      activity: 'W10',
      reasons: [{ code: 'isolation-not-booked', text: 'Section OV1 is not booked.' }],
    },
  ],
  finishesAt: null,
  windowsUsed: 2,
  keyDates: [
    {
      package: 'Deck',
      due: at('2027-03-01 00:00'),
      forecast: night.start + 150 * MINUTE,
      floatMinutes: 27_000,
      floatWindows: 0,
      met: true,
      sharesFloatWith: [],
    },
    {
      package: 'Track',
      due: at('2027-03-20 00:00'),
      forecast: springNight.start + 270 * MINUTE,
      floatMinutes: -11_000,
      floatWindows: 0,
      met: false,
      sharesFloatWith: ['Deck'],
    },
    {
      package: 'Wire',
      due: at('2027-04-01 00:00'),
      forecast: null,
      floatMinutes: null,
      floatWindows: null,
      met: false,
      sharesFloatWith: [],
    },
  ],
  certificate: {
    proven: false,
    lowerBound: 0,
    objective: 11_000,
    mostPlaced: true,
    cutShort: false,
    holds: true,
    verified: true,
    objectives: [{ name: 'key-dates', value: 11_000, lowerBound: 0, proven: false }],
    text: 'best found, at most 11000 min from best',
  },
  unstated: [],
  notes: [],
  floats: [
    {
      activity: 'D10',
      earliestStart: night.start,
      earliestFinish: night.end,
      latestStart: night.start,
      latestFinish: night.end,
      totalFloatMinutes: 0,
      freeFloatMinutes: 0,
      floatIs: 'working',
      critical: true,
    },
  ],
};

export const rules = ruleSetSchema.parse({
  schema: 1,
  name: 'Test rules',
  leadIn: [{ step: 'Take the line', minutes: 30, source: 'Invented for this test' }],
  margin: { minutes: 30 },
});

export const planDocument: PlanDocument = {
  schema: 1,
  name: 'Test plan',
  zone,
  tables: {
    windows: {
      file: 'windows.csv',
      columns: ['window', 'title', 'start', 'end', 'colour of the hut'],
      rows: windows.map((window) => [window.id, window.title, 'typed', 'typed', 'green']),
    },
    work: {
      file: 'work.csv',
      columns: ['package', 'activity', 'title'],
      rows: activities.map((activity) => [activity.package, activity.id, activity.title]),
    },
    resources: emptyTable('resources.csv'),
    trains: emptyTable('trains.csv'),
  },
  rules,
};

export const results: Results = {
  plan: { zone, windows, activities, resources: [], rules },
  faults: [
    {
      code: 'bad-time',
      severity: 'error',
      file: 'work.csv',
      line: 3,
      row: 1,
      column: 'title',
      value: 'x',
      sentence: { key: 'not-a-number', given: { text: 'x' } },
    },
  ],
  notes: [],
  unread: {},
  ledgers,
  trains: [],
  packages,
  fits,
};

const notSampled = (): Promise<never> => Promise.reject(new Error('not in the samples'));

/** An engine whose answers are the samples; what it was asked is kept. */
export function sampleEngine(over: Partial<Engine> = {}): Engine & { asked: string[] } {
  const asked: string[] = [];
  return {
    asked,
    recompute: async () => (asked.push('recompute'), results),
    importFiles: async (files, document) => ({
      document,
      report: files.map((file) => ({
        file: file.name,
        kind: 'windows' as const,
        encoding: 'utf-8',
        delimiter: ';',
        rows: 2,
        matched: [{ column: 'Possession', field: 'window' }],
        unmatched: ['colour of the hut'],
        faults: [
          {
            code: 'time-does-not-exist',
            severity: 'error' as const,
            file: file.name,
            line: 7,
            column: 'start',
            sentence: {
              key: 'time-does-not-exist',
              given: { local: '01:30', zone: 'Europe/London', last: '00:59', next: '02:00' },
            },
          },
        ],
      })),
    }),
    allocate: async () => (asked.push('allocate'), allocation),
    assess: async () => ({ id: 'a', broken: [], allocation }),
    handback: notSampled,
    price: notSampled,
    options: notSampled,
    account: notSampled,
    book: notSampled,
    people: notSampled,
    noise: notSampled,
    lifting: notSampled,
    checkFits: async (_, claims) => claims.map(() => []),
    compareRules: notSampled,
    exportFiles: notSampled,
    exportTable: notSampled,
    allocateToChance: notSampled,
    replan: notSampled,
    shortNotice: notSampled,
    dispose: () => undefined,
    ...over,
  };
}

/** A key pressed on an element, as a person's browser sends it. */
export function press(target: Element, key: string, more: KeyboardEventInit = {}): boolean {
  return target.dispatchEvent(
    new KeyboardEvent('keydown', { key, bubbles: true, composed: true, cancelable: true, ...more }),
  );
}

/** The next drawing. Only the page in front draws: the runner opens one at a time. */
export function frame(): Promise<void> {
  return new Promise((resolve) => requestAnimationFrame(() => resolve()));
}
