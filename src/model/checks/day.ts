/** Rules that need the whole day: names, set-ups, clips and rolls, plates, clocks. */
import type { Finding } from "../../core/finding.ts";
import { findingOf } from "../../core/findings/kind.ts";
import type { DayInput, Kit, ShowRecord } from "../../ingest/records.ts";
import type { Take } from "../types.ts";
import { checkCircles } from "./circles.ts";
import { checkCleanPlates } from "./clean-plate.ts";
import { checkClips } from "./clips.ts";
import { checkClockOffset } from "./clock-offset.ts";
import type { Tell } from "./context.ts";
import { checkHours } from "./hours.ts";
import { checkLogLabels } from "./log-labels.ts";
import { checkLogRates } from "./log-rates.ts";
import { checkNames } from "./names.ts";
import { checkNeutralDensity } from "./neutral-density.ts";
import { checkPlateLenses } from "./plate-lens.ts";
import { checkSchedule } from "./schedule.ts";
import { checkSetUpsAlike } from "./set-up-alike.ts";
import { checkSetUps } from "./set-ups.ts";
import { checkStaleLogs } from "./stale-log.ts";
import { checkSyncPoints } from "./sync-points.ts";
import { checkTakeNumbers } from "./take-numbers.ts";

export interface DayContext {
  /** In shooting order; duplicate addresses are left out. */
  readonly takes: readonly Take[];
  readonly show: ShowRecord;
  readonly input: DayInput;
  readonly kit: Kit;
  readonly tell: Tell;
}

const RULES: readonly ((context: DayContext) => void)[] = [
  checkNames,
  checkTakeNumbers,
  checkSetUps,
  checkSetUpsAlike,
  checkNeutralDensity,
  checkCircles,
  checkSchedule,
  checkHours,
  checkClips,
  checkCleanPlates,
  checkPlateLenses,
  checkStaleLogs,
  checkClockOffset,
  checkSyncPoints,
  checkLogLabels,
  checkLogRates,
];

/** All findings that need more than one take to see. */
export function checkDay(takes: readonly Take[], show: ShowRecord, input: DayInput, kit: Kit): Finding[] {
  const found: Finding[] = [];
  const tell: Tell = (kind, details) => found.push(findingOf(kind, details));
  const context: DayContext = { takes: takes.filter((take) => !take.duplicate), show, input, kit, tell };
  for (const rule of RULES) rule(context);
  return found;
}
