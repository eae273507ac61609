import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { createInlineEngine, type Allocation, type Engine } from '../../src/engine/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { button, inside, tab } from './support/desk-look.js';
import { text } from './support/look.js';
import { frame } from './support/samples.js';
import { twoNights } from './support/two-nights.js';
import { waitUntil } from './support/wait-until.js';

const plan = aDocument(
  'One night',
  {
    windows: twoNights,
    work: tableOf(
      'work.csv',
      `package,activity,title,minutes,minutes low,minutes high
Deck,D1,Cut out,240,180,300`,
    ),
  },
  { rules: stepRules({ leadIn: { low: 15, high: 40 } }), prices: minuteBook },
);

/** An engine whose search has found a plan and never ends by itself. */
function searching(best: Allocation): { engine: Engine; signals: AbortSignal[] } {
  const signals: AbortSignal[] = [];
  const engine: Engine = {
    ...createInlineEngine(),
    allocate: (_document, _options, signal, onProgress) => {
      signals.push(signal!);
      onProgress?.({ done: 400, total: 10_000, best });
      return new Promise((_, reject) =>
        signal!.addEventListener('abort', () => reject(signal!.reason as Error)),
      );
    },
  };
  return { engine, signals };
}

const found = (): Promise<Allocation> => createInlineEngine().allocate(plan, { seconds: 2 });

async function shown(engine: Engine): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${engine} .document=${plan}></possession-desk>`,
  );
  await el.updateComplete;
  return el;
}

describe('the desk while it searches for a plan', () => {
  it('shows the best plan so far, and takes it when a person has seen enough', async () => {
    const { engine, signals } = searching(await found());
    const el = await shown(engine);
    tab(el, 'plan').click();
    await waitUntil(() => el.planning.draft, 'a plan so far');
    await el.updateComplete;
    expect(el.planning.allocation).to.equal(null);
    expect(text(inside(el, 'possession-plan'))).to.contain('D1');
    const bar = el.renderRoot.querySelector('progress')!;
    expect([bar.value, bar.max]).to.deep.equal([400, 10_000]);
    await inBothSchemes(async (scheme) => {
      el.theme = scheme;
      await el.updateComplete;
      expect(await axeFaults(el)).to.deep.equal([]);
    });

    button(el.renderRoot, 'Enough, take this plan')!.click();
    await waitUntil(() => el.planning.allocation, 'the plan taken');
    await el.updateComplete;
    expect(signals.map((signal) => signal.aborted)).to.deep.equal([true]);
    expect(el.planning.busy).to.equal(false);
    expect(el.renderRoot.querySelector('progress')).to.equal(null);
    expect(el.planning.allocation!.placements.map((placement) => placement.activity)).to.deep.equal(
      ['D1'],
    );
  });

  it('drops the plan so far when the document is changed under it', async () => {
    const { engine, signals } = searching(await found());
    const el = await shown(engine);
    tab(el, 'plan').click();
    await waitUntil(() => el.planning.draft, 'a plan so far');
    tab(el, 'work').click();
    el.change({ part: ['name'], value: 'Changed' }, 'renamed');
    expect(signals[0]!.aborted).to.equal(true);
    expect(el.planning.shown).to.equal(null);
  });

  it('works out what is to be expected of an overrun without being asked to', async () => {
    const el = await shown(createInlineEngine());
    tab(el, 'cost').click();
    await waitUntil(() => el.outlooks.price?.expected, 'the expected cost');
    expect(el.view).to.equal('cost');
    expect(el.outlooks.handbacks.length).to.be.greaterThan(0);
  });

  it('answers the view that is open when a search ends which another view began', async () => {
    const inline = createInlineEngine();
    let goOn = (): void => undefined;
    const gate = new Promise<void>((resolve) => (goOn = resolve));
    const el = await shown({
      ...inline,
      allocate: async (...asked) => {
        await gate;
        return inline.allocate(...asked);
      },
    });
    tab(el, 'cost').click();
    await waitUntil(() => el.planning.busy, 'the search begun by the overrun');
    button(el.renderRoot, 'Options side by side')!.click();
    goOn();
    await waitUntil(() => el.outlooks.options, 'the options');
  });

  it('does not begin again what a person has stopped', async () => {
    const { engine, signals } = searching(await found());
    const el = await shown({
      ...engine,
      allocate: (document, options, signal) =>
        engine.allocate(document, options, signal, undefined),
    });
    tab(el, 'cost').click();
    await waitUntil(() => el.planning.busy, 'the search');
    tab(el, 'plan').click();
    await el.updateComplete;
    button(el.renderRoot, 'Stop')!.click();
    await waitUntil(() => !el.planning.busy, 'the search stopped');
    // What is drawn of it asks for what the view lacks, by the frame after.
    await el.updateComplete;
    await frame();
    await el.updateComplete;
    expect(signals.length).to.equal(1);
    expect(el.planning.busy).to.equal(false);
  });
});
