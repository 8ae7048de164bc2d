// What of the design is in view: the type, the discharge, the tailwater case, an apron held by hand, pinned designs.
import { api } from "./api";
import { doc } from "./document.svelte";
import { Formatter } from "./format";
import { Interpolator } from "./interpolate";
import type { Design, Finding, Option, Result, Schema, Tailwater, Units } from "./types";

export type Panel = "findings" | "working" | "compare" | "text" | "tables";
export interface Pin {
  label: string;
  option: Option;
}

class View {
  schema = $state.raw<Schema | null>(null);
  units = $state.raw<Units | null>(null);
  type = $state<string | null>(null);
  tailwater = $state<Tailwater>("low");
  wanted_discharge = $state<number | null>(null);
  panel = $state<Panel>("findings");
  highlight = $state<string | null>(null);
  working_section = $state(0);
  working_method = $state<string | null>(null);
  /** The finding whose step of the workings is to be shown. */
  finding_behind = $state.raw<Finding | null>(null);
  /** The finding to come back to. */
  finding_open = $state<string | null>(null);
  /** Path of the input that the form is to show, "crest.level", and what its focus goes back to. */
  field = $state<string | null>(null);
  /** The section of that input: its fields stand in the form although the file does not have it yet. */
  field_section = $state("");
  field_from = $state.raw<{ name: string; element: HTMLElement } | null>(null);
  table = $state<string | null>(null);
  line = $state<number | null>(null);
  pins = $state.raw<Pin[]>([]);
  held_level = $state<number | null>(null);
  held = $state.raw<Design | null>(null);

  formatter = $derived(new Formatter(this.units, doc.good?.units ?? doc.design?.units ?? "SI"));
  result = $derived<Result | null>(this.held?.result ?? doc.good?.result ?? null);
  option = $derived<Option | null>(this.pick(this.result));
  free_option = $derived<Option | null>(this.pick(doc.good?.result ?? null));
  interpolator = $derived(this.result && this.option?.sized ? new Interpolator(this.result, this.option) : null);
  discharge = $derived.by(() => {
    const all = this.interpolator;
    if (!all) return 0;
    const wanted = this.wanted_discharge ?? this.result?.levels.design_flood ?? all.largest;
    return Math.min(Math.max(wanted, all.smallest), all.largest);
  });
  water = $derived(this.interpolator?.at(this.discharge, this.tailwater) ?? null);

  private pick(result: Result | null): Option | null {
    if (!result) return null;
    const wanted = this.type ?? result.chosen;
    return result.options.find((o) => o.type === wanted) ?? result.options.find((o) => o.type === result.chosen) ?? result.options[0] ?? null;
  }

  private asking = false;
  private holds = 0;
  /** Holds the apron at a level while it is moved: one question at a time, the newest level wins. */
  async hold(level: number): Promise<void> {
    this.held_level = Math.round(level * 100) / 100;
    if (this.asking) return;
    this.asking = true;
    const mine = this.holds;
    await doc.attempt(async () => {
      let asked: number | null = null;
      while (mine === this.holds && this.held_level !== null && this.held_level !== asked) {
        asked = this.held_level;
        const start = performance.now();
        const answer = await api.design(doc.text, {}, { type: this.option?.type, apron_level: asked, profiles: true });
        if (mine !== this.holds) return;
        doc.round_trip_ms = performance.now() - start;
        if (answer.result) this.held = answer;
        else doc.message = answer.reason ?? "";
      }
    });
    this.asking = false;
  }
  /** Back to the engine's level. */
  release(): void {
    ++this.holds;
    this.held_level = null;
    this.held = null;
  }
  /** The level becomes the site's: both limits of the apron stand there. */
  async keepLevel(): Promise<void> {
    if (this.held_level === null) return;
    const metres = this.held_level;
    const value = `"${this.formatter.shown(metres, "m").toFixed(2)} ${this.formatter.label("m")}"`;
    await doc.edit(
      [
        { path: "basin.highest_apron", value },
        { path: "basin.lowest_apron", value },
      ],
      "basin.highest_apron",
    );
    this.release();
  }

  /** A section of the workings, at its step of one method where it has one. */
  openWorking(section: number, method: string | null = null): void {
    this.finding_behind = null;
    this.working_section = section;
    this.working_method = method;
    this.panel = "working";
  }
  /** The step of the workings behind a finding, or the chapter that is nearest to it. */
  openStep(finding: Finding): void {
    this.working_section = 0;
    this.finding_behind = finding;
    this.panel = "working";
  }
  /** Back from the workings to the finding. */
  backToFinding(): void {
    this.finding_open = this.finding_behind?.id ?? null;
    this.finding_behind = null;
    this.panel = "findings";
  }
  /** The form at an input. `from` takes the focus back afterwards. */
  openField(key: string, name: string, element: HTMLElement): void {
    this.field_from = { name, element };
    this.field_section = key.slice(0, Math.max(key.lastIndexOf("."), 0));
    this.field = key;
  }
  backFromField(): void {
    const from = this.field_from;
    this.field_from = null;
    from?.element.focus();
  }
  openTable(name: string): void {
    this.table = name;
    this.panel = "tables";
  }
  pin(): void {
    if (!this.option) return;
    const label = `${this.option.name}, apron ${this.formatter.level(this.option.apron_level)}`;
    this.pins = [...this.pins, { label, option: this.option }].slice(-4);
  }
}

export const view = new View();
