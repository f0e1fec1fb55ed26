import type { FindingKind } from "./kind.ts";

/** Rules about one take and its lens: notes, log and kit against one another, and what no lens can do. */
export const TAKE_CHECKS = {
  lensDiffers: {
    code: "CHECK701",
    severity: "check",
    title: "Another lens in the notes than in the log",
    explain:
      "For the lens in front of the camera the log is preferred. One of the two is wrong, and focal length, depth of field and distortion depend on it. Correct the lens in the note or in the log.",
  },
  stopDiffers: {
    code: "CHECK702",
    severity: "check",
    title: "The noted stop differs from the logged one",
    explain:
      "The noted stop, or range of stops, is compared with the range that holds nine tenths of the logged frames. The limit is check.stop_difference in show.yaml, in stops. Correct the note, or look whether the log's iris motor was calibrated.",
  },
  focusDiffers: {
    code: "CHECK703",
    severity: "check",
    title: "The noted distance differs from the logged ones",
    explain:
      "Every noted distance should lie among the logged ones, within check.focus_difference_fraction of show.yaml. Correct the note, or look at the log's unit and at where its distances are measured from.",
  },
  focalDiffers: {
    code: "CHECK704",
    severity: "check",
    title: "The noted focal length differs from the logged one",
    explain:
      "The noted focal length, or range, lies further outside what the log has than check.focal_difference_fraction in show.yaml. Correct the note, or look at the log's zoom calibration.",
  },
  widerThanLens: {
    code: "CHECK705",
    severity: "check",
    title: "Wider than the lens opens",
    explain:
      "A logged stop is wider than the widest stop of the lens in the kit by more than check.wider_than_lens_stops in show.yaml. Another lens may have been on, or the log has a wrong value. The value is used as logged. Correct the lens, or its widest stop in the kit.",
  },
  lensNotInKit: {
    code: "CHECK706",
    severity: "check",
    title: "A lens that the kit does not have",
    explain:
      "Without a row in kit/lenses.csv nothing is known of the lens: serial number, focal length, transmittance, close focus, calibration. Add the row, or correct the name.",
  },
  modeNotInKit: {
    code: "CHECK707",
    severity: "check",
    title: "A camera or sensor mode that the kit does not have",
    explain:
      "Angle of view, circle of confusion and depth of field need the active area of the sensor mode in kit/cameras.csv. Add the mode to kit/cameras.csv, or correct its name in the note.",
  },
  squeezeDiffers: {
    code: "CHECK708",
    severity: "check",
    title: "The squeeze is said differently in two places",
    explain:
      "Squeeze may be said by the log, the lens and the sensor mode. It is one number, never multiplied: the log's, else the lens's, else the mode's. Here they differ. Correct the one that is wrong.",
  },
  hyperfocalDiffers: {
    code: "CHECK709",
    severity: "check",
    title: "The logged hyperfocal distance differs from the calculated one",
    explain:
      "The log's hyperfocal distance is further from the one calculated from focal length, stop and circle of confusion than check.hyperfocal_fraction in show.yaml (2 %). The box that logged it probably used another circle of confusion, or the T-stop for the f-number. Compare circle_of_confusion_mm in show.yaml with the box's setting; both figures are kept.",
  },
  nearerThanLens: {
    code: "CHECK710",
    severity: "check",
    title: "Nearer than the lens focuses",
    explain:
      "A logged distance is nearer than the lens's close focus in the kit, by more than check.close_focus_fraction in show.yaml. Often the unit of the column or the place that distances are measured from is wrong. Correct the column's unit, \"# distance_from\", or close_focus_m in the kit.",
  },
  tooNear: {
    code: "CHECK711",
    severity: "remark",
    title: "Too near for a depth of field",
    explain:
      "A thin lens cannot be focused on a distance of less than four focal lengths from the image plane. For such frames no depth of field and no angle of view is given. If the lens cannot focus that near, correct the unit of the distances.",
  },
  focalNotOfLens: {
    code: "CHECK714",
    severity: "check",
    title: "A focal length that the lens does not have",
    explain:
      "The noted focal length lies outside the range of the lens that served, by more than check.marked_focal_fraction in show.yaml (3 %, because a marked 50 may be 49 or 51). Correct the focal length or the lens in the note.",
  },
  beyondCalibration: {
    code: "CHECK715",
    severity: "remark",
    title: "Beyond the calibration table",
    explain:
      "The take was used at a focal length, distance or stop outside the lens's calibration table. The nearest point of the table is used and never extrapolated; the report says by how much. If such states are used often, measure the lens there.",
  },
  stopUnderF: {
    code: "CHECK716",
    severity: "check",
    title: "T-stop wider than the f-number",
    explain:
      "The T-stop is the f-number and the loss in the glass together, so T is never smaller than f. The two columns may be swapped. Rounding is allowed for, check.stop_under_f_stops in show.yaml. Swap their headers if so.",
  },
  primeZooms: {
    code: "CHECK719",
    severity: "check",
    title: "A prime whose focal length moves",
    explain:
      "The kit says that the lens is a prime, and the focal length in the log changes over the take by more than check.focal_difference_fraction in show.yaml. A zoom was on, or the column has something else than a focal length. A small change with focus is breathing and no fault. Correct the lens, or take the column's header away.",
  },
  loggedFocalNotOfLens: {
    code: "CHECK720",
    severity: "check",
    title: "A logged focal length that the lens does not have",
    explain:
      "The log has focal lengths outside the range of the lens that served, by more than check.focal_difference_fraction in show.yaml. Another lens may have been on. Correct the lens in the log or the note, or the focal length in the kit.",
  },
  focusFrozen: {
    code: "CHECK721",
    severity: "check",
    title: "Focus frozen through a pull",
    explain:
      "The note says that focus went from one distance to another, and all frames of the log have one and the same distance. An encoder that was not connected or not calibrated looks like this. No pull is found in such a take, and its depth of field is that of the one distance. Look at the encoder; if focus was not pulled, write one distance in the note.",
  },
  unitsMixed: {
    code: "CHECK722",
    severity: "check",
    title: "Distances that differ by a change of unit",
    explain:
      "The noted distances are the logged ones times 3.28, 12, 39.37, 100, 304.8 or 1000, within check.unit_ratio_fraction of show.yaml (a tenth): the ratios between metres, feet, inches, centimetres and millimetres. One of the two has another unit than it says. The log's distances are shown as it says them. Correct the unit in the note, or the name of the log's column.",
  },
  fractionAdded: {
    code: "CHECK723",
    severity: "check",
    title: "A fraction of a stop added to the number",
    explain:
      "Half a stop after 5.6 is T6.7, not 6.1: stops multiply. The noted number is a full stop with the fraction added up, and the log has the stop that was meant, or no lens has the number on its scale. The number is used as written.",
  },
  shutter: {
    code: "CHECK731",
    severity: "check",
    title: "Shutter and speed do not go together",
    explain:
      "A time such as 1/180 s is probably an angle of 180 degrees; an angle of 48 or 50 degrees is probably 1/48 or 1/50 s; 172.8 degrees is 1/50 s at 24 frames a second and 1/52 s at 25. Which was meant decides about flicker under lamps and about blur. Write the angle in degrees or the time as 1/48.",
  },
  speedNearRate: {
    code: "CHECK732",
    severity: "remark",
    title: "Capture speed almost the timecode's rate",
    explain:
      "A capture speed that differs from the timecode's rate by less than check.speed_slip_fraction in show.yaml (5 %), such as 24 and 23.976, is hardly an effect. Durations at the capture rate follow the note. Leave the cell blank when the camera ran at the timecode's rate.",
  },
  tangentialStrong: {
    code: "CHECK734",
    severity: "check",
    title: "Coefficients that may be in another order",
    explain:
      "Tangential terms p1 and p2 come from glass that is off centre by hundredths of a millimetre, and move the corner by far less than a percent. Here they move it by more than check.tangential_percent in show.yaml (1.5 %). Tables have their columns as k1 k2 k3 p1 p2 or as k1 k2 p1 p2 k3: copied under the wrong headers, k3 looks like a tangential term.",
  },
  distortionStrong: {
    code: "CHECK735",
    severity: "check",
    title: "Distortion that no lens for pictures has",
    explain:
      "At the corner of the table's area the coefficients give more distortion than check.distortion_percent in show.yaml, or they do not define a picture out to there. Direction, radius or order of the coefficients is probably another than the table says.",
  },
  directionDoubtful: {
    code: "CHECK736",
    severity: "check",
    title: "The direction of coefficients is doubtful",
    explain:
      "Coefficients of the wrong direction bend the picture the other way. A wide lens has barrel distortion (at most check.wide_pincushion_percent in show.yaml, 1 %, the other way), a zoom barrel at its short end and pincushion at its long one, and a log should have the sign of the lens's own table. Here it is the other way round. Ask who made the coefficients, and correct direction.",
  },
  coefficientsStand: {
    code: "CHECK737",
    severity: "check",
    title: "Distortion stays the same while focus moves",
    explain:
      "Distortion changes with focus distance. Coefficients that are equal at all distances of a table, or over a take with a focus move, were measured at one distance and copied.",
  },
  shadingRises: {
    code: "CHECK738",
    severity: "check",
    title: "Shading that gets brighter outwards",
    explain:
      "The picture of a lens gets darker from the centre to the corner. These values make it brighter, or black. Usually they are gains and read as losses (shading_values), or the radius is another. Correct shading_values or shading_radius.",
  },
  stopJumps: {
    code: "CHECK741",
    severity: "check",
    title: "The stop jumps between two frames",
    explain:
      "From one frame to the next the logged stop changes by more than check.stop_jump_stops in show.yaml. No iris is that fast: a reading was lost or mistaken. The values are used as logged. Look at the rows named; if the iris was really turned between them, accept the finding.",
  },
} as const satisfies Record<string, FindingKind>;
