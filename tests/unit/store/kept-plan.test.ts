import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { openDB } from 'idb';
import {
  keepSteps,
  PlanStore,
  salvageText,
  type KeptPlan,
} from '../../../components/store/index.js';
import { planOf, retyped, rowsOf, typed, withRow } from './plans.js';

let stores = 0;
const open: KeptPlan[] = [];
const keep = <T extends KeptPlan | undefined>(plan: T): T => {
  if (plan) open.push(plan);
  return plan;
};
const freshName = (): string => `test ${(stores += 1)}`;
const quick = { gatherMs: 5, retryMs: [5] };

afterEach(async () => {
  await Promise.all(open.splice(0).map((plan) => plan.close()));
});

describe('a kept plan', () => {
  it('is there again, with every change whose promise was kept', async () => {
    const name = freshName();
    const plan = keep(await new PlanStore({ name, ...quick }).create(planOf('a')));
    await plan.take(withRow(plan.document, 'b'), 'Add b');
    expect(plan.state.kind).toBe('saved');
    const store = new PlanStore({ name, ...quick });
    const again = await store.open(plan.id);
    expect(rowsOf(keep(again!.plan)!.document)).toEqual(['a', 'b']);
    expect(salvageText(again!.found, String)).toEqual([]);
  });

  it('writes several changes made in one moment together, and says saving until then', async () => {
    const plan = keep(await new PlanStore({ name: freshName(), ...quick }).create(planOf('a')));
    await plan.flush();
    const states: string[] = [];
    plan.addEventListener('save-state', (event) => states.push(event.state.kind));
    const first = plan.take(withRow(plan.document, 'b'), 'Add b');
    const second = plan.take(withRow(plan.document, 'c'), 'Add c');
    await Promise.all([first, second]);
    expect(states).toEqual(['saving', 'saving', 'saved']);
  });

  it('takes no change that differs in nothing', async () => {
    const plan = keep(await new PlanStore({ name: freshName(), ...quick }).create(planOf('a')));
    await plan.flush();
    await plan.take(planOf('a'), 'nothing');
    expect(plan.state.kind).toBe('saved');
  });

  it('keeps several plans, which can be listed, renamed, copied and removed', async () => {
    const store = new PlanStore({ name: freshName(), ...quick });
    const plan = keep(await store.create(planOf('a')));
    await plan.flush();
    const copy = keep(await store.duplicate(plan.id, 'Marl Vale, second try'));
    await copy.flush();
    await store.rename(plan.id, 'Marl Vale 2027');
    expect((await store.list()).map((line) => line.name).sort()).toEqual([
      'Marl Vale 2027',
      'Marl Vale, second try',
    ]);
    await store.delete(copy.id);
    expect((await store.list()).map((line) => line.id)).toEqual([plan.id]);
    expect(await store.open(copy.id)).toBeUndefined();
  });

  it('keeps earlier states that can be had back', async () => {
    let now = Date.UTC(2027, 4, 1);
    const store = new PlanStore({ name: freshName(), ...quick, now: () => now });
    const plan = keep(await store.create(planOf('a')));
    await plan.flush();
    for (let day = 0; day < 30; day += 1) {
      now += 86_400_000;
      await plan.take(withRow(plan.document, `day ${day}`), 'Add a day');
    }
    const earlier = await store.earlier(plan.id);
    expect(earlier).toHaveLength(14);
    const old = await store.readEarlier(plan.id, earlier.at(-1)!.seq);
    expect(rowsOf(old!).at(-1)).toBe('day 16');
  });

  it('is written anew where another tab removed it while work went on here', async () => {
    const store = new PlanStore({ name: freshName(), ...quick });
    const plan = keep(await store.create(planOf('a')));
    await plan.flush();
    await store.delete(plan.id);
    await plan.take(withRow(plan.document, 'b'), 'Add b');
    const again = await store.open(plan.id);
    expect(rowsOf(keep(again!.plan)!.document)).toEqual(['a', 'b']);
  });
});

describe('a plan open in two tabs', () => {
  /** With `deaf` tabs, which do not hear of each other, what happens when is in the test's hands. */
  async function twoTabs(rows: string[], deaf: 'deaf' | '' = '') {
    if (deaf) vi.stubGlobal('BroadcastChannel', undefined);
    const name = freshName();
    const plan = keep(await new PlanStore({ name, ...quick }).create(planOf(...rows)));
    await plan.flush();
    const store = new PlanStore({ name, ...quick });
    const two = keep((await store.open(plan.id))!.plan)!;
    vi.unstubAllGlobals();
    return { one: plan, two, store };
  }

  it('shows in each what is done in the other', async () => {
    const { one, two } = await twoTabs(['a', 'b']);
    const followed = new Promise<string[]>((resolve) =>
      two.plan.onChange((event) => resolve(rowsOf(event.document))),
    );
    await one.take(retyped(one.document, 0, 'A'), 'Retype a');
    expect(await followed).toEqual(['A', 'b']);
    expect(rowsOf(two.document)).toEqual(['A', 'b']);
  });

  it('keeps the work of both where both edit at once', async () => {
    const { one, two } = await twoTabs(['a', 'b', 'c']);
    const done = [
      one.take(retyped(one.document, 0, 'A'), 'Retype a'),
      two.take(withRow(retyped(two.document, 2, 'C'), 'd'), 'Retype c, add d'),
    ];
    await Promise.all(done);
    await Promise.all([one.follow(), two.follow()]);
    expect(rowsOf(one.document)).toEqual(['A', 'b', 'C', 'd']);
    expect(rowsOf(two.document)).toEqual(['A', 'b', 'C', 'd']);
  });

  it('keeps the earlier of two values of one cell aside, where it can be read and put back', async () => {
    const { one, two } = await twoTabs(['a', 'b'], 'deaf');
    const first = one.change(typed(1, 'one'), 'Retype b');
    const second = two.change(typed(1, 'two'), 'Retype b as two');
    await Promise.all([first, second]);
    await Promise.all([one.follow(), two.follow()]);
    expect(rowsOf(one.document)).toEqual(rowsOf(two.document));
    const [stands] = rowsOf(two.document).slice(1);
    const [kept] = two.plan.kept;
    expect([stands, kept!.value].sort()).toEqual(['one', 'two']);
    expect(kept).toMatchObject({ place: 'work, row 2, activity', instead: stands });
    two.plan.putBack(kept!);
    await two.saved();
    await one.follow();
    expect(rowsOf(one.document)).toEqual(['a', kept!.value]);
    expect([...one.plan.kept, ...two.plan.kept]).toEqual([]);
  });

  it('undoes only its own work, when it is opened again too', async () => {
    const { one, two, store } = await twoTabs(['a', 'b']);
    await two.change(typed(1, 'B'), 'Retype b');
    await one.follow();
    await one.take(withRow(one.document, 'top', 0), 'Add a row');
    await two.follow();
    expect(two.plan.undo.undoLabel).toBe('Retype b');
    const kept = new Map<string, string>();
    vi.stubGlobal('sessionStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
    });
    keepSteps(two.id, two.plan.undo.steps);
    const again = keep((await store.open(two.id))!.plan)!;
    vi.unstubAllGlobals();
    expect(again.plan.undo.undoLabel).toBe('Retype b');
    for (const plan of [two, again]) {
      expect(plan.plan.undo.undo()).toBe(true);
      await plan.saved();
      expect(rowsOf(plan.document)).toEqual(['top', 'a', 'b']);
      expect(plan.plan.undo.canUndo).toBe(false);
    }
  });

  it('follows a tab that went on for so long that the edits on the way are gone', async () => {
    const { one, two } = await twoTabs(['a'], 'deaf');
    await two.take(withRow(two.document, 'mine'), 'Add mine');
    await one.follow();
    for (let step = 0; step < 700; step += 1)
      void one.take(withRow(one.document, `step ${step}`, 0), 'Add a step');
    await one.flush();
    for (let round = 0; round < 7; round += 1) {
      for (let step = 0; step < 110; step += 1)
        void one.take(retyped(one.document, 0, `round ${round} ${step}`), 'Retype');
      await one.flush();
    }
    await two.take(withRow(two.document, 'last'), 'Add last');
    await two.follow();
    expect(two.document.tables.work.rows).toHaveLength(703);
    expect(rowsOf(two.document)[0]).toBe('round 6 109');
  });
});

describe('a store of another version', () => {
  it('is opened read-only where it is of a newer one', async () => {
    const name = freshName();
    const plan = await new PlanStore({ name, ...quick }).create(planOf('a'));
    await plan.close();
    // The page of the future, which adds a store.
    const future = await openDB(name, 9, {
      upgrade: (db) => void db.createObjectStore('of the future'),
    });
    const opened = await new PlanStore({ name, ...quick }).open(plan.id);
    const old = keep(opened!.plan)!;
    expect(old.readOnly).toBe(true);
    expect(rowsOf(old.document)).toEqual(['a']);
    void old.take(withRow(old.document, 'b'), 'Add b');
    expect(old.state).toEqual({ kind: 'read-only', changes: 1 });
    expect(await old.flush()).toBe(false);
    future.close();
  });

  it('says so where it became newer while the plan was open', async () => {
    const name = freshName();
    const plan = keep(await new PlanStore({ name, ...quick, retryMs: [] }).create(planOf('a')));
    await plan.flush();
    const future = await openDB(name, 9);
    void plan.take(withRow(plan.document, 'b'), 'Add b');
    expect(await plan.flush()).toBe(false);
    expect(plan.state).toMatchObject({ kind: 'not-saved', trouble: 'newer', changes: 1 });
    future.close();
  });
});
