/** Size of a day's pack. */
import type { DayDigest } from "../summary/digest-types.ts";

/** Bytes of all files of the pack without its hash list; 0 where no pack is written. */
export function packBytes({ packFiles }: DayDigest): number {
  return packFiles.reduce((sum, { bytes }) => sum + bytes, 0);
}
