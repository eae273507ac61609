// Types of the plan: all that the check uses of the rest of the project. No code is shared.
export type {
  AccessWindow,
  Activity,
  Availability,
  Curfew,
  CuringData,
  Link,
  MaturityModel,
  Plan,
  Phrase,
  PlanFault,
  Resource,
  SayPhrase,
  Sentence,
  Step,
  Weekday,
} from '../model/index.js';

/** Milliseconds since 1970-01-01T00:00Z. */
export type Instant = number;

/** Half-open: `end` is excluded. */
export interface Stretch {
  readonly start: Instant;
  readonly end: Instant;
}

export const MINUTE = 60_000;
