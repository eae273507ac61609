/// <reference types="vite/client" />
import type { Engine, ImportResult } from '../src/engine/index.js';
import {
  emptyPlan,
  limitSetSchema,
  ruleSetSchema,
  type LimitSet,
  type RuleSet,
} from '../src/model/index.js';
import { sampleName } from './sample-name.js';

const tables = import.meta.glob<string>(
  '../sample-csv/{windows,work,resources,trains,prices,roster,forecast,temperatures,plant-noise}.{csv,json}',
  {
    query: '?raw',
    import: 'default',
    eager: true,
  },
);
const rules = import.meta.glob<string>('../sample-csv/rules/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

const limits = import.meta.glob<unknown>('../sample-csv/limits/*.json', {
  import: 'default',
  eager: true,
});

/** The sets of limits on hours that come with the project; each limit tells its source. */
export const limitSets: readonly LimitSet[] = Object.values(limits).flatMap((item) => {
  const read = limitSetSchema.safeParse(item);
  return read.success ? [read.data] : [];
});

/** Rule sets to begin a plan with; each tells that it is an example. */
export const ruleSets: readonly RuleSet[] = Object.values(rules).flatMap((text) => {
  const read = ruleSetSchema.safeParse(JSON.parse(text));
  return read.success ? [read.data] : [];
});

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** The sample files, read as a person's own files would be. The rules are those of an electrified line. */
export async function samplePlan(engine: Engine): Promise<ImportResult> {
  const chosen = Object.entries(rules).find(([path]) => path.includes('electrified'));
  const files = [...(chosen ? [chosen] : []), ...Object.entries(tables)].map(([path, text]) => ({
    name: nameOf(path),
    bytes: new TextEncoder().encode(text),
  }));
  return engine.importFiles(files, emptyPlan(sampleName, 'Europe/London'));
}
