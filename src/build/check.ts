/** Reads a show, or one day of it, and says what was found; writes nothing. */
import { countFindings, type Finding, type FindingCounts, sortFindings } from "../core/finding.ts";
import { FINDINGS_PER_CODE_AND_FILE } from "../core/findings/collect.ts";
import type { ShowFolder } from "../ingest/folder.ts";
import { readDay } from "../ingest/read-day.ts";
import { readShow } from "../ingest/read-show.ts";
import { buildDay } from "../model/build-day.ts";
import { checkAcrossDays, type NotedDay } from "../model/checks/across-days.ts";
import type { RowCounts } from "../model/types.ts";
import { summariseDay } from "../summary/day.ts";
import { notedDay } from "../summary/digest.ts";
import { linkFindings } from "./link-findings.ts";
import { addRows, NO_ROWS } from "./row-sums.ts";
import type { ShowFiles } from "./show-files.ts";

export interface CheckResult {
  /** False when the show cannot be read at all. */
  readonly usable: boolean;
  readonly findings: readonly Finding[];
  readonly counts: FindingCounts;
  readonly days: number;
  readonly takes: number;
  readonly rows: RowCounts;
}

/**
 * Checks the days asked for (none: all) one after the other.
 * Rules across days are looked at when all days are read.
 * @param onlyFile when given, only findings of this file are kept, and the days that do not hold it are not read
 * @param most findings of one code in one file that are listed one by one (0: all)
 */
export function checkShow(
  folder: ShowFiles,
  dates: readonly string[],
  onlyFile: string | null = null,
  most = FINDINGS_PER_CODE_AND_FILE,
): CheckResult {
  const { input: show, findings: showFindings } = readShow(folder, most);
  const findings = [...showFindings];
  const noted: NotedDay[] = [];
  let rows = NO_ROWS;
  let days = 0;
  let takes = 0;
  for (const date of show?.dates ?? []) {
    if (show === null || (dates.length > 0 && !dates.includes(date))) continue;
    if (onlyFile !== null && !onlyFile.startsWith(`days/${date}/`)) continue;
    const reading = readDay(folder, show, date, most);
    const summary = summariseDay(buildDay(show, reading.input, reading.findings), show.kit, most);
    noted.push(notedDay(summary.day));
    findings.push(...summary.findings);
    rows = addRows(rows, onlyFile === null ? summary.rows : (summary.day.logs.find((log) => log.file === onlyFile) ?? NO_ROWS));
    takes += summary.takes.filter((t) => !t.take.duplicate).length;
    days++;
  }
  if (show !== null && dates.length === 0 && onlyFile === null) findings.push(...checkAcrossDays(noted, show.show.accepted, most));
  findings.push(...linkFindings(folder.linksLeftOut(), findings));
  const kept = onlyFile === null ? findings : findings.filter((f) => f.file === onlyFile);
  return { usable: show !== null, findings: sortFindings(kept), counts: countFindings(kept), days, takes, rows };
}

/**
 * Checks one notes or log file by itself: what its cells say, and nothing that takes other files to know.
 * @param name name that the findings give the file
 */
export function checkOneFile(folder: ShowFolder, file: string, name: string, most = FINDINGS_PER_CODE_AND_FILE): CheckResult {
  const { input: show } = readShow(folder);
  const [date] = show?.dates ?? [];
  if (show === null || date === undefined)
    return { usable: false, findings: [], counts: countFindings([]), days: 0, takes: 0, rows: NO_ROWS };
  const { input, findings } = readDay(folder, show, date, most);
  const own = findings.filter((f) => f.file === file).map((f) => ({ ...f, file: name }));
  return {
    usable: true,
    findings: sortFindings(own),
    counts: countFindings(own),
    days: 1,
    takes: input.notes.length,
    rows: NO_ROWS,
  };
}
