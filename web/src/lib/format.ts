// Numbers as the page shows them: the program's own factor and label, the digits of the trade (levels 2, discharges 0 to 2).
import type { System, Units } from "./types";

const gap = "\u202f";

export class Formatter {
  constructor(
    private readonly units: Units | null,
    readonly system: System,
  ) {}

  private unit(si: string): { factor: number; label: string } {
    return this.units?.[this.system][si] ?? { factor: 1, label: si };
  }
  /** The value in the printed unit. */
  shown(value: number, si: string): number {
    return value * this.unit(si).factor;
  }
  label(si: string): string {
    return this.unit(si).label;
  }
  fixed(value: number | null | undefined, si: string, decimals: number): string {
    if (value === null || value === undefined || !Number.isFinite(value)) return "–";
    const text = this.shown(value, si).toFixed(decimals);
    return /^-0\.?0*$/.test(text) ? text.slice(1) : text.replace("-", "−");
  }
  withUnit(text: string, si: string): string {
    const label = this.label(si);
    return label === "" || text === "–" ? text : text + gap + label;
  }
  level(value: number | null | undefined): string {
    return this.withUnit(this.fixed(value, "m", 2), "m");
  }
  discharge(value: number | null | undefined): string {
    const size = Math.abs(this.shown(value ?? 0, "m3/s"));
    return this.withUnit(this.fixed(value, "m3/s", size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2), "m3/s");
  }
  velocity(value: number | null | undefined): string {
    return this.withUnit(this.fixed(value, "m/s", 1), "m/s");
  }
  volume(value: number | null | undefined): string {
    return this.withUnit(this.fixed(value, "m3", 0), "m3");
  }
  ratio(value: number | null | undefined): string {
    return this.fixed(value, "", 2);
  }
  /** A signed length: "+0.42 m". */
  signed(value: number | null | undefined): string {
    const text = this.level(value);
    return value !== null && value !== undefined && value > 0 && !/^0\.0+\D/.test(text) ? "+" + text : text;
  }
  /** Value or limit of a finding. */
  judged(value: number | null, finding: { unit: string; is_count: boolean }): string {
    return finding.is_count ? this.fixed(value, "", 0) : this.measured(value, finding.unit);
  }
  /** Any value by its SI unit, about four digits. */
  measured(value: number | null, si: string): string {
    if (value === null) return "–";
    const shown = Math.abs(this.shown(value, si));
    const decimals = shown >= 999.5 ? 0 : shown >= 99.95 ? 1 : shown >= 0.0995 || shown === 0 ? 2 : 4;
    return this.withUnit(this.fixed(value, si, decimals), si);
  }
}

/** "type_2" and "on_apron" for people. */
export const words = (id: string): string => id.replaceAll("_", " ");

export const jumpWords: Record<string, string> = {
  on_apron: "on the apron",
  on_chute: "climbs the chute",
  past_sill: "swept out",
  drowned: "drowned",
};

const deeds: Record<string, string> = {
  roller: "roller in the bucket",
  blocks: "slowed by the blocks",
  impact: "hits the wall",
  fall: "falls into the pool",
  pool: "digs into the stone",
  jet: "thrown clear",
};

/** What the water does, in a few words: where the jump stands, or what stands for it. */
export function deed(action: string, jump: string): string {
  const word = deeds[action];
  if (!word) return `jump ${jumpWords[jump]}`;
  return jump === "on_apron" || jump === "on_chute" ? word : jumpWords[jump];
}

/** About `count` round steps across a range. */
export function ticks(from: number, to: number, count: number): number[] {
  if (!(to > from)) return [];
  const rough = (to - from) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough) ?? 10 * power;
  const list: number[] = [];
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + step * 1e-9; ++i) list.push(Number((i * step).toPrecision(12)));
  return list;
}
