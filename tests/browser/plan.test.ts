import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import '../../components/plan/define.js';
import { lanesOf } from '../../components/plan/lanes.js';
import type { PlacementSelectEvent } from '../../components/plan/placement-select-event.js';
import type { PossessionPlan } from '../../components/plan/plan.js';
import type { Allocation } from '../../src/planner/search/types.js';
import type { Figure } from '../../components/shared/figure-ask-event.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { activities, allocation, ledgers, press, windows, zone } from './support/samples.js';

const shown = (answer: Allocation | null = allocation): Promise<PossessionPlan> =>
  fixture(
    html`<possession-plan
      .allocation=${answer}
      .windows=${windows}
      .ledgers=${ledgers}
      .activities=${activities}
      .zone=${zone}
    ></possession-plan>`,
  );
const text = (el: Element | DocumentFragment): string => el.textContent.replaceAll(/\s+/g, ' ');

describe('possession-plan', () => {
  it('says in words how good the answer is and that it was checked', async () => {
    const el = await shown();
    expect(text(el.renderRoot.querySelector('.certificate')!)).to.contain('Best found, at most');
    expect(text(el.renderRoot.querySelector('.certificate')!)).to.contain(
      'checked by the independent verifier',
    );
  });

  it('warns loudly when the check did not pass', async () => {
    const el = await shown({
      ...allocation,
      certificate: {
        ...allocation.certificate,
        verified: false,
        faults: [{ code: 'link', activity: 'B', text: 'B begins before A has finished' }],
      },
    });
    const alert = text(el.renderRoot.querySelector('[role=alert]')!);
    expect(alert).to.contain('do not use this plan').and.to.contain('B begins before A');
    expect(text(el.renderRoot)).not.to.contain('Best found');
  });

  it('shows each key date with its float, met or missed, in words', async () => {
    const el = await shown();
    const rows = [...el.renderRoot.querySelectorAll('tbody tr')].map(text);
    expect(rows[0]).to.contain('18 d 18 h').and.to.contain('met');
    expect(rows[1]).to.contain('−7 d 15 h').and.to.contain('missed');
    expect(rows[2]).to.contain('not all placed');
  });

  it('lists what is left over with its reasons', async () => {
    const el = await shown();
    expect(text(el.renderRoot.querySelector('.unplaced')!)).to.contain(
      'Section OV1 is not booked.',
    );
  });

  it('draws work only in the windows that hold it', async () => {
    const el = await shown();
    expect(el.renderRoot.querySelectorAll('.window')).to.have.length(2);
    expect(el.renderRoot.querySelectorAll('.work')).to.have.length(2);
  });

  it('says that critical work has no float', async () => {
    const el = await shown();
    expect(el.renderRoot.querySelector('.work')!.getAttribute('aria-label')).to.contain('no float');
  });

  it('picks a placement by click, by Enter and by Space', async () => {
    const el = await shown();
    const picked: number[] = [];
    el.addEventListener('possession-placement-select', (event) => picked.push(event.index));
    const works = el.renderRoot.querySelectorAll<SVGGElement>('.work');
    works[1]!.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    press(works[0]!, 'Enter');
    press(works[1]!, ' ');
    expect(picked).to.deep.equal([1, 0, 1]);
  });

  it('lists outside work, which needs no window', async () => {
    const outside = { ...allocation.placements[0]!, window: null };
    const el = await shown({ ...allocation, placements: [outside] });
    setTimeout(() => el.renderRoot.querySelector<HTMLElement>('.window button')!.click());
    const event = await oneEvent<PlacementSelectEvent>(el, 'possession-placement-select');
    expect(event.index).to.equal(0);
  });

  it('puts work that overlaps in time on lines of its own, and work that only touches on one', () => {
    const piece = (from: number, to: number) => ({ activity: 'A', window: 'W', from, to });
    const lanes = lanesOf([piece(0, 10), piece(5, 15), piece(10, 20)], [0, 1, 2]);
    expect(lanes.map((lane) => lane.lane)).to.deep.equal([0, 1, 0]);
  });

  it('asks where the programme float of a package comes from', async () => {
    const el = await shown();
    const asked: Figure[] = [];
    el.addEventListener('possession-figure-ask', (event) => asked.push(event.figure));
    el.renderRoot.querySelector<HTMLElement>('tbody .figure button')!.click();
    expect(asked).to.deep.equal([{ of: 'key-date', package: 'Deck' }]);
  });

  it('draws windows as wide as a sheet of paper while it is printed, with the cautions', async () => {
    const el = await shown();
    const width = (): number =>
      Number(el.renderRoot.querySelector('.window svg')!.getAttribute('width'));
    const before = width();
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(width()).to.equal(762);
    const told = [...el.renderRoot.querySelectorAll('.times li')].map((element) => text(element));
    expect(told).to.have.length(el.renderRoot.querySelectorAll('.window .work').length);
    for (const item of told) expect(item).to.match(/\d\d:\d\d.*\d\d:\d\d/);
    expect(el.renderRoot.querySelector('.on-paper')!.textContent).to.contain('planning aid');
    globalThis.dispatchEvent(new Event('afterprint'));
    expect(width()).to.equal(before);
  });

  it('says other words when it is given them', async () => {
    const el = await shown();
    el.strings = { whichWindow: 'Was wo getan wird' };
    await el.updateComplete;
    expect(text(el.renderRoot)).to.contain('Was wo getan wird');
  });

  it('has no accessibility faults without and with a plan, light and dark', async () => {
    const el = await shown();
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    el.allocation = null;
    await el.updateComplete;
    expect(await axeFaults(el)).to.deep.equal([]);
  });
});
