import { english } from '../../src/engine/english/say.js';
import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/account/define.js';
import type { AccountAskEvent } from '../../components/account/account-ask-event.js';
import type { PossessionAccount } from '../../components/account/account.js';
import { pastedDelays } from '../../components/account/paste-delays.js';
import {
  readHours,
  readMinutes,
  readMoment,
  readSum,
} from '../../components/account/read-entry.js';
import { withClaim, withTrains } from '../../components/account/request-edits.js';
import { defaultStrings as words } from '../../components/account/strings.js';
import type { ReportAskEvent } from '../../components/report/report-events.js';
import { moneyText } from '../../components/overrun/money-text.js';
import { addMinutes } from '../../src/calendar/index.js';
import type { Account, AccountRequest } from '../../src/engine/index.js';
import { account } from '../../src/price/index.js';
import { aBook, aResource, at, aWindow, trainsDue, zone } from '../unit/price/builders.js';
import './support/english.js';
import { axeFaults, inBothSchemes } from './support/axe.js';

const night = aWindow();
const trains = trainsDue([10, 24, 31, 47], 1, night);
const resources = [aResource('gang', 60), aResource('crane', 240)];
const prices = aBook({
  delay: { by: 'train', rate: '50', headwayMinutes: 4, cancelAfterMinutes: 60, deemedMinutes: 90 },
  standing: { labour: ['gang'] },
  fixed: [{ code: 'buses', name: 'Buses called', afterMinutes: 30, amount: '2800' }],
  damages: { rate: '150', afterMinutes: 5, blockMinutes: 15, cap: '6000' },
});

function accountFor({ window: _window, foreseenMinutes: _, ...recorded }: AccountRequest): Account {
  return account({ window: night, prices, trains, resources, ...recorded });
}
const request: AccountRequest = { window: 'W1', actualHandback: addMinutes(night.end, 40) };

/** The element with a listener that answers at once, as the desk does. */
async function shown(start: AccountRequest | null = request): Promise<PossessionAccount> {
  const el = await fixture<PossessionAccount>(
    html`<possession-account
      .window=${night}
      .trains=${trains}
      .resources=${resources}
      .request=${start}
      .answer=${start && accountFor(start)}
    ></possession-account>`,
  );
  el.addEventListener('possession-account-ask', (event) => {
    el.answer = accountFor(event.request);
  });
  return el;
}
const part = <T extends HTMLElement = HTMLInputElement>(el: PossessionAccount, css: string): T =>
  el.renderRoot.querySelector<T>(css)!;
const texts = (el: PossessionAccount, css: string): string[] =>
  [...el.renderRoot.querySelectorAll(css)].map((element) => element.textContent.trim());
async function type(el: PossessionAccount, css: string, value: string): Promise<void> {
  const field = part(el, css);
  field.value = value;
  field.dispatchEvent(new Event('change', { bubbles: true }));
  await el.updateComplete;
}
const rowOf = (el: PossessionAccount, code: string): number =>
  el.answer!.rows.findIndex((row) => row.code === code);
const pence = (text: string): number => Math.round(Number(text.replace(/[^\d.]/g, '')) * 100);

describe('possession-account', () => {
  it('asks for nothing but the handback first, and takes its date and time', async () => {
    const el = await shown(null);
    expect(part(el, '.train-list')).to.equal(null);
    setTimeout(() => void type(el, '#handback-clock', '05:40'));
    const asked = await oneEvent<AccountAskEvent>(el, 'possession-account-ask');
    expect(asked.request).to.deep.equal(request);
    expect(asked.bubbles && asked.composed).to.equal(true);
    await el.updateComplete;
    expect(texts(el, '.told strong:not(.on-paper)')).to.deep.equal(['40 min late']);
    expect(part(el, '.train-list')).not.to.equal(null);
  });

  it('shows every row with formula, inputs and source, and a total that is the sum of what counts', async () => {
    const el = await shown();
    const { rows, total } = el.answer!;
    expect(texts(el, '.account-rows .formula')).to.deep.equal(
      rows.map((row) => english(row.formula)),
    );
    expect(el.renderRoot.querySelectorAll('.inputs').length).to.equal(
      rows.filter((row) => row.inputs.length > 0).length,
    );
    for (const row of rows)
      expect(part(el, '.account-rows').textContent).to.contain(english(row.source));
    const sum = texts(el, '.account-rows .counts .amount').reduce(
      (all, text) => all + pence(text),
      0,
    );
    expect(sum).to.equal(pence(total));
    expect(texts(el, '[part=total]')[0]).to.contain(moneyText(total));
    expect(texts(el, '.account-rows .beside .small').at(-1)).to.contain('not counted');
  });

  it('puts a recorded delay in the place of the queued one, and a blank takes it out', async () => {
    const el = await shown();
    await type(el, '#late-0', '12');
    const recorded = el.answer!.rows[rowOf(el, 'train-T1')]!;
    // Hand-worked: 12 minutes late x weight 1 x 50 a minute.
    expect([recorded.basis, recorded.amount]).to.deep.equal(['recorded', '600.00']);
    await type(el, '#late-0', '');
    expect(el.request!.trainActuals).to.deep.equal([]);
    part(el, '.check input').click();
    await el.updateComplete;
    // 90 deemed minutes x 50.
    expect(el.answer!.rows[rowOf(el, 'train-T1')]!.amount).to.equal('4500.00');
    expect(part(el, '#late-0').disabled).to.equal(true);
  });

  it('keeps who claims a row when its time is recorded later', async () => {
    const el = await shown();
    await type(el, '#by-0-train-T1', 'Operator North');
    expect(el.answer!.rows[rowOf(el, 'train-T1')]!.claimedBy).to.equal('Operator North');
    await type(el, '#late-0', '12');
    await type(el, '#evidence-0-train-T1', 'Log 12');
    const row = el.answer!.rows[rowOf(el, 'train-T1')]!;
    expect([row.claimedBy, row.evidence, row.evidenced]).to.deep.equal([
      'Operator North',
      'Log 12',
      true,
    ]);
    await type(el, '#late-0', '');
    expect(el.answer!.rows[rowOf(el, 'train-T1')]!.evidence).to.equal('Log 12');
  });

  it('marks what is not evidenced yet, and says how much it is', async () => {
    const el = await shown();
    const open = texts(el, '.tag.open').length;
    expect(open).to.equal(el.answer!.rows.filter((row) => Number(row.amount) !== 0).length);
    await type(el, '#evidence-0-buses', 'Invoice 77');
    expect(texts(el, '.tag.open').length).to.equal(open - 1);
    expect(texts(el, '.sums dd')[1]).to.contain('2,800.00');
  });

  it('takes plant and labour by time sheet, and an invoice for a charge', async () => {
    const el = await shown();
    part(el, '#add-resource').value = 'crane';
    part(el, '.add-standing').click();
    await el.updateComplete;
    await type(el, '#hours-0', '2:30');
    await type(el, '#number-0', '2');
    // 2 cranes x 2.5 h x 240.
    expect(el.answer!.rows[rowOf(el, 'standing-crane')]!.amount).to.equal('1200.00');
    await type(el, '#invoice-0-buses', '3,105.20');
    const buses = el.answer!.rows[rowOf(el, 'buses')]!;
    expect([buses.amount, buses.basis]).to.deep.equal(['3105.20', 'recorded']);
    await type(el, '#invoice-0-buses', '');
    expect(el.answer!.rows[rowOf(el, 'buses')]!.amount).to.equal('2800.00');
  });

  it('counts a time sheet only when its hours are typed', async () => {
    const el = await shown();
    const before = el.request;
    const total = el.answer!.total;
    part(el, '#add-resource').value = 'crane';
    part(el, '.add-standing').click();
    await el.updateComplete;
    expect([el.request, el.answer!.total]).to.deep.equal([before, total]);
    expect(part(el, '#hours-0').value).to.equal('');
    expect(texts(el, '.standing-list').join()).to.contain('in no sum until');
    await type(el, '#number-0', '2');
    expect(el.answer!.total).to.equal(total);
    await type(el, '#hours-0', '1:30');
    // 2 cranes x 1.5 h x 240.
    expect(el.answer!.rows[rowOf(el, 'standing-crane')]!.amount).to.equal('720.00');
    expect(texts(el, '.standing-list li').length).to.equal(1);
  });

  it('takes our share of a cost as a percentage beside its amount, exactly', async () => {
    const el = await shown();
    const whole = pence(el.answer!.rows[rowOf(el, 'buses')]!.amount);
    const total = pence(el.answer!.total);
    await type(el, '#share-0-buses', '33.33');
    const buses = el.answer!.rows[rowOf(el, 'buses')]!;
    // 33.33 % of 2800.00.
    expect([whole, buses.amount, buses.share]).to.deep.equal([280_000, '933.24', '0.3333']);
    expect(pence(el.answer!.total)).to.equal(total - 280_000 + 93_324);
    expect(part(el, '#share-0-buses').value).to.equal('33.33');
    await type(el, '#share-0-buses', '0');
    expect(el.answer!.rows[rowOf(el, 'buses')]!.amount).to.equal('0.00');
    await type(el, '#share-0-buses', '');
    expect(el.answer!.rows[rowOf(el, 'buses')]!.amount).to.equal('2800.00');
    expect(part(el, '#share-0-buses').value).to.equal('100');
  });

  it('offers the days on which the line can have been given back, whatever the language of the browser', async () => {
    const el = await shown();
    const days = part<HTMLSelectElement>(el, '#handback-date');
    expect([...days.options].map((option) => option.value).slice(0, 3)).to.deep.equal([
      '2027-05-12',
      '2027-05-13',
      '2027-05-14',
    ]);
    expect([days.options.length, days.value]).to.deep.equal([9, '2027-05-13']);
    await type(el, '#handback-date', '2027-05-14');
    expect(el.request!.actualHandback).to.equal(addMinutes(request.actualHandback, 1440));
  });

  it('takes a pasted column of delays, and leaves what it cannot read with the reason', async () => {
    const el = await shown();
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', 'T2\t9\r\nT9\t4\r\nt3\tcancelled\r\nT4\tsoon\r\n');
    part(el, '#late-0').dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
    await el.updateComplete;
    expect(
      el.request!.trainActuals!.map((actual) => [actual.train, actual.passedAt]),
    ).to.deep.equal([
      ['T2', addMinutes(trains[1]!.passesAt, 9)],
      ['T3', null],
    ]);
    expect(part<HTMLTextAreaElement>(el, 'textarea').value).to.equal('T9\t4\nT4\tsoon');
    expect(texts(el, '.paste-said li').join(' ')).to.contain('Line 2').and.contain('Line 4');
  });

  it('keeps what it cannot take, says why, and asks nothing', async () => {
    const el = await shown();
    let asked = 0;
    el.addEventListener('possession-account-ask', () => (asked += 1));
    for (const [css, bad] of [
      ['#late-1', 'late'],
      ['#handback-clock', '25:00'],
      ['#invoice-0-buses', '-4'],
      ['#share-0-buses', '140'],
    ] as const) {
      await type(el, css, bad);
      expect(part(el, css).value).to.equal(bad);
      expect(part(el, css).getAttribute('aria-invalid')).to.equal('true');
      const why = part(el, `#${part(el, css).getAttribute('aria-describedby')!}`);
      expect(why.textContent.trim().length).to.be.greaterThan(5);
    }
    el.answer = accountFor(request);
    await el.updateComplete;
    expect(part(el, '#late-1').value).to.equal('late');
    expect(asked).to.equal(0);
  });

  it('takes nothing away from what is being typed when an answer comes and rows move', async () => {
    const el = await shown();
    const field = part(el, '#evidence-0-buses');
    field.focus();
    field.value = 'Invoice 7';
    const asked = { ...request, actualHandback: addMinutes(night.end, 55) };
    el.request = asked;
    el.answer = accountFor(asked);
    await el.updateComplete;
    expect(part(el, '#evidence-0-buses')).to.equal(field);
    expect(field.value).to.equal('Invoice 7');
    const all = { ...asked, standingActuals: [] };
    el.answer = accountFor({ ...all, actualHandback: addMinutes(night.end, 31) });
    await el.updateComplete;
    expect(part(el, '#evidence-0-buses').value).to.equal('Invoice 7');
  });

  it('offers the account as a file, but not while a newer one is worked out', async () => {
    const el = await shown();
    setTimeout(() => part(el, '.save-xlsx').click());
    const asked = await oneEvent<ReportAskEvent>(el, 'possession-report-ask');
    expect(asked.format).to.equal('xlsx');
    el.busy = true;
    await el.updateComplete;
    expect(part<HTMLButtonElement>(el, '.save-csv').disabled).to.equal(true);
  });

  it('shows every caution', async () => {
    const el = await shown();
    expect(texts(el, '.cautions li')).to.deep.equal(el.answer!.cautions);
  });

  it('does not overflow 390 px, and every target is large enough', async () => {
    const el = await shown();
    el.style.setProperty('width', '390px');
    await el.updateComplete;
    expect(el.scrollWidth).to.be.at.most(390);
    for (const element of el.renderRoot.querySelectorAll('button, input, select, summary')) {
      const box = element.getBoundingClientRect();
      if (box.width > 0) expect(box.height, element.outerHTML).to.be.at.least(22);
      expect(box.right).to.be.at.most(el.getBoundingClientRect().right + 0.5);
    }
  });

  it('has no accessibility faults empty, begun, full and refused, light and dark', async () => {
    const el = await shown();
    await type(el, '#late-1', 'late');
    await type(el, '#evidence-0-buses', 'Invoice 77');
    part(el, '.add-standing').click();
    await el.updateComplete;
    const full = el.request;
    await inBothSchemes(async () => {
      for (const [window, asked, busy] of [
        [null, null, false],
        [night, null, false],
        [night, full, false],
        [night, full, true],
      ] as const) {
        Object.assign(el, { window, request: asked, busy });
        await el.updateComplete;
        for (const element of el.renderRoot.querySelectorAll('details')) element.open = true;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});

describe('entries of an account', () => {
  it('reads minutes, hours and sums, and nothing that only looks like them', () => {
    expect(readMinutes('1:20', words)).to.deep.equal({ value: 80 });
    expect(readMinutes(' 14 ', words)).to.deep.equal({ value: 14 });
    expect(readHours('2,5', words)).to.deep.equal({ value: 150 });
    expect(readHours('0:45', words)).to.deep.equal({ value: 45 });
    expect(readSum('12 345.60', words)).to.deep.equal({ value: '12345.60' });
    for (const bad of ['', '-3', '1e3', '10081', '1:75', '4.5', 'NaN'])
      expect(readMinutes(bad, words)).to.have.property('problem');
    for (const bad of ['1,2,3', '12,34', '1e4', '=1+1'])
      expect(readSum(bad, words)).to.have.property('problem');
  });

  // Summer Time Order 2002 (SI 2002/262): clocks go forward on 28 March and back on 31 October 2027, at 01:00 UTC.
  it('tells the two readings of a clock that goes back, and refuses a time that is skipped', () => {
    const first = readMoment('2027-10-31', '01:30', false, zone, words);
    const second = readMoment('2027-10-31', '0130', true, zone, words);
    expect(first).to.deep.equal({ value: at('2027-10-31 01:30'), twice: true });
    expect(second).to.deep.equal({ value: at('2027-10-31 01:30', 'later'), twice: true });
    expect(readMoment('2027-03-28', '01:30', false, zone, words)).to.deep.equal({
      problem: words.skipped,
    });
    expect(readMoment('2027-02-29', '01:30', false, zone, words)).to.deep.equal({
      problem: words.badDate,
    });
  });

  it('fills minutes without names down from where they are pasted', () => {
    const read = pastedDelays('5\n\n7\n8', trains, 1, words);
    expect([...read.passed.keys()]).to.deep.equal(['T2', 'T4']);
    expect(read.left).to.deep.equal(['8']);
  });

  it('tells two time sheets of one resource apart', () => {
    const sheet = { resource: 'gang', amount: 1, start: night.end, claimedBy: '' };
    const two = {
      ...withTrains(request, new Map()),
      standingActuals: [
        { ...sheet, end: addMinutes(night.end, 30) },
        { ...sheet, end: addMinutes(night.end, 60) },
      ],
    };
    const claimed = withClaim(two, { code: 'standing-gang' }, 1, { claimedBy: 'X' });
    expect(claimed.standingActuals!.map((actual) => actual.claimedBy)).to.deep.equal(['', 'X']);
  });
});
