/** lens.opentrackio.jsonl: one OpenTrackIO 1.0.1 sample a frame, one a line. */
import { type LensLookFrames, lensLookFrames } from "../../summary/lens-look-frames.ts";
import type { FrameFigures, TakeSummary } from "../../summary/types.ts";
import { brownConrady, lossOf } from "./coefficients.ts";
import { frameTimecode } from "./lens-rows.ts";
import { maybe, staticBlock } from "./opentrackio-static.ts";
import { sampleId, takeId } from "./sample-id.ts";
import { metresOfFocus, metresOfMm, tidy } from "./units.ts";

/** What the samples cannot hold. */
export const losses: readonly string[] = [
  "OpenTrackIO cannot hold a focus at infinity: focusDistance is then left out, and custom.focusDioptres is 0.",
  "OpenTrackIO has no field for scene, take, roll, clip, circled, depth of field, hyperfocal distance and angle of view.",
  "OpenTrackIO has no even anamorphic distortion, and coefficients of the desqueezed picture cannot be written: such frames have no lens.distortion.",
  "OpenTrackIO's timecode counts to 119 frames a second: samples at higher rates have no timecode.",
  "lens.opentrackio.jsonl has no pose: pan, tilt, roll and height are not written. Encoder values that are not from 0 to 1 are left out.",
];

type Json = Readonly<Record<string, unknown>>;
const MOST_FRAMES = 119;

/** The text; empty for a take without frames. */
export function openTrackIo(showCode: string, date: string, summary: TakeSummary): string {
  return Array.from(
    { length: summary.take.durationFrames },
    (_, frame) => `${JSON.stringify(openTrackIoSample(showCode, date, summary, frame))}\n`,
  ).join("");
}

/** The sample of a frame. `static` is in the first; a frame that was not logged has no `lens`. */
export function openTrackIoSample(showCode: string, date: string, summary: TakeSummary, frame: number): Json {
  const { take, perFrame } = summary;
  const look = lensLookFrames(summary);
  const logged = perFrame !== null && look !== null && perFrame.logged[frame] === 1;
  const lens = logged ? lensPart(summary, perFrame, look, frame) : {};
  const dioptres = logged ? known(perFrame.focusDioptres[frame]) : null;
  return {
    protocol: { name: "OpenTrackIO", version: [1, 0, 1] },
    sampleId: sampleId(showCode, date, take.address, frame),
    sourceId: takeId(showCode, date, take.address),
    ...(frame === 0 ? { static: staticBlock(summary) } : {}),
    ...(take.slate.trim() === "" ? {} : { tracker: { slate: take.slate } }),
    timing: {
      sampleRate: { num: take.rate.num, denom: take.rate.denom },
      sequenceNumber: frame,
      ...maybe("timecode", timecode(summary, frame)),
    },
    ...(Object.keys(lens).length === 0 ? {} : { lens }),
    custom: { logged, ...maybe("focusDioptres", dioptres) },
  };
}

function timecode(summary: TakeSummary, frame: number): Json | null {
  const { rate } = summary.take;
  const label = frameTimecode(summary, frame);
  const [hours = 0, minutes = 0, seconds = 0, frames = 0] = (label ?? "").split(/[:;]/).map(Number);
  if (label === null || frames > MOST_FRAMES || Math.round(rate.num / rate.denom) > MOST_FRAMES + 1) return null;
  const dropFrame = label.includes(";") ? { dropFrame: true } : {};
  return { hours, minutes, seconds, frames, frameRate: { num: rate.num, denom: rate.denom }, ...dropFrame };
}

function lensPart(summary: TakeSummary, f: FrameFigures, look: LensLookFrames, i: number): Json {
  const { distortion, shading } = look.look(i) ?? { distortion: null, shading: null };
  const metres = metresOfFocus(f.focusDioptres[i] as number);
  const terms = distortion === null ? null : brownConrady(distortion);
  const loss = shading === null ? null : lossOf(shading);
  const pupil = known(look.entrancePupilMm[i]);
  return {
    ...maybe("pinholeFocalLength", positive(f.focalMm[i])),
    ...maybe("focusDistance", Number.isFinite(metres) ? tidy(metres) : null),
    ...maybe("fStop", positive(f.fStop[i])),
    ...maybe("tStop", positive(f.tStop[i])),
    ...maybe("entrancePupilOffset", pupil === null ? null : tidy(metresOfMm(pupil))),
    ...(terms === null || distortion === null
      ? {}
      : {
          distortion: [
            {
              model: distortion.direction === "undistort" ? "Brown-Conrady D-U" : "Brown-Conrady U-D",
              radial: radial([terms.k1, terms.k4, terms.k2, terms.k5, terms.k3, terms.k6]),
              ...(terms.p1 === 0 && terms.p2 === 0 ? {} : { tangential: [tidy(terms.p1), tidy(terms.p2)] }),
            },
          ],
          distortionOffset: { x: tidy(distortion.centreXMm), y: tidy(distortion.centreYMm) },
        }),
    ...maybe("exposureFalloff", loss && { a1: tidy(loss.a1), a2: tidy(loss.a2), a3: tidy(loss.a3) }),
    ...maybe("encoders", encoders(summary, i)),
  };
}

/**
 * `radial` alternates numerator and denominator terms of r^2, r^4, r^6; zeros at its end are left off.
 * @source OpenLensIO 1.0.0 eq. 16
 */
function radial(terms: readonly number[]): readonly number[] {
  let length = terms.length;
  while (length > 1 && terms[length - 1] === 0) length--;
  return terms.slice(0, length).map((term) => tidy(term));
}

function encoders({ take }: TakeSummary, i: number): Json | null {
  const columns = take.track?.columns ?? {};
  const found = (["focus", "iris", "zoom"] as const).flatMap((name) => {
    const value = columns[`encoder_${name}`]?.[i];
    return value !== undefined && value >= 0 && value <= 1 ? [[name, value] as const] : [];
  });
  return found.length === 0 ? null : Object.fromEntries(found);
}

function known(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : tidy(value) + 0;
}

function positive(value: number | undefined): number | null {
  return value !== undefined && value > 0 && Number.isFinite(value) ? tidy(value) : null;
}
