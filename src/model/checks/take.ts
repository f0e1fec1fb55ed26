/** Rules across notes, logs and kit for one take: what a person should look at. Each says where and how to mend it. */
import type { Finding } from "../../core/finding.ts";
import { findingOf } from "../../core/findings/kind.ts";
import type { DayInput, Kit, ShowRecord } from "../../ingest/records.ts";
import type { Take } from "../types.ts";
import type { TakeContext } from "./context.ts";
import { checkFocal } from "./focal.ts";
import { checkFocus } from "./focus.ts";
import { checkHandover } from "./handover.ts";
import { checkLoggedLimits } from "./lens-limits.ts";
import { checkFront, checkLogPresence } from "./log-presence.ts";
import { checkLoggedLook } from "./logged-look.ts";
import { checkPlacement } from "./placement.ts";
import { checkShutter } from "./shutter.ts";
import { checkSqueeze } from "./squeeze.ts";
import { checkStop, checkStopJumps } from "./stop.ts";

const RULES: readonly ((context: TakeContext) => void)[] = [
  checkLogPresence,
  checkFront,
  checkStop,
  checkStopJumps,
  checkFocus,
  checkFocal,
  checkLoggedLimits,
  checkLoggedLook,
  checkSqueeze,
  checkShutter,
  checkPlacement,
  checkHandover,
];

/** All findings about one take that need more than one cell to see. */
export function checkTake(take: Take, show: ShowRecord, input: DayInput, kit: Kit): Finding[] {
  const found: Finding[] = [];
  const context: TakeContext = {
    take,
    limits: show.limits,
    input,
    kit,
    logFile: take.logFiles[0] ?? null,
    tell: (kind, details) => found.push(findingOf(kind, { ...details, take: take.address })),
  };
  for (const rule of RULES) rule(context);
  return found;
}
