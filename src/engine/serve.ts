import type { Port, Reply, Request } from './protocol.js';
import { toTravel } from './incremental/transfer.js';
import type { Engine, Results } from './types.js';
import type { Verb } from './verbs.js';

/** Answers the calls that arrive on a port with an engine, until the port closes. */
export function serve(port: Port, engine: Engine): void {
  const running = new Map<number, AbortController>();
  const listener = (event: MessageEvent): void => {
    const request = event.data as Request;
    if (request.kind === 'cancel') {
      running.get(request.id)?.abort();
      return;
    }
    const controller = new AbortController();
    running.set(request.id, controller);
    const call = engine[request.verb] as (...args: unknown[]) => Promise<unknown>;
    const send = (reply: Reply): void => {
      running.delete(request.id);
      port.postMessage(reply);
    };
    const onProgress = (value: unknown): void =>
      port.postMessage({
        kind: 'progress',
        id: request.id,
        value: travelling(request.verb, value),
      });
    call(...request.args, controller.signal, onProgress).then(
      (value) => send({ kind: 'result', id: request.id, value: travelling(request.verb, value) }),
      (error: unknown) =>
        send({
          kind: 'failed',
          id: request.id,
          name: error instanceof Error ? error.name : 'Error',
          message: error instanceof Error ? error.message : String(error),
        }),
    );
  };
  port.addEventListener('message', listener);
  port.start?.();
}

/** Verdicts work themselves out when they are read, which no clone of them could. */
function travelling(verb: Verb, value: unknown): unknown {
  return verb === 'recompute' ? toTravel(value as Results) : value;
}
