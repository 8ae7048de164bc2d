// The water between two discharges that the engine has computed: every number moves in a straight line from one to the other.
import type { CaseResult, ChuteRow, Option, Result, Tailwater } from "./types";

export const between = (a: number, b: number, share: number): number => a + (b - a) * share;

const numbers = [
  "unit_discharge", "energy_head", "y1", "V1", "F1", "y2", "energy_loss", "jump_length", "roller_length", "sweep_out_depth",
  "largest_depth", "required_depth", "available_depth", "margin", "front_station", "front_height", "submergence",
] as const;

export interface Water {
  discharge: number;
  reservoir_level: number;
  tailwater_level: number;
  flow: CaseResult;
  chute: ChuteRow[];
  /** Depths above the apron, at equal steps from the front to the end of the jump. */
  jump: number[];
}

/** Index of the computed discharge at or below, and the share of the way to the next. */
export function place(discharges: number[], discharge: number): { index: number; share: number } {
  const last = discharges.length - 1;
  if (last < 1 || discharge <= discharges[0]) return { index: 0, share: 0 };
  if (discharge >= discharges[last]) return { index: last - 1, share: 1 };
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (discharges[middle] <= discharge) low = middle;
    else high = middle;
  }
  return { index: low, share: (discharge - discharges[low]) / (discharges[high] - discharges[low]) };
}

const lists = (a: number[], b: number[], share: number): number[] => a.map((value, i) => between(value, b[i] ?? value, share));

/** The case of one tailwater, discharge by discharge; gate patterns are not among them. */
export const casesOf = (option: Option, tailwater: Tailwater): CaseResult[] =>
  option.cases.filter((c) => c.tailwater_case === tailwater && c.gate_pattern === null);

export function blend(a: CaseResult, b: CaseResult, share: number): CaseResult {
  const flow = { ...(share < 0.5 ? a : b) };
  for (const key of numbers) flow[key] = between(a[key], b[key], share);
  flow.discharge = between(a.discharge, b.discharge, share);
  return flow;
}

/** Prepared once for a result and an option; `at` is then cheap enough for every frame. */
export class Interpolator {
  private readonly cases: Record<Tailwater, CaseResult[]>;
  readonly discharges: number[];

  constructor(
    private readonly result: Result,
    private readonly option: Option,
  ) {
    this.cases = { low: casesOf(option, "low"), expected: casesOf(option, "expected"), high: casesOf(option, "high") };
    this.discharges = this.cases.low.map((c) => c.discharge);
  }

  get smallest(): number {
    return this.discharges[0] ?? 0;
  }
  get largest(): number {
    return this.discharges[this.discharges.length - 1] ?? 0;
  }

  at(discharge: number, tailwater: Tailwater): Water | null {
    const cases = this.cases[tailwater];
    if (cases.length < 2) return null;
    const { index, share } = place(this.discharges, discharge);
    const from = this.result.cases[index];
    const to = this.result.cases[index + 1];
    if (!from || !to) return null;
    const a = this.option.water?.discharges[index];
    const b = this.option.water?.discharges[index + 1];
    return {
      discharge: between(cases[index].discharge, cases[index + 1].discharge, share),
      reservoir_level: between(from.reservoir_level, to.reservoir_level, share),
      tailwater_level: between(from.tailwater[tailwater], to.tailwater[tailwater], share),
      flow: blend(cases[index], cases[index + 1], share),
      chute: a && b ? a.chute.map((row, i) => lists(row, b.chute[i] ?? row, share) as ChuteRow) : [],
      jump: a && b ? lists(a.jump[tailwater], b.jump[tailwater], share) : [],
    };
  }
}
