import { expect } from '@open-wc/testing';
import type { DecisionsChangeEvent } from '../../components/handback/decisions-change-event.js';
import type { HandbackEntryEvent } from '../../components/handback/handback-entry-event.js';
import type { PossessionHandback } from '../../components/handback/handback.js';
import { MINUTE } from '../../src/calendar/index.js';
import { noDecisions } from '../../src/model/index.js';
import { axeFaults } from './support/axe.js';
import { all, open, sent, text, withText } from './support/look.js';
import { aWindow } from './support/samples.js';
import { ENTRY, entry, live, log, placed, shown } from './support/shift-night.js';

describe('go/no-go points and limits', () => {
  it('count down, and take a decision', async () => {
    const point = live.goPoints.find((goPointTime) => goPointTime.id === 'G2')!;
    const el = await shown({ now: point.at - 12 * MINUTE });
    const row = withText(el, '.go-point', 'Carry on setting?');
    expect(text(row)).to.contain('in 12 min');
    expect(text(row)).to.contain('nobody is named to decide');
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      row.querySelector<HTMLElement>('.no-go')!.click(),
    );
    expect(press.event).to.deep.equal({
      kind: 'decided',
      point: 'G2',
      name: 'Carry on setting?',
      go: false,
    });
    el.log = [...log, entry('g', 210, press.event)];
    await el.updateComplete;
    expect(text(withText(el, '.go-point', 'Carry on'))).to.contain('No go, said 02:30');
  });

  it('show the point of no return until the work begins, then the latest abandonment', async () => {
    const el = await shown();
    // Cutting has begun: only its latest abandonment is left, with room for lead-out and margin; the bearings are reversible and have not begun.
    expect(all(el, '.limit').map((element) => text(element))).to.deep.equal([
      'Cut out the old deck: latest abandonment 02:45 in 2 h 05',
    ]);
  });

  it('are placed by the planner, inside the window only', async () => {
    const el = await shown({ decisions: noDecisions });
    el.live = false;
    await el.updateComplete;
    const form = all(el, '.add-point')[0] as HTMLFormElement;
    open(form.closest('details')!);
    const field = (name: string): HTMLInputElement => form.querySelector(`[name=${name}]`)!;
    field('point').value = 'Begin the lift?';
    field('holder').value = 'Lift supervisor';
    field('clock').value = '12:00';
    let refused = true;
    el.addEventListener('possession-decisions-change', () => (refused = false), { once: true });
    form.requestSubmit();
    expect(refused).to.equal(true);
    field('clock').value = '01:40';
    field('clock').dispatchEvent(new Event('input', { bubbles: true }));
    const change = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      form.requestSubmit(),
    );
    expect(change.decisions).to.deep.equal({
      commitments: [],
      goPoints: [
        {
          id: 'G1',
          window: 'H1',
          name: 'Begin the lift?',
          holder: 'Lift supervisor',
          at: '2027-02-10T01:40:00+00:00',
        },
      ],
    });
    el.decisions = change.decisions;
    await el.updateComplete;
    const removal = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      all(el, '.points .remove')[0]!.click(),
    );
    expect(removal.decisions.goPoints).to.deep.equal([]);
  });

  /** The form that changes the point with these words, open. */
  const changing = (el: PossessionHandback, words: string) => {
    const row = withText(el, '.points li', words);
    all(el, '.rest, .decision-form').forEach(open);
    open(row.querySelector('details')!);
    const form = row.querySelector<HTMLFormElement>('form')!;
    return {
      row,
      form,
      field: (name: string): HTMLInputElement => form.querySelector(`[name=${name}]`)!,
      problem: () => text(form.querySelector('.problem')),
    };
  };
  it('are changed where they stand: words, holder and time, and nothing else of the plan', async () => {
    const el = await shown({ decisions: placed });
    expect(all(el, '.points li')).to.have.length(2);
    const { row, field, form } = changing(el, 'Carry on setting?');
    expect(text(row)).to.contain('02:45').and.to.contain('nobody is named to decide');
    expect([field('point').value, field('holder').value, field('clock').value]).to.deep.equal([
      'Carry on setting?',
      '',
      '02:45',
    ]);
    field('point').value = 'Set the last two?';
    field('holder').value = 'Lift supervisor';
    field('clock').value = '0230';
    const change = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      form.requestSubmit(),
    );
    expect(change.decisions.goPoints).to.deep.equal([
      placed.goPoints[0],
      {
        id: 'G2',
        window: 'H1',
        name: 'Set the last two?',
        holder: 'Lift supervisor',
        at: '2027-02-10T02:30:00+00:00',
      },
      placed.goPoints[2],
    ]);
    expect(form.closest('details')!.open).to.equal(false);
    expect(el.shadowRoot!.activeElement).to.equal(
      form.closest('details')!.querySelector('summary'),
    );
  });

  it('move from a time to before a piece of work, and from there to a time', async () => {
    const el = await shown({ decisions: placed });
    const second = changing(el, 'Carry on setting?');
    const chosen = second.field('before');
    chosen.value = 'SET';
    chosen.dispatchEvent(new Event('input', { bubbles: true }));
    expect(second.field('clock').closest('label')!.hidden).to.equal(true);
    const change = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      second.form.requestSubmit(),
    );
    expect(change.decisions.goPoints[1]).to.deep.equal({
      id: 'G2',
      window: 'H1',
      name: 'Carry on setting?',
      holder: '',
      before: 'SET',
    });
    el.decisions = change.decisions;
    await el.updateComplete;
    const first = changing(el, 'Begin to cut?');
    first.field('before').value = '';
    first.field('clock').value = '23:40';
    const back = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      first.form.requestSubmit(),
    );
    expect(back.decisions.goPoints[0]).to.deep.equal({
      id: 'G1',
      window: 'H1',
      name: 'Begin to cut?',
      holder: 'Site manager',
      at: '2027-02-09T23:40:00+00:00',
    });
  });

  it('keep what is typed where it cannot be taken, and say what is wrong beside it', async () => {
    const el = await shown({ decisions: placed });
    const { form, field, problem } = changing(el, 'Carry on setting?');
    let count = 0;
    el.addEventListener('possession-decisions-change', () => (count += 1));
    for (const [name, typed, said] of [
      ['clock', 'half past two', 'Give a time such as 02:40.'],
      ['clock', '12:00', 'That time is not in the window.'],
      ['point', ' ', 'Say what is decided.'],
    ] as const) {
      field(name).value = typed;
      form.requestSubmit();
      el.requestUpdate();
      await el.updateComplete;
      expect(problem()).to.equal(said);
      expect(field(name).value).to.equal(typed);
      expect(field(name).getAttribute('aria-invalid')).to.equal('true');
      expect(el.shadowRoot!.activeElement).to.equal(field(name));
    }
    await axeFaults(el).then((faults) => expect(faults).to.deep.equal([]));
    field('point').dispatchEvent(
      new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, composed: true }),
    );
    expect(field('point').value).to.equal('Carry on setting?');
    expect(field('clock').value).to.equal('02:45');
    expect([problem(), form.closest('details')!.open, count]).to.deep.equal(['', false, 0]);
  });

  it('are changed within 390 pixels, however long the names of the work', async () => {
    const cutOffs = live.cutOffs.map((cutOff) => ({
      ...cutOff,
      name: `${cutOff.name} and everything beside it that was left on the bank the week before`,
    }));
    const el = await shown({ decisions: placed, results: [{ ...live, cutOffs }] });
    el.style.setProperty('width', '390px');
    changing(el, 'Carry on setting?');
    const form = all(el, '.decision-form')[0]!;
    expect(form.getBoundingClientRect().width).to.be.greaterThan(200).and.at.most(390);
    expect(form.scrollWidth).to.be.at.most(390);
  });

  it('keep the second reading of a time where only their words are changed', async () => {
    const autumn = aWindow('A1', '2026-10-24 23:00', '2026-10-25 05:00');
    const el = await shown({
      results: [{ ...live, window: 'A1', live: null }],
      windows: [autumn],
      selectedWindow: 'A1',
      decisions: {
        commitments: [],
        goPoints: [
          { id: 'G1', window: 'A1', name: 'Go on?', holder: '', at: '2026-10-25T01:30:00+00:00' },
        ],
      },
    });
    const { form, field } = changing(el, 'Go on?');
    expect(field('clock').value).to.equal('01:30+00:00');
    field('point').value = 'Still go on?';
    const words = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      form.requestSubmit(),
    );
    expect(words.decisions.goPoints[0]!.at).to.equal('2026-10-25T01:30:00+00:00');
    for (const [typed, at] of [
      ['01:40', '2026-10-25T01:40:00+01:00'],
      ['01:40+00:00', '2026-10-25T01:40:00+00:00'],
    ] as const) {
      field('clock').value = typed;
      const time = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
        form.requestSubmit(),
      );
      expect(time.decisions.goPoints[0]!.at).to.equal(at);
    }
  });

  it('ask for the day in a blockade of several days', async () => {
    const blockade = aWindow('B1', '2027-02-12 22:00', '2027-02-15 05:00');
    const el = await shown({
      results: [{ ...live, window: 'B1', live: null }],
      windows: [blockade],
      selectedWindow: 'B1',
      decisions: {
        commitments: [],
        goPoints: [
          { id: 'G1', window: 'B1', name: 'Go on?', holder: '', at: '2027-02-13T03:00:00+00:00' },
        ],
      },
    });
    const { form, field, problem } = changing(el, 'Go on?');
    const day = field('day') as unknown as HTMLSelectElement;
    expect([...day.options].map((option) => text(option))).to.deep.equal([
      'Fri 12 Feb',
      'Sat 13 Feb',
      'Sun 14 Feb',
      'Mon 15 Feb',
    ]);
    day.selectedIndex = 2;
    const change = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      form.requestSubmit(),
    );
    expect(change.decisions.goPoints[0]!.at).to.equal('2027-02-14T03:00:00+00:00');
    day.selectedIndex = 3;
    field('clock').value = '06:00';
    form.requestSubmit();
    expect(problem()).to.equal('That time is not in the window.');
  });

  it('what cannot be undone is said by the planner, and taken back', async () => {
    const el = await shown({ decisions: noDecisions });
    const row = withText(el, '.decision-form tbody tr', 'Cut out');
    open(row.closest('details')!);
    const change = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      row.querySelector<HTMLInputElement>('input[type=checkbox]')!.click(),
    );
    expect(change.decisions.commitments).to.deep.equal([{ activity: 'CUT', irreversible: true }]);
    el.decisions = change.decisions;
    await el.updateComplete;
    const minutes = row.querySelectorAll<HTMLInputElement>('input[type=number]')[1]!;
    const next = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () => {
      minutes.value = '60';
      minutes.dispatchEvent(new Event('change'));
    });
    expect(next.decisions.commitments).to.deep.equal([
      { activity: 'CUT', irreversible: true, reinstatementMinutes: 60 },
    ]);
    const back = await sent<DecisionsChangeEvent>(el, 'possession-decisions-change', () =>
      row.querySelector<HTMLInputElement>('input[type=checkbox]')!.click(),
    );
    expect(back.decisions.commitments).to.deep.equal([]);
  });
});
