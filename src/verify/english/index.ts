import { claimSentences } from './claim-sentences.js';
import { pieceSentences } from './piece-sentences.js';

/** English words for what the check finds. Whoever shows them loads them; the check itself never does. */
export const faultSentences = { ...pieceSentences, ...claimSentences };
