/** Plates whose lens nobody measured: no calibration table, no coefficients in the log, and no grid on the day. */
import { CHECK } from "../../core/findings/check.ts";
import { sameName } from "../address.ts";
import type { Take } from "../types.ts";
import type { DayContext } from "./day.ts";

const COEFFICIENTS = ["k1", "k2", "k3", "lambda", "p1", "p2"] as const;

/** One remark a lens, at its first plate. */
export function checkPlateLenses({ takes, tell }: DayContext): void {
  const measured = new Set(takes.filter((take) => take.plate === "grid").map(lensName));
  for (const take of takes) {
    if (take.plate === null || take.plate === "grid" || take.plate === "reference" || take.lensId === null) continue;
    if (take.calibration !== null || hasCoefficients(take) || measured.has(lensName(take))) continue;
    measured.add(lensName(take));
    tell(CHECK.plateLensUnmeasured, {
      place: take.note?.plate?.place ?? take.note?.place ?? null,
      field: "plate",
      message: `Lens ${take.lensId} shot a ${take.plate} plate, and has neither a calibration table nor a grid on this day.`,
      hint: `Shoot a grid with it before it goes back, or put its table into kit/calibration/${take.lensId}.csv. A grid of another day counts as soon as the table made from it is there.`,
      take: take.address,
    });
  }
}

function lensName(take: Take): string {
  return sameName(take.lensId ?? "");
}

function hasCoefficients(take: Take): boolean {
  return COEFFICIENTS.some((name) => take.track?.columns[name]?.some((value) => Number.isFinite(value)) ?? false);
}
