import { readFileSync } from 'node:fs';
import { importFiles } from '../../src/engine/import/import-files.js';
import { emptyPlan, type Plan } from '../../src/model/index.js';
import { planFromDocument } from '../../src/tables/index.js';

const paths = ['windows.csv', 'work.csv', 'resources.csv', 'rules/electrified-two-track.json'];

/** The sample plan, read as a person's files are. */
export async function samplePlan(): Promise<Plan> {
  const files = paths.map((path) => ({
    name: path.replace(/^.*\//, ''),
    bytes: new Uint8Array(readFileSync(`sample-csv/${path}`)),
  }));
  const { document } = await importFiles(files, emptyPlan('Sample', 'Europe/London'));
  return planFromDocument(document).plan;
}
