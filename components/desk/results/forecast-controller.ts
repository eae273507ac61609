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
  OwnOption,
  PeopleAnswer,
  PriceAnswer,
  Progress,
  Report,
  ShiftLog,
} from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import type { OptionsAsked } from '../../options/options-ask-event.js';
import type { WordedHost } from '../worded-host.js';
import { LatestTask } from './latest-task.js';

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

/** What can be asked. */
const plannedKinds = ['handback', 'live', 'price', 'options', 'account', 'lifting'] as const;
const kinds = [...plannedKinds, 'book', 'people', 'noise'] as const;
type Kind = (typeof kinds)[number];

/** Asks the engine for handback, price and booking dates, keeps the latest answers and drops late ones. */
export class ForecastController implements ReactiveController {
  handbacks: readonly HandbackResult[] = [];
  /** Whether `handbacks` has every window that takes work; a shift that is resumed asks for its own first. */
  hasAllHandbacks = false;
  price: PriceAnswer | null = null;
  /** The plan of the work that `price` was reckoned with. */
  pricedWith: Allocation | null = null;
  options: OptionsAnswer | null = null;
  account: Account | null = null;
  /** What was entered of the late handback of a window; it outlives a change of the plan. */
  accountRequest: AccountRequest | null = null;
  /** Options that a person made up, by window; they too outlive a change of the plan. */
  ownOptions: ReadonlyMap<string, readonly OwnOption[]> = new Map();
  /** What was last asked to be varied. */
  varied: OptionsAsked | null = null;
  booked: BookAnswer | null = null;
  people: PeopleAnswer | null = null;
  noise: NoiseAnswer | null = null;
  lifting: LiftingAnswer | null = null;
  progress: Progress | null = null;
  overrunMinutes = 60;
  /** Overruns laid side by side. */
  compareMinutes: readonly number[] = [45, 90, 180];
  /** A report in place of the cost view; null: none. */
  report: Report | null = null;

  readonly #host: ReactiveControllerHost;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  /** One question of a kind at a time, the last asked; kinds do not hinder each other. */
  readonly #latest: Readonly<Record<Kind, LatestTask>>;

  constructor(host: WordedHost) {
    this.#host = host;
    const onChange = (): void => host.requestUpdate();
    this.#latest = Object.fromEntries(
      kinds.map((kind) => [
        kind,
        new LatestTask({ failed: () => host.words.forms.failed[kind], onChange }),
      ]),
    ) as Record<Kind, LatestTask>;
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

  /** What could not be worked out, in words; empty while all is well. */
  get trouble(): string {
    return Object.values(this.#latest).find((task) => task.trouble !== '')?.trouble ?? '';
  }

  /** Whether an answer of this kind is being worked out. */
  isBusy(kind: Kind): boolean {
    return this.#latest[kind].busy;
  }

  /** Forgets every answer: they were of another document. */
  clear(): void {
    this.#stop();
    this.booked = null;
    this.people = null;
    this.noise = null;
    this.clearPlanned();
  }

  /** Forgets what hangs on the plan of the work: it was of another plan of the same document. */
  clearPlanned(): void {
    for (const kind of plannedKinds) this.#latest[kind].stop();
    this.handbacks = [];
    this.hasAllHandbacks = false;
    this.price = null;
    this.options = null;
    this.account = null;
    this.lifting = null;
    this.#host.requestUpdate();
  }

  /** Puts a report in place of the view it was made from; null: takes it away. */
  showReport(report: Report | null): void {
    this.report = report;
    this.#host.requestUpdate();
  }

  /** Forgets what a person entered too: it was of another document altogether. */
  forgetEntered(): void {
    this.accountRequest = null;
    this.ownOptions = new Map();
    this.varied = null;
  }

  /** Every window that takes work, as planned; each is shown as soon as it is known. */
  async askHandback({ engine, document, allocation }: Basis): Promise<void> {
    const request = { placements: allocation.placements, seed: SEED, runs: RUNS };
    await this.#ask(
      'handback',
      (signal) => {
        this.handbacks = this.handbacks.filter((handback) => handback.live);
        return engine.handback(document, request, signal, (progress) => {
          if (signal.aborted) return;
          this.progress = progress;
          const { latest } = progress;
          if (this.handbacks.every((handback) => handback.window !== latest.window))
            this.handbacks = [...this.handbacks, latest];
          this.#host.requestUpdate();
        });
      },
      (found) => {
        // One that meanwhile stands as its shift goes stays so.
        const shown = new Map(this.handbacks.map((handback) => [handback.window, handback]));
        this.handbacks = found.map((result) => shown.get(result.window) ?? result);
        this.hasAllHandbacks = true;
      },
    );
  }

  /** One window as it stands at a moment of its shift. */
  async askLive(
    { engine, document, allocation }: Basis,
    window: string,
    at: number,
    log: ShiftLog,
    begunBefore: readonly string[],
  ): Promise<void> {
    const request = {
      placements: allocation.placements,
      windows: [window],
      seed: SEED,
      runs: 4000,
      at,
      log,
      begunBefore,
    };
    await this.#ask(
      'live',
      (signal) => engine.handback(document, request, signal),
      ([live]) => {
        if (!live) return;
        const known = this.handbacks.some((handback) => handback.window === window);
        this.handbacks = known
          ? this.handbacks.map((handback) => (handback.window === window ? live : handback))
          : [...this.handbacks, live];
      },
    );
  }

  /** The cost of handing a window back late, and what is to be expected of the planned work where it is known. */
  async askPrice(
    engine: Engine,
    document: PlanDocument,
    window: string,
    allocation: Allocation | null,
  ): Promise<void> {
    const outlook = this.handbacks.find((handback) => handback.window === window);
    await this.#ask(
      'price',
      (signal) =>
        engine.price(
          document,
          {
            window,
            overrunMinutes: this.overrunMinutes,
            maxMinutes: CURVE_MINUTES,
            compareMinutes: this.compareMinutes,
            ...(allocation && { placements: allocation.placements }),
            ...(outlook && { handbackMinutes: outlook.simulation.handbackMinutes }),
          },
          signal,
        ),
      (found) => {
        this.price = found;
        this.pricedWith = allocation;
      },
    );
  }

  async askBooking(engine: Engine, document: PlanDocument, now: number): Promise<void> {
    await this.#ask(
      'book',
      (signal) => engine.book(document, { now }, signal),
      (found) => (this.booked = found),
    );
  }

  /** The roster against the limits on hours. */
  async askPeople(engine: Engine, document: PlanDocument): Promise<void> {
    await this.#ask(
      'people',
      (signal) => engine.people(document, {}, signal),
      (found) => (this.people = found),
    );
  }

  async askNoise(engine: Engine, document: PlanDocument, now: number): Promise<void> {
    await this.#ask(
      'noise',
      (signal) => engine.noise(document, { now }, signal),
      (found) => (this.noise = found),
    );
  }

  /** Wind of the windows, and curing of what the plan pours, where there is one. */
  async askLifting(
    engine: Engine,
    document: PlanDocument,
    allocation: Allocation | null,
  ): Promise<void> {
    const request = allocation ? { placements: allocation.placements } : {};
    await this.#ask(
      'lifting',
      (signal) => engine.lifting(document, request, signal),
      (found) => (this.lifting = found),
    );
  }

  /** What one window would cost done otherwise, each scheduled, simulated and priced anew. */
  async askOptions(
    { engine, document, allocation }: Basis,
    window: string,
    now: number,
  ): Promise<void> {
    const { varied } = this;
    const own = this.ownOptions.get(window) ?? [];
    await this.#ask(
      'options',
      (signal) =>
        engine.options(
          document,
          {
            window,
            allocation,
            seed: SEED,
            runs: 4000,
            askedAt: now,
            ...(varied && {
              longerMinutes: varied.longerMinutes,
              splitDaysLater: varied.splitDaysLater,
              ...(varied.activity && { activity: varied.activity }),
            }),
            ...(own.length > 0 && { own }),
          },
          signal,
          (progress) => {
            if (signal.aborted) return;
            this.progress = progress;
            this.#host.requestUpdate();
          },
        ),
      (found) => (this.options = found),
    );
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
    await this.#ask(
      'account',
      (signal) => engine.account(document, request, signal),
      (found) => (this.account = found),
    );
  }

  /** Stops what is under way of a kind. */
  stop(kind: Kind): void {
    this.#latest[kind].stop();
  }

  #stop(): void {
    for (const task of Object.values(this.#latest)) task.stop();
  }

  async #ask<T>(
    kind: Kind,
    work: (signal: AbortSignal) => Promise<T>,
    keep: (value: T) => void,
  ): Promise<void> {
    if (kind === 'handback' || kind === 'options') this.progress = null;
    await this.#latest[kind].ask(work, keep);
  }
}
