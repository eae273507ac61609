import { describe, expect, it } from 'vitest';
import type {
  Engine,
  HandbackProgress,
  ImportedFile,
  Results,
  RuleChange,
} from '../../src/engine/index.js';
import { emptyDocument, sampleFiles } from './sample.js';

const file = (name: string, text: string): ImportedFile => ({
  name,
  bytes: new TextEncoder().encode(text),
});

/** What every engine must do, wherever it runs. */
export function engineContract(name: string, create: () => Engine): void {
  describe(`${name} engine`, () => {
    it('reads the sample files, each as what it is, without a fault', async () => {
      const engine = create();
      const { document, report } = await engine.importFiles(sampleFiles(), emptyDocument);
      expect(report.map((item) => item.kind)).toEqual([
        'windows',
        'work',
        'resources',
        'trains',
        'rules',
      ]);
      expect(report.flatMap((item) => item.faults)).toEqual([]);
      expect(document.tables.windows.rows.length).toBe(report[0]!.rows);
      engine.dispose();
    });

    it('gives a ledger for every window that sums to its gross, and a verdict for every package and window', async () => {
      const engine = create();
      const { document } = await engine.importFiles(sampleFiles(), emptyDocument);
      const results = await engine.recompute(document);
      expect(results.faults.filter((fault) => fault.severity === 'error')).toEqual([]);
      expect(results.ledgers.length).toBe(results.plan.windows.length);
      for (const ledger of results.ledgers) {
        expect(ledger.rows.reduce((sum, row) => sum + row.minutes, 0)).toBe(ledger.grossMinutes);
      }
      expect(results.fits.length).toBe(results.plan.windows.length * results.packages.length);
      engine.dispose();
    });

    it('tells of the windows before the verdicts are worked out', async () => {
      const engine = create();
      const { document } = await engine.importFiles(sampleFiles(), emptyDocument);
      const heard: Results[] = [];
      const results = await engine.recompute(document, undefined, (item) => heard.push(item));
      expect(heard).toEqual([{ ...results, fits: [] }]);
      engine.dispose();
    });

    it('tells of each handback as it is worked out, and of all in plan order', async () => {
      const engine = create();
      const { document } = await engine.importFiles(
        [
          file(
            'windows.csv',
            'window,start,end\nW1,2027-03-02 23:00,05:00\nW2,2027-03-03 23:00,05:00\n',
          ),
          file('work.csv', 'package,activity,minutes\nP,A1,200\nP,A2,200\n'),
        ],
        emptyDocument,
      );
      const { plan } = await engine.recompute(document);
      const placements = plan.windows.map((window, index) => ({
        activity: `A${index + 1}`,
        window: window.id,
        from: window.start,
        to: window.start + 200 * 60_000,
      }));
      const heard: HandbackProgress[] = [];
      const found = await engine.handback(
        document,
        { placements, seed: 1, runs: 100 },
        undefined,
        (item) => heard.push(item),
      );
      expect(found.map((result) => [result.window, result.marginMinutes])).toEqual([
        ['W1', 160],
        ['W2', 160],
      ]);
      expect(heard.map(({ done, total, latest }) => [done, total, latest])).toEqual(
        found.map((result, index) => [index + 1, 2, result]),
      );
      engine.dispose();
    });

    it('tells what other rules do to the windows before it tells of the fits', async () => {
      const engine = create();
      const { document } = await engine.importFiles(sampleFiles(), emptyDocument);
      const rules = { ...document.rules, margin: { minutes: document.rules.margin.minutes + 90 } };
      const heard: RuleChange[] = [];
      const change = await engine.compareRules(document, rules, undefined, (item) =>
        heard.push(item),
      );
      expect(heard).toEqual([{ ...change, fits: null }]);
      expect(change.windows.some((window) => window.minutes < 0)).toBe(true);
      expect(change.fits?.lost.length).toBeGreaterThan(0);
      engine.dispose();
    });

    it('keeps every cell of a faulty file and says what is wrong with it', async () => {
      const engine = create();
      const csv =
        'window;start;end;my own note\nW1;2027-02-31 23:00;2027-03-01 05:00;keep me\nW2;2027-03-02 23:00;05:00;\n';
      const { document, report } = await engine.importFiles([file('w.csv', csv)], emptyDocument);
      expect(report[0]).toMatchObject({
        kind: 'windows',
        delimiter: ';',
        unmatched: ['my own note'],
      });
      expect(report[0]!.faults[0]).toMatchObject({
        code: 'heading-not-read',
        line: 1,
        column: 'my own note',
      });
      expect(report[0]!.faults[1]).toMatchObject({
        severity: 'error',
        line: 2,
        column: 'start',
        value: '2027-02-31 23:00',
      });
      expect(document.tables.windows.rows[0]).toEqual([
        'W1',
        '2027-02-31 23:00',
        '2027-03-01 05:00',
        'keep me',
      ]);
      expect((await engine.recompute(document)).plan.windows).toEqual([]);
      const { windows } = document.tables;
      const results = await engine.recompute({
        ...document,
        tables: { ...document.tables, windows: { ...windows, unread: ['my own note'] } },
      });
      expect(results.plan.windows.map((window) => window.id)).toEqual(['W2']);
      engine.dispose();
    });

    it('leaves the document as it was when a file is of no known kind', async () => {
      const engine = create();
      const { document, report } = await engine.importFiles(
        [file('x.csv', 'colour,shape\nred,round\n')],
        emptyDocument,
      );
      expect(document).toEqual(emptyDocument);
      expect(report[0]).toMatchObject({
        kind: 'unknown',
        faults: [{ code: 'table-not-recognised' }],
      });
      engine.dispose();
    });

    it('rejects an aborted call with its reason and answers the next', async () => {
      const engine = create();
      const reason = new Error('changed my mind');
      await expect(engine.recompute(emptyDocument, AbortSignal.abort(reason))).rejects.toThrow(
        'changed my mind',
      );
      await expect(engine.recompute(emptyDocument)).resolves.toMatchObject({ fits: [] });
      engine.dispose();
    });

    it('rejects what is asked after it was disposed of', async () => {
      const engine = create();
      engine.dispose();
      await expect(engine.recompute(emptyDocument)).rejects.toThrow('disposed');
    });

    it('finds a checked plan for a small case', async () => {
      const engine = create();
      const { document } = await engine.importFiles(
        [
          file(
            'windows.csv',
            'window,start,end\nW1,2027-03-02 23:00,05:00\nW2,2027-03-03 23:00,05:00\n',
          ),
          file(
            'work.csv',
            'package,activity,after,minutes,resources\nP,A1,,200,crew:1\nP,A2,A1,200,crew:1\n',
          ),
          file('resources.csv', 'resource,capacity\ncrew,1\n'),
        ],
        emptyDocument,
      );
      const found = await engine.allocate(document, { seconds: 2 });
      expect(found.placements.map((placement) => [placement.activity, placement.window])).toEqual([
        ['A1', 'W1'],
        ['A2', 'W2'],
      ]);
      expect(found.certificate).toMatchObject({ verified: true, proven: true });
      engine.dispose();
    });

    it('makes a plan to a chance, and says what each window reaches', async () => {
      const engine = create();
      const { document } = await engine.importFiles(
        [
          file('windows.csv', 'window,start,end\nW1,2027-03-07 23:00,2027-03-08 05:00\n'),
          file('work.csv', 'package,activity,minutes,minutes low,minutes high\nP,A1,100,80,150\n'),
        ],
        emptyDocument,
      );
      const made = await engine.allocateToChance(document, { chance: 0.9, runs: 20_000, seed: 1 });
      expect(made.windows).toMatchObject([{ window: 'W1', reached: true }]);
      expect(made.allocation.certificate.verified).toBe(true);
      engine.dispose();
    });
  });
}
