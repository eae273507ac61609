import { expect, fixture, html, oneEvent } from '@open-wc/testing';
import { sendKeys } from '@web/test-runner-commands';
import '../../components/chart/define.js';
import type { PossessionChart } from '../../components/chart/chart.js';
import type { ChartPickEvent } from '../../components/chart/chart-pick-event.js';
import type { ChartShown } from '../../components/chart/shown.js';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { waitUntil } from './support/wait-until.js';

const steps: ChartShown = {
  title: 'Cost against minutes',
  points: [0, 30, 60, 90],
  pointTitle: 'Minutes',
  valueTitle: 'Cost',
  rightTitle: 'Chance of being later',
  series: [
    { name: 'Delay', kind: 'area', values: [0, 10, 20, 40], tone: 0, stack: 'cost', stepped: true },
    { name: 'Plant', kind: 'area', values: [0, 5, 10, 15], tone: 1, stack: 'cost', stepped: true },
    {
      name: 'Later',
      kind: 'line',
      values: [0.4, 0.2, 0.1, null],
      tone: 7,
      onRight: true,
      text: (value) => `${100 * value} %`,
    },
  ],
  marks: [{ at: 30, text: 'asked' }],
  pointText: (point) => `${point} min`,
  valueText: (value) => `GBP ${value}`,
  axisText: String,
};
const bars: ChartShown = {
  ...{ title: 'Options', points: ['As planned', 'Longer'], pointTitle: 'Option' },
  ...{ valueTitle: 'Total', lying: true },
  series: [
    { name: 'Overrun', kind: 'bar', values: [30, 10], tone: 1, stack: 'all' },
    {
      name: 'Booking',
      kind: 'bar',
      values: [0, 25],
      tone: 0,
      stack: 'all',
      low: [10, 30],
      high: [60, 50],
    },
  ],
  ...{ pointText: String, valueText: (value) => `GBP ${value}`, axisText: String },
};

async function drawn(shown: ChartShown): Promise<PossessionChart> {
  const el: PossessionChart = await fixture(
    html`<possession-chart .shown=${shown}></possession-chart>`,
  );
  await settled(el);
  return el;
}
async function settled(el: PossessionChart): Promise<void> {
  await waitUntil(() => inked(el) > 0, 'the picture');
  await el.updateComplete;
}
const part = <T extends HTMLElement>(el: PossessionChart, css: string): T =>
  el.renderRoot.querySelector<T>(css)!;
const pixels = (el: PossessionChart): Uint8ClampedArray => {
  const canvas = part<HTMLCanvasElement>(el, '.frame canvas');
  return canvas.width * canvas.height === 0
    ? new Uint8ClampedArray()
    : canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height).data;
};
/** Dots of the picture that are drawn on. */
const inked = (el: PossessionChart): number =>
  pixels(el).reduce((sum, value, i) => (i % 4 === 3 && value > 0 ? sum + 1 : sum), 0);
/** Dots of a colour; the page's paper, ink and hairlines are almost grey and are none. */
const coloured = (el: PossessionChart): number => {
  const dots = pixels(el);
  let count = 0;
  for (let i = 0; i < dots.length; i += 4)
    if (
      dots[i + 3]! > 127 &&
      Math.max(dots[i]!, dots[i + 1]!, dots[i + 2]!) -
        Math.min(dots[i]!, dots[i + 1]!, dots[i + 2]!) >
        30
    )
      count += 1;
  return count;
};
const readout = (el: PossessionChart): string => part(el, '.readout').textContent.trim();

describe('possession-chart', () => {
  it('draws, and again when the scheme turns, in other colours', async () => {
    const el = await drawn(steps);
    expect(inked(el)).to.be.greaterThan(1000);
    expect(coloured(el)).to.be.greaterThan(1000);
    const light = [...pixels(el)].join();
    const { style } = document.documentElement;
    style.setProperty('color-scheme', 'dark');
    await waitUntil(() => inked(el) > 1000 && [...pixels(el)].join() !== light, 'other colours');
    style.removeProperty('color-scheme');
  });

  it('draws without colour where the reader forces colours', async () => {
    // The test runner forces no colours, so the question whether they are is answered for it.
    const ask = globalThis.matchMedia;
    globalThis.matchMedia = (query) =>
      query.includes('forced-colors')
        ? ({
            matches: true,
            addEventListener() {},
            removeEventListener() {},
          } as unknown as MediaQueryList)
        : ask.call(globalThis, query);
    const el = await drawn(bars);
    expect(inked(el)).to.be.greaterThan(1000);
    globalThis.matchMedia = ask;
    expect(coloured(el)).to.equal(0);
  });

  it('is black on white on paper, four dots to a pixel, and as before afterwards', async () => {
    const el = await drawn(bars);
    const wide = part<HTMLCanvasElement>(el, '.frame canvas').width;
    globalThis.dispatchEvent(new Event('beforeprint'));
    expect(part<HTMLCanvasElement>(el, '.frame canvas').width).to.equal(718 * 4);
    expect(inked(el)).to.be.greaterThan(10_000);
    expect(coloured(el)).to.equal(0);
    globalThis.dispatchEvent(new Event('afterprint'));
    await el.updateComplete;
    expect(part<HTMLCanvasElement>(el, '.frame canvas').width).to.equal(wide);
    expect(coloured(el)).to.be.greaterThan(100);
  });

  it('reads each point by the arrow keys, out loud and in sight', async () => {
    const el = await drawn(steps);
    part(el, '.frame').focus();
    await sendKeys({ press: 'ArrowRight' });
    await el.updateComplete;
    expect(readout(el)).to.equal('0 min: Later 40 %');
    await sendKeys({ press: 'ArrowRight' });
    await el.updateComplete;
    const said = '30 min: Delay GBP 10; Plant GBP 5; Later 20 %';
    expect(readout(el)).to.equal(said);
    expect(part(el, '.frame').getAttribute('aria-valuetext')).to.equal(said);
    expect(part(el, '.readout').getAttribute('role')).to.equal('status');
    await sendKeys({ press: 'End' });
    await el.updateComplete;
    expect(readout(el)).to.contain('90 min');
    await sendKeys({ press: 'ArrowRight' });
    await sendKeys({ press: 'Home' });
    await el.updateComplete;
    expect(readout(el)).to.contain('0 min');
    await sendKeys({ press: 'ArrowRight' });
    setTimeout(() => void sendKeys({ press: 'Enter' }));
    const event = await oneEvent<ChartPickEvent>(el, 'possession-chart-pick');
    expect(event.index).to.equal(1);
  });

  it('reads the point under the pointer, and forgets it when the pointer leaves', async () => {
    const el = await drawn(steps);
    const frame = part(el, '.frame');
    const box = frame.getBoundingClientRect();
    const at = (share: number, type: string): void =>
      void frame.dispatchEvent(
        new PointerEvent(type, {
          clientX: box.left + share * box.width,
          clientY: box.top + box.height / 2,
          bubbles: true,
        }),
      );
    at(0.97, 'pointermove');
    await el.updateComplete;
    expect(readout(el)).to.contain('90 min');
    at(0.5, 'pointermove');
    await el.updateComplete;
    expect(readout(el)).to.match(/^(30|60) min/);
    at(0, 'pointerleave');
    await el.updateComplete;
    expect(readout(el)).to.contain('Arrow keys');
  });

  it('has its table one key away, with every point and value', async () => {
    const el = await drawn(steps);
    part(el, '.frame').focus();
    await sendKeys({ press: 't' });
    await el.updateComplete;
    const rows = [...el.renderRoot.querySelectorAll('tbody tr')].map((row) =>
      [...row.children].map((child) => child.textContent.trim()),
    );
    expect(rows).to.deep.equal([
      ['0 min', 'GBP 0', 'GBP 0', '40 %'],
      ['30 min', 'GBP 10', 'GBP 5', '20 %'],
      ['60 min', 'GBP 20', 'GBP 10', '10 %'],
      ['90 min', 'GBP 40', 'GBP 15', ''],
    ]);
  });

  it('sets no style attribute in its markup, and none that a strict policy would refuse', async () => {
    const refused: string[] = [];
    const note = (event: SecurityPolicyViolationEvent): void =>
      void refused.push(event.violatedDirective);
    document.addEventListener('securitypolicyviolation', note);
    await drawn(steps);
    await drawn(bars);
    document.removeEventListener('securitypolicyviolation', note);
    expect(refused).to.deep.equal([]);
  });

  it('has no accessibility faults as picture and as table, light and dark', async () => {
    for (const shown of [steps, bars]) {
      const el = await drawn(shown);
      await inBothSchemes(async () => {
        expect(await axeFaults(el)).to.deep.equal([]);
      });
      part(el, 'button').click();
      await el.updateComplete;
      expect(await axeFaults(el)).to.deep.equal([]);
    }
  });

  it('is looked at nearer and wider by keys and buttons, and follows the point that is read', async () => {
    const el = await drawn({ ...steps, zooms: true });
    const whole = [...pixels(el)].join();
    part(el, '.frame').focus();
    await sendKeys({ press: '+' });
    await el.updateComplete;
    await sendKeys({ press: '+' });
    await el.updateComplete;
    const near = [...pixels(el)].join();
    expect(near === whole).to.equal(false);
    // From 33.75 to 56.25 of 90 minutes: the point at the end is out of sight until it is read.
    await sendKeys({ press: 'End' });
    await sendKeys({ press: 'End' });
    await el.updateComplete;
    expect(readout(el)).to.contain('90 min');
    expect([...pixels(el)].join() === near).to.equal(false);
    const all = [...el.renderRoot.querySelectorAll<HTMLButtonElement>('.zoom button')];
    expect(all.map((element) => element.textContent.trim())).to.deep.equal([
      'Nearer',
      'Wider',
      'All of it',
    ]);
    all[2]!.click();
    await el.updateComplete;
    expect(all.map((element) => element.disabled)).to.deep.equal([false, true, true]);
    await inBothSchemes(async () => {
      expect(await axeFaults(el)).to.deep.equal([]);
    });
  });

  it('offers no nearer look where there is none to have', async () => {
    expect(part(await drawn({ ...bars, zooms: true }), '.zoom')).to.equal(null);
    expect(part(await drawn(steps), '.zoom')).to.equal(null);
  });
});
