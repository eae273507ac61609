// Three browsers that change one plan at random over ways that fail, and the server as its verb runs it, killed meanwhile.
// The model shares nothing with the merge: which rows each person put in and has not taken back.
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import type { Page } from 'puppeteer-core';
import { afterAll, describe, expect, it } from 'vitest';
import { emptyPlan, type PlanDocument } from '../../src/model/index.js';
import { numbers } from '../helpers/numbers.js';
import { guardedPage } from './guarded-page.js';
import { says, sharingServer } from './sharing-server.js';

const steps = 60;
const pages = guardedPage();
const server = sharingServer();

/** A way to the server that can be cut off and joined again. */
interface Way {
  readonly address: string;
  isCut: boolean;
  cut(): void;
}

const closing: (() => void)[] = [];
afterAll(() => {
  for (const close of closing) close();
});

async function wayTo(port: number): Promise<Way> {
  const sockets = new Set<Socket>();
  const drop = (): void => {
    for (const socket of sockets) socket.destroy();
    sockets.clear();
  };
  const proxy = createServer((near) => {
    if (way.isCut) return void near.destroy();
    const far = connect(port, '127.0.0.1');
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(one);
      one.on('error', () => other.destroy());
      one.on('close', () => other.destroy());
      one.pipe(other);
    }
  });
  const way: Way = {
    address: '',
    isCut: false,
    cut: () => {
      way.isCut = true;
      drop();
    },
  };
  await new Promise<void>((resolve) => proxy.listen(0, '127.0.0.1', resolve));
  closing.push(() => {
    drop();
    proxy.close();
  });
  return Object.assign(way, {
    address: `ws://127.0.0.1:${(proxy.address() as AddressInfo).port}`,
  });
}

function small(): PlanDocument {
  const plan = emptyPlan('Bridge deck', 'Europe/London');
  const windows = { ...plan.tables.windows, columns: ['window', 'title'], rows: [['N0', 'first']] };
  return { ...plan, tables: { ...plan.tables, windows } };
}

const idsOf = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    document.querySelector('possession-desk')!.document!.tables.windows.rows.map((row) => row[0]!),
  );

/** The plan as text; the order of its parts says nothing. */
const textOf = (page: Page): Promise<string> =>
  page.evaluate(() =>
    JSON.stringify(
      Object.entries(document.querySelector('possession-desk')!.document!).sort(([a], [b]) =>
        a < b ? -1 : 1,
      ),
    ),
  );

/** One person at a browser, and which rows they put in and have not taken back. */
class Person {
  readonly standing: string[] = [];
  readonly page: Page;
  readonly way: Way;
  readonly #name: string;
  #count = 0;

  constructor(name: string, page: Page, way: Way) {
    this.#name = name;
    this.page = page;
    this.way = way;
  }

  async step(pick: (below: number) => number): Promise<void> {
    const act = pick(6);
    if (act === 0) return this.#undo();
    if (act === 1) return this.way.cut();
    if (act === 2) return void (this.way.isCut = false);
    const id = `${this.#name}-${(this.#count += 1)}`;
    await this.page.evaluate(
      (text, place) => {
        const desk = document.querySelector('possession-desk')!;
        const at = place % (desk.document!.tables.windows.rows.length + 1);
        desk.change({ table: 'windows', steps: [{ addRows: [[text, 'new']], at }] }, text);
      },
      id,
      pick(1_000),
    );
    this.standing.push(id);
  }

  /** Undo takes back what this person did last, and nothing of the others. */
  async #undo(): Promise<void> {
    const { before, label, after } = await this.page.evaluate(() => {
      const desk = document.querySelector('possession-desk')!;
      const ids = (): string[] => desk.document!.tables.windows.rows.map((row) => row[0]!);
      const found = { before: ids(), label: desk.undoLabel };
      desk.undo();
      return { ...found, after: ids() };
    });
    const last = this.standing.pop();
    if (last === undefined) return expect(after).toEqual(before);
    expect(label).toBe(last);
    expect(after).toEqual(before.filter((id) => id !== last));
  }
}

describe('three browsers and a server', () => {
  it('have the same plan after 60 steps each, cut off and joined at random, the server killed meanwhile', async () => {
    const pick = numbers(7);
    const { write } = server.tokens();
    const people: Person[] = [];
    for (const name of ['Mara', 'Jon', 'Ida']) {
      const { page } = await pages.open();
      people.push(new Person(name, page, await wayTo(server.port())));
    }
    const [first, ...others] = people as [Person, Person, Person];
    await first.page.evaluate(
      (plan) => document.querySelector('possession-desk')!.adopt(plan),
      small(),
    );
    await server.ask(first.page, 'Mara', write, 'share', first.way.address);
    await says(first.page, 'Shared');
    for (const other of others)
      await server.openFromThere(other.page, 'other', write, other.way.address);
    for (let step = 0; step < steps; step += 1) {
      await Promise.all(people.map((person) => person.step(pick)));
      if (step === 30) {
        server.kill();
        await server.again();
      }
    }
    for (const { way } of people) way.isCut = false;
    const standing = ['N0', ...people.flatMap((person) => person.standing)].sort();
    expect(standing.length).toBeGreaterThan(steps);
    for (const { page } of people)
      await page.waitForFunction(
        (wanted) =>
          document
            .querySelector('possession-desk')!
            .document!.tables.windows.rows.map((row) => row[0]!)
            .sort()
            .join() === wanted,
        {},
        standing.join(),
      );
    const order = await idsOf(first.page);
    for (const { page } of others) {
      expect(await idsOf(page)).toEqual(order);
      expect(await textOf(page)).toBe(await textOf(first.page));
    }
  });
});
