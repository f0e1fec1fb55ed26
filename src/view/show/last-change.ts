/** Which days the last change of the input made anew, for the first page. */
import { fileSize } from "../../format/amounts.ts";
import { listWords, plural } from "../../format/words.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import type { ChangedDay, SiteContext } from "../context.ts";
import { dayPath, HOME_PATH, hrefTo } from "../links.ts";
import { dayShort } from "../names.ts";
import { packBytes } from "../pack-size.ts";

/** A change of show.yaml or the kit touches every day: the list stops here, the sentence counts them all. */
const MOST_LISTED = 12;

export interface ChangedLine {
  readonly day: string;
  readonly linked: boolean;
  readonly href: string;
  /** "made anew: notes.csv changed". */
  readonly what: string;
  /** "pack 1.2 MB, hash list 2"; empty for a day that is gone. */
  readonly pack: string;
}

export interface LastChangeView {
  readonly sentence: string;
  readonly lines: readonly ChangedLine[];
  readonly hasLines: boolean;
  readonly more: string;
}

/** `null` where no build has compared. */
export function lastChangeView(digests: readonly DayDigest[], context: SiteContext): LastChangeView | null {
  const change = context.lastChange;
  if (change === undefined || digests.length === 0) return null;
  if (change.first) {
    return {
      sentence: `First build into this folder: ${plural(digests.length, "day")}, all new.`,
      lines: [],
      hasLines: false,
      more: "",
    };
  }
  const of = (what: ChangedDay["what"]) => change.days.filter((day) => day.what === what).length;
  const parts = [
    of("changed") > 0 && `${plural(of("changed"), "day")} made anew`,
    of("new") > 0 && `${plural(of("new"), "new day")}`,
    of("gone") > 0 && `${plural(of("gone"), "day")} gone`,
    `${plural(digests.length - of("changed") - of("new"), "day")} as before`,
  ].filter((words) => words !== false);
  const left = change.days.length - MOST_LISTED;
  return {
    sentence: `${listWords(parts)}.`,
    hasLines: true,
    lines: change.days.slice(0, MOST_LISTED).map((day) => lineOf(day, digests, context)),
    more: left > 0 ? `And ${plural(left, "more day")}.` : "",
  };
}

const WORDS: Readonly<Record<ChangedDay["what"], string>> = { new: "new", changed: "made anew", gone: "gone" };

function lineOf(day: ChangedDay, digests: readonly DayDigest[], context: SiteContext): ChangedLine {
  const digest = digests.find(({ date }) => date === day.date);
  const pack = context.packs?.find(({ date }) => date === day.date);
  const size = digest === undefined || digest.packFiles.length === 0 ? "" : `pack ${fileSize(packBytes(digest))}`;
  const list = pack === undefined || pack.generation === 0 ? "" : `hash list ${pack.generation}`;
  return {
    day: dayShort(day),
    linked: digest !== undefined,
    href: digest === undefined ? "" : hrefTo(HOME_PATH, dayPath(day.date)),
    what: day.reason === "" ? WORDS[day.what] : `${WORDS[day.what]}: ${day.reason}`,
    pack: [size, list].filter((words) => words !== "").join(", "),
  };
}
