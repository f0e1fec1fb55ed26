import type { FindingKind } from "./kind.ts";

/** Joining logs, notes and takes. */
export const MATCH = {
  nobody: {
    code: "MATCH401",
    severity: "check",
    title: "A log names a take that the notes do not have",
    explain:
      "Log rows go to takes by clip, by slate and take, or by camera and timecode: the first of these that the log has. This log's key fits no row of notes.csv, so its rows stay unmatched. Usually the key or the note has a typing error, or the take was not noted. Correct the one that is wrong, or add the row.",
  },
  rowsOutside: {
    code: "MATCH402",
    severity: "remark",
    title: "Log rows lie outside the take",
    explain:
      "Rows before timecode in, after timecode out, or between takes belong to no frame of a take and are counted as unmatched. A part of the rows outside is normal. If a take is cut short by it, correct its tc_in and tc_out.",
  },
  otherTake: {
    code: "MATCH403",
    severity: "check",
    title: "The log's key says one take, its timecode another",
    explain:
      "The clip or the slate in the log names one take, but rows have timecodes at which the same camera recorded another. The key decides, and those rows are not used. Either the key was not changed between takes, or the timecodes in the notes are wrong. Correct the key, or the notes.",
  },
  twoLogs: {
    code: "MATCH404",
    severity: "check",
    title: "Two logs cover one take",
    explain:
      "Only one log serves a take: a log of the take itself before a log of the whole day, then the one with more samples, then by file name. The other's rows are counted as unmatched. Take the log that is not wanted out of logs/.",
  },
  noLog: {
    code: "MATCH405",
    severity: "check",
    title: "A take without a log",
    explain:
      "The take is in the notes, but no log row belongs to it. Its figures come from the notes and say so; there are no focus pulls and no figures by frame. Put its log into logs/, or correct the key by which it names the take.",
  },
  addressTwice: {
    code: "MATCH406",
    severity: "error",
    title: "Two takes with one address",
    explain:
      "Camera, slate and take make the address of a take's page, folded to lower case without accents. Two rows with one address cannot both have the page: the first has it, the later one is listed in day.json and counts in no total. Correct the slate, the take or the camera of one of them.",
  },
  timecode: {
    code: "MATCH407",
    severity: "error",
    title: "A timecode in the notes cannot be read",
    explain:
      "Timecodes are hours, minutes, seconds and frames at the show's rate, or at the rate in the note's rate column. In drop-frame timecode the labels ;00 and ;01 do not exist at the start of a minute, except every tenth minute. Drop-frame comes from show.yaml and is never guessed from the rate. Correct the cell, or write the take's own rate.",
  },
  endsBeforeStart: {
    code: "MATCH408",
    severity: "error",
    title: "A take ends before it begins",
    explain:
      "Timecode out must lie after timecode in; past midnight it may be the smaller one. A take of no length, or of more than six hours, is taken for a typing error, and its length is then taken from its log. Correct tc_in or tc_out; the two may be swapped.",
  },
  noExtent: {
    code: "MATCH409",
    severity: "check",
    title: "A take without an extent",
    explain:
      "Neither the notes nor a log that names the take say when it ran, so nothing can be calculated for it. Write tc_in and tc_out.",
  },
  namesNothing: {
    code: "MATCH410",
    severity: "check",
    title: "A log that names nothing",
    explain:
      'A log needs a clip, a slate and a take, or a camera, as key lines above its header row or as columns. Without one of them its rows belong to no take. Add a key line such as "# clip: A012C003".',
  },
  severalSamples: {
    code: "MATCH411",
    severity: "remark",
    title: "Several samples on one frame",
    explain:
      "The log has more samples than the picture has frames. The sample nearest to each frame is used, the others are counted as unmatched.",
  },
  fromFront: {
    code: "MATCH412",
    severity: "check",
    title: "Distances from the front of the lens",
    explain:
      "Every distance in the report is from the image plane. This log measures from the front of the lens; with front_to_image_mm in kit/lenses.csv it is converted, without it the distances travel unconverted in the exports and nothing is calculated from them. Write that distance into the kit.",
  },
  framesMissing: {
    code: "MATCH413",
    severity: "check",
    title: "Frames are missing from the log",
    explain:
      "Fewer frames of the take are logged than check.log_coverage in show.yaml asks for. Missing frames are never filled in: lines are not joined across them, and figures by frame are empty there. Copy the log again, or correct tc_in and tc_out if they are too wide.",
  },
  lateOrEarly: {
    code: "MATCH414",
    severity: "check",
    title: "The log begins late or ends early",
    explain:
      "Enough frames of the take are logged, but its first or last ones are not, for longer than check.log_edge_seconds in show.yaml. A recorder that was started after the camera, a battery that went, or a clock that is off look like this. If the clock is off, write clock_offset_frames.",
  },
  allRowsOutside: {
    code: "MATCH415",
    severity: "check",
    title: "A log lies wholly outside its take",
    explain:
      "No row of the log falls into the take that it names, or into any take of its camera. Its clock probably differs from the camera's: write clock_offset_frames in the log, or clocks in day.yaml. Timecodes of the notes may be wrong too.",
  },
  dayLogBeside: {
    code: "MATCH416",
    severity: "remark",
    title: "A log of the day beside the take's own",
    explain:
      "A take has a log of its own, and a log of the camera's whole day covers it too. The take's own log serves, the other's rows are counted as unmatched. Nothing is lost.",
  },
  resampled: {
    code: "MATCH417",
    severity: "remark",
    title: "Samples between the frames",
    explain:
      "The log counts seconds, or frames of another rate than the picture. Each frame of the take has the sample that is nearest to it in time, at most half a frame away; nothing is interpolated. The message says how far the samples are from their frames.",
  },
  clockOffset: {
    code: "MATCH418",
    severity: "check",
    title: "A log's clock seems to be off",
    explain:
      "Where a note gives the distance at the start and at the end of a take, the log should have the one at timecode in and the other at timecode out. For all takes of a camera it has not, and for all of them it would if its clock were moved by one number of frames. It is looked for up to check.clock_search_seconds of show.yaml (10 s) either way, and proposed when it is known to half a second; nothing is moved until it is written down.",
  },
  clockDrift: {
    code: "MATCH419",
    severity: "remark",
    title: "A clock drifts, or was set anew",
    explain:
      "A camera's clock has two offsets at two times. If it drifted from the one to the other, that is so many parts per million: 1 ppm is 3.6 ms an hour, a crystal is out by a few to a hundred. Each offset holds until the next one, so that in between the log is off by a part of the difference. The limit is check.clock_drift_frames in show.yaml. Jam the clocks again, and write an offset for each time that you know one.",
  },
  mixedRates: {
    code: "MATCH420",
    severity: "check",
    title: "Two rates taken for one",
    explain:
      "Two offsets of a camera's clock differ by 3.6 seconds an hour, one part in a thousand: the slope between 24 and 23.976 frames a second (or 30 and 29.97). No crystal drifts that far. One of the two clocks ran at the other rate; with the right rate the offsets go away. Correct rate in the log or in show.yaml, and take the offsets out.",
  },
  dropsLabels: {
    code: "MATCH421",
    severity: "check",
    title: "Labels of drop-frame in a log that is read without it",
    explain:
      'At 29.97 and 59.94 frames a second drop-frame timecode leaves out the first labels of every minute but each tenth. This log is read as non-drop-frame, and exactly those labels are missing: it loses frames at each minute and runs away from the picture by 3.6 seconds an hour. Drop-frame is said by the log or by show.yaml, and never guessed. Write "# drop_frame: true" in the log, or drop_frame: true in show.yaml.',
  },
  hoursApart: {
    code: "MATCH422",
    severity: "check",
    title: "A log's clock is off by whole hours",
    explain:
      "No row of the log lies in a take, and all its takes would be covered if the log's clock were moved by one number of whole or half hours. The recorder was set to another time zone than the camera, or one of the two is on summer time. The hint has the line to write with the offset in frames; nothing is moved until it is written down.",
  },
  ratesDiffer: {
    code: "MATCH423",
    severity: "check",
    title: "The logs count at another rate than the show",
    explain:
      "All logs of the day with timecode say one rate, and the show has another. Timecodes of the notes are read at the show's rate, or at that of the note's own column rate, so that durations and frame counts are wrong when the show's rate is a slip. Correct rate in show.yaml, or write the rate into the notes of the takes that were recorded so. Recorders that only sample at another rate are read as they are.",
  },
} as const satisfies Record<string, FindingKind>;

export const MATCH_FINDINGS: readonly FindingKind[] = Object.values(MATCH);
