// The panel says what the independent check found of the fit that is picked, and nothing before it has looked.
import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { pickFit } from '../../components/desk/views/fit-view.js';
import { createInlineEngine, type Engine } from '../../src/engine/index.js';
import { aDocument, stepRules, tableOf } from '../helpers/documents.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'Two nights',
  {
    windows: tableOf(
      'windows.csv',
      `window,title,start,end,status
W1,First night,2027-03-02 23:00,2027-03-03 05:00,confirmed
W2,Short night,2027-03-03 23:00,2027-03-04 01:00,confirmed`,
    ),
    work: tableOf('work.csv', 'package,activity,title,minutes\nDeck,D1,Cut out,200'),
  },
  { rules: stepRules() },
);

async function desk(checkFits?: Engine['checkFits']): Promise<PossessionDesk> {
  const engine = { ...createInlineEngine(), ...(checkFits && { checkFits }) };
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${engine}></possession-desk>`,
  );
  el.document = plan;
  await waitUntil(() => el.figures.results);
  return el;
}

async function panel(el: PossessionDesk): Promise<string> {
  await waitUntil(() => el.renderRoot.querySelector('possession-why'));
  const why = el.renderRoot.querySelector('possession-why')!;
  await why.updateComplete;
  return why.renderRoot.textContent.replaceAll(/\s+/g, ' ');
}

async function says(el: PossessionDesk, words: string): Promise<void> {
  await waitUntil(async () => (await panel(el)).includes(words));
}

describe('a fit that is picked', () => {
  const first = { package: 'Deck', window: 'W1' };

  it('was looked at, and no fault found', async () => {
    const el = await desk();
    pickFit(el, first);
    await says(el, 'The independent check found no fault in how it would go.');
  });

  it('is being looked at until the answer is there', async () => {
    let answer: (value: []) => void = () => undefined;
    const el = await desk(async () => {
      await new Promise<[]>((resolve) => (answer = resolve));
      return [[]];
    });
    pickFit(el, first);
    await says(el, 'The independent check is looking at it.');
    expect(await panel(el)).not.to.contain('no fault');
    answer([]);
    await says(el, 'found no fault');
  });

  it('is none to count on where a fault is found', async () => {
    const el = await desk(async () => [[{ code: 'spare', text: '12 minutes are stated as left' }]]);
    pickFit(el, first);
    await says(el, 'THE CHECK FOUND A FAULT: do not count on this fit.');
    expect(await panel(el)).to.contain('12 minutes are stated as left');
    expect(await panel(el)).to.contain('Not shown to fit');
  });

  it('is said not to be looked at where the check gives no answer, and where it does not fit', async () => {
    const el = await desk(() => Promise.reject(new Error('gone')));
    pickFit(el, first);
    await says(el, 'Not looked at by the independent check.');
    let asked = 0;
    const other = await desk(async () => ((asked += 1), [[]]));
    pickFit(other, { package: 'Deck', window: 'W2' });
    await says(other, 'Not looked at by the independent check.');
    expect(asked).to.equal(0);
  });
});
