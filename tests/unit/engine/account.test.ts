import { describe, expect, it } from 'vitest';
import { createInlineEngine, type AccountRequest } from '../../../src/engine/index.js';
import { emptyDocument } from '../../helpers/sample.js';
import { aBook, at } from '../price/builders.js';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });

async function ask(request: Omit<AccountRequest, 'window' | 'actualHandback'> = {}) {
  const engine = createInlineEngine();
  const { document } = await engine.importFiles(
    [
      file('windows.csv', 'window,start,end\nW1,2027-05-30 23:00,05:00\n'),
      file('trains.csv', 'train,passes at,weight,window\nT1,2027-05-31 05:10,1,W1\n'),
      file('resources.csv', 'resource,capacity,rate per hour\ngang,1,60\n'),
    ],
    emptyDocument,
  );
  const prices = aBook({
    delay: { by: 'train', rate: '50' },
    standing: { labour: ['gang'], factors: [{ name: 'holiday', factor: '2', holidaysOnly: true }] },
  });
  return engine.account(
    { ...document, prices, holidays: ['2027-05-31'] },
    { window: 'W1', actualHandback: at('2027-05-31 05:40'), ...request },
  );
}

describe('the account, through the engine', () => {
  it('works rows out of the book at the pay of the plan’s public holidays', async () => {
    const { rows, overrunMinutes } = await ask();
    expect(overrunMinutes).toBe(40);
    // 30 min x 50; 40 min of one gang at 60 an hour, twice on a holiday.
    expect(rows.map((row) => [row.code, row.amount, row.basis])).toEqual([
      ['train-T1', '1500.00', 'worked out'],
      ['standing-gang', '80.00', 'worked out'],
    ]);
  });

  it('takes what was recorded instead, with who claims it, what shows it and the forecast beside it', async () => {
    const found = await ask({
      trainActuals: [
        {
          train: 'T1',
          passedAt: at('2027-05-31 05:30'),
          claimedBy: 'North operator',
          evidence: 'signal log 12',
        },
      ],
      foreseenMinutes: 60,
    });
    expect(found.rows[0]).toMatchObject({
      amount: '1000.00',
      basis: 'recorded',
      claimedBy: 'North operator',
      evidenced: true,
    });
    expect([found.evidenced, found.notEvidenced, found.total]).toEqual([
      '1000.00',
      '80.00',
      '1080.00',
    ]);
    expect(found.heads[0]).toMatchObject({ amount: '1000.00', forecast: '2500.00' });
  });
});
