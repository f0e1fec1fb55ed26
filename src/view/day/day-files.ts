/** The three doors of a day, with the files each reader takes away. */
import { fileSize } from "../../format/amounts.ts";
import { plural } from "../../format/words.ts";
import { type FileLink, fileLinks } from "../files.ts";
import { dayPath, hrefTo, KIT_PATH } from "../links.ts";
import type { DayContext } from "./day-context.ts";

export interface Door {
  readonly id: string;
  readonly title: string;
  readonly href: string;
  readonly about: string;
  readonly files: readonly FileLink[];
}

export function doors(day: DayContext, path: string): readonly Door[] {
  const { date } = day.summary;
  const pick = (wanted: (name: string) => boolean, folder = "") => fileLinks(day.site, date, path, wanted, folder);
  const lenses = day.summary.kit.lenses.length;
  return [
    {
      id: "door-editorial",
      title: "Editorial",
      href: hrefTo(path, dayPath(date, "editorial")),
      about: "Circled takes with slate, clip and timecode, ready to find in the bin. What changed inside a take.",
      files: [
        ...pick((name) => name === "takes.csv" || name.endsWith("-editorial.pdf")),
        ...pick((name) => /^editorial\/.*\.(otio|edl)$/.test(name), "editorial/"),
      ],
    },
    {
      id: "door-vfx",
      title: "VFX",
      href: hrefTo(path, dayPath(date, "vfx")),
      about:
        "Plates and the lens state at every frame: focus, stop, focal length, distortion and shading to take off and put back.",
      files: [
        ...vfxFolder(day, path),
        ...pick((name) => name === "day.json" || name.endsWith("-vfx.pdf")),
        { label: "Lenses and calibration", href: hrefTo(path, KIT_PATH), size: plural(lenses, "lens", "lenses") },
      ],
    },
    {
      id: "door-production",
      title: "Production",
      href: hrefTo(path, dayPath(date, "production")),
      about: "The day on one page: hours, scenes and pages, set-ups, media, lens use, what needs an answer, signatures.",
      files: [
        ...pick((name) => name.endsWith("-camera-report.pdf") || name.endsWith("-production.pdf")),
        { label: `One page, ${day.site.show.paper}`, href: hrefTo(path, dayPath(date, "production")), size: "print" },
      ],
    },
  ];
}

/** The files of all plates in one line: how many, how large; each has its own list on the VFX page. */
function vfxFolder(day: DayContext, path: string): readonly FileLink[] {
  const files = day.site.packFiles.filter((file) => file.name.startsWith("vfx/"));
  if (files.length === 0) return [];
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  return [
    {
      label: plural(files.length, "plate file"),
      href: hrefTo(path, dayPath(day.summary.date, "vfx"), "plates"),
      size: fileSize(bytes),
    },
  ];
}

/** Files at the top of the pack and how they are named; the rest is listed where it belongs. */
export function packLinks(day: DayContext, path: string): readonly FileLink[] {
  return fileLinks(day.site, day.summary.date, path, (name) => !name.includes("/"));
}
