/** What the focus encoder of a lens reads at its marks (kit/encoders/). */
import type { Place } from "../../core/finding.ts";

/** A mark of a lens: what the focus encoder reads there. */
export interface EncoderMark {
  readonly encoder: number;
  /** 1/m from the image plane; 0 is infinity. */
  readonly focusDioptres: number;
  readonly place: Place;
}

/** From readings of a focus encoder to distances, for one lens. */
export interface EncoderTable {
  readonly lens: string;
  readonly file: string;
  readonly sha256: string;
  /** Two or more, by increasing reading; no reading twice. */
  readonly marks: readonly EncoderMark[];
}
