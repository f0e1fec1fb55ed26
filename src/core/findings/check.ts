import { DAY_CHECKS } from "./check-day.ts";
import { ACROSS_DAYS_CHECKS } from "./check-days.ts";
import { PAPERWORK_CHECKS } from "./check-paperwork.ts";
import { TAKE_CHECKS } from "./check-take.ts";
import type { FindingKind } from "./kind.ts";

/** Rules of the trade across files. */
export const CHECK = { ...TAKE_CHECKS, ...DAY_CHECKS, ...ACROSS_DAYS_CHECKS, ...PAPERWORK_CHECKS } as const;

export const CHECK_FINDINGS: readonly FindingKind[] = Object.values(CHECK).sort((a, b) => (a.code < b.code ? -1 : 1));
