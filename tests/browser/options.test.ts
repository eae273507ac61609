import { expect, fixture, html } from '@open-wc/testing';
import '../../components/options/define.js';
import type { OptionTakeEvent } from '../../components/options/option-take-event.js';
import type { OptionsAskEvent } from '../../components/options/options-ask-event.js';
import type { PossessionOptions } from '../../components/options/options.js';
import { importFiles } from '../../src/engine/import/import-files.js';
import type { OptionsAnswer } from '../../src/engine/index.js';
import { optionsOf } from '../../src/engine/options/options.js';
import { emptyPlan } from '../../src/model/index.js';
import { allocate } from '../../src/schedule/index.js';
import { planFromDocument } from '../../src/tables/index.js';
import { aBook } from '../unit/price/builders.js';
import { axeFaults, inBothSchemes } from './support/axe.js';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
let answer: OptionsAnswer;

before(async function () {
  this.timeout(20_000);
  const clock = () => performance.now();
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
  const allocation = allocate(planFromDocument(priced).plan, { seconds: 0.3, clock });
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
    expect(all(el, '.options h3').map((one) => one.textContent.trim())).to.deep.equal(
      answer.options.map((one) => one.name),
    );
    for (const one of answer.options)
      if (one.state !== 'priced')
        expect(el.renderRoot.querySelector('.options')!.textContent).to.contain(one.reason);
    expect(all(el, '.cheapest').length).to.equal(1);
  });

  it('shows each count of units in picture and table, the best marked in words', async () => {
    const el = await shown(answer);
    expect(all(el, '.stops rect.overrun').length).to.equal(6);
    const high = (css: string) => all(el, css).map((one) => Number(one.getAttribute('height')));
    const tops = high('.stops rect.overrun').map(
      (one, at) => one + high('.stops rect.re-booking')[at]!,
    );
    const best = answer.stop!.rows.findIndex((one) => one.units === answer.stop!.bestUnits);
    expect(Math.min(...tops)).to.be.closeTo(tops[best]!, 0.01);
    expect(all(el, '.stops .least').length).to.equal(1);
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
    expect(asked.map((one) => one.asked)).to.deep.equal([
      { longerMinutes: 45, splitDaysLater: 7, activity: '' },
    ]);
  });

  it('hands over the option that is taken, with its edit and its plan', async () => {
    const el = await shown(answer);
    let taken: OptionTakeEvent | undefined;
    el.addEventListener('possession-option-take', (event) => (taken = event));
    for (const one of all(el, 'details')) (one as HTMLDetailsElement).open = true;
    const longer = answer.options.findIndex((one) => one.id === 'longer');
    all(el, '.options > li')[longer]!.querySelector('button')!.click();
    expect(taken!.option.id).to.equal('longer');
    expect(taken!.option.edit).not.to.equal(null);
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

  it('does not overflow 390 px and has no accessibility faults', async () => {
    const el = await shown(answer);
    el.style.setProperty('width', '390px');
    for (const one of all(el, 'details')) (one as HTMLDetailsElement).open = true;
    await new Promise((done) => setTimeout(done, 60));
    await el.updateComplete;
    expect(el.scrollWidth).to.be.at.most(390);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    el.answer = null;
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
  });
});
