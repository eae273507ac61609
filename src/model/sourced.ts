/**
 * How well a published figure is known.
 * `read`: read in the source named. `read second-hand`: read in a page that quotes it. `worked out`: follows from
 * figures so known. `from memory` and `weak`: not read; check before relying on it.
 */
export const surenesses = [
  'read',
  'read second-hand',
  'worked out',
  'from memory',
  'weak',
  'our own',
] as const;
export type Sureness = (typeof surenesses)[number];

/** A figure that says where it comes from. */
export interface Sourced {
  readonly source: string;
  readonly sureness: Sureness;
}
