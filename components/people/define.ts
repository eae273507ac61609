import { PossessionPeople } from './people.js';

if (!customElements.get('possession-people'))
  customElements.define('possession-people', PossessionPeople);

export { PossessionPeople };
export type { LimitsChangeEvent } from './limits-change-event.js';
export type { RosterMendEvent } from './roster-mend-event.js';
