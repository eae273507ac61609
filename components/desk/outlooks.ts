import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type {
  Account,
  AccountRequest,
  Allocation,
  BookAnswer,
  Engine,
  HandbackResult,
  LiftingAnswer,
  NoiseAnswer,
  OptionsAnswer,
  PeopleAnswer,
  PriceAnswer,
  Progress,
  ShiftLog,
} from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import type { OptionsAsked } from '../options/options-ask-event.js';
import { wordsOf } from './words-of.js';

/** What an outlook is worked out from. */
export interface Basis {
  readonly engine: Engine;
  readonly document: PlanDocument;
  readonly allocation: Allocation;
}

/** Seed and number of runs of every simulation of the desk: equal inputs give equal figures. */
const SEED = 1;
const RUNS = 10_000;
/** How far the cost curve is drawn, in minutes. */
const CURVE_MINUTES = 360;

type Kind =
  'handback' | 'live' | 'price' | 'options' | 'account' | 'book' | 'people' | 'noise' | 'lifting';

/** Asks the engine for handback, price and booking dates, keeps the latest answers and drops late ones. */
export class Outlooks implements ReactiveController {
  handbacks: readonly HandbackResult[] = [];
  price: PriceAnswer | null = null;
  options: OptionsAnswer | null = null;
  account: Account | null = null;
  /** What was entered of the late handback of a window; it outlives a change of the plan. */
  accountRequest: AccountRequest | null = null;
  booked: BookAnswer | null = null;
  people: PeopleAnswer | null = null;
  noise: NoiseAnswer | null = null;
  lifting: LiftingAnswer | null = null;
  progress: Progress | null = null;
  trouble = '';
  overrunMinutes = 60;

  readonly #host: ReactiveControllerHost;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  /** What is under way: one of a kind, the last asked for; kinds do not hinder each other. */
  readonly #running = new Map<Kind, AbortController>();

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#stop();
    clearTimeout(this.#waiting);
  }

  /** Asks a little later, and only the last time of several. */
  later(afterMs: number, ask: () => void): void {
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(ask, afterMs);
  }

  /** Whether an answer of this kind is being worked out. */
  isBusy(kind: Kind): boolean {
    return this.#running.has(kind);
  }

  /** Forgets every answer: they were of another document or plan. */
  clear(): void {
    this.#stop();
    this.handbacks = [];
    this.price = null;
    this.options = null;
    this.account = null;
    this.booked = null;
    this.people = null;
    this.noise = null;
    this.lifting = null;
    this.trouble = '';
    this.#host.requestUpdate();
  }

  /** Every window that takes work, as planned; each is shown as soon as it is known. */
  async askHandback({ engine, document, allocation }: Basis): Promise<void> {
    const request = { placements: allocation.placements, seed: SEED, runs: RUNS };
    await this.#ask('handback', 'No handback outlook was worked out', async (signal) => {
      this.handbacks = [];
      const found = await engine.handback(document, request, signal, (progress) => {
        if (signal.aborted) return;
        this.progress = progress;
        this.handbacks = [...this.handbacks, progress.latest];
        this.#host.requestUpdate();
      });
      // One that meanwhile stands as its shift goes stays so.
      const shown = new Map(this.handbacks.map((one) => [one.window, one]));
      return () => (this.handbacks = found.map((one) => shown.get(one.window) ?? one));
    });
  }

  /** One window as it stands at a moment of its shift. */
  async askLive(
    { engine, document, allocation }: Basis,
    window: string,
    at: number,
    log: ShiftLog,
  ): Promise<void> {
    await this.#ask('live', 'No forecast was worked out', async (signal) => {
      const request = {
        placements: allocation.placements,
        windows: [window],
        seed: SEED,
        runs: 4000,
        at,
        log,
      };
      const [live] = await engine.handback(document, request, signal);
      return () => {
        if (live)
          this.handbacks = this.handbacks.map((one) => (one.window === window ? live : one));
      };
    });
  }

  /** The cost of handing a window back late, and what is to be expected of the planned work where it is known. */
  async askPrice(
    engine: Engine,
    document: PlanDocument,
    window: string,
    allocation: Allocation | null,
  ): Promise<void> {
    const outlook = this.handbacks.find((one) => one.window === window);
    await this.#ask('price', 'No price was worked out', async (signal) => {
      const found = await engine.price(
        document,
        {
          window,
          overrunMinutes: this.overrunMinutes,
          maxMinutes: CURVE_MINUTES,
          ...(allocation && { placements: allocation.placements }),
          ...(outlook && { handbackMinutes: outlook.simulation.handbackMinutes }),
        },
        signal,
      );
      return () => (this.price = found);
    });
  }

  async askBooking(engine: Engine, document: PlanDocument, now: number): Promise<void> {
    await this.#ask('book', 'No booking dates were worked out', async (signal) => {
      const found = await engine.book(document, { now }, signal);
      return () => (this.booked = found);
    });
  }

  /** The roster against the limits on hours. */
  async askPeople(engine: Engine, document: PlanDocument): Promise<void> {
    await this.#ask('people', 'The roster was not checked', async (signal) => {
      const found = await engine.people(document, {}, signal);
      return () => (this.people = found);
    });
  }

  async askNoise(engine: Engine, document: PlanDocument, now: number): Promise<void> {
    await this.#ask('noise', 'The noise was not worked out', async (signal) => {
      const found = await engine.noise(document, { now }, signal);
      return () => (this.noise = found);
    });
  }

  /** Wind of the windows, and curing of what the plan pours, where there is one. */
  async askLifting(
    engine: Engine,
    document: PlanDocument,
    allocation: Allocation | null,
  ): Promise<void> {
    await this.#ask('lifting', 'Wind and curing were not worked out', async (signal) => {
      const request = allocation ? { placements: allocation.placements } : {};
      const found = await engine.lifting(document, request, signal);
      return () => (this.lifting = found);
    });
  }

  /** What one window would cost done otherwise, each scheduled, simulated and priced anew. */
  async askOptions(
    { engine, document, allocation }: Basis,
    window: string,
    asked: OptionsAsked | null,
    now: number,
  ): Promise<void> {
    await this.#ask('options', 'No options were worked out', async (signal) => {
      const found = await engine.options(
        document,
        {
          window,
          allocation,
          seed: SEED,
          runs: 4000,
          askedAt: now,
          ...(asked && {
            longerMinutes: asked.longerMinutes,
            splitDaysLater: asked.splitDaysLater,
            ...(asked.activity && { activity: asked.activity }),
          }),
        },
        signal,
        (progress) => {
          if (signal.aborted) return;
          this.progress = progress;
          this.#host.requestUpdate();
        },
      );
      return () => (this.options = found);
    });
  }

  /** The account after a late handback, from what was entered so far. */
  async askAccount(
    engine: Engine,
    document: PlanDocument,
    entered: AccountRequest,
    allocation: Allocation | null,
  ): Promise<void> {
    this.accountRequest = entered;
    const request = {
      ...entered,
      foreseenMinutes: this.overrunMinutes,
      ...(allocation && { placements: allocation.placements }),
    };
    await this.#ask('account', 'No account was worked out', async (signal) => {
      const found = await engine.account(document, request, signal);
      return () => (this.account = found);
    });
  }

  /** Stops what is under way of a kind. */
  stop(kind: Kind): void {
    this.#running.get(kind)?.abort();
    this.#running.delete(kind);
    this.#host.requestUpdate();
  }

  #stop(): void {
    for (const one of this.#running.values()) one.abort();
    this.#running.clear();
  }

  async #ask(
    kind: Kind,
    failed: string,
    work: (signal: AbortSignal) => Promise<() => void>,
  ): Promise<void> {
    this.#running.get(kind)?.abort();
    const running = new AbortController();
    this.#running.set(kind, running);
    if (kind === 'handback' || kind === 'options') this.progress = null;
    this.trouble = '';
    this.#host.requestUpdate();
    try {
      const keep = await work(running.signal);
      if (!running.signal.aborted) keep();
    } catch (error) {
      if (!running.signal.aborted) this.trouble = `${failed}: ${wordsOf(error)}`;
    }
    if (this.#running.get(kind) === running) this.#running.delete(kind);
    this.#host.requestUpdate();
  }
}
