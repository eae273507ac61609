import type { planSentences } from '../planner/plan-sentences.js';
import type { reasonSentences } from '../planner/reason-sentences.js';
import type { noteSentences } from '../tables/note-sentences.js';

/** All that the core says, by its keys: what a catalogue of another language has to hold. */
export type Sentences = typeof reasonSentences & typeof planSentences & typeof noteSentences;

/** Those of reasons, of plans and of notes on what was read. */
export type ReasonSentences = typeof reasonSentences;
export type PlanSentences = typeof planSentences;
export type NoteSentences = typeof noteSentences;
