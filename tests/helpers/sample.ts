import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { emptyPlan } from '../../src/model/index.js';
import type { ImportedFile } from '../../src/engine/index.js';
import { root } from './cli.js';

export const emptyDocument = emptyPlan('Test', 'Europe/London');

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
