/** The other cameras on the same slate and take. */
import { NOT_LOGGED, NOT_RECORDED } from "../../format/absent.ts";
import { stopRange } from "../../format/stop.ts";
import { takeKey } from "../../model/address.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { DayContext } from "../day/day-context.ts";
import { distanceUnit, rangeInColumn } from "../distances.ts";
import { hrefTo, takePath } from "../links.ts";
import { lensName, takeName } from "../names.ts";
import { cell, column, row, type TableModel, table, textOr } from "../table.ts";
import { focalRange } from "./take-facts.ts";

export interface CamerasView {
  readonly has: boolean;
  readonly table: TableModel;
}

export function camerasView(t: TakeSummary, day: DayContext, path: string): CamerasView {
  const system = day.site.show.distances;
  const others = day.takes.filter((other) => other !== t && takeKey(other.take) === takeKey(t.take));
  return {
    has: others.length > 0,
    table: table(
      "cameras-table",
      `Other cameras on ${t.take.slate} take ${t.take.take}`,
      [
        column("Camera"),
        column("Clip"),
        column("Lens"),
        column("Focal length"),
        column("Stop"),
        column("Focus", { unit: distanceUnit(system) }),
      ],
      others.map((other) => {
        const { take } = other;
        const absent = take.track === null ? NOT_RECORDED : NOT_LOGGED;
        return row(cell(takeName(take), { nb: true, href: hrefTo(path, takePath(day.summary.date, take.address)) }), [
          textOr(take.clip, NOT_RECORDED, { nb: true }),
          textOr(take.lensId === null ? null : lensName(take.lens, take.lensId), NOT_RECORDED, { nb: true }),
          textOr(other.focal === null ? null : focalRange(other.focal.minMm, other.focal.maxMm), absent, { nb: true }),
          textOr(other.tStop === null ? null : stopRange(other.tStop.widest, other.tStop.deepest), absent, {
            nb: true,
            note: other.tStop?.source === "noted" ? "noted" : "",
          }),
          textOr(other.focus === null ? null : rangeInColumn(other.focus.nearestM, other.focus.farthestM, system), absent, {
            nb: true,
            note: other.focus?.source === "noted" ? "noted" : "",
          }),
        ]);
      }),
    ),
  };
}
