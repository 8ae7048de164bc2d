// Where a finding belongs: its part of the section, and its part of the workings (1 governing discharge, 2 largest discharge,
// 3 size of the basin, 4 concrete).

const subject = (id: string): string => id.split(".")[0];

export function placeOf(id: string): "apron" | "chute" | "crest" | "tailwater" | "river" | "elements" | null {
  switch (subject(id)) {
    case "apron":
    case "basin":
    case "model": return "apron";
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

export function workingOf(id: string): number {
  switch (subject(id)) {
    case "apron":
    case "tailwater": return 1;
    case "chute":
    case "crest":
    case "toe":
    case "invert":
    case "jump":
    case "safety": return 2;
    default: return id === "basin.velocity" ? 2 : 3;
  }
}
