import type { Block } from './print/blocks.js';
import type { Report } from '../engine/report/report.js';
import { cautions as everyCaution, type Note } from '../model/index.js';

/** The answer of a verb, as JSON and as text. */
export interface Answer<Json extends object = object> {
  readonly json: Json;
  readonly text: readonly Block[];
  /** The report that `--out` writes. */
  readonly report?: Report<string>;
  /** Assumptions of the answer where input was missing. */
  readonly notes?: readonly Note[];
  /** Cautions of this verb; they precede the general ones. */
  readonly cautions?: readonly string[];
}

/** An answer with its notes and cautions. */
export interface Enveloped {
  readonly json: object;
  /** Notes first, cautions last. Some answers compute it lazily. */
  readonly text: readonly Block[];
  readonly notes: readonly Note[];
}

/**
 * Adds notes and cautions to an answer: to the JSON as `notes` and `cautions`, to the text as lines before and after.
 *
 * @param more Notes on the command line and on the files.
 */
export function enveloped(answer: Answer, more: readonly Note[]): Enveloped {
  const notes = [...more, ...(answer.notes ?? [])];
  const cautions = [...(answer.cautions ?? []), ...everyCaution];
  return {
    json: { ...answer.json, notes, cautions },
    get text() {
      return [
        ...notes.map(({ text }) => `note: ${text}`),
        ...(notes.length > 0 ? [''] : []),
        ...answer.text,
        '',
        ...cautions.map((line) => `! ${line}`),
      ];
    },
    notes,
  };
}
