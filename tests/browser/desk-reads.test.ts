import { expect } from '@open-wc/testing';
import '../../components/desk/define.js';
import type { PossessionDesk } from '../../components/desk/desk.js';
import { agree } from '../../components/desk/forms/agreed-plan.js';
import { createInlineEngine } from '../../src/engine/index.js';
import { withAgreed } from '../../src/model/index.js';
import { aDocument, minuteBook, stepRules, tableOf } from '../helpers/documents.js';
import { axeFaults } from './support/axe.js';
import { asksToChange, usable, use } from './support/each-control.js';
import { text } from './support/look.js';
import { twoNights } from './support/two-nights.js';
import { waitUntil } from './support/wait-until.js';

const tables = {
  windows: twoNights,
  work: tableOf(
    'work.csv',
    `package,activity,title,units,minutes per unit,minutes low,minutes high
Deck,D1,Lift units,8,35,30,60
Deck,D2,Grout,2,20,15,30`,
  ),
  roster: tableOf('roster.csv', 'turn,crew,start,end\nT1,Gang,2027-03-02 21:00,2027-03-03 11:00'),
};
const plan = aDocument('Two nights', tables, {
  rules: stepRules({ leadIn: { low: 15, high: 40 } }),
  prices: minuteBook,
});

/** A plan of work of which nothing is placed: what is found beside it can be agreed, and the one before taken out. */
const once = { name: 'First', placements: [], agreedAt: 0 };
const agreed = withAgreed(withAgreed(undefined, once), { ...once, name: 'Second', agreedAt: 1 });

const desks = new Map<string, PossessionDesk>();

// The walk makes every choice that a page keeps for the next: pages of other tests begin with what was kept before it.
const kept = Object.entries({ ...localStorage }) as [string, string][];
after(() => {
  for (const el of desks.values()) el.remove();
  localStorage.clear();
  for (const [key, value] of kept) localStorage.setItem(key, value);
});

async function desk(reads: boolean, state: string): Promise<PossessionDesk> {
  // Beside the windows a plan is proposed; everything else speaks of the agreed plan. Nothing of it is changed by a walk.
  const proposes = state === 'windows';
  const there = desks.get(`${reads} ${proposes}`);
  if (there) return there;
  const el = document.createElement('possession-desk');
  el.engine = createInlineEngine();
  document.body.append(el);
  desks.set(`${reads} ${proposes}`, el);
  el.document = proposes ? { ...plan, agreed } : plan;
  await waitUntil(() => el.planning.allocation, 'a plan');
  const { placements } = el.planning.allocation!;
  if (!proposes) for (const name of ['First', 'Second']) agree(el, { name, placements });
  await waitUntil(() => el.planning.allocation, 'the agreed plan');
  Object.defineProperty(el.sharing, 'reads', { get: () => reads });
  await el.updateComplete;
  return el;
}

/** The ways to look at the plan that have controls of their own. */
const states: Readonly<Record<string, (el: PossessionDesk) => void>> = {
  windows: (el) => el.show('windows'),
  'a table': (el) => el.show('table'),
  'what fits': (el) => el.show('fit'),
  'pieces of work': (el) => {
    el.planPart = 'plan';
    el.show('plan');
    el.picked.pick({ placement: 0 });
  },
  handback: (el) => {
    el.shift.live = false;
    el.show('handback');
  },
  'the shift': (el) => {
    el.show('handback');
    el.shift.live = true;
    el.requestUpdate();
  },
  'cost of an overrun': (el) => {
    el.costPart = 'overrun';
    el.show('cost');
  },
  booking: (el) => el.show('booking'),
  people: (el) => {
    el.sitePart = 'people';
    el.show('site');
  },
  noise: (el) => {
    el.sitePart = 'noise';
    el.show('site');
  },
  lifting: (el) => {
    el.sitePart = 'lifting';
    el.show('site');
  },
  'what is to be seen to': (el) => el.show('urgent'),
  'a table of work': (el) => el.show('work'),
  rules: (el) => el.show('rules'),
  'the menu of the plan': (el) => {
    el.show('windows');
    el.menu = 'plan';
  },
  'what is found by name': (el) => {
    el.show('windows');
    el.menu = 'find';
    el.asked = 'd1 n1';
  },
};

/** When what a view shows is there. */
const ready: Readonly<Record<string, (el: PossessionDesk) => boolean>> = {
  handback: ({ outlooks }) => outlooks.handbacks.length > 0,
  'the shift': ({ outlooks }) => outlooks.handbacks.length > 0,
  'cost of an overrun': ({ outlooks }) => outlooks.price !== null,
  booking: ({ outlooks }) => outlooks.booked !== null,
  people: ({ outlooks }) => outlooks.people !== null,
  noise: ({ outlooks }) => outlooks.noise !== null,
  lifting: ({ outlooks }) => outlooks.lifting !== null,
};

/** These lead away from the plan or out of the page, and change nothing of it. */
const away = /^(?:Leave|A new plan|Delete|Print|Save|Tables as|Copy|As |Open|Take the|Load)/;

/** Uses every control of a view, and returns what was asked to be changed by which. */
async function walk(el: PossessionDesk, state: string): Promise<readonly string[]> {
  const asked = asksToChange(el);
  const found: string[] = [];
  const turn = async (): Promise<void> => {
    states[state]!(el);
    await el.updateComplete;
    for (const fold of [...allFolds(el.renderRoot)]) fold.open = true;
    await new Promise((resolve) => setTimeout(resolve, 20));
  };
  await turn();
  await waitUntil(() => !el.planning.busy && (ready[state]?.(el) ?? true), 'what is shown');
  await turn();
  const room = (): HTMLElement[] =>
    [...el.renderRoot.querySelectorAll('main, aside, #menu, .tools')].flatMap(usable);
  for (let at = 0; at < room().length && at < 300; at += 1) {
    const control = room()[at]!;
    const words = text(control).trim();
    if (away.test(words)) continue;
    const before = asked.length;
    const [view, menu] = [el.view, el.menu];
    use(control);
    await Promise.resolve();
    if (asked.length > before) found.push(`${control.localName}: ${words.slice(0, 40)}`);
    if (el.view !== view || el.menu !== menu || !control.isConnected) await turn();
  }
  return found;
}

function* allFolds(root: ParentNode): Generator<HTMLDetailsElement> {
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    if (element instanceof HTMLDetailsElement) yield element;
    if (element.shadowRoot) yield* allFolds(element.shadowRoot);
  }
}

describe('a plan that may only be read', () => {
  before(() => {
    globalThis.print = () => undefined;
    HTMLAnchorElement.prototype.click = () => undefined;
  });

  for (const state of Object.keys(states))
    it(`has no control that can be used to change it: ${state}`, async () => {
      expect(await walk(await desk(true, state), state)).to.deep.equal([]);
    });

  it('says so in words at the head, which axe finds nothing against', async () => {
    const el = await desk(true, 'rules');
    for (const other of desks.values()) other.hidden = other !== el;
    for (const state of ['windows', 'rules']) {
      states[state]!(el);
      await el.updateComplete;
      expect(text(el.renderRoot.querySelector('.news'))).to.contain('shared with you to read');
      expect(await axeFaults(el)).to.deep.equal([]);
    }
  });

  it('is brought no files: they become a plan of their own', async () => {
    const el = await desk(true, 'files');
    el.show('files');
    await el.updateComplete;
    expect(el.incoming.isNew).to.equal(true);
    expect(el.renderRoot.querySelector('.where-to')).to.equal(null);
  });
});

describe('a plan that may be changed', () => {
  // Else the walk above would find nothing because it uses nothing.
  const least: Readonly<Record<string, number>> = {
    windows: 2,
    'pieces of work': 3,
    handback: 4,
    'the shift': 6,
    'cost of an overrun': 1,
    booking: 2,
    people: 1,
    rules: 12,
    'the menu of the plan': 1,
    'what is found by name': 1,
  };
  for (const [state, count] of Object.entries(least))
    it(`has controls that change it: ${state}`, async () => {
      expect((await walk(await desk(false, state), state)).length).to.be.at.least(count);
    });
});
