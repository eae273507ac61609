import type { nothing, TemplateResult } from 'lit';
import type { ListedPlan } from '../../share/ask-server.js';
import type { Server } from '../../share/connection.js';
import type { CellPlace, Other } from '../../share/presence.js';
import type { ShareState } from '../../share/share-state.js';
import type { SharingStrings } from './strings.js';

/** Sharing, as the parts of the desk use it. */
export interface DeskSharing {
  /** Others who have the plan open now. */
  readonly others: readonly Other[];
  /** Whether the person here may only read the plan. */
  readonly reads: boolean;
  /** For the menu of the plan. */
  panel(): TemplateResult | typeof nothing;
  /** For the head of the desk. */
  chip(): TemplateResult | typeof nothing;
  /** Ends the sharing of the plan shown; it stays on this device as it is. */
  leave(): Promise<void>;
  /** Forgets the server of a plan that is deleted. */
  forget(plan: string): void;
  /** The person here went to a cell. */
  at(cell: CellPlace): void;
}

/** Sharing, as its own panel shows it. */
export interface ShownSharing {
  readonly words: SharingStrings;
  /** How it stands; null: the plan is not shared. */
  readonly state: ShareState | null;
  readonly address: string;
  readonly others: readonly Other[];
  readonly reads: boolean;
  /** What the person here is called. */
  readonly name: string;
  /** Plans of the server that was asked; null: none was. */
  readonly offered: readonly ListedPlan[] | null;
  readonly trouble: string;
  readonly busy: boolean;
  readonly open: (id: string) => Promise<void>;
  share(server: Server): void;
  look(server: Server): Promise<void>;
  leave(): void;
  rename(name: string): void;
}
