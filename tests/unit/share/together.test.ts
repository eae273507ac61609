import { spawn, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { OpenPlan } from '../../../src/plan/open.js';
import { emptyPlan, type PlanDocument } from '../../../src/model/index.js';
import { cli, root } from '../../helpers/cli.js';
import { numbers } from '../../helpers/numbers.js';
import { until } from './support/desk.js';
import { newFolder } from './support/server.js';
import { sharedDesk, type SharedDesk } from './support/shared-desk.js';

// A model that shares nothing with the merge: which rows each desk put in and has not taken back, and which entries of the
// log it wrote. At the end every desk must have exactly those.

const steps = 60;
const seeds = Number(process.env['SHARE_SEEDS'] ?? 2);
const log = 'N1@0';

const running: ChildProcess[] = [];
afterEach(() => {
  for (const item of running.splice(0)) item.kill('SIGKILL');
});
beforeAll(() => void cli('--version'));

interface Server {
  readonly address: string;
  readonly port: number;
  kill(): Promise<void>;
}

async function start(folder: string, port = 0): Promise<Server> {
  const words = ['scripts/cli.mjs', 'share', '--folder', folder, '--port', String(port)];
  const child = spawn('node', words, { cwd: root });
  running.push(child);
  let out = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (data) => (out += String(data)));
  let ended = false;
  const end = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  void end.then(() => (ended = true));
  while (!out.includes('Ctrl+C') && !ended) await new Promise((done) => setTimeout(done, 10));
  const at = /ws:\/\/127\.0\.0\.1:(\d+)/.exec(out);
  if (!at) throw new Error(`the server did not start: ${out}`);
  return {
    address: at[0],
    port: Number(at[1]),
    kill: () => {
      child.kill('SIGKILL');
      return end;
    },
  };
}

function start0(): PlanDocument {
  const plan = emptyPlan('Bridge deck', 'Europe/London');
  const windows = { ...plan.tables.windows, columns: ['window', 'title'], rows: [['N0', 'first']] };
  return { ...plan, tables: { ...plan.tables, windows } };
}

/** The plan as text; the order of its parts says nothing. */
const textOf = ({ document }: OpenPlan): string =>
  JSON.stringify(Object.entries(document).sort(([a], [b]) => (a < b ? -1 : 1)));

const rowsOf = ({ document }: OpenPlan): readonly (readonly string[])[] =>
  document.tables.windows.rows;
const idsOf = (plan: OpenPlan): readonly string[] => rowsOf(plan).map(([id]) => id!);

/** One person: their desk, what they put in, and what of it they took back. */
class Person {
  readonly standing: string[] = [];
  readonly undone: string[] = [];
  readonly entries: string[] = [];
  readonly #desk: SharedDesk;
  readonly #name: string;
  #count = 0;

  constructor(name: string, desk: SharedDesk) {
    this.#name = name;
    this.#desk = desk;
  }

  step(pick: (below: number) => number): void {
    const { plan } = this.#desk;
    const others = idsOf(plan)
      .filter((id) => !id.startsWith(this.#name))
      .sort();
    this.#act(pick);
    const after = idsOf(plan)
      .filter((id) => !id.startsWith(this.#name))
      .sort();
    expect(after, 'rows of others are as they were').toEqual(others);
    expect(
      idsOf(plan)
        .filter((id) => id.startsWith(this.#name))
        .sort(),
    ).toEqual([...this.standing].sort());
  }

  #act(pick: (below: number) => number): void {
    const { plan } = this.#desk;
    switch (pick(8)) {
      case 0:
        if (plan.undo.canUndo && plan.undo.undo()) this.undone.push(this.standing.pop()!);
        return;
      case 1:
        if (plan.undo.canRedo && plan.undo.redo()) this.standing.push(this.undone.pop()!);
        return;
      case 2: {
        const id = `${this.#name}-${(this.#count += 1)}`;
        const at = this.#count;
        const event = { kind: 'note' as const, text: '' };
        plan.addShift(log, [{ id, at, enteredAt: at, by: this.#name, event }]);
        this.entries.push(id);
        return;
      }
      case 3:
        return this.#desk.cut();
      case 4:
        return this.#desk.mend();
      default: {
        const id = `${this.#name}-${(this.#count += 1)}`;
        const at = pick(rowsOf(plan).length + 1);
        plan.change({ table: 'windows', steps: [{ addRows: [[id, 'new']], at }] }, id);
        this.standing.push(id);
        this.undone.length = 0;
      }
    }
  }
}

const rest = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

describe('three desks and a server', () => {
  it.each(Array.from({ length: seeds }, (_, seed) => seed + 1))(
    'have the same plan after 60 steps each, cut off and joined at random, the server killed meanwhile (seed %i)',
    async (seed) => {
      const pick = numbers(seed);
      const folder = newFolder();
      let server = await start(folder);
      const { write: token } = JSON.parse(readFileSync(join(folder, 'tokens.json'), 'utf8')) as {
        write: string;
      };
      const where = { address: server.address, token };
      const first = OpenPlan.of(start0());
      const state = first.state();
      const plans = [first, OpenPlan.from([state])!, OpenPlan.from([state])!];
      const desks = plans.map((plan) => sharedDesk(plan, 'plan-1', where));
      const people = desks.map((desk, k) => new Person(`P${k}`, desk));
      for (let step = 0; step < steps; step += 1) {
        for (const person of people) person.step(pick);
        if (step === 20 || step === 40) {
          await server.kill();
          server = await start(folder, server.port);
        }
        await rest(pick(10));
      }
      for (const desk of desks) desk.mend();
      const texts = (): string[] => plans.map(textOf);
      await until(
        () => desks.every(({ link }) => link.isWhole) && new Set(texts()).size === 1,
        'the same plan at every desk',
      );
      const standing = ['N0', ...people.flatMap((person) => person.standing)].sort();
      const entries = people.flatMap((person) => person.entries).sort();
      for (const plan of plans) {
        expect([...idsOf(plan)].sort()).toEqual(standing);
        expect(
          plan
            .shift(log)
            .map(({ id }) => id)
            .sort(),
        ).toEqual(entries);
      }
      await server.kill();
      server = await start(folder, server.port);
      const late = sharedDesk(OpenPlan.from([state])!, 'plan-1', where);
      await until(() => textOf(late.plan) === texts()[0], 'the same from the disk');
    },
  );
});
