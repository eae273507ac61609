import { nothing, type ReactiveController, type TemplateResult } from 'lit';
import type { CellPlace, Other } from '../../share/presence.js';
import { wordsOf } from '../../shared/words-of.js';
import type { SharedPlan, SharingHost } from './shared-plan.js';
import type { DeskSharing } from './sharing-parts.js';
import { hearOfStorage, keepServer, keptName, keptServer } from './shared-servers.js';

/** Sharing the plan shown. What does it is loaded when a plan is shared or a person may ask for it, and not before. */
export class Sharing implements ReactiveController, DeskSharing {
  readonly #desk: SharingHost;
  #shared: SharedPlan | null = null;
  #loading: Promise<void> | null = null;
  #name: string | null = null;

  constructor(desk: SharingHost) {
    this.#desk = desk;
    desk.addController(this);
  }

  /** Others who have the plan open now. */
  get others(): readonly Other[] {
    return this.#shared?.others ?? [];
  }

  /** Whether the person here may only read the plan; known before the rest is loaded. */
  get reads(): boolean {
    return this.#shared ? this.#shared.reads : this.#kept?.reads === true;
  }

  hostConnected(): void {
    globalThis.addEventListener?.('storage', this.#onStorage);
    this.#shared?.follow();
  }

  hostUpdate(): void {
    if (this.#shared) return this.#shared.follow();
    const { plan } = this.#desk;
    if (plan) plan.person = { name: (this.#name ??= keptName()) };
    if (this.#kept) void this.#load();
  }

  hostDisconnected(): void {
    globalThis.removeEventListener?.('storage', this.#onStorage);
    this.#shared?.drop();
  }

  /** For the menu of the plan. */
  panel(): TemplateResult | typeof nothing {
    if (!this.#shared) void this.#load();
    return this.#shared?.panel() ?? nothing;
  }

  /** For the head of the desk. */
  chip(): TemplateResult | typeof nothing {
    return this.#shared?.chip() ?? nothing;
  }

  /** Ends the sharing of the plan shown; it stays on this device as it is. */
  async leave(): Promise<void> {
    await this.#load();
    this.#shared?.leave();
  }

  /** Forgets the server of a plan that is deleted. */
  forget(plan: string): void {
    keepServer(plan, undefined);
  }

  /** The person here went to a cell. */
  at(cell: CellPlace): void {
    this.#shared?.at(cell);
  }

  get #kept(): ReturnType<typeof keptServer> {
    const { kept } = this.#desk.keeping;
    return kept && kept.plan === this.#desk.plan ? keptServer(kept.id) : undefined;
  }

  /** Another page of this device began or ended the sharing of a plan, or was given a name. */
  readonly #onStorage = ({ key }: StorageEvent): void => {
    if (!hearOfStorage(key)) return;
    this.#name = null;
    this.#desk.requestUpdate();
  };

  #load(): Promise<void> {
    return (this.#loading ??= import('./shared-plan.js').then(
      ({ SharedPlan }) => {
        this.#shared = new SharedPlan(this.#desk);
        this.#desk.requestUpdate();
      },
      (error: unknown) =>
        this.#desk.complain(
          `What sharing needs could not be loaded, so nothing goes to others: ${wordsOf(error)}. Load the page anew.`,
        ),
    ));
  }
}
