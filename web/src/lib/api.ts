// The program's answers over local HTTP. Every address is relative to the page's own, which holds the token.
import { unpacked, type Packed } from "./results";
import type { Answer, DocumentState, Edit, Example, Schema, Units } from "./types";

/** The program answered, and said no. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    message: string,
    readonly body: unknown,
  ) {
    super(message);
  }
}

/** The program did not answer: it has ended, or the machine sleeps. */
export class Unreachable extends Error {}

export const tab = (() => {
  const kept = sessionStorage.getItem("tab") ?? crypto.randomUUID();
  sessionStorage.setItem("tab", kept);
  return kept;
})();

async function ask<T>(name: string, body?: unknown): Promise<T> {
  let answer: Response;
  try {
    answer = await fetch(
      name,
      body === undefined
        ? {}
        : { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) },
    );
  } catch {
    throw new Unreachable("The program does not answer.");
  }
  const reply = await answer.json().catch(() => ({}));
  if (!answer.ok) throw new Refused(answer.status, reply.error ?? `the program answered ${answer.status}`, reply);
  return reply as T;
}

type Files = Record<string, string | null>;
/** Of a design: of the text after `edits`; of one type, or of all there are; with the basin held; with what moves and what the
    form needs. */
export interface Question {
  edits?: Edit[];
  form?: boolean;
  all_types?: boolean;
  type?: string | null;
  apron_level?: number | null;
  length?: number | null;
  profiles?: boolean;
}
export interface OutputFile {
  name: string;
  media: string;
  text: string;
}

export const api = {
  schema: () => ask<Schema>("schema"),
  units: () => ask<Units>("units"),
  examples: () => ask<Example[]>("examples"),
  document: () => ask<DocumentState>(`document?tab=${tab}`),
  open: (what: { example: string } | { path: string } | { new: true } | { recover: boolean }) =>
    ask<DocumentState>("document/open", { ...what, tab }),
  change: (revision: number, text: string, files: Files) =>
    ask<{ revision: number }>("document", { revision, text, files, tab }),
  save: (path: string | null, overwrite = false) =>
    ask<{ path: string; saved_revision: number }>("document/save", path === null ? { overwrite } : { path, overwrite }),
  design: async (text: string, files: Files, more: Question) => unpacked(await ask<Packed<Answer>>("design", { text, files, ...more })),
  working: (text: string, files: Files, type: string, held: { apron_level: number | null; length: number | null }) =>
    ask<{ html: string; sections: string[]; steps: Record<string, string> }>("working", { text, files, type, section: null, ...held }),
  report: (text: string, files: Files) => ask<{ files: OutputFile[] }>("report", { text, files }),
  package: (text: string, files: Files) => ask<{ files: OutputFile[] }>("package", { text, files }),
  beat: (closed = false) => ask<{ other_tabs: number; revision: number }>("tab", closed ? { id: tab, closed } : { id: tab }),
};
