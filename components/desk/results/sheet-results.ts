import type { PlanDocument } from '../../../src/model/index.js';
import {
  columnOf,
  type Allocation,
  type HandbackResult,
  type Results,
} from '../../../src/engine/index.js';
import type { ResultColumn } from '../../sheet/result-column.js';
import { ResultsKept } from './results-kept.js';
import type { ResultTable } from '../views.js';
import type { ResultStrings } from '../../results/strings.js';
import { windowColumns } from '../../results/window-results.js';
import { workColumns } from '../../results/work-results.js';

interface Made {
  readonly of: readonly unknown[];
  readonly columns: readonly ResultColumn[];
}

/** What the columns are made of. */
interface WorkedOut {
  readonly figures: { readonly results: Results | null };
  readonly planning: { readonly shown: Allocation | null };
  readonly outlooks: { readonly handbacks: readonly HandbackResult[] };
  readonly words: { readonly results: ResultStrings };
}

const none: readonly ResultColumn[] = [];

/** The worked-out columns of the tables, made anew only where what they are made of is another. */
export class SheetResults {
  readonly #made = new Map<ResultTable, Made>();
  /** Which of them a person wants to see, and in what order. */
  readonly kept = new ResultsKept();

  of(
    { figures, planning, outlooks, words: { results: words } }: WorkedOut,
    document: PlanDocument,
    kind: ResultTable,
  ): readonly ResultColumn[] {
    const { results } = figures;
    if (!results) return none;
    const table = document.tables[kind];
    const idColumn = columnOf(table, kind, kind === 'windows' ? 'window' : 'activity') ?? -1;
    const of = [results, planning.shown, outlooks.handbacks, document.zone, idColumn, words];
    const before = this.#made.get(kind);
    if (before && of.every((item, at) => item === before.of[at])) return before.columns;
    const columns = columnsOf(kind, {
      results,
      plan: planning.shown,
      handbacks: outlooks.handbacks,
      zone: document.zone,
      idColumn,
      words,
    });
    this.#made.set(kind, { of, columns });
    return columns;
  }
}

interface Known {
  readonly results: Results;
  readonly plan: Allocation | null;
  readonly handbacks: readonly HandbackResult[];
  readonly zone: string;
  readonly idColumn: number;
  readonly words: ResultStrings;
}

const columnsOf = (kind: ResultTable, known: Known): readonly ResultColumn[] =>
  kind === 'windows' ? windowColumns(known, known.words) : workColumns(known, known.words);
