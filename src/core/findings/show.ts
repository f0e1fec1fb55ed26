import type { FindingKind } from "./kind.ts";

/** show.yaml, day.yaml and the folders. */
export const SHOW = {
  absent: {
    code: "SHOW601",
    severity: "error",
    title: "No usable show.yaml",
    explain:
      "A show is a folder with a file show.yaml that gives at least title, code and rate. Without them nothing is built. Write them; `daybook init` makes an example.",
  },
  syntax: {
    code: "SHOW602",
    severity: "error",
    title: "YAML cannot be read",
    explain:
      "The file breaks the rules of YAML at the place named. What stands before and after is used where it can be. Correct the line; indent with spaces, and put text with a colon in quotes.",
  },
  missingKey: {
    code: "SHOW603",
    severity: "error",
    title: "Required key missing",
    explain: "The file lacks a key it cannot do without. The hint has a line that can be added as it is. Add it.",
  },
  badValue: {
    code: "SHOW604",
    severity: "error",
    title: "Value cannot be used",
    explain:
      "The value of a key is not what the key takes. The key's default holds, or it counts as not recorded. Write a value of the form that the hint shows.",
  },
  unknownKey: {
    code: "SHOW605",
    severity: "check",
    title: "Key not known",
    explain:
      "Nothing reads this key. A slip in the name is the usual reason; then the value meant is not in force. Correct the name, or delete the line.",
  },
  dayName: {
    code: "SHOW606",
    severity: "check",
    title: "Folder in days/ that is no date",
    explain:
      "Each shooting day is a folder named by its date, such as days/2026-03-14. Other folders are left out. Rename the folder to the date, or move it out of days/.",
  },
  otherDate: {
    code: "SHOW607",
    severity: "error",
    title: "Day file of another date",
    explain:
      "The date in day.yaml must be the folder's name: a day file that was copied and not changed looks like this. The folder's name is used. Correct the date, or the folder's name.",
  },
  noDays: {
    code: "SHOW608",
    severity: "check",
    title: "No shooting days",
    explain:
      "The show has no folder days/ with a folder named by a date. The kit page can be built, and no report. Make the folder, and put notes.csv or logs into it.",
  },
  dropRate: {
    code: "SHOW610",
    severity: "error",
    title: "Drop-frame at a rate that has none",
    explain:
      "Drop-frame counting exists at 29.97 and 59.94 frames a second and their multiple only. The show is read without it. Correct drop_frame or rate.",
  },
  emptyDay: {
    code: "SHOW611",
    severity: "error",
    title: "Day without notes and logs",
    explain:
      "A day needs notes.csv or at least one log in logs/. There is nothing to report of this one. Copy them into the folder, or delete it.",
  },
  noDayFile: {
    code: "SHOW612",
    severity: "remark",
    title: "No day.yaml",
    explain:
      "Without day.yaml the day's number, its call and wrap and the scheduled scenes are not recorded. Write one with day and date.",
  },
  clockOrder: {
    code: "SHOW613",
    severity: "check",
    title: "Times of the day out of order",
    explain: "Call, first shot, meals and wrap follow one another. Past midnight a time is written with +1, such as 00:40+1.",
  },
  otherEntry: {
    code: "SHOW614",
    severity: "remark",
    title: "Entry of a day's folder that is not read",
    explain:
      "A day's folder has day.yaml, notes.csv, logs/ and stills/. Anything else is left alone; a slip in a name looks like this. Rename it, or leave it.",
  },
  tooMuch: {
    code: "SHOW620",
    severity: "error",
    title: "Too many levels or values",
    explain:
      "A settings file has two or three levels and some dozen values. More than twelve levels or ten thousand values come of an alias (*name) that holds itself or others many times over, or of a damaged file. What is beyond is left out. Take the alias out, or write the file anew.",
  },
} as const satisfies Record<string, FindingKind>;

export const SHOW_FINDINGS: readonly FindingKind[] = Object.values(SHOW);
