import { expect } from '@open-wc/testing';
import { momentsOf } from '../../components/handback/live/clock-entry.js';
import type { HandbackEntryEvent } from '../../components/handback/handback-entry-event.js';
import { addMinutes, isoText, MINUTE, type Instant } from '../../src/calendar/index.js';
import { handback } from '../../src/risk/index.js';
import { all, open, sent, text, withText } from './support/look.js';
import { at, aWindow, zone } from './support/samples.js';
import { ENTRY, placements, plan, shown, start, typeTime } from './support/shift-night.js';

describe('a time typed on a night on which clocks change', () => {
  const near = (local: string): Instant => at(local);

  it('is the nearest, also over midnight', () => {
    expect(momentsOf('23:50', near('2027-02-10 01:00'), zone)).to.deep.equal([
      at('2027-02-09 23:50'),
    ]);
    expect(momentsOf('00:10', near('2027-02-09 23:30'), zone)).to.deep.equal([
      at('2027-02-10 00:10'),
    ]);
  });

  it('is typed with a sign or without, and refused when it is none', () => {
    for (const typed of ['02:40', '2:40', '0240', ' 2.40 '])
      expect(momentsOf(typed, start, zone)).to.deep.equal([at('2027-02-10 02:40')]);
    for (const typed of ['', '24:00', '12:60', '2h40', '7']) {
      expect(momentsOf(typed, start, zone)).to.deep.equal([]);
    }
  });

  it('is two moments where clocks show it twice, none where they skip it', () => {
    const twice = momentsOf('01:30', near('2026-10-25 03:00'), zone);
    expect(twice.map((value) => isoText(value, zone))).to.deep.equal([
      '2026-10-25T01:30:00+01:00',
      '2026-10-25T01:30:00+00:00',
    ]);
    expect(momentsOf('01:30', near('2027-03-28 03:00'), zone)).to.deep.equal([]);
  });

  it('asks which of the two is meant, and shows it with its offset', async () => {
    const autumn = aWindow('H1', '2026-10-24 23:00', '2026-10-25 05:00');
    const placed = placements.map((placement) => ({
      ...placement,
      from: placement.from - start + autumn.start,
      to: placement.to - start + autumn.start,
    }));
    const result = handback({ ...plan, windows: [autumn] }, autumn, placed, {
      seed: 1,
      runs: 100,
      at: autumn.start,
    });
    const el = await shown();
    el.results = [result];
    el.windows = [autumn];
    el.now = addMinutes(autumn.start, 200);
    el.log = [
      {
        id: 'z',
        at: at('2026-10-25 01:30') + 60 * MINUTE,
        enteredAt: at('2026-10-25 01:30') + 61 * MINUTE,
        by: 'J. Marl',
        event: { kind: 'note', text: 'Second half past one' },
      },
    ];
    await el.updateComplete;
    expect(text(all(el, '.log li')[0])).to.contain('01:30+00:00');
    const form = withText(el, 'li.record', 'Set bearings').querySelector('.earlier')!;
    open(form);
    typeTime(form, '01:30');
    form.querySelector('select')!.value = 'second';
    const press = await sent<HandbackEntryEvent>(el, ENTRY, () =>
      form.querySelector<HTMLElement>('button')!.click(),
    );
    expect(isoText(press.at!, zone)).to.equal('2026-10-25T01:30:00+00:00');
  });
});
