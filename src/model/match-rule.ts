/** Which keys of a log say whose rows they are. */
import type { LensLog } from "../ingest/log/log-record.ts";

export type MatchRule = "clip" | "slate and take" | "camera and timecode";

/** The first rule whose keys the log has, by its key lines or by its columns. */
export function ruleOf(log: LensLog): MatchRule | null {
  const has = (key: "clip" | "slate" | "take" | "camera"): boolean => log.keys[key] !== null || log.rowKeys[key] !== undefined;
  if (has("clip")) return "clip";
  if (has("slate") && has("take")) return "slate and take";
  return has("camera") ? "camera and timecode" : null;
}

export type KeyOf = (name: "clip" | "slate" | "take" | "camera", row: number) => string | null;
