import { expect, fixture, html } from '@open-wc/testing';
import '../../components/rules/define.js';
import type { PossessionRules } from '../../components/rules/rules.js';
import type { RulesChangeEvent } from '../../components/rules/rules-change-event.js';
import { riskSchema, ruleSetSchema, type RuleSet } from '../../src/model/index.js';
import { noRisk } from '../../components/rules/risk-edits.js';
import type { RulesSaveEvent } from '../../components/rules/rules-save-event.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { windows } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

const rules = ruleSetSchema.parse({
  schema: 1,
  name: 'Test rules',
  zone: 'Europe/London',
  leadIn: [{ step: 'Protect', minutes: 30 }],
  leadOut: [{ step: 'Test', minutes: 25 }],
  margin: { minutes: 40 },
});

async function shown(
  given: RuleSet = rules,
): Promise<{ el: PossessionRules; last: () => RuleSet }> {
  const el = await fixture<PossessionRules>(
    html`<possession-rules
      .rules=${given}
      .windows=${windows}
      .activities=${[{ id: 'A10', title: 'Dig' }]}
    ></possession-rules>`,
  );
  const heard: RulesChangeEvent[] = [];
  el.addEventListener('possession-rules-change', (event) => heard.push(event));
  return { el, last: () => heard.at(-1)!.rules };
}

const field = (el: PossessionRules, key: string): HTMLInputElement =>
  el.renderRoot.querySelector(
    `${key.startsWith('.') ? '[data-list=events] ' : ''}:is(input, select)[data-field$="${key}"]`,
  )!;
async function put(el: PossessionRules, key: string, text: string): Promise<void> {
  const input = field(el, key);
  input.value = text;
  input.dispatchEvent(new Event('change', { bubbles: true }));
  await el.updateComplete;
}
async function add(el: PossessionRules, which: string): Promise<void> {
  el.renderRoot.querySelector<HTMLElement>(`[data-add="${which}"]`)!.click();
  await el.updateComplete;
}
const trouble = (el: PossessionRules): string =>
  el.renderRoot.querySelector('.wrong')?.textContent ?? '';

const said = (el: PossessionRules): string =>
  el.renderRoot.querySelector('.event-files .said')?.textContent ?? '';
async function bringIn(el: PossessionRules, text: string): Promise<void> {
  const input = el.renderRoot.querySelector<HTMLInputElement>('.event-files input[type=file]')!;
  const before = said(el);
  const files = new DataTransfer();
  files.items.add(new File([text], 'events.csv', { type: 'text/csv' }));
  input.files = files.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
  await waitUntil(() => said(el) !== before, 'what came in');
  await el.updateComplete;
}

describe('risk inputs among the rules', () => {
  it('take the chance wanted in per cent, and none', async () => {
    const { el, last } = await shown();
    await put(el, 'handback.chance', '97,5 %');
    expect(last().handback).to.deep.equal({ chance: 0.975 });
    await put(el, 'handback.chance', '0.95');
    expect(trouble(el)).to.contain('such as 95');
    expect(last().handback).to.deep.equal({ chance: 0.975 });
    await put(el, 'handback.chance', '');
    expect(last().handback).to.equal(undefined);
  });

  it('take the shape of spreads and a common cause, and keep nothing that says nothing', async () => {
    const { el, last } = await shown();
    await put(el, 'risk.shape', 'beta-pert');
    await put(el, 'risk.commonFactor', '0.9; 1; 1.3');
    expect(last().risk).to.deep.equal({
      shape: 'beta-pert',
      commonFactor: { low: 0.9, likely: 1, high: 1.3 },
      events: [],
    });
    await put(el, 'risk.commonFactor', '1.3; 1; 0.9');
    expect(trouble(el)).to.contain('rising');
    await put(el, 'risk.commonFactor', '');
    await put(el, 'risk.shape', 'triangular');
    expect(last().risk).to.equal(undefined);
  });

  it('take an event: what, how likely, how long, where, and what it holds up', async () => {
    const { el, last } = await shown();
    await add(el, 'events');
    await put(el, '.name', 'Crane stands still');
    await put(el, '.chance', '5');
    await put(el, '.delay', '20; 45; 120');
    await put(el, '.holds', 'activity A10');
    await put(el, '.window', windows[0]!.id);
    const event = {
      name: 'Crane stands still',
      chance: 0.05,
      delay: { low: 20, likely: 45, high: 120 },
      activity: 'A10',
      window: windows[0]!.id,
    };
    expect(last().risk!.events).to.deep.equal([event]);
    await put(el, '.holds', 'step lead-in Protect');
    expect(last().risk!.events[0]).to.include({ step: 'Protect', stage: 'lead-in' });
    expect(last().risk!.events[0]).not.to.have.property('activity');
    await put(el, '.holds', 'at');
    await put(el, '.at', '2027-03-28 01:30');
    expect(trouble(el), 'clocks skip that hour').to.contain('clocks show');
    await put(el, '.at', '2027-03-28 02:30');
    expect(last().risk!.events[0]!.at).to.equal('2027-03-28T02:30:00+01:00');
    expect(ruleSetSchema.safeParse(last()).success).to.equal(true);
    el.renderRoot.querySelector<HTMLElement>('[data-list=events] [data-control=remove]')!.click();
    await el.updateComplete;
    expect(last().risk).to.equal(undefined);
  });

  it('offer a thing that goes wrong with its recorded length, and no chance but the person’s own', async () => {
    const { el, last } = await shown();
    await add(el, 'recorded');
    expect(last().risk!.events[0]).to.include({
      name: 'Something goes wrong',
      chance: 0,
      delay: 'recorded',
      step: 'Line handed back',
    });
    expect(last().risk!.events[0]!.source).to.contain('CC BY 4.0');
    const told = el.renderRoot.querySelector('[data-list=events]')!.textContent;
    expect(told).to.contain('P95 over P50 8.1');
    expect(told).to.contain('Changes nothing yet');
    await put(el, '.chance', '2');
    expect(last().risk!.events[0]!.chance).to.equal(0.02);
  });

  it('let an event follow a step that is called anew, and say when it names nothing', async () => {
    const { el, last } = await shown({
      ...rules,
      risk: {
        shape: 'triangular',
        events: [
          { name: 'Late', chance: 0.1, delay: 'recorded', step: 'Protect' },
          { name: 'Lost', chance: 0.1, delay: 'recorded', activity: 'GONE' },
        ],
      },
    });
    const step = el.renderRoot.querySelector<HTMLInputElement>('[data-field="in1.step"]')!;
    step.value = 'Guard';
    step.dispatchEvent(new Event('change', { bubbles: true }));
    await el.updateComplete;
    expect(last().risk!.events[0]!.step).to.equal('Guard');
    expect(el.renderRoot.querySelector('[data-list=events]')!.textContent).to.contain(
      'GONE: not in the plan, so it never happens',
    );
  });

  it('begin as the schema reads rules that say nothing of them', () => {
    expect(noRisk).to.deep.equal(riskSchema.parse({}));
  });

  it('have no accessibility faults', async () => {
    await inBothSchemes(async () => {
      const { el } = await shown();
      await add(el, 'recorded');
      await add(el, 'events');
      expect(await axeFaults(el)).to.deep.equal([]);
      el.remove();
    });
  });

  it('go out as CSV and come in again, with what was not read told by its line', async () => {
    const { el, last } = await shown();
    await add(el, 'recorded');
    await put(el, '.chance', '5');
    const saved: RulesSaveEvent[] = [];
    el.addEventListener('possession-rules-save', (event) => saved.push(event));
    el.renderRoot.querySelector<HTMLElement>('[data-save=events]')!.click();
    await waitUntil(() => saved.length > 0, 'the file');
    expect(saved[0]!.name).to.equal('events.csv');
    const before = last().risk!.events;
    el.remove();

    const again = await shown();
    await bringIn(again.el, saved[0]!.text);
    expect(again.last().risk!.events).to.deep.equal(before);
    expect(said(again.el)).to.contain('1 new, 0 changed');

    await bringIn(
      again.el,
      'event,chance,minutes,activity,step\nSomething goes wrong,10 %,recorded,,Line handed back\nPlant breaks down,0.1,45,A10,\nNobody knows,2,45,A10,\n',
    );
    expect(said(again.el)).to.contain('1 new, 1 changed');
    expect(said(again.el)).to.contain('Line 4: ');
    expect(again.last().risk!.events.map((item) => [item.name, item.chance])).to.deep.equal([
      ['Something goes wrong', 0.1],
      ['Plant breaks down', 0.1],
    ]);
    await inBothSchemes(async () => {
      expect(await axeFaults(again.el)).to.deep.equal([]);
    });
  });
});
