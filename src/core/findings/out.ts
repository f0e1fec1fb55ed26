/** OUT8xx: what happens while the report is written. */
import type { FindingKind } from "./kind.ts";

export const OUT = {
  notWritten: {
    code: "OUT801",
    severity: "error",
    title: "The report cannot be written",
    explain:
      "A file or folder of the report could not be written, moved or deleted: no permission, a full disk, a folder where a file has to be. " +
      "The message names the file and what the disk said. What was written before stays as it is, and a day that was not finished keeps its " +
      "last good pages. Mend the cause and run the same command again: it goes on where it stopped. To write somewhere else, use --out.",
  },
  linkLeftOut: {
    code: "OUT802",
    severity: "check",
    title: "A link leads out of the show folder",
    explain:
      "The show folder holds a symbolic link to something outside it. Such links are not followed, so that a show folder handed to somebody " +
      "else gives the same report there, and so that no file from elsewhere comes into a report unnoticed. Copy the files into the show folder.",
  },
  inputMoved: {
    code: "OUT803",
    severity: "check",
    title: "An input file changed while the day was built",
    explain:
      "A file of the day was written to between the moment it was looked at and the moment it was read, for instance because a copy was still " +
      "running. The pages show what was read. The day counts as unfinished: the next build makes it again.",
  },
  fault: {
    code: "OUT804",
    severity: "error",
    title: "A day could not be built because of a fault in the program",
    explain:
      "The program failed on this day. That is our fault, not a mistake in the data. The other days are built, and this day keeps its last good " +
      "pages if it has any. The command ends with exit code 70 and prints the path of a file that says what happened; please send that file.",
  },
  dayGone: {
    code: "OUT805",
    severity: "remark",
    title: "A day is no longer in the show folder",
    explain:
      "An earlier build made pages and a pack for a day whose folder is gone. They were removed from the report. Files in the output folder " +
      "that the program did not write are never removed.",
  },
  historyDamaged: {
    code: "OUT806",
    severity: "check",
    title: "The hash list of a pack does not hold",
    explain:
      "The folder ascmhl of a pack keeps a list of all files with their hashes for every time the pack was issued, and a chain file that " +
      "vouches for the lists. One of them was changed, removed or cannot be read. Nothing of it was overwritten: what can be read is kept, and " +
      "a pack that has changed gets its new list. Put the folder back as it was, or delete it to begin a new history, and build again.",
  },
  inUse: {
    code: "OUT807",
    severity: "error",
    title: "Another build is writing to the output folder",
    explain:
      "Two builds may not write to one output folder at once. The message says which process of which computer is at work. Wait until it has " +
      "ended and run the command again, or write somewhere else with --out. A lock that a killed build left behind is recognised and taken " +
      "over. On a disk that several computers share nobody can know whether the other one still runs: then delete the file that is named.",
  },
} as const satisfies Readonly<Record<string, FindingKind>>;

export const OUT_FINDINGS: readonly FindingKind[] = Object.values(OUT);
