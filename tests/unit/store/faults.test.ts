// A change whose promise was kept is never lost, whatever the browser's storage does. Each round does some work with
// one fault in it, opens the plan anew as a fresh page would, and looks for every change that counted as saved.
//
// 500 faults in the ordinary run; STORE_FAULTS=10000 for all of them, in parts where each begins at another
// STORE_FIRST_SEED.
import { callsMade, faultKinds, faultsMet, pageIsDead, setFault } from './faulty-storage.js';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { PlanStore, type KeptPlan } from '../../../components/store/index.js';
import { createRandom, type Random } from '../../../src/planner/random.js';
import { planOf, rowsOf, withRow } from './plans.js';

const wanted = Number(process.env['STORE_FAULTS'] ?? 500);
const firstSeed = Number(process.env['STORE_FIRST_SEED'] ?? 1);
const quick = { gatherMs: 0, retryMs: [0], answerMs: 60_000 };
let names = 0;
const freshName = (): string => `faults ${(names += 1)}`;
const tick = (ms = 0): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Adds rows of its own names and remembers those that counted as saved. */
class Person {
  readonly saved = new Set<string>();
  readonly asked = new Set<string>();
  #count = 0;

  add(plan: KeptPlan): Promise<unknown> {
    const text = `${this.name} ${(this.#count += 1)}`;
    this.asked.add(text);
    return plan.take(withRow(plan.document, text), `Add ${text}`).then(() => this.saved.add(text));
  }

  readonly name: string;
  constructor(name: string) {
    this.name = name;
  }
}

async function everyRow(name: string, id: string): Promise<{ rows: string[]; lost: number }> {
  setFault(undefined);
  const store = new PlanStore({ name, ...quick });
  const opened = await store.open(id);
  if (opened?.plan === undefined) return { rows: [], lost: opened?.found.lost ?? 0 };
  const aside = await store.aside(id);
  const rows = [...rowsOf(opened.plan.document), ...aside.map((edit) => edit.edit.label.slice(4))];
  await opened.plan.close();
  return { rows, lost: opened.found.lost };
}

function expectAll(saved: ReadonlySet<string>, rows: readonly string[], what: string): void {
  const missing = [...saved].filter((text) => !rows.includes(text));
  expect(missing, what).toEqual([]);
  expect(new Set(rows).size, `${what}: nothing is there twice`).toBe(rows.length);
}

async function oneFault(seed: number): Promise<void> {
  const random = createRandom(seed);
  const name = freshName();
  const kind = faultKinds[random.below(faultKinds.length)]!;
  setFault(undefined);
  const plan = await new PlanStore({ name, ...quick }).create(planOf('first'));
  await plan.flush();
  const person = new Person('here');
  for (let step = random.below(3); step > 0; step -= 1) await person.add(plan);

  const other = (await new PlanStore({ name, ...quick }).open(plan.id))!.plan!;
  const there = new Person('there');
  setFault({ kind, after: random.below(24) });
  const work: Promise<unknown>[] = [];
  for (let step = 1 + random.below(4); step > 0; step -= 1) {
    work.push(random.below(3) === 0 ? there.add(other) : person.add(plan));
    if (random.below(2) === 0) await tick();
  }
  // A dead page keeps no promise; a living one keeps them all in the end.
  await doneOrDead(Promise.all(work));
  // What is saved by now must be found; the old pages may go on and save more while the new one reads.
  const saved = new Set([...person.saved, ...there.saved]);
  const { rows } = await everyRow(name, plan.id);
  const what = `seed ${seed}, ${kind}`;
  expectAll(saved, rows, what);
  for (const row of rows)
    expect(row === 'first' || person.asked.has(row) || there.asked.has(row), what).toBe(true);
  const closed = Promise.all([plan.close(), other.close()]);
  // A page that was killed in the middle of a write never ends it: there is nothing to wait for.
  if (kind !== 'kill') await closed;
}

/** Waits for the work, or for the death of the page that does it. */
async function doneOrDead(work: Promise<unknown>): Promise<void> {
  let done = false;
  void work.then(() => (done = true));
  while (!done && !pageIsDead()) await tick(1);
  if (!done) await tick(2);
}

describe('storage that fails', () => {
  it(`loses no saved change over ${wanted} faults in six ways`, async () => {
    const before = faultsMet();
    for (let seed = firstSeed; faultsMet() - before < wanted; seed += 1) await oneFault(seed);
    expect(faultsMet() - before).toBeGreaterThanOrEqual(wanted);
  });

  it.each(faultKinds)('loses none whichever call of a write fails: %s', async (kind) => {
    let after = 0;
    for (; ; after += 1) {
      const name = freshName();
      setFault(undefined);
      const plan = await new PlanStore({ name, ...quick }).create(planOf('first'));
      await plan.flush();
      const person = new Person('here');
      await person.add(plan);
      const met = faultsMet();
      setFault({ kind, after });
      await doneOrDead(person.add(plan));
      const reached = faultsMet() > met;
      const saved = new Set(person.saved);
      const { rows } = await everyRow(name, plan.id);
      expectAll(saved, rows, `${kind} at call ${after + 1}`);
      await plan.close();
      if (!reached) break;
    }
    expect(after).toBeGreaterThan(5);
    expect(callsMade()).toBeGreaterThan(0);
  });

  it('says that the disk is full, and saves once there is room', async () => {
    setFault(undefined);
    const plan = await new PlanStore({ name: freshName(), gatherMs: 0, retryMs: [30] }).create(
      planOf('a'),
    );
    await plan.flush();
    const states: string[] = [];
    plan.addEventListener('save-state', ({ state }) =>
      states.push(state.kind === 'not-saved' ? state.trouble : state.kind),
    );
    setFault({ kind: 'quota', after: 3 });
    await plan.take(withRow(plan.document, 'b'), 'Add b');
    expect(states).toEqual(['saving', 'full', 'saved']);
    await plan.close();
  });
});

describe('damaged bytes', () => {
  const stores = ['heads', 'log', 'snapshots'] as const;

  /** Turns a bit, cuts the text, or takes the record away. */
  async function damage(name: string, random: Random): Promise<string> {
    const db = await openDB(name);
    const filled = [];
    for (const item of stores) if ((await db.count(item)) > 0) filled.push(item);
    const store = filled[random.below(filled.length)]!;
    const keys = await db.getAllKeys(store);
    const key = keys[random.below(keys.length)]!;
    const record = (await db.get(store, key)) as Record<string, unknown>;
    const field = store === 'heads' ? 'name' : 'text';
    const text = String(record[field]);
    const way = random.below(3);
    const at = random.below(Math.max(1, text.length));
    if (way === 0) await db.delete(store, key);
    else {
      const bit = String.fromCharCode(text.charCodeAt(at) ^ (1 << random.below(7)));
      const broken = way === 1 ? text.slice(0, at) : text.slice(0, at) + bit + text.slice(at + 1);
      await db.put(store, { ...record, [field]: broken });
    }
    db.close();
    return `${['gone', 'cut', 'bit'][way]} ${store} ${JSON.stringify(key)}`;
  }

  it('in any one record lose no saved change', async () => {
    const rounds = Math.max(60, Math.ceil(wanted / 10));
    for (let seed = 1; seed <= rounds; seed += 1) {
      setFault(undefined);
      const random = createRandom(seed);
      const name = freshName();
      const plan = await new PlanStore({ name, ...quick }).create(planOf('first'));
      await plan.flush();
      const person = new Person('here');
      for (let step = random.below(5); step > 0; step -= 1) await person.add(plan);
      await plan.close();
      const what = await damage(name, random);
      const first = await everyRow(name, plan.id);
      expectAll(person.saved, first.rows, `seed ${seed}: ${what}`);
      expect(first.lost).toBe(0);
      // Opening mended it, so that another hit is survived too.
      const again = await damage(name, random);
      const second = await everyRow(name, plan.id);
      expectAll(person.saved, second.rows, `seed ${seed}: ${what}, then ${again}`);
    }
  });

  it('in many records are told, kept for download, and never taken for the plan', async () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      setFault(undefined);
      const random = createRandom(seed);
      const name = freshName();
      const plan = await new PlanStore({ name, ...quick }).create(planOf('first'));
      await plan.flush();
      const person = new Person('here');
      for (let step = 0; step < 4; step += 1) await person.add(plan);
      await plan.close();
      for (let hit = 0; hit < 6; hit += 1) await damage(name, random).catch(() => '');
      const store = new PlanStore({ name, ...quick });
      const opened = await store.open(plan.id);
      if (opened?.plan === undefined) continue;
      const rows = rowsOf(opened.plan.document);
      const missing = [...person.saved].filter((text) => !rows.includes(text));
      const told = opened.found.lost + opened.found.unplaced;
      expect(told, `seed ${seed}`).toBe(missing.length);
      if (opened.found.damaged.length > 0) expect(await store.damaged(plan.id)).toBeTruthy();
      await opened.plan.close();
    }
  });
});
