// Where a finding belongs: its part of the section and, where it only compares and so has no step of its own, the part of the
// workings that it is nearest to (1 governing discharge, 2 largest discharge, 3 size of the basin, 4 concrete, 5 limits of use
// and checks, 6 safety).

const subject = (id: string): string => id.split(".")[0];

export function placeOf(id: string): "apron" | "chute" | "crest" | "tailwater" | "river" | "elements" | null {
  switch (subject(id)) {
    case "apron":
    case "basin":
    case "slab":
    case "foundation":
    case "model": return "apron";
    case "elements": return "elements";
    case "chute":
    case "toe":
    case "invert": return "chute";
    case "crest":
    case "gates":
    case "reservoir": return "crest";
    case "tailwater":
    case "jump":
    case "safety": return "tailwater";
    case "river": return "river";
    default: return subject(id).startsWith("type_") ? "elements" : null;
  }
}

/** Findings about the data and the limits of use; what else is said of river and model is about safety. */
const of_limits = ["river.rating_range", "river.critical_sections", "river.profile_start", "river.section_spacing", "river.degradation_estimate", "model.required"];

export function workingOf(id: string): number {
  if (of_limits.includes(id)) return 5;
  switch (subject(id)) {
    case "apron":
    case "tailwater": return 1;
    case "chute":
    case "crest":
    case "toe":
    case "invert":
    case "jump":
    case "safety": return 2;
    case "slab":
    case "walls":
    case "foundation":
    case "elements":
    case "river":
    case "model":
    case "operation": return 6;
    case "flood":
    case "gates":
    case "reservoir": return 5;
    default: return 3;
  }
}
