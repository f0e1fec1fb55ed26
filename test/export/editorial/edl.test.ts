import { describe, expect, it } from "vitest";
import { rational } from "../../../src/core/rational.ts";
import { editorialFiles } from "../../../src/export/editorial/editorial-files.ts";
import { edlTexts, eventLine } from "../../../src/export/editorial/edl.ts";
import { cameraReels, rateGroups } from "../../../src/export/editorial/reels.ts";
import { supportsDropFrame } from "../../../src/time/frame-rate.ts";
import { dayOf, oddDay, pullDay, TOOL } from "./days.ts";

const lists = (day: ReturnType<typeof dayOf>) => editorialFiles(day, TOOL).files.filter((file) => file.name.endsWith(".edl"));
const events = (text: string) => text.split("\n").filter((line) => /^\d/.test(line));
/** Columns from 1, both ends included, as the published layout counts them. */
const columns = (line: string, from: number, to: number) => line.slice(from - 1, to);

describe("an event of an edit list", () => {
  it("is the published line to the character", () => {
    // first event of screening_example.edl, the sample of the CMX 3600 adapter, with the reel of standards.md 4.2
    const line = "001  A012     V     C        01:00:04:05 01:00:05:12 00:59:53:11 00:59:54:18";
    const times = ["01:00:04:05", "01:00:05:12", "00:59:53:11", "00:59:54:18"] as const;
    expect(eventLine({ event: 1, reel: "A012", times })).toBe(line);
  });

  it("has every field in its columns, whatever the names are", () => {
    for (const { text } of [...lists(oddDay()), ...lists(pullDay())]) {
      for (const line of events(text)) {
        expect(line).toHaveLength(76);
        expect(columns(line, 1, 3)).toMatch(/^\d{3}$/);
        expect(columns(line, 6, 13)).toMatch(/^[A-Z0-9]+ *$/);
        expect(columns(line, 15, 18)).toBe("V   ");
        expect(columns(line, 21, 24)).toBe("C   ");
        expect(columns(line, 26, 28)).toBe("   ");
        for (const at of [30, 42, 54, 66]) expect(columns(line, at, at + 10)).toMatch(/^\d\d:\d\d:\d\d[:;]\d\d$/);
      }
    }
  });
});

describe("an edit list", () => {
  it("says take, clip, circled and marks of each event, end to end from 01:00:00:00", () => {
    const [a] = lists(pullDay());
    expect(a?.name).toBe("editorial/SMALL-2031-05-06-A.edl");
    const [title, fcm, event, ...comments] = (a?.text ?? "").trimEnd().split("\n");
    expect([title, fcm]).toEqual(["TITLE: SMALL 2031-05-06 CAM A", "FCM: NON-DROP FRAME"]);
    expect(event).toBe("001  A012     V     C        01:00:00:00 01:00:10:00 01:00:00:00 01:00:10:00");
    expect(comments.slice(0, 4)).toEqual([
      "* FROM CLIP NAME:  24B-3",
      "* SOURCE FILE: A012C003",
      "* CIRCLED",
      "* LOC: 01:00:00:00 MAGENTA HERO PLATE",
    ]);
    // the pull is held until frame 96, 4 s in; where a detector sees its first movement is a matter of a few frames
    expect(comments[4]).toMatch(/^\* LOC: 01:00:04:0\d CYAN {4}FOCUS PULL 4\.00 M TO 2\.00 M, PEAK 0\.\d\d DIOPTRES\/S$/);
    expect(comments[5]).toBe("* LOC: 01:00:08:08 RED     LOG GAP, 5 FRAMES NOT LOGGED");
  });

  it("counts drop frame with a semicolon in events, a colon in locators, and the FCM line", () => {
    // frame 1084319 is 10:03:00;05 at 29.97 drop frame (OpenTimelineIO, tests/test_opentime.py); one label later is ;06
    const drop = "rate: 30000/1001\ndrop_frame: true\ncode: DROP\n";
    const day = dayOf(["7,1,A,7,A001,A001C001,10:03:00;05,10:03:00;06,,P50,,,,,,hero,,"], {}, drop);
    expect(lists(day).map((file) => file.text)).toEqual([
      "TITLE: DROP 2031-05-06 CAM A\nFCM: DROP FRAME\n" +
        "001  A001     V     C        10:03:00;05 10:03:00;06 01:00:00;00 01:00:00;01\n" +
        "* FROM CLIP NAME:  7-1\n* SOURCE FILE: A001C001\n* LOC: 10:03:00:05 MAGENTA HERO PLATE\n",
    ]);
  });

  it("goes over the labels that drop frame leaves out on the record side too", () => {
    // two takes of 17982 frames are ten minutes each (standards.md 6.2); the second begins at 01:10:00;00
    const drop = "rate: 30000/1001\ndrop_frame: true\ncode: DROP\n";
    const rows = ["7,1,A,7,A1,A1C1,02:00:00;00,02:10:00;00,,P50,,,,,,,,", "7,2,A,7,A1,A1C2,03:00:00;00,03:10:00;00,,P50,,,,,,,,"];
    const [first, second] = events(lists(dayOf(rows, {}, drop))[0]?.text ?? "");
    expect(first).toContain("01:00:00;00 01:10:00;00");
    expect(second).toContain("01:10:00;00 01:20:00;00");
  });

  it("is one of its own for another rate, with the rate in its name, and none where three digits of frames would not fit", () => {
    const rows = [
      "1,1,A,1,A1,A1C1,01:00:00:00,01:00:01:00,,P50,,,,,,,,",
      "1,2,A,1,A1,A1C2,01:01:00:00,01:01:01:00,48000/1001,P50,,,,,,,,",
      "1,3,A,1,A1,A1C3,01:02:00:000,01:02:01:000,120000/1001,P50,,,,,,,,",
    ];
    const { files, leftOut } = editorialFiles(dayOf(rows), TOOL);
    expect(files.map((file) => file.name).filter((name) => name.endsWith(".edl"))).toEqual([
      "editorial/SMALL-2031-05-06-A.edl",
      "editorial/SMALL-2031-05-06-A-47.952.edl",
    ]);
    expect(leftOut).toEqual([
      { take: "a-1-3", files: "editorial/*.edl", reason: "timecode at 119.88 frames a second does not fit the columns." },
    ]);
    expect(supportsDropFrame(rational(48000, 1001))).toBe(false);
  });

  it("goes on in a second list after 999 events", () => {
    const day = pullDay();
    const [reel] = cameraReels(day);
    const [group] = rateGroups(reel!);
    const takes = Array.from({ length: 1000 }, () => group!.takes[0]!);
    const [first, second, ...more] = edlTexts(day, "A", { ...group!, takes });
    expect(more).toEqual([]);
    expect(events(first!)).toHaveLength(999);
    expect(first).toContain("TITLE: SMALL 2031-05-06 CAM A 1 OF 2\n");
    expect(events(second!).map((line) => line.slice(0, 3))).toEqual(["001"]);
  });

  it("is printable ASCII, and shortened names are unlike each other and stand in a table with the take's address", () => {
    const text = lists(oddDay())[0]?.text ?? "";
    expect(text).toMatch(/^[\x20-\x7e\n]+$/);
    const reels = events(text).map((line) => columns(line, 6, 13).trim());
    expect(new Set(reels).size).toBe(reels.length);
    expect(text).toContain("* SHORT REEL A012R2LO = A012 R2LO long name (TAKE a-1-2-a-1)\n");
    expect(text).toContain("* SHORT REEL RBL = BL (TAKE a-9a-4)\n");
    expect(text).toContain(`* SHORT REEL XXXXXXX2 = ${"x".repeat(300)}y (TAKE `);
    const names = text.match(/(?<=FROM CLIP NAME: {2}).*/g) ?? [];
    expect(new Set(names).size).toBe(6);
    for (const name of names) expect(name.length).toBeLessThanOrEqual(32);
  });
});
