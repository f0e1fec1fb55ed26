import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { changeQueue } from "../../src/build/watch.ts";

describe("changes of a watched folder", () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());
  const never = (error: unknown): void => {
    throw error;
  };

  it("that come within 150 ms are one change, with each file once and in order", async () => {
    const seen: (readonly string[])[] = [];
    const queue = changeQueue(150, { onChange: async (files) => void seen.push(files), onFault: never });
    for (const file of ["b.csv", "a.csv", "b.csv"]) {
      queue.add(file);
      await vi.advanceTimersByTimeAsync(149);
    }
    expect(seen).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(seen).toEqual([["a.csv", "b.csv"]]);
  });

  it("that come while one is worked on are worked on after it, together", async () => {
    const seen: (readonly string[])[] = [];
    let end = (): void => {};
    const onChange = (files: readonly string[]) => {
      seen.push(files);
      return new Promise<void>((done) => {
        end = done;
      });
    };
    const queue = changeQueue(150, { onChange, onFault: never });
    queue.add("a.csv");
    await vi.advanceTimersByTimeAsync(150);
    queue.add("b.csv");
    await vi.advanceTimersByTimeAsync(1000);
    queue.add("c.csv");
    await vi.advanceTimersByTimeAsync(1000);
    expect(seen).toEqual([["a.csv"]]);
    end();
    await vi.advanceTimersByTimeAsync(150);
    expect(seen).toEqual([["a.csv"], ["b.csv", "c.csv"]]);
  });

  it("that cannot be worked on are told of, and the next one is worked on", async () => {
    const told: unknown[] = [];
    const seen: (readonly string[])[] = [];
    const onChange = async (files: readonly string[]) => {
      seen.push(files);
      if (seen.length === 1) throw new Error("the disk is gone");
    };
    const queue = changeQueue(150, { onChange, onFault: (error) => told.push(error) });
    queue.add("a.csv");
    await vi.advanceTimersByTimeAsync(150);
    queue.add("a.csv");
    await vi.advanceTimersByTimeAsync(150);
    expect(told).toEqual([new Error("the disk is gone")]);
    expect(seen).toHaveLength(2);
  });
});
