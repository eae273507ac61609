import { expect } from '@open-wc/testing';
import '../../components/ribbon/define.js';
import { PRINTED_WINDOWS } from '../../components/ribbon/row-heights.js';
import type { PossessionRibbon } from '../../components/ribbon/ribbon.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { changesDuring, drawn, ledgersOf, manyWindows, scrollerWith } from './support/large.js';
import { press } from './support/samples.js';

const HEIGHT = 500;
let el: PossessionRibbon;
let scroller: HTMLElement;

async function shown(count = 500): Promise<void> {
  el = document.createElement('possession-ribbon');
  el.windows = manyWindows(count);
  el.ledgers = ledgersOf(el.windows);
  scroller = scrollerWith(el, HEIGHT);
  document.body.append(scroller);
  await el.updateComplete;
  await drawn();
}

const options = (): HTMLElement[] => [
  ...el.renderRoot.querySelectorAll<HTMLElement>('[role=option]'),
];
const option = (id: string): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(`[data-id="${id}"]`)!;
const list = (): HTMLElement => el.renderRoot.querySelector<HTMLElement>('[role=listbox]')!;
const focused = (): string | undefined =>
  (el.shadowRoot!.activeElement as HTMLElement | null)?.dataset['id'];

/** Whether a row stands wholly below the axis and above the end of what scrolls. */
function inSight(id: string): boolean {
  const row = option(id).getBoundingClientRect();
  const axis = el.renderRoot.querySelector('.axis')!.getBoundingClientRect();
  return row.top >= axis.bottom - 1 && row.bottom <= scroller.getBoundingClientRect().bottom + 1;
}

/** The ids that a reader sees, from the top. */
function seen(): string[] {
  const { top, bottom } = scroller.getBoundingClientRect();
  return options()
    .filter((element) => {
      const box = element.getBoundingClientRect();
      return box.bottom > top && box.top < bottom;
    })
    .map((element) => element.dataset['id']!);
}

async function key(name: string): Promise<void> {
  press(list(), name);
  await el.updateComplete;
  await drawn();
}

describe('possession-ribbon with many windows', () => {
  afterEach(() => {
    scroller.remove();
    document.documentElement.removeAttribute('dir');
  });

  for (const count of [500, 5_000])
    it(`draws those of ${count} that are in sight`, async () => {
      await shown(count);
      expect(options().length)
        .to.be.greaterThan(HEIGHT / 40)
        .and.lessThan(40);
      expect(seen()[0]).to.equal('X0');
    });

  it('says how many there are, and of each which one it is', async () => {
    await shown();
    scroller.scrollTop = 9_000;
    await drawn();
    for (const element of options()) {
      expect(element.getAttribute('aria-setsize')).to.equal('500');
      expect(`X${Number(element.getAttribute('aria-posinset')) - 1}`).to.equal(
        element.dataset['id'],
      );
    }
  });

  it('draws others as they scroll into sight, in reading order and without a gap', async () => {
    await shown();
    for (const top of [400, 9_000, 3_000, 1e9, 0]) {
      scroller.scrollTop = top;
      await drawn();
      const ids = seen().map((id) => Number(id.slice(1)));
      expect(ids.length).to.be.greaterThan(8);
      expect(ids).to.deep.equal(ids.map((_, at) => ids[0]! + at));
      const rows = seen().map((id) => option(id).getBoundingClientRect());
      for (const [at, row] of rows.slice(1).entries())
        expect(row.top).to.be.closeTo(rows[at]!.bottom, 0.6);
      expect(options().length).to.be.lessThan(45);
    }
  });

  it('draws each row as a short list would', async () => {
    await shown();
    await key('End');
    const far = option('X499').querySelector('svg')!.innerHTML;
    const few = document.createElement('possession-ribbon');
    few.windows = el.windows.slice(-60);
    few.ledgers = el.ledgers.slice(-60);
    scroller.append(few);
    await few.updateComplete;
    await drawn();
    const near = few.renderRoot.querySelector('[data-id=X499] svg.drawing')!.innerHTML;
    expect(near.replaceAll(/<!--.*?-->/g, '')).to.equal(far.replaceAll(/<!--.*?-->/g, ''));
  });

  it('draws what is in sight where the page scrolls', async () => {
    await shown();
    document.body.append(el);
    await drawn();
    expect(options().length).to.be.lessThan(innerHeight / 30 + 30);
    scrollTo(0, 8_000);
    await drawn();
    const rows = options().map((element) => element.getBoundingClientRect());
    expect(rows.some((row) => row.top <= 1 && row.bottom >= 1)).to.equal(true);
    expect(rows.some((row) => row.top <= innerHeight && row.bottom >= innerHeight)).to.equal(true);
    scrollTo(0, 0);
    el.remove();
  });

  for (const [name, from, to] of [
    ['End', 'X0', 'X499'],
    ['Home', 'X499', 'X0'],
    ['ArrowDown', 'X250', 'X251'],
    ['ArrowUp', 'X250', 'X249'],
  ] as const)
    it(`${name} goes from ${from} to ${to}, shows it and gives it the focus`, async () => {
      await shown();
      el.selected = from;
      await drawn();
      await key(name);
      expect(el.selected).to.equal(to);
      expect(focused()).to.equal(to);
      expect(inSight(to)).to.equal(true);
    });

  it('goes by as many windows as are in sight with the page keys', async () => {
    await shown();
    await key('PageDown');
    const place = Number(el.selected.slice(1));
    expect(place).to.be.greaterThan(6).and.lessThan(14);
    expect(focused()).to.equal(el.selected);
    await key('PageUp');
    expect(el.selected).to.equal('X0');
  });

  it('goes to a window by the first letters of its name', async () => {
    await shown();
    for (const letter of ['x', '2', '5']) press(list(), letter);
    await el.updateComplete;
    await drawn();
    expect(el.selected).to.equal('X25');
    expect(focused()).to.equal('X25');
  });

  it('shows a window that is selected from outside, and leaves the page where it is', async () => {
    await shown();
    const below = document.createElement('div');
    below.style.setProperty('height', '3000px');
    document.body.prepend(below);
    el.selected = 'X321';
    await drawn();
    expect(inSight('X321')).to.equal(true);
    expect(scrollY).to.equal(0);
    el.selected = 'X3';
    await drawn();
    expect(inSight('X3')).to.equal(true);
    below.remove();
  });

  it('takes the page along when it is asked to go to a window', async () => {
    await shown();
    const above = document.createElement('div');
    above.style.setProperty('height', '3000px');
    document.body.prepend(above);
    let sent = 0;
    el.addEventListener('possession-window-select', () => (sent += 1));
    el.goTo('X400');
    await drawn();
    expect(scrollY).to.be.greaterThan(1_000);
    expect(inSight('X400')).to.equal(true);
    expect(sent).to.equal(0);
    above.remove();
  });

  it('keeps the row that has the focus when it scrolls out of sight', async () => {
    await shown();
    option('X1').click();
    await drawn();
    scroller.scrollTop = 9_000;
    await drawn();
    expect(focused()).to.equal('X1');
    expect(el.renderRoot.querySelectorAll('[role=option][tabindex="0"]')).to.have.length(1);
  });

  it('draws no row again whose window and ledger are the same objects', async () => {
    await shown();
    const same = await changesDuring(list(), async () => {
      el.windows = [...el.windows];
      el.ledgers = [...el.ledgers];
      await drawn();
    });
    expect(same).to.have.length(0);
    const another = { ...el.ledgers[3]!, usableMinutes: 111 };
    const records = await changesDuring(list(), async () => {
      el.ledgers = el.ledgers.map((ledger, at) => (at === 3 ? another : ledger));
      await drawn();
    });
    const rows = records.map((record) => {
      const node = record.target instanceof Element ? record.target : record.target.parentElement!;
      return node.closest<HTMLElement>('[data-id]')?.dataset['id'];
    });
    expect(new Set(rows)).to.deep.equal(new Set(['X3']));
    expect(option('X3').textContent).to.contain('1 h 51');
  });

  it('draws what is in sight of the table too, each row where it belongs', async () => {
    await shown();
    el.asTable = true;
    await drawn();
    const rows = (): HTMLElement[] => [
      ...el.renderRoot.querySelectorAll<HTMLElement>('tbody tr:not(.gap)'),
    ];
    const inner = el.renderRoot.querySelector('.scroll')!;
    for (const top of [0, 7_000, 1e9, 2_000]) {
      inner.scrollTop = top;
      await drawn();
      expect(rows().length).to.be.lessThan(50);
      const body = el.renderRoot.querySelector('tbody')!.getBoundingClientRect();
      expect(body.height).to.be.closeTo(500 * 30, 2);
      for (const row of rows()) {
        const place = Number(row.getAttribute('aria-rowindex')) - 2;
        expect(row.querySelector('th')!.textContent).to.match(new RegExp(`^X${place} `));
        expect(row.getBoundingClientRect().top - body.top).to.be.closeTo(place * 30, 2);
      }
      for (const figure of el.renderRoot.querySelectorAll<HTMLElement>('tbody td'))
        expect(figure.scrollWidth, figure.textContent).to.be.at.most(figure.clientWidth);
      const { top: from, bottom: to } = inner.getBoundingClientRect();
      expect(rows().some((row) => row.getBoundingClientRect().bottom >= to - 1)).to.equal(true);
      expect(rows().some((row) => row.getBoundingClientRect().top <= from + 120)).to.equal(true);
    }
    expect(el.renderRoot.querySelector('table')!.getAttribute('aria-rowcount')).to.equal('501');
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(rows()).to.have.length(500);
    globalThis.dispatchEvent(new Event('afterprint'));
  });

  it('puts every window on paper, and goes back to what was in sight', async () => {
    await shown();
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(el.renderRoot.querySelectorAll('table.sheet tbody tr')).to.have.length(500);
    expect(el.renderRoot.querySelector('.left-out')).to.equal(null);
    globalThis.dispatchEvent(new Event('afterprint'));
    await drawn();
    expect(options().length).to.be.lessThan(45);
  });

  it('says how many windows paper leaves out', async () => {
    await shown(PRINTED_WINDOWS + 7);
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(el.renderRoot.querySelectorAll('table.sheet tbody tr')).to.have.length(PRINTED_WINDOWS);
    expect(el.renderRoot.querySelector('.left-out')!.textContent).to.contain('7 more');
    globalThis.dispatchEvent(new Event('afterprint'));
  });

  it('scrolls and moves alike on a page that runs from right to left', async () => {
    document.documentElement.dir = 'rtl';
    await shown();
    await key('End');
    expect(inSight('X499')).to.equal(true);
    const { left, right } = scroller.getBoundingClientRect();
    const row = option('X499').getBoundingClientRect();
    expect(row.left).to.be.at.least(left - 1);
    expect(row.right).to.be.at.most(right + 1);
  });

  it('lets its rows be as high as their words up to 60 windows', async () => {
    await shown(60);
    expect(options()).to.have.length(60);
    expect(getComputedStyle(options()[5]!).position).to.equal('static');
    el.windows = manyWindows(61);
    el.ledgers = ledgersOf(el.windows);
    await drawn();
    expect(options().length).to.be.lessThan(45);
    el.windows = manyWindows(3);
    await drawn();
    expect(options()).to.have.length(3);
    expect(list().getBoundingClientRect().height).to.be.lessThan(200);
  });

  it('has no accessibility faults at the top and far down, light and dark', async () => {
    await shown();
    await inBothSchemes(async () => {
      for (const selected of ['', 'X300']) {
        el.selected = selected;
        await drawn();
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});
