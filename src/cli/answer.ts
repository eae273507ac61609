import { cautions } from '../model/index.js';

/** What a verb found: one document for scripts, and the same in words. */
export interface Answer {
  readonly json: unknown;
  readonly text: string;
}

/** Text for a person, with the cautions below it. */
export function withCautions(text: string): string {
  return [text, '', ...cautions.map((line) => `! ${line}`)].join('\n');
}
