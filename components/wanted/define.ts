import { PossessionWanted } from './wanted.js';

if (!customElements.get('possession-wanted'))
  customElements.define('possession-wanted', PossessionWanted);

export { PossessionWanted };
