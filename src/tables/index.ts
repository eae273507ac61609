export {
  actualsFrom,
  type ActualRow,
  type ActualsOptions,
  type ActualsResult,
} from './kinds/actuals.js';
export { riskEventsFrom, type RiskEventsResult } from './kinds/risk-events.js';
export { activitiesFrom, type ActivitiesResult } from './kinds/activities.js';
export { keepReading, newReading, type WorkReading } from './kinds/work-reading.js';
export { chosenColumns, type ChosenColumn } from './headings/chosen-columns.js';
export {
  isolationCell,
  isolationCut,
  isolationLike,
  movedTo,
  type CutIsolation,
} from './kinds/cut-isolation.js';
export { decodeAs, decodeBytes, type DecodedText, type Encoding } from './text/decode.js';
export { dateColumns, findDates, type DateFinding } from './dates/date-finding.js';
export { delimiters, detectDelimiter } from './text/delimiter.js';
export {
  exportFormats,
  exportTable,
  exportTables,
  type ExportedFile,
  type ExportFormat,
  type ExportOptions,
  type ResultTable,
} from './write/export-tables.js';
export { findHeadings } from './headings/find-headings.js';
export { fields, headingsOf, needed, type FieldOf } from './headings/fields.js';
export { guarded, looksLikeFormula, unguarded } from './write/guard.js';
export {
  entryOf,
  guessKind,
  likelyKind,
  matchColumns,
  type ColumnMap,
  type ColumnMatch,
  unreadHeadings,
} from './headings/match-columns.js';
export { momentParser, type MomentReading } from './parse/moment.js';
export type { Parsed, Parser } from './parse/parsed.js';
export type { DateOrder } from './parse/written-moment.js';
export { otherReaders, type OtherReaders } from './other-readers.js';
export { planWith } from './plan.js';
export { planFromDocument } from './plan-from-document.js';
export { planFrom } from './plan-from-files.js';
export type { PlanResult, PlanSources, Source } from './plan-sources.js';
export type { Effect, Take } from './merge-tables.js';
export { readRecords, readTable, type ReadOptions } from './text/read-table.js';
export { tableOfRecords, type Records } from './text/records.js';
export { looksLikeArchive } from './workbook/looks-like-archive.js';
export type { WorkbookResult, WorkbookSheet } from './workbook/read-workbook.js';
export { jsonFrom, type JsonSubject } from './json/json-document.js';
export { calendarFile, type CalendarEvent } from './write/calendar-file.js';
export { outsideText, placementsFrom, type PlacementsResult } from './kinds/placements.js';
export { plantFrom, type PlantResult } from './kinds/plant.js';
export { forecastFrom, temperaturesFrom, type WeatherResult } from './kinds/weather.js';
export { rosterFrom, type RosterResult } from './kinds/roster.js';
export { resourcesFrom, type ResourcesResult } from './kinds/resources.js';
export { rulesFrom, type RulesResult } from './json/rules.js';
export { unreadDangers } from './headings/fail-closed.js';
export { exampleCells, fieldsSuggested } from './headings/suggest.js';
export { tooManyBytes, tooManyCells } from './text/size-limits.js';
export { tableOf, type Table, type TableRow } from './text/table.js';
export { trainsFrom, type TrainOptions, type TrainsResult } from './kinds/trains.js';
export {
  windowsFrom,
  type ReadOptionsOfKind,
  type ReadResult,
  type WindowsResult,
} from './kinds/windows.js';
export { writeCsv, type Cell, type WriteOptions } from './write/write-csv.js';
export { PlanCache } from './plan-cache.js';
