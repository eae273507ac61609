import type { PlanDocument } from '../model/index.js';
import { Receiver, type Sent } from './incremental/chain.js';
import { ResultsSender } from './incremental/results-sender.js';
import type { Port, Reply, Request } from './protocol.js';
import type { Engine, Results } from './types.js';
import { verbs } from './verbs.js';

/** Answers the calls that arrive on a port with an engine, until the port closes. */
export function serve(port: Port, engine: Engine): void {
  const running = new Map<number, AbortController>();
  const documents = new Receiver<PlanDocument>();
  const results = new ResultsSender();

  /** The arguments of a call as they were given; `undefined` where its document cannot be made out. */
  function argumentsOf({ verb, args }: Request & { kind: 'call' }): unknown[] | undefined {
    const { document: at } = verbs[verb];
    if (at < 0) return [...args];
    const sent = args[at] as Sent;
    // Where the far end starts afresh with documents, it may have lost our results too.
    if (sent.after === 0) results.forget();
    const document = documents.take(sent);
    return document && args.with(at, document);
  }

  function post(reply: Reply): void {
    try {
      port.postMessage(reply);
    } catch (error) {
      results.forget();
      throw error;
    }
  }

  const listener = (event: MessageEvent): void => {
    const request = event.data as Request;
    const { id } = request;
    if (request.kind === 'cancel') {
      running.get(id)?.abort();
      return;
    }
    // Now and not a turn later, so that documents are put on each other in the order in which they were sent.
    const args = argumentsOf(request);
    if (!args) {
      post({ kind: 'again', id });
      return;
    }
    const controller = new AbortController();
    running.set(id, controller);
    const { verb, wantsProgress } = request;
    const send = (kind: 'progress' | 'result', value: unknown): void =>
      post(
        verb === 'recompute'
          ? { kind, id, results: results.next(value as Results, kind === 'progress') }
          : { kind, id, value },
      );
    const call = engine[verb] as (...given: unknown[]) => Promise<unknown>;
    call(
      ...args,
      controller.signal,
      wantsProgress ? (value: unknown) => send('progress', value) : undefined,
    )
      .then((value) => send('result', value))
      .catch((error: unknown) =>
        post({
          kind: 'failed',
          id,
          name: error instanceof Error ? error.name : 'Error',
          message: error instanceof Error ? error.message : String(error),
        }),
      )
      .finally(() => running.delete(id));
  };
  port.addEventListener('message', listener);
  port.start?.();
}
