// What the program answers, as far as the page reads it. Numbers of a design are SI; their unit goes by their meaning.

export type Tailwater = "low" | "expected" | "high";
export const tailwaters: Tailwater[] = ["low", "expected", "high"];

export interface CaseResult {
  discharge: number;
  tailwater_case: Tailwater;
  gate_pattern: string | null;
  unit_discharge: number;
  energy_head: number;
  y1: number;
  V1: number;
  F1: number;
  y2: number;
  energy_loss: number;
  jump_length: number;
  roller_length: number;
  sweep_out_depth: number;
  largest_depth: number;
  required_depth: number;
  available_depth: number;
  margin: number;
  jump: "on_apron" | "on_chute" | "past_sill" | "drowned";
  front_station: number;
  front_height: number;
  submergence: number;
}

export interface Finding {
  id: string;
  status: "ok" | "caution" | "fails";
  title: string;
  value: number | null;
  limit: number | null;
  sense: "at_least" | "at_most" | "note";
  unit: string;
  /** The value is a whole number: how many, or no (0) and yes (1). */
  is_count: boolean;
  source: string;
  place: string;
  provenance: string;
  /** Id of the method behind it, where there is one. */
  method: string | null;
  /** Key of the site file that it judges, where there is one. */
  key: string | null;
  text: string;
  advice: string;
  /** Who accepts it and why, as the site file says. */
  accepted: { by: string; reason: string } | null;
}

export interface Element {
  kind: string;
  name: string;
  count: number;
  height: number;
  width: number;
  spacing: number;
  profile: { x: number; z: number }[];
  rows: number;
  row_step: number | null;
  row_drop: number | null;
  remark: string;
}

/** Rows of bed station, bed level, surface station, surface level, energy level. */
export type ChuteRow = [number, number, number, number, number];

export interface MovingWater {
  crest: [number, number][];
  discharges: { discharge: number; chute: ChuteRow[]; jump: Record<Tailwater, number[]> }[];
}

export interface Governing {
  discharge: number | null;
  gate_pattern: string | null;
  tailwater_case: Tailwater | null;
  margin: number | null;
  tailwater_level: number | null;
  required_depth: number | null;
  available_depth: number | null;
  F1: number | null;
}

export interface Option {
  type: string;
  name: string;
  /** What destroys the energy: "level_jump", "sloping_jump", "roller", "blocks", "impact", "fall", "pool", "jet". */
  action: string;
  /** Surface of the floor: x from the toe, z above the apron level. */
  floor: { x: number; z: number }[];
  sized: boolean;
  applicable: boolean;
  statement: string;
  apron_level: number;
  width: number;
  length: number;
  /** What the type asks for; null where its form fixes the length. */
  required_length: number | null;
  wall_height: number;
  wall_top_level: number;
  end_sill_level: number;
  end_sill_height: number;
  freeboard: number;
  chute_end_station: number;
  governing: Governing;
  cases: CaseResult[];
  elements: Element[];
  findings: Finding[];
  quantities: Record<string, number | null>;
  water?: MovingWater;
}

export interface SiteCase {
  discharge: number;
  return_period: number | null;
  reservoir_level: number;
  crest_head: number;
  gate_pattern: string | null;
  gate_opening: number | null;
  origin: string;
  tailwater: Record<Tailwater, number>;
}

export interface Levels {
  crest: number;
  approach_floor: number;
  river_bed: number;
  ground: number | null;
  design_flood: number;
  check_flood: number;
}

export interface Result {
  cases: SiteCase[];
  options: Option[];
  chosen: string | null;
  choice_reason: string;
  all_requirements_met: boolean;
  levels: Levels;
  input: { project: string };
}

export interface Problem {
  file: string;
  line: number;
  column: number;
  message: string;
  hint: string;
  key: string;
}

export interface Input {
  section: string;
  key: string;
  typed: string;
  meaning: string;
  is_default: boolean;
  line: number;
}

export interface Design {
  units: System;
  reason: string | null;
  engine_ms: number;
  result: Result | null;
}

/** What the program answers to a text, or to edits of it. */
export interface Answer extends Design {
  problems: Problem[];
  /** The text after the edits. */
  text?: string;
  /** Why the text cannot take the edits: the answer holds nothing else. */
  refused?: Problem[];
  /** For the form, where it was asked for. */
  inputs?: Input[];
}

export interface DocumentState {
  path: string | null;
  text: string;
  files: Record<string, string>;
  revision: number;
  saved_revision: number;
  recovered: boolean;
  other_tabs: number;
}

export interface Key {
  section: string;
  name: string;
  title: string;
  help: string;
  kind: string;
  dimension: string | null;
  units: { si: string[]; us: string[] } | null;
  range: { si: Limits; us: Limits; excludes_lowest: boolean } | null;
  choices: string[];
  preset: string | null;
  preset_words: string | null;
  required: boolean;
  group: string | null;
  only_for: { key: string; words: string[]; reason: string } | null;
  example_si: string | null;
  example_us: string | null;
  is_file: boolean;
}

export interface Limits {
  lowest: number | null;
  highest: number | null;
  unit: string | null;
}

export interface Section {
  name: string;
  parent: string | null;
  title: string;
  help: string;
  is_list: boolean;
  required: boolean;
  all_or_nothing: boolean;
  group: string | null;
  only_for: Key["only_for"];
  keys: Key[];
}

export interface Schema {
  sections: Section[];
}

export interface Example {
  id: string;
  title: string;
  summary: string;
}

export type System = "SI" | "US";
export type Units = Record<System, Record<string, { factor: number; label: string }>>;

export type Edit = { path: string; value: string } | { path: string; remove: true } | { insert_table: string; value?: string };
