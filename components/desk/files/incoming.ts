import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { PlanDocument, RuleSet } from '../../../src/model/index.js';

interface Host extends ReactiveControllerHost {
  readonly document: PlanDocument | null;
  readonly sharing: { readonly reads: boolean };
  /** Name of the plan that nobody made: files of one's own do not go into it unless a person says so. */
  readonly sampleName: string;
  blank(): PlanDocument;
}

/** Where files go: into the plan on the screen, or into a new one. */
export class Incoming implements ReactiveController {
  readonly #host: Host;
  /** What a person chose; null: nothing yet. */
  #chosen: boolean | null = null;
  #blank: PlanDocument | null = null;
  #rules: RuleSet | null = null;

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    // Nothing to begin: a choice is made by a person.
  }

  /** Whether there is no other plan to put them into, or none that may be changed. */
  get mustBeNew(): boolean {
    return this.#host.document === null || this.#host.sharing.reads;
  }

  get isNew(): boolean {
    const { document, sampleName } = this.#host;
    return this.mustBeNew || (this.#chosen ?? (sampleName !== '' && document!.name === sampleName));
  }

  /** The new plan they go into; the same object until its rules change. */
  get document(): PlanDocument {
    if (!this.#blank) {
      const blank = this.#host.blank();
      this.#blank = this.#rules ? { ...blank, rules: this.#rules } : blank;
    }
    return this.#blank;
  }

  turn(isNew: boolean): void {
    this.#chosen = isNew;
    this.#host.requestUpdate();
  }

  /** Begins the new plan with a set of rules. */
  begin(rules: RuleSet): void {
    this.#rules = rules;
    this.#blank = null;
    this.#host.requestUpdate();
  }

  /** They were taken: the next files begin anew. */
  done(): void {
    this.#chosen = null;
    this.#rules = null;
    this.#blank = null;
  }
}
