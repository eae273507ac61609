import { PossessionRules } from './rules.js';

if (!customElements.get('possession-rules'))
  customElements.define('possession-rules', PossessionRules);

export { PossessionRules };
export type { RulesBaseEvent } from './rules-base-event.js';
export type { RulesSaveEvent } from './rules-save-event.js';
export type { RulesChangeEvent } from './rules-change-event.js';
export type { WhyLinkEvent } from '../why/why-events.js';
