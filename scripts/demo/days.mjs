/**
 * The schedule of the demo as data: what each camera carried, what the hand did and what was written down.
 *
 * @typedef {object} Shot
 *   what a camera does on a set-up; a take may change any of it
 * @property {string} lens what is really on the camera
 * @property {string} stop as said on set; `noted.stop` where the sheet says something else
 * @property {number} start metres
 * @property {readonly import("./operator.mjs").Step[]} steps
 * @property {number} [focal] of a zoom
 * @property {readonly (readonly [number, number, number])[]} [zoom]
 * @property {readonly (readonly [number, number, number])[]} [iris]
 * @property {"take" | "clip" | "frames" | "none"} [log] how the take's log of camera A says what it belongs to
 * @property {readonly [number, number]} [edges] frames logged before the take and after it
 * @property {readonly (readonly [number, number])[]} [gaps] `[second, frames]`
 * @property {boolean} [extra] whether the log has a column that nobody knows
 * @property {boolean} [fStop] whether the log has f beside T
 * @property {boolean} [head] whether the head's angles are in the log
 * @property {number} [tShift] logged stop against the said one, in stops
 * @property {Record<string, string>} [noted] cells of the notes as written, where they are not what was shot
 * @property {readonly [string, string]} [mistake] `[field, what]`: a deliberate one
 * @property {{ row: number, number?: boolean, twice?: boolean }} [spoil] what happens to one row of the log
 * @property {string} [still]
 * @property {string} [picture]
 */
import { DAY_11 } from "./day-11.mjs";
import { DAY_12 } from "./day-12.mjs";
import { DAY_13 } from "./day-13.mjs";

export const DAYS = [DAY_11, DAY_12, DAY_13];

export const SHOW_YAML = `# The demo show. Everything in this folder is invented and written by scripts/make-demo.mjs.
title: Low Water Mark
code: LWM
production: Sill and Sound
unit: main
rate: 24
distances: metric
paper: A4
time_zone: Europe/London
circle_of_confusion_mm:
  FULL46: 0.022
  CROP38: 0.0185
check:
  stop_difference: 0.15
  focus_difference_fraction: 0.1
  log_coverage: 0.98
  clock_drift_frames: 1
  wider_than_lens_stops: 0.1
`;
