/** About the report itself: which program made it from which files, what its files are, and how to check them. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { fileSize } from "../../format/amounts.ts";
import { thousands } from "../../format/number.ts";
import { plural } from "../../format/words.ts";
import type { ShowInput } from "../../ingest/records.ts";
import type { DayDigest, InputDigest } from "../../summary/digest-types.ts";
import type { PageModel, SiteContext } from "../context.ts";
import { type Fact, fact } from "../facts.ts";
import { fileCell, hashCell } from "../file-cells.ts";
import { type FileLink, showTableLinks } from "../files.ts";
import { ABOUT_PATH, dayPath, hrefTo, INPUTS_TABLE_PATH } from "../links.ts";
import { dayHeading, dayShort } from "../names.ts";
import { packBytes } from "../pack-size.ts";
import { pageBase } from "../page.ts";
import { cell, column, num, numOr, type Row, row, type TableModel, table, textOr } from "../table.ts";
import { NO_NETWORK, NOT_DONE, OUTPUTS } from "./about-text.ts";
import type { Named } from "./methods-page.ts";

/** More rows of files would make a heavy page; the table beside it has them all. */
export const MOST_INPUTS = 1000;

export interface AboutPage extends PageModel {
  readonly facts: readonly Fact[];
  readonly showInputs: TableModel;
  readonly days: TableModel;
  readonly hasDays: boolean;
  readonly dayInputs: TableModel;
  readonly hasDayInputs: boolean;
  readonly more: string;
  readonly files: readonly FileLink[];
  readonly hasFiles: boolean;
  readonly outputs: readonly Named[];
  readonly verifyCommand: string;
  readonly notDone: readonly string[];
  readonly network: string;
}

export function aboutPage(digests: readonly DayDigest[], show: ShowInput, context: SiteContext): AboutPage {
  const inputs = digests.flatMap((digest) => digest.inputs.map((input) => ({ digest, input })));
  const files = showTableLinks(context, ABOUT_PATH, INPUTS_TABLE_PATH);
  const left = inputs.length - MOST_INPUTS;
  return {
    ...pageBase(
      {
        path: ABOUT_PATH,
        title: "About this report",
        trail: [{ label: "About this report", path: ABOUT_PATH }],
        styles: ["home.css", "show.css", "long-text.css"],
      },
      context,
    ),
    facts: facts(digests, show, context),
    showInputs: inputTable(
      "show-inputs",
      "Files of the show and the kit",
      show.files.map((file) => inputRow(file, null)),
    ),
    days: daysTable(digests, context),
    hasDays: digests.length > 0,
    dayInputs: inputTable(
      "day-inputs",
      "Files of the days",
      inputs.slice(0, MOST_INPUTS).map(({ digest, input }) => inputRow(input, digest)),
    ),
    hasDayInputs: inputs.length > 0,
    more: left <= 0 ? "" : `${thousands(left)} more are in ${INPUTS_TABLE_PATH}.`,
    files,
    hasFiles: files.length > 0,
    outputs: OUTPUTS,
    verifyCommand: `daybook verify packs/${digests.at(-1)?.date ?? "DATE"}`,
    notDone: NOT_DONE,
    network: NO_NETWORK,
  };
}

function facts(digests: readonly DayDigest[], show: ShowInput, context: SiteContext): readonly Fact[] {
  const all = [...show.files, ...digests.flatMap((d) => d.inputs)];
  const rows = digests.reduce((sum, d) => sum + d.rows.read, 0);
  return [
    fact("Made by", `${context.tool.name} ${context.tool.version}`),
    fact("Build", context.buildId, {
      source: "made from the program's version and the input files: the same input gives the same id",
    }),
    fact("Made from", plural(all.length, "file"), { source: `${fileSize(sizeOf(all))}, ${plural(rows, "row")} of lens logs` }),
    fact("Time", "none is written", {
      source: "a report does not say when it was built, so that two builds of one input are equal",
    }),
  ];
}

function daysTable(digests: readonly DayDigest[], context: SiteContext): TableModel {
  const packs = new Map((context.packs ?? []).map((pack) => [pack.date, pack]));
  return table(
    "days-table",
    "Days with their input and their pack",
    [
      column("Day"),
      column("Read", { unit: "files", num: true }),
      column("Read", { unit: "size", num: true }),
      column("Pack", { unit: "files", num: true }),
      column("Pack", { unit: "size", num: true }),
      column("Pack id"),
      column("Hash lists", { num: true }),
    ],
    digests.map((digest) => {
      const pack = packs.get(digest.date);
      const written = digest.packFiles.length > 0;
      return row(cell(dayShort(digest), { href: hrefTo(ABOUT_PATH, dayPath(digest.date)) }), [
        num(thousands(digest.inputs.length)),
        num(fileSize(sizeOf(digest.inputs))),
        numOr(written ? thousands(digest.packFiles.length) : null, "not written"),
        numOr(written ? fileSize(packBytes(digest)) : null, "not written"),
        textOr(pack?.id ?? null, NOT_RECORDED, { mono: true }),
        numOr(pack === undefined ? null : thousands(pack.generation), NOT_RECORDED),
      ]);
    }),
  );
}

function inputTable(id: string, caption: string, rows: readonly Row[]): TableModel {
  const columns = [column("File"), column("Day"), column("Size", { unit: "bytes", num: true }), column("SHA-256")];
  return table(id, caption, columns, rows, { cls: "plain inputs-table" });
}

function inputRow({ file, bytes, sha256 }: InputDigest, day: DayDigest | null): Row {
  return row(fileCell(file), [cell(day === null ? "all" : dayHeading(day), { nb: true }), num(thousands(bytes)), hashCell(sha256)]);
}

function sizeOf(files: readonly { readonly bytes: number }[]): number {
  return files.reduce((sum, { bytes }) => sum + bytes, 0);
}
