// What of the design is in view: the type, the discharge, the tailwater case, a basin held by hand, pinned designs.
import { api } from "./api";
import { doc } from "./document.svelte";
import { Formatter } from "./format";
import { Interpolator } from "./interpolate";
import type { Design, Edit, Finding, Option, Result, Schema, Tailwater, Units } from "./types";

export type Panel = "findings" | "working" | "compare" | "text" | "tables";
/** What of the basin is held by hand, m; the rest is the engine's. */
export interface Held {
  apron_level: number | null;
  length: number | null;
}
const nothing_held: Held = { apron_level: null, length: null };
export interface Pin {
  label: string;
  option: Option;
}

class View {
  constructor() {
    doc.type_in_view = () => this.option?.type ?? null;
  }
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
  /** Path of the input that the form is to show, "crest.level", and what its focus goes back to: a selector, because workings
      are replaced by each answer. */
  field = $state<string | null>(null);
  /** The section of that input: its fields stand in the form although the file does not have it yet. */
  field_section = $state("");
  field_from = $state.raw<{ name: string; selector: string } | null>(null);
  table = $state<string | null>(null);
  line = $state<number | null>(null);
  pins = $state.raw<Pin[]>([]);
  hand = $state.raw<Held>(nothing_held);
  held = $state.raw<Design | null>(null);
  /** Why the newest place asked for cannot be built; the section still shows the one before. */
  cannot = $state("");

  formatter = $derived(new Formatter(this.units, doc.good?.units ?? doc.design?.units ?? "SI"));
  result = $derived<Result | null>(this.held?.result ?? doc.good?.result ?? null);
  option = $derived<Option | null>(this.pick(this.result));
  is_held = $derived(this.hand.apron_level !== null || this.hand.length !== null);
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
  private held_on = ""; // the text that the basin is held on
  /** Holds the apron or the end of the basin while it is moved: one question at a time, the newest place wins. */
  async hold(change: Partial<Held>): Promise<void> {
    const centimetres = (value: number | null) => (value === null ? null : Math.round(value * 100) / 100);
    const { apron_level, length } = { ...this.hand, ...change };
    this.hand = { apron_level: centimetres(apron_level), length: centimetres(length) };
    this.held_on = doc.text;
    if (this.asking) return;
    this.asking = true;
    await doc.attempt(async () => {
      let asked: Held | null = null;
      while (this.is_held && this.hand !== asked) {
        asked = this.hand;
        const [started, mine, text] = [performance.now(), this.holds, doc.text];
        const answer = await api.design(text, {}, { type: this.option?.type, ...asked, profiles: true });
        if (mine !== this.holds || text !== doc.text) continue;
        this.cannot = answer.result?.options.find((o) => !o.sized)?.statement ?? answer.reason ?? "";
        if (answer.result && !this.cannot) this.held = answer;
        await doc.shown(started);
      }
    });
    this.asking = false;
  }
  /** Back to what the site asks for. */
  release(): void {
    ++this.holds;
    this.hand = nothing_held;
    this.held = null;
    this.cannot = "";
  }
  /** A new design of the site has come: what was held on another text is given back. */
  designed(): void {
    if (this.is_held && this.held_on !== doc.text) this.release();
  }
  /** What is held becomes the site's: both limits of the apron stand at its level, the length is given. */
  async keep(): Promise<void> {
    if (this.cannot) return;
    const { apron_level, length } = this.hand;
    const typed = (metres: number) => `"${this.formatter.shown(metres, "m").toFixed(2)} ${this.formatter.label("m")}"`;
    const edits: Edit[] = [];
    if (apron_level !== null)
      for (const path of ["basin.highest_apron", "basin.lowest_apron"]) edits.push({ path, value: typed(apron_level) });
    if (length !== null) edits.push({ path: "basin.length", value: typed(length) });
    if (edits.length === 0) return;
    if (await doc.edit(edits, apron_level !== null ? "basin.highest_apron" : "basin.length")) this.release();
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
  /** The form at an input. What `selector` finds takes the focus back afterwards. */
  openField(key: string, name: string, selector: string): void {
    this.field_from = { name, selector };
    this.field_section = key.slice(0, Math.max(key.lastIndexOf("."), 0));
    this.field = key;
  }
  backFromField(): void {
    const from = this.field_from;
    this.field_from = null;
    if (from) document.querySelector<HTMLElement>(from.selector)?.focus();
  }
  /** Escape takes back one thing: in the form the way to the field first, elsewhere the basin held. */
  escape(in_form: boolean): void {
    if (this.is_held && !(in_form && this.field_from)) this.release();
    else this.backFromField();
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
