import { expect } from '@open-wc/testing';
import '../../components/fit/define.js';
import type { PossessionFit } from '../../components/fit/fit.js';
import { BAND, PRINTED_CELLS } from '../../components/fit/printed.js';
import { durationText } from '../../src/calendar/index.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import {
  changesDuring,
  drawn,
  manyFits,
  manyPackages,
  manyWindows,
  spareAt,
} from './support/large.js';
import { press } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

const ROWS = 250;
const COLUMNS = 500;
let el: PossessionFit;

async function shown(rows = ROWS, columns = COLUMNS): Promise<void> {
  el = document.createElement('possession-fit');
  el.style.setProperty('height', '500px');
  el.packages = manyPackages(rows);
  el.windows = manyWindows(columns);
  el.fits = manyFits(el.packages, el.windows);
  document.body.append(el);
  await el.updateComplete;
  await drawn();
}

const map = (): HTMLElement => el.renderRoot.querySelector<HTMLElement>('.map')!;
const table = (): HTMLElement => el.renderRoot.querySelector<HTMLElement>('[role=grid]')!;
const cells = (): HTMLElement[] => [...el.renderRoot.querySelectorAll<HTMLElement>('.map td')];
const cell = (row: number, column: number): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(`td[data-row="${row}"][data-column="${column}"]`)!;
/** Whether the map rests: what is drawn stands row after row and column after column, as it is put when there is time. */
const isInReadingOrder = (): boolean => {
  const places = cells().map(
    ({ dataset }) => COLUMNS * Number(dataset['row']) + Number(dataset['column']),
  );
  return places.every((place, at) => at === 0 || places[at - 1]! < place);
};
const text = (node: Element): string => node.textContent.replaceAll(/\s+/g, ' ').trim();
const active = (): readonly number[] => {
  const data = (el.shadowRoot!.activeElement as HTMLElement | null)?.dataset;
  return [Number(data?.['row']), Number(data?.['column'])];
};

/** Whether a cell shows wholly beside the names, below the headings and within what scrolls. */
function inSight(row: number, column: number): boolean {
  const box = cell(row, column).getBoundingClientRect();
  const outer = map().getBoundingClientRect();
  const corner = el.renderRoot.querySelector('.corner')!.getBoundingClientRect();
  const rtl = getComputedStyle(el).direction === 'rtl';
  return (
    box.top >= corner.bottom - 1 &&
    box.bottom <= outer.bottom + 1 &&
    (rtl ? box.right <= corner.left + 1 : box.left >= corner.right - 1) &&
    (rtl ? box.left >= outer.left - 1 : box.right <= outer.right + 1)
  );
}

async function key(name: string, more: KeyboardEventInit = {}): Promise<void> {
  press(el.shadowRoot!.activeElement ?? table(), name, more);
  await el.updateComplete;
  await drawn();
}

/** The cells at the middle of the map, as a reader sees them. */
function atMiddle(): HTMLElement {
  const box = map().getBoundingClientRect();
  return el
    .shadowRoot!.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2)!
    .closest<HTMLElement>('td')!;
}

describe('possession-fit with many pairs', () => {
  afterEach(() => {
    el.remove();
    document.documentElement.removeAttribute('dir');
  });

  it('draws few of 125,000 cells, and says how many there are and which each is', async () => {
    await shown();
    expect(cells().length).to.be.greaterThan(40).and.lessThan(600);
    expect(table().getAttribute('aria-rowcount')).to.equal('251');
    expect(table().getAttribute('aria-colcount')).to.equal('501');
    map().scrollTo(9_000, 4_000);
    await drawn();
    for (const element of cells()) {
      const row = element.closest('tr')!;
      expect(row.getAttribute('aria-rowindex')).to.equal(
        String(Number(element.dataset['row']) + 2),
      );
      expect(element.getAttribute('aria-colindex')).to.equal(
        String(Number(element.dataset['column']) + 2),
      );
    }
    expect(cells().length).to.be.lessThan(600);
  });

  it('shows the verdict of each pair beside its name and under its window, wherever it scrolls', async () => {
    await shown();
    for (const [left, top] of [
      [300, 700],
      [20_000, 5_000],
      [1e9, 1e9],
      [0, 3_000],
      [7_000, 0],
    ] as const) {
      map().scrollTo(left, top);
      await drawn();
      const middle = atMiddle();
      const [row, column] = [Number(middle.dataset['row']), Number(middle.dataset['column'])];
      expect(text(middle)).to.equal(`${durationText(spareAt(row, column))} spare`);
      expect(text(middle.closest('tr')!.querySelector('th')!)).to.match(new RegExp(`^P${row} `));
      const head = [...el.renderRoot.querySelectorAll('thead th:not(.corner)')].find(
        (element) =>
          Math.abs(element.getBoundingClientRect().left - middle.getBoundingClientRect().left) < 1,
      )!;
      expect(text(head)).to.match(new RegExp(`^X${column}[A-Z]`));
    }
  });

  it('puts rows, cells and headings into reading order once a scroll rests', async () => {
    await shown();
    for (let step = 1; step < 12; step += 1) {
      map().scrollTo(step * 150, 2_000 - step * 110);
      await drawn();
    }
    const rising = (elements: Iterable<Element>, name: string): boolean => {
      const numbers = [...elements].map((element) => Number(element.getAttribute(name)));
      return numbers.every((number, at) => at === 0 || number > numbers[at - 1]!);
    };
    await waitUntil(() => {
      const rows = [...el.renderRoot.querySelectorAll('.map tbody tr')];
      const withHead = [...rows, el.renderRoot.querySelector('.map thead tr')!];
      return (
        rows.length > 0 &&
        rising(rows, 'aria-rowindex') &&
        withHead.every((row) => rising(row.children, 'aria-colindex'))
      );
    }, 'reading order');
  });

  for (const [name, more, from, to] of [
    ['End', { ctrlKey: true }, [0, 0], [249, 499]],
    ['Home', { ctrlKey: true }, [200, 400], [0, 0]],
    ['End', {}, [120, 3], [120, 499]],
    ['Home', {}, [120, 480], [120, 0]],
    ['ArrowRight', {}, [120, 250], [120, 251]],
    ['ArrowLeft', {}, [120, 250], [120, 249]],
    ['ArrowDown', {}, [120, 250], [121, 250]],
    ['ArrowUp', {}, [120, 250], [119, 250]],
  ] as const)
    it(`${'ctrlKey' in more ? 'Ctrl+' : ''}${name} takes the focus from ${from.join(', ')} to ${to.join(', ')} and shows it`, async () => {
      await shown();
      el.selected = { package: `P${from[0]}`, window: `X${from[1]}` };
      await drawn();
      await key(name, more);
      expect(active()).to.deep.equal(to);
      expect(inSight(to[0], to[1])).to.equal(true);
      expect(el.renderRoot.querySelectorAll('td[tabindex="0"]')).to.have.length(1);
    });

  it('goes by as many rows as are in sight with the page keys', async () => {
    await shown();
    cell(0, 0).click();
    await drawn();
    await key('PageDown');
    const row = active()[0]!;
    expect(row).to.be.greaterThan(4).and.lessThan(12);
    await key('PageDown');
    expect(active()[0]).to.equal(2 * row);
    await key('PageUp');
    expect(active()[0]).to.equal(row);
  });

  it('keeps the focus where it is while other cells scroll by', async () => {
    await shown();
    cell(2, 1).click();
    await drawn();
    for (const [left, top] of [
      [0, 6_000],
      [20_000, 6_000],
      [300, 200],
      [0, 0],
    ] as const) {
      map().scrollTo(left, top);
      await drawn();
      await waitUntil(isInReadingOrder, 'the reading order');
      expect(active()).to.deep.equal([2, 1]);
    }
  });

  it('keeps the focus in the map when the row that has it is gone', async () => {
    await shown();
    el.selected = { package: 'P249', window: 'X10' };
    await drawn();
    cell(249, 10).click();
    await drawn();
    el.packages = el.packages.slice(0, 9);
    await drawn();
    expect(active()).to.deep.equal([8, 10]);
  });

  it('shows within the map what is selected from outside, and leaves the page where it is', async () => {
    await shown();
    const above = document.createElement('div');
    above.style.setProperty('height', '3000px');
    document.body.prepend(above);
    el.selected = { package: 'P200', window: 'X333' };
    await drawn();
    expect(inSight(200, 333)).to.equal(true);
    expect(cell(200, 333).getAttribute('aria-selected')).to.equal('true');
    expect(scrollY).to.equal(0);
    above.remove();
  });

  it('draws no cell again whose verdict is the same object', async () => {
    await shown();
    const body = el.renderRoot.querySelector('.map tbody')!;
    const same = await changesDuring(body, async () => {
      el.fits = [...el.fits];
      el.packages = [...el.packages];
      await drawn();
    });
    expect(same).to.have.length(0);
    const at = 2 * COLUMNS + 3;
    const records = await changesDuring(body, async () => {
      el.fits = el.fits.map((fit, place) => (place === at ? { ...fit, spareMinutes: 5 } : fit));
      await drawn();
    });
    const touched = records.map((record) =>
      (record.target as CharacterData).parentElement!.closest('td'),
    );
    expect(new Set(touched)).to.deep.equal(new Set([cell(2, 3)]));
    expect(text(cell(2, 3))).to.equal('5 min spare');
  });

  it('stays no higher than the screen, so that its headings stay in sight', async () => {
    await shown();
    el.style.removeProperty('height');
    await drawn();
    expect(el.getBoundingClientRect().height).to.be.at.most(innerHeight);
    expect(cells().length).to.be.lessThan(800);
  });

  it('scrolls from right to left on a page that runs so', async () => {
    document.documentElement.dir = 'rtl';
    await shown();
    map().scrollTo(-20_000, 3_000);
    await drawn();
    const middle = atMiddle();
    const [row, column] = [Number(middle.dataset['row']), Number(middle.dataset['column'])];
    expect(column).to.be.greaterThan(120);
    expect(text(middle)).to.equal(`${durationText(spareAt(row, column))} spare`);
    middle.click();
    await drawn();
    await key('ArrowLeft');
    expect(active()).to.deep.equal([row, column + 1]);
    await key('End', { ctrlKey: true });
    expect(inSight(ROWS - 1, COLUMNS - 1)).to.equal(true);
  });

  it('puts all of a small map on paper, so many windows side by side', async () => {
    await shown(20, 30);
    globalThis.dispatchEvent(new Event('beforeprint'));
    const printed = el.renderRoot.querySelector('.printed')!;
    expect(printed.querySelectorAll('td')).to.have.length(600);
    expect(printed.querySelectorAll('table')).to.have.length(Math.ceil(30 / BAND));
    expect(printed.querySelectorAll('thead')).to.have.length(Math.ceil(30 / BAND));
    expect(printed.querySelector('.left-out')).to.equal(null);
    globalThis.dispatchEvent(new Event('afterprint'));
    expect(el.renderRoot.querySelector('.printed')).to.equal(null);
  });

  it('says which part of a large map is on paper and how much is not', async () => {
    await shown();
    globalThis.dispatchEvent(new Event('beforeprint'));
    const printed = el.renderRoot.querySelector('.printed')!;
    const windows = Math.floor(PRINTED_CELLS / ROWS / BAND) * BAND;
    expect(printed.querySelectorAll('td')).to.have.length(windows * ROWS);
    expect(text(printed.querySelector('.left-out')!)).to.contain(
      `250 packages against ${windows} windows, from X0 to X${windows - 1}. ${COLUMNS - windows} windows are left out`,
    );
    globalThis.dispatchEvent(new Event('afterprint'));
  });

  it('has no accessibility faults at the start and far from it, light and dark', async () => {
    await shown();
    await inBothSchemes(async () => {
      for (const selected of [null, { package: 'P200', window: 'X333' }]) {
        el.selected = selected;
        await drawn();
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
  });
});

describe('possession-fit with verdicts that are not worked out', () => {
  let asked: Map<string, number>;

  /** A "no" that counts what is read of it, as those of the engine: its minutes and reasons are worked out on reading. */
  function openNo(pack: string, window: string): FitVerdict {
    const name = `${pack} ${window}`;
    let settled = false;
    const work = (): void => {
      settled = true;
      asked.set(name, (asked.get(name) ?? 0) + 1);
    };
    return {
      package: pack,
      window,
      fits: false,
      get settled() {
        return settled;
      },
      get firstCode() {
        return settled ? 'too-short' : undefined;
      },
      get spareMinutes() {
        if (!settled) work();
        return -30;
      },
      get reasons() {
        if (!settled) work();
        return [{ code: 'too-short', text: `Short by 30 min in ${window}.` }];
      },
      get placements() {
        return [];
      },
    };
  }

  async function open(): Promise<void> {
    asked = new Map();
    await shown(100, 200);
    el.fits = el.packages.flatMap((pack) => el.windows.map((window) => openNo(pack.id, window.id)));
  }

  afterEach(() => el.remove());

  it('works out what is in sight once there is time, and nothing out of sight', async () => {
    await open();
    await el.updateComplete;
    await waitUntil(
      () => cells().every((element) => text(element) === '30 min short'),
      'the words',
    );
    const names = new Set(
      cells().map((element) => `P${element.dataset['row']} X${element.dataset['column']}`),
    );
    for (const [name, times] of asked) {
      expect(names.has(name), name).to.equal(true);
      expect(times).to.equal(1);
    }
    expect(asked.size).to.equal(cells().length);
  });

  it('says of the others only that they do not fit, until they have stood in sight for a while', async () => {
    await open();
    await el.updateComplete;
    map().scrollTo(12_000, 3_000);
    await new Promise(requestAnimationFrame);
    const middle = atMiddle();
    const name = `P${middle.dataset['row']} X${middle.dataset['column']}`;
    expect(asked.has(name)).to.equal(false);
    expect(text(middle)).to.equal('… working it out');
    await waitUntil(() => text(middle) === '30 min short', 'the words');
  });

  it('gives the reasons in whole sentences to who points at a cell or comes to it', async () => {
    await open();
    await el.updateComplete;
    expect(cell(3, 2).title).to.equal('');
    cell(3, 2).dispatchEvent(new PointerEvent('pointerover', { bubbles: true }));
    expect(cell(3, 2).title).to.equal('Short by 30 min in X2.');
    expect(text(cell(3, 2))).to.equal('30 min short');
    cell(4, 1).focus();
    expect(cell(4, 1).title).to.equal('Short by 30 min in X1.');
  });
});
