/** What the rules about one take look at. */
import type { CheckLimits, DayInput, Kit } from "../../ingest/records.ts";
import type { Take } from "../types.ts";

export interface TakeContext {
  readonly take: Take;
  readonly limits: CheckLimits;
  readonly input: DayInput;
  readonly kit: Kit;
  readonly logFile: string | null;
}
