/** The take sheet. */

import { focusRibbon } from "../../chart/ribbon/focus-ribbon.ts";
import { svg } from "../../chart/svg.ts";
import { countFindings } from "../../core/finding.ts";
import { NOT_RECORDED } from "../../format/absent.ts";
import { brief } from "../../format/brief.ts";
import { stopRange } from "../../format/stop.ts";
import { sameName } from "../../model/address.ts";
import type { SlateExposure } from "../../summary/exposure.ts";
import type { TakeSummary } from "../../summary/types.ts";
import type { PageModel } from "../context.ts";
import type { DayContext } from "../day/day-context.ts";
import type { Fact } from "../facts.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { countWords, type FindingView, findingView, worstFirst } from "../findings/findings.ts";
import { dayPath, hrefTo, METHODS_PATH, takePath } from "../links.ts";
import { dayShort, sentence, standing, takeName } from "../names.ts";
import { pageBase } from "../page.ts";
import { ribbonAxis } from "../ribbon-axis.ts";
import { type CamerasView, camerasView } from "./take-cameras.ts";
import { takeStrip } from "./take-facts.ts";
import { type LookView, lookView } from "./take-look.ts";
import { type MatesView, matesView } from "./take-mates.ts";
import { noteMarksSentence } from "./take-note-marks.ts";
import { type PullsView, pullsView } from "./take-pulls.ts";
import { readoutAtMiddle, shallowestSentence } from "./take-readout.ts";
import { type ScrubberView, scrubberView } from "./take-scrubber.ts";
import { depthBasis, setupFacts } from "./take-setup.ts";
import { type SourceView, sourceView } from "./take-source.ts";
import { subjectSentence } from "./take-subject.ts";

/** Width the ribbon is drawn at; the page scales it to its column. */
const RIBBON_WIDTH = 1180;
/** Characters of a remark that stand beside the slate; the set-up has it whole. */
const MOST_REMARK = 180;

export interface Turn {
  readonly label: string;
  readonly name: string;
  readonly href: string;
  /** `prev`, `next` or `alternate`. */
  readonly rel: string;
}

export interface TakePage extends PageModel {
  readonly slate: string;
  readonly take: string;
  readonly camera: string;
  readonly circled: boolean;
  readonly ringCls: string;
  readonly about: string;
  readonly findingWords: string;
  readonly hasFindings: boolean;
  readonly turns: readonly Turn[];
  readonly strip: readonly Fact[];
  /** Scene, take, roll, clip, timecodes, lens and stop with tabs between: pastes into a row of a spreadsheet. */
  readonly copyText: string;
  readonly ribbon: string;
  readonly ribbonAxis: string;
  readonly hasReadout: boolean;
  readonly readoutTimecode: string;
  readonly readoutFrame: string;
  readonly readout: readonly Fact[];
  readonly noReadout: string;
  readonly scrubber: ScrubberView;
  readonly shallowest: string;
  readonly hasShallowest: boolean;
  readonly basis: string;
  readonly depthHref: string;
  readonly pulls: PullsView;
  readonly breathingHref: string;
  readonly subject: string;
  readonly noted: string;
  readonly mates: MatesView;
  readonly cameras: CamerasView;
  readonly look: LookView;
  readonly lookHref: string;
  readonly findings: readonly FindingView[];
  readonly setup: readonly Fact[];
  readonly source: SourceView;
  readonly files: readonly FileLink[];
  readonly dayFiles: readonly FileLink[];
  readonly hasFiles: boolean;
  readonly noFiles: string;
  readonly hasDayFiles: boolean;
}

export function takePage(t: TakeSummary, day: DayContext): TakePage {
  const { take } = t;
  const { site, summary } = day;
  const path = takePath(summary.date, take.address);
  const name = takeName(take);
  const dayRef = { date: summary.date, day: summary.day.record.day };
  const slate = day.slates.find((s) => s.slate === take.slate);
  const distances = site.show.distances;
  const readout = readoutAtMiddle(t, distances);
  const shallowest = shallowestSentence(t, distances);
  const folder = `vfx/${take.address}/`;
  const files = fileLinks(site, summary.date, path, (file) => file.startsWith(folder), folder);
  const dayFiles = fileLinks(site, summary.date, path, (file) => file === "takes.csv" || file === "day.json");
  const ribbon = focusRibbon(t, { width: RIBBON_WIDTH, distances, cursor: t.middleFrame });
  const hashes = new Map(summary.day.files.map((file) => [file.file, file.sha256]));
  return {
    ...pageBase(
      {
        path,
        title: `${name}, ${dayShort(dayRef)}`,
        trail: [
          { label: dayShort(dayRef), path: dayPath(summary.date) },
          { label: take.slate, path: dayPath(summary.date), fragment: slate?.anchor ?? "takes" },
          { label: `Take ${take.take} ${take.camera}`, path },
        ],
        styles: ["take.css", "mates.css", "scrubber.css"],
        landscape: true,
      },
      site,
    ),
    slate: take.slate,
    take: take.take,
    camera: take.camera,
    circled: take.circled,
    ringCls: take.circled ? "ring on" : "ring",
    about: aboutTake(t),
    findingWords: countWords(countFindings(t.findings)),
    hasFindings: t.findings.length > 0,
    turns: turnsOf(t, day, path),
    strip: takeStrip(t, day, path),
    copyText: copyText(t),
    ribbon: svg(ribbon, { idPrefix: "ribbon" }),
    ribbonAxis: svg(ribbonAxis(ribbon), { idPrefix: "axis", decorative: true }),
    hasReadout: readout !== null,
    readoutTimecode: readout?.timecode ?? "",
    readoutFrame: readout?.frame ?? "",
    readout: readout?.facts ?? [],
    noReadout:
      take.track === null ? "No log for this take: noted values stand in the strip above." : "No frame of this take was logged.",
    scrubber: scrubberView(t, ribbon, path, readout !== null && site.dataScripts === true),
    shallowest: shallowest ?? "",
    hasShallowest: shallowest !== null,
    basis: depthBasis(t, site.show.circleOfConfusionMm !== null),
    depthHref: hrefTo(path, METHODS_PATH, "depth-of-field"),
    pulls: pullsView(t, distances),
    breathingHref: hrefTo(path, METHODS_PATH, "breathing"),
    subject: subjectSentence(t, distances),
    noted: noteMarksSentence(t),
    mates: matesView(t, day, path),
    cameras: camerasView(t, day, path),
    look: lookView(t, path, site.stills?.get(take.address) ?? null),
    lookHref: hrefTo(path, METHODS_PATH, "distortion-percent"),
    findings: worstFirst(t.findings).map((f) =>
      findingView(f, { path, date: summary.date, takes: day.names, frames: site.frames }),
    ),
    setup: setupFacts(t, distances, slateExposure(t, day)),
    source: sourceView(t, hashes),
    files,
    dayFiles,
    hasFiles: files.length > 0,
    noFiles:
      take.plate === null
        ? "No files of its own: the pack has a folder for each take that is marked as a plate."
        : "No files were written for this take.",
    hasDayFiles: dayFiles.length > 0,
  };
}

/** The spread of the take's slate, when it has other clips to compare with. */
function slateExposure(t: TakeSummary, day: DayContext): SlateExposure | null {
  const found = day.summary.slateExposure.find((entry) => sameName(entry.slate) === sameName(t.take.slate));
  return found === undefined || found.clips < 2 ? null : found;
}

function copyText(t: TakeSummary): string {
  const { take } = t;
  const stop = t.tStop === null ? null : stopRange(t.tStop.widest, t.tStop.deepest);
  const cells = [take.scene, takeName(take), take.roll, take.clip, t.timecodeIn, t.timecodeOut, take.lensId, stop];
  return cells.map((text) => text ?? NOT_RECORDED).join("\t");
}

function aboutTake(t: TakeSummary): string {
  const scene = t.take.scene === null ? "Scene not recorded." : `Scene ${t.take.scene}.`;
  const tail = t.remarks === null ? "" : sentence(brief(t.remarks, MOST_REMARK, "the rest is in the camera set-up"));
  return [scene, standing(t.take), tail].filter((text) => text !== "").join(" ");
}

/** The take before and after on the same camera, and the same take on the other cameras. */
function turnsOf(t: TakeSummary, day: DayContext, path: string): readonly Turn[] {
  const date = day.summary.date;
  const same = day.takes.filter((other) => other.take.camera === t.take.camera);
  const here = same.indexOf(t);
  const turn = (other: TakeSummary | undefined, rel: string, label: (name: TakeSummary) => string, words: string): Turn[] =>
    other === undefined
      ? []
      : [
          {
            label: label(other),
            name: `${words}: ${takeName(other.take)}`,
            href: hrefTo(path, takePath(date, other.take.address)),
            rel,
          },
        ];
  const brief = (other: TakeSummary) =>
    other.take.slate === t.take.slate ? `take ${other.take.take}` : `${other.take.slate} take ${other.take.take}`;
  const twins = day.takes.filter((other) => other !== t && other.take.slate === t.take.slate && other.take.take === t.take.take);
  return [
    ...turn(here > 0 ? same[here - 1] : undefined, "prev", (o) => `← ${brief(o)}`, `Previous take of camera ${t.take.camera}`),
    ...twins.flatMap((o) => turn(o, "alternate", (x) => `camera ${x.take.camera}`, "Same take, other camera")),
    ...turn(same[here + 1], "next", (o) => `${brief(o)} →`, `Next take of camera ${t.take.camera}`),
  ];
}
