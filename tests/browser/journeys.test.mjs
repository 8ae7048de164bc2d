// What an engineer does with the page, from the first look to a saved site.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, afterEach, beforeEach, test } from "node:test";
import { closeBrowser, drawn, noError, noViolation, numberIn, openPage, openSite, Server, slideTo, until } from "./page.mjs";

let server;
beforeEach(() => (server = new Server()));
afterEach(() => server.remove());
after(closeBrowser);

const margin = async (page) => numberIn(await page.textContent(".verdict b"));
const surface = (page) => page.getAttribute(".section-view .surface", "d");
const shownMarginChanges = (page, from) => until(page, (old) => document.querySelector(".verdict b")?.textContent !== old, from);

test("section, slider, margin and the top findings stand in 1280 x 720 without scrolling", async () => {
  const page = await openSite(server, "01-gravity-dam");
  for (const part of [".section-view svg", ".sweep", ".plot svg", ".finding", ".safety", ".caution-line"]) {
    const box = await page.locator(part).first().boundingBox();
    assert.ok(box && box.y >= 0 && box.y + box.height <= 720 && box.x >= 0 && box.x + box.width <= 1280, `${part} ${JSON.stringify(box)}`);
  }
  const order = await page.$$eval(".finding", (list) => list.map((one) => ["fails", "caution", "ok"].findIndex((s) => one.classList.contains(s))));
  assert.deepEqual(order, [...order].sort());
  noError(page);
});

test("the water follows the discharge, and the tailwater case, without a request", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const asked = [];
  page.on("request", (request) => request.url().endsWith("/design") && asked.push(request.url()));
  const before = await surface(page);
  await slideTo(page, 600);
  assert.notEqual(await surface(page), before);
  assert.equal(numberIn((await page.textContent("output.big")).replace(/m³.*/, "")) > 590, true);
  const low = await margin(page);
  await page.getByRole("radio", { name: "high" }).check({ force: true });
  assert.ok((await margin(page)) > low, "the high tailwater leaves more margin than the low one");
  await page.getByRole("button", { name: "governing", exact: true }).click();
  await page.getByRole("radio", { name: "low" }).check({ force: true });
  assert.ok(Math.abs(await margin(page)) <= 0.02, "at the governing discharge the margin is the smallest, about nothing");
  assert.deepEqual(asked, []);
  noError(page);
});

test("the sweep keeps sixty frames a second", async () => {
  const page = await openSite(server, "01-gravity-dam");
  // The work of a frame, not the frame rate of a machine without a display.
  const spent = await page.evaluate(async () => {
    const input = document.querySelector(".slide input");
    const times = [];
    for (let i = 0; i < 60; ++i) {
      const start = performance.now();
      input.value = String(100 + 20 * i);
      input.dispatchEvent(new Event("input", { bubbles: true }));
      await Promise.resolve();
      document.querySelector(".section-view svg").getBoundingClientRect();
      times.push(performance.now() - start);
      await new Promise((r) => setTimeout(r, 0));
    }
    return times.sort((a, b) => a - b)[30];
  });
  console.log(`median work of a frame: ${spent.toFixed(2)} ms`);
  assert.ok(spent < 16, `${spent} ms`);
  noError(page);
});

test("the apron is moved, given back, and kept in the file", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const first = await page.textContent(".verdict b");
  const handle = page.getByRole("slider", { name: "Apron level" });
  const box = await handle.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y - 10, { steps: 6 });
  await shownMarginChanges(page, first);
  await page.mouse.up();
  await page.waitForSelector(".finding.fails");
  assert.ok((await margin(page)) < 0, "a higher apron has less water over it");
  await page.keyboard.press("Escape");
  await until(page, (old) => document.querySelector(".verdict b")?.textContent === old, first);
  await handle.focus();
  await page.keyboard.press("PageDown");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await page.waitForSelector(".ask", { state: "detached" });
  await page.getByRole("tab", { name: "Text" }).click();
  const text = await page.inputValue(".editor textarea");
  assert.match(text, /highest_apron = "92\.94 m"/);
  assert.match(text, /lowest_apron = "92\.94 m"/);
  assert.match(text, /# sound rock/, "comments stay");
  noError(page);
});

test("the end of the basin is drawn in, judged, and kept in the file", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const handle = page.getByRole("slider", { name: "Length of the basin" });
  const asked = Number(await handle.getAttribute("aria-valuenow"));
  const box = await handle.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x - 20, box.y + box.height / 2, { steps: 6 });
  await page.waitForSelector(".finding.fails");
  await page.mouse.up();
  assert.match(await page.textContent(".findings"), /Length of the basin against/);
  assert.ok(Number(await handle.getAttribute("aria-valuenow")) < asked);
  // So short that piers and sill meet: the last place that works stays in view, and the page says why.
  await handle.focus();
  for (let i = 0; i < 60; ++i) await page.keyboard.press("PageDown");
  await until(page, () => /run into each other/.test(document.body.textContent));
  await page.waitForSelector(".section-view .surface");
  await until(page, () => /run into each other/.test(document.querySelector(".ask [role=status]").textContent));
  assert.ok(await page.getByRole("button", { name: "Keep", exact: true }).isDisabled(), "what cannot be built is not kept");
  await page.keyboard.press("Enter");
  await page.waitForTimeout(300);
  assert.equal(await page.locator(".ask").count(), 1);
  await page.keyboard.press("Escape");
  await page.waitForSelector(".ask", { state: "detached" });
  assert.ok(!/run into each other/.test(await page.textContent("body")), "the reason goes with it");
  await until(page, (old) => Number(document.querySelector(".grip-handle.along").getAttribute("aria-valuenow")) === old, asked);
  await handle.focus();
  await page.keyboard.press("PageUp");
  await page.keyboard.press("Enter");
  await page.waitForSelector(".ask", { state: "detached" });
  await page.getByRole("tab", { name: "Text" }).click();
  const kept = (await page.inputValue(".editor textarea")).match(/^length = "([0-9.]+) m"/m);
  assert.ok(kept && Math.abs(Number(kept[1]) - asked - 1) < 0.011, `${kept?.[0]} after ${asked}`);
  noError(page);
});

test("an edit designs anew; a wrong one stands at its field; undo brings all back", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const field = page.locator("#field-crest-net_width");
  const wrong = async (typed) => {
    await field.fill(typed);
    await field.press("Enter");
    await page.waitForSelector("#field-crest-net_width-wrong");
  };
  const before = await page.textContent(".verdict b");
  await field.fill("30 m");
  await field.press("Enter");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  await shownMarginChanges(page, before);
  await wrong("30 q");
  assert.match(await page.textContent("#field-crest-net_width-wrong"), /'q' is not a unit/);
  assert.equal(await field.inputValue(), "30 q");
  await page.waitForSelector(".section-view .surface");
  await page.getByRole("button", { name: /Undo/ }).click();
  await until(page, () => document.querySelector("#field-crest-net_width")?.value === "30 m");
  await page.getByRole("button", { name: /Undo/ }).click();
  await until(page, (old) => document.querySelector(".verdict b")?.textContent === old, before);
  await page.getByRole("button", { name: /Redo/ }).click();
  await until(page, () => document.querySelector("#field-crest-net_width")?.value === "30 m");
  noError(page);
});

test("keys stand only where they have a meaning, and groups are a choice", async () => {
  const page = await openSite(server, "01-gravity-dam");
  assert.equal(await page.locator("#field-crest-crest_length").count(), 0);
  await page.locator("#field-crest-shape").selectOption("broad");
  await page.waitForSelector("#field-crest-crest_length");
  assert.equal(await page.locator("#field-crest-pier_nose").count(), 0);
  await page.locator("nav.rail > details > summary", { hasText: "Discharges" }).click({ trial: true });
  assert.ok((await page.locator("nav.rail .either").count()) > 0);
  noError(page);
});

test("a finding opens, lights its place and leads to its working with equations", async () => {
  const page = await openSite(server, "05-gated-dam");
  await page.locator(".finding-head", { hasText: "drowns the jump" }).click();
  await page.waitForSelector(".water.lit");
  await page.getByRole("button", { name: "Show the working" }).click();
  await page.waitForSelector(".working math");
  assert.ok((await page.locator(".working .step").count()) > 5);
  noError(page);
});

test("designs are compared, pinned, and all types can be asked for", async () => {
  const page = await openSite(server, "01-gravity-dam");
  await page.getByRole("tab", { name: "Compare" }).click();
  const columns = () => page.locator(".compare thead th").count();
  const site = await columns();
  assert.equal(site, 4);
  await page.getByRole("button", { name: "Pin this design" }).click();
  assert.equal(await columns(), site + 1);
  assert.ok((await page.locator(".compare .best").count()) > 0);
  noError(page);
});

test("a table is pasted from a spreadsheet and read", async () => {
  const page = await openSite(server, "01-gravity-dam");
  await page.getByRole("tab", { name: "Tables" }).click();
  const before = await page.textContent(".verdict b");
  const rows = await page.inputValue("#table-text");
  const raised = rows.split("\n").map((row) => row.split(",").map((cell, i) => (i > 0 && Number(cell) > 0 ? String(Number(cell) + 1) : cell)).join("\t")).join("\n");
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.setData("text/plain", text);
    document.querySelector("#table-text").dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
  }, raised);
  await shownMarginChanges(page, before);
  assert.ok((await page.locator(".csv td").count()) > 8);
  noError(page);
});

test("saved to its file; the report comes as a download", async () => {
  const site = server.copyOf("01-gravity-dam");
  const page = await openSite(server, site);
  await page.locator("#field-crest-piers").fill("3");
  await page.locator("#field-crest-piers").press("Enter");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  await page.keyboard.press("Control+s");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("✓"));
  assert.match(readFileSync(site, "utf8"), /piers = 3/);
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Report" }).click()]);
  assert.match(readFileSync(await download.path(), "utf8"), /^<!DOCTYPE html>/i);
  noError(page);
});

test("a killed server is told, and the work is found again", async () => {
  const site = server.copyOf("01-gravity-dam");
  const page = await openSite(server, site);
  await page.locator("#field-crest-piers").fill("4");
  await page.locator("#field-crest-piers").press("Enter");
  await until(page, () => document.querySelector(".foot")?.textContent.includes("not saved"));
  await page.waitForTimeout(300);
  await server.kill();
  await page.locator("#field-crest-net_width").fill("37 m");
  await page.locator("#field-crest-net_width").press("Enter");
  await page.waitForSelector(".notice.alarm");
  noError(page, ["ERR_CONNECTION_REFUSED", "Failed to load resource"]);
  const again = await openPage(await server.start(site));
  await drawn(again);
  await again.getByText("Unsaved work found").waitFor();
  assert.equal(await again.locator("#field-crest-piers").inputValue(), "4");
  await again.getByRole("button", { name: "Keep it" }).click();
  await again.getByText("Unsaved work found").waitFor({ state: "detached" });
  assert.equal(await again.locator("#field-crest-piers").inputValue(), "4");
  noError(again);
});

test("a second tab is told of the first", async () => {
  const address = await server.start(server.copyOf("01-gravity-dam"));
  const page = await openPage(address);
  await drawn(page);
  const second = await openPage(address, {});
  await drawn(second);
  await second.getByText("Open in another tab").waitFor();
  // An edit of the one comes to the other, which can undo it; neither loses a text.
  await page.locator("#field-crest-piers").fill("5");
  await page.locator("#field-crest-piers").press("Enter");
  await until(second, () => document.querySelector("#field-crest-piers")?.value === "5");
  await second.getByRole("button", { name: "Undo" }).click();
  await until(second, () => document.querySelector("#field-crest-piers")?.value === "2");
  await until(page, () => document.querySelector("#field-crest-piers")?.value === "2");
  noError(page);
  noError(second);
});

test("from the start screen by keyboard alone to a design with an apron held", async () => {
  const page = await openPage(await server.start(undefined));
  await page.getByRole("heading", { name: "Stilling basins below spillways" }).waitFor();
  const focusTo = async (match) => {
    for (let i = 0; i < 150; ++i) {
      await page.keyboard.press("Tab");
      if (await page.evaluate((words) => (document.activeElement.getAttribute("aria-label") ?? document.activeElement.textContent ?? "").includes(words) || document.activeElement.matches?.(`[data-nothing], ${words.startsWith(".") ? words : "nothing"}`), match)) return;
    }
    assert.fail(`Tab never reaches ${match}`);
  };
  await focusTo("A gravity dam above a gorge");
  await page.keyboard.press("Enter");
  await drawn(page);
  await focusTo("Apron level");
  const before = await page.textContent(".verdict b");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  await shownMarginChanges(page, before);
  await page.keyboard.press("Escape");
  await focusTo(".slide input");
  const discharge = await page.textContent("output.big");
  await page.keyboard.press("ArrowLeft");
  assert.notEqual(await page.textContent("output.big"), discharge);
  await focusTo("Findings");
  await page.keyboard.press("ArrowRight");
  assert.equal(await page.getAttribute("#tab-working", "aria-selected"), "true");
  noError(page);
});

for (const dark of [false, true])
  test(`no violation of the accessibility rules, ${dark ? "dark" : "light"}`, async () => {
    const page = await openPage(await server.start(undefined), { dark });
    await page.locator(".card").first().waitFor();
    await noViolation(page, "start screen");
    await page.locator(".card", { hasText: "gated" }).last().click();
    await drawn(page);
    await page.locator(".finding-head").first().click();
    for (const tab of ["Findings", "Working", "Compare", "Text", "Tables"]) {
      await page.getByRole("tab", { name: tab }).click();
      if (tab === "Working") await page.waitForSelector(".working math");
      await noViolation(page, tab);
    }
    noError(page);
  });

test("a new site is guided: what is missing stands open and marked, and a first value makes its section", async () => {
  const page = await openPage(await server.start(undefined));
  await page.getByRole("button", { name: "New site, guided" }).click();
  await page.locator("nav.rail .count").first().waitFor();
  for (const name of ["Project", "Crest", "Chute", "River", "Discharges"])
    assert.equal(await page.locator("nav.rail > details[open] > summary", { hasText: name }).locator(".count").count(), 1, name);
  await page.locator("#field-crest-level").fill("132 m");
  await page.locator("#field-crest-level").press("Enter");
  await until(page, () => document.querySelector("#field-crest-level")?.value === "132 m" && document.querySelector(".chip")?.textContent.includes("not saved"));
  await page.getByRole("tab", { name: "Text" }).click();
  assert.match(await page.inputValue(".editor textarea"), /\[crest\]\nlevel = "132 m"/);
  assert.equal(await page.locator(".toast").count(), 0);
  noError(page);
});

test("US customary units come from the engine", async () => {
  const page = await openSite(server, "02-small-dam");
  assert.match(await page.textContent("output.big"), /ft³\/s/);
  assert.match(await page.textContent(".verdict b"), /ft/);
  // The crest's level is a bare number there: it is edited as one.
  const level = page.locator("#field-crest-level");
  assert.equal(await level.inputValue(), "1240");
  await level.fill("1241");
  await level.press("Enter");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  await page.getByRole("tab", { name: "Text" }).click();
  assert.match(await page.inputValue(".editor textarea"), /level = 1241\s/);
  await until(page, () => document.querySelector(".section-view .labels")?.textContent.includes("crest 1241.00"));
  noError(page);
});

test("the page is small and soon there", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const { bytes, first } = await page.evaluate(() => ({
    bytes: performance.getEntriesByType("resource").filter((r) => r.name.includes("/assets/")).reduce((sum, r) => sum + r.encodedBodySize, 0),
    first: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0,
  }));
  console.log(`assets ${(bytes / 1000).toFixed(1)} kB compressed, first paint after ${first.toFixed(0)} ms`);
  assert.ok(bytes > 1000 && bytes < 80_000, `${bytes} bytes`);
  noError(page);
});
