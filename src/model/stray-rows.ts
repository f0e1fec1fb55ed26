/** Rows that found no frame, kept by reason until the log is read, and what is said about them. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { MATCH } from "../core/findings/match.ts";
import { didYouMean } from "../core/nearest-name.ts";
import type { LensLog } from "../ingest/log/log-record.ts";
import { sameName } from "./address.ts";
import type { PictureFrame } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";
import type { DraftIndex } from "./draft-index.ts";
import { hoursApart, hoursWords } from "./hours-apart.ts";
import type { KeyOf, MatchRule } from "./match-rule.ts";
import { positionIn } from "./position.ts";

/** Rows that found no frame, kept by reason until the log is read. */
export class StrayRows {
  readonly #nobody: number[] = [];
  readonly #outside: { row: number; candidates: readonly number[] }[] = [];
  #spare: number[] = [];

  nobody(row: number): void {
    this.#nobody.push(row);
  }

  outside(row: number, candidates: readonly number[]): void {
    this.#outside.push({ row, candidates });
  }

  spare(row: number): void {
    this.#spare.push(row);
  }

  report(
    log: LensLog,
    rule: MatchRule,
    index: DraftIndex,
    clockOf: (camera: string | null) => PictureFrame,
    key: KeyOf,
    resampled: boolean,
  ): Finding[] {
    const findings: Finding[] = [];
    const [first] = this.#nobody;
    if (first !== undefined) findings.push(matchesNobody(log, rule, first, this.#nobody.length, key, index));
    findings.push(...this.#otherTake(log, rule, index, clockOf));
    const outside = this.#outside[0];
    if (outside !== undefined) findings.push(this.#outsideFinding(log, rule, index, clockOf, outside));
    const [spare] = this.#spare;
    if (spare !== undefined && !resampled) {
      findings.push(
        findingOf(MATCH.severalSamples, {
          place: log.cell(spare, "timecode").place,
          message: `${this.#spare.length} rows fall on a frame that another row already has; the sample nearest to the frame is used.`,
          hint: "A log with several samples a frame is read this way. If the log should have one row a frame, check its rate.",
        }),
      );
    }
    return findings;
  }

  #outsideFinding(
    log: LensLog,
    rule: MatchRule,
    index: DraftIndex,
    clockOf: (camera: string | null) => PictureFrame,
    first: { readonly row: number; readonly candidates: readonly number[] },
  ): Finding {
    const all = this.#outside.length === log.rows - log.rejected.reduce((sum, flag) => sum + flag, 0);
    const named = index.drafts[first.candidates[0] ?? -1];
    const take = rule === "camera and timecode" ? null : (named?.address ?? null);
    const place = log.cell(first.row, "timecode").place;
    const message = `${this.#outside.length} of ${log.rows} rows lie outside the extent of ${rule === "camera and timecode" ? "every take of the camera" : "the take they name"}; the first is line ${log.lineOf(first.row)}.`;
    if (!all) {
      return findingOf(MATCH.rowsOutside, {
        place,
        message,
        hint: "Rows before the slate, after the cut or between takes are not used. Nothing needs to be done if that is what they are.",
        take,
      });
    }
    const camera = named?.camera ?? null;
    const candidates = new Set(this.#outside.flatMap((stray) => stray.candidates));
    const takes = [...candidates].map((i) => index.drafts[i] as TakeDraft);
    const apart = takes.some((one) => one.camera !== camera)
      ? null
      : hoursApart(
          this.#outside.map(({ row }) => row),
          takes,
          clockOf(camera),
        );
    if (apart === null) {
      return findingOf(MATCH.allRowsOutside, {
        place,
        message,
        hint: 'Compare the log\'s timecode with tc_in and tc_out in the notes: another clock is written as "# clock_offset_frames: N" (log + offset = picture).',
        take,
      });
    }
    const fitting = takes.length === 1 ? `the take ${takes[0]?.address ?? ""}` : `all ${takes.length} takes`;
    return findingOf(MATCH.hoursApart, {
      place,
      field: "timecode",
      message: `The log's clock is ${hoursWords(apart)} ${apart.hours > 0 ? "behind" : "ahead of"} the notes: as it stands no row lies in a take, and moved by that it covers ${fitting}.`,
      hint: `If the recorder was in another time zone, write "# clock_offset_frames: ${log.keys.clockOffsetFrames + apart.frames}" above the log's header, or for all logs of the camera "clocks: {${camera ?? "A"}: {offset_frames: ${apart.frames}}}" in day.yaml. If the notes are wrong, correct tc_in and tc_out.`,
      take,
    });
  }

  /** A keyed log whose rows lie in another take of the same camera: the key says one take, the timecode another. */
  #otherTake(log: LensLog, rule: MatchRule, index: DraftIndex, clockOf: (camera: string | null) => PictureFrame): Finding[] {
    if (rule === "camera and timecode") return [];
    const hits = new Map<number, { row: number; count: number; named: number }>();
    for (const { row, candidates } of this.#outside) {
      const named = candidates[0] as number;
      const camera = (index.drafts[named] as TakeDraft).camera;
      for (const i of index.camera(camera)) {
        if (candidates.includes(i)) continue;
        const draft = index.drafts[i] as TakeDraft;
        const picture = clockOf(camera)(row, draft.rate, draft.dropFrame);
        if (picture === null) continue;
        const position = positionIn(draft, log, row, clockOf(camera));
        if (position === null || position < 0 || position >= draft.durationFrames) continue;
        const hit = hits.get(i);
        if (hit === undefined) hits.set(i, { row, count: 1, named });
        else hit.count++;
        break;
      }
    }
    return [...hits].map(([i, hit]) => {
      const named = index.drafts[hit.named] as TakeDraft;
      const other = index.drafts[i] as TakeDraft;
      return findingOf(MATCH.otherTake, {
        place: log.cell(hit.row, "timecode").place,
        field: "timecode",
        message: `The log's ${rule} names ${named.address}, but ${hit.count} rows have timecodes of ${other.address}.`,
        hint: `Correct the log's ${rule === "clip" ? '"# clip" line' : '"# slate" and "# take" lines'}, or tc_in and tc_out in the notes. These rows are not used.`,
        take: named.address,
      });
    });
  }
}

function matchesNobody(log: LensLog, rule: MatchRule, row: number, count: number, key: KeyOf, { drafts }: DraftIndex): Finding {
  const field = rule === "clip" ? "clip" : rule === "slate and take" ? "slate" : "camera";
  const named =
    rule === "clip"
      ? `clip "${key("clip", row) ?? ""}"`
      : rule === "slate and take"
        ? `slate "${key("slate", row) ?? ""}" take "${key("take", row) ?? ""}"${key("camera", row) === null ? "" : ` of camera ${key("camera", row)}`}`
        : `camera "${key("camera", row) ?? ""}"`;
  return findingOf(MATCH.nobody, {
    place: log.keyPlace(field),
    message: `No take in the notes has ${named}; ${count} rows stay unmatched.`,
    hint: `Correct the key in the log, or add the take to notes.csv.${nearKey(key(field, row) ?? "", field, drafts)}`,
  });
}

/** What may have been meant: a name that is near, or, where the slate is right, the takes that it has. */
function nearKey(written: string, field: "clip" | "slate" | "camera", drafts: readonly TakeDraft[]): string {
  const same = drafts.filter((draft) => sameName(draft[field] ?? "") === sameName(written));
  if (field === "slate" && same.length > 0) {
    const takes = [...new Set(same.map((draft) => draft.take))];
    return ` Slate ${written} has ${takes.length === 1 ? "take" : "takes"} ${takes.slice(0, 12).join(", ")}${takes.length > 12 ? ", ..." : ""} in the notes.`;
  }
  return didYouMean(
    written,
    drafts.flatMap((draft) => draft[field] ?? []),
  );
}
