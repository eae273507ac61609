import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/ribbon/define.js';
import type { PossessionRibbon } from '../../components/ribbon/ribbon.js';
import { linesOf } from '../../components/ribbon/lines.js';
import type { WindowSelectEvent } from '../../components/ribbon/window-select-event.js';
import { MINUTE } from '../../src/calendar/index.js';
import { defaultStrings } from '../../components/ribbon/strings.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import {
  aLedger,
  at,
  aWindow,
  blockade,
  ledgers,
  night,
  press,
  springNight,
  windows,
} from './support/samples.js';

const shown = (): Promise<PossessionRibbon> =>
  fixture(html`<possession-ribbon .windows=${windows} .ledgers=${ledgers}></possession-ribbon>`);
const options = (el: PossessionRibbon): HTMLElement[] => [
  ...el.renderRoot.querySelectorAll<HTMLElement>('[role=option]'),
];
const drawn = (option: HTMLElement): number =>
  [...option.querySelectorAll('rect.edge')].reduce(
    (sum, element) => sum + Number(element.getAttribute('width')) + 1,
    0,
  );

describe('possession-ribbon', () => {
  it('says what to do where there are no windows, in place of a bare axis', async () => {
    const el = await fixture<PossessionRibbon>(html`<possession-ribbon></possession-ribbon>`);
    expect(el.renderRoot.textContent).to.contain(defaultStrings.empty);
    expect(el.renderRoot.querySelector('.axis, [role=listbox]')).to.equal(null);
    expect(await axeFaults(el)).to.deep.equal([]);
    el.windows = windows;
    await el.updateComplete;
    expect(el.renderRoot.textContent).not.to.contain(defaultStrings.empty);
    expect(options(el).length).to.equal(windows.length);
  });

  it('shows one row a window with its usable and booked time', async () => {
    const el = await shown();
    expect(options(el)).to.have.length(4);
    expect(options(el)[0]!.textContent.replaceAll(/\s+/g, ' ')).to.contain('usable4 h of 6 h');
  });

  it('draws the spring night in elapsed time, an hour less than its clock face', async () => {
    const plain = aWindow('P', '2027-03-13 22:50', '2027-03-14 09:00');
    const el = await shown();
    el.windows = [plain, springNight];
    el.ledgers = [
      aLedger(plain, [['usable', 'Usable', 610]]),
      aLedger(springNight, [['usable', 'Usable', 550]]),
    ];
    await el.updateComplete;
    const [before, spring] = options(el);
    expect(drawn(spring!) / drawn(before!)).to.be.closeTo(550 / 610, 0.001);
  });

  it('makes equal minutes equally long on every row', async () => {
    const el = await shown();
    const [first, second] = options(el);
    expect(drawn(first!) / 360).to.be.closeTo(drawn(second!) / 550, 0.001);
  });

  it('marks and names a clock change', async () => {
    const el = await shown();
    expect(options(el)[1]!.textContent).to.match(/clocks (forward |\+)1 h/);
    expect(options(el)[0]!.querySelector('.change')).to.equal(null);
  });

  it('folds a long closure at each noon without losing a minute', () => {
    const lines = linesOf(blockade, ledgers[2]);
    expect(lines.map((line) => (line.end - line.start) / MINUTE)).to.deep.equal([780, 840]);
    const rows = lines
      .flatMap((line) => line.rows)
      .reduce((sum, row) => sum + row.end - row.start, 0);
    expect(rows).to.equal(blockade.end - blockade.start);
    expect(lines[1]!.noon).to.equal(at('2027-05-02 12:00'));
  });

  it('draws no usable time in a window that takes no work', async () => {
    const el = await shown();
    expect(options(el)[3]!.querySelector('rect.edge.usable')).to.equal(null);
    expect(options(el)[3]!.textContent).to.contain('none');
  });

  it('tells that a window is picked by click', async () => {
    const el = await shown();
    setTimeout(() => options(el)[2]!.click());
    const event = await oneEvent<WindowSelectEvent>(el, 'possession-window-select');
    expect(event.window).to.equal('B3');
    expect(event.composed).to.equal(true);
  });

  for (const [key, from, to] of [
    ['ArrowDown', 'N1', 'S2'],
    ['ArrowUp', 'S2', 'N1'],
    ['Home', 'B3', 'N1'],
    ['End', 'N1', 'N4'],
    ['ArrowUp', 'N1', 'N1'],
    ['ArrowDown', 'N4', 'N4'],
  ] as const)
    it(`${key} goes from ${from} to ${to} and takes the focus along`, async () => {
      const el = await shown();
      el.selected = from;
      await el.updateComplete;
      press(el.renderRoot.querySelector('[role=listbox]')!, key);
      await el.updateComplete;
      await el.updateComplete;
      expect(el.selected).to.equal(to);
      expect((el.shadowRoot!.activeElement as HTMLElement).dataset['id']).to.equal(to);
      expect(el.renderRoot.querySelectorAll('[role=option][tabindex="0"]')).to.have.length(1);
    });

  it('sends nothing when the selection is set from outside', async () => {
    const el = await shown();
    let sent = 0;
    el.addEventListener('possession-window-select', () => (sent += 1));
    el.selected = night.id;
    await el.updateComplete;
    expect(sent).to.equal(0);
  });

  it('gives the same figures as a table', async () => {
    const el = await shown();
    el.asTable = true;
    await el.updateComplete;
    const cells = [...el.renderRoot.querySelectorAll('tbody tr:first-child td')].map((cell) =>
      cell.textContent?.trim(),
    );
    expect(cells).to.include.members(['6 h', '4 h', '30 min', 'none']);
  });

  it('is a table with the hours at the head of every sheet while it is printed', async () => {
    const el = await shown();
    globalThis.dispatchEvent(new Event('beforeprint'));
    const rows = el.renderRoot.querySelectorAll('table.sheet tbody tr');
    expect(rows.length).to.equal(windows.length);
    expect(el.renderRoot.querySelector('table.sheet thead svg text')).to.not.equal(null);
    const wide = Number(rows[0]!.querySelector('svg')!.getAttribute('width'));
    expect(wide).to.be.greaterThan(300).and.lessThan(600);
    expect(el.renderRoot.querySelector('.on-paper .cautions')!.textContent).to.contain(
      'planning aid',
    );
    globalThis.dispatchEvent(new Event('afterprint'));
    expect(el.renderRoot.querySelector('table.sheet')).to.equal(null);
    expect(el.renderRoot.querySelector('[role=listbox]')).to.not.equal(null);
  });

  it('says other words when it is given them', async () => {
    const el = await shown();
    el.strings = { usable: 'Nutzbar', kind: { ...defaultStrings.kind, margin: 'Puffer' } };
    await el.updateComplete;
    expect(el.renderRoot.querySelector('.key')!.textContent).to.contain('Puffer');
    expect(el.renderRoot.querySelector('.axis')!.textContent).to.contain('Nutzbar');
  });

  it('has no accessibility faults as a picture and as a table, light and dark', async () => {
    const el = await shown();
    await inBothSchemes(async () => {
      for (const asTable of [false, true]) {
        el.asTable = asTable;
        await el.updateComplete;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});
