/** LOSSES.md of a pack: what each of its formats cannot hold, as the exporters themselves say it. */

/** What one format of the pack cannot hold. Every exporter has one; LOSSES.md is made of them. */
export interface FormatLosses {
  /** Name of the format as its readers call it. */
  readonly format: string;
  /** Its files in the pack, such as `editorial/*.edl`. */
  readonly files: string;
  /** One sentence each; where to find what is lost belongs into it. */
  readonly losses: readonly string[];
}

/** Something of this day that a file does not hold, such as a take without a timecode. */
export interface LeftOut {
  /** Address of the take. */
  readonly take: string;
  readonly files: string;
  readonly reason: string;
}

export interface LossesContent {
  readonly title: string;
  readonly formats: readonly FormatLosses[];
  readonly leftOut: readonly LeftOut[];
}

/** Text of LOSSES.md, LF at the end. */
export function lossesMarkdown({ title, formats, leftOut }: LossesContent): string {
  const sections = formats.map(({ format, files, losses }) => [
    `## ${plainText(format)}: \`${files}\``,
    "",
    ...losses.map((loss) => `- ${loss}`),
    "",
  ]);
  return [
    `# What the files of this pack do not hold: ${plainText(title)}`,
    "",
    "`day.json` holds every figure of the day, and `vfx/<take>/lens.csv`, where it is there, every frame. Each other format holds what it",
    "was made for and no more. This list is written by the program that wrote the files.",
    "",
    ...sections.flat(),
    "## Left out on this day",
    "",
    ...(leftOut.length === 0
      ? ["Nothing: every take is in every list that it belongs to."]
      : leftOut.map(({ take, files, reason }) => `- \`${take}\` is not in \`${files}\`: ${reason}`)),
    "",
  ].join("\n");
}

/** Text of a name that Markdown does not read as its own signs; one line. */
function plainText(text: string): string {
  return text.replace(/\s+/g, " ").replace(/[\\`*_{}[\]<>#|]/g, "\\$&");
}
