/** Cautions on a set of lenses as sentences: the figure first, then what to do about it. */
import { grams } from "../../format/amounts.ts";
import { millimetres } from "../../format/length.ts";
import { trimmed } from "../../format/number.ts";
import { lightRatioText, stops, tStop } from "../../format/stop.ts";
import { listWords } from "../../format/words.ts";
import type { SetCaution } from "../../summary/set-cautions.ts";

export interface CautionLine {
  readonly figure: string;
  readonly words: string;
}

export function cautionLine(caution: SetCaution): CautionLine {
  switch (caution.kind) {
    case "light":
      return {
        figure: stops(caution.spreadStops),
        words: `Wide open, from ${tStop(caution.fastest)} to ${tStop(caution.slowest)}: light ratio ${lightRatioText(caution.lightRatio)}. ${tStop(caution.slowest)} or deeper is within reach of every lens.`,
      };
    case "fronts":
      return {
        figure: caution.others.map(({ mm }) => millimetres(mm)).join(", "),
        words: `${caution.others.map(({ mm, lenses }) => `${listWords(lenses)} ${lenses.length === 1 ? "has" : "have"} a front of ${millimetres(mm)}`).join("; ")}; most have ${millimetres(caution.commonMm)}. Matte box, rings and filters differ there.`,
      };
    case "mass":
      return {
        figure: grams(caution.grams),
        words: `From ${caution.from} to ${caution.to}, neighbours in focal length: rebalance.`,
      };
    case "squeeze":
      return {
        figure: caution.squeezes.map((s) => trimmed(s, 3)).join(" and "),
        words: "Squeeze differs: spherical and anamorphic lenses are not one set.",
      };
    case "mounts":
      return { figure: listWords(caution.mounts), words: "Mounts differ: not every lens goes on every body." };
    case "circle":
      return {
        figure: listWords(caution.lenses),
        words: `Image circle below the largest active diagonal, ${millimetres(caution.diagonalMm)}: dark corners there.`,
      };
  }
}
