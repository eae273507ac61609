/** Something that an answer rests on and that nobody said: told with every answer, never assumed in silence. */
export interface Note {
  /** kebab-case, stable. */
  readonly code: string;
  readonly text: string;
}
