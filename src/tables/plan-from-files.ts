import { noRules, tableKinds, type TableKind } from '../model/index.js';
import { chosenFaults, withChosen } from './headings/chosen-columns.js';
import { findHeadings } from './headings/find-headings.js';
import { rulesFrom } from './json/rules.js';
import { otherReaders } from './other-readers.js';
import { assemble, optionalTables } from './plan.js';
import {
  textsOf,
  type Given,
  type PlanResult,
  type PlanSources,
  type Source,
  type Tables,
} from './plan-sources.js';
import { decodeBytes } from './text/decode.js';
import { readRecords } from './text/read-table.js';
import { tableOfRecords } from './text/records.js';
import type { Table } from './text/table.js';

/**
 * Reads a whole plan from files and checks each against the others. Without rules nothing is deducted.
 *
 * @throws {RangeError} When `zone` is not a time zone.
 */
export function planFrom(sources: PlanSources): PlanResult {
  const rules = sources.rules
    ? rulesFrom(textOf(sources.rules.content), sources.rules.file)
    : { rules: noRules, faults: [] };
  const { columns: chosen = [], dateOrder } = sources;
  const given = (kind: TableKind, source: Source | undefined): Given | undefined => {
    if (!source) return undefined;
    const table = tableFrom(source, kind);
    return {
      ...(dateOrder && { dateOrder }),
      ...source,
      table,
      ...(chosen.length > 0 && withChosen(table, kind, chosen, source.map)),
    };
  };
  const tables: Tables = {
    windows: given('windows', sources.windows)!,
    ...optionalTables((kind) => given(kind, sources[kind])),
  };
  const read = assemble(
    otherReaders,
    tables,
    sources.zone,
    rules.rules ?? noRules,
    rules.faults,
    sources.site,
  );
  const misses = chosenFaults(
    chosen,
    tableKinds.flatMap((kind) => (tables[kind] ? [{ kind, ...tables[kind] }] : [])),
  );
  return { ...read, tables: textsOf(tables), faults: [...misses, ...read.faults] };
}

/** A table of a known kind, its headings on the line where most of that kind's stand. */
function tableFrom({ content }: Source, kind: TableKind): Table {
  if (typeof content !== 'string' && !(content instanceof Uint8Array)) return content;
  const records = readRecords(textOf(content));
  return tableOfRecords(records, findHeadings(records, [kind])?.line);
}

function textOf(content: string | Uint8Array): string {
  return typeof content === 'string' ? content : decodeBytes(content).text;
}
