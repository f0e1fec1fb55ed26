/** Names that fit an edit list: short, plain, and unlike each other. */
import { asciiLine } from "./ascii.ts";

export interface ShortName {
  readonly name: string;
  /** False when letters were changed or left out: then the list says what it stands for. */
  readonly whole: boolean;
}

/**
 * Reels with a meaning of their own: black, auxiliary source, bars.
 * @source otio-cmx3600-adapter, cmx_3600.py (special source identifiers BL, BLACK, BARS; AX); pycmx, edit.py (BL, AX)
 */
const RESERVED = new Set(["BL", "AX", "BLACK", "BARS"]);
/** @source pycmx, parse_cmx_statements.py: eight characters of a CMX 3600 line; its wider lines are other formats. */
export const REEL_WIDTH = 8;
/** This project's choice, so that a name fits a bin's column: no reader's limit was found in a published text. */
const NAME_WIDTH = 32;

/** Gives every text a reel of at most eight capital letters and digits; equal texts have equal reels. */
export function reelNames(): (text: string) => ShortName {
  return shortNames(REEL_WIDTH, (text) => {
    const plain = asciiLine(text)
      .toUpperCase()
      .replace(/[^A-Z0-9]/g, "");
    return plain === "" || RESERVED.has(plain) ? `R${plain}` : plain;
  });
}

/** Gives every text a clip name of at most 32 characters of one ASCII line. */
export function lineNames(): (text: string) => ShortName {
  return shortNames(NAME_WIDTH, (text) => asciiLine(text) || "?");
}

function shortNames(width: number, plain: (text: string) => string): (text: string) => ShortName {
  const given = new Map<string, ShortName>();
  const used = new Set<string>();
  return (text) => {
    const before = given.get(text);
    if (before !== undefined) return before;
    const base = plain(text);
    let name = base.slice(0, width).trimEnd();
    for (let n = 2; used.has(name.toUpperCase()); n++) name = base.slice(0, width - String(n).length) + n;
    used.add(name.toUpperCase());
    const short = { name, whole: name.toUpperCase() === text.toUpperCase() };
    given.set(text, short);
    return short;
  };
}
