/** Words, sources and conventions of the methods page. */
import type { Named } from "./methods-page.ts";

export const WORDS: readonly Named[] = [
  {
    id: "word-slate",
    term: "Slate",
    text: "What is written on the slate for a set-up: scene number and letter, such as 24B, or a running number.",
  },
  {
    id: "word-take",
    term: "Take",
    text: "One run on a slate, with one camera or several. Each camera's part has a page of its own; a count of takes counts it once.",
  },
  {
    id: "word-clip",
    term: "Clip",
    text: "The file of one camera for one take: a take on two cameras is two clips.",
  },
  {
    id: "word-log",
    term: "Log",
    text: "What a lens did, sample by sample: focus, stop, focal length and, where known, distortion, shading and entrance pupil.",
  },
  { id: "word-note", term: "Note", text: "What a person wrote down about a take." },
  { id: "word-kit", term: "Kit", text: "The cameras and lenses that the show carries, with their calibration tables." },
  { id: "word-plate", term: "Plate", text: "A take made for VFX: hero, clean, reference, element, tile or grid." },
  {
    id: "word-finding",
    term: "Finding",
    text: "Something noticed while building: an error, a thing to check or a remark, with its place and a way to mend it.",
  },
  {
    id: "word-pull",
    term: "Pull",
    text: "A change of focus from one held distance to another. There and back without a hold is two pulls. Without a log there are none to see.",
  },
  {
    id: "word-depth",
    term: "Depth",
    text: "How far a pull goes, measured in the depth of field where it starts: 6.0 depths is six times what is acceptably sharp there.",
  },
  {
    id: "word-dioptre",
    term: "Dioptre",
    text: "One over the distance in metres. Equal steps in dioptres are equal amounts of focus; infinity is 0.",
  },
  {
    id: "word-look",
    term: "Lens look",
    text: "What the lens does to the picture that VFX takes off and puts back: distortion and shading.",
  },
  { id: "word-pack", term: "Pack", text: "The folder of files that leaves the set at the end of a day." },
];

export const SOURCES: readonly Named[] = [
  { id: "source-logged", term: "logged", text: "Read from a lens log, frame by frame." },
  { id: "source-noted", term: "noted", text: "Read from the notes or the day file: somebody wrote it down." },
  { id: "source-kit", term: "kit", text: "Read from the lists of cameras and lenses or from a calibration table." },
  { id: "source-calculated", term: "calculated", text: "Worked out from the others by a formula of this page." },
  {
    id: "source-order",
    term: "Which one is shown",
    text: "Where two disagree, the log stands before the note and the note before the kit, and the disagreement is a finding. A take's extent is the note's timecode, and the log's only where the note gives none.",
  },
  {
    id: "source-absent",
    term: "Absent",
    text: "\u201cNot recorded\u201d is a note that nobody made, \u201cnot logged\u201d a value that the log lacks, \u201cnot calculated\u201d a figure that an input is missing for. None of them is zero.",
  },
];

export const CONVENTIONS: readonly Named[] = [
  {
    id: "convention-plane",
    term: "Distances",
    text: "From the image plane, as focus scales and tapes read them. A focus distance is an optical reading, not a safety distance for stunts, vehicles or effects.",
  },
  { id: "convention-out", term: "Timecode out", text: "The first frame after the take: out minus in is the length." },
  {
    id: "convention-stop",
    term: "Stops",
    text: "A stop label in notes and kit counts as its exact series value (2.8 is 2.828); a logged number counts as written.",
  },
  {
    id: "convention-middle",
    term: "Single figures of a take",
    text: "Taken at its middle logged frame: the one with as many logged frames before it as after, the earlier of two.",
  },
  {
    id: "convention-typical",
    term: "Typical stop",
    text: "The median of the logged frames' stops; of two in the middle, the lower.",
  },
  { id: "convention-logged", term: "Frames logged", text: "How many of the frames shot have a log row." },
  {
    id: "convention-rows",
    term: "Rows",
    text: "Every row of a log is used (it falls on a frame of a take), unmatched (it falls on none) or rejected (it could not be used as written). The three add up to the rows read.",
  },
  {
    id: "convention-media",
    term: "Media and shooting ratio",
    text: "Media is the length of all clips together; the ratio is media over the length of the circled takes' clips.",
  },
  {
    id: "convention-pages",
    term: "Pages",
    text: "In eighths. Completed pages count scenes marked completed; a part counts nothing until the scene is done.",
  },
  {
    id: "convention-squeeze",
    term: "Anamorphic lenses",
    text: "Depth of field uses the marked focal length and the circle of confusion as set for the show; the horizontal angle of view includes the squeeze.",
  },
  {
    id: "convention-beyond",
    term: "Outside a calibration",
    text: "Nothing is continued beyond a table: the nearest point stands in, and the figure says so.",
  },
  {
    id: "convention-canvas",
    term: "Canvas",
    text: "The picture spreads or shrinks when distortion is taken off. The canvas holds all of it on every frame of the take, about the middle of the recorded frame.",
  },
  {
    id: "convention-still",
    term: "Stills",
    text: "A still is read as sRGB and as one of the take's middle logged frame. Its look is taken off in linear light, for looking at and not for work.",
  },
  {
    id: "convention-exposure",
    term: "Light on the sensor",
    text: "Stop, shutter and ND of a take in stops, with EI beside it. Only differences between takes mean anything. A blank ND is not taken for none.",
  },
  {
    id: "convention-coverage",
    term: "Worth measuring",
    text: "Frames of plates that lie further from a table's points than the corner's error allows, half a pixel and a tenth of a stop, and the fewest charts that would serve them.",
  },
  {
    id: "convention-hours",
    term: "Hours",
    text: "As written in the day's notes: a record, not a legal finding. Agreements and local law decide.",
  },
  {
    id: "convention-build",
    term: "Build id",
    text: "Made from the content, never from the clock: the same input gives the same pages, byte for byte.",
  },
];
