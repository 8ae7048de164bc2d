import { describe, expect, it } from "vitest";
import { Formatter, ticks } from "./format";
import { History } from "./history";
import { blend, place } from "./interpolate";
import type { CaseResult } from "./types";

describe("place between computed discharges", () => {
  const list = [10, 20, 40];
  it("finds the interval and the share", () => {
    expect(place(list, 25)).toEqual({ index: 1, share: 0.25 });
    expect(place(list, 20)).toEqual({ index: 1, share: 0 });
  });
  it("holds the ends", () => {
    expect(place(list, 1)).toEqual({ index: 0, share: 0 });
    expect(place(list, 99)).toEqual({ index: 1, share: 1 });
  });
});

describe("blend of two cases", () => {
  const a = { discharge: 10, y1: 1, margin: -1, jump: "past_sill", gate_pattern: null } as CaseResult;
  const b = { discharge: 20, y1: 2, margin: 3, jump: "on_apron", gate_pattern: null } as CaseResult;
  it("moves numbers in a straight line and words at the half", () => {
    expect(blend(a, b, 0.25)).toMatchObject({ discharge: 12.5, y1: 1.25, margin: 0, jump: "past_sill" });
    expect(blend(a, b, 0.75).jump).toBe("on_apron");
  });
  it("is the case itself at the ends", () => {
    expect(blend(a, b, 0).y1).toBe(1);
    expect(blend(a, b, 1).y1).toBe(2);
  });
});

describe("numbers as they are shown", () => {
  const units = { SI: { m: { factor: 1, label: "m" } }, US: { m: { factor: 1 / 0.3048, label: "ft" } } };
  it("takes factor and label from the program", () => {
    expect(new Formatter(units, "US").level(3.048)).toBe("10.00\u202fft");
    expect(new Formatter(units, "SI").level(3.048)).toBe("3.05\u202fm");
  });
  it("never shows a negative nothing, nor a sign for it", () => {
    const f = new Formatter(units, "SI");
    expect(f.level(-0.001)).toBe("0.00\u202fm");
    expect(f.signed(0.001)).toBe("0.00\u202fm");
    expect(f.signed(0.42)).toBe("+0.42\u202fm");
    expect(f.signed(-0.42)).toBe("−0.42\u202fm");
  });
  it("shows a dash for what is not known", () => expect(new Formatter(units, "SI").level(null)).toBe("–"));
});

describe("ticks", () => {
  it("are round and inside", () => expect(ticks(60, 1550, 4)).toEqual([500, 1000, 1500]));
  it("are none for an empty range", () => expect(ticks(5, 5, 4)).toEqual([]));
});

describe("history", () => {
  const version = (text: string) => ({ text, files: {} });
  it("goes back and forth, and forgets the future on a new text", () => {
    const history = new History();
    history.push(version("a"));
    history.push(version("b"));
    expect(history.undo(version("c"))?.text).toBe("b");
    expect(history.undo(version("b"))?.text).toBe("a");
    expect(history.undo(version("a"))).toBeNull();
    expect(history.redo(version("a"))?.text).toBe("b");
    history.push(version("b"));
    expect(history.redo(version("d"))).toBeNull();
  });
});
