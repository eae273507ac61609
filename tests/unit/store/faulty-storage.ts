// The browser's storage with faults: every call on it is counted, and the k-th can be made to fail in the ways
// browsers fail. Prototypes are patched, so it is our code and the real wrapper that meet the fault.
import 'fake-indexeddb/auto';

/**
 * - `quota`, `state`, `abort-error`: the call throws that error at once.
 * - `aborted`: the call is taken, then the browser aborts the transaction for lack of room.
 * - `kill`: the page dies before the call; nothing of it runs on.
 * - `lost-answer`: the transaction of the call is done, and the page is told that it failed.
 */
export const faultKinds = [
  'quota',
  'state',
  'abort-error',
  'aborted',
  'kill',
  'lost-answer',
] as const;
export type FaultKind = (typeof faultKinds)[number];

interface Plan {
  readonly kind: FaultKind;
  /** Calls from now on before the fault. */
  readonly after: number;
}

let calls = 0;
let next: Plan | undefined;
let dead = false;
let met = 0;

/** Makes the call after `after` more calls fail; `undefined`: no fault from now on. The page is alive again. */
export function setFault(plan: Plan | undefined): void {
  calls = 0;
  next = plan;
  dead = false;
}

/** Calls since the last `setFault`. */
export const callsMade = (): number => calls;
/** Faults that were really met, in all. */
export const faultsMet = (): number => met;
export const pageIsDead = (): boolean => dead;

const thrown = { quota: 'QuotaExceededError', state: 'InvalidStateError' } as const;
const lost = new WeakSet<IDBTransaction>();

function onCall(transaction: IDBTransaction | undefined): void {
  if (dead) throw new DOMException('The page is gone.', 'InvalidStateError');
  calls += 1;
  if (next === undefined || calls <= next.after) return;
  const { kind } = next;
  next = undefined;
  met += 1;
  switch (kind) {
    case 'quota':
    case 'state':
      throw new DOMException('Made for the test.', thrown[kind]);
    case 'abort-error':
      throw new DOMException('Made for the test.', 'AbortError');
    case 'aborted':
      transaction?.abort();
      throw new DOMException('Made for the test.', 'AbortError');
    case 'kill':
      dead = true;
      transaction?.abort();
      throw new DOMException('The page is gone.', 'InvalidStateError');
    case 'lost-answer':
      if (transaction !== undefined) lost.add(transaction);
  }
}

function patch(
  target: object,
  method: string,
  of: (self: never) => IDBTransaction | undefined,
): void {
  const whole = target as Record<string, (...parameters: unknown[]) => unknown>;
  const real = whole[method]!;
  whole[method] = function (this: never, ...parameters: unknown[]) {
    onCall(of(this));
    return real.apply(this, parameters);
  };
}

for (const method of ['get', 'getAll', 'getAllKeys', 'put', 'add', 'delete', 'openCursor'])
  patch(IDBObjectStore.prototype, method, (self: IDBObjectStore) => self.transaction);
patch(IDBDatabase.prototype, 'transaction', () => undefined);
patch(IDBFactory.prototype, 'open', () => undefined);

// The page learns of the end of a transaction by an event; here it hears of a failure although all is written, or,
// being dead, hears nothing.
const failures = new WeakMap<IDBTransaction, ((event: Event) => void)[]>();
type Listen = typeof EventTarget.prototype.addEventListener;
const realListen = IDBTransaction.prototype.addEventListener as Listen;
IDBTransaction.prototype.addEventListener = function (
  this: IDBTransaction,
  type: string,
  listener: never,
  options?: never,
) {
  const called = listener as (event: Event) => void;
  if (type === 'abort') failures.set(this, [...(failures.get(this) ?? []), called]);
  if (type !== 'complete') return realListen.call(this, type, listener, options);
  return realListen.call(this, type, (event: Event) => {
    if (dead) return;
    if (lost.has(this)) for (const failed of failures.get(this) ?? []) failed(event);
    else called(event);
  });
} as typeof IDBTransaction.prototype.addEventListener;
