import { expect } from '@open-wc/testing';
import {
  createInlineEngine,
  createWorkerEngine,
  type ImportedFile,
} from '../../src/engine/index.js';
import { emptyPlan } from '../../src/model/index.js';

const empty = emptyPlan('Test', 'Europe/London');

async function sampleFiles(): Promise<ImportedFile[]> {
  const names = [
    'windows.csv',
    'work.csv',
    'resources.csv',
    'trains.csv',
    'rules/electrified-two-track.json',
  ];
  return Promise.all(
    names.map(async (name) => {
      const answer = await fetch(`/sample-csv/${name}`);
      return { name: name.replace(/^.*\//, ''), bytes: new Uint8Array(await answer.arrayBuffer()) };
    }),
  );
}

describe('the engine in a worker', () => {
  it('answers as the inline engine does', async () => {
    const [worker, inline] = [createWorkerEngine(), createInlineEngine()];
    const files = await sampleFiles();
    const { document } = await worker.importFiles(files, empty);
    expect(await worker.recompute(document)).to.deep.equal(await inline.recompute(document));
    worker.dispose();
  });

  it('goes on answering while a search is cancelled', async () => {
    const worker = createWorkerEngine();
    const { document } = await worker.importFiles(await sampleFiles(), empty);
    const controller = new AbortController();
    const search = worker.allocate(document, { seconds: 3600 }, controller.signal);
    controller.abort(new Error('enough'));
    const outcome = await search.then(
      () => 'found',
      (error: Error) => error.message,
    );
    expect(outcome).to.equal('enough');
    expect((await worker.recompute(empty)).fits).to.deep.equal([]);
    worker.dispose();
  });

  const died = (worker: Worker): boolean =>
    worker.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
  const url = new URL('../../src/engine/worker.js', import.meta.url);

  it('asks what waited for a worker that died once more of a new one', async () => {
    const started: Worker[] = [];
    const troubles: string[] = [];
    const worker = createWorkerEngine(
      () => {
        started.push(new Worker(url, { type: 'module' }));
        return started.at(-1)!;
      },
      { onTrouble: (text) => troubles.push(text) },
    );
    const { document } = await worker.importFiles(await sampleFiles(), empty);
    const waiting = worker.recompute(document);
    died(started[0]!);
    expect(await waiting).to.deep.equal(await createInlineEngine().recompute(document));
    expect(started.length).to.equal(2);
    expect(troubles).to.deep.equal([]);
    worker.dispose();
  });

  it('notices a worker that closes itself, which sends no event', async () => {
    const channel = `close ${Math.random()}`;
    const own = `import ${JSON.stringify(url.href)};
      new BroadcastChannel(${JSON.stringify(channel)}).onmessage = () => close();`;
    const started: Worker[] = [];
    const worker = createWorkerEngine(() => {
      const blob = URL.createObjectURL(new Blob([own], { type: 'text/javascript' }));
      started.push(new Worker(started.length === 0 ? blob : url, { type: 'module' }));
      return started.at(-1)!;
    });
    const { document } = await worker.importFiles(await sampleFiles(), empty);
    new BroadcastChannel(channel).postMessage('now');
    // The message and the closing take their time: every answer on the way must be right, the last from a new worker.
    const wanted = await createInlineEngine().recompute(document);
    while (started.length < 2) expect(await worker.recompute(document)).to.deep.equal(wanted);
    expect(await worker.recompute(document)).to.deep.equal(wanted);
    worker.dispose();
  });

  it('answers in the page, and says so once, where the second worker dies too', async () => {
    let started = 0;
    const troubles: string[] = [];
    const worker = createWorkerEngine(
      () => {
        const one = new Worker(url, { type: 'module' });
        started += 1;
        queueMicrotask(() => died(one));
        return one;
      },
      { onTrouble: (text) => troubles.push(text) },
    );
    const { document } = await createInlineEngine().importFiles(await sampleFiles(), empty);
    expect(await worker.recompute(document)).to.deep.equal(
      await createInlineEngine().recompute(document),
    );
    expect((await worker.recompute(empty)).fits).to.deep.equal([]);
    expect(started).to.equal(2);
    expect(troubles.length).to.equal(1);
    expect(troubles[0]).to.contain('out of memory');
    worker.dispose();
  });
});
