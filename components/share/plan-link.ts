import * as Y from 'yjs';
import type { OpenPlan } from '../../src/plan/index.js';
import { connect, type Connection, type ConnectOptions, type Server } from './connection.js';
import { othersIn, type Other, type Presence } from './presence.js';
import type { ShareState } from './share-state.js';

/** Something of the sharing changed: its state, who is here, or whether this desk may write. */
export type ShareListener = () => void;

/**
 * Keeps an open plan the same as the one of its id on a server.
 *
 * Between the two stands a document of its own, into which the server writes: the plan takes from it what passes the
 * checks of a file. What is changed here while the server is away goes there when it is back.
 */
export class PlanLink {
  readonly id: string;
  readonly server: Server;
  readonly plan: OpenPlan;
  readonly #between = new Y.Doc();
  readonly #listener: ShareListener;
  readonly #endOfUpdates: () => void;
  #connection: Connection | null = null;
  #state: ShareState = { kind: 'joining' };
  #reads = false;
  #others: readonly Other[] = [];
  #here: Presence | null = null;
  #isLeft = false;

  constructor(
    plan: OpenPlan,
    id: string,
    server: Server,
    listener: ShareListener,
    options?: ConnectOptions,
  ) {
    this.id = id;
    this.server = server;
    this.plan = plan;
    this.#listener = listener;
    Y.applyUpdate(this.#between, plan.state(), this);
    this.#between.on('update', this.#onServer);
    this.#endOfUpdates = plan.onUpdate(this.#onPlan);
    void this.#join(options);
  }

  get state(): ShareState {
    return this.#state;
  }

  /** Whether the token lets its holder read alone. */
  get reads(): boolean {
    return this.#reads;
  }

  /** Others who have the plan open now; none while the server is away. */
  get others(): readonly Other[] {
    return this.#others;
  }

  /** Whether the server has all that was changed here. */
  get isWhole(): boolean {
    return this.#state.kind === 'together' && !this.#connection!.provider.hasUnsyncedChanges;
  }

  /** Says to the others who is here and what they are at. */
  sayHere(here: Presence): void {
    if (JSON.stringify(here) === JSON.stringify(this.#here)) return;
    this.#here = here;
    this.#connection?.provider.awareness?.setLocalStateField('here', here);
  }

  /** Ends the sharing; the plan stays as it is. */
  leave(): void {
    this.#isLeft = true;
    this.#endOfUpdates();
    this.#between.off('update', this.#onServer);
    this.#connection?.end();
    this.#between.destroy();
  }

  async #join(options?: ConnectOptions): Promise<void> {
    const connection = await connect(
      this.server,
      this.id,
      this.#between,
      {
        onAdmitted: (reads) => this.#tell(() => (this.#reads = reads)),
        onTogether: () => this.#onTogether(),
        onAway: (why) => this.#turn({ kind: 'away', why }),
        onRefused: (why) => this.#turn({ kind: 'refused', why }),
      },
      options,
    );
    this.#connection = connection;
    if (this.#isLeft) return connection.end();
    const { awareness } = connection.provider;
    awareness?.on('change', () =>
      this.#tell(() => (this.#others = othersIn(awareness.getStates(), this.#between.clientID))),
    );
    awareness?.setLocalStateField('here', this.#here);
  }

  #onTogether(): void {
    // Changes made while the server was away go as one, after what it has: none comes before what it builds on.
    const vector = Y.encodeStateVector(this.#between);
    Y.applyUpdate(this.#between, this.plan.since(vector), this);
    this.#turn({ kind: 'together' });
  }

  readonly #onPlan = (update: Uint8Array, origin: unknown): void => {
    if (origin !== this && this.#state.kind === 'together')
      Y.applyUpdate(this.#between, update, this);
  };

  readonly #onServer = (update: Uint8Array, origin: unknown): void => {
    if (origin === this) return;
    const { refused } = this.plan.incoming(update, this);
    if (refused === undefined) return;
    this.#connection?.end();
    this.#turn({ kind: 'refused', why: `What came was not taken. ${refused}` });
  };

  #turn(state: ShareState): void {
    if (this.#state.kind === 'refused') return;
    this.#tell(() => {
      this.#state = state;
      if (state.kind !== 'together') this.#others = [];
    });
  }

  #tell(change: () => void): void {
    if (this.#isLeft) return;
    change();
    this.#listener();
  }
}
