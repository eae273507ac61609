// The same edits asked of a session and over a port, as a page asks its worker: what crossing the port costs, with both
// ends in one thread. `node bench/run.mjs recompute/over-port`
import { MessageChannel } from 'node:worker_threads';
import { applyEdit } from '../../src/edits/index.js';
import { createPortEngine, serve, type Engine, type Port } from '../../src/engine/index.js';
import { engineWith } from '../../src/engine/engine-with.js';
import { BareSession } from '../../src/engine/incremental/bare-session.js';
import { Session } from '../../src/engine/incremental/session.js';
import { conditions, median, now, quantile, sweep, tell } from '../shared/figures.js';
import { planOf } from '../shared/plan.js';
import { windowEdit, workEdit } from './edits.js';

const EDITS = 200;

/** A worker's engine at the other end of a channel. */
function overPort(): Engine {
  const { port1, port2 } = new MessageChannel();
  serve(port2 as unknown as Port, engineWith(new BareSession()));
  return createPortEngine(port1 as unknown as Port, () => {
    port1.close();
    port2.close();
  });
}

async function compare(windows: number, activities: number): Promise<void> {
  const session = new Session();
  const engine = overPort();
  let document = planOf(windows, activities);
  let results = session.recompute(document);
  await engine.recompute(document);
  const direct: number[] = [];
  const crossed: number[] = [];
  sweep();
  for (let turn = 0; turn < EDITS; turn += 1) {
    const { edit } = (turn % 2 === 0 ? windowEdit : workEdit)(document, results, turn);
    document = applyEdit(document, edit);
    const before = now();
    results = session.recompute(document);
    const between = now();
    const answer = await engine.recompute(document);
    crossed.push(now() - between);
    direct.push(between - before);
    if (answer.fits.length !== results.fits.length) throw new Error('the port lost verdicts');
  }
  engine.dispose();
  for (const [name, share] of [
    ['p50', 0.5],
    ['p95', 0.95],
  ] as const)
    tell({
      bench: 'over a port',
      what: `${windows} x ${activities}: one cell, ${EDITS} edits, ${name}`,
      ours: quantile(crossed, share),
      peer: quantile(direct, share),
      against: 'no port',
      unit: 'ms',
      aim: windows === 500 ? '<= 50 ms to the repaint' : '<= 16 ms',
    });
  if (median(crossed) === 0) throw new Error('the clock is too coarse');
}

console.log(conditions());
await compare(500, 1000);
await compare(5000, 10_000);
