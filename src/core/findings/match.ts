import type { FindingKind } from "./kind.ts";

/** Joining logs, notes and takes. */
export const MATCH_FINDINGS: readonly FindingKind[] = [
  {
    code: "MATCH401",
    severity: "check",
    title: "A log names a take that the notes do not have",
    explain:
      "Log rows go to takes by clip, by slate and take, or by camera and timecode: the first of these that the log has. This log's key fits no row of notes.csv, so its rows stay unmatched. Usually the key or the note has a typing error, or the take was not noted.",
  },
  {
    code: "MATCH402",
    severity: "check",
    title: "Log rows lie outside the take",
    explain:
      "Rows before timecode in, after timecode out, or between takes belong to no frame of a take and are counted as unmatched. When all rows of a log lie outside, its clock probably differs from the camera's: write clock_offset_frames in the log, or clocks in day.yaml. A part of the rows outside is normal and only remarked on.",
  },
  {
    code: "MATCH403",
    severity: "check",
    title: "The log's key says one take, its timecode another",
    explain:
      "The clip or the slate in the log names one take, but rows have timecodes at which the same camera recorded another. The key decides, and those rows are not used. Either the key was not changed between takes, or the timecodes in the notes are wrong.",
  },
  {
    code: "MATCH404",
    severity: "check",
    title: "Two logs cover one take",
    explain:
      "Only one log serves a take: a log of the take itself before a log of the whole day, then the one with more samples, then by file name. The other's rows are counted as unmatched.",
  },
  {
    code: "MATCH405",
    severity: "check",
    title: "A take without a log",
    explain:
      "The take is in the notes, but no log row belongs to it. Its figures come from the notes and say so; there are no focus pulls and no figures by frame.",
  },
  {
    code: "MATCH406",
    severity: "error",
    title: "Two takes with one address",
    explain:
      "Camera, slate and take make the address of a take's page, folded to lower case without accents. Two rows with one address cannot both have the page: the first has it, the later one is listed in day.json and counts in no total.",
  },
  {
    code: "MATCH407",
    severity: "error",
    title: "A timecode in the notes cannot be read",
    explain:
      "Timecodes are hours, minutes, seconds and frames at the show's rate, or at the rate in the note's rate column. In drop-frame timecode the labels ;00 and ;01 do not exist at the start of a minute, except every tenth minute. Drop-frame comes from show.yaml and is never guessed from the rate.",
  },
  {
    code: "MATCH408",
    severity: "error",
    title: "A take ends before it begins",
    explain:
      "Timecode out must lie after timecode in; past midnight it may be the smaller one. A take of no length, or of more than six hours, is taken for a typing error, and its length is then taken from its log.",
  },
  {
    code: "MATCH409",
    severity: "check",
    title: "A take without an extent",
    explain: "Neither the notes nor a log that names the take say when it ran, so nothing can be calculated for it.",
  },
  {
    code: "MATCH410",
    severity: "check",
    title: "A log that names nothing",
    explain:
      "A log needs a clip, a slate and a take, or a camera, as key lines above its header row or as columns. Without one of them its rows belong to no take.",
  },
  {
    code: "MATCH411",
    severity: "remark",
    title: "Several samples on one frame",
    explain:
      "The log has more samples than the picture has frames. The sample nearest to each frame is used, the others are counted as unmatched.",
  },
  {
    code: "MATCH412",
    severity: "check",
    title: "Distances from the front of the lens",
    explain:
      "Every distance in the report is from the image plane. This log measures from the front of the lens; with front_to_image_mm in kit/lenses.csv it is converted, without it the distances travel unconverted in the exports and nothing is calculated from them.",
  },
  {
    code: "MATCH413",
    severity: "check",
    title: "Frames are missing from the log",
    explain:
      "Fewer frames of the take are logged than check.log_coverage in show.yaml asks for. Missing frames are never filled in: lines are not joined across them, and figures by frame are empty there.",
  },
];
