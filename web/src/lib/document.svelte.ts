// The document that the page works on: text and tables, undo, and the way of an edit to the program's disk, check and design.
import { api, Refused, Unreachable } from "./api";
import { atSections, Inputs } from "./form";
import { History, keep, recall, type Version } from "./history";
import { among, withTypeInView } from "./results";
import type { Answer, Design, DocumentState, Edit, Problem } from "./types";

/** When what has changed until now is on the screen. A page in the background is not drawn, and not waited for long. */
function painted(): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, 100);
    requestAnimationFrame(() => {
      const after = new MessageChannel();
      after.port1.onmessage = () => done();
      after.port2.postMessage(null);
    });
  });
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
  private edits: Promise<unknown> = Promise.resolve();
  /** The last text did not reach the program's disk. */
  private behind = false;
  /** Tables that the program's disk does not have yet; null: taken away here, still there. */
  private unstored: Record<string, string | null> = {};
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
    await this.settled();
    const good = await this.attempt(async () => this.take(await work()));
    --this.under_way;
    return good;
  }
  /** What was typed into the document has its answer, and is on the program's disk. */
  private async settled(): Promise<void> {
    await this.edits;
    await this.queue;
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
    this.unstored = {};
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

  /** A new text, or new tables. */
  async change(text: string, files: Record<string, string> = {}): Promise<void> {
    if (text === this.text && Object.keys(files).length === 0) return;
    this.history.push(this.version);
    await this.put({ text, files: Object.keys(files).length > 0 ? { ...this.files, ...files } : this.files });
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
    for (const [name, text] of Object.entries(next.files)) if (this.files[name] !== text) this.unstored[name] = text;
    for (const name of Object.keys(this.files)) if (!(name in next.files)) this.unstored[name] = null;
    this.text = next.text;
    this.files = next.files;
    this.noteHistory();
    ++this.under_way;
    // The screen comes first.
    this.queue = Promise.all([this.queue, painted()]).then(() => this.store(next.text)).finally(() => --this.under_way);
  }
  private put(next: Version): Promise<void> {
    this.adopt(next);
    return this.evaluate();
  }

  private async store(text: string): Promise<void> {
    const tables = { ...this.unstored };
    this.behind = !(await this.attempt(async () => {
      try {
        this.revision = (await api.change(this.revision, text, tables)).revision;
        this.recovered = false;
        for (const [name, table] of Object.entries(tables)) if (this.unstored[name] === table) delete this.unstored[name];
      } catch (trouble) {
        if (!(trouble instanceof Refused && trouble.status === 409)) throw trouble;
        this.moved_on = true;
        return;
      }
      await keep(this.path ?? "new", this.text, this.history);
    }));
  }

  /** Checks and designs the text as it stands. An answer that a newer text has overtaken is dropped. */
  async evaluate(): Promise<void> {
    const started = performance.now();
    const mine = ++this.generation;
    await this.attempt(async () => {
      const type = this.typeFirst();
      const text = this.text;
      const answer = await this.ask(text, type);
      if (mine !== this.generation) return;
      await this.show(answer, started);
      if (type !== null) await this.showOthers(answer, text);
    });
  }

  /** Edits of the text by path, one after another. What the program cannot do stands at `at`. Answers whether the text has them. */
  edit(edits: Edit[], at: string): Promise<boolean> {
    const started = performance.now();
    const opened = this.openings;
    ++this.under_way;
    const done = this.edits.then(async () => {
      let taken = false;
      const answered = await this.attempt(async () => {
        if (opened === this.openings) taken = await this.amend(edits, at, started);
      });
      if (!answered) this.refuse(at, [{ file: "", line: 0, column: 0, key: at, message: "the program has not taken it", hint: "press Enter to try again" }]);
      --this.under_way;
      return taken;
    });
    this.edits = done;
    return done;
  }
  private refuse(at: string, problems: Problem[]): void {
    this.edit_problems = { ...this.edit_problems, [at]: problems };
  }
  /** What was refused at `at` is typed no more. */
  forgive(at: string): void {
    const { [at]: _, ...others } = this.edit_problems;
    this.edit_problems = others;
  }
  /** The text with its edits and their consequence come in one answer. */
  private async amend(edits: Edit[], at: string, started: number): Promise<boolean> {
    const [before, opened] = [this.version, this.openings];
    const type = this.typeFirst();
    const answer = await this.ask(before.text, type, edits);
    if (opened !== this.openings) return false;
    // An undo or a table came between.
    if (this.text !== before.text || this.files !== before.files) return this.amend(edits, at, started);
    this.forgive(at);
    if (answer.refused) this.refuse(at, answer.refused);
    const text = answer.text;
    if (text === undefined) return false;
    if (text !== before.text) {
      this.history.push(before);
      this.adopt({ text, files: this.files });
    }
    ++this.generation;
    await this.show(answer, started);
    if (type !== null) void this.attempt(() => this.showOthers(answer, text));
    return true;
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
    return api.design(text, this.unstored, { edits, form: true, profiles: true, type, all_types: this.all_types });
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
  /** After the type in view, which `first` is for, the others of the same text; dropped where a newer design is shown. */
  private async showOthers(first: Answer, text: string): Promise<void> {
    const shown = this.good;
    if (!first.result || !shown?.result?.options.some((option) => option === first.result?.options[0])) return;
    const whole = await api.design(text, this.unstored, { profiles: true, all_types: this.all_types });
    if (this.good !== shown || !whole.result) return;
    this.good = { ...whole, engine_ms: first.engine_ms, result: withTypeInView(whole.result, first.result) };
    if (this.design === shown) this.design = this.good;
  }

  async save(path: string | null, overwrite = false): Promise<"saved" | "changed_on_disk" | "failed"> {
    let outcome: "saved" | "changed_on_disk" | "failed" = "failed";
    await this.attempt(async () => {
      try {
        await this.settled();
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
    await this.settled();
    await this.attempt(async () => this.take(await api.document(), this.version));
  }

  async beat(): Promise<void> {
    await this.attempt(async () => {
      const was = this.connected;
      const answer = await api.beat();
      this.other_tabs = answer.other_tabs;
      if (answer.revision > this.revision && this.under_way === 0 && !this.moved_on) await this.follow();
      if (this.behind) this.adopt(this.version);
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
