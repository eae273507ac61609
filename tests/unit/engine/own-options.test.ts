import { describe, expect, it } from 'vitest';
import { instantOf } from '../../../src/calendar/index.js';
import {
  createInlineEngine,
  type Allocation,
  type OptionOutcome,
  type OptionWish,
  type PricedOption,
} from '../../../src/engine/index.js';
import { priceBookSchema, type PlanDocument } from '../../../src/model/index.js';
import { inEnglish, type InEnglish } from '../../helpers/in-english.js';
import { emptyDocument } from '../../helpers/sample.js';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
const prices = priceBookSchema.parse({
  schema: 1,
  name: 'Test book',
  currency: 'GBP',
  source: 'made for the test',
  delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: '50' }] },
  booking: { perWindow: '1000', perHour: '600' },
  reBooking: { perUnit: '80', perVisit: '200' },
});

interface Case {
  readonly document: PlanDocument;
  readonly allocation: Allocation;
}

async function caseOf(): Promise<Case> {
  const engine = createInlineEngine();
  const { document } = await engine.importFiles(
    [
      file(
        'windows.csv',
        'window,start,end\nW1,2027-05-04 23:00,05:00\nW2,2027-05-11 23:00,05:00\nW3,2027-05-18 23:00,05:00\n',
      ),
      file(
        'work.csv',
        'package,activity,after,minutes,minutes low,minutes high,units,minutes per unit,set up,make safe,resources,window\n' +
          'Clear,CL,,30,25,40,,,,,gang:1,W1\nTrack,TR,CL,,35,90,5,40,20,15,gang:1,W1\n',
      ),
      file('resources.csv', 'resource,capacity,rate per hour\ngang,1,60\n'),
    ],
    emptyDocument,
  );
  const priced = { ...document, prices };
  return { document: priced, allocation: await engine.allocate(priced, { effort: 0.08 }) };
}

const given = caseOf();
const cutOffAt = instantOf(
  { year: 2027, month: 5, day: 5, hour: 2, minute: 30 },
  'Europe/London',
  'reject',
);

/** The options with one of our own, and that one. */
async function asked(wish: OptionWish, more = {}) {
  const { document, allocation } = await given;
  const answer = await createInlineEngine().options(document, {
    ...{ window: 'W1', seed: 3, runs: 1000, effortPerOption: 0.08, allocation },
    ...more,
    own: [{ name: 'Ours', wish }],
  });
  const { options } = inEnglish(answer);
  return { options, own: options.find((option) => option.id === 'own 1')! };
}
function priced(item: InEnglish<OptionOutcome> | undefined): InEnglish<PricedOption> {
  if (item?.state !== 'priced') throw new Error(item?.reason ?? 'absent');
  return item;
}
const of = (options: readonly InEnglish<OptionOutcome>[], id: string): InEnglish<PricedOption> =>
  priced(options.find((option) => option.id === id));

describe('an option that a person makes up in words', () => {
  it('costs what the standard one costs that changes the same: a longer window', async () => {
    const { options, own } = await asked({ longerMinutes: 60 });
    expect([own.kind, own.name]).toEqual(['own', 'Ours']);
    expect(priced(own).expectedTotal).toBe(of(options, 'longer').expectedTotal);
    expect(priced(own).handbacks).toEqual(of(options, 'longer').handbacks);
    expect(priced(own).edit).toEqual({ ...of(options, 'longer').edit, label: 'Ours' });
  });

  it('costs what the standard one costs that changes the same: a unit left over', async () => {
    const { options, own } = await asked({ leaveOut: [{ activity: 'TR', units: 1 }] });
    expect(priced(own).expectedTotal).toBe(of(options, 'less').expectedTotal);
    expect(priced(own).moved).toEqual(of(options, 'less').moved);
  });

  it('costs what the standard one costs that changes the same: a cut-off', async () => {
    const { options, own } = await asked({ cutOffAt }, { cutOffAt });
    expect(priced(own).expectedTotal).toBe(of(options, 'cut-off').expectedTotal);
    expect(priced(own).changes).toEqual(of(options, 'cut-off').changes);
  });

  it('puts several changes together, and adds up from its parts', async () => {
    const both = priced(
      (await asked({ longerMinutes: 60, leaveOut: [{ activity: 'TR', units: 2 }] })).own,
    );
    expect(both.parts.map((part) => part.part)).toEqual(
      expect.arrayContaining(['overrun', 'plant', 'booking', 're-booking']),
    );
    expect(both.changes).toHaveLength(3);
    expect(both.changes[2]).toMatch(/^TR is not fixed to .+ any more\.$/);
    const cut = priced((await asked({ longerMinutes: 45, cutOffAt })).own);
    expect(cut.parts.some((part) => part.part === 'booking')).toBe(true);
    expect(cut.edit).not.toBe(null);
    for (const option of [both, cut]) {
      const pence = (text: string): number => Math.round(Number(text) * 100);
      const sum = option.parts.reduce((total, part) => total + pence(part.amount), 0);
      expect(sum).toBe(pence(option.expectedTotal));
    }
  });

  it('takes more of a resource onto the days of the window', async () => {
    const own = priced((await asked({ extra: { resource: 'gang', count: 2 } })).own);
    expect(own.changes).toEqual(['2 more gang on the days of W1.']);
    expect(JSON.stringify(own.edit)).toContain('2027-05-05');
  });

  it.each<[string, OptionWish, string]>([
    ['changes nothing', {}, 'changes nothing'],
    ['leaves out more than there is', { leaveOut: [{ activity: 'TR', units: 9 }] }, '1 to 5'],
    ['leaves out what is not there', { leaveOut: [{ activity: 'XX', units: 1 }] }, 'XX'],
    ['leaves out what others wait for', { leaveOut: [{ activity: 'CL', units: 1 }] }, 'TR'],
    ['has no such resource', { extra: { resource: 'crane', count: 1 } }, 'crane'],
    ['is no minute longer', { longerMinutes: 0 }, 'whole minutes'],
    ['cuts off outside the window', { cutOffAt: cutOffAt + 86_400_000 }, 'not in W1'],
    [
      'both leaves out and cuts off',
      { cutOffAt, leaveOut: [{ activity: 'TR', units: 1 }] },
      'either',
    ],
  ])('is refused with the reason when it %s', async (_, wish, words) => {
    const { own } = await asked(wish, { runs: 100 });
    expect(own.state).toBe('infeasible');
    expect(own.state === 'priced' ? '' : own.reason).toContain(words);
  });
});
