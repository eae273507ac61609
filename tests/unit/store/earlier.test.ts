// Plans as the version before kept them: `tests/golden/store-1.json` holds the records of its store and its journal as that
// version wrote them, with an edit set aside, and one that only the journal had.
import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { PlanStore } from '../../../components/store/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { localRoom } from './local-room.js';

interface Kept {
  readonly plan: string;
  readonly document: PlanDocument;
  readonly stores: Readonly<Record<string, readonly object[]>>;
  readonly journal: Readonly<Record<string, string>>;
}
const golden = JSON.parse(readFileSync('tests/golden/store-1.json', 'utf8')) as Kept;
let stores = 0;
const slow = { gatherMs: 3_600_000, retryMs: [3_600_000] };

async function keptBefore(damage?: (record: Record<string, unknown>) => boolean) {
  const name = `earlier ${(stores += 1)}`;
  const db = await openDB(name, 1, {
    upgrade: (store) => {
      store.createObjectStore('heads', { keyPath: 'plan' });
      for (const text of ['log', 'snapshots'])
        store.createObjectStore(text, { keyPath: ['plan', 'seq', 'copy'] });
      store.createObjectStore('aside', { keyPath: ['plan', 'id'] });
      store.createObjectStore('damaged', { autoIncrement: true }).createIndex('plan', 'plan');
      store.createObjectStore('handles', { keyPath: 'plan' });
    },
  });
  for (const [store, records] of Object.entries(golden.stores))
    for (const record of records as Record<string, unknown>[])
      await db.put(store, damage?.(record) ? { ...record, text: 'x' } : record);
  db.close();
  const journal = localRoom();
  for (const [key, text] of Object.entries(golden.journal)) journal.setItem(key, text);
  return { name, journal };
}

describe('a plan that the version before kept', () => {
  it('opens with every change, those of the journal too, and what was set aside', async () => {
    const { name, journal } = await keptBefore();
    const store = new PlanStore({ name, journal, ...slow });
    expect((await store.list()).map((line) => line.name)).toEqual(['Marl Vale']);
    const opened = (await store.open(golden.plan))!;
    expect(opened.plan!.document).toEqual(golden.document);
    expect(opened.found.lost).toBe(0);
    const [aside] = await store.aside(golden.plan);
    expect(aside!.edit.label).toBe('minutes of A10 in another tab');
    expect(await opened.plan!.flush()).toBe(true);
    expect(journal.length).toBe(0);
    // From then on it is as any other, in two tabs too.
    const again = (await new PlanStore({ name, journal: null, ...slow }).open(golden.plan))!.plan!;
    expect(again.document).toEqual(golden.document);
    void opened.plan!.change({ part: ['name'], value: 'One' }, 'named');
    void again.change({ part: ['zone'], value: 'Europe/Paris' }, 'zone set');
    await Promise.all([opened.plan!.flush(), again.flush()]);
    await Promise.all([opened.plan!.follow(), again.follow()]);
    expect(opened.plan!.document).toEqual(again.document);
    expect(again.document).toMatchObject({ name: 'One', zone: 'Europe/Paris' });
    expect(await store.putBack(again, aside!)).toBe(false);
  });

  it('is brought up once where two tabs open it at the same moment', async () => {
    const { name } = await keptBefore();
    const journal = null;
    const [one, two] = await Promise.all([
      new PlanStore({ name, journal, ...slow }).open(golden.plan),
      new PlanStore({ name, journal, ...slow }).open(golden.plan),
    ]);
    void one!.plan!.change({ part: ['name'], value: 'One' }, 'named');
    void two!.plan!.change(
      { table: 'work', steps: [{ cells: [{ row: 0, column: 1, text: '99' }] }] },
      'typed',
    );
    await Promise.all([one!.plan!.flush(), two!.plan!.flush()]);
    await Promise.all([one!.plan!.follow(), two!.plan!.follow()]);
    expect(two!.plan!.document).toEqual(one!.plan!.document);
    expect(one!.plan!.document.name).toBe('One');
    expect(one!.plan!.document.tables.work.rows[0]).toEqual(['A10', '99']);
    expect(one!.plan!.plan.kept).toEqual([]);
  });

  it('opens where one record of every edit is damaged, and tells of it', async () => {
    const { name } = await keptBefore(({ copy, seq }) => copy === 1 && seq !== 0);
    const opened = (await new PlanStore({ name, journal: null, ...slow }).open(golden.plan))!;
    expect(opened.found.lost).toBe(0);
    expect(opened.found.damaged.length).toBe(3);
    expect(opened.plan!.document.tables.work.rows.map((row) => row[1])).toEqual([
      '75',
      '90',
      '45',
      '30',
    ]);
  });
});
