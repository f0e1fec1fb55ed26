import type { FindingKind } from "./kind.ts";

/** Reading of text files and tables, whatever they hold. */
export const CSV = {
  unreadable: {
    code: "CSV101",
    severity: "error",
    title: "File cannot be read",
    explain:
      "A file that should be there could not be opened: it is a folder, the name is taken by something else, or permission is denied. Nothing of it is in the report. Give the file its name and permission back, and run the command again.",
  },
  empty: {
    code: "CSV102",
    severity: "check",
    title: "Empty file",
    explain:
      "The file has no bytes, or nothing but blank lines. Often a copy that was interrupted: compare its size with the card's.",
  },
  notText: {
    code: "CSV103",
    severity: "error",
    title: "Not a text file",
    explain:
      "The file holds bytes that text never holds (NUL), so it is a spreadsheet, a picture or a damaged copy under a text file's name. It is left out. Export the table as comma-separated UTF-8 text.",
  },
  utf16: {
    code: "CSV104",
    severity: "remark",
    title: "UTF-16 text was converted",
    explain:
      "The file is UTF-16 text, as some spreadsheets export it. It was converted and read. UTF-8 is safer for other programs.",
  },
  notUtf8: {
    code: "CSV105",
    severity: "check",
    title: "Not UTF-8: read as Windows-1252",
    explain:
      "The file holds bytes that are not valid UTF-8. It was read as Windows-1252, the usual export of older spreadsheets; accented letters may be wrong. Save the file as UTF-8.",
  },
  noHeader: {
    code: "CSV106",
    severity: "error",
    title: "No header row",
    explain:
      "A table begins with a row of column names, and none of the names in the first row is known. The rows cannot be told apart without it. `daybook columns` lists the names. Write the row of names above the others.",
  },
  duplicateColumn: {
    code: "CSV107",
    severity: "error",
    title: "Column name twice",
    explain:
      "Two columns have one name. The first is read, the second is left out, because nobody can say which one is meant. Rename or delete one of them.",
  },
  missingColumn: {
    code: "CSV108",
    severity: "error",
    title: "Required column missing",
    explain: "The table lacks a column it cannot do without. The hint names the nearest header that was written, if one is near.",
  },
  unknownColumn: {
    code: "CSV109",
    severity: "remark",
    title: "Column not known",
    explain:
      "Nothing reads this column, and its name is near no known one. If it should be read, give it a name of the column reference; else leave it.",
  },
  nearColumn: {
    code: "CSV125",
    severity: "check",
    title: "Column name that is nearly a known one",
    explain:
      "Nothing reads this column, and its name is nearly that of a column that the table lacks: most likely a slip. Names are taken exactly as they are written in the column reference, so that nothing is guessed.",
  },
  shortRow: {
    code: "CSV110",
    severity: "error",
    title: "Row with too few cells",
    explain:
      "The row ends before the header's last column. The cells that are there are read in order, the rest counts as not recorded. An interrupted write or a lost delimiter is the usual reason.",
  },
  longRow: {
    code: "CSV111",
    severity: "error",
    title: "Row with too many cells",
    explain:
      "The row has more cells than the header has columns; what is beyond is left out. Usually a text with a comma that was not put in quotes, which also moves all cells after it.",
  },
  openQuote: {
    code: "CSV112",
    severity: "error",
    title: "Quote never closed",
    explain:
      "A cell begins with a quotation mark that has no partner before the row ends. The row is read as if the mark were text, so that it swallows no further rows. Inside quotes an inch mark is written twice.",
  },
  strayQuote: {
    code: "CSV113",
    severity: "check",
    title: "Stray quote inside a quoted cell",
    explain:
      "A quotation mark inside a quoted cell is neither written twice nor the end of the cell. The cell was read as well as it could be.",
  },
  keyTwice: {
    code: "CSV114",
    severity: "check",
    title: "Key line twice",
    explain: "Two `# key: value` lines give one key. The first is used.",
  },
  commentLikeRow: {
    code: "CSV115",
    severity: "check",
    title: "Comment that looks like a row",
    explain:
      "Lines that begin with # are comments, but this one has as many cells as a row. If it is a row, put its first cell in quotes.",
  },
  unknownKey: {
    code: "CSV116",
    severity: "remark",
    title: "Key line not known",
    explain:
      "A `# key: value` line has a key that nothing reads. A slip in the name is the usual reason. Correct the name, or leave the line as a comment.",
  },
  longLine: {
    code: "CSV117",
    severity: "check",
    title: "Line over 1 MB",
    explain:
      "A line of the file has more than a million characters. No table, log or settings file has such lines: the line ends were lost in a copy, or a quote was left open. The file is read as it is, a log with a line over 16 MB not at all.",
  },
  tooLarge: {
    code: "CSV118",
    severity: "error",
    title: "File too large",
    explain:
      "A log is read a stretch at a time, up to 16 GB and 400 million numbers. A log with a quote that is left open or goes over a line end, every table and every settings file is read up to 256 MB, since it is in memory while it is read; a picture up to 1 GB. The file is left out. Split a log by card or by take.",
  },
  blankCell: {
    code: "CSV121",
    severity: "error",
    title: "Required cell is blank",
    explain: "The row says nothing where a value is required. The row is left out. Write the value.",
  },
  notANumber: {
    code: "CSV122",
    severity: "error",
    title: "Not a number",
    explain:
      "A cell of a numeric column holds something else. The cell is lost, the row stays. A decimal comma is accepted in a log that says `# decimal: ,`; what was not logged is left empty. Write a plain number in the column's unit.",
  },
  outOfRange: {
    code: "CSV123",
    severity: "error",
    title: "Number out of range",
    explain:
      "The number cannot be what the column means, such as a negative width or a distance of zero. The cell is lost, the row stays. Write the right number, or leave the cell empty.",
  },
  unknownWord: {
    code: "CSV124",
    severity: "error",
    title: "Word not known",
    explain:
      "The column takes one of a few words, and this is none of them. The cell is lost, the row stays. Write one of the words that the hint lists.",
  },
} as const satisfies Record<string, FindingKind>;

export const CSV_FINDINGS: readonly FindingKind[] = Object.values(CSV);
