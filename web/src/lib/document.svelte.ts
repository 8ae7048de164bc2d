// The document that the page works on: text and tables, undo, and the way of an edit to the program's disk, check and design.
import { tick } from "svelte";
import { api, Refused, Unreachable } from "./api";
import { atSections, Inputs } from "./form";
import { History, keep, recall, type Version } from "./history";
import { among, withTypeInView } from "./results";
import type { Answer, Design, DocumentState, Edit, Problem } from "./types";

/** When what has changed until now is on the screen; a page in the background shows nothing and is not waited for. */
function painted(): Promise<void> {
  if (document.hidden) return tick();
  return new Promise((done) =>
    requestAnimationFrame(() => {
      const after = new MessageChannel();
      after.port1.onmessage = () => done();
      after.port2.postMessage(null);
    }),
  );
}

export class Document {
  open = $state(false);
  text = $state("");
  files = $state.raw<Record<string, string>>({});
  path = $state<string | null>(null);
  revision = $state(0);
  saved_revision = $state(0);
  recovered = $state(false);
  other_tabs = $state(0);
  moved_on = $state(false);
  connected = $state(true);
  problems = $state.raw<Problem[]>([]);
  inputs = $state.raw(new Inputs([]));
  design = $state.raw<Design | null>(null);
  /** The last design that had a result: stays in view while the text has problems. */
  good = $state.raw<Design | null>(null);
  round_trip_ms = $state(0);
  message = $state("");
  edit_problems = $state.raw<Record<string, Problem[]>>({});
  lines = $derived(this.text.split("\n"));
  /** How many documents have been opened here. */
  openings = $state(0);
  can_undo = $state(false);
  can_redo = $state(false);
  all_types = $state(false);

  /** The type of basin that the page shows: it is designed first, the others behind it. */
  type_in_view: () => string | null = () => null;

  private history = new History();
  private generation = 0;
  private queue: Promise<void> = Promise.resolve();
  private edits: Promise<void> = Promise.resolve();
  /** Changes and openings under way: until they are answered, the program's revision may be ahead of the page's own. */
  private under_way = 1; // the first opening

  get unsaved(): boolean {
    return this.revision !== this.saved_revision;
  }
  get name(): string {
    return this.path?.split("/").pop() ?? "New site";
  }

  /** Runs what asks the program; trouble becomes a message. Answers whether it went well. */
  async attempt(work: () => Promise<void>): Promise<boolean> {
    try {
      await work();
      this.connected = true;
      return true;
    } catch (trouble) {
      if (trouble instanceof Unreachable) this.connected = false;
      else this.message = trouble instanceof Error ? trouble.message : String(trouble);
      return false;
    }
  }

  /** Runs what opens a document. */
  async opening(work: () => Promise<DocumentState>): Promise<boolean> {
    ++this.under_way;
    const good = await this.attempt(async () => this.take(await work()));
    --this.under_way;
    return good;
  }
  /** The first document has been taken over. */
  started(): void {
    this.under_way = 0;
  }

  /** Shows the document as the program has it. `came_from`: the text here before it, which undo brings back. */
  async take(state: DocumentState, came_from?: Version): Promise<void> {
    ++this.openings;
    this.text = state.text;
    this.files = state.files;
    this.path = state.path;
    this.revision = state.revision;
    this.saved_revision = state.saved_revision;
    this.recovered = state.recovered;
    this.other_tabs = state.other_tabs;
    this.moved_on = false;
    this.edit_problems = {};
    this.good = null;
    if (came_from) this.history.push(came_from);
    else this.history = await recall(this.path ?? "new", this.text);
    this.noteHistory();
    // A new document has no section yet: the start screen comes first.
    this.open = state.path !== null || state.recovered || /^\s*\[/m.test(state.text);
    if (this.open) await this.evaluate();
  }

  private noteHistory(): void {
    this.can_undo = this.history.past.length > 0;
    this.can_redo = this.history.future.length > 0;
  }
  private get version(): Version {
    return { text: this.text, files: this.files };
  }

  /** A new text, or new tables: on the program's disk first, then checked and designed. */
  async change(text: string, files: Record<string, string> = {}): Promise<void> {
    if (text === this.text && Object.keys(files).length === 0) return;
    this.history.push(this.version);
    await this.put({ text, files: { ...this.files, ...files } });
  }
  async undo(): Promise<void> {
    const back = this.history.undo(this.version);
    if (back) await this.put(back);
  }
  async redo(): Promise<void> {
    const next = this.history.redo(this.version);
    if (next) await this.put(next);
  }

  /** Takes over a version, and starts to put it on the program's disk. */
  private adopt(next: Version): void {
    const changed: Record<string, string | null> = {};
    for (const [name, text] of Object.entries(next.files)) if (this.files[name] !== text) changed[name] = text;
    for (const name of Object.keys(this.files)) if (!(name in next.files)) changed[name] = null;
    this.text = next.text;
    this.files = next.files;
    this.noteHistory();
    ++this.under_way;
    // The screen comes first.
    this.queue = Promise.all([this.queue, painted()]).then(() => this.store(next.text, changed)).finally(() => --this.under_way);
  }
  private async put(next: Version): Promise<void> {
    const started = performance.now();
    const needs_tables = next.files !== this.files;
    this.adopt(next);
    // The program designs with the tables that it has on its disk.
    if (needs_tables) await this.queue;
    await this.evaluate(started);
  }

  private async store(text: string, changed: Record<string, string | null>): Promise<void> {
    await this.attempt(async () => {
      try {
        this.revision = (await api.change(this.revision, text, changed)).revision;
        this.recovered = false;
      } catch (trouble) {
        if (!(trouble instanceof Refused && trouble.status === 409)) throw trouble;
        this.moved_on = true;
        return;
      }
      await keep(this.path ?? "new", this.text, this.history);
    });
  }

  /** Checks and designs the text as it stands. An answer that a newer text has overtaken is dropped. */
  async evaluate(started = performance.now()): Promise<void> {
    const mine = ++this.generation;
    await this.attempt(async () => {
      const type = this.typeFirst();
      const answer = await this.ask(this.text, type);
      if (mine !== this.generation) return;
      await this.show(answer, started);
      if (type !== null) await this.showOthers(answer, mine);
    });
  }

  /** Edits of the text by path, one after another. What the program cannot do stands at `at`. */
  edit(edits: Edit[], at: string): Promise<void> {
    const started = performance.now();
    const opened = this.openings;
    ++this.under_way;
    this.edits = this.edits
      .then(() => this.attempt(async () => { if (opened === this.openings) await this.amend(edits, at, started); }))
      .then(() => void --this.under_way);
    return this.edits;
  }
  /** What was refused at `at` is typed no more. */
  forgive(at: string): void {
    const { [at]: _, ...others } = this.edit_problems;
    this.edit_problems = others;
  }
  /** The text with its edits and their consequence come in one answer. */
  private async amend(edits: Edit[], at: string, started: number): Promise<void> {
    const [before, opened] = [this.version, this.openings];
    const type = this.typeFirst();
    const answer = await this.ask(before.text, type, edits);
    if (opened !== this.openings) return;
    if (this.text !== before.text) return this.amend(edits, at, started); // an undo came between
    this.forgive(at);
    if (answer.refused) this.edit_problems = { ...this.edit_problems, [at]: answer.refused };
    if (answer.text === undefined) return;
    if (answer.text !== before.text) {
      this.history.push(before);
      this.adopt({ text: answer.text, files: this.files });
    }
    const mine = ++this.generation;
    await this.show(answer, started);
    if (type !== null) void this.showOthers(answer, mine);
  }

  /** What was asked at `started` is answered: waits until it is on the screen, and notes how long that took. */
  async shown(started: number): Promise<void> {
    await painted();
    this.round_trip_ms = performance.now() - started;
  }

  /** The type that is answered for first: the one in view, where there is one. */
  private typeFirst(): string | null {
    return this.good?.result ? this.type_in_view() : null;
  }
  /** The consequence of the text, or of edits of it: for one type, or for all. */
  private ask(text: string, type: string | null, edits?: Edit[]): Promise<Answer> {
    return api.design(text, {}, { edits, form: true, profiles: true, type, all_types: this.all_types });
  }
  /** Shows an answer. A design comes first; the form, which holds what was typed anyway, follows when it is on the screen. */
  private async show(answer: Answer, started: number): Promise<void> {
    const mine = this.generation;
    const { problems, inputs, ...design } = answer;
    const before = this.good?.result;
    this.problems = atSections(problems);
    this.design = { ...design, result: design.result && before ? among(before, design.result) : design.result };
    if (design.result) {
      this.good = this.design;
      await this.shown(started);
    }
    if (mine === this.generation) this.inputs = this.inputs.renewed(inputs ?? []);
    if (!design.result) await this.shown(started);
  }
  /** After the type in view, which `first` is for, the others. */
  private async showOthers(first: Answer, mine: number): Promise<void> {
    if (!first.result || mine !== this.generation) return;
    await this.attempt(async () => {
      const whole = await api.design(this.text, {}, { profiles: true, all_types: this.all_types });
      if (mine !== this.generation) return;
      this.design = { ...whole, engine_ms: first.engine_ms, result: whole.result && withTypeInView(whole.result, first.result) };
      if (whole.result) this.good = this.design;
    });
  }

  async save(path: string | null, overwrite = false): Promise<"saved" | "changed_on_disk" | "failed"> {
    let outcome: "saved" | "changed_on_disk" | "failed" = "failed";
    await this.attempt(async () => {
      try {
        await this.edits;
        await this.queue;
        const saved = await api.save(path, overwrite);
        this.path = saved.path;
        this.saved_revision = saved.saved_revision;
        this.message = `Saved to ${saved.path}`;
        outcome = "saved";
      } catch (trouble) {
        if (!(trouble instanceof Refused && trouble.status === 409)) throw trouble;
        this.message = trouble.message;
        outcome = "changed_on_disk";
      }
    });
    return outcome;
  }

  /** After a conflict: the other tab's text, with the one from here to be had by undo. */
  async giveWay(): Promise<void> {
    await this.attempt(async () => this.take(await api.document(), this.version));
  }

  async beat(): Promise<void> {
    await this.attempt(async () => {
      const was = this.connected;
      const answer = await api.beat();
      this.other_tabs = answer.other_tabs;
      if (answer.revision > this.revision && this.under_way === 0 && !this.moved_on) await this.follow();
      if (!was) await this.queue.then(() => this.evaluate());
    });
  }
  /** Another tab has changed the document: its text is shown here too, unless this tab has changes of its own under way. */
  private async follow(): Promise<void> {
    const state = await api.document();
    if (state.revision <= this.revision || this.under_way > 0) return;
    await this.take(state, this.version);
    this.message = "Another tab changed the document; its text is shown here now.";
  }
}

export const doc = new Document();
