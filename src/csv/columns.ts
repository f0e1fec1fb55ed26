/** The columns and keys of every table as data: the readers use them, and so does the column reference. */
import type { ColumnSpec, KeySpec } from "./column-spec.ts";

const above0 = { above: 0 } as const;

/** kit/cameras.csv */
export const CAMERA_COLUMNS = [
  { name: "camera", holds: "text", required: true, about: "Camera letter" },
  { name: "body", holds: "text", about: "Body, as the show calls it" },
  { name: "serial", holds: "text", about: "Serial number" },
  {
    name: "sensor_mode",
    holds: "text",
    required: true,
    about: "Name of the sensor mode; the first row of a camera is its default",
  },
  { name: "active_width_mm", holds: "number", unit: "mm", required: true, ...above0, about: "Width of the active area" },
  { name: "active_height_mm", holds: "number", unit: "mm", required: true, ...above0, about: "Height of the active area" },
  { name: "resolution_x", holds: "number", unit: "pixels", ...above0, about: "Recorded width" },
  { name: "resolution_y", holds: "number", unit: "pixels", ...above0, about: "Recorded height" },
  { name: "squeeze", holds: "number", ...above0, about: "Anamorphic squeeze of the mode; blank is 1" },
] as const satisfies readonly ColumnSpec[];

/** kit/lenses.csv */
export const LENS_COLUMNS = [
  { name: "lens", holds: "text", required: true, about: "Id of the lens, as notes and logs name it" },
  { name: "maker", holds: "text", about: "Maker" },
  { name: "series", holds: "text", about: "Series" },
  { name: "serial", holds: "text", about: "Serial number" },
  { name: "kind", holds: "text", required: true, about: "`prime` or `zoom`" },
  { name: "focal_mm", holds: "number", unit: "mm", ...above0, about: "Marked focal length of a prime" },
  { name: "focal_min_mm", holds: "number", unit: "mm", ...above0, about: "Shortest focal length of a zoom" },
  { name: "focal_max_mm", holds: "number", unit: "mm", ...above0, about: "Longest focal length of a zoom" },
  { name: "widest_t", holds: "stop", about: "Widest T-stop; a label counts as its exact series value" },
  { name: "widest_f", holds: "stop", about: "Widest f-stop; a label counts as its exact series value" },
  {
    name: "transmittance",
    holds: "number",
    above: 0,
    upTo: 1,
    about: "Transmittance tau; blank: (f/T)^2 when both widest stops are given",
  },
  { name: "close_focus_m", holds: "number", unit: "m", ...above0, about: "Nearest focus, from the image plane" },
  { name: "front_diameter_mm", holds: "number", unit: "mm", ...above0, about: "Front diameter" },
  { name: "mass_g", holds: "number", unit: "g", ...above0, about: "Mass" },
  { name: "length_mm", holds: "number", unit: "mm", ...above0, about: "Length" },
  { name: "mount", holds: "text", about: "Mount" },
  { name: "squeeze", holds: "number", ...above0, about: "Anamorphic squeeze; blank is 1" },
  { name: "entrance_pupil_mm", holds: "number", unit: "mm", about: "Entrance pupil, from the image plane toward the object" },
  {
    name: "front_to_image_mm",
    holds: "number",
    unit: "mm",
    ...above0,
    about: "Front of the lens to the image plane, focused at infinity",
  },
  {
    name: "pupil_magnification",
    holds: "number",
    ...above0,
    upTo: 20,
    about: "Diameter of the exit pupil over that of the entrance pupil; serves the depth of field; blank is 1",
  },
  { name: "image_circle_mm", holds: "number", unit: "mm", ...above0, about: "Diameter of the image circle" },
  { name: "remarks", holds: "text", about: "Anything else" },
] as const satisfies readonly ColumnSpec[];

const COEFFICIENT_COLUMNS = [
  { name: "k1", holds: "number", about: "Brown-Conrady, polynomial term of r^2" },
  { name: "k2", holds: "number", about: "Brown-Conrady, polynomial term of r^4" },
  { name: "k3", holds: "number", about: "Brown-Conrady, polynomial term of r^6" },
  { name: "k4", holds: "number", about: "Brown-Conrady, denominator term of r^2" },
  { name: "k5", holds: "number", about: "Brown-Conrady, denominator term of r^4" },
  { name: "k6", holds: "number", about: "Brown-Conrady, denominator term of r^6" },
  { name: "p1", holds: "number", about: "Brown-Conrady, first tangential term" },
  { name: "p2", holds: "number", about: "Brown-Conrady, second tangential term" },
  { name: "lambda", holds: "number", about: "Division model" },
  { name: "cx_mm", holds: "number", unit: "mm", about: "Distortion centre, to the right of the middle of the active area" },
  { name: "cy_mm", holds: "number", unit: "mm", about: "Distortion centre, below the middle of the active area" },
  { name: "a1", holds: "number", about: "Shading, term of r^2" },
  { name: "a2", holds: "number", about: "Shading, term of r^4" },
  { name: "a3", holds: "number", about: "Shading, term of r^6" },
  { name: "entrance_pupil_mm", holds: "number", unit: "mm", about: "Entrance pupil, from the image plane toward the object" },
] as const satisfies readonly ColumnSpec[];

const ANAMORPHIC_COLUMNS = (["ax2", "ax4", "ay2", "ay4", "bx2", "bx4", "by2", "by4"] as const).map((name) => ({
  name,
  holds: "number" as const,
  about: `Anamorphic-even model, ${name[1]} term of degree ${name[2]} for the ${name[0] === "a" ? "horizontal" : "vertical"} coordinate`,
}));

/** kit/calibration/<lens>.csv */
export const CALIBRATION_COLUMNS: readonly ColumnSpec[] = [
  { name: "focal_mm", holds: "number", unit: "mm", required: true, ...above0, about: "Focal length of the point" },
  {
    name: "focus_m",
    holds: "distance",
    unit: "m",
    required: true,
    about: "Focus distance of the point from the image plane; `inf` allowed",
  },
  { name: "t", holds: "stop", about: "T-stop of the point; blank serves every stop" },
  ...COEFFICIENT_COLUMNS.slice(0, 9),
  ...ANAMORPHIC_COLUMNS,
  ...COEFFICIENT_COLUMNS.slice(9),
];

/** kit/encoders/<lens>.csv */
export const ENCODER_COLUMNS = [
  { name: "encoder", holds: "number", required: true, about: "Reading of the focus encoder at a mark of the lens" },
  {
    name: "focus_m",
    holds: "distance",
    unit: "m",
    required: true,
    about: "Distance of the mark from the image plane; `inf` allowed",
  },
] as const satisfies readonly ColumnSpec[];

/** days/<date>/notes.csv */
export const NOTE_COLUMNS = [
  { name: "slate", holds: "text", required: true, about: "What is written on the slate: `24B` or a running number" },
  { name: "take", holds: "text", required: true, about: "Take as text: `3`, `3 PU`, `1 AFS`" },
  { name: "camera", holds: "text", required: true, about: "Camera letter" },
  { name: "scene", holds: "text", about: "Scene" },
  { name: "roll", holds: "text", about: "Roll or card" },
  { name: "clip", holds: "text", about: "Clip name" },
  { name: "tc_in", holds: "timecode", about: "First frame of the take" },
  { name: "tc_out", holds: "timecode", about: "End of the take; exclusive unless show.yaml says `timecode_out: inclusive`" },
  { name: "rate", holds: "rate", unit: "frames/s", about: "Timecode rate if it is not the show's" },
  { name: "capture_fps", holds: "number", unit: "frames/s", ...above0, about: "Frames taken a second if it is not the rate" },
  { name: "lens", holds: "text", about: "Id of the lens" },
  { name: "focal", holds: "focal", unit: "mm", about: "Focal length, or a range `35-60`" },
  { name: "stop", holds: "stop", about: "`2.8`, `T4`, `f/5.6`, `2.8 1/3`, `5.6 and a half`, `2.8/4`, or a range `2.8-4`" },
  { name: "focus", holds: "distance", about: '`1.9 m`, `6\' 2 1/2"`, `9"`, `inf`, or a range `3.2-1.6 m`; always with its unit' },
  { name: "filters", holds: "text", about: "Filters in words" },
  { name: "nd", holds: "nd", about: "Density `0.6`, factor `ND4`, or `2 stops`" },
  { name: "shutter", holds: "shutter", about: "Degrees `172.8`, or an exposure time `1/48`" },
  { name: "ei", holds: "number", ...above0, about: "Exposure index" },
  { name: "wb", holds: "number", unit: "K", ...above0, about: "White balance" },
  { name: "sensor_mode", holds: "text", about: "Sensor mode if it is not the camera's default" },
  { name: "height_m", holds: "number", unit: "m", about: "Height of the lens centre" },
  { name: "tilt_deg", holds: "number", unit: "degrees", from: -180, upTo: 180, about: "Tilt, up is positive" },
  { name: "roll_deg", holds: "number", unit: "degrees", from: -360, upTo: 360, about: "Roll" },
  { name: "subject_m", holds: "number", unit: "m", ...above0, about: "Measured distance of the subject" },
  { name: "circled", holds: "mark", about: "`y`, `x`, `*` or blank" },
  { name: "status", holds: "text", about: "`good`, `ng`, `incomplete`, `false start` or `tail slate`" },
  { name: "sound", holds: "text", about: "`sync` or `mos`" },
  { name: "plate", holds: "text", about: "`hero`, `clean`, `reference`, `element`, `tile` or `grid`" },
  { name: "plate_of", holds: "text", about: "Slate of the hero that the plate belongs to" },
  { name: "still", holds: "text", about: "File in stills/" },
  { name: "remarks", holds: "text", about: "Anything else" },
] as const satisfies readonly ColumnSpec[];

/** Columns of a log that say when a row was. */
export const TIMING_COLUMNS = [
  { name: "timecode", holds: "timecode", about: "Label of the frame at the log's rate" },
  { name: "frame", holds: "count", about: "Frame from 0, counted from `start_timecode`, else from the take's tc_in" },
  {
    name: "time_s",
    holds: "number",
    unit: "s",
    about: "Seconds from 0, counted from `start_timecode`, else from the take's tc_in",
  },
] as const satisfies readonly ColumnSpec[];

/** Columns of a log that give the focus distance; a log has one of them. */
export const FOCUS_COLUMNS = [
  { name: "focus_m", holds: "distance", unit: "m", about: "Focus distance; `inf` for infinity" },
  { name: "focus_mm", holds: "distance", unit: "mm", about: "Focus distance; `inf` for infinity" },
  { name: "focus_cm", holds: "distance", unit: "cm", about: "Focus distance; `inf` for infinity" },
  { name: "focus_ft", holds: "distance", unit: "ft", about: "Focus distance in decimal feet; `inf` for infinity" },
  { name: "focus_in", holds: "distance", unit: "in", about: "Focus distance in inches; `inf` for infinity" },
  { name: "focus_dpt", holds: "distance", unit: "1/m", about: "Focus in dioptres; 0 or `inf` for infinity" },
] as const satisfies readonly ColumnSpec[];

/** Columns of a log that say which take a row belongs to. */
export const IDENTITY_COLUMNS = [
  { name: "camera", holds: "text", about: "Camera letter of the row" },
  { name: "clip", holds: "text", about: "Clip of the row" },
  { name: "slate", holds: "text", about: "Slate of the row" },
  { name: "take", holds: "text", about: "Take of the row" },
  { name: "lens", holds: "text", about: "Lens of the row" },
] as const satisfies readonly ColumnSpec[];

/** Other columns of a log. */
export const READING_COLUMNS = [
  { name: "t", holds: "number", ...above0, about: "T-stop as logged" },
  { name: "f", holds: "number", ...above0, about: "f-stop as logged" },
  { name: "focal_mm", holds: "number", unit: "mm", ...above0, about: "Focal length" },
  { name: "hyperfocal_m", holds: "number", unit: "m", ...above0, about: "Hyperfocal distance as logged" },
  ...COEFFICIENT_COLUMNS,
  { name: "squeeze", holds: "number", ...above0, about: "Anamorphic squeeze" },
  { name: "pan_deg", holds: "number", unit: "degrees", about: "Pan" },
  { name: "tilt_deg", holds: "number", unit: "degrees", about: "Tilt, up is positive" },
  { name: "roll_deg", holds: "number", unit: "degrees", about: "Roll" },
  { name: "height_m", holds: "number", unit: "m", about: "Height of the lens centre" },
  {
    name: "encoder_focus",
    holds: "number",
    about: "Reading of the focus encoder; gives the focus through `kit/encoders/<lens>.csv` where the log has no focus column",
  },
  { name: "encoder_iris", holds: "number", about: "Reading of the iris encoder, as it came" },
  { name: "encoder_zoom", holds: "number", about: "Reading of the zoom encoder, as it came" },
] as const satisfies readonly ColumnSpec[];

/** Every column that a log may have. */
export const LOG_FILE_COLUMNS: readonly ColumnSpec[] = [
  ...TIMING_COLUMNS,
  ...FOCUS_COLUMNS,
  ...READING_COLUMNS,
  ...IDENTITY_COLUMNS,
];

/** Keys that a log and a calibration table share: what the coefficients mean. */
const CONVENTION_KEYS = [
  { name: "model", values: "`brown-conrady`, `division` or `anamorphic-even`", about: "Distortion model" },
  { name: "direction", values: "`undistort` or `distort`", about: "`undistort`: recorded to ideal; `distort`: ideal to recorded" },
  { name: "radius", values: "`mm`, `focal`, `half-width`, `half-height` or `half-diagonal`", about: "What r = 1 is" },
  { name: "area_mm", values: "such as `24.89x18.66`", about: "Area that the half radii refer to" },
  { name: "squeeze_state", values: "`squeezed` or `desqueezed`", about: "Picture that the coefficients refer to" },
  { name: "shading_radius", values: "the same words as `radius`", about: "What r = 1 is for a1 a2 a3" },
  { name: "shading_values", values: "`loss` (default) or `gain`", about: "brightness = 1 - (a1 r^2 + ...) or 1 + a1 r^2 + ..." },
] as const satisfies readonly KeySpec[];

/** Key lines of a calibration table. */
export const CALIBRATION_KEYS: readonly KeySpec[] = [
  ...CONVENTION_KEYS.map((key) => ({
    ...key,
    required: key.name === "model" || key.name === "direction" || key.name === "radius",
  })),
  { name: "made_on", values: "a date", about: "When the table was made" },
  { name: "made_by", values: "text", about: "Who made it" },
  { name: "source", values: "text", about: "Where it is from" },
];

/** Key lines of a log. */
export const LOG_KEYS: readonly KeySpec[] = [
  { name: "camera", values: "text", about: "Camera letter" },
  { name: "clip", values: "text", about: "Clip" },
  { name: "slate", values: "text", about: "Slate" },
  { name: "take", values: "text", about: "Take" },
  { name: "lens", values: "text", about: "Id of the lens" },
  { name: "date", values: "a date", about: "Date of the log; the day's folder decides" },
  { name: "rate", values: "such as `24000/1001`", about: "Timecode rate; the show's unless said" },
  { name: "drop_frame", values: "`true` or `false`", about: "Whether labels are counted in drop-frame" },
  { name: "distance_from", values: "`image-plane` (default) or `front`", about: "From where focus distances are measured" },
  { name: "decimal", values: "`.` (default) or `,`", about: "Decimal sign of the numbers" },
  ...CONVENTION_KEYS,
  { name: "clock_offset_frames", values: "a whole number", about: "Frames to add to the log's time to get the picture's" },
  { name: "start_timecode", values: "a timecode", about: "Label of frame 0 or second 0" },
];
