import type { PlanDocument } from '../../../src/model/index.js';
import { loadOpen, type OpenPlan } from '../../../src/plan/index.js';
import { wordsOf } from '../../shared/words-of.js';
import type { Desk } from '../desk-parts.js';

type OpeningDesk = Pick<Desk, 'words' | 'moment' | 'say' | 'complain'>;

/** Opens the plan of a document that is on the screen already, and keeps what a person does to it until it is open. */
export class PlanOpening {
  readonly #desk: OpeningDesk;
  readonly #opened: (plan: OpenPlan) => void;
  readonly #load: typeof loadOpen;
  #document: PlanDocument | null = null;
  #acts: (() => void)[] = [];
  #running: Promise<void> | null = null;

  constructor(desk: OpeningDesk, opened: (plan: OpenPlan) => void, load = loadOpen) {
    this.#desk = desk;
    this.#opened = opened;
    this.#load = load;
  }

  /** Opens the plan of another document. What waits belongs to the one before, and goes with it. */
  begin(document: PlanDocument): Promise<void> {
    this.#acts = [];
    this.#document = document;
    return this.#open();
  }

  /** Another plan is shown, which is open. */
  end(): void {
    this.#acts = [];
    this.#document = null;
  }

  /** Keeps an act until the plan is open; where it could not be opened, that is tried again. */
  wait(act: () => void): void {
    if (!this.#document) return;
    this.#acts.push(act);
    this.#desk.say(this.#desk.words.actWaits);
    void this.#open();
  }

  #open(): Promise<void> {
    return (this.#running ??= this.#run().finally(() => (this.#running = null)));
  }

  async #run(): Promise<void> {
    let open: Awaited<ReturnType<typeof loadOpen>>;
    try {
      open = await this.#load();
    } catch (error) {
      this.#desk.complain(this.#desk.words.cannotLoadPlans(wordsOf(error)));
      return;
    }
    const document = this.#document;
    if (!document) return;
    const acts = this.#acts;
    this.end();
    this.#desk.say('');
    this.#opened(open.OpenPlan.of(document, { now: () => this.#desk.moment() }));
    for (const act of acts)
      try {
        act();
      } catch (error) {
        this.#desk.complain(wordsOf(error));
      }
  }
}
