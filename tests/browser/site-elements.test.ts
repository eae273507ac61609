import { expect, fixture, html, nextFrame, oneEvent } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../components/lifting/define.js';
import '../../components/noise/define.js';
import '../../components/people/define.js';
import type { LimitsChangeEvent } from '../../components/people/limits-change-event.js';
import type { PossessionLifting } from '../../components/lifting/lifting.js';
import type { PossessionNoise } from '../../components/noise/noise.js';
import type { PossessionPeople } from '../../components/people/people.js';
import type { RosterMendEvent } from '../../components/people/roster-mend-event.js';
import { liftingOf } from '../../src/engine/site/lifting.js';
import { noiseOf } from '../../src/engine/site/noise.js';
import { peopleOf } from '../../src/engine/site/people.js';
import { sitePlan } from '../../src/engine/site/site-plan.js';
import { emptyPlan, type PlanDocument } from '../../src/model/index.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { at } from './support/samples.js';
import { waitUntil } from './support/wait-until.js';

const table = (file: string, lines: readonly string[]) => {
  const [columns, ...rows] = lines.map((line) => line.split(','));
  return { file, columns: columns!, rows };
};
const two = (n: number): string => String(n).padStart(2, '0');
const blank = emptyPlan('Test', 'Europe/London');
const plan: PlanDocument = {
  ...blank,
  tables: {
    ...blank.tables,
    windows: table('windows.csv', [
      'window,start,end',
      'W1,2027-03-27 23:00,2027-03-28 14:00',
      'W2,2027-04-03 23:00,06:00',
    ]),
    work: table('work.csv', [
      'activity,title,after,minutes,resources,loud',
      'B10,Break out the old deck,,120,excavator:1,yes',
      'C10,Cast the stitches,,120,gang:1,',
      'L10,Lift the beams,C10 + 24 h,120,crane:1,',
    ]),
    roster: table('roster.csv', [
      'turn,crew,start,end,travel minutes,window',
      ...Array.from({ length: 5 }, (_, i) => `A${i + 1},Gang A,2027-03-${22 + i} 07:00,16:00,30,`),
      'A6,Gang A,2027-03-27 02:00,11:30,30,',
      'B1,Gang B,2027-03-27 22:00,2027-03-28 07:00,30,W1',
      ...Array.from(
        { length: 9 },
        (_, i) => `C${i + 1},Gang C,2027-04-${two(1 + i)} 08:00,15:00,0,`,
      ),
    ]),
    plant: table('plant.csv', ['plant,level at 10 m,resource', 'Breaker 67 kW,88,excavator']),
    forecast: table('forecast.csv', [
      'time,wind,gust',
      ...[3, 4, 6, 9, 10, 7, 4, 3].map(
        (wind, i) => `2027-03-27 ${two(3 * i)}:00,${wind},${wind * 1.6}`,
      ),
      ...[3, 2, 4, 5].map((wind, i) => `2027-03-28 ${two(3 * i)}:00,${wind},${wind * 1.6}`),
    ]),
    temperatures: table('temperatures.csv', [
      'time,temperature',
      ...Array.from(
        { length: 8 },
        (_, i) => `2027-03-${27 + Math.floor(i / 2)} ${i % 2 ? '12' : '00'}:00,${i % 2 ? 12 : 5}`,
      ),
    ]),
  },
};
const read = sitePlan(plan);
const people = peopleOf(read, {});
const noise = noiseOf(read, { now: at('2027-03-01 09:00') });
const lifting = liftingOf(read, { pours: [{ activity: 'C10', at: at('2027-03-27 06:00') }] });

const shownPeople = (answer = people): Promise<PossessionPeople> =>
  fixture(
    html`<possession-people .answer=${answer} .windows=${read.plan.windows}></possession-people>`,
  );
const shownNoise = (): Promise<PossessionNoise> =>
  fixture(html`<possession-noise .answer=${noise}></possession-noise>`);
const shownLifting = (): Promise<PossessionLifting> =>
  fixture(html`<possession-lifting .answer=${lifting}></possession-lifting>`);
const texts = (el: PossessionPeople | PossessionNoise | PossessionLifting, css: string): string[] =>
  [...el.renderRoot.querySelectorAll(css)].map((element) =>
    element.textContent.replace(/\s+/g, ' ').trim(),
  );
async function typed(
  el: PossessionPeople | PossessionNoise | PossessionLifting,
  label: string,
  value: string,
): Promise<LimitsChangeEvent> {
  const field = [...el.renderRoot.querySelectorAll('label')].find((element) =>
    element.textContent.includes(label),
  )!;
  const input = field.querySelector('input')!;
  setTimeout(() => {
    input.value = value;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  });
  return oneEvent<LimitsChangeEvent>(el, 'possession-limits-change');
}

describe('possession-people', () => {
  it('draws every week of the roster on paper', async () => {
    const el = await shownPeople();
    const turnsDrawn = (): number => el.renderRoot.querySelectorAll('.turn').length;
    window.dispatchEvent(new Event('beforeprint'));
    // A turn over the end of a row stands in two.
    expect(turnsDrawn()).to.be.at.least(people.turns.length);
    const [last] = people.turns.map((turn) => turn.end).sort((a, b) => b - a);
    const [first] = people.turns.map((turn) => turn.start).sort((a, b) => a - b);
    const rows = el.renderRoot.querySelectorAll('.picture svg').length;
    expect(rows * 28 * 86_400_000).to.be.at.least(last! - first!);
    expect(rows).to.be.at.least(1);
    window.dispatchEvent(new Event('afterprint'));
  });

  it('offers each change, and all together, to who takes them', async () => {
    const el = await shownPeople();
    const made = (): HTMLButtonElement[] =>
      [...el.renderRoot.querySelectorAll('button')].filter((element) =>
        element.textContent.includes('Make'),
      );
    expect(made()).to.have.length(0);
    el.mendable = true;
    await el.updateComplete;
    const accepted: RosterMendEvent[] = [];
    el.addEventListener('possession-roster-mend', (event) => accepted.push(event));
    made()[0]!.click();
    made().at(-1)!.click();
    expect(accepted[0]!.changes).to.deep.equal([people.breaches[0]!.mends[0]]);
    expect(accepted[0]!.texts).to.deep.equal(['A6: move 3 h 00 later']);
    expect(accepted[1]!.changes).to.deep.equal(people.together.changes);
    expect(accepted[1]!.texts).to.have.length(people.together.changes.length);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
    // Told in the words that the reader saw.
    el.lang = 'de';
    await waitUntil(() => texts(el, '.breaches tbody tr')[0]?.includes('nach hinten verlegen'));
    el.renderRoot.querySelector<HTMLButtonElement>('.breaches tbody button')!.click();
    expect(accepted[2]!.texts).to.deep.equal(['A6: 3 h 00 nach hinten verlegen']);
  });

  it('names each broken limit with its source, how sure it is, and the smallest change', async () => {
    const el = await shownPeople();
    expect(people.breaches.map((breach) => [breach.assignment, breach.name])).to.deep.equal([
      ['A6', 'Rest between turns'],
    ]);
    const [row] = texts(el, '.breaches tbody tr');
    expect(row).to.contain('Gang A, A6').and.to.contain('read second-hand');
    // 16:00 to 02:00 is 10 h, 9 h less an hour of travel: 3 h too little.
    expect(row).to.contain('9 h, not 12 h').and.to.contain('A6: move 3 h 00 later');
  });

  it('draws a bar for every turn, and a mark and a strike where one breaks a limit', async () => {
    const el = await shownPeople();
    expect(el.renderRoot.querySelectorAll('.turn').length).to.equal(people.turns.length);
    expect(el.renderRoot.querySelectorAll('.turn .mark').length).to.equal(1);
    expect(el.renderRoot.querySelectorAll('.turn .slash').length).to.equal(1);
  });

  it('shows fewer weeks by keyboard, and goes on to the next', async () => {
    const el = await shownPeople();
    el.renderRoot.querySelector<HTMLElement>('[data-weeks="1"]')!.focus();
    await sendKeys({ press: 'Enter' });
    await el.updateComplete;
    expect(el.weeks).to.equal(1);
    const first = el.renderRoot.querySelectorAll('.turn').length;
    expect(first).to.equal(7);
    [...el.renderRoot.querySelectorAll<HTMLElement>('.choice button')].at(-1)!.click();
    await el.updateComplete;
    expect(el.renderRoot.querySelectorAll('.turn').length).to.not.equal(first);
  });

  it('tells of turns on which clocks change, and of the time nobody mans', async () => {
    const el = await shownPeople();
    // 22:00 to 07:00 on the spring night is eight real hours.
    expect(texts(el, 'section li').join()).to.contain('B1: 8 h 00 of work, 9 h 00 by the clock');
    // W1 runs 23:00 to 14:00, fourteen real hours; B1 ends at 07:00.
    expect(texts(el, 'section .scroll tbody tr')[0]).to.contain('7 h 00');
  });

  it('hands another set of limits to the page when one is chosen', async () => {
    const el = await shownPeople();
    const other = { ...people.limits, name: 'Ours' };
    el.sets = [people.limits, other];
    await el.updateComplete;
    const select = el.renderRoot.querySelector<HTMLSelectElement>('.sets select')!;
    expect([...select.options].map((option) => option.textContent)).to.deep.equal([
      people.limits.name,
      'Ours',
    ]);
    setTimeout(() => {
      select.value = '1';
      select.dispatchEvent(new Event('change', { bubbles: true }));
    });
    const event = await oneEvent<LimitsChangeEvent>(el, 'possession-limits-change');
    expect(event.value).to.equal(other);
  });

  it('hands a changed limit to the page as a whole set', async () => {
    const el = await shownPeople();
    const event = await typed(el, 'Rest between turns', '9');
    expect(event.part).to.equal('hours');
    const set = event.value as typeof people.limits;
    expect(set.limits.map((limit) => ('minutes' in limit ? limit.minutes : 0))).to.deep.equal([
      720, 540, 4320, 0,
    ]);
  });
});

describe('pictures of noise and wind', () => {
  it('are as wide as the sheet on paper, and name the day that is drawn', async () => {
    const [loud, lifts] = [await shownNoise(), await shownLifting()];
    for (const el of [loud, lifts]) {
      el.style.display = 'block';
      el.style.width = '1400px';
    }
    const widths = (): number[] =>
      [loud, lifts].flatMap((el) =>
        [...el.renderRoot.querySelectorAll('.picture svg')].map((element) =>
          Number(element.getAttribute('width')),
        ),
      );
    await waitUntil(() => Math.max(...widths()) > 1000, 'the width of the screen');
    window.dispatchEvent(new Event('beforeprint'));
    // 190 mm between margins of 10 mm: 718 pixels of 1/96 inch.
    expect(Math.max(...widths())).to.be.at.most(718);
    expect(loud.renderRoot.querySelector('.on-paper')!.textContent).to.equal('Mon');
    window.dispatchEvent(new Event('afterprint'));
    expect(Math.max(...widths())).to.be.greaterThan(1000);
  });
});

describe('possession-noise', () => {
  it('says for each period whether the work may be loud, by how much, and where the limit comes from', async () => {
    const el = await shownNoise();
    // 88 dB at 10 m is 77.0 at the front of a building 50 m off: 20 log10(5) = 13.98, and 3 for the front.
    expect(texts(el, '.levels tbody td').map((text) => text.split(' dB')[0])).to.deep.equal([
      'Day: 77.0',
      'Evening: 77.0',
      'Night: 77.0',
    ]);
    expect(texts(el, '.levels tbody td')[2]).to.contain('32.0 over 45.0');
    expect(texts(el, 'section li').join()).to.contain('construction hours (read)');
  });

  it('draws the hours of the chosen day, told apart by word and strike', async () => {
    const el = await shownNoise();
    el.renderRoot.querySelector<HTMLElement>('[data-day=sun]')!.click();
    await el.updateComplete;
    expect(el.day).to.equal('sun');
    expect(el.renderRoot.querySelectorAll('.slash').length).to.equal(4);
  });

  it('hands screening, a limit and the use as closed time to the page', async () => {
    const el = await shownNoise();
    const screened = await typed(el, 'Screening', '10');
    expect((screened.value as typeof noise.settings).dwellings[0]!.screeningDb).to.equal(10);
    const box = el.renderRoot.querySelector<HTMLInputElement>('input[type=checkbox]')!;
    setTimeout(() => box.click());
    const used = await oneEvent<LimitsChangeEvent>(el, 'possession-limits-change');
    expect(used.part).to.equal('noise');
    expect((used.value as typeof noise.settings).asClosedTime).to.equal(true);
  });

  it('keeps a value outside its bounds to itself', async () => {
    const el = await shownNoise();
    let heard = 0;
    el.addEventListener('possession-limits-change', () => (heard += 1));
    const input = el.renderRoot.querySelector<HTMLInputElement>('.fields input')!;
    input.value = '-4';
    input.dispatchEvent(new Event('change', { bubbles: true }));
    expect(heard).to.equal(0);
  });

  it('tells by when to apply for prior consent', async () => {
    const el = await shownNoise();
    const rows = texts(el, 'section:last-of-type tbody tr');
    // 28 days before 27 March is 27 February, past on 1 March; before 3 April it is 6 March.
    expect(rows[0]).to.contain('Sat 27 Feb').and.to.contain('too late');
    expect(rows[1]).to.contain('Sat 6 Mar').and.to.contain('in time');
  });
});

describe('possession-lifting', () => {
  it('draws the stops and says why, and what each window loses', async () => {
    const el = await shownLifting();
    expect(el.renderRoot.querySelectorAll('[part=wind] .shut').length).to.equal(
      lifting.wind.stops.length,
    );
    expect(lifting.wind.stops.length).to.be.greaterThan(0);
    expect(texts(el, '.stops li')[0]).to.contain('m/s at 30 m');
    expect(texts(el, '.lost tbody tr').length).to.equal(1);
  });

  it('says when concrete is ready and how much too little the plan waits', async () => {
    const el = await shownLifting();
    const [row] = texts(el, '.curing tbody tr');
    expect(row).to.contain('C10').and.to.contain('L10 waits').and.to.contain('too little');
    expect(el.renderRoot.querySelectorAll('[part=curing] .ready').length).to.equal(1);
  });

  it('hands a changed limit and a changed maturity to the page', async () => {
    const el = await shownLifting();
    expect((await typed(el, 'Highest gust', '13.4')).part).to.equal('lifting');
    const event = await typed(el, 'Maturity asked for', '800');
    expect(event.part).to.equal('concrete');
    expect((event.value as typeof lifting.concrete.settings).maturity).to.equal(800);
  });
});

describe('the elements of people, neighbours and weather', () => {
  it('show the cautions and do not overflow 390 px', async () => {
    for (const el of [await shownPeople(), await shownNoise(), await shownLifting()]) {
      expect(texts(el, '.cautions li').join()).to.contain('authorises nobody');
      el.style.setProperty('width', '390px');
      // Watchers of sizes hear of it after the first, and of what follows from it after the second.
      for (let frame = 0; frame < 3; frame += 1) await nextFrame();
      await el.updateComplete;
      expect(el.scrollWidth, el.localName).to.be.at.most(390);
      const edge = el.getBoundingClientRect().right + 0.5;
      for (const element of el.renderRoot.querySelectorAll(
        'svg, table.cards, button, input, select',
      ))
        expect(element.getBoundingClientRect().right, element.outerHTML.slice(0, 80)).to.be.at.most(
          edge,
        );
    }
  });

  it('have no accessibility faults, empty or full, light or dark', async () => {
    const bare = sitePlan(blank);
    const el = await fixture<HTMLElement>(
      html`<div>
        <possession-people .answer=${people} .windows=${read.plan.windows}></possession-people>
        <possession-noise .answer=${noise}></possession-noise>
        <possession-lifting .answer=${lifting}></possession-lifting>
        <possession-people .answer=${peopleOf(bare, {})}></possession-people>
        <possession-noise .answer=${noiseOf(bare, {})}></possession-noise>
        <possession-lifting .answer=${liftingOf(bare, {})}></possession-lifting>
      </div>`,
    );
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });
});
