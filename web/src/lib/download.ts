// Files that leave the page for the user's disk.
import { api, type OutputFile } from "./api";

function give(file: OutputFile): void {
  const address = URL.createObjectURL(new Blob([file.text], { type: file.media }));
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name.split("/").pop() ?? file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export async function report(text: string): Promise<void> {
  (await api.report(text, {})).files.forEach(give);
}

/** Figures alone: the drawings among the files of the design. */
export async function figures(text: string): Promise<void> {
  (await api.package(text, {})).files.filter((file) => file.name.endsWith(".svg")).forEach(give);
}
