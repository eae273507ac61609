import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { PlacementSelectEvent } from '../../components/plan/placement-select-event.js';
import { createInlineEngine, type Engine } from '../../src/engine/index.js';
import { planFile, readPlanFile, type PlanDocument } from '../../src/model/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button } from './support/desk-look.js';
import { twoNights } from './support/two-nights.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'Two nights',
  {
    windows: twoNights,
    work: tableOf(
      'work.csv',
      `Package,Activity ID,title,minutes
Deck,D1,Cut out,120
Deck,D2,Drill,60`,
    ),
  },
  { rules: stepRules(), prices: minuteBook },
);

/** An engine that counts the searches it was asked for. */
function counting(): { engine: Engine; searches: () => number } {
  const engine = createInlineEngine();
  let count = 0;
  return {
    engine: { ...engine, allocate: (...args) => ((count += 1), engine.allocate(...args)) },
    searches: () => count,
  };
}

async function desk(
  document: PlanDocument,
  engine: Engine = createInlineEngine(),
): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${engine} .document=${document}></possession-desk>`,
  );
  await waitUntil(() => el.planning.allocation, 'a plan');
  await el.updateComplete;
  return el;
}

const group = (el: PossessionDesk): HTMLElement => el.renderRoot.querySelector('.agreed')!;
const said = (el: PossessionDesk): string => group(el).textContent.replace(/\s+/g, ' ');

async function agreed(document = plan, engine?: Engine): Promise<PossessionDesk> {
  const el = await desk(document, engine);
  group(el).querySelector<HTMLInputElement>('[name=by]')!.value = 'R. Olsen';
  button(group(el), 'Agree this plan')!.click();
  await waitUntil(() => el.planning.agreed, 'the agreed plan');
  await el.updateComplete;
  return el;
}

async function withdraw(el: PossessionDesk, window: string): Promise<void> {
  const { windows } = el.document!.tables;
  const row = windows.rows.findIndex(([id]) => id === window);
  const steps = [{ cells: [{ row, column: 4, text: 'withdrawn' }] }];
  el.change({ table: 'windows', of: windows, steps }, `${window} withdrawn`);
  await waitUntil(() => el.planning.agreed, 'how it stands');
  await el.updateComplete;
}

describe('the agreed plan on the desk', function () {
  it('is proposed as soon as a plan is open, and the desk says that nothing is agreed', async () => {
    const el = await desk(plan);
    expect(said(el)).to.contain('no plan is agreed yet');
    expect(el.document).to.equal(plan);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });

  it('is accepted by a person, named and dated, as an act to be undone', async () => {
    const el = await agreed();
    const { now } = el.document!.agreed!;
    expect([now!.name, now!.by, now!.revision]).to.deep.equal(['Plan 1', 'R. Olsen', 1]);
    expect(said(el)).to.contain('Agreed: Plan 1');
    expect(el.undoLabel).to.equal('plan "Plan 1" agreed');
    el.undo();
    expect(el.document!.agreed).to.equal(undefined);
  });

  it('is the same after a plan file was saved and opened, without a search', async () => {
    const el = await agreed();
    const read = readPlanFile(planFile(el.document!));
    const { engine, searches } = counting();
    const again = await desk(read.document!, engine);
    expect(again.planning.allocation).to.deep.equal(el.planning.allocation);
    expect(searches()).to.equal(0);
  });

  it('says at once what no longer holds, moves nothing, and is the same to the minute after undo', async () => {
    const { engine, searches } = counting();
    const el = await agreed(plan, engine);
    const before = el.planning.allocation!;
    const count = searches();
    const window = before.placements[0]!.window!;
    await withdraw(el, window);
    expect(said(el)).to.contain('no longer');
    expect(el.planning.broken.map((item) => item.code)).to.include('withdrawn');
    expect(searches()).to.equal(count);
    expect(el.planning.proposal).to.equal(null);
    el.undo();
    await waitUntil(() => el.planning.agreed, 'how it stands');
    expect(el.planning.allocation).to.deep.equal(before);
    expect(el.planning.broken).to.deep.equal([]);
  });

  it('is mended when a person asks, and the mended plan waits to be agreed', async () => {
    const el = await agreed();
    const first = el.document!.agreed!.now!;
    await withdraw(el, first.placements[0]!.window!);
    button(group(el), 'Mend it with few moves')!.click();
    await waitUntil(() => el.planning.proposal, 'a proposal');
    await el.updateComplete;
    expect(el.document!.agreed!.now).to.equal(first);
    button(group(el), 'Agree this plan')!.click();
    await waitUntil(() => el.planning.agreed?.broken.length === 0, 'the next plan');
    await el.updateComplete;
    expect(el.document!.agreed!.now!.revision).to.equal(2);
    expect(el.document!.agreed!.earlier).to.deep.equal([first]);
    expect(said(el)).to.contain('1 earlier plan');
    button(group(el), 'Go back to it')!.click();
    await el.updateComplete;
    expect(el.document!.agreed!.now!.placements).to.deep.equal(first.placements);
  });

  it('moves a piece by a button that acts, in a table that had no column for it', async () => {
    const el = await agreed();
    el.show('plan');
    await el.updateComplete;
    el.renderRoot.querySelector('possession-plan')!.dispatchEvent(new PlacementSelectEvent(0));
    await el.updateComplete;
    const piece = el.planning.allocation!.placements[0]!;
    const other = piece.window === 'W1' ? 'W2' : 'W1';
    const select = el.renderRoot.querySelector<HTMLSelectElement>('#to')!;
    select.value = other;
    select.dispatchEvent(new Event('change', { bubbles: true }));
    expect(el.undoLabel).to.equal('plan "Plan 1" agreed');
    button(el.renderRoot, 'Move it there')!.click();
    expect(el.undoLabel).to.equal(`${piece.activity} fixed to ${other}`);
    expect(el.document!.tables.work.columns.at(-1)).to.equal('window');
    await waitUntil(() => el.planning.proposal, 'the mended plan');
    const moved = el.planning.proposal!.placements.find(
      (placement) => placement.activity === piece.activity,
    )!;
    expect(moved.window).to.equal(other);
  });
});
