import { otherExplanations } from '../shared/said.js';
import { explainStrings, type ExplainStrings } from './explain-strings.js';

/** The words of explanations in the language in force. */
export const explainWords = (): ExplainStrings =>
  (otherExplanations() as ExplainStrings | undefined) ?? explainStrings;
