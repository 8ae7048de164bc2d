// Undo and redo without limit: the texts of the document, kept in the browser under the document's name.

export interface Version {
  text: string;
  files: Record<string, string>;
}

export class History {
  past: Version[] = [];
  future: Version[] = [];

  push(version: Version): void {
    this.past.push(version);
    this.future = [];
  }
  undo(now: Version): Version | null {
    const back = this.past.pop();
    if (back) this.future.push(now);
    return back ?? null;
  }
  redo(now: Version): Version | null {
    const next = this.future.pop();
    if (next) this.past.push(now);
    return next ?? null;
  }
}

const store = "histories";

function database(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("quell", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(store);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Kept under the document's name, with the text that it belongs to: for another text it means nothing. */
export async function keep(name: string, text: string, history: History): Promise<void> {
  try {
    const db = await database();
    const value = { text, past: structuredClone(history.past), future: structuredClone(history.future) };
    db.transaction(store, "readwrite").objectStore(store).put(value, name);
    db.close();
  } catch {
    // A browser that keeps nothing (a private window) still undoes within the page.
  }
}

export async function recall(name: string, text: string): Promise<History> {
  const history = new History();
  try {
    const db = await database();
    const kept = await new Promise<{ text: string; past: Version[]; future: Version[] } | undefined>((resolve, reject) => {
      const request = db.transaction(store).objectStore(store).get(name);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    db.close();
    if (kept?.text === text) {
      history.past = kept.past;
      history.future = kept.future;
    }
  } catch {
    // As above.
  }
  return history;
}
