import type { nothing, ReactiveControllerHost, TemplateResult } from 'lit';
import { plansOf, planOf, type ListedPlan } from '../../share/ask-server.js';
import type { Server } from '../../share/connection.js';
import { PlanLink } from '../../share/plan-link.js';
import type { CellPlace, Other } from '../../share/presence.js';
import { addressTrouble, longestName, type ShareState } from '../../share/share-state.js';
import { spokenNow } from '../../shared/language.js';
import { wordsOf } from '../../shared/words-of.js';
import type { Desk } from '../desk-parts.js';
import { keepName, keepServer, keptName, keptServer } from './shared-servers.js';
import type { ShownSharing } from './sharing-parts.js';
import { sharingChip, sharingView } from './sharing-view.js';
import { strings as german } from './strings.de.js';
import { defaultStrings } from './strings.js';

/** The desk, as sharing uses it. */
export type SharingHost = Desk & ReactiveControllerHost;

/** Shares the plan shown with other people, by a server that one of them runs; off until somebody asks for it. */
export class SharedPlan implements ShownSharing {
  /** Plans of the server that was asked; null: none was. */
  offered: readonly ListedPlan[] | null = null;
  trouble = '';
  busy = false;
  /** What the person here is called. */
  name = keptName();

  readonly #desk: SharingHost;
  #link: PlanLink | null = null;
  #reads = false;
  #cell: CellPlace | undefined;
  #asked: Server | null = null;

  constructor(desk: SharingHost) {
    this.#desk = desk;
  }

  /** Those of the language in which the desk draws itself. */
  words = defaultStrings;

  /** For the menu of the plan. */
  panel(): TemplateResult | typeof nothing {
    this.#hear();
    return sharingView(this.#desk, this);
  }

  /** For the head of the desk. */
  chip(): TemplateResult | typeof nothing {
    this.#hear();
    return sharingChip(this.#desk, this);
  }

  /** How it stands; null: the plan is not shared. */
  get state(): ShareState | null {
    return this.#link?.state ?? null;
  }

  get address(): string {
    return this.#link?.server.address ?? '';
  }

  get others(): readonly Other[] {
    return this.#link?.others ?? [];
  }

  /** Whether the token lets the person here only read. */
  get reads(): boolean {
    return this.#link !== null && this.#reads;
  }

  /** Puts the plan shown on a server, or joins it there. */
  share(server: Server): void {
    const { kept } = this.#desk.keeping;
    if (!kept || !this.#isServer(server)) return;
    keepServer(kept.id, { ...server, reads: false });
    this.follow();
    this.#desk.requestUpdate();
  }

  /** Asks a server which plans it has. */
  async look(server: Server): Promise<void> {
    if (!this.#isServer(server)) return;
    await this.#during(async () => {
      this.#asked = server;
      this.offered = await plansOf(server);
    });
  }

  /** Opens a plan of the server that was asked, as a plan on this device that is shared. */
  readonly open = async (id: string): Promise<void> => {
    const server = this.#asked;
    if (!server) return;
    await this.#during(async () => {
      const { update, reads } = await planOf(server, id);
      keepServer(id, { ...server, reads });
      await this.#desk.openShared(id, update);
      this.offered = null;
      this.#asked = null;
    });
  };

  /** Ends the sharing of the plan shown; it stays on this device as it is. */
  leave(): void {
    if (!this.#link) return;
    keepServer(this.#link.id, undefined);
    this.drop();
    this.#desk.say(this.words.left);
  }

  rename(name: string): void {
    this.name = name.trim().slice(0, longestName);
    keepName(this.name);
    this.follow();
  }

  /** The person here went to a cell. */
  at(cell: CellPlace | undefined): void {
    this.#cell = cell;
    this.#sayHere();
  }

  /** Pairs the plan that is kept with its server: the two always belong together, whatever is on the screen. */
  follow(): void {
    const { kept } = this.#desk.keeping;
    const server = kept && kept.plan === this.#desk.plan ? keptServer(kept.id) : undefined;
    const link = this.#link;
    const stays =
      server !== undefined &&
      link?.plan === kept?.plan &&
      link?.server.address === server.address &&
      link.server.token === server.token;
    if (!stays) {
      this.drop();
      if (kept && server) {
        this.#reads = server.reads;
        this.#link = new PlanLink(kept.plan, kept.id, server, () => this.#onLink());
      }
    }
    if (this.#desk.plan) this.#desk.plan.person = { name: this.name };
    this.#sayHere();
  }

  #onLink(): void {
    const link = this.#link;
    if (link && link.state.kind === 'together' && link.reads !== this.#reads) {
      this.#reads = link.reads;
      keepServer(link.id, { ...link.server, reads: link.reads });
    }
    this.#desk.requestUpdate();
  }

  #sayHere(): void {
    const { view } = this.#desk;
    const isTable = view === 'table' || view === 'work';
    this.#link?.sayHere({
      name: this.name,
      view,
      ...(isTable && this.#cell && { cell: this.#cell }),
      ...(this.#reads && { reads: true }),
    });
  }

  /** Ends the connection; the plan is shared again when it is shown again. */
  drop(): void {
    this.#link?.leave();
    this.#link = null;
    this.#reads = false;
  }

  #hear(): void {
    this.words = spokenNow().words === 'de' ? german : defaultStrings;
  }

  #isServer({ address, token }: Server): boolean {
    this.trouble = addressTrouble(address) || (token === '' ? this.words.noToken : '');
    this.offered = null;
    this.#desk.requestUpdate();
    return this.trouble === '';
  }

  async #during(work: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.trouble = '';
    this.#desk.requestUpdate();
    try {
      await work();
    } catch (error) {
      this.trouble = wordsOf(error);
    } finally {
      this.busy = false;
      this.#desk.requestUpdate();
    }
  }
}
