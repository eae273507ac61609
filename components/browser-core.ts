// For a plain page that shows windows, work and what fits: the fewest bytes. `browser.ts` has everything.
export { documentContext } from './document/define.js';
import './fit/define.js';
import './ledger/define.js';
import './ribbon/define.js';
import './sheet/define.js';
