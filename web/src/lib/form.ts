// From the schema and the inputs of the file to the fields of the form.
import type { Input, Key, Problem, Schema, Section } from "./types";

export const pathOf = (section: string, key: string): string => (section === "" ? key : `${section}.${key}`);

const same = (a: Input, b: Input): boolean =>
  a.typed === b.typed && a.is_default === b.is_default && a.line === b.line && a.meaning === b.meaning;

/** What the site file gives, by full path: "crest.level", "gates.patterns[2].openings". */
export class Inputs {
  readonly by_path: Map<string, Input>;
  private readonly present = new Set<string>();
  private readonly counts = new Map<string, number>();

  constructor(list: Input[]) {
    this.by_path = new Map(list.map((input) => [pathOf(input.section, input.key), input]));
    for (const { section, is_default } of list) {
      for (let end = section.indexOf("["); end >= 0; end = section.indexOf("[", end + 1)) {
        const name = section.slice(0, end);
        this.counts.set(name, Math.max(this.members(name), Number.parseInt(section.slice(end + 1))));
      }
      if (is_default) continue;
      for (let path = section; path !== "" && !this.present.has(path); path = path.slice(0, Math.max(path.lastIndexOf("."), path.lastIndexOf("["), 0)))
        this.present.add(path);
    }
  }
  at(path: string): Input | undefined {
    return this.by_path.get(path);
  }
  /** A section is in the file where it, or one below it, has a value that was typed. */
  isPresent(section: string): boolean {
    return this.present.has(section);
  }
  /** How many members a list has. */
  members(list: string): number {
    return this.counts.get(list) ?? 0;
  }
  /** Whether the file gives a value, and not the program its own. */
  isGiven(path: string): boolean {
    const input = this.at(path);
    return input !== undefined && !input.is_default;
  }
  /** These inputs after an edit: those that the edit left as they were stay the same objects, and their fields as they are. */
  renewed(list: Input[]): Inputs {
    return new Inputs(
      list.map((input) => {
        const was = this.at(pathOf(input.section, input.key));
        return was && same(was, input) ? was : input;
      }),
    );
  }
}

/** Whether a key has a meaning where the choice of its section stands as it does. */
export function applies(key: Key | Section, section: string, inputs: Inputs, schema: Section): boolean {
  if (!key.only_for) return true;
  const chooser = inputs.at(pathOf(section, key.only_for.key))?.typed ?? preset(schema, key.only_for.key);
  return key.only_for.words.includes(chooser);
}
function preset(section: Section, name: string): string {
  return (section.keys.find((k) => k.name === name)?.preset ?? "").replaceAll('"', "");
}

export const isNumber = (typed: string): boolean => /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(typed);
const quoted = (typed: string): string => JSON.stringify(typed);
const listKinds = ["texts", "quantities"];

/** What was typed, as a value of the file: bare numbers stay bare, all else stands in quotes; the unit stays as typed. */
export function toValue(typed: string, kind: string): string {
  const text = typed.trim();
  if (kind === "text" || kind === "choice" || kind === "file") return quoted(text);
  if (/^[{[]/.test(text)) return text;
  if (listKinds.includes(kind)) {
    const words = text.split(/\s*,\s*/).filter((word) => word !== "");
    return "[" + words.map((word) => (kind === "quantities" && isNumber(word) ? word : quoted(word))).join(", ") + "]";
  }
  return isNumber(text) ? text.replace(/^\./, "0.").replace(/\.(?=$|[eE])/, ".0").replace(/^\+/, "") : quoted(text);
}

/** The program echoes a bare number with the unit that it stands in, "1240 (ft)": the number was typed, the unit was not. */
export function bareNumber(echo: string): { typed: string; unit: string } {
  const found = /^(\S+) \(([^)]+)\)$/.exec(echo);
  return found && isNumber(found[1]) ? { typed: found[1], unit: found[2] } : { typed: echo, unit: "" };
}

/** A value of the file as it is shown in a field: without its quotes. */
export function fromValue(value: string): string {
  return value.replace(/^\[|\]$/g, "").replaceAll('"', "").trim();
}

export interface Alternative {
  keys: Key[];
}
/** Keys of a section in their order; those of one group together, where the first of them stands. */
export function fieldsOf(section: Section): (Key | Alternative)[] {
  const fields: (Key | Alternative)[] = [];
  const groups = new Map<string, Alternative>();
  for (const key of section.keys) {
    if (!key.group) fields.push(key);
    else if (groups.has(key.group)) groups.get(key.group)!.keys.push(key);
    else {
      const alternative = { keys: [key] };
      groups.set(key.group, alternative);
      fields.push(alternative);
    }
  }
  return fields.map((f) => ("keys" in f && f.keys.length === 1 ? f.keys[0] : f));
}

/** The words of a limit: "0 to 9000 m", "above 0". */
export function rangeWords(key: Key, system: "SI" | "US"): string {
  const range = key.range?.[system === "US" ? "us" : "si"];
  if (!range) return "";
  const round = (value: number) => String(Number(value.toPrecision(4)));
  const unit = range.unit ? " " + range.unit : "";
  if (range.lowest !== null && range.highest !== null) return `${round(range.lowest)} to ${round(range.highest)}${unit}`;
  if (range.lowest !== null) return `${key.range?.excludes_lowest ? "above" : "at least"} ${round(range.lowest)}${unit}`;
  return range.highest !== null ? `up to ${round(range.highest)}${unit}` : "";
}

/** A missing section is reported at the first line; on the form it belongs to the section. */
export function atSections(problems: Problem[]): Problem[] {
  return problems.map((p) => {
    const section = /^the section \[([a-z_.]+)\] is missing/.exec(p.message)?.[1];
    return section ? { ...p, key: section } : p;
  });
}

/** Problems at a key, those of its parts with them. */
export function problemsAt(path: string, problems: Problem[]): Problem[] {
  return problems.filter((p) => p.key === path || p.key.startsWith(path + "."));
}

export function children(schema: Schema, parent: string): Section[] {
  return schema.sections.filter((s) => s.parent === parent && s.name !== "");
}

/** A table pasted from a spreadsheet stands in tabs; the file stands in commas. */
export function fromSpreadsheet(text: string): string {
  const rows = text.replaceAll("\r\n", "\n").replace(/\n+$/, "").split("\n");
  const decimalComma = rows.some((row) => row.includes("\t") && /\d,\d/.test(row)) && !rows.some((row) => /\d\.\d/.test(row));
  return rows.map((row) => row.split("\t").map((cell) => (decimalComma ? cell.trim().replace(",", ".") : cell.trim())).join(",")).join("\n") + "\n";
}
