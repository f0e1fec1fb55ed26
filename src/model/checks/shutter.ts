/** Shutter against capture speed, and capture speed against the timecode's rate. */
import { CHECK } from "../../core/findings/check.ts";
import { rationalToNumber } from "../../core/rational.ts";
import { shutterDegrees, shutterSeconds } from "../../optics/exposure.ts";
import { rateLabel } from "../../time/frame-rate.ts";
import type { TakeContext } from "./context.ts";
import { round } from "./words.ts";

/** Angles that a shutter is set to; a time of one over one of these is probably the angle. */
const ANGLES: readonly number[] = [144, 172.8, 180, 270, 358, 360];
/** Angles that people set although they are also twice a frame rate. */
const REAL_ANGLES: ReadonlySet<number> = new Set([45, 60, 72, 90, 120, 144, 180]);
/** 172.8 degrees are 1/50 s at 24 frames a second: safe under lamps on 50 Hz mains. At 25 that is 180 degrees. */
const MAINS_50_AT_24 = 172.8;
const SAME = 1e-6;

export function checkShutter({ take, limits, tell }: TakeContext): void {
  const note = take.note;
  const shutter = note?.shutter ?? null;
  const fps = take.captureFps;
  const speed = note?.captureFps ?? null;
  const rate = rationalToNumber(take.rate);
  const off = Math.abs(fps / rate - 1);
  if (speed !== null && off > SAME && off < limits.speedSlipFraction) {
    tell(CHECK.speedNearRate, {
      place: speed.place,
      field: "capture_fps",
      message: `The take was noted at ${speed.text} frames a second, with timecode at ${rateLabel(take.rate)}.`,
      hint: "If the camera ran at the timecode's rate, leave the cell blank or write the same rate.",
    });
  }
  if (shutter === null) return;
  if ("seconds" in shutter.value) {
    const over = 1 / shutter.value.seconds;
    const angle = ANGLES.find((a) => Math.abs(over - a) < 0.05);
    if (angle === undefined) return;
    tell(CHECK.shutter, {
      place: shutter.place,
      field: "shutter",
      message: `A shutter of ${shutter.text} s at ${round(fps)} frames a second is ${round(shutterDegrees(shutter.value.seconds, fps))} degrees; ${angle} is an angle that shutters are set to.`,
      hint: `If ${angle} degrees was meant, write ${angle}.`,
    });
    return;
  }
  const { degrees } = shutter.value;
  const over = Math.round(1 / shutterSeconds(degrees, fps));
  if (!REAL_ANGLES.has(degrees) && Math.abs(degrees - 2 * fps) < 0.1) {
    tell(CHECK.shutter, {
      place: shutter.place,
      field: "shutter",
      message: `A shutter of ${shutter.text} degrees at ${round(fps)} frames a second is 1/${over} s; 1/${round(degrees)} s is 180 degrees.`,
      hint: `If the time was meant, write 1/${round(degrees)}.`,
    });
  } else if (Math.abs(degrees - MAINS_50_AT_24) < 0.05 && Math.abs(fps - 25) < 0.01) {
    tell(CHECK.shutter, {
      place: shutter.place,
      field: "shutter",
      message: `${shutter.text} degrees at ${round(fps)} frames a second is 1/${over} s; it is 1/50 s at 24.`,
      hint: "At 25 frames a second 1/50 s is 180 degrees. Correct the shutter, or capture_fps.",
    });
  }
}
