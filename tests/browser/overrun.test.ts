import { english } from '../../src/engine/english/say.js';
import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import type { PossessionChart } from '../../components/chart/chart.js';
import { ChartPickEvent } from '../../components/chart/chart-pick-event.js';
import '../../components/overrun/define.js';
import type { OnSiteChangeEvent } from '../../components/overrun/on-site-event.js';
import { moneyText } from '../../components/overrun/money-text.js';
import type { OverrunChangeEvent } from '../../components/overrun/overrun-change-event.js';
import type { PossessionOverrun } from '../../components/overrun/overrun.js';
import type { PriceAnswer } from '../../src/engine/index.js';
import { costCurve, expectedCost, overrunCost } from '../../src/price/index.js';
import { aBook, aResource, aWindow, trainsDue } from '../unit/price/builders.js';
import './support/english.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { waitUntil } from './support/wait-until.js';

const night = aWindow();
const inputs = {
  window: night,
  trains: trainsDue([10, 24, 31, 47], 1.5, night),
  resources: [],
  prices: aBook({
    delay: { by: 'train', rate: '71.43', headwayMinutes: 4, cancelAfterMinutes: 30 },
    fixed: [
      { code: 'F1', name: 'Late handback charge', afterMinutes: 0, amount: '2500' },
      { code: 'F2', name: 'Second charge', afterMinutes: 20, amount: '4000' },
    ],
    damages: { rate: '150', afterMinutes: 5, blockMinutes: 15, cap: '6000' },
  }),
};

function answerAt(overrunMinutes: number, simulated = true): PriceAnswer {
  const curve = costCurve(inputs, 90);
  const overruns = [
    { minutes: 0, count: 700 },
    { minutes: 12, count: 180 },
    { minutes: 25, count: 90 },
    { minutes: 61, count: 30 },
  ];
  return {
    at: overrunCost({ ...inputs, overrunMinutes }),
    overruns: [45, 90, 180].map((value) => overrunCost({ ...inputs, overrunMinutes: value })),
    nextMinute: { one: '71.43', meanOfFifteen: '71.43' },
    curve,
    chanceLater: simulated
      ? curve.minor.map((_, m) => (m < 12 ? 0.3 : m < 25 ? 0.12 : m < 61 ? 0.03 : 0))
      : null,
    expected: simulated ? expectedCost(curve, overruns) : null,
  };
}

const shown = (answer: PriceAnswer | null = answerAt(35)): Promise<PossessionOverrun> =>
  fixture(html`<possession-overrun .answer=${answer} .window=${night}></possession-overrun>`);
const part = (el: PossessionOverrun, css: string): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(css)!;
const texts = (el: PossessionOverrun, css: string): string[] =>
  [...el.renderRoot.querySelectorAll(css)].map((element) => element.textContent.trim());
const pence = (text: string): number => Math.round(Number(text.replace(/[^\d.]/g, '')) * 100);
const type = (el: PossessionOverrun, css: string, value: string): void => {
  const field = part(el, css) as HTMLInputElement;
  field.value = value;
  field.dispatchEvent(new Event('input', { bubbles: true }));
};

describe('possession-overrun', () => {
  it('shows counted rows that sum to the total it shows', async () => {
    const answer = answerAt(35);
    const el = await shown(answer);
    const rows = texts(el, '.rows tr.counts .amount').map(pence);
    const total = texts(el, '[part=total]')[0]!;
    expect(rows.length).to.be.greaterThan(2);
    expect(rows.reduce((sum, value) => sum + value, 0)).to.equal(pence(total));
    expect(total.replace(/\s+/g, ' ')).to.equal(`GBP ${moneyText(answer.at.total)}`);
    expect(texts(el, '.rows .sum strong')[0]).to.equal(moneyText(answer.at.total));
  });

  it('shows what is not counted beside it, and says so', async () => {
    const el = await shown();
    expect(texts(el, '.rows tr.beside .state')).to.deep.equal(['not counted']);
    expect(pence(texts(el, '.rows tr.beside .amount')[0]!)).to.equal(
      pence(answerAt(35).at.notCounted),
    );
  });

  it('gives formula and source of every head of cost', async () => {
    const answer = answerAt(35);
    const el = await shown(answer);
    expect(texts(el, '.rows .formula')).to.deep.equal(
      answer.at.rows.map((row) => english(row.formula)),
    );
    for (const source of texts(el, '.rows .source')) expect(source).to.contain('made for the test');
  });

  it('asks for another overrun from the slider and from the number', async () => {
    const el = await shown();
    setTimeout(() => type(el, '[type=range]', '50'));
    const slid = await oneEvent<OverrunChangeEvent>(el, 'possession-overrun-change');
    expect(slid.overrunMinutes).to.equal(50);
    await el.updateComplete;
    expect((part(el, '[type=number]') as HTMLInputElement).value).to.equal('50');
    setTimeout(() => type(el, '[type=number]', '21'));
    const typed = await oneEvent<OverrunChangeEvent>(el, 'possession-overrun-change');
    expect(typed.overrunMinutes).to.equal(21);
    expect(typed.composed && typed.bubbles).to.equal(true);
  });

  it('follows the asked minute at once with the total, and says that the rows are still old', async () => {
    const el = await shown(answerAt(35));
    type(el, '[type=range]', '21');
    await el.updateComplete;
    expect(texts(el, '[part=total]')[0]).to.contain(moneyText(answerAt(21).at.total));
    expect(texts(el, '.pending')[0]).to.contain('35 min');
    el.answer = answerAt(21);
    await el.updateComplete;
    expect(part(el, '.pending')).to.equal(null);
  });

  it('refuses what is no whole number of minutes, keeps it in the field and asks nothing', async () => {
    const el = await shown();
    let asked = 0;
    el.addEventListener('possession-overrun-change', () => (asked += 1));
    for (const bad of ['-3', '2.5', '', '10081']) {
      type(el, '[type=number]', bad);
      await el.updateComplete;
      const field = part(el, '[type=number]') as HTMLInputElement;
      expect(field.getAttribute('aria-invalid')).to.equal('true');
      expect(field.value).to.equal(bad);
    }
    expect(asked).to.equal(0);
    el.answer = answerAt(35);
    await el.updateComplete;
    expect((part(el, '[type=number]') as HTMLInputElement).value).to.equal('10081');
    expect(texts(el, '.refused')[0]).to.contain('10,080');
    type(el, '[type=number]', '40');
    await el.updateComplete;
    expect(asked).to.equal(1);
    expect(texts(el, '.refused')[0]).to.equal('');
  });

  it('takes the keyboard through slider, number and tables', async () => {
    const el = await shown();
    for (const css of ['[type=range]', '[type=number]', '#lengths', '.held .scroll']) {
      part(el, css).focus();
      expect((el.renderRoot as ShadowRoot).activeElement).to.equal(part(el, css));
    }
    expect(part(el, '[type=range]').getAttribute('aria-valuetext')).to.equal('35 min');
  });

  it('moves by a minute with an arrow key, and on to the number with Tab', async () => {
    const el = await shown();
    part(el, '[type=range]').focus();
    const asked: number[] = [];
    el.addEventListener('possession-overrun-change', (event) => asked.push(event.overrunMinutes));
    await sendKeys({ press: 'ArrowRight' });
    await sendKeys({ press: 'ArrowRight' });
    await sendKeys({ press: 'Tab' });
    await sendKeys({ press: 'ArrowDown' });
    expect(asked).to.deep.equal([36, 37, 36]);
  });

  it('asks for the minute that is picked in the picture', async () => {
    const el = await shown();
    setTimeout(() => part(el, 'possession-chart.curve').dispatchEvent(new ChartPickEvent(90)));
    const event = await oneEvent<OverrunChangeEvent>(el, 'possession-overrun-change');
    expect(event.overrunMinutes).to.equal(90);
  });

  it('gives the chart of the curve every minute, and heads that add up to the total', async () => {
    const answer = answerAt(35);
    const el = await shown(answer);
    const { shown: chart } = part(el, 'possession-chart.curve') as PossessionChart;
    const { points, series } = chart!;
    expect(points.length).to.equal(91);
    points.forEach((_, i) => {
      const heads = series.filter((item) => item.stack !== undefined);
      const sum = heads.reduce((total, item) => total + (item.values[i] ?? 0), 0);
      expect(Math.round(sum * 100)).to.equal(answer.curve.minor[i]);
    });
    const chances = series.find((item) => item.onRight)!;
    expect(chances.values[30]).to.equal(0.03);
  });

  it('names each step under its number', async () => {
    const el = await shown();
    const listed = texts(el, '.steps .disc').map(Number);
    expect(listed).to.deep.equal(listed.map((_, index) => index + 1));
    for (const step of answerAt(35).curve.steps)
      expect(part(el, '.steps').textContent).to.contain(english(step.name));
  });

  it('lays 45, 90 and 180 minutes side by side, marks where they differ, and folds away what costs nothing', async () => {
    const answer = answerAt(35);
    const el = await shown(answer);
    expect(
      texts(el, '.compare thead th')
        .slice(1)
        .map((text) => text.replace(/\s+/g, ' ')),
    ).to.deep.equal(['45 min 05:45', '1 h 30 06:30', '3 h 08:00']);
    const totals = answer.overruns.map((overrun) => moneyText(overrun.total));
    expect(texts(el, '.compare .sum .ask')).to.deep.equal(totals);
    answer.overruns[0]!.rows.forEach((row, i) => {
      const amounts = answer.overruns.map((overrun) => overrun.rows[i]!.amount);
      const line = [...el.renderRoot.querySelectorAll('.compare tbody tr')].find((element) =>
        element.textContent.includes(english(row.title)),
      );
      if (amounts.every((amount) => Number(amount) === 0)) expect(line).to.equal(undefined);
      else {
        const cells = [...line!.querySelectorAll('td')];
        expect(cells.map((cell) => cell.querySelector('.ask')!.textContent.trim())).to.deep.equal(
          amounts.map(moneyText),
        );
        expect(cells.map((cell) => cell.classList.contains('differs'))).to.deep.equal(
          amounts.map((amount, k) => k > 0 && amount !== amounts[k - 1]),
        );
      }
    });
  });

  it("asks for lengths of one's own, and refuses what is none", async () => {
    const el = await shown();
    const asked: (readonly number[])[] = [];
    el.addEventListener('possession-overrun-compare', (event) => asked.push(event.minutes));
    const field = part(el, '#lengths') as HTMLInputElement;
    expect(field.value).to.equal('45, 90, 180');
    for (const [text, found] of [
      ['30, 60', 1],
      ['30, x', 1],
      ['', 1],
      ['10081', 1],
      ['15 20,15', 2],
    ] as const) {
      field.value = text;
      field.form!.requestSubmit();
      await el.updateComplete;
      expect(asked.length).to.equal(found);
      expect(texts(el, '#lengths-refused')[0] === '').to.equal(
        /^[\d, ]+$/.test(text) && text !== '10081',
      );
    }
    expect(asked).to.deep.equal([
      [30, 60],
      [15, 20],
    ]);
  });

  it('shows plant and people with what is owed anyway, and tells when one is to leave otherwise', async () => {
    const priced = { ...inputs, resources: [aResource('crane', 240, { leastHours: 4 })] };
    const at = overrunCost({ ...priced, overrunMinutes: 35 });
    const el = await shown({ ...answerAt(35), at });
    el.editable = true;
    await el.updateComplete;
    const row = texts(el, '.on-site tbody tr')[0]!.replace(/\s+/g, ' ');
    // Six hours at 240; 35 minutes more are 140.
    expect(row).to.contain('1,440.00').and.to.contain('140.00');
    const select = part(el, '.on-site select') as HTMLSelectElement;
    setTimeout(() => {
      select.value = 'after its work';
      select.dispatchEvent(new Event('change'));
    });
    const event = await oneEvent<OnSiteChangeEvent>(el, 'possession-on-site-change');
    expect([event.window, event.resource, event.leaves]).to.deep.equal([
      'W1',
      'crane',
      'after its work',
    ]);
  });

  it('says what is not priced', async () => {
    const el = await shown();
    const told = texts(el, '.notes li');
    for (const text of answerAt(35).at.notPriced) expect(told).to.include(english(text));
    expect(told.length).to.be.greaterThan(2);
  });

  it('shows expected cost with its standard error, P80 and P95', async () => {
    const answer = answerAt(35);
    const { expected } = answer;
    const el = await shown(answer);
    const told = part(el, '.expected').textContent;
    for (const sum of [expected!.expected, expected!.standardError, expected!.p80, expected!.p95])
      expect(told).to.contain(moneyText(sum));
    expect(part(el, '.steps').textContent).to.contain('30.0 %');
    el.answer = answerAt(35, false);
    await el.updateComplete;
    expect(part(el, '.expected dl')).to.equal(null);
    expect(part(el, '.steps').textContent).not.to.contain('%');
  });

  it('lets a reader ask where each figure comes from', async () => {
    const answer = answerAt(35);
    const el = await shown(answer);
    const asked: unknown[] = [];
    el.addEventListener('possession-figure-ask', (event) => asked.push(event.figure));
    for (const element of el.renderRoot.querySelectorAll<HTMLElement>('button.ask'))
      element.click();
    const compared = asked.splice(1, el.renderRoot.querySelectorAll('.compare .ask').length);
    expect(compared).to.deep.include({ of: 'cost-row', code: 'F1', minutes: 90 });
    expect(compared).to.deep.include({ of: 'cost-total', minutes: 180 });
    expect(asked).to.deep.equal([
      { of: 'cost-total' },
      ...answer.at.rows.map((row) => ({ of: 'cost-row', code: row.code })),
      { of: 'cost-total' },
      { of: 'cost-expected' },
      { of: 'cost-p', percent: 50 },
      { of: 'cost-p', percent: 80 },
      { of: 'cost-p', percent: 95 },
    ]);
    type(el, '[type=range]', '21');
    await el.updateComplete;
    expect(part(el, '[part=total] button')).to.equal(null);
  });

  it('lists the trains held and says which are cancelled', async () => {
    const answer = answerAt(60);
    const el = await shown(answer);
    expect(texts(el, '.trains tbody th')).to.deep.equal(
      answer.at.trains.map((train) => train.train),
    );
    expect(texts(el, '.trains .cancelled').length).to.equal(
      answer.at.trains.filter((train) => train.cancelled).length,
    );
    expect(texts(el, '.trains .cancelled').length).to.be.greaterThan(0);
  });

  it('says where the change of the clocks decides a threshold of length', async () => {
    const el = await shown({
      ...answerAt(35),
      lengths: [
        {
          code: 'L',
          name: 'More than 60 h',
          exceeded: true,
          clockChangeDecides: true,
          sentence: {
            key: 'length-measured',
            given: {
              elapsed: 3660,
              holiday: 0,
              exceeded: true,
              limit: 60,
              clocks: 0,
              decides: false,
            },
          },
        },
      ],
    });
    expect(part(el, '.lengths').textContent)
      .to.contain('More than 60 h')
      .and.contain('clock change decides');
  });

  it('lists the key dates that the plan misses, with what each costs and how late it is', async () => {
    const line = { window: 'W1', inputs: [], source: 'made for the test' };
    const el = await shown({
      ...answerAt(35),
      keyDates: [
        {
          ...line,
          ...{ package: 'P1', title: 'Key date missed: P1', amount: '6500.00', daysLate: 1 },
          ...{
            due: night.end - 3_600_000,
            forecast: night.end,
            formula: '1 day x GBP 6500 = GBP 6500.00',
          },
        },
        {
          ...line,
          ...{ package: 'P2', title: 'Key date missed: P2', amount: null, daysLate: null },
          ...{ due: night.end, forecast: null, window: null, formula: 'not known' },
        },
        {
          ...line,
          ...{ package: 'P3', title: 'Key date: P3', amount: '0.00', daysLate: 0 },
          ...{ due: night.end, forecast: night.end, formula: 'in time: nothing' },
        },
      ],
    });
    const rows = texts(el, '.key-dates tbody tr').map((text) => text.replace(/\s+/g, ' '));
    expect(rows[0]).to.contain('Key date missed: P1: 1 day late');
    expect(rows[0]).to.contain('1 day x GBP 6500 = GBP 6500.00').and.to.contain('6,500.00');
    expect(part(el, '.key-dates summary').textContent).to.contain('1 key date is in time');
    expect(rows[1]).to.contain('not all of its work has a place').and.to.contain('no price');
    expect(await axeFaults(el)).to.deep.equal([]);
    expect(part(await shown(), '.key-dates')).to.equal(null);
  });

  it('shows every caution', async () => {
    const answer = answerAt(35);
    const el = await shown(answer);
    expect(texts(el, '.cautions li')).to.deep.equal(answer.at.cautions);
    expect(part(el, '.cautions').getBoundingClientRect().height).to.be.greaterThan(10);
  });

  it('does not overflow 390 px', async () => {
    const el = await shown();
    el.style.setProperty('width', '390px');
    await waitUntil(() => el.scrollWidth <= 390, 'room within 390 px');
    const wide = [
      ...el.renderRoot.querySelectorAll('possession-chart, table.rows, table.steps'),
    ].filter(
      (element) => element.getBoundingClientRect().right > el.getBoundingClientRect().right + 0.5,
    );
    expect(wide.map((element) => element.getAttribute('class'))).to.deep.equal([]);
  });

  it('has no accessibility faults empty, full and without chances, light and dark', async () => {
    const el = await shown(null);
    await inBothSchemes(async () => {
      for (const answer of [null, answerAt(35), answerAt(0, false)]) {
        el.answer = answer;
        await el.updateComplete;
        for (const element of el.renderRoot.querySelectorAll('details')) element.open = true;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});

describe('sums in words', () => {
  it('writes money without touching a digit', () => {
    expect(moneyText('1234567.80')).to.equal('1,234,567.80');
    expect(moneyText('-12')).to.equal('\u221212');
    expect(moneyText('0.005')).to.equal('0.005');
  });
});
