// What is typed stays typed: under slow answers, in sections that the file lacks, and at a save.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, afterEach, beforeEach, test } from "node:test";
import { closeBrowser, noError, openSite, Server, until } from "./page.mjs";

let server;
beforeEach(() => (server = new Server()));
afterEach(() => server.remove());
after(closeBrowser);

/** Holds the program's answers back until it is called. */
async function heldBack(page) {
  let release;
  const gate = new Promise((resolve) => (release = resolve));
  await page.route("**/design", async (route) => {
    await gate;
    await route.continue();
  });
  return release;
}
const textHas = async (page, words) => {
  await page.getByRole("tab", { name: "Text" }).click();
  await until(page, (w) => document.querySelector(".editor textarea").value.includes(w), words);
};

test("what is typed while an answer is under way stays, in the same field and in the next", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const width = page.locator("#field-crest-net_width");
  const piers = page.locator("#field-crest-piers");
  const answer = await heldBack(page);
  await width.fill("35 m");
  await width.press("Enter");
  await width.fill("35.5 m");
  await width.press("Tab");
  await piers.fill("4");
  await piers.press("Enter");
  answer();
  await textHas(page, "piers = 4");
  assert.equal(await width.inputValue(), "35.5 m");
  assert.equal(await piers.inputValue(), "4");
  const text = await page.inputValue(".editor textarea");
  assert.match(text, /net_width = "35.5 m"/);
  await page.getByRole("button", { name: "Undo" }).click();
  await until(page, () => document.querySelector("#field-crest-piers").value === "2");
  await page.getByRole("button", { name: "Undo" }).click();
  await until(page, () => document.querySelector("#field-crest-net_width").value === "35 m");
  noError(page);
});

test("the last of two values typed before the first answer stands, be it the one that stood there", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const piers = page.locator("#field-crest-piers");
  const answer = await heldBack(page);
  await piers.fill("4");
  await piers.press("Enter");
  await piers.fill("2");
  await piers.press("Enter");
  answer();
  await until(page, () => document.querySelector("footer").textContent.includes("revision 3"));
  await textHas(page, "piers = 2");
  assert.equal(await piers.inputValue(), "2");
  noError(page);
});

test("what was typed and taken back in the field is no edit, and undo still shows", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const piers = page.locator("#field-crest-piers");
  await piers.fill("4");
  await piers.press("Enter");
  await until(page, () => document.querySelector("footer").textContent.includes("revision 2"));
  await piers.press("End");
  await piers.press("7");
  await piers.press("Backspace");
  await piers.press("Tab");
  await page.getByRole("button", { name: "Undo" }).click();
  await until(page, () => document.querySelector("#field-crest-piers").value === "2");
  noError(page);
});

test("a table pasted while an answer is under way counts in the design, and is undone by itself", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const verdict = () => page.textContent(".verdict b");
  await page.getByRole("tab", { name: "Tables" }).click();
  const rows = await page.inputValue("#table-text");
  const raised = rows.split("\n").map((row) => row.split(",").map((cell, i) => (i > 0 && Number(cell) > 0 ? String(Number(cell) + 1) : cell)).join(",")).join("\n");
  const answer = await heldBack(page);
  await page.locator("#field-crest-piers").fill("3");
  await page.locator("#field-crest-piers").press("Enter");
  await page.locator("#table-text").fill(raised);
  await page.locator("#table-text").blur();
  answer();
  await until(page, () => document.querySelector("footer").textContent.includes("revision 3"));
  await page.waitForTimeout(600);
  const shown = await verdict();
  await page.reload();
  await page.waitForSelector(".section-view .surface");
  assert.equal(await verdict(), shown, "what is shown is the design of the text and the table");
  await page.getByRole("button", { name: "Undo" }).click();
  await until(page, () => document.querySelector("#field-crest-piers").value === "2");
  await page.getByRole("tab", { name: "Tables" }).click();
  assert.equal(await page.inputValue("#table-text"), raised, "the table stays: the edit was the last");
  noError(page);
});

test("what a program that has ended did not take stays in its field, with what to do", async () => {
  const page = await openSite(server, "01-gravity-dam");
  await server.kill();
  await page.locator("#field-crest-net_width").fill("37.5 m");
  await page.locator("#field-crest-net_width").press("Enter");
  await page.locator("#field-crest-net_width-wrong", { hasText: "press Enter to try again" }).waitFor();
  await page.locator("#field-crest-net_width").press("Tab");
  assert.equal(await page.inputValue("#field-crest-net_width"), "37.5 m");
  noError(page, ["ERR_CONNECTION_REFUSED", "Failed to load resource"]);
});

test("a value half typed is not taken away by the answer to the one before it", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const width = page.locator("#field-crest-net_width");
  const answer = await heldBack(page);
  await width.fill("35 m");
  await width.press("Enter");
  await width.fill("3");
  answer();
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  await until(page, () => /round trip [1-9]/.test(document.querySelector("footer").textContent));
  assert.equal(await width.inputValue(), "3");
  assert.equal(await page.evaluate(() => document.activeElement.id), "field-crest-net_width");
  noError(page);
});

for (const path of ["walls", "slab", "laboratory"])
  test(`the first value of [${path}], which the file lacks, makes it, and the focus stays in the field`, () => firstValue(path));
async function firstValue(path) {
  const page = await openSite(server, "01-gravity-dam");
  const section = page.locator(`nav.rail details[data-path="${path}"]`);
  await section.locator("> summary").click();
  const optional = section.locator("> .form-body > details.rest > summary");
  if (!(await section.locator("input:visible").count())) await optional.click();
  const field = section.locator("input:visible").first();
  const id = await field.getAttribute("id");
  const key = id.slice(`field-${path}-`.length);
  const example = (await section.locator(`#${id}-help .hint`).textContent()).match(/for example ([^·]*?)(?: ·|\.$)/)[1];
  await field.fill(example);
  await field.press("Enter");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  await until(page, (wanted) => document.activeElement.id === wanted, id);
  await textHas(page, `[${path}]`);
  assert.match(await page.inputValue(".editor textarea"), new RegExp(`\\[${path}\\]\\s+${key} = `));
  noError(page);
}

test("Ctrl+S takes the value that is being typed", async () => {
  const site = server.copyOf("01-gravity-dam");
  const page = await openSite(server, site);
  await page.locator("#field-crest-piers").fill("5");
  await page.locator("#field-crest-piers").press("Control+s");
  await until(page, () => document.querySelector(".toast")?.textContent.includes("Saved"));
  assert.match(readFileSync(site, "utf8"), /piers = 5/);
  assert.equal(await page.evaluate(() => document.activeElement.id), "field-crest-piers");

  await page.getByRole("tab", { name: "Text" }).click();
  const text = await page.inputValue(".editor textarea");
  await page.locator(".editor textarea").fill(text.replace("piers = 5", "piers = 6"));
  await page.locator(".editor textarea").press("Control+s");
  await until(page, () => document.querySelector("footer").textContent.includes("revision 3 (saved)"));
  assert.equal(await page.inputValue("#field-crest-piers"), "6");
  assert.match(readFileSync(site, "utf8"), /piers = 6/);
  noError(page);
});

test("an edit is answered for the type in view first, and for all types behind it", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const asked = [];
  page.on("request", (request) => request.url().endsWith("/design") && asked.push(request.postDataJSON()));
  await page.getByRole("tab", { name: "Compare" }).click();
  const numbers = () => page.$$eval(".panel-body table tbody tr", (rows) => rows.map((row) => [...row.querySelectorAll("td")].map((cell) => cell.textContent)));
  const before = await numbers();
  await page.locator("#field-crest-net_width").fill("30 m");
  await page.locator("#field-crest-net_width").press("Enter");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  for (let i = 0; i < 100 && asked.length < 2; ++i) await page.waitForTimeout(30);
  assert.deepEqual(asked.map((one) => Boolean(one.type)), [true, false]);
  assert.equal(asked[0].edits.length, 1);
  const columns = before[0].length;
  assert.ok(columns >= 3);
  // Every type has moved: no column is left from before.
  const moved = async () => {
    const now = await numbers();
    return Array.from({ length: columns }, (_, i) => now.some((row, r) => row[i] !== before[r]?.[i])).every(Boolean);
  };
  for (let i = 0; i < 100 && !(await moved()); ++i) await page.waitForTimeout(30);
  assert.ok(await moved());
  noError(page);
});
