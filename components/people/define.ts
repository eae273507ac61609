import { PossessionPeople } from './people.js';

if (!customElements.get('possession-people'))
  customElements.define('possession-people', PossessionPeople);

export { PossessionPeople };
