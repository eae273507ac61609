import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { OptionTakeEvent } from '../../components/options/option-take-event.js';
import { OwnOptionsChangeEvent } from '../../components/options/own-options-change-event.js';
import { english } from '../../src/engine/english/say.js';
import { createInlineEngine, type PricedOption } from '../../src/engine/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
import { button, tab } from './support/desk-look.js';
import { twoNights } from './support/two-nights.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'Two nights of units',
  {
    windows: twoNights,
    work: tableOf(
      'work.csv',
      `package,activity,title,units,minutes per unit,minutes low,minutes high
Deck,D1,Lift units,8,35,30,60`,
    ),
  },
  { rules: stepRules({ leadIn: { low: 15, high: 40 } }), prices: minuteBook },
);

async function withOptions(): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${createInlineEngine()} .document=${plan}></possession-desk>`,
  );
  await el.updateComplete;
  tab(el, 'cost').click();
  await el.updateComplete;
  button(el.renderRoot, 'Options side by side')!.click();
  await waitUntil(() => el.outlooks.options, 'options');
  await el.updateComplete;
  return el;
}

const send = (el: PossessionDesk, event: Event): void => {
  el.renderRoot.querySelector('possession-options')!.dispatchEvent(event);
};
const unitsIn = (el: PossessionDesk, window: string): number =>
  el.planning
    .allocation!.placements.filter((placement) => placement.window === window)
    .reduce((sum, placement) => sum + (placement.units ?? 0), 0);

describe('options in the desk', () => {
  it('makes the plan that of an option which changes no cell, and shows it against the plan before', async function () {
    const el = await withOptions();
    const window = el.picked.window;
    const before = unitsIn(el, window);
    const fewer = el.outlooks.options!.options.find(
      (option): option is PricedOption => option.kind === 'one-unit-less',
    )!;
    expect(fewer.edit).to.equal(null);
    send(el, new OptionTakeEvent(fewer));
    await waitUntil(() => el.view === 'plan' && el.planning.allocation, 'the plan');
    expect(el.document!.agreed!.now!.name).to.equal(english(fewer.name));
    expect(el.document!.tables).to.equal(plan.tables);
    expect(unitsIn(el, window)).to.equal(before - 1);
    expect(el.planPart).to.equal('compare');
    expect(el.planning.earlier).not.to.equal(null);
  });

  it('takes the changed cells of an option with its plan, as one act to be undone', async function () {
    const el = await withOptions();
    const longer = el.outlooks.options!.options.find(
      (option): option is PricedOption => option.kind === 'longer-window',
    )!;
    send(el, new OptionTakeEvent(longer));
    await waitUntil(() => el.view === 'plan' && el.planning.allocation, 'the plan');
    expect(el.document).not.to.equal(plan);
    expect(el.document!.agreed!.now!.placements).to.deep.equal(longer.placements);
    expect(el.undoLabel).to.equal(`plan "${english(longer.name)}" agreed`);
    el.undo();
    expect(el.document).to.deep.equal(plan);
  });

  it('works out an option that a person made up beside the others, of its own window only', async function () {
    const el = await withOptions();
    const window = el.picked.window;
    const own = [{ name: 'Half an hour more', wish: { longerMinutes: 30 } }];
    send(el, new OwnOptionsChangeEvent(own));
    await waitUntil(
      () => el.outlooks.options?.options.some((option) => option.name === 'Half an hour more'),
      'the own option',
    );
    expect([...el.outlooks.ownOptions]).to.deep.equal([[window, own]]);
  });
});
