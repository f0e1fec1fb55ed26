import type { FindingKind } from "./kind.ts";

/** Lens logs: text tables and JSON Lines. */
export const LOG = {
  noTiming: {
    code: "LOG201",
    severity: "error",
    title: "Log without time",
    explain:
      "A log needs a column `timecode`, `frame` or `time_s`; without it no row can be given to a frame and all of them are rejected. Name the column that holds the time, or map it in kit/columns.yaml.",
  },
  badTimecode: {
    code: "LOG202",
    severity: "error",
    title: "Timecode cannot be read",
    explain:
      "A timecode is hours:minutes:seconds:frames, within a day, with frames below the rate. The row is rejected: it has no place in a take. Correct the cell; if many are wrong, look at the log's rate.",
  },
  droppedLabel: {
    code: "LOG203",
    severity: "error",
    title: "Label that drop-frame timecode skips",
    explain:
      'Drop-frame counting skips the first labels of every minute but each tenth. A log that holds such a label was not counted in drop-frame, or is damaged. The row is rejected. Write "# drop_frame: false" if its labels are not drop-frame.',
  },
  repeatedDiffers: {
    code: "LOG204",
    severity: "error",
    title: "One timecode with two readings",
    explain:
      "Two rows have one timecode and different values. The first is used, the other is rejected. Delete the row that is wrong.",
  },
  repeatedSame: {
    code: "LOG205",
    severity: "remark",
    title: "Row twice",
    explain: "Two rows have one timecode and the same values. The first is used, the other is rejected; nothing is lost.",
  },
  outOfOrder: {
    code: "LOG206",
    severity: "remark",
    title: "Rows out of order",
    explain: "Time runs backwards between two rows. Rows are placed by their own time, so the figures are right.",
  },
  badKey: {
    code: "LOG207",
    severity: "error",
    title: "Key line cannot be read",
    explain:
      "The value of a `# key: value` line, or of a field map's `set`, is not what the key takes. The key counts as not said.",
  },
  unknownColumn: {
    code: "LOG209",
    severity: "remark",
    title: "Column kept as it is",
    explain:
      "Nobody knows this column. It is kept word for word and travels into the exports. If it is a known figure under another name, write the name, or map it in kit/columns.yaml.",
  },
  nearColumn: {
    code: "LOG229",
    severity: "check",
    title: "Column name that is nearly a known one",
    explain:
      "The column is kept word for word and not read, and its name means what a column means that the log lacks: `Timecode`, `Focus (m)` and `T-stop` for timecode, focus_m and t. Names are taken exactly, so that nothing is guessed: rename the column, or map it once for the show in kit/columns.yaml (`daybook columns FILE` proposes the map).",
  },
  headerAgain: {
    code: "LOG230",
    severity: "remark",
    title: "Header row again",
    explain:
      "The column names come again among the rows: a recorder that was started again writes on in the same file, or files were put together. The row is rejected; nothing is lost.",
  },
  closingLine: {
    code: "LOG231",
    severity: "remark",
    title: "Line below the rows",
    explain:
      'Below the last row of the log, or above a header row that comes again, stands a line with words in the place of the time, such as a total or "End of log". Such lines count as rejected rows; no reading is lost. More than twenty of them are taken for rows whose time was damaged, and each is an error.',
  },
  severalColumns: {
    code: "LOG211",
    severity: "check",
    title: "One quantity in two columns",
    explain:
      "The log gives one quantity in two columns. The first is read, the other is kept word for word. Delete or rename the one that is not wanted.",
  },
  badJson: {
    code: "LOG212",
    severity: "error",
    title: "Line is not JSON",
    explain:
      "Each line of a JSON Lines log is one JSON object. A line that is not is rejected; a last line that was cut off is the usual reason. Copy the file again, or delete the line.",
  },
  badSample: {
    code: "LOG213",
    severity: "error",
    title: "Sample cannot be used",
    explain:
      "The line is JSON, and lacks what a sample needs: it is no object, or it has no readable timing.timecode. The row is rejected. Look at the recorder's timecode settings.",
  },
  badField: {
    code: "LOG214",
    severity: "error",
    title: "Field of a sample cannot be read",
    explain:
      "A field of an OpenTrackIO sample is not of the type the standard gives it. The value is lost, the row stays. Tell whoever makes the recorder; the rest of the sample is used.",
  },
  staticChanges: {
    code: "LOG215",
    severity: "check",
    title: "Camera, lens or slate changes within the log",
    explain:
      "Samples of one file name different cameras, lenses or slates. Each row keeps what its sample says. If the takes were recorded one after the other into one file, nothing needs to be done.",
  },
  dropRate: {
    code: "LOG216",
    severity: "error",
    title: "Drop-frame at a rate that has none",
    explain:
      "Drop-frame counting exists at 29.97 and 59.94 frames a second and their multiple only. The log is read without it. Correct the log's rate or its drop flag.",
  },
  nothingKnown: {
    code: "LOG217",
    severity: "check",
    title: "Log without a known reading",
    explain:
      "Beside its time the log has no column that is known: no focus, stop or focal length. A field map in kit/columns.yaml can name its columns.",
  },
  noConvention: {
    code: "LOG218",
    severity: "check",
    title: "Coefficients without a convention",
    explain:
      "The log has distortion or shading columns and does not say their model, direction or radius. They are shown and never evaluated. Write the key lines that the hint names.",
  },
  otherFile: {
    code: "LOG219",
    severity: "remark",
    title: "File in logs/ that is not read",
    explain: "Logs end in .csv or .jsonl. This file is left alone. If it is a log, rename it.",
  },
  noRows: {
    code: "LOG220",
    severity: "check",
    title: "Log without rows",
    explain:
      "The log ends after its header. A recorder that was armed and never ran writes such files. Take the file out of the folder, or copy it again.",
  },
  badCount: {
    code: "LOG221",
    severity: "error",
    title: "Frame or time cannot be read",
    explain: "A frame is a whole number from 0 on, a time a number of seconds from 0 on. The row is rejected. Correct the cell.",
  },
  otherDate: {
    code: "LOG222",
    severity: "check",
    title: "Log of another date",
    explain:
      "The log's own date is not the day folder's. The folder decides the date; after midnight the next date is expected and not reported. Move the log to its own day's folder, or correct its date.",
  },
  otherModel: {
    code: "LOG223",
    severity: "check",
    title: "Distortion model not known",
    explain:
      "The samples name a distortion model that is not the standard's. Its coefficients are left out. Ask who wrote the samples for the coefficients in one of the standard's models.",
  },
  betweenFrames: {
    code: "LOG224",
    severity: "remark",
    title: "Sample between frames",
    explain:
      "The sample has a sub-frame: it lies between two frames of the timecode. The frame's own sample is used, this one is rejected.",
  },
  sentinel: {
    code: "LOG225",
    severity: "check",
    title: "Distance that is a mark for something else",
    explain:
      "Recorders that cannot write an empty cell or infinity write a number that no lens has: 0, -1, 999, 9999, 65535, 1000 m. Taken as distances they would bend every figure of the take. The cell counts as not logged; infinity is written inf. One finding stands for all rows of a file with the same number.",
  },
  noValue: {
    code: "LOG226",
    severity: "check",
    title: "Word for no value",
    explain:
      "NaN, null, N/A and dashes stand where nothing was logged. The cell counts as not logged, the row stays, and one finding stands for all such cells of a file. An empty cell says the same without doubt.",
  },
  encoderBeyond: {
    code: "LOG227",
    severity: "check",
    title: "Encoder reading beyond the marks of the lens",
    explain:
      "The log has encoder readings, and some lie beyond the first or the last mark of kit/encoders/<lens>.csv. The distance of the nearest mark is used there and never extrapolated. A large number of them points to an encoder that was calibrated anew, or to another lens. Then make the table anew.",
  },
  noEncoderTable: {
    code: "LOG228",
    severity: "check",
    title: "Encoder readings without a table",
    explain:
      "The log has readings of the focus encoder and no distances. With a table kit/encoders/<lens>.csv (columns encoder and focus_m) they become distances; without it the take has no logged focus. Write that table.",
  },
} as const satisfies Record<string, FindingKind>;

export const LOG_FINDINGS: readonly FindingKind[] = Object.values(LOG);
