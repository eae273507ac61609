import { expect, fixture, html } from '@open-wc/testing';
import type { PossessionChart } from '../../components/chart/chart.js';
import '../../components/options/define.js';
import type { OptionTakeEvent } from '../../components/options/option-take-event.js';
import type { OptionsAskEvent } from '../../components/options/options-ask-event.js';
import type { PossessionOptions } from '../../components/options/options.js';
import type { OwnOptionsChangeEvent } from '../../components/options/own-options-change-event.js';
import { english } from '../../src/engine/english/say.js';
import { importFiles } from '../../src/engine/import/import-files.js';
import type { OptionsAnswer, OwnOption } from '../../src/engine/index.js';
import { optionsOf } from '../../src/engine/options/options.js';
import { emptyPlan, type AccessWindow, type Activity } from '../../src/model/index.js';
import { allocate } from '../../src/planner/search/index.js';
import { planFromDocument } from '../../src/tables/index.js';
import { aBook } from '../unit/price/builders.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import './support/english.js';
import { waitUntil } from './support/wait-until.js';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
let answer: OptionsAnswer;
let window: AccessWindow;
let activities: readonly Activity[];

before(async function () {
  // Stands still: what is found depends on the steps alone, not on how fast the machine is.
  const clock = () => 0;
  const { document } = await importFiles(
    [
      file(
        'windows.csv',
        'window,start,end\nW1,2027-05-04 23:00,05:00\nW2,2027-05-11 23:00,05:00\n',
      ),
      file(
        'work.csv',
        'package,activity,minutes low,minutes high,units,minutes per unit,set up,make safe,resources,window\nTrack,TR,35,90,6,40,20,15,gang:1,W1\n',
      ),
      file('resources.csv', 'resource,capacity,rate per hour\ngang,1,60\n'),
    ],
    emptyPlan('Test', 'Europe/London'),
  );
  const prices = aBook({
    delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: '50' }] },
    booking: { perWindow: '1000', perHour: '600' },
    reBooking: { perUnit: '80', perVisit: '200' },
  });
  const priced = { ...document, prices };
  const { plan } = planFromDocument(priced);
  window = plan.windows[0]!;
  activities = plan.activities;
  const allocation = allocate(plan, { seconds: 0.3, clock });
  answer = optionsOf(
    priced,
    { window: 'W1', allocation, seed: 1, runs: 500 },
    { clock, stopped: () => false, onProgress: () => undefined },
  )!;
});

const shown = (given: OptionsAnswer | null): Promise<PossessionOptions> =>
  fixture(html`<possession-options .answer=${given}></possession-options>`);
const all = (el: PossessionOptions, css: string): HTMLElement[] => [
  ...el.renderRoot.querySelectorAll<HTMLElement>(css),
];

describe('possession-options', () => {
  it('shows every option, those that cannot be had with the reason', async () => {
    const el = await shown(answer);
    expect(all(el, '.options h3').map((element) => element.textContent.trim())).to.deep.equal(
      answer.options.map((option) => english(option.name)),
    );
    for (const option of answer.options)
      if (option.state !== 'priced')
        expect(el.renderRoot.querySelector('.options')!.textContent).to.contain(
          english(option.reason),
        );
    expect(all(el, '.cheapest').length).to.equal(1);
  });

  it('draws each priced option as a bar of its parts, with its spread', async () => {
    const el = await shown(answer);
    const { points, series } = (all(el, '.options-chart')[0] as PossessionChart).shown!;
    const priced = answer.options.filter((option) => option.state === 'priced');
    expect(points).to.deep.equal(priced.map((option) => english(option.name)));
    priced.forEach((option, i) => {
      const sum = series.reduce((total, each) => total + (each.values[i] ?? 0), 0);
      expect(sum).to.be.closeTo(Number(option.expectedTotal), 0.01);
      const spread = series.filter((each) => each.low);
      expect(spread.map((each) => [each.low![i], each.high![i]])).to.deep.equal([
        [Number(option.p50Total), Number(option.p95Total)],
      ]);
    });
  });

  it('shows each count of units in picture and table, the best marked in words', async () => {
    const el = await shown(answer);
    const { points, series } = (all(el, '.stop-chart')[0] as PossessionChart).shown!;
    expect(points.length).to.equal(6);
    const tops = points.map((_, i) => series.reduce((sum, item) => sum + (item.values[i] ?? 0), 0));
    const best = answer.stop!.rows.findIndex((row) => row.units === answer.stop!.bestUnits);
    expect(Math.min(...tops)).to.be.closeTo(tops[best]!, 0.01);
    expect(points.filter((point) => String(point).includes('least'))).to.deep.equal([points[best]]);
    expect(all(el, 'tr.best th')[0]!.textContent).to.contain(String(answer.stop!.bestUnits));
    expect(all(el, 'tr.best th')[0]!.textContent).to.contain('least');
  });

  it('asks with what was typed, and refuses what is no whole number', async () => {
    const el = await shown(null);
    const asked: OptionsAskEvent[] = [];
    el.addEventListener('possession-options-ask', (event) => asked.push(event));
    const field = el.renderRoot.querySelector<HTMLInputElement>('[name=longer]')!;
    field.value = '0';
    all(el, 'button.strong')[0]!.click();
    await el.updateComplete;
    expect(all(el, '.refused')[0]!.textContent).to.contain('Whole numbers');
    field.value = '45';
    all(el, 'button.strong')[0]!.click();
    expect(asked.map((item) => item.asked)).to.deep.equal([
      { longerMinutes: 45, splitDaysLater: 7, activity: '' },
    ]);
  });

  it('hands over the option that is taken, with its edit and its plan', async () => {
    const el = await shown(answer);
    let taken: OptionTakeEvent | undefined;
    el.addEventListener('possession-option-take', (event) => (taken = event));
    for (const element of all(el, 'details')) (element as HTMLDetailsElement).open = true;
    const longer = answer.options.findIndex((option) => option.id === 'longer');
    all(el, '.options > li')[longer]!.querySelector('button')!.click();
    expect(taken!.option.id).to.equal('longer');
    expect(taken!.option.edit).not.to.equal(null);
  });

  it('lets none be taken where the plan may only be read', async () => {
    const el = await shown(answer);
    expect(all(el, '[part=take]:not(:disabled)')).to.not.have.lengthOf(0);
    el.readonly = true;
    await el.updateComplete;
    expect(all(el, '[part=take]')).to.not.have.lengthOf(0);
    expect(all(el, '[part=take]:not(:disabled)')).to.have.lengthOf(0);
  });

  it('can be stopped while it works, and shows the cautions', async () => {
    const el = await shown(answer);
    el.busy = true;
    el.progress = { done: 3, total: 14 };
    await el.updateComplete;
    let stopped = 0;
    el.addEventListener('possession-options-stop', () => (stopped += 1));
    all(el, 'form button')[0]!.click();
    expect(stopped).to.equal(1);
    expect(all(el, '.cautions li').length).to.equal(answer.cautions.length);
  });

  /** The element with its window, and the form of an option of one's own, open. */
  async function making(own: readonly OwnOption[] = []) {
    const el = await shown(answer);
    const planned = answer.options[0]!;
    el.window = window;
    el.activities = activities;
    el.resources = [{ id: 'gang', availability: [{ capacity: 1 }], ratePerHour: 60 }];
    el.own = own;
    await el.updateComplete;
    (all(el, '.own')[0] as HTMLDetailsElement).open = true;
    expect(planned.state).to.equal('priced');
    const form = all(el, '.own-form')[0] as HTMLFormElement;
    const put = (texts: Record<string, string>): void => {
      for (const [name, text] of Object.entries(texts))
        form.querySelector<HTMLInputElement>(`[name=${name}]`)!.value = text;
    };
    let sent: OwnOptionsChangeEvent | undefined;
    el.addEventListener('possession-own-options-change', (event) => (sent = event));
    return { el, form, put, sent: () => sent };
  }

  it('makes an option of what a reader fills in, and empties the form', async () => {
    const { el, form, put, sent } = await making();
    put({ name: ' Longer, two gangs ', longer: '45', resource: 'gang', clock: '0230' });
    form.requestSubmit();
    const cutOffAt = window.end - 150 * 60_000;
    const made = {
      name: 'Longer, two gangs',
      wish: { longerMinutes: 45, extra: { resource: 'gang', count: 1 }, cutOffAt },
    };
    expect(sent()!.own).to.deep.equal([made]);
    expect(sent()!.bubbles && sent()!.composed).to.equal(true);
    await el.updateComplete;
    expect(form.querySelector<HTMLInputElement>('[name=name]')!.value).to.equal('');
    const line = all(el, '.own-list li')[0]!.textContent.replace(/\s+/g, ' ');
    expect(line).to.contain(
      '45 min longer; 1 more gang; no unit begins after Wed 5 May 2027, 02:30',
    );
    all(el, '.own-list .remove')[0]!.click();
    expect(sent()!.own).to.deep.equal([]);
  });

  it('offers only work that is planned in the window, and not more units than are', async () => {
    const { el, form, put, sent } = await making();
    const choice = form.querySelector<HTMLSelectElement>('[name=activity]')!;
    expect([...choice.options].map((option) => option.value)).to.deep.equal(['', 'TR']);
    put({ name: 'Two left', activity: 'TR', units: '2' });
    form.requestSubmit();
    expect(sent()!.own).to.deep.equal([
      { name: 'Two left', wish: { leaveOut: [{ activity: 'TR', units: 2 }] } },
    ]);
    await el.updateComplete;
    put({ name: 'Seven left', activity: 'TR', units: '7' });
    form.requestSubmit();
    expect(all(el, '.own-form .refused')[0]!.textContent).to.equal(
      'A whole number from 1 to 6, please.',
    );
  });

  for (const [texts, field, words] of [
    [{ longer: '30' }, 'name', 'what to call it'],
    [{ name: 'A' }, 'longer', 'Nothing is different'],
    [{ name: 'A', longer: 'an hour' }, 'longer', '1 to 2,880'],
    [{ name: 'A', clock: '25:00' }, 'clock', '02:40'],
    [{ name: 'A', clock: '12:00' }, 'clock', 'not in the window'],
    [{ name: 'A', clock: '02:00', activity: 'TR' }, 'clock', 'either'],
    [{ name: 'There', longer: '30' }, 'name', 'already'],
  ] as const)
    it(`keeps what is typed and says why it cannot be taken: ${JSON.stringify(texts)}`, async () => {
      const own = [{ name: 'There', wish: { longerMinutes: 5 } }];
      const { el, form, put, sent } = await making(own);
      put(texts);
      form.requestSubmit();
      expect(sent()).to.equal(undefined);
      const input = form.querySelector<HTMLInputElement>(`[name=${field}]`)!;
      expect(input.getAttribute('aria-invalid')).to.equal('true');
      expect(el.shadowRoot!.activeElement).to.equal(input);
      expect(all(el, '.own-form .refused')[0]!.textContent).to.contain(words);
      for (const [name, text] of Object.entries(texts))
        expect(form.querySelector<HTMLInputElement>(`[name=${name}]`)!.value).to.equal(text);
      expect(await axeFaults(el)).to.deep.equal([]);
    });

  it('does not overflow 390 px and has no accessibility faults', async () => {
    const el = await shown(answer);
    el.style.setProperty('width', '390px');
    for (const element of all(el, 'details')) (element as HTMLDetailsElement).open = true;
    await waitUntil(() => el.scrollWidth <= 390, 'room within 390 px');
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    el.answer = null;
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
  });
});
