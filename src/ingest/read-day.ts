import { compareText, type Finding } from "../core/finding.ts";
import { collectFindings, FINDINGS_PER_CODE_AND_FILE, type FindingCollector } from "../core/findings/collect.ts";
import { LOG } from "../core/findings/log.ts";
import { SHOW } from "../core/findings/show.ts";
import { didYouMean } from "../core/nearest-name.ts";
import { wholeFile } from "../csv/decode.ts";
import type { ShowFolder } from "./folder.ts";
import { type FieldMap, readFieldMaps } from "./log/field-map.ts";
import { type LogContext, readLensLog } from "./log/lens-log.ts";
import type { LensLog } from "./log/log-record.ts";
import { readNotes } from "./notes.ts";
import { type Opener, opener } from "./open-file.ts";
import { exrSequences } from "./pictures/exr-sequence.ts";
import { readStills, tellOfStills } from "./pictures/stills.ts";
import { FIELD_MAPS } from "./read-show.ts";
import type { DayInput, ShowInput } from "./records.ts";
import { readOpenTrackIo } from "./samples/opentrackio.ts";
import { type DayFile, dayWithoutFile, readDayFile } from "./show/day-file.ts";
import { DAYS } from "./show/discover.ts";

const ENTRIES = ["day.yaml", "notes.csv", "logs", "stills"];

/**
 * Everything of one day's folder. Whatever cannot be read is a finding, and the rest is there.
 * @param most findings of one code in one file that are listed one by one (0: all)
 */
export function readDay(
  folder: ShowFolder,
  show: ShowInput,
  date: string,
  most = FINDINGS_PER_CODE_AND_FILE,
): { readonly input: DayInput; readonly findings: readonly Finding[] } {
  const found = collectFindings(most);
  const open = opener(folder, found);
  const base = `${DAYS}/${date}`;
  const names = open.list(base).map((entry) => entry.name);
  const day = readDayYaml(open, base, date, names.includes("day.yaml"), found);
  const notesFile = names.includes("notes.csv") ? `${base}/notes.csv` : null;
  const notesText = notesFile === null ? null : open.text(notesFile);
  const notes = notesFile === null || notesText === null ? [] : readNotes(notesText, notesFile, day.notes, found);
  const context: LogContext = { rate: show.show.rate, dropFrame: show.show.dropFrame, maps: fieldMaps(folder), date };
  const logFiles = logFilesOf(open, base, found);
  const stills = readStills(open, base, found);
  const logs = [
    ...logFiles.flatMap((file) => readLog(open, file, context, found) ?? []),
    ...exrSequences(stills, notes, context, found),
  ];
  if (notesFile === null && logFiles.length === 0) tellOfEmptyDay(base, names, found);
  tellOfOtherEntries(base, names, found);
  tellOfStills(open, base, notes, stills, found);
  return {
    input: {
      date,
      folder: base,
      record: day.record,
      keyPlace: day.keyPlace,
      notes,
      notesFile,
      logs,
      stills,
      files: [...open.files()].sort((a, b) => compareText(a.file, b.file)),
    },
    findings: found.list(),
  };
}

function readDayYaml(open: Opener, base: string, date: string, present: boolean, found: FindingCollector): DayFile {
  const file = `${base}/day.yaml`;
  if (!present) {
    found.add(SHOW.noDayFile, {
      place: wholeFile(file),
      message: `there is no ${file}`,
      hint: "Write one with day and date to have the day's number, times and scenes in the report.",
    });
    return dayWithoutFile(date, file);
  }
  const text = open.text(file);
  return text === null ? dayWithoutFile(date, file) : readDayFile(text, file, date, found);
}

/** The field maps of the show; what is wrong with them has been said when the show was read. */
function fieldMaps(folder: ShowFolder): readonly FieldMap[] {
  const silent = collectFindings();
  const open = opener(folder, silent);
  const text = open.has(FIELD_MAPS) ? open.text(FIELD_MAPS) : null;
  return text === null ? [] : readFieldMaps(text, FIELD_MAPS, silent);
}

function logFilesOf(open: Opener, base: string, found: FindingCollector): readonly string[] {
  const files: string[] = [];
  for (const { name, kind } of open.list(`${base}/logs`)) {
    const file = `${base}/logs/${name}`;
    if (/\.(csv|jsonl)$/i.test(name)) files.push(file);
    else {
      found.add(LOG.otherFile, {
        place: wholeFile(file),
        message: kind === "folder" ? `the folder ${file} is not looked into` : `${file} is not read`,
        hint:
          kind === "folder"
            ? "Logs are read from logs/ itself: move them there if the folder holds some."
            : "If it is a log, give it a name that ends in .csv or .jsonl; nothing else in logs/ is read.",
      });
    }
  }
  return files;
}

function readLog(open: Opener, file: string, context: LogContext, found: FindingCollector): LensLog | null {
  const text = open.pages(file);
  if (text === null) return null;
  const source = { file, text, sha256: open.hash(file) };
  return /\.jsonl$/i.test(file) ? readOpenTrackIo(source, context, found) : readLensLog(source, context, found);
}

function tellOfEmptyDay(base: string, names: readonly string[], found: FindingCollector): void {
  const near = didYouMean(
    "notes.csv",
    names.filter((name) => !ENTRIES.includes(name)),
  )
    .replace("Did you mean", "Is it")
    .trim();
  found.add(SHOW.emptyDay, {
    place: wholeFile(base),
    message: `there is neither ${base}/notes.csv nor a log in ${base}/logs/`,
    hint: near === "" ? "Add notes.csv or a log ending in .csv or .jsonl." : `${near} Rename it to notes.csv.`,
  });
}

function tellOfOtherEntries(base: string, names: readonly string[], found: FindingCollector): void {
  for (const name of names) {
    if (ENTRIES.includes(name)) continue;
    found.add(SHOW.otherEntry, {
      place: wholeFile(`${base}/${name}`),
      message: `${base}/${name} is not read`,
      hint: didYouMean(name, ENTRIES).trim() || `A day's folder has ${ENTRIES.join(", ")}.`,
    });
  }
}
