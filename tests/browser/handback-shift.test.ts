import { expect } from '@open-wc/testing';
import { axeFaults, inBothSchemes } from './support/axe.js';
import { all, open } from './support/look.js';
import { entry, log, placed, shown } from './support/shift-night.js';

describe('the view for the shift', () => {
  const busyLog = [
    ...log,
    entry('d', 60, { kind: 'units-done', activity: 'SET', units: 3 }),
    entry('e', 70, { kind: 'units-done', activity: 'SET', units: 1 }),
    entry('f', 50, { kind: 'activity-started', activity: 'CUT' }, 'c'),
  ];

  it('has targets for a thumb, folded forms too', async () => {
    const el = await shown({ log: busyLog });
    all(el, '.live details').forEach(open);
    await el.updateComplete;
    const small = all(el, '.live :is(button, summary, input, select)').filter((element) => {
      const { height, width } = element.getBoundingClientRect();
      // 15 mm of a phone's glass, for a gloved hand (common practice, no source): 56 CSS pixels.
      return Math.min(height, width) < 56;
    });
    expect(small.map((element) => element.outerHTML)).to.deep.equal([]);
  });

  it('keeps within 390 pixels with every form open', async () => {
    const el = await shown({ log: busyLog, decisions: placed });
    el.style.setProperty('width', '390px');
    all(el, 'details').forEach(open);
    await el.updateComplete;
    // The picture is measured in handback.test.ts: a page in the background is not told of its new width.
    const parts = [...all(el, '.live > *, .tables > *')];
    for (const part of parts) {
      const { left, right } = part.getBoundingClientRect();
      expect(right - left).to.be.at.most(390);
      expect(part.scrollWidth, part.outerHTML.slice(0, 80)).to.be.at.most(390);
    }
  });

  it('has no accessibility faults with every form open, light and dark', async () => {
    await inBothSchemes(async () => {
      const el = await shown({ log: busyLog, decisions: placed });
      for (const scheme of ['dark', 'light']) {
        el.style.setProperty('--possession-live-scheme', scheme);
        all(el, 'details').forEach(open);
        await el.updateComplete;
        expect(await axeFaults(el)).to.deep.equal([]);
      }
      el.remove();
    });
  });
});
