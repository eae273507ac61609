import { PossessionWanted } from './wanted.js';
import { PossessionWhere } from './where.js';

if (!customElements.get('possession-where'))
  customElements.define('possession-where', PossessionWhere);
if (!customElements.get('possession-wanted'))
  customElements.define('possession-wanted', PossessionWanted);

export { PossessionWanted, PossessionWhere };
