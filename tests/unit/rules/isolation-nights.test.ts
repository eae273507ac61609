import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { deadTimes, ruleSetSchema, type Plan } from '../../../src/model/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { ledgerOf } from '../../../src/rules/index.js';
import { planFrom } from '../../../src/tables/index.js';
import { deadIn } from '../../../src/verify/dead.js';
import { Ledgers } from '../../../src/verify/usable.js';
import { activity } from '../../helpers/plan-builders.js';
import { cases } from '../../helpers/cases.js';

const CASES = cases(Number(process.env['ISOLATION_CASES'] ?? 30));
const zones = [
  ['Europe/London', '2027-03-26', '2027-10-29'],
  ['America/St_Johns', '2027-03-12', '2027-11-05'],
  ['America/Santiago', '2027-04-02', '2027-09-03'],
  ['Asia/Beirut', '2027-03-26', '2027-10-29'],
  ['Australia/Lord_Howe', '2027-04-02', '2027-10-01'],
  ['Asia/Kolkata', '2027-06-11', '2027-06-11'],
  ['UTC', '2027-06-11', '2027-06-11'],
] as const;

interface Case {
  readonly zone: string;
  /** Local times as the table has them. */
  readonly start: Temporal.PlainDateTime;
  readonly end: Temporal.PlainDateTime;
  readonly daily: readonly [Temporal.PlainTime, Temporal.PlainTime];
  readonly dated: readonly [Temporal.PlainDateTime, Temporal.PlainDateTime];
}

/** A blockade of two to five days over a clock change, one section dead each day, one in a dated stretch besides. */
function aCase(seed: number): Case {
  const random = createRandom(seed * 7919 + 3);
  const [zone, ...days] = zones[random.below(zones.length)]!;
  const clock = (): Temporal.PlainTime =>
    Temporal.PlainTime.from({
      hour: [21, 22, 23, 0, 1, 2, 3, 6, 12][random.below(9)]!,
      minute: 15 * random.below(4),
    });
  const start = Temporal.PlainDate.from(days[random.below(2)]!)
    .subtract({ days: random.below(2) })
    .toPlainDateTime(clock());
  const end = start.add({ days: 1 + random.below(4), minutes: 45 + 15 * random.below(90) });
  const from = start.add({ minutes: 15 * random.below(40) });
  return {
    zone,
    start,
    end,
    daily: [clock(), clock()],
    dated: [from, from.add({ minutes: 30 + 15 * random.below(100) })],
  };
}

const text = (at: Temporal.PlainDateTime): string => at.toString().slice(0, 16).replace('T', ' ');

/** Whether a local time is shown, and shown once, so that no reading has to be chosen. */
function isPlain(local: Temporal.PlainDateTime, zone: string): boolean {
  const [a, b] = (['earlier', 'later'] as const).map(
    (disambiguation) => local.toZonedDateTime(zone, { disambiguation }).epochMilliseconds,
  );
  return a === b;
}

const instant = (local: Temporal.PlainDateTime, zone: string): number =>
  local.toZonedDateTime(zone).epochMilliseconds;

/** The minutes of a window at which a clock on the wall is in the time of day, asked minute by minute. */
function deadMinutes({ zone, start, end, daily: [from, to] }: Case): number[] {
  const found: number[] = [];
  const minutes = (time: { hour: number; minute: number }): number => time.hour * 60 + time.minute;
  const [first, last] = [minutes(from), minutes(to)];
  for (let at = instant(start, zone); at < instant(end, zone); at += MINUTE) {
    const now = minutes(Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone));
    if (first < last ? first <= now && now < last : first <= now || now < last) found.push(at);
  }
  return found;
}

const minutesOf = (
  stretches: readonly { readonly start: number; readonly end: number }[],
): number[] =>
  stretches.flatMap(({ start, end }) =>
    Array.from({ length: (end - start) / MINUTE }, (_, k) => start + k * MINUTE),
  );

const rules = ruleSetSchema.parse({
  schema: 1,
  name: 'test',
  leadIn: [
    { step: 'Protect', minutes: 30 },
    { step: 'Isolate', minutes: 45, when: 'isolation' },
  ],
  leadOut: [
    { step: 'Clear', minutes: 20 },
    { step: 'Give up', minutes: 25, when: 'isolation' },
    { step: 'Lift protection', minutes: 15 },
  ],
  margin: { minutes: 30 },
});

describe('isolation with times of each day in a long window', () => {
  it('is dead in just the minutes in which a clock on the wall says so, in any zone', () => {
    let [some, withLedger] = [0, 0];
    for (let seed = 1; seed <= CASES; seed += 1) {
      const one = aCase(seed);
      const { zone, start, end, daily, dated } = one;
      const plainDays = [-1, 0, 1, 2, 3, 4, 5, 6].flatMap((days) =>
        daily.map((time) => start.toPlainDate().add({ days }).toPlainDateTime(time)),
      );
      if (![start, end, ...dated, ...plainDays].every((local) => isPlain(local, zone))) continue;
      if (daily[0].equals(daily[1])) continue;
      const cell = `D [${daily.map((time) => time.toString().slice(0, 5)).join('-')}];E [${dated.map(text).join(' - ')}]`;
      const content = `window,start,end,isolation\nW,${text(start)},${text(end)},${cell}\n`;
      const read = planFrom({ windows: { file: 'w', content }, zone });
      const window = read.plan.windows[0];
      // A dated stretch that reaches past the window is refused by name.
      if (instant(dated[1], zone) > instant(end, zone)) {
        expect(read.faults.map((fault) => fault.code)).toContain('isolation-outside-window');
        continue;
      }
      const about = `seed ${seed}, ${content}`;
      expect(window, about).toBeDefined();
      const [d, e] = window!.isolation;
      const walked = deadMinutes(one);
      expect(minutesOf(deadTimes(d!, window!, zone)), about).toEqual(walked);
      expect(minutesOf(deadIn(window!, ['D'])), about).toEqual(walked);
      expect(minutesOf(deadTimes(e!, window!, zone)), about).toHaveLength(
        (instant(dated[1], zone) - instant(dated[0], zone)) / MINUTE,
      );
      some += 1;

      const plan: Plan = { ...read.plan, rules };
      for (const isolation of [['D'], ['D', 'E']]) {
        const work = activity('A', 10, { isolation });
        const ledger = ledgerOf(window!, { isolation, loud: false }, rules);
        expect(
          new Ledgers(plan).of(window!, work).usable.filter((each) => each.end > each.start),
          about,
        ).toEqual(ledger.usable);
        if (ledger.usable.length > 1) withLedger += 1;
        // Nothing usable is live, and each stretch leaves time to isolate before it and to give up after it.
        const dead = new Set(minutesOf(deadIn(window!, isolation)));
        const needed = ledger.usable.map((each) => ({
          start: each.start - 45 * MINUTE,
          end: each.end + 25 * MINUTE,
        }));
        expect(
          minutesOf(needed).filter((at) => !dead.has(at)),
          about,
        ).toEqual([]);
      }
    }
    expect(some).toBeGreaterThan(CASES / 4);
    expect(withLedger).toBeGreaterThan(CASES / 10);
  });
});
