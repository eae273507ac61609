/** The acts that can be undone and redone, as plain JSON, for the same plan opened again with all that was taken away. */
export interface KeptSteps {
  readonly done: readonly KeptStep[];
  readonly undone: readonly KeptStep[];
  /** Things that were put back under another id: [client, clock, new client, new clock, length]. */
  readonly again: readonly (readonly number[])[];
}

export interface KeptStep {
  readonly label: string;
  readonly put: Ranges;
  readonly taken: Ranges;
}

/** Client, and pairs of clock and length. */
export type Ranges = readonly (readonly [number, readonly number[]])[];

export const noSteps: KeptSteps = { done: [], undone: [], again: [] };
