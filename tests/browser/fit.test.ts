import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/fit/define.js';
import type { FitSelectEvent } from '../../components/fit/fit-select-event.js';
import type { PossessionFit } from '../../components/fit/fit.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { waitUntil } from './support/wait-until.js';
import { fits, packages, press, windows } from './support/samples.js';

const shown = (): Promise<PossessionFit> =>
  fixture(
    html`<possession-fit .packages=${packages} .windows=${windows} .fits=${fits}></possession-fit>`,
  );
const cell = (el: PossessionFit, row: number, column: number): HTMLElement =>
  el.renderRoot.querySelector<HTMLElement>(`td[data-row="${row}"][data-column="${column}"]`)!;
const text = (node: Element): string => node.textContent.replaceAll(/\s+/g, ' ').trim();

describe('possession-fit', () => {
  it('says in words what is spare, what is short and why it cannot be', async () => {
    const el = await shown();
    expect(text(cell(el, 0, 0))).to.equal('1 h 20 spare');
    expect(text(cell(el, 1, 0))).to.equal('30 min short');
    expect(text(cell(el, 2, 0))).to.equal('no isolation');
    expect(text(cell(el, 0, 3))).to.equal('withdrawn');
  });

  describe('where not all of a package goes', () => {
    const part = (over: object) => ({
      ...fits[1]!,
      fits: false,
      spareMinutes: -30,
      most: { pieces: 1, ofPieces: 3, units: 5, ofUnits: 8, proven: true, ...over },
    });
    const shownWith = (...some: ReturnType<typeof part>[]): Promise<PossessionFit> =>
      fixture(
        html`<possession-fit
          .packages=${some.map((item, at) => ({ ...packages[0]!, id: `P${at}` }))}
          .windows=${windows.slice(0, 1)}
          .fits=${some.map((item, at) => ({ ...item, package: `P${at}`, window: windows[0]!.id }))}
        ></possession-fit>`,
      );

    it('says how many units, or else how many pieces, or that nothing goes', async () => {
      const el = await shownWith(
        part({}),
        part({ units: 0 }),
        part({ units: 8 }),
        part({ pieces: 0, units: 0 }),
        part({ proven: false }),
      );
      expect([0, 1, 2, 3, 4].map((row) => text(cell(el, row, 0)))).to.deep.equal([
        '5 of 8 units 30 min short',
        '1 of 3 pieces 30 min short',
        '1 of 3 pieces 30 min short',
        'none 30 min short',
        'at least 5 of 8 units 30 min short',
      ]);
    });

    it('never says that it does not fit while that is still worked out', async () => {
      const open = { ...part({}), settled: false };
      const el = await shownWith(open);
      expect(text(cell(el, 0, 0))).to.equal('… working it out');
    });

    it('is accessible in light and dark, in both orders', async () => {
      const el = await shownWith(part({}), part({ pieces: 0, units: 0 }));
      await inBothSchemes(async () => {
        expect(await axeFaults(el)).to.deep.equal([]);
      });
      el.goesFirst = true;
      await el.updateComplete;
      await inBothSchemes(async () => {
        expect(await axeFaults(el)).to.deep.equal([]);
      });
    });
  });

  it('shows first what can go first, and picks what is seen', async () => {
    const el = await shown();
    const heads = (): string[] =>
      [...el.renderRoot.querySelectorAll('.map tbody th strong')].map((element) => text(element));
    const planned = heads();
    el.renderRoot.querySelectorAll<HTMLElement>('.choice button')[1]!.click();
    await el.updateComplete;
    const count = (id: string): number =>
      fits.filter((fit) => fit.package === id && fit.fits).length;
    const first = heads();
    expect([...first].sort()).to.deep.equal([...planned].sort());
    for (let at = 1; at < first.length; at += 1)
      expect(count(first[at - 1]!)).to.be.at.least(count(first[at]!));
    const picked = oneEvent(el, 'possession-fit-select');
    cell(el, 0, 0).click();
    const { package: pack, window } = (await picked) as unknown as FitSelectEvent;
    const verdict = fits.find((fit) => fit.package === pack && fit.window === window)!;
    expect(pack).to.equal(first[0]);
    expect(text(cell(el, 0, 0))).to.contain(verdict.fits ? 'spare' : '');
  });

  it('orders by how much goes, once that is worked out, where as many fit whole', async () => {
    // Nothing fits whole. By time short all three are alike; by what goes: six of eight units, a piece, nothing.
    const most = [
      { pieces: 0, units: 0 },
      { pieces: 0, units: 6 },
      { pieces: 1, units: 0 },
    ].map((item) => ({ ...item, ofPieces: 2, ofUnits: 8, proven: true }));
    const el = await fixture<PossessionFit>(
      html`<possession-fit
        goes-first
        .packages=${most.map((_, at) => ({ ...packages[0]!, id: `P${at}` }))}
        .windows=${windows.slice(0, 1)}
        .fits=${most.map((item, at) => ({ ...fits[1]!, fits: false, spareMinutes: -30, most: item, package: `P${at}`, window: windows[0]!.id }))}
      ></possession-fit>`,
    );
    const heads = (): string =>
      [...el.renderRoot.querySelectorAll('.map tbody th strong')]
        .map((element) => text(element))
        .join(' ');
    const said = (): string => text(el.renderRoot.querySelector('.bar [role=status]')!);
    expect(heads()).to.equal('P0 P1 P2');
    expect(said()).to.contain('is being worked out');
    await waitUntil(() => said().includes('then by how much'));
    expect(heads()).to.equal('P2 P1 P0');
    // Whoever asks for other verdicts meanwhile is shown those.
    el.fits = [];
    await el.updateComplete;
    el.fits = most.toReversed().map((item, at) => ({
      ...fits[1]!,
      fits: false,
      spareMinutes: -30,
      most: item,
      package: `P${at}`,
      window: windows[0]!.id,
    }));
    await el.updateComplete;
    await waitUntil(() => said().includes('then by how much'));
    expect(heads()).to.equal('P0 P1 P2');
  });

  it('gives each verdict a shape of its own', async () => {
    const el = await shown();
    const shapes = [0, 1, 2].map((row) => cell(el, row, 0).querySelector('svg')!.innerHTML);
    expect(new Set(shapes).size).to.equal(3);
  });

  it('says what was not worked out where there are too many pairs for verdicts', async () => {
    const el = await shown();
    el.packages = Array.from({ length: 50_001 }, () => packages[0]!);
    el.fits = [];
    await el.updateComplete;
    expect(text(el.renderRoot.querySelector('p')!)).to.equal(
      'Not worked out: 50,001 packages against 4 windows.',
    );
    expect(el.renderRoot.querySelector('table')).to.equal(null);
  });

  it('has one tab stop', async () => {
    const el = await shown();
    expect(el.renderRoot.querySelectorAll('td[tabindex="0"]')).to.have.length(1);
  });

  for (const [key, more, to] of [
    ['ArrowRight', {}, [1, 2]],
    ['ArrowLeft', {}, [1, 0]],
    ['ArrowDown', {}, [2, 1]],
    ['ArrowUp', {}, [0, 1]],
    ['Home', {}, [1, 0]],
    ['End', {}, [1, 3]],
    ['Home', { ctrlKey: true }, [0, 0]],
    ['End', { ctrlKey: true }, [2, 3]],
    ['PageDown', {}, [2, 1]],
    ['PageUp', {}, [0, 1]],
  ] as const)
    it(`${'ctrlKey' in more ? 'Ctrl+' : ''}${key} moves the focus from row 1, column 1 to ${to.join(', ')}`, async () => {
      const el = await shown();
      cell(el, 1, 1).click();
      await el.updateComplete;
      press(cell(el, 1, 1), key, more);
      await el.updateComplete;
      await el.updateComplete;
      expect(el.shadowRoot!.activeElement).to.equal(cell(el, to[0], to[1]));
    });

  it('selects with Enter and with Space what has the focus, and only then', async () => {
    const el = await shown();
    const picked: string[] = [];
    el.addEventListener('possession-fit-select', (event) =>
      picked.push(`${event.package} ${event.window}`),
    );
    press(cell(el, 0, 0), 'ArrowRight');
    await el.updateComplete;
    expect(picked).to.deep.equal([]);
    press(cell(el, 0, 1), 'Enter');
    press(cell(el, 0, 1), ' ');
    expect(picked).to.deep.equal(['Deck S2', 'Deck S2']);
  });

  it('tells what is clicked', async () => {
    const el = await shown();
    setTimeout(() => cell(el, 1, 2).click());
    const event = await oneEvent<FitSelectEvent>(el, 'possession-fit-select');
    expect([event.package, event.window]).to.deep.equal(['Track', 'B3']);
  });

  it('keeps its tab stop inside when the map shrinks', async () => {
    const el = await shown();
    cell(el, 2, 3).click();
    el.packages = packages.slice(0, 1);
    await el.updateComplete;
    expect(cell(el, 0, 3).tabIndex).to.equal(0);
  });

  it('leaves keys that are not its own alone', async () => {
    const el = await shown();
    expect(press(cell(el, 0, 0), 'Tab')).to.equal(true);
    expect(press(cell(el, 0, 0), 'ArrowDown', { altKey: true })).to.equal(true);
  });

  it('has no accessibility faults empty, filled and selected, light and dark', async () => {
    const el = await shown();
    await inBothSchemes(async () => {
      for (const selected of [null, { package: 'Track', window: 'N1' }]) {
        el.selected = selected;
        await el.updateComplete;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
    });
    el.packages = [];
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
  });
});
