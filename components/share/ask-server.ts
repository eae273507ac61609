import * as Y from 'yjs';
import { OpenPlan, whatComesIn } from '../../src/plan/open.js';
import { connect, type ConnectOptions, type Server } from './connection.js';

/** Why a server could not be asked; the message is for a person. */
export class ServerError extends Error {
  override name = 'ServerError';
}

export interface ListedPlan {
  readonly id: string;
  readonly name: string;
}

/** Name of the document that lists the plans of a server. */
const listName = 'plans-of-this-server';

const isId = (text: string): boolean => /^[\w-]{1,64}$/.test(text);

/**
 * The plans that a server has, by name.
 *
 * @throws {ServerError}
 */
export async function plansOf(
  server: Server,
  options?: ConnectOptions,
): Promise<readonly ListedPlan[]> {
  const { document } = await asked(server, listName, options);
  return [...document.getMap('plans')]
    .filter((pair): pair is [string, string] => isId(pair[0]) && typeof pair[1] === 'string')
    .map(([id, name]) => ({ id, name: name.slice(0, 200) }))
    .sort((a, b) => a.name.localeCompare(b.name) || a.id.localeCompare(b.id));
}

/**
 * A plan that a server has, as one update, and whether the token lets its holder only read it.
 *
 * @throws {ServerError} It cannot be had, or is none that can be read.
 */
export async function planOf(
  server: Server,
  id: string,
  options?: ConnectOptions,
): Promise<{ readonly update: Uint8Array; readonly reads: boolean }> {
  const { document, reads } = await asked(server, id, options);
  const update = Y.encodeStateAsUpdate(document);
  const trouble = whatComesIn(update);
  const plan = trouble === undefined ? OpenPlan.from([update]) : undefined;
  if (!plan)
    throw new ServerError(`What came is no plan that can be read. ${trouble ?? ''}`.trim());
  plan.close();
  return { update, reads };
}

/** How long a server is waited for, ms: a person waits. */
const patience = 10_000;

async function asked(
  server: Server,
  name: string,
  options?: ConnectOptions,
): Promise<{ readonly document: Y.Doc; readonly reads: boolean }> {
  const document = new Y.Doc();
  let reads = false;
  let answer: { readonly resolve: () => void; readonly reject: (error: Error) => void };
  const answered = new Promise<void>((resolve, reject) => (answer = { resolve, reject }));
  const fail = (why: string): void => answer.reject(new ServerError(why));
  const events = {
    onAdmitted: (only: boolean) => (reads = only),
    onTogether: () => answer.resolve(),
    onAway: fail,
    onRefused: fail,
  };
  const timer = setTimeout(() => fail('The server cannot be reached.'), patience);
  const connecting = connect(server, name, document, events, options);
  try {
    await Promise.race([answered, connecting.then(() => answered)]);
  } finally {
    clearTimeout(timer);
    void connecting.then((connection) => connection.end());
  }
  return { document, reads };
}
