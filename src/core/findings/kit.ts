import type { FindingKind } from "./kind.ts";

/** Cameras, lenses, calibration tables, encoder tables and field maps. */
export const KIT = {
  absent: {
    code: "KIT501",
    severity: "remark",
    title: "No list of cameras or lenses",
    explain:
      "The kit says what the figures need: sensor sizes for angles of view, widest stops and transmittance for depth of field. Without it those are not recorded. Write kit/cameras.csv and kit/lenses.csv; a few columns are enough.",
  },
  lensTwice: {
    code: "KIT502",
    severity: "error",
    title: "Lens twice in the kit",
    explain: "Two rows have one lens id. The first is used. Delete or rename one of them.",
  },
  lensFocal: {
    code: "KIT503",
    severity: "error",
    title: "Lens without a usable focal length",
    explain:
      "A prime needs focal_mm, a zoom focal_min_mm and focal_max_mm, the smaller one first. The lens stays in the kit, figures that need the focal length are not recorded. Write it into the row.",
  },
  faster: {
    code: "KIT506",
    severity: "check",
    title: "T-stop wider than the f-stop",
    explain:
      "A lens loses light, so its T number is never below its f number. One of the two is a slip; no transmittance is taken from them. Correct it from the lens's own marks.",
  },
  tableWithoutLens: {
    code: "KIT507",
    severity: "check",
    title: "Calibration table for a lens that is not in the kit",
    explain:
      "The file name of a calibration table is the lens id. No lens of the kit has this one, so the table serves nobody. Rename the file, or add the lens to kit/lenses.csv.",
  },
  noConvention: {
    code: "KIT508",
    severity: "check",
    title: "Calibration table without direction, radius or model",
    explain:
      "Coefficients mean nothing without their model, their direction (undistort: recorded to ideal; distort: ideal to recorded) and what r = 1 is. The table is shown and never evaluated. The maker of the table knows; guessing bends every plate. Ask them, and write the key lines.",
  },
  noArea: {
    code: "KIT509",
    severity: "check",
    title: "Half radius without the area",
    explain:
      'A radius of half-width, half-height or half-diagonal refers to the table\'s own area_mm. Without it the coefficients are never evaluated. Write "# area_mm: 24.89x18.66" with the area that the table was measured on.',
  },
  badKey: {
    code: "KIT510",
    severity: "error",
    title: "Key of a calibration table cannot be read",
    explain:
      "The value of a `# key: value` line is not what the key takes. The key counts as not said. Write one of the values that the hint lists.",
  },
  coefficientOfOtherModel: {
    code: "KIT511",
    severity: "check",
    title: "Coefficient of another model",
    explain:
      "The table has a column that its model does not use. It is kept and never evaluated. Correct the model, or delete the column.",
  },
  pointTwice: {
    code: "KIT512",
    severity: "check",
    title: "Calibration point twice",
    explain: "Two rows of a table are for one focal length, focus and stop. The first is used. Delete one of the rows.",
  },
  gridWithGaps: {
    code: "KIT513",
    severity: "check",
    title: "Calibration grid with missing cells",
    explain:
      "Not every focus distance has every stop (or not every focal length has the same distances). Where a point is missing the nearest row is used. Measure and add the missing points, or leave it.",
  },
  modeTwice: {
    code: "KIT514",
    severity: "error",
    title: "Sensor mode twice",
    explain: "Two rows have one camera and one sensor mode. The first is used. Delete or rename one of them.",
  },
  badMap: {
    code: "KIT515",
    severity: "error",
    title: "Field map cannot be used",
    explain:
      "A map in kit/columns.yaml needs `when: {header_has: [...]}` and `columns: {header: name}`. A map that lacks them is left out.",
  },
  mapTarget: {
    code: "KIT516",
    severity: "error",
    title: "Field map to an unknown name",
    explain:
      "A map turns another layout's header into a known column, and this one is not known. `daybook columns` lists the names. The column is kept word for word.",
  },
  stop: {
    code: "KIT517",
    severity: "error",
    title: "Stop of the kit cannot be read",
    explain: "Widest stops and the t column of calibration tables are written as one stop, such as 2.8 or 2.3. The cell is lost.",
  },
  otherFile: {
    code: "KIT518",
    severity: "remark",
    title: "File in kit/calibration/ that is not read",
    explain: "Calibration tables end in .csv. This file is left alone. If it is a table, rename it to <lens>.csv.",
  },
  noShadingRadius: {
    code: "KIT519",
    severity: "check",
    title: "Shading without its radius",
    explain:
      "The table has a1, a2 or a3 and does not say what r = 1 is for them (shading_radius). Shading is shown and never evaluated. Write the key line shading_radius.",
  },
  noPoints: {
    code: "KIT520",
    severity: "check",
    title: "Calibration table without points",
    explain:
      "The table has no row that can be used, so there is nothing to evaluate or to show. Each refused row has its own finding. Mend those, or take the file away.",
  },
  encoderWithoutLens: {
    code: "KIT521",
    severity: "check",
    title: "Encoder table for a lens that is not in the kit",
    explain:
      "The file name of an encoder table is the lens id. No lens of the kit has this one, so the table serves nobody. Rename the file, or add the lens to kit/lenses.csv.",
  },
  otherEncoderFile: {
    code: "KIT522",
    severity: "remark",
    title: "File in kit/encoders/ that is not read",
    explain: "Encoder tables end in .csv. This file is left alone. If it is a table, rename it to <lens>.csv.",
  },
  encoderMarks: {
    code: "KIT523",
    severity: "error",
    title: "Encoder table with fewer than two marks",
    explain:
      "Between two marks of a lens the focus is linear in 1/distance. A table with fewer than two usable marks gives no distance, and logs that have encoder readings only have no focus. Add marks, at least at close focus and at infinity.",
  },
  encoderTwice: {
    code: "KIT524",
    severity: "check",
    title: "Encoder reading twice",
    explain: "Two marks of a lens have one encoder reading. The first is used. Delete the one that is wrong.",
  },
  encoderTurns: {
    code: "KIT525",
    severity: "check",
    title: "Encoder table that turns back",
    explain:
      "From close focus to infinity the readings of an encoder only rise or only fall. Here the distance turns back between two marks: one of them is a slip. The table is used as it is. Correct the mark.",
  },
} as const satisfies Record<string, FindingKind>;

export const KIT_FINDINGS: readonly FindingKind[] = Object.values(KIT);
