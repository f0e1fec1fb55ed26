/** A take before its log is known: who it is and when it ran. */
import type { NoteRow } from "../ingest/records.ts";
import type { FrameRate } from "../time/frame-rate.ts";

export interface TakeDraft {
  readonly address: string;
  readonly duplicate: boolean;
  readonly slate: string;
  readonly take: string;
  readonly camera: string;
  readonly clip: string | null;
  readonly note: NoteRow | null;
  readonly rate: FrameRate;
  readonly dropFrame: boolean;
  readonly inFrame: number | null;
  /** 0 when there is no extent. */
  readonly durationFrames: number;
}
