/** Megabytes of heap that one side holds. */
export interface Held {
  /** After the plan was worked out. */
  readonly full: number;
  /** After 200 cells more. */
  readonly edited: number;
  /** Some number of the answers, read at the end: it keeps them from being swept away too soon. */
  readonly answers: number;
}
