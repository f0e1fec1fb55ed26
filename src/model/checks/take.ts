/** Rules across notes, logs and kit for one take: what a person should look at. Each says where and how to mend it. */
import { type Finding, finding } from "../../core/finding.ts";
import type { DayInput, Kit, ShowRecord } from "../../ingest/records.ts";
import type { Take } from "../types.ts";
import type { TakeContext } from "./context.ts";
import { checkHandover } from "./handover.ts";
import { checkLoggedLimits } from "./lens-limits.ts";
import { checkFront, checkLogPresence } from "./log-presence.ts";
import { checkFocal, checkFocus, checkStop } from "./note-against-log.ts";
import { checkSqueeze } from "./squeeze.ts";

/** All findings about one take that need more than one cell to see. */
export function checkTake(take: Take, show: ShowRecord, input: DayInput, kit: Kit): Finding[] {
  const context: TakeContext = { take, limits: show.limits, input, kit, logFile: take.logFiles[0] ?? null };
  return [
    ...checkLogPresence(context),
    ...checkFront(context),
    ...checkStop(context),
    ...checkFocus(context),
    ...checkFocal(context),
    ...checkLoggedLimits(context),
    ...checkSqueeze(context),
    ...checkHandover(context),
  ].map((input_) => finding({ ...input_, take: take.address }));
}
