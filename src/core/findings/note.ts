import type { FindingKind } from "./kind.ts";

/** Shot notes: notes.csv. */
export const NOTE = {
  noTake: {
    code: "NOTE301",
    severity: "error",
    title: "Row that names no take",
    explain:
      "A take is a slate, a take number and a camera. A row that lacks one of them has no address and is left out. In a table with merged cells, where a blank slate means the one above, day.yaml says so with `notes: {blank_slate_repeats: true}`. Else fill the cell in.",
  },
  stop: {
    code: "NOTE302",
    severity: "error",
    title: "Stop cannot be read",
    explain:
      "Stops are written 2.8, T4, f/2.8, with a fraction of a stop after a full stop (5.6 1/2, 5.6 and a half), as half way between neighbours (2.8/4), or as a range (2.8-4). The cell is lost.",
  },
  distanceUnit: {
    code: "NOTE303",
    severity: "error",
    title: "Distance without a unit",
    explain: "1.9 may be metres or feet, and nobody can tell afterwards. The cell is lost until the unit is written.",
  },
  distance: {
    code: "NOTE304",
    severity: "error",
    title: "Distance cannot be read",
    explain: 'Distances are written 1.9 m, 85 cm, 6\' 2 1/2", 9", 12 ft, inf, or as a range such as 3.2-1.6 m. The cell is lost.',
  },
  nd: {
    code: "NOTE305",
    severity: "error",
    title: "Neutral density cannot be read",
    explain:
      "A density is written with a decimal point (0.6), a factor with ND before it (ND4), stops with the word (2 stops). A bare 16 may be a factor or a slip; the cell is lost.",
  },
  shutter: {
    code: "NOTE306",
    severity: "error",
    title: "Shutter cannot be read",
    explain: "The shutter is an angle in degrees (172.8) or an exposure time (1/48). The cell is lost. Write one of the two.",
  },
  focal: {
    code: "NOTE307",
    severity: "error",
    title: "Focal length cannot be read",
    explain: "Focal lengths are written in millimetres: 35, 50 mm, or a range 35-60. The cell is lost.",
  },
  rate: {
    code: "NOTE308",
    severity: "error",
    title: "Rate cannot be read",
    explain: "A rate is written 24, 25, 23.976 or 24000/1001. The cell is lost and the show's rate holds.",
  },
  noStill: {
    code: "NOTE313",
    severity: "check",
    title: "Still not in the stills folder",
    explain:
      "The note names a still that is not in the day's stills/ folder, or one in a format that the report cannot show, such as TIFF. Copy the picture there as .png, .jpg or .exr, or correct its name.",
  },
  stillUnreadable: {
    code: "NOTE314",
    severity: "check",
    title: "Still cannot be read",
    explain:
      "The header of a picture in stills/ ends early or is of another kind than its name says: usually a copy that was interrupted. The file stays in the report's list, and nothing is known of its size or lens.",
  },
  stillPath: {
    code: "NOTE315",
    severity: "error",
    title: "Still named with a path",
    explain:
      "The column still takes the name of a file in the day's stills/ folder. A name with a slash could lead out of the show folder, which is never read. The cell is lost. Write the name alone.",
  },
  stillDiffers: {
    code: "NOTE316",
    severity: "remark",
    title: "Lens data of the still differ",
    explain:
      "Cameras and recorders write focal length, stop, distance and lens into a still (OpenEXR attributes, EXIF). Here they are not what the log, the notes or the kit have for the take. The still may be of another take; the figures of the report are not taken from it.",
  },
} as const satisfies Record<string, FindingKind>;

export const NOTE_FINDINGS: readonly FindingKind[] = Object.values(NOTE);
