import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { changesBetween } from '../../../src/plan/index.js';
import { mostUpdateBytes, OpenPlan, whatComesIn } from '../../../src/plan/open.js';
import { sizeLimits, type PlanDocument } from '../../../src/model/index.js';
import { deed, document } from '../edits/documents.js';
import { planOf } from '../store/plans.js';

/** An update of somebody who writes as they like, over the state given. */
function written(state: Uint8Array | undefined, write: (doc: Y.Doc) => void): Uint8Array {
  const doc = new Y.Doc();
  if (state) Y.applyUpdate(doc, state);
  const before = Y.encodeStateVector(doc);
  doc.transact(() => write(doc));
  return Y.encodeStateAsUpdate(doc, before);
}

describe('what comes in from others', () => {
  const bad: readonly [string, (doc: Y.Doc) => void, RegExp][] = [
    ['a root that no plan has', (doc) => void doc.getMap('other').set('a', 1), /outside the plan/],
    [
      'a type within a type',
      (doc) => void doc.getMap('values').set('p/name|1', new Y.Map()),
      /kind of content/,
    ],
    ['text of a kind', (doc) => doc.getText('values').insert(0, 'a'), /kind of content/],
    [
      'bytes',
      (doc) => void doc.getMap('values').set('p/name|1', new Uint8Array(3)),
      /kind of content/,
    ],
    [
      'a name that reaches into a program',
      (doc) =>
        void doc.getMap('values').set('p/rules|1', [JSON.parse('{"__proto__":{"a":1}}'), 1, '']),
      /value that no plan has/,
    ],
    [
      'a place that is no number',
      (doc) => doc.getArray('order/a/rows').insert(0, [-1]),
      /value that no plan has/,
    ],
    [
      'a table with a cell that is no text',
      (doc) =>
        void doc
          .getMap('values')
          .set('t/work|1', [{ file: '', columns: [], rows: [[1]] }, 1, '', 'a']),
      /value that no plan has/,
    ],
    ...['[[1]]', '{"length":1}', '[["a"]', '['.repeat(200_000)].map(
      (rows): (typeof bad)[number] => [
        `a table whose rows are the text ${rows.slice(0, 20)}`,
        (doc) =>
          void doc.getMap('values').set('t/work|1', [{ file: '', columns: [], rows }, 1, '', 'a']),
        /value that no plan has/,
      ],
    ),
    [
      'a text that is too long',
      (doc) => void doc.getMap('values').set('p/name|1', ['x'.repeat(200_000), 1, '']),
      /value that no plan has/,
    ],
  ];

  it.each(bad)('is refused in words: %s', (_what, write, words) => {
    const plan = OpenPlan.of(planOf('a'));
    const before = plan.document;
    const { refused } = plan.incoming(written(undefined, write), 'them');
    expect(refused).toMatch(words);
    expect(plan.document).toBe(before);
    plan.change({ part: ['name'], value: 'goes on' }, 'named');
    expect(plan.document.name).toBe('goes on');
  });

  it.each([
    ['as many columns', { columns: sizeLimits.columns, characters: 1 }],
    ['a cell as long as one of 10 MB', { columns: 1, characters: 10 * 1024 * 1024 }],
  ])('is taken with %s as a file may hold', (_what, { columns, characters }) => {
    const plan = OpenPlan.of(planOf('a'));
    const row = Array.from({ length: columns }, () => 'x'.repeat(characters));
    const whole = { ...plan.document.tables.windows, columns: row, rows: [row] };
    plan.change({ table: 'windows', whole }, 'taken in');
    expect(plan.document.tables.windows.rows[0]).toEqual(row);
    expect(whatComesIn(plan.state())).toBeUndefined();
  });

  it('is refused where it is cut, damaged or too large', () => {
    const plan = OpenPlan.of(planOf('a', 'b', 'c'));
    const state = plan.state();
    fc.assert(
      fc.property(fc.nat(state.length - 2), (length) => {
        expect(whatComesIn(state.slice(0, length))).toMatch(/./);
      }),
    );
    expect(whatComesIn(state)).toBeUndefined();
    expect(whatComesIn(new Uint8Array(mostUpdateBytes + 1))).toMatch(/too large/);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        const before = plan.document;
        plan.incoming(bytes, 'them');
        expect(plan.document.tables).toEqual(before.tables);
      }),
    );
  });

  it('of the right form and no sense is left out of the document, the same everywhere', () => {
    const plan = OpenPlan.of(planOf('a'));
    const before = plan.document;
    const update = written(plan.state(), (doc) => {
      const values = doc.getMap('values');
      values.set('p/rules|zz', [{ schema: 9 }, 9e15, 'them', 'zz']);
      values.set('p/name|zz', [7, 9e15, 'them', 'zy']);
      values.set('p/other|zz', ['x', 9e15, 'them', 'zx']);
      values.set('t/work|zz', ['no table', 9e15, 'them', 'zw']);
      values.set('c/%E0%A4%A/x/y|zz', ['x', 9e15, 'them']);
      values.set('nonsense', 1);
      doc.getMap('shift').set('%E0%A4%A/x', { id: 'x', at: 1 });
      doc.getArray('order/zz/rows').insert(0, [5]);
    });
    expect(plan.incoming(update, 'them').refused).toBeUndefined();
    expect(plan.document).toEqual(before);
    expect(OpenPlan.from([plan.state()])!.document).toEqual(before);
  });

  it('makes no plan where a part that every plan has is missing', () => {
    expect(OpenPlan.from([])).toBeUndefined();
    const update = written(undefined, (doc) =>
      doc.getMap('values').set('p/name|1', ['x', 1, '', 'a']),
    );
    expect(OpenPlan.from([update])).toBeUndefined();
  });
});

/** Rows without the empty cells at their ends: whether a row reaches a column is no matter of a file. */
const trimmed = ({ tables, ...rest }: PlanDocument): unknown => ({
  ...rest,
  tables: Object.fromEntries(
    Object.entries(tables).map(([name, table]) => [
      name,
      table && {
        ...table,
        rows: table.rows.map((row) => row.slice(0, row.findLastIndex((text) => text !== '') + 1)),
      },
    ]),
  ),
});

describe('the changes between two documents', () => {
  it('lead from the one to the other, and are taken back as one act', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { minLength: 1, maxLength: 3 }), (from, deeds) => {
        const known = withoutUnknown(from);
        const to = withoutUnknown(deeds.reduce((made, item) => item(made), known));
        const plan = OpenPlan.of(known);
        const before = plan.document;
        expect(before).toEqual(known);
        const changed = plan.change(changesBetween(before, to), 'taken in');
        expect(trimmed(plan.document)).toEqual(trimmed(to));
        if (!changed) return;
        expect(plan.undo.undo()).toBe(true);
        expect(plan.document).toEqual(before);
        expect(plan.undo.redo()).toBe(true);
        expect(trimmed(plan.document)).toEqual(trimmed(to));
      }),
      { numRuns: 200 },
    );
  });
});

/** Holidays of the random documents are no dates: a plan holds none such. */
function withoutUnknown(from: PlanDocument): PlanDocument {
  const { holidays: _, ...rest } = from;
  return rest;
}
