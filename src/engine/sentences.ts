import type { reasonSentences } from '../planner/reason-sentences.js';

/** All that the core says, by its keys: what a catalogue of another language has to hold. */
export type Sentences = typeof reasonSentences;
