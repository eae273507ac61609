import { expect } from '@open-wc/testing';
import { PlanStore, type KeptPlan } from '../../components/store/index.js';
import { emptyPlan, type PlanDocument } from '../../src/model/index.js';

let names = 0;
const freshName = (): string => `browser test ${(names += 1)} ${performance.now()}`;

function withRow(document: PlanDocument, text: string): PlanDocument {
  const { work } = document.tables;
  const rows = [...work.rows, [text]];
  return { ...document, tables: { ...document.tables, work: { ...work, rows } } };
}
const rowsOf = (plan: KeptPlan): string[] => plan.document.tables.work.rows.map(([cell]) => cell!);

/** A tab of its own, as far as storage goes: a frame with its own globals, that can be torn away in mid-write. */
async function tab(): Promise<{ store: typeof PlanStore; close: () => void }> {
  const frame = document.createElement('iframe');
  frame.src = new URL('support/blank.html', import.meta.url).href;
  document.body.append(frame);
  await new Promise((resolve) => frame.addEventListener('load', resolve, { once: true }));
  const inner = frame.contentWindow as unknown as { kept?: typeof PlanStore };
  const script = frame.contentDocument!.createElement('script');
  script.type = 'module';
  script.src = new URL('support/store-tab.ts', import.meta.url).href;
  await new Promise((resolve, reject) => {
    script.addEventListener('load', resolve);
    script.addEventListener('error', reject);
    frame.contentDocument!.head.append(script);
  });
  return { store: inner.kept!, close: () => frame.remove() };
}

describe('the store in a browser', () => {
  it('has every saved change after the page is killed in the middle of saving', async () => {
    for (const wait of [0, 1, 2, 5, 10]) {
      const name = freshName();
      const { store: Store, close } = await tab();
      const plan = await new Store({ name, gatherMs: 0 }).create(
        emptyPlan('Marl Vale', 'Europe/London'),
      );
      await plan.flush();
      const { id } = plan;
      const saved: string[] = [];
      for (let at = 0; at < 40; at += 1)
        void plan
          .take(withRow(plan.document, `row ${at}`), 'Add')
          .then(() => saved.push(`row ${at}`));
      await new Promise((resolve) => setTimeout(resolve, wait));
      const promised = [...saved];
      close();

      const again = (await new PlanStore({ name }).open(id))!.plan!;
      expect(rowsOf(again)).to.include.members(promised);
      // All or nothing, in order: what is there is the beginning of what was done.
      expect(rowsOf(again)).to.deep.equal(rowsOf(again).map((_row, at) => `row ${at}`));
      await again.close();
    }
  });

  it('merges the work of two tabs, each of which then shows both', async () => {
    const name = freshName();
    const { store: Store, close } = await tab();
    const one = await new Store({ name, gatherMs: 10 }).create(
      emptyPlan('Marl Vale', 'Europe/London'),
    );
    await one.flush();
    const two = (await new PlanStore({ name, gatherMs: 10 }).open(one.id))!.plan!;
    const followed = new Promise((resolve) => two.plan.onChange(resolve));
    await one.take(withRow(one.document, 'of one'), 'Add');
    await followed;
    await Promise.all([
      one.take(withRow(one.document, 'more of one'), 'Add'),
      two.change({ part: ['name'], value: 'Marl Vale 2027' }, 'Rename'),
    ]);
    await Promise.all([one.follow(), two.follow()]);
    for (const plan of [one, two]) {
      expect(rowsOf(plan)).to.deep.equal(['of one', 'more of one']);
      expect(plan.document.name).to.equal('Marl Vale 2027');
    }
    await two.close();
    close();
  });
});
