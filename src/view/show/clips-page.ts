/** Every clip of the show by its name, for the cutting room; the whole list is in the table beside the page. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { thousands } from "../../format/number.ts";
import { minutesSeconds } from "../../format/time.ts";
import { plural } from "../../format/words.ts";
import type { Kit } from "../../ingest/records.ts";
import { clipsByName, type ShowClip } from "../../summary/clips.ts";
import type { DayDigest } from "../../summary/digest-types.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { type FileLink, showTableLinks } from "../files.ts";
import { CLIPS_PATH, CLIPS_TABLE_PATH, dayPath, hrefTo, lensPaths, takePath } from "../links.ts";
import { dayHeading, remarkWords, takeName } from "../names.ts";
import { pageBase } from "../page.ts";
import { cell, column, num, type Row, row, type TableModel, table, textOr } from "../table.ts";

/** More rows would make a page that browsers are slow with; the file beside it has them all. */
export const MOST_CLIPS = 2000;

export interface ClipsPage extends PageModel {
  readonly about: string;
  readonly clips: TableModel;
  readonly hasClips: boolean;
  /** How many clips the page leaves to the file; empty when it shows all. */
  readonly more: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
}

export function clipsPage(digests: readonly DayDigest[], kit: Kit, context: SiteContext): ClipsPage {
  const clips = clipsByName(digests);
  const shown = clips.slice(0, MOST_CLIPS);
  const lenses = lensPaths(kit);
  const files = showTableLinks(context, CLIPS_PATH, CLIPS_TABLE_PATH);
  const unnamed = clips.filter(({ take }) => take.clip === null).length;
  return {
    ...pageBase(
      {
        path: CLIPS_PATH,
        title: "Clips",
        trail: [{ label: "Clips", path: CLIPS_PATH }],
        styles: ["home.css", "wide.css", "show.css", "long-text.css"],
        landscape: true,
      },
      context,
    ),
    about: `${plural(clips.length, "clip")} of ${plural(digests.length, "day")}${
      unnamed === 0 ? "" : `; ${thousands(unnamed)} without a clip name, at the end`
    }.`,
    clips: table(
      "clips-table",
      "Clips of the show by clip name",
      [
        column("Clip"),
        column("Roll"),
        column("Day"),
        column("Slate"),
        column("Take"),
        column("Circled"),
        column("Timecode in"),
        column("Timecode out", { unit: "first frame after" }),
        column("Length", { unit: "min:s", num: true }),
        column("Lens"),
        column("Remark"),
      ],
      shown.map((clip) => clipRow(clip, lenses)),
      { cls: "plain clip-table" },
    ),
    hasClips: clips.length > 0,
    more: clips.length > MOST_CLIPS ? moreWords(clips.length, files.length > 0) : "",
    files,
    hasFiles: files.length > 0,
  };
}

function moreWords(count: number, hasFile: boolean): string {
  const left = `The first ${plural(MOST_CLIPS, "clip")} of ${thousands(count)} are here`;
  return hasFile ? `${left}; ${CLIPS_TABLE_PATH} has them all.` : `${left}; the pages of the days have them all.`;
}

function clipRow(clip: ShowClip, lenses: ReadonlyMap<string, string>): Row {
  const { take, date } = clip;
  const lens = take.lens === null ? undefined : lenses.get(take.lens);
  const sheet = { nb: true, href: hrefTo(CLIPS_PATH, takePath(date, take.address)) };
  // a clip without a name is known by its take; that link needs a text of its own
  const head = take.clip === null ? cell(takeName(take), { ...sheet, note: "clip not recorded" }) : cell(take.clip, sheet);
  return row(head, [
    textOr(take.roll, NOT_RECORDED, { nb: true }),
    cell(dayHeading(clip), { nb: true, href: hrefTo(CLIPS_PATH, dayPath(date)) }),
    cell(take.slate, { nb: true }),
    cell(`${take.take} ${take.camera}`, { nb: true }),
    cell(take.circled ? "circled" : "no"),
    textOr(take.timecodeIn, NOT_RECORDED, { nb: true }),
    textOr(take.timecodeOut, NOT_RECORDED, { nb: true }),
    take.durationFrames === 0 ? cell(NOT_RECORDED, { num: true, absent: true }) : num(minutesSeconds(take.durationSeconds)),
    lens === undefined
      ? textOr(take.lens, NOT_RECORDED, { nb: true })
      : cell(take.lens ?? "", { nb: true, href: hrefTo(CLIPS_PATH, lens) }),
    textOr(remarkWords(take.status, take.remarks), NOT_RECORDED, { fold: true }),
  ]);
}
