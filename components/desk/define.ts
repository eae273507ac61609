import '../account/define.js';
import '../booking/define.js';
import '../compare/define.js';
import '../fit/define.js';
import '../handback/define.js';
import '../import/define.js';
import '../ledger/define.js';
import '../overrun/define.js';
import '../plan/define.js';
import '../ribbon/define.js';
import '../sheet/define.js';
import '../units/define.js';
import '../wanted/define.js';
import '../where/define.js';
import '../why/define.js';
import '../lifting/define.js';
import '../noise/define.js';
import '../options/define.js';
import '../people/define.js';
import '../rules/define.js';
import { PossessionDesk } from './desk.js';

if (!customElements.get('possession-desk'))
  customElements.define('possession-desk', PossessionDesk);

export { PossessionDesk };
export type { FigureAskEvent } from '../shared/figure-ask-event.js';
