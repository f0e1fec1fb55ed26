import type { FindingKind } from "./kind.ts";

/** Rules about the day's paperwork: slates, take numbers, clips, rolls, plates, names. */
export const DAY_CHECKS = {
  circledNotGood: {
    code: "CHECK712",
    severity: "check",
    title: "Circled, and not good",
    explain:
      "A take that is circled and marked NG or false start is a contradiction that editorial would have to ask about. Take the circle away or correct the status.",
  },
  plateLacks: {
    code: "CHECK713",
    severity: "check",
    title: "A plate that lacks what VFX asks for",
    explain:
      "Height to the lens centre, tilt and the serial number of the lens cannot be recovered later from the picture alone. Write height_m and tilt_deg in the notes, the serial in kit/lenses.csv.",
  },
  clipTwice: {
    code: "CHECK717",
    severity: "check",
    title: "One clip noted for two takes",
    explain:
      "A clip name stands in two rows of the notes. Log rows that name the clip go to the take whose timecodes hold them. Correct the clip of one of the two rows.",
  },
  plateOfNobody: {
    code: "CHECK718",
    severity: "remark",
    title: "A plate of a slate that this day does not have",
    explain: "plate_of names a slate without a take on this day. Correct plate_of; if its hero was shot on another day, leave it.",
  },
  staleLog: {
    code: "CHECK724",
    severity: "check",
    title: "The same readings in two takes",
    explain:
      "Two takes of a camera one after the other have the same readings in every frame, although the lens was changed in between or something moved. The recorder went on sending its last reading, or one recording was copied for two takes. Look whether one log was copied under two names, and take the wrong one out of logs/.",
  },
  takeMissing: {
    code: "CHECK725",
    severity: "check",
    title: "A take number is left out",
    explain:
      "The take numbers of a slate have a hole. A take was shot and not noted, or a number is wrong. Cameras share their numbers: what one camera has is not missing. Add the missing row to the notes, or correct the number.",
  },
  firstTakeElsewhere: {
    code: "CHECK726",
    severity: "remark",
    title: "A slate that does not begin with take 1",
    explain:
      "The slate may have been begun on another day. If it was not, its first takes are missing. If they are, add their rows to the notes.",
  },
  takeTwice: {
    code: "CHECK727",
    severity: "check",
    title: "One take written in two ways",
    explain:
      "A take of a slate stands twice for one camera, as 3 and as 03: one take on the slate, and two addresses in the report. Write the number the same way in both rows, or delete the row that is one too many.",
  },
  letterLikeDigit: {
    code: "CHECK728",
    severity: "check",
    title: "A set-up with the letter I or O",
    explain:
      "Set-ups are lettered without I and O, because they are read as 1 and 0. One of them in a slate is usually a slip for the digit. Write the digit, or accept the finding if the slate really has the letter.",
  },
  slateOnTwoScenes: {
    code: "CHECK729",
    severity: "check",
    title: "A slate on two scenes",
    explain:
      "One slate stands in the notes for takes of two scenes. A slate names one set-up of one scene, so that the scene or the slate is wrong. Correct the one that is wrong.",
  },
  noCircle: {
    code: "CHECK730",
    severity: "remark",
    title: "A set-up without a circled take",
    explain:
      "Other set-ups of the day have circled takes, and this one has none. Grids and references do not count. Mark the takes that were printed; if the set-up was given up, leave it.",
  },
  cleanPlateDiffers: {
    code: "CHECK733",
    severity: "check",
    title: "A clean plate that does not fit its hero",
    explain:
      "A clean plate is laid over its hero, and needs the same lens, focal length, stop and focus. The states are compared over both takes: focal length within 2 %, stop within check.stop_difference, focus within the hero's depth of field. The plate has to fit one of the circled takes. Correct the notes if they are wrong; if the plate really differs, say so to VFX while it can be shot again.",
  },
  twoSpellings: {
    code: "CHECK739",
    severity: "check",
    title: "One name in two spellings",
    explain:
      "Names that differ only by case or spaces (those of lenses and sensor modes by hyphens and dots too) are taken for one thing by people and may be counted as two: lenses, cameras, rolls, slates, scenes, sensor modes. The kit's spelling is the right one, else the commonest. Write one of the two everywhere.",
  },
  stopLettersMixed: {
    code: "CHECK740",
    severity: "check",
    title: "T-stops and f-stops in one column",
    explain:
      "Some stops of the day's notes are written with T and some with f. An f-stop lets in less light than the T-stop of the same number by what the glass takes.",
  },
  sceneNotScheduled: {
    code: "CHECK742",
    severity: "remark",
    title: "A scene that is not in the schedule",
    explain:
      "day.yaml has a schedule, and the scene of this take is not in it: taken in on the day, or a slip. Correct the scene, or add it to scheduled in day.yaml.",
  },
  rollSkipped: {
    code: "CHECK743",
    severity: "remark",
    title: "A roll number is left out",
    explain:
      "The rolls of a camera go on by more than one number. A roll may not have been noted. Add the takes of the roll to the notes; if its number was never used, leave it.",
  },
  clipOfOtherRoll: {
    code: "CHECK744",
    severity: "check",
    title: "A clip noted on another roll",
    explain:
      "The day's clips are named by their roll, and this one is named by another roll than the note says. Correct the roll or the clip.",
  },
  clipOfOtherCamera: {
    code: "CHECK745",
    severity: "check",
    title: "A clip noted for another camera",
    explain:
      "The day's clips begin with the letter of their camera, and this one begins with another camera's. Two rows of the notes may have been swapped. Correct the camera or the clip.",
  },
  lensWithinSetUp: {
    code: "CHECK746",
    severity: "remark",
    title: "The lens changes within a set-up",
    explain:
      "Takes of one slate and camera have different lenses. A new lens is usually a new set-up, with a letter of its own. Correct the lens or the slate, or leave it if the lens was really changed.",
  },
  serialTwice: {
    code: "CHECK747",
    severity: "check",
    title: "One serial number for two lenses",
    explain:
      "Two lenses of the kit have one serial number and different focal lengths. VFX finds the calibration of a lens by its serial number. Correct one of the serial numbers from the lens itself.",
  },
  acceptedNothing: {
    code: "CHECK748",
    severity: "remark",
    title: "An accepted finding that does not occur",
    explain:
      "day.yaml or show.yaml accepts a finding that is not there: it was mended, or the code, the take or the file is another. The entry can be taken away.",
  },
} as const satisfies Record<string, FindingKind>;
