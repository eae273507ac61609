import { expect } from '@open-wc/testing';
import type { HandbackEntryEvent } from '../../components/handback/handback-entry-event.js';
import type { HandbackRecordEvent } from '../../components/handback/handback-record-event.js';
import type { PossessionHandback } from '../../components/handback/handback.js';
import { shiftState, type ShiftEntry } from '../../src/engine/index.js';
import { handback } from '../../src/risk/index.js';
import { axeFaults } from './support/axe.js';
import { all, open, sent, text, withText } from './support/look.js';
import { at } from './support/samples.js';
import {
  ENTRY,
  entry,
  log,
  night,
  now,
  options,
  placements,
  plan,
  shown,
  typeTime,
} from './support/shift-night.js';

describe('possession-handback during the shift', () => {
  it('counts a unit with one press, and says up to how many to go on', async () => {
    const started = entry('d', 95, { kind: 'units-done', activity: 'SET', units: 2 });
    const el = await shown({ log: [...log, started] });
    const row = withText(el, 'li.record', 'Set bearings');
    expect(text(row.querySelector('.count'))).to.contain('2 of 4 done');
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      row.querySelector<HTMLElement>('.one-more')!.click(),
    );
    expect(press.event).to.deep.equal({ kind: 'units-done', activity: 'SET', units: 3 });
    expect([press.window, press.at, press.corrects]).to.deep.equal(['H1', null, undefined]);
    expect(press.bubbles && press.composed).to.equal(true);
  });

  it('stops counting when all units are done', async () => {
    const all4 = entry('d', 95, { kind: 'units-done', activity: 'SET', units: 4 });
    const el = await shown({ log: [...log, all4] });
    const row = withText(el, 'li.record', 'Set bearings');
    expect(row.querySelector<HTMLButtonElement>('.one-more')!.disabled).to.equal(true);
  });

  it('takes what is left of begun work, and refuses minutes that do not rise', async () => {
    const el = await shown();
    const form = withText(el, 'li.record', 'Cut out').querySelector<HTMLFormElement>('.left form')!;
    open(form.closest('details')!);
    const [low, likely, high] = [...form.querySelectorAll('input')];
    low!.value = '30';
    likely!.value = '20';
    let wrong = false;
    el.addEventListener(ENTRY, () => (wrong = true), { once: true });
    form.requestSubmit();
    expect(wrong).to.equal(false);
    low!.value = '';
    likely!.value = '35';
    high!.value = '50';
    likely!.dispatchEvent(new Event('input', { bubbles: true }));
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () => form.requestSubmit());
    expect(press.event).to.deep.equal({
      kind: 'minutes-left',
      activity: 'CUT',
      low: 35,
      likely: 35,
      high: 50,
    });
  });

  it('reports a possession granted late, at the time it was', async () => {
    const el = await shown({ log: [], results: [handback(plan, night, placements, options)] });
    const row = withText(el, 'li.record', 'Possession granted');
    const form = row.querySelector('.earlier')!;
    open(form);
    typeTime(form, '23:25');
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      form.querySelector<HTMLElement>('button')!.click(),
    );
    expect(press.event).to.deep.equal({ kind: 'granted' });
    expect(press.at).to.equal(at('2027-02-09 23:25'));
    expect((form as HTMLDetailsElement).open).to.equal(false);
  });

  it('reports a start and a finish of a step with the side of the work it stands on', async () => {
    const el = await shown();
    const press = await sent<HandbackRecordEvent>(el, 'possession-handback-record', () =>
      withText(el, 'button.started', 'Inspect and test').click(),
    );
    expect(press.event).to.deep.equal({
      kind: 'step-started',
      step: 'Inspect and test',
      stage: 'lead-out',
    });
  });

  it('reports a start at another time', async () => {
    const el = await shown();
    const form = withText(el, 'li.record', 'Set bearings').querySelector('.earlier')!;
    open(form);
    typeTime(form, '00:35');
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      [...form.querySelectorAll<HTMLElement>('button')]
        .find((element) => text(element).startsWith('Started'))!
        .click(),
    );
    expect(press.event).to.deep.equal({ kind: 'activity-started', activity: 'SET' });
    expect(press.at).to.equal(at('2027-02-10 00:35'));
  });

  it('writes a note down and empties the field, but not an empty one', async () => {
    const el = await shown();
    const form = all(el, 'form.note')[0] as HTMLFormElement;
    let count = 0;
    el.addEventListener(ENTRY, () => (count += 1));
    form.requestSubmit();
    expect(count).to.equal(0);
    form.querySelector('input')!.value = ' Rain from 01:10 ';
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () => form.requestSubmit());
    expect(press.event).to.deep.equal({ kind: 'note', text: 'Rain from 01:10' });
    expect(form.querySelector('input')!.value).to.equal('');
  });

  it('reports the handback, and then says how it stands against the booked end', async () => {
    const el = await shown();
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      all(el, 'button.handed')[0]!.click(),
    );
    expect(press.event).to.deep.equal({ kind: 'handed-back' });
    el.log = [...log, entry('h', 352, { kind: 'handed-back' })];
    await el.updateComplete;
    expect(text(all(el, '.handed-back')[0])).to.equal(
      'Handed back 04:52, 8 min before the booked end',
    );
    el.log = [...log, entry('h', 367, { kind: 'handed-back' })];
    await el.updateComplete;
    expect(text(all(el, '.handed-back')[0])).to.equal('Handed back 05:07, 7 min late');
  });
});

describe('an earlier end that was agreed', () => {
  const agreed = entry('e', 90, { kind: 'end-agreed', end: at('2027-02-10 04:30') });

  it('is an entry beside that of the asking, with the time that was agreed', async () => {
    const el = await shown();
    const form = all(el, '.hand-back .earlier').find((element) =>
      text(element).startsWith('The line is asked for early'),
    )!;
    open(form);
    typeTime(form, '04:30');
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      [...form.querySelectorAll<HTMLElement>('button')]
        .find((element) => text(element).startsWith('Agreed: this is the end now'))!
        .click(),
    );
    expect([press.event, press.at]).to.deep.equal([agreed.event, null]);
  });

  it('stands by its own name on the screen, in the list, on the sheet and in the log, the booked one beside it', async () => {
    const result = handback(plan, night, placements, {
      ...{ ...options, at: now },
      actuals: shiftState([...log, agreed], now).actuals,
    });
    const el = await shown({ log: [...log, agreed], results: [result] });
    expect(text(all(el, '.big .main')[0])).to.contain('Agreed end 04:30, booked 05:00');
    expect(text(withText(el, '.log li', 'Earlier end agreed'))).to.contain('04:30');
    const facts = text(all(el, '.paper .facts')[0]);
    expect(facts).to.contain('Agreed end Wed 10 Feb 2027, 04:30');
    expect(facts).to.contain('Booked end Wed 10 Feb 2027, 05:00');
    const paper = text(all(el, '.log-paper')[0]);
    expect(paper).to.contain('Earlier end agreed: 04:30');
    expect(paper).to.contain('A planning aid. It is not a permit');
    expect(paper).to.contain('nobody has checked it');
    expect(await axeFaults(el)).to.deep.equal([]);
    el.log = [...log, agreed, entry('h', 340, { kind: 'handed-back' })];
    await el.updateComplete;
    expect(text(all(el, '.handed-back')[0])).to.equal('Handed back 04:40, 10 min late');
  });
});

describe('a wrong entry', () => {
  const lineOf = (el: PossessionHandback, words: string): HTMLElement =>
    withText(el, '.log li', words);

  it('is put right with another time: the entry names what it corrects', async () => {
    const el = await shown();
    const form = lineOf(el, 'Cut out the old deck: started').querySelector('.correct')!;
    open(form);
    typeTime(form, '23:50');
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      form.querySelector<HTMLElement>('button.strong')!.click(),
    );
    expect(press.event).to.deep.equal({ kind: 'activity-started', activity: 'CUT' });
    expect([press.at, press.corrects]).to.deep.equal([at('2027-02-09 23:50'), 'c']);
  });

  it('stays, struck through, with who wrote what when', async () => {
    const el = await shown({
      log: [
        ...log,
        { ...entry('d', 50, { kind: 'activity-started', activity: 'CUT' }, 'c'), by: 'R. Fenn' },
      ],
    });
    const line = lineOf(el, 'Cut out');
    const old = line.querySelector('.original s')!;
    expect(text(old)).to.contain('23:45 Cut out the old deck: started');
    expect(text(old)).to.contain('written 23:46 by J. Marl');
    expect(getComputedStyle(old.querySelector('.happened')!).textDecorationLine).to.equal(
      'line-through',
    );
    expect(text(line.querySelector('.correction'))).to.contain('written 23:51 by R. Fenn');
    // A second correction corrects the first.
    const form = line.querySelector('.correct')!;
    open(form);
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      form.querySelector<HTMLElement>('.strike')!.click(),
    );
    expect(press.corrects).to.equal('d');
    expect(press.event).to.deep.equal({ kind: 'struck-out' });
  });

  it('of two corrections shows the one that no longer counts struck through too', async () => {
    const again = (id: string, minutes: number, of: string): ShiftEntry =>
      entry(id, minutes, { kind: 'activity-started', activity: 'CUT' }, of);
    const el = await shown({ log: [...log, again('d', 50, 'c'), again('e', 55, 'd')] });
    const marked = [...lineOf(el, 'Cut out').querySelectorAll('.correction')].map(
      (element) => element.querySelector('s') !== null,
    );
    expect(marked).to.deep.equal([true, false]);
  });

  it('that does not agree with the others is marked in plain words', async () => {
    const el = await shown({
      log: [
        ...log,
        entry('d', 60, { kind: 'units-done', activity: 'SET', units: 3 }),
        entry('e', 70, { kind: 'units-done', activity: 'SET', units: 1 }),
      ],
    });
    expect(text(all(el, '.log-faults')[0])).to.contain('One entry does not agree');
    expect(text(withText(el, '.log li', '1 done').querySelector('.fault'))).to.contain(
      '1 units done, but 3 were done before',
    );
  });
});
