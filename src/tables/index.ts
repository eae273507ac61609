export { actualsFrom, type ActualRow, type ActualsOptions, type ActualsResult } from './actuals.js';
export { riskEventsFrom, type RiskEventsResult } from './risk-events.js';
export { activitiesFrom, type ActivitiesResult } from './activities.js';
export { chosenColumns, type ChosenColumn } from './chosen-columns.js';
export {
  isolationCell,
  isolationCut,
  isolationLike,
  movedTo,
  type CutIsolation,
} from './cut-isolation.js';
export { decodeAs, decodeBytes, type DecodedText, type Encoding } from './decode.js';
export { dateColumns, findDates, type DateFinding } from './date-finding.js';
export { delimiters, detectDelimiter } from './delimiter.js';
export {
  exportFormats,
  exportTable,
  exportTables,
  type ExportedFile,
  type ExportFormat,
  type ExportOptions,
  type ResultTable,
} from './export-tables.js';
export { findHeadings } from './find-headings.js';
export { fields, headingsOf, needed, type FieldOf } from './fields.js';
export { guarded, looksLikeFormula, unguarded } from './guard.js';
export {
  entryOf,
  guessKind,
  likelyKind,
  matchColumns,
  type ColumnMap,
  type ColumnMatch,
  unreadHeadings,
} from './match-columns.js';
export { momentParser, type MomentReading } from './parse/moment.js';
export type { Parsed, Parser, Problem } from './parse/parsed.js';
export type { DateOrder } from './parse/written-moment.js';
export { planFrom, planFromDocument } from './plan.js';
export type { PlanResult, PlanSources, Source } from './plan-sources.js';
export { mergeTables, takes, type Effect, type Merge, type Take } from './merge-tables.js';
export { readRecords, readTable, type ReadOptions } from './read-table.js';
export { tableOfRecords, type Records } from './records.js';
export { looksLikeArchive } from './workbook/looks-like-archive.js';
export type { WorkbookResult, WorkbookSheet } from './workbook/read-workbook.js';
export { jsonFrom, type JsonSubject } from './json-document.js';
export { calendarFile, type CalendarEvent } from './calendar-file.js';
export { outsideText, placementsFrom, type PlacementsResult } from './placements.js';
export { plantFrom, type PlantResult } from './plant.js';
export { forecastFrom, temperaturesFrom, type WeatherResult } from './weather.js';
export { rosterFrom, type RosterResult } from './roster.js';
export { resourcesFrom, type ResourcesResult } from './resources.js';
export { rulesFrom, type RulesResult } from './rules.js';
export { unreadDangers } from './fail-closed.js';
export { exampleCells, fieldsSuggested } from './suggest.js';
export { sizeLimits, tooManyBytes, tooManyCells } from './size-limits.js';
export { tableOf, type Table, type TableRow } from './table.js';
export { trainsFrom, type TrainOptions, type TrainsResult } from './trains.js';
export {
  windowsFrom,
  type ReadOptionsOfKind,
  type ReadResult,
  type WindowsResult,
} from './windows.js';
export { writeCsv, type Cell, type WriteOptions } from './write-csv.js';
export { PlanMemory } from './plan-memory.js';
