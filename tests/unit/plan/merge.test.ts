// Three people change one plan and exchange what they did in any order. They must end with the same plan, and with the
// one that a second reckoning comes to: it shares no code with the plan, keeps every act ever made with what its maker
// had seen by then, and asks of each place which acts nobody had seen who acted on it later.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OpenPlan } from '../../../src/plan/open.js';
import { emptyPlan, type PlanDocument } from '../../../src/model/index.js';

const width = 3;
const firstRows = 4;

function start(): PlanDocument {
  const plan = emptyPlan('Viaduct', 'Europe/London');
  const rows = Array.from({ length: firstRows }, (_, at) => [`r${at}`, '', '']);
  const work = { file: 'work.csv', columns: ['id', 'one', 'two'], rows };
  return { ...plan, tables: { ...plan.tables, work } };
}

/** Something done to a row, which its first cell names. */
type Act = { readonly at: number; readonly who: number; readonly seen: ReadonlySet<Act> } & (
  | { readonly kind: 'cell'; readonly row: string; readonly column: number; readonly text: string }
  | { readonly kind: 'place' | 'gone'; readonly row: string }
  | { readonly kind: 'margin' | 'step'; readonly minutes: number }
);

const deed = fc.record({
  who: fc.nat(2),
  kind: fc.constantFrom(
    'cell',
    'cell',
    'cell',
    'add',
    'gone',
    'move',
    'sort',
    'margin',
    'step',
    'meet',
    'meet',
  ),
  row: fc.nat(30),
  column: fc.integer({ min: 1, max: width - 1 }),
  with: fc.nat(2),
  to: fc.nat(30),
});

describe('what three people did', () => {
  it('ends the same everywhere, and as a second reckoning has it', () => {
    fc.assert(
      fc.property(fc.array(deed, { minLength: 5, maxLength: 60 }), (deeds) => {
        let clock = 0;
        const now = (): number => (clock += 1);
        const first = OpenPlan.of(start(), { person: { name: 'p0' }, now });
        const plans = [first];
        for (const name of ['p1', 'p2'])
          plans.push(OpenPlan.from([first.state()], { person: { name }, now })!);
        const known = plans.map(() => new Set<Act>());
        const all: Act[] = [];
        const done = (who: number, act: DistributiveOmit<Act, 'at' | 'who' | 'seen'>): void => {
          const made = { ...act, at: all.length, who, seen: new Set(known[who]) } as Act;
          all.push(made);
          known[who]!.add(made);
        };
        let rows = 0;
        for (const { who, kind, row, column, with: other, to } of deeds) {
          const plan = plans[who]!;
          const table = plan.document.tables.work;
          const names = table.rows.map((item) => item[0]!);
          const at = names.length === 0 ? 0 : row % names.length;
          const step = (item: Parameters<OpenPlan['change']>[0]): void =>
            void plan.change(item, kind);
          const here = { table: 'work', of: table } as const;
          if (kind === 'cell' && names.length > 0) {
            const text = `${who}.${all.length}`;
            step({ ...here, steps: [{ cells: [{ row: at, column, text }] }] });
            done(who, { kind: 'cell', row: names[at]!, column, text });
          } else if (kind === 'add') {
            const name = `n${(rows += 1)}`;
            step({ ...here, steps: [{ addRows: [[name]], at: to % (names.length + 1) }] });
            done(who, { kind: 'place', row: name });
          } else if (kind === 'gone' && names.length > 0) {
            step({ ...here, steps: [{ removeRows: [at] }] });
            done(who, { kind: 'gone', row: names[at]! });
          } else if (kind === 'move' && names.length > 0) {
            step({ ...here, steps: [{ moveRows: [at], to: to % (names.length + 1) }] });
            done(who, { kind: 'place', row: names[at]! });
          } else if (kind === 'sort' && names.length > 0) {
            const order = names.map((_, k) => k).sort((a, b) => (names[a]! < names[b]! ? -1 : 1));
            step({ ...here, steps: [{ moveRows: order, to: 0 }] });
            for (const name of names) done(who, { kind: 'place', row: name });
          } else if (kind === 'margin' || kind === 'step') {
            const { rules } = plan.document;
            const minutes = all.length + 1;
            const value =
              kind === 'margin'
                ? { ...rules, margin: { minutes } }
                : { ...rules, source: String(minutes) };
            step({ part: ['rules'], from: rules, value });
            done(who, { kind, minutes });
          } else if (kind === 'meet' && who !== other) {
            const from = plans[other]!;
            expect(plan.incoming(from.since(plan.vector()), other).refused).toBeUndefined();
            for (const act of known[other]!) known[who]!.add(act);
          }
          // What is kept is remembered from one act to the next: it is asked for on the way too.
          expect(plan.kept).toBe(plan.kept);
        }
        for (const from of plans)
          for (const to of plans) if (from !== to) to.incoming(from.since(to.vector()), 'end');
        for (const plan of plans) {
          expect(plan.document).toEqual(first.document);
          expect(plan.kept.map((value) => value.id)).toEqual(first.kept.map((value) => value.id));
        }
        // A fresh reader of all that was written comes to the same.
        const fresh = OpenPlan.from([plans[2]!.state()])!;
        expect(fresh.document).toEqual(first.document);
        expect(fresh.kept.map((value) => value.id)).toEqual(first.kept.map((value) => value.id));
        compare(first, all);
      }),
      { numRuns: 150 },
    );
  });

  it('is taken back by nobody but who did it', () => {
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 25 }), (deeds) => {
        let clock = 0;
        const now = (): number => (clock += 1);
        const a = OpenPlan.of(start(), { now });
        const b = OpenPlan.from([a.state()], { now })!;
        // Each types into a column of their own, so that what is undone can be told apart.
        const typed = { a: 0, b: 0 };
        for (const { who, row, kind } of deeds) {
          const [plan, column] = who === 0 ? ([a, 1] as const) : ([b, 2] as const);
          const other = plan === a ? b : a;
          if (kind === 'meet') other.incoming(plan.since(other.vector()), 'x');
          else {
            const at = row % firstRows;
            const of = plan.document.tables.work;
            const cells = [{ row: at, column, text: `${all(typed)}` }];
            if (plan.change({ table: 'work', of, steps: [{ cells }] }, 'typed'))
              typed[plan === a ? 'a' : 'b'] += 1;
          }
        }
        const columnOf = (plan: OpenPlan, column: number): string[] =>
          plan.document.tables.work.rows.map((row) => row[column]!);
        b.incoming(a.since(b.vector()), 'x');
        a.incoming(b.since(a.vector()), 'x');
        const theirs = columnOf(a, 2);
        const mine = columnOf(a, 1);
        for (let step = 0; step < typed.a; step += 1) expect(a.undo.undo()).toBe(true);
        expect(a.undo.undo()).toBe(false);
        expect(columnOf(a, 1)).toEqual(['', '', '', '']);
        expect(columnOf(a, 2)).toEqual(theirs);
        for (let step = 0; step < typed.a; step += 1) expect(a.undo.redo()).toBe(true);
        expect(columnOf(a, 1)).toEqual(mine);
        b.incoming(a.since(b.vector()), 'x');
        expect(b.document).toEqual(a.document);
        expect(b.kept).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});

type DistributiveOmit<T, K extends string> = T extends unknown ? Omit<T, K> : never;
const all = ({ a, b }: { a: number; b: number }): string => `t${a + b + 1}`;

/** Acts of a list that no other act of it was made in sight of. */
const unseen = <T extends Act>(acts: readonly T[]): T[] =>
  acts.filter((act) => !acts.some((other) => other.seen.has(act)));

function compare(plan: OpenPlan, acts: readonly Act[]): void {
  const shown = new Map(plan.document.tables.work.rows.map((row) => [row[0]!, row]));
  const { rows } = plan.document.tables.work;
  expect(shown.size, 'each row once').toBe(rows.length);
  const names = new Set(acts.flatMap((act) => (act.kind === 'place' ? [act.row] : [])));
  for (let at = 0; at < firstRows; at += 1) names.add(`r${at}`);
  let kept = 0;
  for (const name of names) {
    const ofRow = acts.filter((act) => 'row' in act && act.row === name);
    const gone = ofRow.filter((act) => act.kind === 'gone');
    const placed = ofRow.filter((act) => act.kind === 'place');
    // A row is there while some place that it was given was not taken away by anybody who knew of it.
    const ends = [...gone, ...placed];
    const held = placed.filter((act) => !ends.some((other) => other.seen.has(act)));
    const untouched = name.startsWith('r') && ends.length === 0;
    expect(shown.has(name), `${name} is there`).toBe(held.length > 0 || untouched);
    for (let column = 1; column < width; column += 1) {
      const writes = ofRow.filter((act) => act.kind === 'cell' && act.column === column);
      const cleared = gone;
      const left = unseen(writes as Extract<Act, { kind: 'cell' }>[]).filter(
        (item) => !cleared.some((other) => other.seen.has(item)),
      );
      left.sort((a, b) => b.at - a.at);
      const row = shown.get(name);
      if (row) {
        expect(row[column] ?? '', `${name} ${column}`).toBe(left[0]?.text ?? '');
        kept += Math.max(0, left.length - 1);
      } else kept += left.length;
    }
  }
  for (const kind of ['margin', 'step'] as const) {
    const left = unseen(
      acts.filter((act) => act.kind === kind) as Extract<Act, { minutes: number }>[],
    );
    left.sort((a, b) => b.at - a.at);
    const { margin, source } = plan.document.rules;
    const stands = kind === 'margin' ? margin.minutes : Number(source ?? 0);
    expect(stands, kind).toBe(left[0]?.minutes ?? 0);
    kept += Math.max(0, left.length - 1);
  }
  expect(plan.kept.length, 'all that does not stand is kept').toBe(kept);
}
