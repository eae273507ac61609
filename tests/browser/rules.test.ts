import { expect, fixture, html } from '@open-wc/testing';
import '../../components/rules/define.js';
import { PossessionRules } from '../../components/rules/rules.js';
import { defaultStrings } from '../../components/rules/strings.js';
import type { RulesChangeEvent } from '../../components/rules/rules-change-event.js';
import type { WhyLinkEvent } from '../../components/why/why-events.js';
import type { RuleChange } from '../../src/engine/index.js';
import { ruleSetSchema, type RuleSet } from '../../src/model/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { press, windows } from './support/samples.js';

const rules = ruleSetSchema.parse({
  schema: 1,
  name: 'Test rules',
  zone: 'Europe/London',
  source: 'Invented for this test',
  leadIn: [
    { step: 'Protect', minutes: 30, low: 20, high: 60, source: 'Invented, one' },
    { step: 'Isolate', minutes: 45, when: 'isolation', alongside: 'Set up' },
    { step: 'Set up', minutes: 20 },
  ],
  leadOut: [{ step: 'Test', minutes: 25 }],
  margin: { minutes: 40, source: 'Invented, two' },
  curfews: [{ name: 'Houses', bars: 'loud', from: '23:00', to: '07:00', days: ['sat', 'sun'] }],
  shifts: { longestMinutes: 720, restMinutes: 660, changeoverMinutes: 30 },
});

const change: RuleChange = {
  windows: [
    { window: 'N1', work: 'ordinary', usableBefore: 200, usableAfter: 170, minutes: -30 },
    { window: 'S2', work: 'ordinary', usableBefore: 300, usableAfter: 320, minutes: 20 },
    { window: 'N1', work: 'loud', usableBefore: 200, usableAfter: 200, minutes: 0 },
  ],
  fits: {
    gained: [{ package: 'Track', window: 'S2', spareMinutes: 15 }],
    lost: [{ package: 'Deck', window: 'N1', reasons: [{ code: 'short', text: '10 min short.' }] }],
    packages: [
      { package: 'Track', windowsBefore: 1, windowsAfter: 2 },
      { package: 'Deck', windowsBefore: 1, windowsAfter: 0 },
    ],
    nowhere: ['Deck'],
    somewhere: [],
    faults: [],
  },
};

interface Shown {
  readonly el: PossessionRules;
  readonly heard: RulesChangeEvent[];
}

async function shown(given: RuleSet = rules): Promise<Shown> {
  const el = await fixture<PossessionRules>(
    html`<possession-rules .rules=${given} .windows=${windows}></possession-rules>`,
  );
  const heard: RulesChangeEvent[] = [];
  el.addEventListener('possession-rules-change', (event) => heard.push(event));
  return { el, heard };
}

const find = <T extends HTMLElement = HTMLInputElement>(el: PossessionRules, what: string): T => {
  const found = el.renderRoot.querySelector<T>(what);
  if (!found) throw new Error(`nothing is ${what}`);
  return found;
};
const field = (el: PossessionRules, row: number, name: string, list = 'leadIn') =>
  find(el, `[data-list=${list}] li:nth-child(${row}) :is(input, select)[data-field$=".${name}"]`);
async function type(el: PossessionRules, input: HTMLInputElement, text: string): Promise<void> {
  input.value = text;
  input.dispatchEvent(new Event('change', { bubbles: true }));
  await el.updateComplete;
}
const names = (given: RuleSet): string[] => given.leadIn.map((item) => item.step);

describe('possession-rules', () => {
  it('tells of a valid edit with the whole rule set, and keeps all that was not touched', async () => {
    const { el, heard } = await shown();
    await type(el, field(el, 1, 'minutes'), '1 h');
    expect(heard[0]!.rules).to.deep.equal({
      ...rules,
      leadIn: [{ ...rules.leadIn[0], minutes: 60 }, ...rules.leadIn.slice(1)],
    });
    expect(heard[0]!.label).to.contain('30').and.to.contain('60');
    await type(el, find(el, '[data-field="margin.minutes"]'), '55');
    expect(heard[1]!.rules.margin).to.deep.equal({ minutes: 55, source: 'Invented, two' });
    expect(el.rules).to.equal(heard[1]!.rules);
  });

  it('keeps a text that cannot be used, says how to mend it, and lets the last valid rules hold', async () => {
    const { el, heard } = await shown();
    for (const [row, name, text] of [
      [1, 'minutes', 'half an hour'],
      [1, 'low', '31'],
      [1, 'high', '29'],
      [2, 'step', 'Protect'],
      [3, 'step', '  '],
    ] as const)
      await type(el, field(el, row, name), text);
    await type(el, field(el, 1, 'from', 'curfews'), '25:00');
    await type(el, find(el, '[data-field="rules.zone"]'), 'Mars/Base');
    await type(el, find(el, '[data-field="shifts.longestMinutes"]'), '0');
    expect(heard).to.deep.equal([]);
    expect(el.rules).to.equal(rules);
    const wrong = [...el.renderRoot.querySelectorAll<HTMLInputElement>('[aria-invalid=true]')];
    expect(wrong.map((element) => element.value)).to.deep.equal([
      'Mars/Base',
      'half an hour',
      '31',
      '29',
      'Protect',
      '  ',
      '25:00',
      '0',
    ]);
    for (const element of wrong)
      expect(
        find(el, `#${CSS.escape(element.getAttribute('aria-describedby')!)}`).textContent,
      ).to.match(/Write|Choose|Raise|Lower/);
    expect(find(el, '.problems').textContent).to.contain('8 entries');
    expect(await axeFaults(el)).to.deep.equal([]);
  });

  it('keeps such a text through other edits, through moving its row and when the host gives the rules back', async () => {
    const { el, heard } = await shown();
    await type(el, field(el, 1, 'minutes'), 'soon');
    await type(el, find(el, '[data-field="margin.minutes"]'), '55');
    el.rules = structuredClone(heard[0]!.rules);
    await el.updateComplete;
    expect(field(el, 1, 'minutes').value).to.equal('soon');
    find(el, '[data-list=leadIn] li:nth-child(1) [data-control=down]').click();
    await el.updateComplete;
    expect(field(el, 2, 'minutes').value).to.equal('soon');
    expect(field(el, 1, 'minutes').value).to.equal('45');
  });

  it('forgets it when other rules come from outside, or by Escape', async () => {
    const { el } = await shown();
    await type(el, field(el, 1, 'minutes'), 'soon');
    el.rules = { ...rules, name: 'Others' };
    await el.updateComplete;
    expect(field(el, 1, 'minutes').value).to.equal('30');
    await type(el, field(el, 1, 'minutes'), 'soon');
    press(field(el, 1, 'minutes'), 'Escape');
    await el.updateComplete;
    expect(field(el, 1, 'minutes').value).to.equal('30');
    expect(el.renderRoot.querySelector('.wrong')).to.equal(null);
  });

  it('moves a step by button and by Alt with an arrow, and the focus goes with it', async () => {
    const { el, heard } = await shown();
    find(el, '[data-list=leadIn] li:nth-child(2) [data-control=up]').click();
    await el.updateComplete;
    expect(names(heard[0]!.rules)).to.deep.equal(['Isolate', 'Protect', 'Set up']);
    const input = field(el, 1, 'minutes');
    input.focus();
    press(input, 'ArrowDown', { altKey: true });
    await el.updateComplete;
    await Promise.resolve();
    expect(names(heard[1]!.rules)).to.deep.equal(['Protect', 'Isolate', 'Set up']);
    expect(el.shadowRoot!.activeElement).to.equal(field(el, 2, 'minutes'));
    press(field(el, 3, 'minutes'), 'ArrowDown', { altKey: true });
    expect(heard.length).to.equal(2);
  });

  it('adds a step with a free name and puts the cursor in it; removing one frees those beside it', async () => {
    const { el, heard } = await shown();
    find(el, '[data-add=leadIn]').click();
    await el.updateComplete;
    await Promise.resolve();
    expect(names(heard[0]!.rules).at(-1)).to.equal('New step 1');
    expect(el.shadowRoot!.activeElement).to.equal(field(el, 4, 'step'));
    find(el, '[data-list=leadIn] li:nth-child(3) [data-control=remove]').click();
    expect(heard[1]!.rules.leadIn).to.deep.equal([
      rules.leadIn[0],
      { step: 'Isolate', minutes: 45, when: 'isolation' },
      { step: 'New step 1', minutes: 0, when: 'always' },
    ]);
  });

  it('renames a step together with what starts with it', async () => {
    const { el, heard } = await shown();
    await type(el, field(el, 3, 'step'), 'Brief');
    expect(heard[0]!.rules.leadIn[1]!.alongside).to.equal('Brief');
  });

  it('refuses steps that wait for each other in a circle', async () => {
    const { el, heard } = await shown();
    await type(el, field(el, 3, 'alongside'), 'Isolate');
    expect(heard).to.deep.equal([]);
    expect(find(el, '.wrong').textContent).to.contain('circle');
  });

  it('edits, adds and removes times without work and shifts', async () => {
    const { el, heard } = await shown();
    find(el, '[data-field$="days.sat"]').click();
    expect(heard.at(-1)!.rules.curfews[0]!.days).to.deep.equal(['sun']);
    await el.updateComplete;
    find(el, '[data-field$="days.sun"]').click();
    await el.updateComplete;
    expect(heard.length).to.equal(1);
    expect(find(el, '[data-field$="days.sun"]').checked).to.equal(true);
    await type(el, field(el, 1, 'from', 'curfews'), '7:30');
    expect(heard.at(-1)!.rules.curfews[0]!.from).to.equal('07:30');
    find(el, '[data-add=curfews]').click();
    expect(heard.at(-1)!.rules.curfews.length).to.equal(2);
    find(el, '[data-remove=shifts]').click();
    expect('shifts' in heard.at(-1)!.rules).to.equal(false);
    await el.updateComplete;
    find(el, '[data-add=shifts]').click();
    expect(ruleSetSchema.safeParse(heard.at(-1)!.rules).success).to.equal(true);
    expect(heard.at(-1)!.rules.shifts!.longestMinutes).to.equal(720);
  });

  it('sends nothing for rules set from outside', async () => {
    const { el, heard } = await shown();
    el.rules = { ...rules, margin: { minutes: 1 } };
    await el.updateComplete;
    expect(heard).to.deep.equal([]);
  });

  it('draws a step beside the one it starts with, and isolation steps only with an isolation', async () => {
    const { el } = await shown();
    const x = (): (string | null)[] =>
      [...el.renderRoot.querySelectorAll('.laid [data-list=leadIn] .bar')].map((element) =>
        element.getAttribute('x'),
      );
    const [protect, isolate, setUp] = x();
    expect(isolate).to.equal(setUp);
    expect(Number(isolate)).to.be.greaterThan(Number(protect));
    // 480 less 30 + 45, less 25, less 40; loud time does not count.
    expect(find(el, '.outcome').textContent).to.contain('5 h 40');
    find(el, '[data-sketch=isolated]').click();
    await el.updateComplete;
    expect(x().length).to.equal(2);
    expect(find(el, '.outcome').textContent).to.contain('6 h 05');
    expect(find(el, '.absent').textContent).to.contain('Isolate');
  });

  it('lays the rules in a window of the plan, or says that a short one holds nothing', async () => {
    const { el } = await shown();
    const choose = find<HTMLSelectElement>(el, '[data-sketch=window]');
    choose.value = 'N1';
    choose.dispatchEvent(new Event('change'));
    await el.updateComplete;
    expect(find(el, '.outcome').textContent).to.contain('of 6 h');
    choose.value = '';
    choose.dispatchEvent(new Event('change'));
    await el.updateComplete;
    await type(el, find(el, '[data-sketch=minutes]'), '1 h');
    expect(find(el, '.outcome').textContent).to.contain('Too short by 1 h 20');
    await type(el, find(el, '[data-sketch=minutes]'), 'long');
    expect(find(el, '[data-sketch=minutes]').value).to.equal('long');
  });

  it('says what the independent check looked at, and what it found', async () => {
    const { el } = await shown();
    el.beforeRules = { ...rules, margin: { minutes: 5 } };
    const fits = change.fits!;
    const nothing = { ...fits, gained: [], lost: [], packages: [], nowhere: [] };
    const fault = { code: 'spare', text: '12 minutes are stated as left' };
    for (const [told, is, isNot] of [
      [fits, 'found no fault in the fits gained. By the independent check each fit lost', 'FAULT'],
      [{ ...fits, gained: [] }, 'each fit lost breaks a rule', 'found no fault'],
      [nothing, 'Not looked at by the independent check.', 'found no fault'],
      [{ ...fits, faults: [fault] }, 'THE CHECK FOUND A FAULT', 'found no fault'],
    ] as const) {
      el.change = { ...change, fits: told };
      await el.updateComplete;
      const text = find(el, '.change').textContent.replaceAll(/\s+/g, ' ');
      expect(text).to.contain(is);
      expect(text).not.to.contain(isNot);
      for (const { text: found } of told.faults) expect(text).to.contain(found);
    }
  });

  it('tells which windows and fits change, those that fit nowhere first, each a link', async () => {
    const { el } = await shown();
    el.beforeRules = { ...rules, name: 'Before' };
    el.change = { ...change, fits: null };
    el.busy = true;
    await el.updateComplete;
    expect(find(el, '.change .told').textContent).to.contain('1 window loses 30 min');
    expect(find(el, '.working').textContent).to.contain('Working out');
    el.change = change;
    el.busy = false;
    await el.updateComplete;
    const packages = [...el.renderRoot.querySelectorAll<HTMLElement>('[data-package]')];
    expect(packages.map((element) => element.dataset['package'])).to.deep.equal(['Deck', 'Track']);
    expect(packages[0]!.textContent).to.contain('now fits no window');
    const followed: unknown[] = [];
    el.addEventListener('possession-why-link', (event: WhyLinkEvent) => followed.push(event.place));
    find(el, '[data-window=N1] button').click();
    find(el, '[data-package=Deck] .links button').click();
    expect(followed).to.deep.equal([
      { to: 'window', id: 'N1' },
      { to: 'fit', package: 'Deck', window: 'N1' },
    ]);
  });

  it('tells a long list by its count, and whole when asked', async () => {
    const { el } = await shown();
    el.beforeRules = { ...rules, name: 'Before' };
    el.change = {
      windows: Array.from({ length: 300 }, (_, index) => ({
        window: `W${index}`,
        work: 'ordinary' as const,
        usableBefore: 100,
        usableAfter: 90,
        minutes: -10,
      })),
      fits: null,
    };
    await el.updateComplete;
    const rows = (): number => el.renderRoot.querySelectorAll('[data-window]').length;
    expect(rows()).to.be.lessThan(20);
    expect(find(el, '.change .told').textContent).to.contain('300 windows lose 50 h');
    find(el, '[data-more=windows]').click();
    await el.updateComplete;
    expect(rows()).to.equal(300);
  });

  it('puts the cursor in the rule it is asked to show', async () => {
    const { el } = await shown();
    const at = (): string | undefined => (el.shadowRoot!.activeElement as HTMLInputElement)?.value;
    expect(el.goTo('Isolate')).to.equal(true);
    expect(at()).to.equal('45');
    expect(el.goTo('Houses')).to.equal(true);
    expect(at()).to.equal('Houses');
    expect(el.goTo('margin')).to.equal(true);
    expect(at()).to.equal('40');
    expect(el.goTo('nothing of the kind')).to.equal(false);
  });

  it('goes back to the rules before, and asks for a new base', async () => {
    const { el, heard } = await shown();
    const before = { ...rules, name: 'Before' };
    el.beforeRules = before;
    await el.updateComplete;
    let asked = 0;
    el.addEventListener('possession-rules-base', () => (asked += 1));
    find(el, '[data-act=base]').click();
    expect(asked).to.equal(1);
    find(el, '[data-act=back]').click();
    expect(heard[0]!.rules).to.equal(before);
  });

  it('has no accessibility faults empty, filled, with nothing in it and compared, light and dark', async () => {
    const { el } = await shown();
    await inBothSchemes(async () => {
      const bare = ruleSetSchema.parse({ schema: 1, name: 'none' });
      for (const [given, told] of [
        [rules, null],
        [rules, change],
        [bare, { ...change, fits: null }],
        [null, null],
      ] as const) {
        el.rules = given;
        el.beforeRules = told ? { ...rules, name: 'Before' } : null;
        el.change = told;
        await el.updateComplete;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});

/** Rules on a page that is without a network for a while. */
class Unloadable extends PossessionRules {
  static isOffline = true;

  protected override async loadSchema(): ReturnType<PossessionRules['loadSchema']> {
    if (Unloadable.isOffline) throw new Error('no network');
    return super.loadSchema();
  }
}
customElements.define('rules-unloadable', Unloadable);

it('says that a change could not be checked, takes none of it, and takes it once it can be', async () => {
  const el = await fixture<Unloadable>(
    html`<rules-unloadable .rules=${rules} .windows=${windows}></rules-unloadable>`,
  );
  const heard: RulesChangeEvent[] = [];
  el.addEventListener('possession-rules-change', (event) => heard.push(event));
  const margin = () => find(el, '[data-field="margin.minutes"]');
  await type(el, margin(), '55');
  expect(heard).to.deep.equal([]);
  expect(el.rules).to.equal(rules);
  expect(find(el, '.problems').textContent).to.contain(
    defaultStrings.wrong.unchecked('no network'),
  );
  Unloadable.isOffline = false;
  el.requestUpdate();
  await el.updateComplete;
  await type(el, margin(), '55');
  expect(heard[0]?.rules.margin?.minutes).to.equal(55);
  expect(find(el, '.problems').textContent).not.to.contain('no network');
});
