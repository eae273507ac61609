import type { SaveState } from './save-state.js';

/** The plan is saved, on its way, or not saved. Sent by a `KeptPlan`. */
export class SaveStateEvent extends Event {
  readonly state: SaveState;

  constructor(state: SaveState) {
    super('save-state');
    this.state = state;
  }
}
