/** Links that lead out of the show folder, as findings. */
import type { Finding } from "../core/finding.ts";
import { findingOf } from "../core/findings/kind.ts";
import { OUT } from "../core/findings/out.ts";

/** A finding for each link in the show folder that was not followed. */
export function linkFindings(links: readonly string[]): readonly Finding[] {
  return links.map((file) =>
    findingOf(OUT.linkLeftOut, {
      place: { file, line: null, column: null },
      message: `${file} is a link that leads out of the show folder and was not followed`,
      hint: "Copy what it points to into the show folder.",
    }),
  );
}
