import { describe, expect, it } from "vitest";
import { calibrationSentence } from "../../src/format/calibration-sentence.ts";

describe("the calibration of a frame as a sentence", () => {
  it("is plain where the table or the log served", () => {
    expect(calibrationSentence("inside the table")).toEqual({ text: "Inside the table.", warns: false });
    expect(calibrationSentence("coefficients as logged")).toEqual({ text: "Coefficients as logged.", warns: false });
  });
  it("warns where the nearest point stands in, where there is no look, and where nothing was logged", () => {
    expect(calibrationSentence("outside the table on focus and stop")).toEqual({
      text: "Outside the table on focus and stop: its nearest point stands in.",
      warns: true,
    });
    expect(calibrationSentence("none: the lens is not in the kit")).toEqual({
      text: "Lens look not calculated: the lens is not in the kit.",
      warns: true,
    });
    expect(calibrationSentence("")).toEqual({ text: "The lens is not logged.", warns: true });
  });
});
