/** How much work a search may do, counted in steps: the same on every machine at any load. */
export interface Budget {
  /** Counts work that was done; a step is about as long as a look at one bound. */
  spend(steps: number): void;
  /** Whether the search must hand back the best answer it has. Once it must, it always must. */
  expired(): boolean;
}
