import type { Place } from "../../core/finding.ts";
import type { FindingCollector } from "../../core/findings/collect.ts";
import { KIT } from "../../core/findings/kit.ts";
import type { CoefficientName, DistortionModel } from "../../optics/convention.ts";
import type { CalibrationPoint, CalibrationTable } from "../records.ts";
import { needsArea } from "./convention-keys.ts";

const OF_MODEL: Readonly<Record<DistortionModel, RegExp>> = {
  "brown-conrady": /^(k[1-6]|p[12])$/,
  division: /^lambda$/,
  "anamorphic-even": /^[ab][xy][24]$/,
};
const DISTORTION = /^(k[1-6]|p[12]|lambda|[ab][xy][24])$/;
const SHADING = /^a[1-3]$/;

/** What keeps a table from being evaluated, in whole or in part. `header` is the place of the header row. */
export function tellOfCalibration(
  table: CalibrationTable,
  columns: ReadonlySet<string>,
  header: Place,
  found: FindingCollector,
): void {
  if (table.points.length === 0) {
    found.add(KIT.noPoints, {
      place: header,
      message: "the table has no point that can be used",
      hint: "Add a row for each focus distance that was measured.",
    });
  }
  tellOfConvention(table, columns, header, found);
  tellOfOtherModels(table, columns, header, found);
  tellOfGaps(table.points, found);
}

function tellOfConvention(table: CalibrationTable, columns: ReadonlySet<string>, header: Place, found: FindingCollector): void {
  const { model, direction, radius, areaMm, shadingRadius } = table.convention;
  const names = [...columns];
  const lacking = [
    ...(model === null ? ["model: brown-conrady"] : []),
    ...(direction === null ? ["direction: undistort"] : []),
    ...(radius === null ? ["radius: half-diagonal"] : []),
  ];
  if (names.some((name) => DISTORTION.test(name)) && lacking.length > 0) {
    found.add(KIT.noConvention, {
      place: header,
      field: lacking[0]?.split(":")[0] ?? null,
      message: `the table does not say its ${lacking.map((line) => line.split(":")[0]).join(" and its ")}: it is shown and never evaluated`,
      hint: `Ask its maker, and add before the column names, if that is what they say: ${lacking.map((line) => `"# ${line}"`).join(", ")}.`,
    });
  }
  if (names.some((name) => SHADING.test(name)) && shadingRadius === null) {
    found.add(KIT.noShadingRadius, {
      place: header,
      field: "shading_radius",
      message: "the table has shading and does not say its radius: it is shown and never evaluated",
      hint: 'Ask its maker, and add before the column names a line such as "# shading_radius: half-diagonal".',
    });
  }
  if (needsArea(table.convention) && areaMm === null) {
    found.add(KIT.noArea, {
      place: header,
      field: "area_mm",
      message: `a radius of ${[radius, shadingRadius].find((r) => r?.startsWith("half-"))} needs the area that it is half of`,
      hint: 'Add before the column names a line such as "# area_mm: 24.89x18.66".',
    });
  }
}

function tellOfOtherModels(table: CalibrationTable, columns: ReadonlySet<string>, header: Place, found: FindingCollector): void {
  const { model } = table.convention;
  if (model === null) return;
  const others = [...columns].filter((name) => DISTORTION.test(name) && !OF_MODEL[model].test(name));
  const used = others.filter((name) => table.points.some((point) => (point.coefficients[name as CoefficientName] ?? 0) !== 0));
  if (used.length === 0) return;
  found.add(KIT.coefficientOfOtherModel, {
    place: header,
    field: used[0] ?? null,
    message: `the model ${model} has no ${used.join(", ")}`,
    hint: "Mend the model, or take the columns away.",
  });
}

/** For each focal length the distances and stops should form a full grid, and all focal lengths should reach equally near and far. */
function tellOfGaps(points: readonly CalibrationPoint[], found: FindingCollector): void {
  const all = new Set(points.map((point) => point.focusDioptres));
  const near = Math.max(...all);
  const far = Math.min(...all);
  for (const focalMm of new Set(points.map((point) => point.focalMm))) {
    const own = points.filter((point) => point.focalMm === focalMm);
    const distances = new Set(own.map((point) => point.focusDioptres));
    const stops = new Set(own.map((point) => point.tStop));
    const wanted = new Set([...distances, near, far]);
    const lacking = [...wanted].flatMap((focus) =>
      [...stops].filter((stop) => !own.some((p) => p.focusDioptres === focus && p.tStop === stop)).map((stop) => ({ focus, stop })),
    );
    const [first] = lacking;
    if (first === undefined) continue;
    const distance = first.focus === 0 ? "infinity" : `${Number((1 / first.focus).toFixed(3))} m`;
    const stop = first.stop === null ? "" : ` at T${Number(first.stop.toFixed(2))}`;
    const more = lacking.length > 1 ? ` and ${lacking.length - 1} more` : "";
    found.add(KIT.gridWithGaps, {
      place: (own[0] as CalibrationPoint).place,
      message: `the table has no row for ${focalMm} mm, ${distance}${stop}${more}`,
      hint: "The nearest row is used there. Add the rows that were measured.",
    });
  }
}
