import { describe, expect, it } from "vitest";
import { DAY, found } from "../../helpers/one-day.ts";

const HEADER = "slate,take,camera,scene,circled";
const day = (text: string, ...notes: string[]) => ({ header: HEADER, notes, day: text });
const places = (code: string, ...args: Parameters<typeof day>) =>
  found(day(...args), code).map((f) => [f.severity, f.file, f.line, f.column, f.field]);

describe("scenes of the day sheet against the takes", () => {
  it("completed or part without a take are a check at the scene in day.yaml", () => {
    // completed: ["1", "7"] is line 3; "7" begins after `completed: ["1", `, 17 characters
    const text = 'completed: ["1", "7"]\npart: ["8"]\n';
    expect(places("CHECK761", text, "1,1,A,1,y")).toEqual([
      ["check", DAY, 3, 18, "completed"],
      ["check", DAY, 4, 8, "part"],
    ]);
  });
  it("not shot, with takes, are a check too", () => {
    const [finding] = found(day('not_shot: ["1"]\n', "1A,2,A,1,y"), "CHECK761");
    expect(finding).toMatchObject({ line: 3, column: 12 });
    expect(finding?.message).toContain("a-1a-2 is a take of it");
  });
  it("are found by the slate where the row has no scene, and left alone where no row has one", () => {
    expect(places("CHECK761", 'completed: ["1", "7"]\n', "1,1,A,1,y", "7B,1,A,,y")).toEqual([]);
    expect(places("CHECK761", 'completed: ["7"]\n', "101,1,A,,y")).toEqual([]);
  });
  it("scheduled and in no list are remarked on, once the lists are kept", () => {
    const scheduled = 'scheduled:\n  - {scene: "1", pages: "2/8"}\n  - {scene: "2", pages: "1"}\n';
    expect(places("CHECK762", `${scheduled}completed: ["1"]\n`, "1,1,A,1,y")).toEqual([["remark", DAY, 5, 5, "scheduled"]]);
    expect(places("CHECK762", scheduled, "1,1,A,1,y")).toEqual([]);
  });
  it("completed and not scheduled are remarked on: their pages are not counted", () => {
    const text = 'scheduled: [{scene: "1", pages: "1"}]\ncompleted: ["1", "2"]\n';
    expect(places("CHECK767", text, "1,1,A,1,y", "2,1,A,2,y")).toEqual([["remark", DAY, 4, 18, "completed"]]);
  });
  it("twice in the schedule, or in two lists, are a check at the second", () => {
    const text = 'scheduled:\n  - {scene: "1", pages: "1"}\n  - {scene: "1", pages: "1"}\ncompleted: ["1"]\npart: ["1"]\n';
    expect(places("CHECK763", text, "1,1,A,1,y")).toEqual([
      ["check", DAY, 5, 5, "scheduled"],
      ["check", DAY, 7, 8, "part"],
    ]);
  });
  it("in order are no finding", () => {
    const text = 'scheduled: [{scene: "1", pages: "1"}, {scene: "2", pages: "1"}]\ncompleted: ["1"]\nnot_shot: ["2"]\n';
    for (const code of ["CHECK761", "CHECK762", "CHECK763", "CHECK767"]) expect(places(code, text, "1,1,A,1,y")).toEqual([]);
  });
});
