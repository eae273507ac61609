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
    const search = worker.allocate(document, { seconds: 60 }, controller.signal);
    const began = performance.now();
    controller.abort(new Error('enough'));
    const outcome = await search.then(
      () => 'found',
      (error: Error) => error.message,
    );
    expect(outcome).to.equal('enough');
    expect(performance.now() - began).to.be.below(1000);
    expect((await worker.recompute(empty)).fits).to.deep.equal([]);
    worker.dispose();
  });

  it('starts a new worker after one died, and rejects what waited', async () => {
    const started: Worker[] = [];
    const worker = createWorkerEngine(() => {
      const url = new URL('../../src/engine/worker.js', import.meta.url);
      const one = new Worker(url, { type: 'module' });
      started.push(one);
      return one;
    });
    await worker.recompute(empty);
    const waiting = worker.recompute(empty).then(
      () => 'answered',
      (error: Error) => error.message,
    );
    started[0]!.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
    expect(await waiting).to.contain('out of memory');
    expect((await worker.recompute(empty)).fits).to.deep.equal([]);
    expect(started.length).to.equal(2);
    worker.dispose();
  });
});
