/** How far the takes and cameras of each slate lie apart in exposure and colour temperature. */
import { kelvin } from "../../format/amounts.ts";
import { fixed, thousands } from "../../format/number.ts";
import { listWords } from "../../format/words.ts";
import type { ExposureSpread, SlateExposure } from "../../summary/exposure.ts";
import { hrefTo, takePath } from "../links.ts";
import { type Cell, cell, column, num, row, type TableModel, table, textOr } from "../table.ts";
import type { DayContext } from "./day-context.ts";

const NOT_ALL = "not all recorded";

/** A row for each slate with more than one clip that anything can be said of; no rows when no slate has. */
export function exposureTable(day: DayContext, path: string): TableModel {
  const slates = compared(day).filter(isKnown);
  return table(
    "exposure-table",
    "Spread in exposure and colour temperature of each slate over its takes and cameras",
    [
      column("Slate"),
      column("Cameras"),
      column("Clips", { num: true }),
      column("Light on the sensor", { unit: "spread, stops", num: true }),
      column("With EI", { unit: "spread, stops", num: true }),
      column("Brightest on the sensor"),
      column("Darkest"),
      column("Colour temperature", { unit: "shift, mired", num: true }),
      column("Setting", { unit: "lowest to highest" }),
    ],
    slates.map((slate) => slateRow(slate, day, path)),
  );
}

/** Names the slates that the table leaves out because nothing of them can be compared; empty when it has all. */
export function notExposedSentence(day: DayContext): string {
  const slates = compared(day);
  const unknown = slates.filter((slate) => !isKnown(slate)).map((slate) => slate.slate);
  if (unknown.length === 0) return "";
  if (unknown.length === slates.length)
    return "Not calculated: no clip of a slate with more than one has stop, shutter and ND or a colour temperature recorded.";
  return `Not calculated, neither stop, shutter and ND nor colour temperature recorded: ${unknown.length === 1 ? "slate" : "slates"} ${listWords(unknown)}.`;
}

function compared(day: DayContext): readonly SlateExposure[] {
  return day.summary.slateExposure.filter((slate) => slate.clips > 1);
}

function isKnown({ light, withEi, beforeNd, colourTemperature }: SlateExposure): boolean {
  return [light, withEi, beforeNd, colourTemperature].some((part) => part !== null);
}

function slateRow(slate: SlateExposure, day: DayContext, path: string): Row {
  const { light, withEi, beforeNd, colourTemperature: colour } = slate;
  const apart = light !== null && light.spreadStops >= 0.005;
  return row(slateCell(slate.slate, day, path), [
    cell(listWords(slate.cameras)),
    num(thousands(slate.clips)),
    light === null && beforeNd !== null ? spreadCell(beforeNd, "before ND") : spreadCell(light),
    spreadCell(withEi),
    light === null ? absent() : apart ? takeCell(light.brightest.address, day, path) : cell("all alike"),
    light === null ? absent() : apart ? takeCell(light.darkest.address, day, path) : cell("all alike"),
    colour === null ? absent(true) : cell(fixed(colour.shiftMired, 0), { num: true, note: leftOut(colour.leftOut) }),
    textOr(colour === null ? null : kelvins(colour.lowestK, colour.highestK), NOT_ALL, { nb: true }),
  ]);
}

/** A slate that the day page has no room for leads to its first take. */
function slateCell(slate: string, day: DayContext, path: string): Cell {
  const group = day.slates.find((other) => other.slate === slate);
  const first = group?.takes[0]?.take.address;
  if (group === undefined || first === undefined) return cell(slate, { nb: true });
  const href = group.anchor === null ? hrefTo(path, takePath(day.summary.date, first)) : hrefTo(path, path, group.anchor);
  return cell(slate, { nb: true, href });
}

type Row = ReturnType<typeof row>;

function absent(num = false): Cell {
  return cell(NOT_ALL, { absent: true, num });
}

function spreadCell(spread: ExposureSpread | null, without = ""): Cell {
  if (spread === null) return absent(true);
  const note = [without, leftOut(spread.leftOut)].filter((words) => words !== "").join(", ");
  return cell(fixed(spread.spreadStops, 2), { num: true, note });
}

/** Clips without the parts that it needs. */
function leftOut(clips: number): string {
  return clips === 0 ? "" : `${thousands(clips)} left out`;
}

function takeCell(address: string, day: DayContext, path: string): Cell {
  const name = day.names.get(address);
  return name === undefined ? cell(address) : cell(name, { nb: true, href: hrefTo(path, takePath(day.summary.date, address)) });
}

function kelvins(lowest: number, highest: number): string {
  return lowest === highest ? kelvin(lowest) : `${fixed(lowest, 0)} to ${kelvin(highest)}`;
}
