// A page that is gone at any moment after an edit: what the journal holds is there at the next opening.
import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { PlanStore, type KeptPlan } from '../../../components/store/index.js';
import { localRoom } from './local-room.js';
import { planOf, rowsOf, typed, withRow } from './plans.js';

let stores = 0;
const freshName = (): string => `journal ${(stores += 1)}`;
/** Never writes by itself within a test. */
const slow = { gatherMs: 3_600_000, retryMs: [3_600_000] };

describe('the journal', () => {
  it('has an edit of which the page was left before the store was written', async () => {
    const [name, journal] = [freshName(), localRoom()];
    const plan = await new PlanStore({ name, journal, ...slow }).create(planOf('a'));
    await plan.flush();
    void plan.take(withRow(plan.document, 'b'), 'Add b');
    const again = await new PlanStore({ name, journal, ...slow }).open(plan.id);
    expect(rowsOf(again!.plan!.document)).toEqual(['a', 'b']);
    expect(again!.plan!.state.kind).toBe('saving');
    expect(await again!.plan!.flush()).toBe(true);
    expect(journal.length).toBe(0);
    const third = await new PlanStore({ name, journal: null, ...slow }).open(plan.id);
    expect(rowsOf(third!.plan!.document)).toEqual(['a', 'b']);
  });

  it('has a plan that was left before the store had anything of it', async () => {
    const [name, journal] = [freshName(), localRoom()];
    const plan = await new PlanStore({ name, journal, ...slow }).create(planOf('a'));
    void plan.take(withRow(plan.document, 'b'), 'Add b');
    // The first write of `create` is under way in this process; another store of another name never had it.
    const elsewhere = new PlanStore({ name: freshName(), journal, ...slow });
    expect((await elsewhere.list()).map((line) => line.id)).toEqual([plan.id]);
    const opened = await elsewhere.open(plan.id);
    expect(rowsOf(opened!.plan!.document)).toEqual(['a', 'b']);
    expect(await opened!.plan!.flush()).toBe(true);
  });

  it('keeps edits in the order in which they were made upon each other, whatever the clock says', async () => {
    // Page after page within one moment, then with a clock that was set back; names of pages are random.
    for (let time = 0; time < 12; time += 1) {
      const [name, journal] = [freshName(), localRoom()];
      let clock = 1_000;
      const options = { name, journal, ...slow, now: () => clock };
      let plan = await new PlanStore(options).create(planOf('a'));
      await plan.flush();
      for (const text of ['b', 'c', 'd', 'e']) {
        void plan.take(withRow(plan.document, text), `Add ${text}`);
        if (text === 'c') clock = 500;
        plan = (await new PlanStore(options).open(plan.id))!.plan!;
      }
      expect(rowsOf(plan.document)).toEqual(['a', 'b', 'c', 'd', 'e']);
    }
  });

  it('does not make an edit twice that was written just before the page was left', async () => {
    const [name, journal] = [freshName(), localRoom()];
    const plan = await new PlanStore({ name, journal, ...slow }).create(planOf('a'));
    await plan.flush();
    void plan.take(withRow(plan.document, 'b'), 'Add b');
    const kept = Array.from({ length: journal.length }, (_none, at) => journal.key(at)!).map(
      (key) => [key, journal.getItem(key)!] as const,
    );
    await plan.flush();
    for (const [key, text] of kept) journal.setItem(key, text);
    const again = await new PlanStore({ name, journal, ...slow }).open(plan.id);
    expect(rowsOf(again!.plan!.document)).toEqual(['a', 'b']);
    await again!.plan!.flush();
    expect(journal.length).toBe(0);
  });

  it('loses neither of two values where another wrote in the same cell meanwhile', async () => {
    const [name, journal] = [freshName(), localRoom()];
    const first = await new PlanStore({ name, journal, ...slow }).create(planOf('a'));
    await first.flush();
    void first.change(typed(0, 'mine'), 'Type mine');
    const other = (await new PlanStore({ name, journal: localRoom(), ...slow }).open(first.id))!
      .plan!;
    void other.change(typed(0, 'theirs'), 'Type theirs');
    await other.flush();
    const again = (await new PlanStore({ name, journal, ...slow }).open(first.id))!.plan!;
    expect([...rowsOf(again.document), again.plan.kept[0]?.value].sort()).toEqual([
      'mine',
      'theirs',
    ]);
    await again.flush();
    expect(journal.length).toBe(0);
  });

  it('without room has the store written at once', async () => {
    const [name, journal] = [freshName(), localRoom(10)];
    const plan = await new PlanStore({ name, journal, ...slow }).create(planOf('a'));
    await plan.flush();
    await plan.take(withRow(plan.document, 'b'), 'Add b');
    expect(plan.state.kind).toBe('saved');
  });

  const deaths = Number(process.env['JOURNAL_DEATHS'] ?? 100);
  it(`loses none of ${deaths} edits that a page made before it was gone at a random moment`, async () => {
    const step = fc.record({
      text: fc.string({ maxLength: 6 }),
      flush: fc.boolean(),
      dies: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: 12 }), async (steps) => {
        const [name, journal] = [freshName(), localRoom()];
        let plan: KeptPlan = await new PlanStore({ name, journal, ...slow }).create(
          planOf('start'),
        );
        await plan.flush();
        const wanted = ['start'];
        for (const { text, flush, dies } of steps) {
          wanted.push(text);
          void plan.take(withRow(plan.document, text), 'Add a row');
          // A page that goes while a write is under way: nobody waits for it, and it may end or not.
          const writing = flush ? plan.flush() : undefined;
          if (!dies) {
            await writing;
            continue;
          }
          plan = (await new PlanStore({ name, journal, ...slow }).open(plan.id))!.plan!;
          expect(rowsOf(plan.document)).toEqual(wanted);
        }
        await plan.flush();
        expect(rowsOf(plan.document)).toEqual(wanted);
      }),
      { numRuns: Math.ceil(deaths / 6), seed: 4 },
    );
  });
});

describe('a store that does not answer', () => {
  it('counts as one that cannot be opened', async () => {
    vi.useFakeTimers();
    vi.stubGlobal('indexedDB', { open: () => new IDBOpenDBRequest() });
    try {
      const listed = new PlanStore({ name: freshName(), journal: null }).list();
      const outcome = listed.catch((error: unknown) => (error as DOMException).name);
      await vi.advanceTimersByTimeAsync(10_000);
      expect(await outcome).toBe('TimeoutError');
    } finally {
      vi.unstubAllGlobals();
      vi.useRealTimers();
    }
  });
});
