import { MessageChannel } from 'node:worker_threads';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  createInlineEngine,
  createPortEngine,
  serve,
  type Engine,
  type Port,
  type Results,
} from '../../../src/engine/index.js';
import { engineWith } from '../../../src/engine/engine-with.js';
import { BareSession } from '../../../src/engine/incremental/bare-session.js';
import { changeBetween, changed } from '../../../src/engine/incremental/change.js';
import { placesIn } from '../../../src/edits/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { plainly, stepped, steps } from '../../helpers/document-steps.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';

const cases = Number(process.env['INCREMENTAL_CASES'] ?? 12);

interface Wire {
  readonly engine: Engine;
  /** Every message, of either side, with its size as JSON would be. */
  readonly messages: { readonly to: 'engine' | 'page'; readonly data: Record<string, unknown> }[];
  /** Messages for which this says so are lost. */
  lose: (data: Record<string, unknown>) => boolean;
}

function wired(): Wire {
  const { port1, port2 } = new MessageChannel();
  const messages: Wire['messages'] = [];
  const tapped = (port: typeof port1, to: 'engine' | 'page'): Port => ({
    postMessage(message) {
      const data = message as Record<string, unknown>;
      messages.push({ to, data: structuredClone(data) });
      if (!wire.lose(data)) port.postMessage(message);
    },
    addEventListener: (_, listener) => port.on('message', (data) => listener({ data } as never)),
    removeEventListener: () => port.close(),
  });
  serve(tapped(port2, 'page'), engineWith(new BareSession()));
  const wire: Wire = {
    engine: createPortEngine(tapped(port1, 'engine'), () => port1.close()),
    messages,
    lose: () => false,
  };
  return wire;
}

/** A part of the sample, so that verdicts with all their reasons are quick to compare. */
async function smallPlan(): Promise<PlanDocument> {
  const { document } = await createInlineEngine().importFiles(sampleFiles(), emptyDocument);
  const { windows, work } = document.tables;
  return {
    ...document,
    tables: {
      ...document.tables,
      windows: { ...windows, rows: windows.rows.slice(0, 5) },
      work: { ...work, rows: work.rows.slice(0, 16) },
    },
  };
}

const titled = (document: PlanDocument, row: number, title: string): PlanDocument => {
  const { windows } = document.tables;
  const at = windows.columns.indexOf('title');
  const rows = windows.rows.with(row, windows.rows[row]!.with(at, title));
  return { ...document, tables: { ...document.tables, windows: { ...windows, rows } } };
};

const fresh = (document: PlanDocument): Promise<Results> =>
  createInlineEngine().recompute(document);

describe('an engine behind a port', () => {
  it('reads tables beside windows and work from the first document that has them', async () => {
    const start = await smallPlan();
    const { windows, work } = start.tables;
    const { site: _, ...rest } = start;
    const bare = { ...rest, tables: { ...emptyDocument.tables, windows, work } };
    const { engine } = wired();
    for (const document of [bare, start, bare])
      expect(plainly(await engine.recompute(document))).toEqual(plainly(await fresh(document)));
    engine.dispose();
  });

  it('comes to the same as a fresh engine after any edits, whichever calls were given up', async () => {
    const start = await smallPlan();
    await fc.assert(
      fc.asyncProperty(steps, fc.array(fc.boolean()), async (list, givenUp) => {
        const { engine } = wired();
        let document = start;
        let last: Promise<unknown> = engine.recompute(document);
        for (const [at, step] of list.entries()) {
          document = stepped(document, step);
          const stop = new AbortController();
          const asked = engine.recompute(
            document,
            stop.signal,
            at % 2 ? () => undefined : undefined,
          );
          if (givenUp[at]) stop.abort(new Error('another edit came'));
          last = asked.catch(() => undefined);
        }
        await last;
        const found = await engine.recompute(document);
        expect(plainly(found)).toEqual(plainly(await fresh(document)));
        engine.dispose();
      }),
      { numRuns: cases, seed: 7 },
    );
  });

  it('gives the same objects for all that an edit leaves alone', async () => {
    const { engine } = wired();
    const document = await smallPlan();
    const before = await engine.recompute(document);
    const same = await engine.recompute({ ...document, name: 'Another name' });
    expect(same.plan).toBe(before.plan);
    expect(same.ledgers).toBe(before.ledgers);
    expect(same.packages).toBe(before.packages);
    expect(same.faults).toBe(before.faults);
    expect(same.fits).toBe(before.fits);
    const after = await engine.recompute(titled(document, 1, 'Another title'));
    const changedPlaces = (list: (of: Results) => readonly unknown[]): number[] =>
      list(after).flatMap((item, at) => (item === list(before)[at] ? [] : [at]));
    expect(changedPlaces((of) => of.plan.windows)).toEqual([1]);
    expect(changedPlaces((of) => of.ledgers)).toEqual([1]);
    expect(after.plan.activities).toBe(before.plan.activities);
    expect(after.plan.rules).toBe(before.plan.rules);
    expect(after.packages).toBe(before.packages);
    expect(changedPlaces((of) => of.fits)).toEqual(before.packages.map((_, row) => 5 * row + 1));
    engine.dispose();
  });

  it('sends of an edit the row that changed, and of the answer what came of it', async () => {
    const { engine, messages } = wired();
    const { document } = await createInlineEngine().importFiles(sampleFiles(), emptyDocument);
    await engine.recompute(document);
    const bytes = (to: string): number =>
      messages
        .filter((message) => message.to === to)
        .reduce((sum, item) => sum + JSON.stringify(item.data).length, 0);
    const [there, back] = [bytes('engine'), bytes('page')];
    messages.length = 0;
    await engine.recompute(titled(document, 3, 'Another title'));
    expect(bytes('engine')).toBeLessThan(there / 20);
    expect(bytes('page')).toBeLessThan(back / 4);
    engine.dispose();
  });

  it('asks for the document whole where an edit never came', async () => {
    const wire = wired();
    const document = await smallPlan();
    await wire.engine.recompute(document);
    let lost = 0;
    wire.lose = ({ kind }) => kind === 'call' && lost++ === 0;
    void wire.engine.recompute(titled(document, 0, 'Lost')).catch(() => undefined);
    const next = titled(document, 1, 'Arrived');
    expect(plainly(await wire.engine.recompute(next))).toEqual(plainly(await fresh(next)));
    expect(wire.messages.some(({ data }) => data['kind'] === 'again')).toBe(true);
    wire.engine.dispose();
  });

  it('asks once more where an answer never came that the next builds on', async () => {
    const wire = wired();
    const document = await smallPlan();
    await wire.engine.recompute(document);
    let lost = 0;
    wire.lose = ({ kind }) => kind === 'result' && lost++ === 0;
    void wire.engine.recompute(titled(document, 0, 'Lost')).catch(() => undefined);
    const next = titled(document, 1, 'Arrived');
    expect(plainly(await wire.engine.recompute(next))).toEqual(plainly(await fresh(next)));
    wire.engine.dispose();
  });

  it('rejects a call that cannot travel and answers the next', async () => {
    const { engine } = wired();
    const document = await smallPlan();
    await engine.recompute(document);
    const broken = { ...document, name: (() => 'no data') as unknown as string };
    await expect(engine.recompute(broken)).rejects.toThrow();
    const next = titled(document, 2, 'Sound again');
    expect(plainly(await engine.recompute(next))).toEqual(plainly(await fresh(next)));
    engine.dispose();
  });
});

const leaf = fc.oneof(fc.integer(), fc.string(), fc.constant(undefined), fc.constant(null));
const pool = fc.array(fc.dictionary(fc.string({ maxLength: 3 }), leaf, { noNullPrototype: true }), {
  minLength: 1,
  maxLength: 6,
});

const order = fc.uniqueArray(fc.nat(5));

describe('a change', () => {
  it('leads from any value to any other, after a clone of it too', () => {
    const value = fc.letrec((tie) => ({
      any: fc.oneof(
        { maxDepth: 3 },
        leaf,
        fc.array(tie('any'), { maxLength: 4 }),
        fc.dictionary(fc.string({ maxLength: 3 }), tie('any'), {
          maxKeys: 4,
          noNullPrototype: true,
        }),
      ),
    })).any;
    fc.assert(
      fc.property(value, value, (before, after) => {
        const change = structuredClone(changeBetween(before, after));
        expect(changed(before, change)).toStrictEqual(after);
        expect(changeBetween(before, before)).toBe('same');
      }),
    );
  });

  it('keeps what two lists share, wherever it stands in them', () => {
    fc.assert(
      fc.property(pool, order, order, (things, first, second) => {
        const [before, after] = [first, second].map((list) =>
          list.filter((at) => at < things.length).map((at) => things[at]!),
        );
        const made = changed(before, changeBetween(before, after)) as unknown[];
        expect(made).toEqual(after);
        made.forEach((item, at) => expect(item).toBe(after![at]));
        placesIn(before!, after!).forEach((place, at) => {
          if (place >= 0) expect(before![place]).toBe(after![at]);
          else expect(before).not.toContain(after![at]);
        });
      }),
    );
  });
});
