/** How alike the lenses of the set are, as facts. */
import { NOT_RECORDED } from "../../format/absent.ts";
import { grams } from "../../format/amounts.ts";
import { distance, millimetres } from "../../format/length.ts";
import { trimmed } from "../../format/number.ts";
import { lightRatioText, stops, tStop } from "../../format/stop.ts";
import { listWords } from "../../format/words.ts";
import type { SetConsistency } from "../../summary/types.ts";
import { type Fact, factOr } from "../facts.ts";
import type { Distances } from "../names.ts";

/** What the whole set can hold and where its lenses differ; a fact that no lens of the kit records says so. */
export function setFacts(set: SetConsistency, distances: Distances): readonly Fact[] {
  const t = set.widestT;
  const close = set.closeFocusM;
  return [
    factOr("Widest stops", t === null ? null : `${tStop(t.fastest)} to ${tStop(t.slowest)}`, NOT_RECORDED, {
      source: t === null ? "" : `spread ${stops(t.spreadStops)}`,
    }),
    factOr("The set can hold", t === null ? null : tStop(t.slowest), NOT_RECORDED, { source: "every lens opens so far" }),
    factOr("Light ratio", t === null ? null : lightRatioText(t.lightRatio), NOT_RECORDED, {
      source: "fastest to slowest, calculated",
    }),
    factOr(
      "Front diameters",
      set.fronts.length === 0 ? null : set.fronts.map((f) => millimetres(f.diameterMm)).join(", "),
      NOT_RECORDED,
      {
        source: "kit",
      },
    ),
    factOr("Mass", set.massG === null ? null : `${grams(set.massG.lightest)} to ${grams(set.massG.heaviest)}`, NOT_RECORDED, {
      source: "kit",
    }),
    factOr(
      "Close focus",
      close === null ? null : `${distance(close.nearest, distances)} to ${distance(close.farthest, distances)}`,
      NOT_RECORDED,
      { source: "kit" },
    ),
    factOr("Squeeze", set.squeezes.length === 0 ? null : listWords(set.squeezes.map((s) => trimmed(s, 3))), NOT_RECORDED, {
      source: set.squeezes.length > 1 ? "not one set: sort by squeeze first" : "kit",
    }),
    factOr("Smallest image circle", set.imageCircle === null ? null : millimetres(set.imageCircle.smallestMm), NOT_RECORDED, {
      source: circleWords(set),
    }),
    factOr("Mounts", set.mounts.length === 0 ? null : listWords(set.mounts), NOT_RECORDED, { source: "kit" }),
  ];
}

/** The circle against the largest picture: who covers it, or which lenses do not. */
function circleWords({ imageCircle }: SetConsistency): string {
  if (imageCircle === null) return "";
  const picture = `the largest active diagonal, ${millimetres(imageCircle.largestDiagonalMm)}`;
  return imageCircle.tooSmall.length === 0 ? `covers ${picture}` : `${listWords(imageCircle.tooSmall)} below ${picture}`;
}
