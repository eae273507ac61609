export { activitiesFrom, type ActivitiesResult } from './activities.js';
export { decodeBytes, type DecodedText, type Encoding } from './decode.js';
export { detectDelimiter } from './delimiter.js';
export { fields, headingsOf, needed, type FieldOf } from './fields.js';
export { guarded, looksLikeFormula, unguarded } from './guard.js';
export { guessKind, matchColumns, type ColumnMap, type ColumnMatch } from './match-columns.js';
export { momentParser, type MomentReading } from './parse/moment.js';
export type { Parsed, Parser, Problem } from './parse/parsed.js';
export type { DateOrder } from './parse/written-moment.js';
export {
  planFrom,
  planFromDocument,
  type PlanResult,
  type PlanSources,
  type Source,
} from './plan.js';
export { readTable, type ReadOptions } from './read-table.js';
export { jsonFrom, type JsonSubject } from './json-document.js';
export { calendarFile, type CalendarEvent } from './calendar-file.js';
export { plantFrom, type PlantResult } from './plant.js';
export { forecastFrom, temperaturesFrom, type WeatherResult } from './weather.js';
export { rosterFrom, type RosterResult } from './roster.js';
export { resourcesFrom, type ResourcesResult } from './resources.js';
export { rulesFrom, type RulesResult } from './rules.js';
export { tableOf, type Table, type TableRow } from './table.js';
export { trainsFrom, type TrainOptions, type TrainsResult } from './trains.js';
export {
  windowsFrom,
  type ReadOptionsOfKind,
  type ReadResult,
  type WindowsResult,
} from './windows.js';
export { writeCsv, type Cell, type WriteOptions } from './write-csv.js';
