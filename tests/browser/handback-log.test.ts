import { expect } from '@open-wc/testing';
import type { CalendarSaveEvent } from '../../components/booking/calendar-save-event.js';
import type {
  HandbackLogMergeEvent,
  HandbackLogSaveEvent,
} from '../../components/handback/handback-log-events.js';
import type { PossessionHandback } from '../../components/handback/handback.js';
import { strings as german } from '../../components/handback/strings.de.js';
import type { FigureAskEvent } from '../../components/shared/figure-ask-event.js';
import { cautionLines } from '../../components/shared/words.de.js';
import { cautions } from '../../src/model/index.js';
import { shiftLogFile } from '../../src/risk/index.js';
import { all, sent, text, withText } from './support/look.js';
import { entry, live, log, shown, start } from './support/shift-night.js';
import { waitUntil } from './support/wait-until.js';

describe('the log from device to device', () => {
  it('goes out as a file and as a table', async () => {
    const el = await shown();
    const file = await sent<HandbackLogSaveEvent>(el, 'possession-handback-log-save', () =>
      all(el, '.save-log')[0]!.click(),
    );
    expect([file.name, file.mediaType]).to.deep.equal(['shift-H1.json', 'application/json']);
    expect(file.text).to.equal(shiftLogFile('H1', log, start));
    const table = await sent<HandbackLogSaveEvent>(el, 'possession-handback-log-save', () =>
      all(el, '.save-table')[0]!.click(),
    );
    expect(table.name).to.equal('shift-H1.csv');
    expect(table.text.split('\r\n')).to.have.length(log.length + 2);
  });

  const bring = (el: PossessionHandback, body: string): void => {
    const input = all(el, '.bring-in input')[0] as HTMLInputElement;
    const files = new DataTransfer();
    files.items.add(new File([body], 'log.json', { type: 'application/json' }));
    input.files = files.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  };

  it('comes in, each entry once', async () => {
    const el = await shown();
    const other = [log[0]!, entry('x', 60, { kind: 'note', text: 'Crane moved' })];
    const merged = await sent<HandbackLogMergeEvent>(el, 'possession-handback-log-merge', () =>
      bring(el, shiftLogFile('H1', other)),
    );
    expect(merged.added).to.deep.equal(['x']);
    expect(merged.log.map((item) => item.id)).to.deep.equal(['a', 'b', 'c', 'x']);
    await el.updateComplete;
    expect(text(all(el, '.said')[0])).to.equal('1 new entry brought in.');
  });

  for (const [what, body, said] of [
    ['of another window', shiftLogFile('W9', log), 'log of window W9'],
    ['that is no log', 'Monday, rain', 'no JSON'],
  ] as const)
    it(`${what} is refused in plain words`, async () => {
      const el = await shown();
      let merged = false;
      el.addEventListener('possession-handback-log-merge', () => (merged = true));
      bring(el, body);
      await waitUntil(() => text(all(el, '.said')[0]).includes(said));
      expect(merged).to.equal(false);
    });
});

describe('figures and files of the handback', () => {
  it('gives the cut-off times as a calendar file', async () => {
    const el = await shown();
    const save = await sent<CalendarSaveEvent>(el, 'possession-calendar-save', () =>
      all(el, 'button.calendar')[0]!.click(),
    );
    expect(save.text).to.contain('SUMMARY:H1: Set bearings must have started');
  });

  it('gives them in German on a German page, with the cautions', async () => {
    const el = await shown();
    el.lang = 'de';
    await waitUntil(() => text(all(el, 'button.calendar')[0]) === german.saveCalendar);
    const save = await sent<CalendarSaveEvent>(el, 'possession-calendar-save', () =>
      all(el, 'button.calendar')[0]!.click(),
    );
    // Long lines are folded by a line end and a space.
    const file = save.text.replaceAll('\r\n ', '').replaceAll('\\', '');
    expect(file).to.contain('SUMMARY:H1: Set bearings, spätester Beginn');
    for (const line of cautionLines) expect(file).to.contain(line);
    for (const caution of cautions) expect(file).not.to.contain(caution);
  });

  it('asks where a figure comes from', async () => {
    const el = await shown();
    const asked = await sent<FigureAskEvent>(el, 'possession-figure-ask', () =>
      withText<HTMLElement>(el, '.figures tr', 'P80').querySelector('button')!.click(),
    );
    expect(asked.figure).to.deep.equal({ of: 'p-value', window: 'H1', percent: 80 });
    const index = live.cutOffs.findIndex((off) => off.activity === 'SET');
    const cutOff = await sent<FigureAskEvent>(el, 'possession-figure-ask', () =>
      withText<HTMLElement>(el, '.cut-offs tr', 'Set bearings').querySelector('button')!.click(),
    );
    expect(cutOff.figure).to.deep.equal({ of: 'cut-off', window: 'H1', index });
  });
});
