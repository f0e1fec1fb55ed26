/** Joins log rows to takes. Every row ends as used, unmatched or rejected, and the sum is kept. */
import { compareText, type Finding, finding } from "../core/finding.ts";
import type { DayRecord, LensLog } from "../ingest/records.ts";
import { framesPerDay } from "../time/timecode.ts";
import { sameName } from "./address.ts";
import { framesSinceStart, type PictureFrame, pictureFrames } from "./clock.ts";
import type { TakeDraft } from "./draft.ts";
import type { RowCounts } from "./types.ts";

export type MatchRule = "clip" | "slate and take" | "camera and timecode";

/** Rows of one log that fell on one take's frames. */
export interface LogShare {
  readonly log: LensLog;
  readonly rule: MatchRule;
  /** Row of the log for each frame of the take, -1 where there is none. */
  readonly rowOfFrame: Int32Array;
  readonly samples: number;
}

export interface Matching {
  /** The log that serves each draft, by its index; absent without a log. */
  readonly served: ReadonlyMap<number, LogShare>;
  readonly rows: RowCounts;
  readonly logs: readonly (RowCounts & { readonly file: string; readonly sha256: string; readonly bytes: number })[];
  readonly findings: readonly Finding[];
}

/** Matches every log of a day; `drafts` are in shooting order. */
export function matchLogs(drafts: readonly TakeDraft[], logs: readonly LensLog[], record: DayRecord): Matching {
  const findings: Finding[] = [];
  const index = new DraftIndex(drafts);
  const shares = new Map<number, LogShare[]>();
  for (const log of logs) {
    const result = distribute(log, index, record);
    findings.push(...result.findings);
    for (const [draft, share] of result.shares) shares.set(draft, [...(shares.get(draft) ?? []), share]);
  }

  const served = new Map<number, LogShare>();
  const usedByFile = new Map<string, number>();
  for (const [draft, candidates] of shares) {
    const [best, ...others] = [...candidates].sort(byPrecedence) as [LogShare, ...LogShare[]];
    served.set(draft, best);
    usedByFile.set(best.log.file, (usedByFile.get(best.log.file) ?? 0) + best.samples);
    for (const other of others) findings.push(twoLogs(drafts[draft] as TakeDraft, best, other));
  }

  const counts = logs.map((log) => {
    const rejected = log.rejected.reduce((sum, flag) => sum + flag, 0);
    const used = usedByFile.get(log.file) ?? 0;
    return {
      file: log.file,
      sha256: log.sha256,
      bytes: log.bytes,
      read: log.rows,
      used,
      rejected,
      unmatched: log.rows - used - rejected,
    };
  });
  return { served, rows: sumRows(counts), logs: counts, findings };
}

function sumRows(counts: readonly RowCounts[]): RowCounts {
  const sum = { read: 0, used: 0, unmatched: 0, rejected: 0 };
  for (const c of counts) {
    sum.read += c.read;
    sum.used += c.used;
    sum.unmatched += c.unmatched;
    sum.rejected += c.rejected;
  }
  return sum;
}

/** A per-take log before a day's log, then the one with more samples, then by file name. */
function byPrecedence(a: LogShare, b: LogShare): number {
  return (
    Number(a.rule === "camera and timecode") - Number(b.rule === "camera and timecode") ||
    b.samples - a.samples ||
    compareText(a.log.file, b.log.file)
  );
}

/** Finds drafts by clip, by slate and take, and by camera. */
class DraftIndex {
  readonly drafts: readonly TakeDraft[];
  readonly #byClip = new Map<string, number[]>();
  readonly #bySlate = new Map<string, number[]>();
  readonly #byCamera = new Map<string, number[]>();

  constructor(drafts: readonly TakeDraft[]) {
    this.drafts = drafts;
    drafts.forEach((draft, i) => {
      if (draft.clip !== null) add(this.#byClip, sameName(draft.clip), i);
      add(this.#bySlate, slateKey(draft.slate, draft.take), i);
      add(this.#byCamera, sameName(draft.camera), i);
    });
  }

  clip(clip: string): readonly number[] {
    return this.#byClip.get(sameName(clip)) ?? [];
  }

  slateAndTake(slate: string, take: string, camera: string | null): readonly number[] {
    const all = this.#bySlate.get(slateKey(slate, take)) ?? [];
    return camera === null ? all : all.filter((i) => sameName((this.drafts[i] as TakeDraft).camera) === sameName(camera));
  }

  camera(camera: string): readonly number[] {
    return this.#byCamera.get(sameName(camera)) ?? [];
  }
}

function add(map: Map<string, number[]>, key: string, value: number): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

function slateKey(slate: string, take: string): string {
  return `${sameName(slate)}\u0000${sameName(take).replace(/\s+/g, "")}`;
}

interface Distribution {
  readonly shares: ReadonlyMap<number, LogShare>;
  readonly findings: readonly Finding[];
}

/** The first rule whose keys the log has, by its key lines or by its columns. */
export function ruleOf(log: LensLog): MatchRule | null {
  const has = (key: "clip" | "slate" | "take" | "camera"): boolean => log.keys[key] !== null || log.rowKeys[key] !== undefined;
  if (has("clip")) return "clip";
  if (has("slate") && has("take")) return "slate and take";
  return has("camera") ? "camera and timecode" : null;
}

function distribute(log: LensLog, index: DraftIndex, record: DayRecord): Distribution {
  const findings: Finding[] = [];
  const rule = ruleOf(log);
  if (rule === null) {
    findings.push(
      finding({
        code: "MATCH410",
        severity: "check",
        place: { file: log.file, line: 1, column: 1 },
        message: "The log names no clip, no slate and take, and no camera, so its rows belong to no take.",
        hint: 'Add a line such as "# clip: A012C003", or "# slate: 24B" with "# take: 3", or "# camera: A" above the header row.',
      }),
    );
    return { shares: new Map(), findings };
  }
  const key = (name: "clip" | "slate" | "take" | "camera", row: number): string | null => {
    const column = log.rowKeys[name]?.(row).trim();
    return column === undefined || column === "" ? log.keys[name] : column;
  };
  const candidatesOf = candidateFinder(log, rule, index, key);
  const clocks = new Map<string | null, PictureFrame>();
  const clockOf = (camera: string | null): PictureFrame => {
    const known = clocks.get(camera);
    if (known !== undefined) return known;
    const made = pictureFrames(log, camera, record);
    clocks.set(camera, made);
    return made;
  };

  const open = new Map<number, { rowOfFrame: Int32Array; distance: Float32Array | null; samples: number }>();
  const stray = new StrayRows();
  let last = -1; // rows come in runs of one take, so the take of the row before is asked first
  for (let row = 0; row < log.rows; row++) {
    if (log.rejected[row] === 1) continue;
    const candidates = candidatesOf(row);
    if (candidates.length === 0) {
      stray.nobody(row);
      continue;
    }
    let placed = false;
    const order = last >= 0 && candidates.length > 1 && candidates.includes(last) ? [last, ...candidates] : candidates;
    for (const i of order) {
      const draft = index.drafts[i] as TakeDraft;
      const position = positionIn(draft, log, row, clockOf(draft.camera));
      if (position === null) continue;
      const frame = Math.round(position);
      if (frame < 0 || frame >= draft.durationFrames) continue;
      last = i;
      let share = open.get(i);
      if (share === undefined) {
        const distance = log.timing.kind === "time" ? new Float32Array(draft.durationFrames) : null;
        share = { rowOfFrame: new Int32Array(draft.durationFrames).fill(-1), distance, samples: 0 };
        open.set(i, share);
      }
      const away = Math.abs(position - frame);
      if (share.rowOfFrame[frame] === -1) share.samples++;
      else if (share.distance === null || away >= (share.distance[frame] as number)) {
        stray.spare(row);
        placed = true;
        break;
      } else stray.spare(row);
      share.rowOfFrame[frame] = row;
      if (share.distance !== null) share.distance[frame] = away;
      placed = true;
      break;
    }
    if (!placed) stray.outside(row, candidates);
  }
  findings.push(...stray.report(log, rule, index, clockOf, key));
  const shares = new Map<number, LogShare>();
  for (const [i, share] of open) shares.set(i, { log, rule, rowOfFrame: share.rowOfFrame, samples: share.samples });
  return { shares, findings };
}

/** Frames since the take's start, perhaps a fraction; `null` when the take has no extent. */
function positionIn(draft: TakeDraft, log: LensLog, row: number, clock: PictureFrame): number | null {
  if (draft.durationFrames === 0) return null;
  const picture = clock(row, draft.rate, draft.dropFrame);
  if (picture === null) return framesSinceStart(log, row, draft.rate) + log.keys.clockOffsetFrames;
  if (draft.inFrame === null) return null;
  const perDay = framesPerDay(draft.rate, draft.dropFrame);
  const forward = (((picture - draft.inFrame) % perDay) + perDay) % perDay;
  return forward > perDay / 2 ? forward - perDay : forward;
}

type KeyOf = (name: "clip" | "slate" | "take" | "camera", row: number) => string | null;

function candidateFinder(log: LensLog, rule: MatchRule, index: DraftIndex, key: KeyOf): (row: number) => readonly number[] {
  const find = (row: number): readonly number[] => {
    if (rule === "clip") {
      const clip = key("clip", row);
      return clip === null ? [] : index.clip(clip);
    }
    const camera = key("camera", row);
    if (rule === "slate and take") return index.slateAndTake(key("slate", row) ?? "", key("take", row) ?? "", camera);
    return camera === null ? [] : index.camera(camera);
  };
  const byRow =
    log.rowKeys.clip !== undefined ||
    log.rowKeys.slate !== undefined ||
    log.rowKeys.take !== undefined ||
    log.rowKeys.camera !== undefined;
  if (!byRow) {
    const fixed = find(0);
    return () => fixed;
  }
  const known = new Map<string, readonly number[]>();
  return (row) => {
    const name = `${key("clip", row)}\u0000${key("slate", row)}\u0000${key("take", row)}\u0000${key("camera", row)}`;
    const found = known.get(name);
    if (found !== undefined) return found;
    const made = find(row);
    known.set(name, made);
    return made;
  };
}

function twoLogs(draft: TakeDraft, best: LogShare, other: LogShare): Finding {
  return finding({
    code: "MATCH404",
    severity: other.rule === "camera and timecode" && best.rule !== "camera and timecode" ? "remark" : "check",
    place: { file: other.log.file, line: other.log.lineOf(firstRow(other)), column: 1 },
    message: `Two logs cover this take: ${best.log.file} serves (${best.samples} samples), the ${other.samples} rows here are left unmatched.`,
    hint: `Remove the log that is not wanted, or give it other keys. Served: ${best.log.file}.`,
    take: draft.address,
  });
}

function firstRow(share: LogShare): number {
  return share.rowOfFrame.find((row) => row >= 0) ?? 0;
}

/** Rows that found no frame, kept by reason until the log is read. */
class StrayRows {
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
  ): Finding[] {
    const findings: Finding[] = [];
    const [first] = this.#nobody;
    if (first !== undefined) findings.push(matchesNobody(log, rule, first, this.#nobody.length, key));
    findings.push(...this.#otherTake(log, rule, index, clockOf));
    const outside = this.#outside[0];
    if (outside !== undefined) {
      const all = this.#outside.length === log.rows - log.rejected.reduce((sum, flag) => sum + flag, 0);
      findings.push(
        finding({
          code: "MATCH402",
          severity: all ? "check" : "remark",
          place: log.cell(outside.row, "timecode").place,
          message: `${this.#outside.length} of ${log.rows} rows lie outside the extent of ${rule === "camera and timecode" ? "every take of the camera" : "the take they name"}; the first is line ${log.lineOf(outside.row)}.`,
          hint: all
            ? 'Compare the log\'s timecode with tc_in and tc_out in the notes: another clock is written as "# clock_offset_frames: N" (log + offset = picture).'
            : "Rows before the slate, after the cut or between takes are not used. Nothing needs to be done if that is what they are.",
          take:
            rule === "camera and timecode"
              ? null
              : ((index.drafts[outside.candidates[0] ?? -1] as TakeDraft | undefined)?.address ?? null),
        }),
      );
    }
    const [spare] = this.#spare;
    if (spare !== undefined) {
      findings.push(
        finding({
          code: "MATCH411",
          severity: "remark",
          place: log.cell(spare, "timecode").place,
          message: `${this.#spare.length} rows fall on a frame that another row already has; the sample nearest to the frame is used.`,
          hint: "A log with several samples a frame is read this way. If the log should have one row a frame, check its rate.",
        }),
      );
    }
    return findings;
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
      return finding({
        code: "MATCH403",
        severity: "check",
        place: log.cell(hit.row, "timecode").place,
        field: "timecode",
        message: `The log's ${rule} names ${named.address}, but ${hit.count} rows have timecodes of ${other.address}.`,
        hint: `Correct the log's ${rule === "clip" ? '"# clip" line' : '"# slate" and "# take" lines'}, or tc_in and tc_out in the notes. These rows are not used.`,
        take: named.address,
      });
    });
  }
}

function matchesNobody(log: LensLog, rule: MatchRule, row: number, count: number, key: KeyOf): Finding {
  const named =
    rule === "clip"
      ? `clip "${key("clip", row) ?? ""}"`
      : rule === "slate and take"
        ? `slate "${key("slate", row) ?? ""}" take "${key("take", row) ?? ""}"${key("camera", row) === null ? "" : ` of camera ${key("camera", row)}`}`
        : `camera "${key("camera", row) ?? ""}"`;
  return finding({
    code: "MATCH401",
    severity: "check",
    place: log.keyPlace(rule === "clip" ? "clip" : rule === "slate and take" ? "slate" : "camera"),
    message: `No take in the notes has ${named}; ${count} rows stay unmatched.`,
    hint: "Correct the key in the log, or add the take to notes.csv.",
  });
}
