/** What the notes say about places in time, in words: each mark of the ribbon, and those that found no room on it. */
import { listWords } from "../../format/words.ts";
import { noteMarks } from "../../summary/note-marks.ts";
import type { TakeSummary } from "../../summary/types.ts";

/** One sentence; empty when no remark has a timecode inside the take. */
export function noteMarksSentence(t: TakeSummary): string {
  const marks = noteMarks(t.take);
  if (marks.length === 0) return "";
  const words = marks.map(({ kind, timecode, words: said }) => {
    const name = said === "" ? (kind === "slate" ? "slate" : "mark") : said;
    return `${name} at ${timecode}`;
  });
  return `Noted in the remarks: ${listWords(words)}.`;
}
