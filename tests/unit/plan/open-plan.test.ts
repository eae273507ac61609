import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import type { TableStep } from '../../../src/plan/index.js';
import { OpenPlan } from '../../../src/plan/open.js';
import {
  emptyPlan,
  withAgreed,
  withoutEarlier,
  type AgreedPlans,
  type PlanDocument,
} from '../../../src/model/index.js';

const columns = ['window', 'start', 'end'];

function small(...rows: string[]): PlanDocument {
  const plan = emptyPlan('Viaduct', 'Europe/London');
  const windows = { file: 'windows.csv', columns, rows: rows.map((row) => row.split(' ')) };
  return { ...plan, tables: { ...plan.tables, windows } };
}

const rowsOf = (plan: OpenPlan): string[] =>
  plan.document.tables.windows.rows.map((row) => row.join(' '));

const onWindows = (plan: OpenPlan, ...steps: TableStep[]): boolean =>
  plan.change({ table: 'windows', of: plan.document.tables.windows, steps }, 'test');

const cell = (row: number, column: number, text: string): TableStep => ({
  cells: [{ row, column, text }],
});

/** Two people with the same plan, whose clocks are set by hand. */
function two(document: PlanDocument): {
  a: OpenPlan;
  b: OpenPlan;
  meet: () => void;
  tick: () => number;
} {
  let clock = 1_000;
  const now = (): number => clock;
  const a = OpenPlan.of(document, { person: { name: 'Ana' }, now });
  const b = OpenPlan.from([a.state()], { person: { name: 'Bo' }, now })!;
  const meet = (): void => {
    const [fromA, fromB] = [a.since(b.vector()), b.since(a.vector())];
    expect(b.incoming(fromA, 'a').refused).toBeUndefined();
    expect(a.incoming(fromB, 'b').refused).toBeUndefined();
    expect(b.document).toEqual(a.document);
  };
  return { a, b, meet, tick: () => (clock += 1_000) };
}

/** An entry of the log of a shift. */
const note = (id: string, at: number) => ({
  id,
  at,
  enteredAt: at,
  by: 'Ana',
  event: { kind: 'note' as const, text: 'fog' },
});

describe('an open plan', () => {
  it('holds the document that it was made of', () => {
    const document = small('W1 22:00', 'W2', 'W3 23:00 x y');
    expect(OpenPlan.of(document).document).toEqual(document);
    expect(OpenPlan.from([OpenPlan.of(document).state()])!.document).toEqual(document);
  });

  it('leaves alone what a cell does not touch', () => {
    const plan = OpenPlan.of(small('W1 22:00', 'W2 23:00'));
    const before = plan.document;
    onWindows(plan, cell(1, 1, '23:30'));
    expect(rowsOf(plan)).toEqual(['W1 22:00', 'W2 23:30']);
    expect(plan.document.tables.work).toBe(before.tables.work);
    expect(plan.document.rules).toBe(before.rules);
    expect(plan.document.tables.windows.rows[0]).toBe(before.tables.windows.rows[0]);
    expect(plan.document.tables.windows.columns).toBe(before.tables.windows.columns);
  });

  it('says that nothing changed where a cell holds what it held', () => {
    const plan = OpenPlan.of(small('W1 22:00'));
    expect(onWindows(plan, cell(0, 1, '22:00'))).toBe(false);
    expect(plan.undo.canUndo).toBe(false);
  });

  it('refuses a place that the table does not have, and changes nothing', () => {
    const plan = OpenPlan.of(small('W1 22:00'));
    const before = plan.document;
    expect(() => onWindows(plan, cell(0, 0, 'X'), cell(0, 3, 'x'))).toThrow(RangeError);
    expect(plan.document).toEqual(before);
    expect(plan.undo.canUndo).toBe(false);
    expect(plan.undo.canRedo).toBe(false);
  });

  it('keeps the work of two people in one row', () => {
    const { a, b, meet } = two(small('W1 22:00 05:00'));
    onWindows(a, cell(0, 1, '22:30'));
    onWindows(b, cell(0, 2, '05:30'));
    meet();
    expect(rowsOf(a)).toEqual(['W1 22:30 05:30']);
    expect(a.kept).toEqual([]);
  });

  it('lets the later of two values in one cell stand, and keeps the other with name and time', () => {
    const { a, b, meet, tick } = two(small('W1 22:00'));
    onWindows(b, cell(0, 1, '22:15'));
    tick();
    onWindows(a, cell(0, 1, '22:30'));
    meet();
    expect(rowsOf(b)).toEqual(['W1 22:30']);
    const [kept] = b.kept;
    expect(b.kept).toHaveLength(1);
    expect(kept).toMatchObject({
      place: 'windows, row 1, start',
      row: 0,
      column: 'start',
      value: '22:15',
      instead: '22:30',
      by: 'Bo',
      at: 1_000,
    });
    a.putBack(a.kept[0]!);
    meet();
    expect(rowsOf(b)).toEqual(['W1 22:15']);
    expect([a.kept, b.kept]).toEqual([[], []]);
    a.undo.undo();
    expect(rowsOf(a)).toEqual(['W1 22:30']);
  });

  it('settles a cell of two values by typing either again, or by letting the other go', () => {
    const { a, b, meet, tick } = two(small('W1 22:00', 'W2 22:00'));
    for (const row of [0, 1]) onWindows(b, cell(row, 1, '22:15'));
    tick();
    for (const row of [0, 1]) onWindows(a, cell(row, 1, '22:30'));
    meet();
    expect(onWindows(b, cell(0, 1, '22:30'))).toBe(true);
    expect(b.kept.map((value) => value.row)).toEqual([1]);
    b.letGo(b.kept[0]!);
    meet();
    expect(a.kept).toEqual([]);
    expect(rowsOf(a)).toEqual(['W1 22:30', 'W2 22:30']);
  });

  it('keeps what was typed into a row that another took away, and puts the row back', () => {
    const { a, b, meet } = two(small('W1 22:00', 'W2 22:00', 'W3 22:00'));
    onWindows(a, cell(1, 2, 'old'));
    meet();
    onWindows(a, { removeRows: [1] });
    onWindows(b, cell(1, 1, '23:00'));
    meet();
    expect(rowsOf(b)).toEqual(['W1 22:00', 'W3 22:00']);
    expect(a.kept).toMatchObject([
      { place: 'windows, a row taken away, start', value: '23:00', instead: undefined, by: 'Bo' },
    ]);
    a.putBack(a.kept[0]!);
    meet();
    expect(rowsOf(b)).toEqual(['W1 22:00', 'W3 22:00', 'W2 23:00']);
    expect(b.kept).toEqual([]);
  });

  it('keeps every row that two people put in, moved and sorted', () => {
    const { a, b, meet } = two(small('D', 'B', 'C', 'A'));
    onWindows(a, { moveRows: [3, 1, 2, 0], to: 0 });
    onWindows(b, { addRows: [['E'], ['F']], at: 2 });
    onWindows(b, { moveRows: [0], to: 6 });
    meet();
    expect([...rowsOf(a)].sort()).toEqual(['A', 'B', 'C', 'D', 'E', 'F']);
    onWindows(b, { moveRows: [0], to: 6 });
    onWindows(a, { moveRows: [0], to: 3 });
    meet();
    expect([...rowsOf(a)].sort()).toEqual(['A', 'B', 'C', 'D', 'E', 'F']);
  });

  it('does not tear apart rows that two people put in at one place', () => {
    const { a, b, meet } = two(small('W1', 'W2'));
    onWindows(a, { addRows: [['a1'], ['a2'], ['a3']], at: 1 });
    onWindows(b, { addRows: [['b1'], ['b2'], ['b3']], at: 1 });
    meet();
    expect(rowsOf(a).join(' ')).toMatch(/W1 (a1 a2 a3 b1 b2 b3|b1 b2 b3 a1 a2 a3) W2/);
  });

  it('finds the row that a person saw, whatever others put in above it meanwhile', () => {
    const { a, b, meet } = two(small('W1 22:00', 'W2 22:00'));
    const saw = a.document.tables.windows;
    onWindows(b, { addRows: [['W0']], at: 0 }, { addColumn: 'note', at: 0 });
    meet();
    a.change({ table: 'windows', of: saw, steps: [cell(1, 1, '23:00')] }, 'typed');
    expect(rowsOf(a)).toEqual([' W0', ' W1 22:00', ' W2 23:00']);
  });

  it('goes on from the table that its maker made of what they saw', () => {
    const plan = OpenPlan.of(small('W1 22:00'));
    const of = plan.document.tables.windows;
    const made = { ...of, rows: [...of.rows, ['W2']] };
    plan.change({ table: 'windows', of, steps: [{ addRows: [['W2']], at: 1 }], made }, 'added');
    plan.change({ table: 'windows', of: made, steps: [cell(1, 0, 'W3')] }, 'typed');
    expect(rowsOf(plan)).toEqual(['W1 22:00', 'W3']);
  });

  it('keeps what two people set in one set of rules', () => {
    const step = { step: 'Take possession', minutes: 30, when: 'always' as const };
    const document = small();
    const rules = { ...document.rules, leadIn: [step, { ...step, step: 'Earth' }] };
    const { a, b, meet } = two({ ...document, rules });
    const of = a.document.rules;
    a.change({ part: ['rules'], from: of, value: { ...of, margin: { minutes: 45 } } }, 'margin');
    a.change(
      {
        part: ['rules'],
        value: { ...a.document.rules, leadIn: [{ ...step, minutes: 40 }, of.leadIn[1]!] },
      },
      'step',
    );
    const theirs = b.document.rules;
    const leadIn = [
      theirs.leadIn[0]!,
      { ...step, step: 'Earth', minutes: 50 },
      { ...step, step: 'Rig' },
    ];
    b.change({ part: ['rules'], from: theirs, value: { ...theirs, leadIn } }, 'steps');
    meet();
    expect(a.document.rules.margin.minutes).toBe(45);
    expect(a.document.rules.leadIn.map((item) => `${item.step} ${item.minutes}`)).toEqual([
      'Take possession 40',
      'Earth 50',
      'Rig 30',
    ]);
    b.change(
      {
        part: ['rules'],
        value: { ...b.document.rules, leadIn: b.document.rules.leadIn.toReversed() },
      },
      'turned',
    );
    meet();
    expect(a.document.rules.leadIn.map((item) => item.step)).toEqual([
      'Rig',
      'Earth',
      'Take possession',
    ]);
  });

  it('lets a whole stand over a field that was set before it in ignorance of it', () => {
    const { a, b, meet, tick } = two(small());
    const setRisk = (plan: OpenPlan, risk: object): void => {
      const { rules } = plan.document;
      plan.change({ part: ['rules'], from: rules, value: { ...rules, risk } }, 'risk');
      tick();
    };
    setRisk(a, { shape: 'triangular', events: [] });
    setRisk(a, { shape: 'triangular', events: [], source: 'Ana' });
    setRisk(b, { shape: 'beta-pert', events: [] });
    meet();
    expect(b.document.rules.risk).toEqual({ shape: 'beta-pert', events: [] });
    expect(b.kept.map((value) => value.value)).toContain('Ana');
  });

  it('keeps both of two plans agreed at once: the later is in force, the other earlier', () => {
    const { a, b, meet, tick } = two(small('W1'));
    const agree = (plan: OpenPlan, name: string): void => {
      const { agreed } = plan.document;
      const next = withAgreed(agreed, { name, agreedAt: tick(), placements: [] });
      plan.change({ part: ['agreed'], from: agreed, value: next }, 'agreed');
    };
    agree(a, 'first');
    meet();
    agree(a, 'by Ana');
    agree(b, 'by Bo');
    meet();
    expect(a.document.agreed?.now?.name).toBe('by Bo');
    expect(a.document.agreed?.earlier.map((item) => item.name).sort()).toEqual(['by Ana', 'first']);
    expect(b.document).toEqual(a.document);
    agree(a, 'third');
    meet();
    expect(b.document.agreed?.now?.name).toBe('third');
    expect(b.document.agreed?.earlier.map((item) => item.name).sort()).toEqual([
      'by Ana',
      'by Bo',
      'first',
    ]);
  });

  it('gives no two agreed plans one number, and takes out only the one that is meant', () => {
    const { a, b, meet, tick } = two(small('W1'));
    const set = (plan: OpenPlan, next: AgreedPlans): void =>
      void plan.change({ part: ['agreed'], from: plan.document.agreed, value: next }, 'agreed');
    const agree = (plan: OpenPlan, name: string): void =>
      set(plan, withAgreed(plan.document.agreed, { name, agreedAt: tick(), placements: [] }));
    const numbers = (plan: OpenPlan): string[] => {
      const { now, earlier } = plan.document.agreed!;
      return [now!, ...earlier].map(({ name, revision }) => `${name} ${revision}`);
    };
    agree(a, 'first');
    meet();
    agree(a, 'Ana');
    agree(b, 'Bo');
    meet();
    expect(numbers(a)).toEqual(['Bo 3', 'Ana 2', 'first 1']);
    expect(numbers(b)).toEqual(numbers(a));
    // Both again, before they hear of each other; one of them takes an earlier plan out.
    agree(a, 'Ana again');
    set(b, withoutEarlier(b.document.agreed!, 2));
    expect(numbers(b)).toEqual(['Bo 3', 'first 1']);
    agree(b, 'Bo again');
    meet();
    expect(numbers(b)).toEqual(numbers(a));
    expect(numbers(a)).toEqual(
      expect.arrayContaining(['Bo again 5', 'Ana again 4', 'Bo 3', 'first 1']),
    );
    expect(numbers(a).filter((text) => text.startsWith('Bo 3'))).toHaveLength(1);
  });

  it('undoes and makes again only what was done here', () => {
    const { a, b, meet, tick } = two(small('W1 22:00', 'W2 22:00'));
    onWindows(a, cell(0, 1, '22:30'));
    onWindows(a, cell(1, 1, '22:40'));
    meet();
    tick();
    onWindows(b, cell(1, 1, '22:50'));
    onWindows(b, { addRows: [['W3']], at: 2 });
    meet();
    // Another's value stands over the last act: nothing of it is left to take back.
    expect(a.undo.undo()).toBe(false);
    meet();
    expect(rowsOf(a)).toEqual(['W1 22:30', 'W2 22:50', 'W3']);
    expect(a.undo.undo()).toBe(true);
    meet();
    expect(rowsOf(b)).toEqual(['W1 22:00', 'W2 22:50', 'W3']);
    expect(a.undo.redo()).toBe(true);
    meet();
    expect(rowsOf(b)).toEqual(['W1 22:30', 'W2 22:50', 'W3']);
    expect(a.kept).toEqual([]);
  });

  it('tells what was done, by whom, and what came from others', () => {
    const { a, b, meet } = two(small('W1 22:00'));
    const told: string[] = [];
    a.onChange(({ own, label, by, origin }) =>
      told.push(`${own} ${label} ${by.join()} ${own ? '' : String(origin)}`),
    );
    a.change({ part: ['name'], value: 'Deck' }, 'named');
    onWindows(b, cell(0, 1, '23:00'));
    meet();
    a.undo.undo();
    expect(told[0]).toBe('true named Ana ');
    expect(told[1]).toBe('false  Bo b');
    expect(told[2]).toMatch(/^true /);
    expect(a.document.name).toBe('Viaduct');
  });

  it('adds the entries of two logs up, each once, and never undoes them', () => {
    const { a, b, meet } = two(small('W1'));
    a.addShift('W1', [note('x', 5)]);
    b.addShift('W1', [note('y', 4), note('x', 5)]);
    meet();
    expect(a.shift('W1').map((record) => record.id)).toEqual(['y', 'x']);
    expect(b.shift('W1')).toEqual(a.shift('W1'));
    expect(a.undo.undo()).toBe(false);
    expect(a.shift('W1')).toHaveLength(2);
    expect(a.shift('W2')).toEqual([]);
  });

  it('leaves out of a log what no log could hold, and keeps it in the plan', () => {
    const { a, b, meet } = two(small('W1'));
    const odd = [
      { ...note('late', 5), enteredAt: 'five' },
      { ...note('what', 5), event: { kind: 'gone home' } },
      { ...note('more', 5), colour: 'red' },
      { id: 'bare', at: 5 },
    ];
    a.addShift('W1', [...odd, note('x', 5)] as ReturnType<typeof note>[]);
    meet();
    expect(b.shift('W1')).toEqual([note('x', 5)]);
    expect([...b.doc.getMap('shift').keys()]).toHaveLength(5);
  });

  it('takes up the acts of an earlier opening, undone ones too', () => {
    const plan = OpenPlan.of(small('W1 22:00'));
    onWindows(plan, cell(0, 1, '1'));
    onWindows(plan, cell(0, 1, '2'));
    plan.undo.undo();
    onWindows(plan, { removeRows: [0] });
    plan.undo.undo();
    const steps = JSON.parse(JSON.stringify(plan.undo.steps)) as typeof plan.undo.steps;
    const again = OpenPlan.from([plan.state()], { keepAll: true })!;
    again.undo.resume(steps);
    expect(again.undo.redoLabel).toBe('test');
    expect(again.undo.redo()).toBe(true);
    expect(rowsOf(again)).toEqual([]);
    expect(again.undo.undo()).toBe(true);
    expect(rowsOf(again)).toEqual(['W1 1']);
    expect(again.undo.undo()).toBe(true);
    expect(rowsOf(again)).toEqual(['W1 22:00']);
    expect(again.undo.canUndo).toBe(false);
  });

  it('opens a state whose tables hold their rows as lists', () => {
    const plan = OpenPlan.of(small('W1 22:00', 'W2 23:00'));
    onWindows(plan, cell(1, 1, '23:30'));
    const doc = new Y.Doc();
    Y.applyUpdate(doc, plan.state());
    const values = doc.getMap<[{ rows: string }, ...unknown[]]>('values');
    for (const [key, [held, ...rest]] of values.entries())
      if (key.startsWith('t/'))
        values.set(key, [{ ...held, rows: JSON.parse(held.rows) as never }, ...rest]);
    const opened = OpenPlan.from([Y.encodeStateAsUpdate(doc)])!;
    expect(opened.document).toEqual(plan.document);
    expect(rowsOf(opened)).toEqual(['W1 22:00', 'W2 23:30']);
  });

  it('keeps the cells typed into a table that another replaced', () => {
    const { a, b, meet } = two(small('W1 22:00'));
    const whole = { file: 'other.csv', columns: ['window'], rows: [['N1'], ['N2']] };
    a.change({ table: 'windows', whole }, 'import');
    onWindows(b, cell(0, 1, '23:00'));
    meet();
    expect(rowsOf(b)).toEqual(['N1', 'N2']);
    expect(b.kept).toMatchObject([
      { value: '23:00', by: 'Bo', place: 'a table that was replaced' },
    ]);
    a.undo.undo();
    meet();
    expect(rowsOf(b)).toEqual(['W1 23:00']);
  });
});
