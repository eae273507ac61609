import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/wanted/define.js';
import '../../components/where/define.js';
import type { PossessionWanted } from '../../components/wanted/wanted.js';
import type { PossessionWhere } from '../../components/where/where.js';
import type { PlacementSelectEvent } from '../../components/plan/placement-select-event.js';
import { activity, resource, window as aWindow } from '../helpers/plan-builders.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { text } from './support/look.js';

const MINUTE = 60_000;
const placement = (name: string, window: string, from: number, to: number, units?: number) => ({
  activity: name,
  window,
  from: from * MINUTE,
  to: to * MINUTE,
  ...(units !== undefined && { units }),
});
const windows = [
  aWindow('W1', 0, 360, { extent: [1000, 5000] }),
  aWindow('W2', 1440, 360),
  aWindow('W3', 2880, 360),
];
const activities = [
  {
    ...activity('A1', 120, { resources: { gang: 2 } }),
    extent: { from: 1000, to: 2000 },
    lines: ['Up'],
  },
  {
    ...activity('A2', 120, { resources: { gang: 1 } }),
    extent: { from: 1500, to: 3000 },
    lines: ['Up'],
  },
  {
    ...activity('B1', 0, { units: [10, 20, 0, 0] }),
    extent: { from: 2000, to: 4000 },
    lines: ['Down'],
  },
  activity('C1', 60),
];
const allocation = {
  placements: [
    placement('A1', 'W1', 30, 150),
    placement('A2', 'W1', 60, 180),
    placement('B1', 'W1', 30, 110, 4),
    placement('B1', 'W2', 1470, 1590, 6),
  ],
};
const shown = (more: object = {}): Promise<PossessionWhere> =>
  fixture(
    html`<possession-where
      .allocation=${{ ...allocation, ...more }}
      .windows=${windows}
      .activities=${activities}
    ></possession-where>`,
  );
const all = (el: Element, css: string): SVGGraphicsElement[] => [
  ...el.shadowRoot!.querySelectorAll<SVGGraphicsElement>(css),
];
const numbers = (el: Element, ...names: string[]): number[] =>
  names.map((name) => Number(el.getAttribute(name)));

describe('possession-where', () => {
  it('draws a field for each window that holds work, in order of time', async () => {
    const el = await shown();
    expect(all(el, 'h3').map((element) => text(element).slice(0, 2))).to.deep.equal(['W1', 'W2']);
  });

  it('draws a piece over its place and its time, to scale', async () => {
    const el = await shown();
    // The wider first, so that it hides nothing.
    const [a2, a1] = all(el, '.piece.whole .box');
    const [x1, y1, w1, h1] = numbers(a1!, 'x', 'y', 'width', 'height');
    const [x2, y2, w2, h2] = numbers(a2!, 'x', 'y', 'width', 'height');
    // 1,000 m and 1,500 m wide, 500 m apart; both two hours, half an hour apart.
    expect(w2! / w1!).to.be.closeTo(1.5, 0.02);
    expect((x2! - x1!) / w1!).to.be.closeTo(0.5, 0.02);
    expect(h2).to.equal(h1);
    expect((y2! - y1!) / h1!).to.be.closeTo(0.25, 0.02);
  });

  it('draws repeated work onward from where the visit before left it', async () => {
    const el = await shown();
    const [first, second] = all(el, '.along');
    const box = all(el, '.piece.units .box')[0]!;
    const [x, wide] = numbers(box, 'x', 'width');
    expect(numbers(first!, 'x1', 'x2').map((at) => (at - x!) / wide!)).to.deep.equal([0, 0.4]);
    const [from, to] = numbers(second!, 'x1', 'x2').map((at) => (at - x!) / wide!);
    expect(from).to.be.closeTo(0.4, 0.01);
    expect(to).to.be.closeTo(1, 0.01);
  });

  it('marks and names the pieces that stand at one place at one time', async () => {
    const el = await shown();
    expect(all(el, '.meets')).to.have.length(1);
    expect(text(el.shadowRoot!.querySelector('.summary'))).to.equal(
      '1 pair stands at one place at one time. 1 where nobody said that both may share it.',
    );
    const row = text(el.shadowRoot!.querySelector('details tbody tr'));
    expect(row).to.contain('A1');
    expect(row).to.contain('A2');
    expect(row).to.contain('1+500 to 2+000');
  });

  it('says that none do where none do', async () => {
    const el = await shown({ placements: allocation.placements.slice(1) });
    expect(text(el.shadowRoot!.querySelector('.summary'))).to.contain('no two pieces');
  });

  it('shows one window large, or the work on one line', async () => {
    const el = await shown();
    el.window = 'W2';
    await el.updateComplete;
    expect(all(el, 'svg.field')).to.have.length(1);
    const [high] = numbers(all(el, '.closed')[0]!, 'height');
    expect(high).to.be.greaterThan(400);
    el.window = '';
    el.line = 'Down';
    await el.updateComplete;
    expect(all(el, '.piece')).to.have.length(2);
  });

  it('tells which piece is picked, from picture and table', async () => {
    const el = await shown();
    const picked = oneEvent(el, 'possession-placement-select');
    all(el, '.piece')[1]!.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    expect(((await picked) as unknown as PlacementSelectEvent).index).to.equal(1);
    const again = oneEvent(el, 'possession-placement-select');
    el.shadowRoot!.querySelector<HTMLElement>('details:last-of-type tbody button')!.click();
    expect(((await again) as unknown as PlacementSelectEvent).index).to.equal(0);
  });

  it('is accessible in light and dark, with tables open, without a plan', async () => {
    const el = await shown();
    for (const element of el.shadowRoot!.querySelectorAll('details')) element.open = true;
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    el.allocation = null;
    await el.updateComplete;
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});

describe('possession-wanted', () => {
  const wanted = (capacity: number): Promise<PossessionWanted> =>
    fixture(
      html`<possession-wanted
        .allocation=${allocation}
        .activities=${activities}
        .resources=${[resource('gang', [{ capacity }])]}
        zone="Etc/UTC"
      ></possession-wanted>`,
    );

  it('shows a week in which more is wanted than is held, in picture, words and table', async () => {
    const el = await wanted(2);
    expect(text(el.shadowRoot!.querySelector('.summary'))).to.equal(
      'In 1 week more is wanted than is held.',
    );
    expect(all(el, '.bar.short')).to.have.length(1);
    const cells = [...el.shadowRoot!.querySelectorAll('tbody tr > *')].map((element) =>
      text(element),
    );
    expect(cells).to.deep.equal(['gang', 'Mon 29 Dec', '3', '2', 'Thu 1 Jan 1970, 01:00']);
  });

  it('says so where there is enough', async () => {
    const el = await wanted(3);
    expect(text(el.shadowRoot!.querySelector('.summary'))).to.contain('In no week');
    expect(all(el, '.bar.short')).to.have.length(0);
  });

  it('is accessible in light and dark', async () => {
    const el = await wanted(2);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});
