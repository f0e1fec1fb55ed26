/**
 * Lens Daybook as a library: read a show, build a report, or use the parts in between. Optics and timecode are at
 * `lens-daybook/optics` and `lens-daybook/time`. Nothing here throws for bad input: problems come back as findings.
 */
export type { BuildEffects, BuildLog, DayReport, OutFolder } from "./build/effects.ts";
export { loadPipeline } from "./build/make.ts";
export { outFiles } from "./build/out-files.ts";
export type { Pipeline, Tool } from "./build/pipeline.ts";
export { programHash, thisTool } from "./build/program.ts";
export { type BuildResult, buildShow } from "./build/run.ts";
export type { BuildOptions, Fault } from "./build/session.ts";
export { type ShowFiles, showFiles } from "./build/show-files.ts";
export { countFindings, type Finding, type Severity, sortFindings } from "./core/finding.ts";
export { FINDING_KINDS, findingKind } from "./core/findings/catalogue.ts";
export type { FindingKind } from "./core/findings/kind.ts";
export type { DistanceM, Source } from "./core/quantity.ts";
export { dayDataPackage } from "./export/datapackage.ts";
export { dayJson, dayObject } from "./export/day-json.ts";
export { findingsCsv } from "./export/findings-csv.ts";
export { takesCsv } from "./export/takes-csv.ts";
export type { FolderEntry, ShowFolder } from "./ingest/folder.ts";
export { readDay } from "./ingest/read-day.ts";
export { readShow } from "./ingest/read-show.ts";
export type { DayInput, Kit, Lens, ShowInput, ShowRecord } from "./ingest/records.ts";
export { buildDay } from "./model/build-day.ts";
export type { Day, Take } from "./model/types.ts";
export { summariseDay } from "./summary/day.ts";
export type { DaySummary, TakeSummary } from "./summary/types.ts";
