/** The pages that speak of all days. They are made from the small summaries that the days left behind. */
import { compareText, type Finding } from "../core/finding.ts";
import { sha256 } from "../core/hash.ts";
import { canonicalJson } from "../core/stable-json.ts";
import type { DayDigest } from "../summary/digest-types.ts";
import type { DayPack } from "../view/context.ts";
import { outProblem } from "./file-problem.ts";
import { isPending, missingOutput, readShowRecord, removePending, writeShowRecord } from "./manifest.ts";
import { generationOf } from "./pack-history.ts";
import { publish } from "./publish.ts";
import { type DayRevision, lastChange, type StoredChange } from "./revisions.ts";
import type { Fault, Session } from "./session.ts";

const UNIT = "show";
const INTO = ".tmp-show";

/** Builds the show-wide pages and the assets unless they are as the last build left them; gives back a fault of the program. */
export async function buildShowPages(
  session: Session,
  digests: readonly DayDigest[],
  revisions: readonly DayRevision[],
  showFindings: readonly Finding[],
): Promise<Fault | null> {
  const { effects, options, pipeline, show } = session;
  const { out } = effects;
  const inOrder = [...digests].sort((a, b) => compareText(a.date, b.date));
  const stored = readShowRecord(out);
  const change: StoredChange = {
    days: revisions.map(({ date, day, content }) => ({ date, day, content })),
    lastChange: lastChange(stored?.change ?? null, revisions),
  };
  const packs = revisions.map(({ date, packId: id }): DayPack => ({ date, id, generation: generationOf(out, date) }));
  const content = canonicalJson({
    toolVersion: options.tool.version,
    showFiles: show.files.map(({ file, sha256: hash }) => ({ file, sha256: hash })),
    digests: inOrder,
    showFindings,
  });
  const key = sha256(canonicalJson({ content, change, packs, programHash: options.programHash }));
  const isThere = stored?.key === key && !isPending(out, UNIT) && missingOutput(out, stored.outputs) === null;
  if (isThere && !options.force) return null;
  const start = effects.now();
  try {
    out.removeFolder(INTO);
    const buildId = sha256(content).slice(0, 12);
    await pipeline.makeShow({
      ...{ show, digests: inOrder, showFindings, tool: options.tool, buildId, out, into: INTO },
      lastChange: change.lastChange,
      packs,
    });
    const { outputs } = publish(out, INTO, UNIT, stored?.outputs ?? []);
    writeShowRecord(out, { key, outputs, change });
    removePending(out, UNIT);
    effects.log.detail(`show-wide pages  ${Math.round(effects.now() - start)} ms`);
    return null;
  } catch (error) {
    if (outProblem(out.path, error) !== null) throw error;
    out.removeFolder(INTO);
    return { date: null, error };
  }
}
