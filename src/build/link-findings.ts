/** Links that lead out of the show folder, as findings. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { OUT } from "../core/findings/out.ts";

/** A finding for each link in the show folder that was not followed, unless an error says already that the file could not be read. */
export function linkFindings(links: readonly string[], found: readonly Finding[]): readonly Finding[] {
  const said = new Set(found.filter((f) => f.severity === "error").map((f) => f.file));
  return links
    .filter((file) => !said.has(file))
    .map((file) =>
      findingOf(OUT.linkLeftOut, {
        place: { file, line: null, column: null },
        message: `${file} is a link that leads out of the show folder and was not followed`,
        hint: "Copy what it points to into the show folder.",
      }),
    );
}
