import type { FindingKind } from "./kind.ts";

/** Rules of the trade. */
export const CHECK_FINDINGS: readonly FindingKind[] = [
  {
    code: "CHECK701",
    severity: "check",
    title: "Another lens in the notes than in the log",
    explain:
      "For the lens in front of the camera the log is preferred. One of the two is wrong, and focal length, depth of field and distortion depend on it.",
  },
  {
    code: "CHECK702",
    severity: "check",
    title: "The noted stop differs from the logged one",
    explain:
      "The noted stop, or range of stops, is compared with the range that holds nine tenths of the logged frames. The limit is check.stop_difference in show.yaml, in stops.",
  },
  {
    code: "CHECK703",
    severity: "check",
    title: "The noted distance differs from the logged ones",
    explain:
      "Every noted distance should lie among the logged ones, within check.focus_difference_fraction of show.yaml. A ratio near 3.28 points to feet and metres mixed.",
  },
  {
    code: "CHECK704",
    severity: "check",
    title: "The noted focal length differs from the logged one",
    explain: "The noted focal length, or range, lies more than 5 % outside what the log has.",
  },
  {
    code: "CHECK705",
    severity: "check",
    title: "Wider than the lens opens",
    explain:
      "A logged stop is wider than the widest stop of the lens in the kit by more than check.wider_than_lens_stops in show.yaml. Another lens may have been on, or the log has a wrong value. The value is used as logged.",
  },
  {
    code: "CHECK706",
    severity: "check",
    title: "A lens that the kit does not have",
    explain:
      "Without a row in kit/lenses.csv nothing is known of the lens: serial number, focal length, transmittance, close focus, calibration.",
  },
  {
    code: "CHECK707",
    severity: "check",
    title: "A camera or sensor mode that the kit does not have",
    explain: "Angle of view, circle of confusion and depth of field need the active area of the sensor mode in kit/cameras.csv.",
  },
  {
    code: "CHECK708",
    severity: "check",
    title: "The squeeze is said differently in two places",
    explain:
      "Squeeze may be said by the log, the lens and the sensor mode. It is one number, never multiplied: the log's, else the lens's, else the mode's. Here they differ.",
  },
  {
    code: "CHECK709",
    severity: "check",
    title: "The logged hyperfocal distance differs from the calculated one",
    explain:
      "The log's hyperfocal distance is more than 2 % from the one calculated from focal length, stop and circle of confusion. The box that logged it probably used another circle of confusion, or the T-stop for the f-number.",
  },
  {
    code: "CHECK710",
    severity: "check",
    title: "Nearer than the lens focuses",
    explain:
      "A logged distance is nearer than the lens's close focus in the kit. Often the unit of the column or the place that distances are measured from is wrong.",
  },
  {
    code: "CHECK711",
    severity: "remark",
    title: "Too near for a depth of field",
    explain:
      "A thin lens cannot be focused on a distance of less than four focal lengths from the image plane. For such frames no depth of field and no angle of view is given.",
  },
  {
    code: "CHECK712",
    severity: "check",
    title: "Circled, and not good",
    explain: "A take that is circled and marked NG or false start is a contradiction that editorial would have to ask about.",
  },
  {
    code: "CHECK713",
    severity: "check",
    title: "A plate that lacks what VFX asks for",
    explain: "Height to the lens centre, tilt and the serial number of the lens cannot be recovered later from the picture alone.",
  },
  {
    code: "CHECK714",
    severity: "check",
    title: "A focal length that the lens does not have",
    explain: "The noted focal length lies outside the range of the noted or logged lens.",
  },
  {
    code: "CHECK715",
    severity: "remark",
    title: "Beyond the calibration table",
    explain:
      "The take was used at a focal length, distance or stop outside the lens's calibration table. The nearest point of the table is used and never extrapolated; the report says by how much.",
  },
  {
    code: "CHECK716",
    severity: "check",
    title: "T-stop wider than the f-number",
    explain:
      "The T-stop is the f-number and the loss in the glass together, so T is never smaller than f. The two columns may be swapped.",
  },
  {
    code: "CHECK717",
    severity: "check",
    title: "One clip noted for two takes",
    explain: "A clip name stands in two rows of the notes. Log rows that name the clip go to the take whose timecodes hold them.",
  },
  {
    code: "CHECK718",
    severity: "remark",
    title: "A plate of a slate that this day does not have",
    explain: "plate_of names a slate without a take on this day.",
  },
];
