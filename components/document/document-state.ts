import { createContext } from '@lit/context';
import type { Allocation, Engine, HandbackResult, Results } from '../../src/engine/index.js';
import type { PlanDocument } from '../../src/model/index.js';

/** What takes a search, and is worked out only once an element inside asks for it. */
export type Wanted = 'plan' | 'handback';

/** What a `<possession-document>` gives to the elements inside it. A change is a new value. */
export interface DocumentState {
  readonly document: PlanDocument;
  /** The results; before the first ones, all of them but the verdicts, which take longest. Null until then. */
  readonly outline: Results | null;
  /** Null until the document has been worked out. */
  readonly results: Results | null;
  /** The agreed plan; where none is agreed, a proposal found by a search; null while none is wanted or known. */
  readonly plan: Allocation | null;
  /** Null while they are not wanted or not known. */
  readonly handbacks: readonly HandbackResult[] | null;
  /** What a reader picked last in any of the elements; empty: nothing. */
  readonly selected: { readonly package: string; readonly window: string };
  readonly engine: Engine;
  /** Asks for what takes a search, from now on after every change. */
  want(what: Wanted): void;
}

/** For elements of one's own: the context protocol of Lit, `@lit/context`. The key is the same in every copy of the package. */
export const documentContext = createContext<DocumentState, symbol>(
  Symbol.for('possession-fit/document'),
);
