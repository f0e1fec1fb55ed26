import { describe, expect, it } from "vitest";
import { fileProblem, outProblem } from "../../src/build/file-problem.ts";

const failure = (code: string, path?: string) =>
  Object.assign(new Error(code), { code, syscall: "open", ...(path === undefined ? {} : { path }) });

describe("fileProblem", () => {
  it("puts what the disk says into words", () => {
    expect(fileProblem(failure("EACCES"))).toBe("may not be read or written: permission denied");
    expect(fileProblem(failure("ENOSPC"))).toBe("does not fit: the disk is full");
    expect(fileProblem(failure("EWEIRD"))).toBe("cannot be used (EWEIRD)");
  });

  it("leaves every other error alone: it is a fault of the program", () => {
    expect(fileProblem(new TypeError("x is not a function"))).toBeNull();
    expect(fileProblem(Object.assign(new Error("bad argument"), { code: "ERR_INVALID_ARG_TYPE" }))).toBeNull();
    expect(fileProblem("text")).toBeNull();
  });
});

describe("outProblem", () => {
  it("is about the output folder, what lies in it and what lies above it", () => {
    expect(outProblem("/a/out", failure("EROFS", "/a/out/index.html"))).toBe(
      "/a/out/index.html is on a disk that cannot be written",
    );
    expect(outProblem("/a/out", failure("EACCES", "/a"))).toContain("/a may not be read or written");
    expect(outProblem("/a/out", failure("ENOSPC"))).toBe("the output folder /a/out does not fit: the disk is full");
  });

  it("is not about a missing file of the program", () => {
    expect(outProblem("/a/out", failure("ENOENT", "/lib/font.ttf"))).toBeNull();
    expect(outProblem("/a/out", failure("ENOENT", "/a/output"))).toBeNull();
  });
});
