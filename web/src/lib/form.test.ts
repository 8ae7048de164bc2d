import { describe, expect, it } from "vitest";
import { atSections, bareNumber, fieldsOf, fromSpreadsheet, fromValue, Inputs, toValue } from "./form";
import type { Input, Key, Section } from "./types";

const input = (section: string, key: string, is_default = false): Input => ({ section, key, typed: "1", meaning: "", is_default, line: 1 });
const key = (name: string, group: string | null): Key => ({ name, group }) as Key;

describe("values as they are typed", () => {
  it("keeps the unit, and bare numbers bare", () => {
    expect(toValue("36 m", "quantity")).toBe('"36 m"');
    expect(toValue("36", "quantity")).toBe("36");
    expect(toValue("-1.5e3", "quantity")).toBe("-1.5e3");
    expect(toValue("0.8H:1V", "slope")).toBe('"0.8H:1V"');
    expect(toValue("12", "text")).toBe('"12"');
  });
  it("writes numbers that TOML would refuse so that it takes them", () => {
    expect(toValue(".5", "number")).toBe("0.5");
    expect(toValue("5.", "number")).toBe("5.0");
    expect(toValue("5.e3", "number")).toBe("5.0e3");
    expect(toValue("+3", "number")).toBe("3");
  });
  it("makes lists, and leaves tables alone", () => {
    expect(toValue("type_1, type_2", "texts")).toBe('["type_1", "type_2"]');
    expect(toValue("1 m, 2", "quantities")).toBe('["1 m", 2]');
    expect(toValue("{ low = 0.03, expected = 0.035 }", "spread")).toBe("{ low = 0.03, expected = 0.035 }");
  });
  it("takes the unit off a bare number, and only there", () => {
    expect(bareNumber("1240 (ft)")).toEqual({ typed: "1240", unit: "ft" });
    expect(bareNumber("0.6 mm")).toEqual({ typed: "0.6 mm", unit: "" });
    expect(bareNumber("Dam (upper)")).toEqual({ typed: "Dam (upper)", unit: "" });
  });
  it("guards quotes and backslashes", () => expect(toValue('a "b" \\', "text")).toBe('"a \\"b\\" \\\\"'));
  it("shows values without quotes", () => expect(fromValue('["1 m", "2 m"]')).toBe("1 m, 2 m"));
});

describe("sections", () => {
  const list = [input("discharges.floods[1]", "name"), input("discharges.floods[12]", "name"), input("basin", "types", true), input("river.rating", "file")];
  const inputs = new Inputs(list);
  it("counts members beyond nine", () => expect(inputs.members("discharges.floods")).toBe(12));
  it("takes a section for present by what was typed, not by defaults or by a longer name", () => {
    expect(inputs.isPresent("basin")).toBe(false);
    expect(inputs.isPresent("river")).toBe(true);
    expect(inputs.isPresent("river.rat")).toBe(false);
  });
  it("leaves what an edit has not touched the same object", () => {
    const next = inputs.renewed(list.map((one) => ({ ...one, typed: one.section === "basin" ? "other" : one.typed })));
    expect(next.at("river.rating.file")).toBe(inputs.at("river.rating.file"));
    expect(next.at("basin.types")?.typed).toBe("other");
    expect(next.isPresent("river")).toBe(true);
  });
  it("puts keys of one group together, where the first stands", () => {
    const section = { keys: [key("a", null), key("b", "g"), key("c", null), key("d", "g"), key("e", "alone")] } as Section;
    expect(fieldsOf(section).map((f) => ("keys" in f ? f.keys.map((k) => k.name) : f.name))).toEqual(["a", ["b", "d"], "c", "e"]);
  });
  it("puts a missing section at the section", () => {
    const problem = { file: "", line: 1, column: 1, message: "the section [chute] is missing", hint: "", key: "units" };
    expect(atSections([problem])[0].key).toBe("chute");
    expect(atSections([{ ...problem, message: "other" }])[0].key).toBe("units");
  });
});

describe("tables from a spreadsheet", () => {
  it("turns tabs into commas", () => expect(fromSpreadsheet("q\tlow\r\n10\t1.5\r\n")).toBe("q,low\n10,1.5\n"));
  it("reads decimal commas where no decimal point stands", () => expect(fromSpreadsheet("q\tlow\n10\t1,5")).toBe("q,low\n10,1.5\n"));
  it("leaves a file with commas alone", () => expect(fromSpreadsheet("q,low\n10,1.5\n")).toBe("q,low\n10,1.5\n"));
});
