// What the program answers, made ready for the page. An edit is answered for the type in view first, and for all types behind
// it: how the two answers become one result.
import type { Answer, CaseResult, Option, Result } from "./types";

type Cell = string | number | boolean | null;
/** An answer as it comes: the cases of an option as a table. */
export type Packed<A extends Answer> = Omit<A, "result"> & {
  result: (Omit<Result, "options"> & { options: (Omit<Option, "cases"> & { cases: { names: string[]; rows: Cell[][] } })[] }) | null;
};

export function unpacked({ result, ...answer }: Packed<Answer>): Answer {
  if (!result) return { ...answer, result: null };
  const options = result.options.map((option): Option => ({ ...option, cases: casesIn(option.cases) }));
  return { ...answer, result: { ...result, options } };
}
function casesIn({ names, rows }: { names: string[]; rows: Cell[][] }): CaseResult[] {
  const blank: Record<string, Cell> = Object.fromEntries(names.map((name) => [name, null])); // copies of one shape are quick
  return rows.map((row) => {
    const one = { ...blank };
    for (let i = 0; i < names.length; ++i) one[names[i]] = row[i];
    return one as unknown as CaseResult;
  });
}

/** A first answer among the types of the result before it, which stay as they were until their own answer comes. */
export function among(before: Result, first: Result): Result {
  const answered = new Map(first.options.map((option) => [option.type, option]));
  if (!before.options.some((option) => answered.has(option.type))) return first;
  const { chosen, choice_reason, all_requirements_met } = before;
  return { ...first, chosen, choice_reason, all_requirements_met, options: before.options.map((o) => answered.get(o.type) ?? o) };
}

/** The whole answer. What the first one has shown already stays the same object, so that the page does not draw it again. */
export function withTypeInView(whole: Result, first: Result | null): Result {
  const shown = new Map(first?.options.map((option) => [option.type, option]));
  return { ...whole, cases: first?.cases ?? whole.cases, levels: first?.levels ?? whole.levels, options: whole.options.map((o) => shown.get(o.type) ?? o) };
}
