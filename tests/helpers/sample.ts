import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { emptyTable, noRules, type PlanDocument } from '../../src/model/index.js';
import type { ImportedFile } from '../../src/engine/index.js';
import { root } from './cli.js';

export const emptyDocument: PlanDocument = {
  schema: 1,
  name: 'Test',
  zone: 'Europe/London',
  tables: {
    windows: emptyTable('windows.csv'),
    work: emptyTable('work.csv'),
    resources: emptyTable('resources.csv'),
    trains: emptyTable('trains.csv'),
  },
  rules: noRules,
};

export const samplePaths = [
  'windows.csv',
  'work.csv',
  'resources.csv',
  'trains.csv',
  'rules/electrified-two-track.json',
];

/** The sample plan's files as a person would drop them. */
export function sampleFiles(): ImportedFile[] {
  return samplePaths.map((path) => ({
    name: path.replace(/^.*\//, ''),
    bytes: new Uint8Array(readFileSync(join(root, 'sample-csv', path))),
  }));
}
