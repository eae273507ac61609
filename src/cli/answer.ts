import type { Report } from '../engine/report/report.js';
import { cautions, type Note } from '../model/index.js';

/** What a verb found: one document for scripts, and the same in words. */
export interface Answer {
  readonly json: object;
  readonly text: string;
  /** The same to be sent, for `--out`. */
  readonly report?: Report;
  /** What the answer rests on and nobody said. */
  readonly notes?: readonly Note[];
}

/**
 * The answer with its notes and cautions: in the document as `notes` and `cautions`, in the text as lines before it.
 *
 * @param more Notes of the command line and of what was read.
 */
export function enveloped(answer: Answer, more: readonly Note[]): Answer {
  const notes = [...more, ...(answer.notes ?? [])];
  return {
    json: { ...answer.json, notes, cautions },
    text: [...notes.map(({ text }) => `note: ${text}`), ...(notes.length > 0 ? [''] : [])]
      .concat(answer.text)
      .join('\n'),
    notes,
  };
}

/** Text for a person, with the cautions below it. */
export function withCautions(text: string): string {
  return [text, '', ...cautions.map((line) => `! ${line}`)].join('\n');
}
