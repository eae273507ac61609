import type { PlanDocument } from '../../src/model/index.js';

/** A name for the file of a plan: letters, figures and dashes. */
export function fileNameOf(document: PlanDocument): string {
  const name = document.name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return `${name === '' ? 'plan' : name}.plan.json`;
}
