import type { Finding } from "../core/finding.ts";
import { acceptInShow } from "../core/findings/accepted.ts";
import { collectFindings, FINDINGS_PER_CODE_AND_FILE } from "../core/findings/collect.ts";
import { SHOW } from "../core/findings/show.ts";
import { wholeFile } from "../csv/decode.ts";
import type { ShowFolder } from "./folder.ts";
import { readKit } from "./kit/kit.ts";
import { tellOfPlausibility } from "./kit/kit-plausible.ts";
import { readFieldMaps } from "./log/field-map.ts";
import { opener } from "./open-file.ts";
import type { ShowInput } from "./records.ts";
import { discoverDays } from "./show/discover.ts";
import { readShowFile } from "./show/show-file.ts";

const SHOW_FILE = "show.yaml";
export const FIELD_MAPS = "kit/columns.yaml";

/**
 * Everything outside the day folders. `input` is `null` only when show.yaml is absent or gives no title, code or rate.
 * @param most findings of one code in one file that are listed one by one (0: all)
 */
export function readShow(
  folder: ShowFolder,
  most = FINDINGS_PER_CODE_AND_FILE,
): { readonly input: ShowInput | null; readonly findings: readonly Finding[] } {
  const found = collectFindings(most);
  const open = opener(folder, found);
  if (!open.has(SHOW_FILE)) {
    found.add(SHOW.absent, {
      place: wholeFile(SHOW_FILE),
      message: "there is no show.yaml in this folder",
      hint: "Give the folder that holds show.yaml, or write one with title, code and rate (`daybook init` makes an example).",
    });
    return { input: null, findings: found.list() };
  }
  const text = open.text(SHOW_FILE);
  const show = text === null ? null : readShowFile(text, SHOW_FILE, found);
  if (show === null) {
    found.add(SHOW.absent, {
      place: wholeFile(SHOW_FILE),
      message: "show.yaml cannot be used without its title, code and rate",
      hint: "Mend the errors of show.yaml first; nothing is built until then.",
    });
    return { input: null, findings: found.list() };
  }
  const kit = readKit(open, found);
  tellOfPlausibility(kit, show.limits, found);
  if (open.has(FIELD_MAPS)) {
    const maps = open.text(FIELD_MAPS);
    if (maps !== null) readFieldMaps(maps, FIELD_MAPS, found);
  }
  const dates = discoverDays(open, found);
  const findings = acceptInShow(found.list(), show.accepted, "show");
  return { input: { show, kit, dates, files: open.files() }, findings };
}
