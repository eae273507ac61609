import { expect, fixture, html } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { MINUTE } from '../../src/calendar/index.js';
import { createInlineEngine, type Engine } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
import { button, inside, tab } from './support/desk-look.js';
import { text } from './support/look.js';
import { waitUntil } from './support/wait-until.js';

// A shift by a clock of our own: the desk is told what time it is, and its timer is beaten by hand.

const plan = aDocument(
  'A night with a clock',
  {
    windows: tableOf(
      'windows.csv',
      'window,title,start,end,status\nW1,First night,2027-03-02 23:00,2027-03-03 05:00,confirmed',
    ),
    work: tableOf(
      'work.csv',
      'package,activity,title,after,minutes,minutes low,minutes high,made good by\nDeck,D1,Cut out,,100,80,130,D2\nDeck,D2,Lift in,D1,100,80,130,none',
    ),
  },
  {
    rules: stepRules({ leadIn: { low: 15, high: 40 }, leadOut: { low: 15, high: 40 } }),
    prices: minuteBook,
  },
);
const start = Date.UTC(2027, 2, 2, 23, 0);

async function shown(
  engine: Engine = createInlineEngine(),
  now = start,
  document = plan,
): Promise<PossessionDesk> {
  const el = await fixture<PossessionDesk>(
    html`<possession-desk .engine=${engine} .document=${document} .now=${now}></possession-desk>`,
  );
  await el.updateComplete;
  return el;
}

const live = (el: PossessionDesk) => el.outlooks.handbacks.find((handback) => handback.live)?.live;

async function inShift(el: PossessionDesk): Promise<void> {
  tab(el, 'handback').click();
  await waitUntil(() => el.outlooks.handbacks.length > 0, 'handback');
  await waitUntil(() => button(el.renderRoot, 'During the shift')?.disabled === false, 'a window');
  button(el.renderRoot, 'During the shift')!.click();
  await waitUntil(() => live(el) !== undefined, 'a forecast');
  await el.updateComplete;
}

/** The clock goes on, and the timer beats once. */
async function at(el: PossessionDesk, now: number): Promise<void> {
  el.now = now;
  el.watch.tick();
  await el.updateComplete;
}

describe('a shift by the clock', () => {
  beforeEach(() => localStorage.clear());

  it('counts down by itself, and forecasts again each minute', async () => {
    const el = await shown();
    await inShift(el);
    const countdown = (): string =>
      text(inside(el, 'possession-handback').querySelector('.countdown'));
    const before = countdown();
    await at(el, start + 59_000);
    expect(live(el)!.at).to.equal(start);
    await at(el, start + 2 * MINUTE);
    expect(countdown()).not.to.equal(before);
    await waitUntil(() => live(el)!.at === start + 2 * MINUTE, 'a new forecast');
  });

  it('warns before a cut-off and at it, and then tells it as passed, never as next', async () => {
    const el = await shown();
    await inShift(el);
    const next = live(el)!.nextCutOff!;
    await at(el, next.latestStart - 15 * MINUTE);
    const alarm = (): Element | null => el.renderRoot.querySelector('[role=alert].alarm');
    expect(text(alarm())).to.contain('15 min to the cut-off');
    expect(text(alarm())).to.contain(next.name);
    button(el.renderRoot, 'Seen')!.click();
    await el.updateComplete;
    expect(alarm()).to.equal(null);
    await at(el, next.latestStart);
    expect(text(alarm())).to.contain('Cut-off now');
    await at(el, next.latestStart + MINUTE);
    await waitUntil(() => live(el)!.at === next.latestStart + MINUTE, 'a forecast');
    await el.updateComplete;
    const root = inside(el, 'possession-handback');
    expect(text(root.querySelector('.passed'))).to.contain(next.name);
    expect(root.querySelector('.next .what')?.textContent ?? '').not.to.contain(next.name);
  });

  it('has neither sound nor vibration until a person turns them on', async () => {
    const el = await shown();
    await inShift(el);
    expect(el.watch.signals).to.deep.equal({ sound: false, vibration: false });
    const boxes = [
      ...el.renderRoot.querySelectorAll<HTMLInputElement>('.shift-bar [type=checkbox]'),
    ];
    expect(boxes.map((box) => box.checked)).to.deep.equal([false, false]);
    boxes[1]!.click();
    await el.updateComplete;
    expect(el.watch.signals).to.deep.equal({ sound: false, vibration: true });
  });

  it('is back in the shift after a reload, with the plan it went by and no search', async () => {
    const el = await shown();
    await inShift(el);
    el.remove();
    const inline = createInlineEngine();
    let searched = 0;
    const asked: (readonly string[] | undefined)[] = [];
    const again = await shown({
      ...inline,
      handback: (document, request, ...words) => {
        asked.push(request.windows);
        return inline.handback(document, request, ...words);
      },
      allocate: (...words) => {
        searched += 1;
        return inline.allocate(...words);
      },
    });
    await waitUntil(() => live(again) !== undefined, 'the shift');
    await again.updateComplete;
    expect([again.view, again.shift.live, searched]).to.deep.equal(['handback', true, 0]);
    expect(inside(again, 'possession-handback').querySelector('.advice')).not.to.equal(null);
    // The window of the shift before all others: somebody on site waits for it.
    expect(asked[0]).to.deep.equal(['W1']);
    await waitUntil(() => again.outlooks.hasAllHandbacks, 'the other windows');
    expect(live(again)).not.to.equal(undefined);
  });

  it('works out two things before the first live figure: the figures of the document and its own window', async () => {
    const nights = Array.from(
      { length: 6 },
      (_, k) =>
        `W${k + 2},Night ${k + 2},2027-03-${10 + k} 23:00,2027-03-${11 + k} 05:00,confirmed`,
    );
    const work = Array.from(
      { length: 6 },
      (_, k) => `Deck,E${k},Night work ${k},,100,80,130,none,W${k + 2}`,
    );
    const { columns, rows } = plan.tables.work;
    const { windows } = plan.tables;
    const many: PlanDocument = {
      ...plan,
      tables: {
        ...plan.tables,
        windows: {
          ...windows,
          rows: [...windows.rows, ...nights.map((night) => night.split(','))],
        },
        work: {
          ...plan.tables.work,
          columns: [...columns, 'window'],
          rows: [...rows.map((row) => [...row, 'W1']), ...work.map((item) => item.split(','))],
        },
      },
    };
    const el = await shown(createInlineEngine(), start, many);
    await inShift(el);
    el.remove();
    const inline = createInlineEngine();
    const asked: string[] = [];
    const counting = new Proxy(inline, {
      get: (engine, verb: keyof Engine) => {
        const answer: unknown = engine[verb];
        if (typeof answer !== 'function') return answer;
        return (...words: readonly unknown[]): unknown => {
          const [, request] = words as [unknown, { windows?: readonly string[]; runs?: number }];
          const of = verb === 'handback' ? ` ${request.windows?.join()} ${request.runs}` : '';
          asked.push(`${verb}${of}`);
          return Reflect.apply(answer, engine, words);
        };
      },
    });
    const again = await shown(counting, start, many);
    await waitUntil(() => live(again) !== undefined, 'the shift');
    const until = asked.slice(0, asked.findIndex((item) => item.startsWith('handback')) + 1);
    expect(until).to.deep.equal(['recompute', 'handback W1 4000']);
    expect(asked).not.to.include('allocate');
  });

  it('shows what another tab writes down, with who wrote it', async () => {
    const [one, other] = [await shown(), await shown()];
    await inShift(one);
    await inShift(other);
    one.shift.setInitials('JM');
    button(inside(one, 'possession-handback'), 'Granted')!.click();
    await one.updateComplete;
    const [key] = Object.keys(localStorage).filter((each) => each.includes('/shift/'));
    // Windows of one browser hear of it by this event; two desks on one page do not.
    window.dispatchEvent(new StorageEvent('storage', { key: key! }));
    await other.updateComplete;
    expect(other.shift.log).to.have.length(1);
    expect(other.shift.log[0]!.by).to.match(/^JM, device \w+$/);
  });

  it('keeps a log for each night, not for each name', async () => {
    const el = await shown();
    await inShift(el);
    button(inside(el, 'possession-handback'), 'Granted')!.click();
    await el.updateComplete;
    const [key] = Object.keys(localStorage).filter((each) => each.includes('/shift/'));
    expect(key).to.contain('W1/2027-03-02T23:00');
  });

  it('keeps the view when somebody says that work cannot be undone once begun', async () => {
    const el = await shown();
    tab(el, 'handback').click();
    await waitUntil(() => el.outlooks.handbacks.length > 0, 'handback');
    await el.updateComplete;
    const root = inside(el, 'possession-handback');
    root.querySelector<HTMLInputElement>('.decision-form [type=checkbox]')!.click();
    await waitUntil(
      () => el.outlooks.handbacks.some((handback) => handback.decisions.length > 0),
      'the handback with its point of no return',
    );
  });
});
