/** The lines of input files that findings point at. */
import { codeFrame, type SourceLines } from "../core/code-frame.ts";
import { type Finding, sortFindings } from "../core/finding.ts";
import { pagedText } from "../csv/paged-text.ts";
import { surveyText } from "../csv/survey.ts";
import type { ShowFolder } from "../ingest/folder.ts";
import { sourceOf } from "../ingest/open-file.ts";

/** Opens the file of each finding; `null` where it has none or it is no text. In order of file, one text is open at a time, and of that a page. */
export function sourceLines(source: ShowFolder): (finding: Finding) => SourceLines | null {
  let current: { file: string; lines: SourceLines | null } | null = null;
  return (finding) => {
    if (finding.file === null || finding.line === null) return null;
    if (current?.file !== finding.file) current = { file: finding.file, lines: linesOf(source, finding.file) };
    return current.lines;
  };
}

function linesOf(source: ShowFolder, file: string): SourceLines | null {
  const bytes = sourceOf(source, file);
  if ("problem" in bytes) return null;
  const survey = surveyText(bytes);
  if (survey.nul !== null) return null;
  const text = pagedText(bytes, survey);
  return { count: survey.lines, text: (line) => text.line(line).replace(/\r$/, "") };
}

/** The lines around each finding, as the command prints them; findings without a line have none. */
export function findingFrames(findings: readonly Finding[], folder: ShowFolder): ReadonlyMap<Finding, readonly string[]> {
  const open = sourceLines(folder);
  const frames = new Map<Finding, readonly string[]>();
  for (const finding of sortFindings(findings)) {
    const frame = codeFrame(finding, open(finding));
    if (frame.length > 0) frames.set(finding, frame);
  }
  return frames;
}
