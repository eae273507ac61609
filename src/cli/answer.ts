import type { Block } from './print/blocks.js';
import type { Report } from '../engine/report/report.js';
import { cautions as everyCaution, type Note } from '../model/index.js';

/** What a verb found: one document for scripts, and the same in words. */
export interface Answer<Json extends object = object> {
  readonly json: Json;
  readonly text: readonly Block[];
  /** The same to be sent, for `--out`. */
  readonly report?: Report;
  /** What the answer rests on and nobody said. */
  readonly notes?: readonly Note[];
  /** Cautions of this verb alone; they come before those of every answer. */
  readonly cautions?: readonly string[];
}

/** An answer as it is sent. */
export interface Enveloped {
  readonly json: object;
  /** Notes first, cautions last. Some answers work it out when it is read. */
  readonly text: readonly Block[];
  readonly notes: readonly Note[];
}

/**
 * The answer with its notes and cautions: in the document as `notes` and `cautions`, in the text as lines round it.
 *
 * @param more Notes of the command line and of what was read.
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
