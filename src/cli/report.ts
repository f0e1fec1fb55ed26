/** Findings as text: one line each that editors and grep understand, then the place and the way to mend it. */
import { isAbsolute, join, relative } from "node:path";
import { sourceLines } from "../build/source-lines.ts";
import { codeFrame, isCaretLine, type SourceLines } from "../core/code-frame.ts";
import type { Finding, Severity } from "../core/finding.ts";
import type { ShowFolder } from "../ingest/folder.ts";
import { type Colours, severityWord } from "./style.ts";

export interface ReportOptions {
  /** The show folder's absolute path and the working directory: together they make paths that can be clicked. */
  readonly root: string;
  readonly cwd: string;
  /** Findings of one code in one file beyond this number are counted, not shown; 0 shows all. */
  readonly limit: number;
  readonly severities: readonly Severity[];
  readonly colours: Colours;
}

/** All findings of the wanted severities in the order given, as lines of text. Empty when there is nothing to say. */
export function findingsText(findings: readonly Finding[], source: ShowFolder, options: ReportOptions): string {
  const wanted = findings.filter((f) => options.severities.includes(f.severity));
  const shown = new Map<string, number>();
  const left = new Map<string, number>();
  const explained = new Set<string>();
  const lines: string[] = [];
  const open = sourceLines(source);
  for (const [index, finding] of wanted.entries()) {
    const key = `${finding.file}\n${finding.code}`;
    const count = (shown.get(key) ?? 0) + 1;
    shown.set(key, count);
    if (finding.more !== undefined || (options.limit > 0 && count > options.limit)) {
      left.set(key, (left.get(key) ?? 0) + (finding.more ?? 1));
    } else {
      lines.push(...findingLines(finding, open(finding), options));
      if (!explained.has(finding.code)) lines.push(options.colours.dim(`  run: daybook explain ${finding.code}`));
      explained.add(finding.code);
      lines.push("");
    }
    if (wanted[index + 1]?.file !== finding.file) lines.push(...moreLines(finding.file, left));
  }
  return lines.length === 0 ? "" : `${lines.join("\n")}\n`;
}

function findingLines(finding: Finding, source: SourceLines | null, options: ReportOptions): readonly string[] {
  const { colours } = options;
  const place = placeText(finding, options);
  const head = `${severityWord(finding.severity, colours)} ${colours.bold(finding.code)}  ${finding.message}`;
  const frame = codeFrame(finding, source).map((line) => (isCaretLine(line) ? colours.red(line) : colours.dim(line)));
  const last = finding.accepted === null ? finding.hint : `accepted: ${finding.accepted}`;
  return [place === "" ? head : `${place}  ${head}`, ...frame, `  ${last}`];
}

function placeText(finding: Finding, options: ReportOptions): string {
  if (finding.file === null) return "";
  const path = clickablePath(join(options.root, finding.file), options.cwd);
  if (finding.line === null) return path;
  return finding.column === null ? `${path}:${finding.line}` : `${path}:${finding.line}:${finding.column}`;
}

/** A path from the working directory when it lies below it, else the absolute one. */
export function clickablePath(path: string, cwd: string): string {
  const way = relative(cwd, path);
  return way !== "" && !way.startsWith("..") && !isAbsolute(way) ? way : path;
}

function moreLines(file: string | null, left: Map<string, number>): readonly string[] {
  const own = [...left].filter(([key]) => key.startsWith(`${file}\n`));
  for (const [key] of own) left.delete(key);
  if (own.length === 0) return [];
  const lines = own.map(
    ([key, count]) => `${file ?? ""}  and ${count} more ${key.slice(key.indexOf("\n") + 1)} (check --max-findings 0 shows all)`,
  );
  return [...lines, ""];
}
