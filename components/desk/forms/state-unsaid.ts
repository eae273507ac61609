import type { Allocation } from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';
import type { TableChange } from '../../../src/plan/index.js';
import { CellEdits } from './edits.js';

export type Unsaid = Allocation['unstated'][number];

/** What a person states of a pair that the plan leaves unsaid. */
export type Statement = 'fit-after' | 'shared';

/** The statement that answers a pair. */
export const statementFor = ({ kind }: Unsaid): Statement =>
  kind === 'between-windows' ? 'fit-after' : 'shared';

/**
 * What puts a person's statement into the cells of the work: `none` under "made good by" for the earlier
 * work of each pair, `shared` under "occupies" for both. A column is added where there is none. Cells that say
 * something already stay as they are.
 */
export function stated(document: PlanDocument, pairs: readonly Unsaid[]): TableChange {
  const cells = new Map<string, Record<string, string>>();
  const say = (activity: string, field: string, text: string): void => {
    cells.set(activity, { ...cells.get(activity), [field]: text });
  };
  for (const pair of pairs)
    if (pair.kind === 'between-windows') say(pair.activity, 'made good by', 'none');
    else for (const id of [pair.activity, pair.other]) say(id, 'occupies', 'shared');
  const edits = new CellEdits(document, 'work');
  for (const [activity, fields] of cells)
    edits.set('activity', activity, fields, { onlyEmpty: true });
  return edits.change;
}
