import { describe, expect, it } from "vitest";
import { among, unpacked, withTypeInView } from "./results";
import type { Option, Result, SiteCase } from "./types";

const option = (type: string, apron_level: number) => ({ type, apron_level }) as Option;
const result = (chosen: string, options: Option[], discharge = 1) =>
  ({ chosen, options, choice_reason: `because of ${chosen}`, all_requirements_met: false, cases: [{ discharge }] as SiteCase[] }) as Result;

describe("an answer as it comes", () => {
  const answer = { problems: [], units: "SI" as const, reason: null, engine_ms: 1 };
  it("gives every case its names", () => {
    const packed = { ...option("a", 1), cases: { names: ["discharge", "jump"], rows: [[10, "on_apron"], [20, "drowned"]] } };
    const { result: made } = unpacked({ ...answer, result: { ...result("a", []), options: [packed] } });
    expect(made?.options[0].cases).toEqual([{ discharge: 10, jump: "on_apron" }, { discharge: 20, jump: "drowned" }]);
    expect(made?.options[0].apron_level).toBe(1);
  });
  it("leaves an answer without a result, and what a refusal leaves out, as they are", () => {
    expect(unpacked({ ...answer, result: null })).toEqual({ ...answer, result: null });
    const refused = { refused: [] } as unknown as Parameters<typeof unpacked>[0];
    expect(unpacked(refused)).toEqual({ refused: [], result: null });
  });
});

describe("an edit answered in two", () => {
  const before = result("b", [option("a", 1), option("b", 2), option("c", 3)]);
  const first = result("a", [option("a", 10)], 2);
  it("puts the first answer among the types as they were, and leaves the choice open until all are there", () => {
    const shown = among(before, first);
    expect(shown.options.map((o) => o.apron_level)).toEqual([10, 2, 3]);
    expect([shown.chosen, shown.choice_reason, shown.cases[0].discharge]).toEqual(["b", "because of b", 2]);
  });
  it("takes the first answer alone where nothing of it stood there before", () =>
    expect(among(result("x", [option("x", 1)]), first)).toBe(first));
  it("keeps what is in view the same object in the whole answer, and takes the rest from it", () => {
    const whole = result("c", [option("a", 10), option("b", 20), option("c", 30)], 2);
    const shown = withTypeInView(whole, first);
    expect(shown.options[0]).toBe(first.options[0]);
    expect(shown.cases).toBe(first.cases);
    expect(shown.options.map((o) => o.apron_level)).toEqual([10, 20, 30]);
    expect(shown.chosen).toBe("c");
    expect(withTypeInView(whole, null)).toEqual(whole);
  });
});
