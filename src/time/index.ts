export * from "./drift.ts";
export * from "./frame-rate.ts";
export * from "./time-range.ts";
export * from "./timecode.ts";
