import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, editBetween } from '../../../src/edits/index.js';
import {
  createInlineEngine,
  type Allocation,
  type OptionOutcome,
  type PricedOption,
} from '../../../src/engine/index.js';
import { priceBookSchema, type PlanDocument } from '../../../src/model/index.js';
import { inEnglish, type InEnglish } from '../../helpers/in-english.js';
import { emptyDocument } from '../../helpers/sample.js';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });

const prices = (more: Record<string, unknown> = {}) =>
  priceBookSchema.parse({
    schema: 1,
    name: 'Test book',
    currency: 'GBP',
    source: 'made for the test',
    delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: '50' }] },
    booking: { perWindow: '1000', perHour: '600' },
    reBooking: { perUnit: '80', perVisit: '200' },
    ...more,
  });

const windows =
  'window,start,end\nW1,2027-05-04 23:00,05:00\nW2,2027-05-11 23:00,05:00\nW3,2027-05-18 23:00,05:00\n';
const head =
  'package,activity,after,minutes,minutes low,minutes high,units,minutes per unit,set up,make safe,resources,window\n';
const repeated = `${head}Track,TR,,,35,90,6,40,20,15,gang:1,W1\n`;

interface Case {
  readonly document: PlanDocument;
  readonly allocation: Allocation;
}

async function caseOf(
  work: string,
  resources = 'resource,capacity,rate per hour\ngang,1,60\n',
  book = prices(),
  access = windows,
): Promise<Case> {
  const engine = createInlineEngine();
  const files = [
    file('windows.csv', access),
    file('work.csv', work),
    file('resources.csv', resources),
  ];
  const { document } = await engine.importFiles(files, emptyDocument);
  const priced = { ...document, prices: book };
  return { document: priced, allocation: await engine.allocate(priced, { effort: 0.08 }) };
}

const asked = { window: 'W1', seed: 3, runs: 1500, effortPerOption: 0.08 };
const ask = async ({ document, allocation }: Case, more = {}) =>
  inEnglish(await createInlineEngine().options(document, { ...asked, allocation, ...more }));
const of = (options: readonly InEnglish<OptionOutcome>[], id: string): InEnglish<PricedOption> => {
  const found = options.find((option) => option.id === id);
  if (found?.state !== 'priced') throw new Error(`${id}: ${found?.reason ?? 'absent'}`);
  return found;
};
const pence = (text: string): number => Math.round(Number(text) * 100);

describe('options of a window, through the engine', () => {
  it('adds each option up from its parts, and its difference from the two totals', async () => {
    const { options } = await ask(await caseOf(repeated));
    const planned = of(options, 'as-planned');
    for (const option of options) {
      if (option.state !== 'priced') continue;
      const sum = option.parts.reduce((total, part) => total + pence(part.amount), 0);
      expect(sum).toBe(pence(option.expectedTotal));
      expect(pence(option.difference)).toBe(
        pence(option.expectedTotal) - pence(planned.expectedTotal),
      );
    }
  });

  // Reckoned by hand: with no window after it, whatever is left of the work is never done.
  it('offers no cut-off, and calls no stop the best, that leaves work without a window', async () => {
    const only = windows.split('\n').slice(0, 2).join('\n');
    const late = `${head}Track,TR,,,35,90,7,40,20,15,gang:1,\n`;
    const one = await caseOf(late, undefined, prices({ reBooking: undefined }), only);
    const { options, cheapest, stop } = await ask(one);
    const cut = options.find((option) => option.id === 'cut-off')!;
    expect(cut).toMatchObject({ state: 'infeasible' });
    expect(cut.state === 'priced' ? '' : cut.reason).toContain(
      'no window of the plan begins later',
    );
    expect(cheapest).not.toBe('cut-off');
    expect(stop!.rows.at(-2)).toMatchObject({ unplacedUnits: 1, tiedWithBest: false });
    expect(stop!.bestUnits).toBe(stop!.unitsPlanned);

    const wish = { name: 'Mine', wish: { cutOffAt: one.allocation.placements[0]!.from } };
    const own = (await ask(one, { own: [wish] })).options.at(-1)!;
    expect(own).toMatchObject({ state: 'infeasible' });
    // With a window to go to it is had, and says that no booking of it is counted.
    const two = windows.split('\n').slice(0, 3).join('\n');
    const had = await ask(await caseOf(late, undefined, prices({ reBooking: undefined }), two));
    expect(of(had.options, 'cut-off').notes).toEqual([
      'At least one unit is done in every run.',
      'The price book has no price for work left over: only its plant and labour are counted.',
      'W2 holds no work as planned: what booking it costs is not in the total.',
    ]);
    expect(of(had.options, 'less').notes.at(-1)).toContain('W2 holds no work as planned');
    expect(of(had.options, 'longer').notes.join()).not.toContain('as planned');
  });

  // Held against the engine itself: priced anew where the break-even lies, the two change places.
  it('names prices at which two options change places, and they do', async () => {
    const work = await caseOf(repeated, 'resource,capacity,rate per hour\ngang,1,\n');
    const { options, breakEvens, cheapest } = await ask(work);
    const standing = options.filter((option) => option.state === 'priced');
    expect(breakEvens.filter((breakEven) => breakEven.cheaper === cheapest).length).toBe(
      standing.length - 1,
    );
    const gap = async (book: PlanDocument['prices'], pair: { cheaper: string; dearer: string }) => {
      const again = await ask({ ...work, document: { ...work.document, prices: book } });
      const total = (id: string): number => pence(of(again.options, id).expectedTotal);
      return total(pair.dearer) - total(pair.cheaper);
    };
    const fixedWays = new Set(['as-planned', 'less', 'longer', 'split']);
    const pairs = breakEvens.filter((breakEven) =>
      [breakEven.cheaper, breakEven.dearer].every((id) => fixedWays.has(id)),
    );
    expect(pairs.length).toBeGreaterThan(1);
    const scaled = (by: number) =>
      prices({ delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: (50 * by).toFixed(6) }] } });
    let turned = 0;
    for (const pair of pairs) {
      expect(Number(pair.dearerBy)).toBeGreaterThanOrEqual(0);
      if (pair.overrunTimes === null) continue;
      turned += 1;
      const further = pair.overrunTimes > 1 ? 1.02 : 0.98;
      expect(await gap(scaled(pair.overrunTimes * further), pair), pair.text).toBeLessThan(0);
      expect(await gap(scaled(pair.overrunTimes / further), pair), pair.text).toBeGreaterThan(0);
      expect(pair.text).toContain('becomes the cheaper of the two');
    }
    expect(turned).toBeGreaterThan(0);
    // An hour more is the longer window: it turns where its hour costs what is said.
    const own = (pair: (typeof pairs)[number]) =>
      pair.ownPrices.find((price) => price.option === 'longer');
    const longer = pairs.filter(own);
    expect(longer.length).toBeGreaterThan(0);
    for (const pair of longer) {
      const hour = Number(own(pair)!.amount);
      const booked = (perHour: number) =>
        prices({ booking: { perWindow: '1000', perHour: perHour.toFixed(2) } });
      const other = pair.cheaper === 'longer' ? pair.dearer : pair.cheaper;
      const asked = { cheaper: 'longer', dearer: other };
      expect(await gap(booked(hour - 0.02), asked), pair.text).toBeGreaterThan(0);
      expect(await gap(booked(hour + 0.02), asked), pair.text).toBeLessThan(0);
    }
  });

  it('names the overrun that costs as much as what an option pays beforehand', async () => {
    const work = await caseOf(repeated, 'resource,capacity,rate per hour\ngang,1,\n');
    const { options, breakEvens } = await ask(work);
    const pair = breakEvens.find((breakEven) => breakEven.overrunMinutes !== null)!;
    const parts = of(options, pair.dearer).parts.filter((part) => part.part !== 'overrun');
    const extra = parts.reduce((sum, part) => sum + Number(part.amount), 0);
    // 50 a minute, and as planned pays nothing beforehand.
    expect(pair.overrunMinutes).toBe(Math.ceil(extra / 50));
  });

  it('counts the key date that an option misses, in its parts and in its total', async () => {
    const dated = repeated
      .replace('window\n', 'window,key date\n')
      .replace('W1\n', 'W1,2027-05-06 06:00\n');
    const book = prices({ keyDates: [{ package: 'Track', perDay: '1000', once: '500' }] });
    const [without, { options }] = [
      await ask(await caseOf(dated)),
      await ask(await caseOf(dated, undefined, book)),
    ];
    const dates = (id: string) => of(options, id).parts.filter((part) => part.part === 'key-dates');
    expect(dates('as-planned')).toEqual([]);
    // The unit left over is done in W2, in the night to 12 May: its sixth day has begun since 6 May 06:00.
    expect(dates('less')).toMatchObject([{ what: 'Key date: Track', amount: '6500.00' }]);
    const gain = (id: string): number =>
      pence(of(options, id).expectedTotal) - pence(of(without.options, id).expectedTotal);
    expect([gain('as-planned'), gain('less')]).toEqual([0, 650_000]);
  });

  it('counts run by run what an overrun does to a key date', async () => {
    const dated = repeated
      .replace('window\n', 'window,key date\n')
      .replace('W1\n', 'W1,2027-05-05 05:10\n');
    const book = prices({ keyDates: [{ once: '7000' }] });
    const [without, asIs] = [
      await ask(await caseOf(dated)),
      await ask(await caseOf(dated, undefined, book)),
    ];
    const [before, after] = [of(without.options, 'as-planned'), of(asIs.options, 'as-planned')];
    expect(after.parts.some((part) => part.part === 'key-dates')).toBe(false);
    const gain = pence(after.expectedTotal) - pence(before.expectedTotal);
    // Ten minutes beyond the booked end: missed in fewer runs than hand back late, in each of them for 7000.00.
    const share = gain / 700_000;
    expect(share).toBeGreaterThan(0);
    expect(share).toBeLessThan(1 - after.handbacks[0]!.onTime.probability);
    for (const row of asIs.stop!.rows)
      expect(
        Math.abs(pence(row.expectedTotal) - pence(row.expectedOverrunCost) - pence(row.reBooking)),
      ).toBeLessThanOrEqual(1);
    expect(asIs.stop!.rows.at(-1)!.expectedTotal).not.toBe(
      without.stop!.rows.at(-1)!.expectedTotal,
    );
  });

  it('leaves one unit to the next window that holds it, and prices booking it again', async () => {
    const { options } = await ask(await caseOf(repeated));
    const less = of(options, 'less');
    expect(less.moved).toMatchObject([{ activity: 'TR', units: 1, window: 'W2' }]);
    expect(less.parts.find((part) => part.part === 're-booking')?.amount).toBe('280.00');
    expect(less.handbacks[0]!.onTime.probability).toBeGreaterThan(
      of(options, 'as-planned').handbacks[0]!.onTime.probability,
    );
  });

  it('books a longer window at the price of the book and breaks even at the price it names', async () => {
    const given = await caseOf(repeated);
    const { options } = await ask(given, { longerMinutes: 30 });
    const longer = of(options, 'longer');
    expect(longer.parts.find((part) => part.part === 'booking')?.amount).toBe('300.00');
    const turn = longer.breakEven!.amount;
    const perHour = (2 * Number(turn)).toFixed(2);
    const dear = { ...given.document, prices: prices({ booking: { perHour } }) };
    const again = await ask({ ...given, document: dear }, { longerMinutes: 30 });
    expect(Math.abs(Number(of(again.options, 'longer').difference))).toBeLessThanOrEqual(0.01);
  });

  it('gives one more gang to work that waits for one, and says so where none does', async () => {
    const two = `${head}P,A,,120,100,200,,,,,gang:1,W1\nP,B,,120,100,200,,,,,gang:1,W1\n`;
    const given = await caseOf(two);
    const gang = of((await ask(given)).options, 'extra gang');
    expect(gang.changes[0]).toContain('2 h sooner');
    expect(gang.handbacks[0]!.marginMinutes).toBe(240);
    expect(applyEdit(given.document, gang.edit!).tables.resources.rows).toEqual([
      ['gang', '1', '60'],
      ['gang', '1', '', '2027-05-04', '2027-05-05'],
    ]);
    const alone = (await ask(await caseOf(repeated))).options;
    expect(alone.find((outcome) => outcome.id === 'extra gang')).toMatchObject({
      state: 'nothing-to-vary',
    });
  });

  it('says what has nothing to vary and what cannot be', async () => {
    const whole = `${head}P,A,,200,,,,,,,gang:1,W1\n`;
    const none = await ask(await caseOf(whole));
    expect(none.options.find((option) => option.id === 'less')).toMatchObject({
      state: 'nothing-to-vary',
      reason: expect.stringContaining('No repeated work') as string,
    });
    expect(none.stop).toBeNull();
    const follows = `${repeated}Track,TP,TR,30,,,,,,,gang:1,W1\n`;
    const bound = await ask(await caseOf(follows));
    expect(bound.options.find((option) => option.id === 'less')).toMatchObject({
      state: 'infeasible',
      reason: expect.stringContaining('TP in the same window must wait') as string,
    });
  });

  it('finds the best stop among every count of units, more units never being safer', async () => {
    const { stop } = await ask(await caseOf(repeated));
    expect(stop!.rows.map((row) => row.units)).toEqual([1, 2, 3, 4, 5, 6]);
    const chances = stop!.rows.map((row) => row.onTime.probability);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    const least = Math.min(...stop!.rows.map((row) => pence(row.expectedTotal)));
    const best = stop!.rows.find((row) => row.units === stop!.bestUnits)!;
    expect(pence(best.expectedTotal)).toBe(least);
    const last = stop!.rows.at(-1)!;
    expect([last.reBooking, last.expectedTotal]).toEqual(['0.00', last.expectedOverrunCost]);
  });

  it('has a cut-off that is never dearer than doing all units whatever the hour', async () => {
    const { options } = await ask(await caseOf(repeated));
    expect(pence(of(options, 'cut-off').difference)).toBeLessThanOrEqual(1);
  });

  it('splits the work over two windows, each with its own handback', async () => {
    const { options } = await ask(await caseOf(repeated), { splitDaysLater: 3 });
    const split = of(options, 'split');
    expect(split.handbacks.map((handback) => handback.window)).toEqual(['W1', 'W1 second']);
    expect(split.here.reduce((sum, placement) => sum + (placement.units ?? 0), 0)).toBe(6);
    expect(split.parts.find((part) => part.part === 'booking')?.amount).toBe('4600.00');
  });

  it('has the chance that the handback verb has, within three standard errors', async () => {
    const given = await caseOf(repeated);
    const planned = of((await ask(given, { runs: 8000 })).options, 'as-planned').handbacks[0]!;
    const [other] = await createInlineEngine().handback(given.document, {
      placements: given.allocation.placements,
      windows: ['W1'],
      seed: 1,
      runs: 8000,
    });
    const there = other!.simulation.outlook.onTime;
    const error = Math.hypot(there.standardError, planned.onTime.standardError);
    expect(Math.abs(there.probability - planned.onTime.probability)).toBeLessThan(3 * error);
    expect(planned.marginMinutes).toBe(other!.marginMinutes);
  });

  it('costs an option of identical inputs the same, to the penny and in every run', async () => {
    const book = (rate: string, perHour: string) =>
      prices({
        delay: { by: 'bands', bands: [{ afterMinutes: 0, rate }] },
        booking: { perHour },
      });
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 2, max: 6 }),
        async (rate, units) => {
          const work = repeated.replace(',6,40,', `,${units},40,`);
          const given = await caseOf(work, undefined, book(String(rate), '10'));
          const edit = editBetween(given.document, { ...given.document }, 'nothing');
          const { options } = await ask(given, { own: [{ name: 'nothing', edit }], runs: 300 });
          const same = of(options, 'own 1');
          expect(same).toMatchObject({ verdict: 'the same', cheaperInShare: 0 });
          expect([Number(same.difference), Number(same.differenceError)]).toEqual([0, 0]);
        },
      ),
      { numRuns: 4 },
    );
  });

  it('keeps as planned to the penny whatever it is held against, and refuses what it cannot compare', async () => {
    const given = await caseOf(repeated);
    const one = of((await ask(given)).options, 'as-planned').expectedTotal;
    const two = of((await ask(given, { longerMinutes: 200 })).options, 'as-planned').expectedTotal;
    expect(two).toBe(one);
    await expect(ask(given, { window: 'W9' })).rejects.toThrow('no window "W9"');
    await expect(ask(given, { window: 'W3' })).rejects.toThrow('no work is planned in W3');
  });
});
