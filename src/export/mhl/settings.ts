/** Date and host of a hash list where nobody says others: the day's wrap, and the show. */
import type { DaySummary } from "../../summary/types.ts";
import type { HistorySettings } from "./manifest.ts";

const NOON = 12 * 60;

/**
 * The list is dated at the day's wrap, else at noon, in the show's time zone (without one, in UTC), and made by the show's
 * code: two builds of one day on two machines write the same list.
 */
export function historySettings(summary: DaySummary, tool: HistorySettings["tool"]): HistorySettings {
  const { date, show, day } = summary;
  const wall = Date.parse(`${date}T00:00:00Z`) + (day.record.wrap ?? NOON) * 60_000;
  const created = `${new Date(wall - zoneOffset(wall, show.timeZone)).toISOString().slice(0, 19)}Z`;
  return { created, host: show.code, tool, folder: date };
}

/** Milliseconds that clocks of a zone are ahead of UTC when they show `wall`; 0 for a zone that nobody knows. */
function zoneOffset(wall: number, zone: string | null): number {
  if (zone === null) return 0;
  const clock = clockOf(zone);
  if (clock === null) return 0;
  const first = clock(wall) - wall;
  // near a change of the clocks the offset at the guess may be that of the other side
  return clock(wall - first) - (wall - first);
}

/** What the clocks of a zone show at an instant, as if it were UTC. */
function clockOf(zone: string): ((instant: number) => number) | null {
  try {
    const numeric = "2-digit";
    const format = new Intl.DateTimeFormat("en-GB", {
      ...{ timeZone: zone, hourCycle: "h23", calendar: "gregory", numberingSystem: "latn" },
      ...{ year: "numeric", month: numeric, day: numeric, hour: numeric, minute: numeric, second: numeric },
    });
    return (instant) => {
      const parts = new Map(format.formatToParts(instant).map(({ type, value }) => [type, Number(value)]));
      const part = (name: Intl.DateTimeFormatPartTypes) => parts.get(name) ?? 0;
      return Date.UTC(part("year"), part("month") - 1, part("day"), part("hour"), part("minute"), part("second"));
    };
  } catch {
    return null;
  }
}
