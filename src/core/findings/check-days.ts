import type { FindingKind } from "./kind.ts";

/** Rules that need more than one day: they are looked at when all days have been read. */
export const ACROSS_DAYS_CHECKS = {
  slateOnTwoDays: {
    code: "CHECK749",
    severity: "check",
    title: "A take that another day has too",
    explain:
      "The same slate and take number of the same camera stand in the notes of two days. Editorial finds a take by its slate, so that one of the two would be taken for the other. A slate that goes on with higher take numbers on another day is no fault. Accepted in show.yaml, as it is about two days. Correct the slate or the take of one of them.",
  },
  clipOnTwoDays: {
    code: "CHECK750",
    severity: "check",
    title: "One clip noted on two days",
    explain:
      "A clip name stands in the notes of two days of one unit. Clips are found by their names; one of the two rows has a slip, or the camera's clip counter was set back. Accepted in show.yaml, as it is about two days. Correct the wrong row, or rename one of the clips.",
  },
  rollSkippedOverNight: {
    code: "CHECK751",
    severity: "remark",
    title: "A roll number is left out between two days",
    explain:
      "A camera's first roll of a day goes on by more than one from its last roll of the day before. A roll may not have been noted. Add its takes to the notes; if the number was never used, leave it.",
  },
  rollGoesBack: {
    code: "CHECK752",
    severity: "check",
    title: "A roll number lower than on the day before",
    explain:
      "Rolls of a camera are numbered through the show. A roll with a lower number than one of an earlier day was noted wrongly, or its number was used twice, so that two cards have one name. Accepted in show.yaml, as it is about two days. Correct the roll.",
  },
} as const satisfies Record<string, FindingKind>;
