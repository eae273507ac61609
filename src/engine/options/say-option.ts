import { phrasesOf } from '../../model/index.js';
import type { optionSentences } from './english/index.js';

export const sayOption = phrasesOf<typeof optionSentences>();
