import type { FindingKind } from "./kind.ts";

/** Rules about the day sheet, and about what the takes of one set-up should have in common. */
export const PAPERWORK_CHECKS = {
  camerasSwapped: {
    code: "CHECK753",
    severity: "check",
    title: "Two cameras that may be swapped",
    explain:
      "In one take of a slate each of two cameras has the lens that the other one has in the other takes, or a log names its clip and another camera than the note of the clip. Two rows of the notes, or two recorders, were probably swapped. Put each back in its place, or accept the finding if the lenses were really changed over.",
  },
  filterAbsent: {
    code: "CHECK754",
    severity: "check",
    title: "A filter in some takes of a set-up only",
    explain:
      "Takes of one slate and camera have a filter in the notes, and this one has none. Shots of one set-up are cut into one another: either the filter was on and not noted, or the take does not match. Write the filter, or none.",
  },
  filterAbsentInScene: {
    code: "CHECK755",
    severity: "remark",
    title: "A set-up without the scene's filter",
    explain:
      "At least half of the scene's set-ups have a filter in the notes and this one has none, as when a filter is noted on one side of a conversation and not on the reverse. Grids and references do not count. Write the filter if it was on.",
  },
  whiteBalance: {
    code: "CHECK756",
    severity: "check",
    title: "White balance that does not go with the set-up",
    explain:
      "Two cameras or takes of one slate have a white balance further apart than check.white_balance_mired in show.yaml (1 000 000 divided by the kelvins, so that 5600 and 3200 K are 134 mired apart), and the notes have no filter that would explain it. Or a conversion filter is noted together with the white balance that it makes unnecessary: an 85 turns daylight into light for 3200 K, an 80A lamp light into light for 5600 K. Correct the white balance, or write the filter that was on.",
  },
  placementDiffers: {
    code: "CHECK757",
    severity: "check",
    title: "Height, tilt or roll in the notes differ from the log",
    explain:
      "The noted value lies outside what the log has over the take, by more than check.height_difference_m or check.angle_difference_deg in show.yaml. The log's is shown. A height that is noted lower by a hand's breadth or two was probably measured to the base plate and not to the lens centre. Correct the note, or accept the finding if the log's sensor was not levelled.",
  },
  heightImplausible: {
    code: "CHECK758",
    severity: "check",
    title: "A height that can hardly be that of the lens centre",
    explain:
      "The height is that of the lens centre above the ground, in metres. More than check.highest_height_m in show.yaml (60 m) is probably centimetres or millimetres; the centre of a lens is never nearer to the ground than half of its front. Write the height in metres.",
  },
  tiltSign: {
    code: "CHECK759",
    severity: "check",
    title: "A tilt that may have the wrong sign",
    explain:
      "Tilt up is positive. The noted tilt is the logged one, or that of the other takes of the set-up, with the other sign. VFX would put the horizon on the wrong side of the frame.",
  },
  rollInPercent: {
    code: "CHECK760",
    severity: "check",
    title: "A roll that may be in percent",
    explain:
      "The noted roll is what a level that shows percent says of the logged roll in degrees: 100 percent is 45 degrees, 5 percent is 2.9 degrees. The column is in degrees. Write the roll in degrees.",
  },
  completedWithoutTake: {
    code: "CHECK761",
    severity: "check",
    title: "A scene in the day sheet that the takes contradict",
    explain:
      "day.yaml has the scene as completed or part, and no take of the day is of that scene; or it has the scene as not shot, and takes of it are there. Pages completed and the day's totals depend on these lists. Correct the list, or the scene of the takes.",
  },
  sceneLeftOpen: {
    code: "CHECK762",
    severity: "remark",
    title: "A scheduled scene that is in no list",
    explain:
      "The scene was scheduled, and day.yaml has it neither as completed nor as part nor as not shot. It counts as not completed. Write it into one of the three lists.",
  },
  sceneInTwoLists: {
    code: "CHECK763",
    severity: "check",
    title: "A scene twice in the day sheet",
    explain:
      "A scene is scheduled twice, so that its pages count twice, or it stands in two of the lists completed, part and not_shot, which exclude one another. Leave it in one place.",
  },
  mealLate: {
    code: "CHECK764",
    severity: "check",
    title: "A long time before a meal",
    explain:
      "From the call, or from the end of the meal before, to this meal it is longer than check.meal_hours in show.yaml (6 hours if it does not say). This is a record of the times as they were written down, not a legal finding: agreements and local law decide what holds for whom.",
  },
  takeOutsideHours: {
    code: "CHECK765",
    severity: "check",
    title: "A take outside the hours of the day",
    explain:
      "The day's timecode is the time of day: nearly all takes lie between call and wrap, and this one does not: it begins more than an hour before call, or later after wrap than check.after_wrap_minutes in show.yaml (30). The camera's clock was on another day or in another time zone, a timecode has a slip, or the take belongs to another day's folder. Correct the timecode, or call and wrap.",
  },
  dateNotPastMidnight: {
    code: "CHECK766",
    severity: "check",
    title: "A log of the next date that is not past midnight",
    explain:
      "Logs of takes after midnight are of the next date, and belong to the shooting day that began before. This log is of the next date, and its take lies before midnight: the recorder's date was wrong, or the log belongs to the next shooting day. Correct the log's date, or move the log to the other day's folder.",
  },
  completedNotScheduled: {
    code: "CHECK767",
    severity: "remark",
    title: "A completed scene that was not scheduled",
    explain:
      "day.yaml has the scene as completed and not in scheduled. Its pages are not known, and are missing from the pages completed. Add it to scheduled with its pages.",
  },
  ndAbsent: {
    code: "CHECK768",
    severity: "remark",
    title: "ND in some takes of a set-up only",
    explain:
      "Takes of one slate and camera have neutral density in the notes, and this one has none, also not among its filters. Either it was on and not noted, or it was taken out: then write none, so that nobody has to ask.",
  },
  ndChanges: {
    code: "CHECK769",
    severity: "remark",
    title: "ND changes and nothing else does",
    explain:
      "Two takes of one slate and camera have different neutral density in the notes, and the same stop, EI, shutter and speed. The limit is check.nd_difference_stops in show.yaml. Outdoors that follows the light; else one of the two is a slip, such as a density (0.6, which is 2 stops) for a number of stops. Correct the slip; if the light changed, leave it.",
  },
  circledOnOneCamera: {
    code: "CHECK770",
    severity: "remark",
    title: "Circled on one camera only",
    explain:
      "On this day at least four in five of the circled takes with several cameras, and no fewer than five, are circled on all of them, and this one is not, and not marked NG on the other camera either. A circle was forgotten, or stands in the wrong row. Put the circle where it belongs, or leave it if one camera only was printed.",
  },
  plateLensUnmeasured: {
    code: "CHECK771",
    severity: "remark",
    title: "A plate with a lens that nobody measured",
    explain:
      "VFX takes the lens's distortion off a plate before anything is laid over it. The lens of this plate has no calibration table in the kit, its log has no coefficients, and no grid was shot with it on the day. A grid can be shot as long as the lens is there, and hardly afterwards.",
  },
} as const satisfies Record<string, FindingKind>;
