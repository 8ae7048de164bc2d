// From a number to what it rests on and back, and what hands do: wheel, drag, dropped files, names and reasons.
import assert from "node:assert/strict";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { after, afterEach, beforeEach, test } from "node:test";
import { closeBrowser, drawn, noError, noViolation, openPage, openSite, Server, until } from "./page.mjs";

let server;
beforeEach(() => (server = new Server()));
afterEach(() => server.remove());
after(closeBrowser);

const focused = (page) => page.evaluate(() => ({ id: document.activeElement.id, text: document.activeElement.textContent.trim(), method: document.activeElement.dataset.method ?? "" }));
const focusedId = (page, id) => until(page, (wanted) => document.activeElement.id === wanted, id);
/** A point of the section that stays on the structure: the crest's highest corner as drawn. */
const crest = (page) => page.$eval(".section-view .concrete", (path) => ({ x: path.getBoundingClientRect().x, width: path.getBoundingClientRect().width }));

test("the wheel enlarges the section where the pointer stands, a drag moves it, Fit brings it back", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const before = await crest(page);
  const box = await page.locator(".section-view svg").boundingBox();
  await page.mouse.move(before.x, box.y + 100);
  await page.mouse.wheel(0, -400);
  await until(page, (width) => document.querySelector(".section-view .concrete").getBoundingClientRect().width > 1.5 * width, before.width);
  const larger = await crest(page);
  assert.ok(Math.abs(larger.x - before.x) < 2, `what lies under the pointer stays there: ${before.x} and ${larger.x}`);
  assert.ok(Math.abs(larger.width / before.width - Math.exp(0.6)) < 0.05, `${larger.width / before.width}`);
  await page.mouse.move(box.x + 120, box.y + 60);
  await page.mouse.down();
  await page.mouse.move(box.x + 200, box.y + 60, { steps: 4 });
  await page.mouse.up();
  const moved = await crest(page);
  assert.ok(Math.abs(moved.x - larger.x - 80) < 2, `${moved.x - larger.x}`);
  assert.ok(Math.abs(moved.width - larger.width) < 1);
  await page.mouse.move(box.x + 300, box.y + 60);
  assert.ok(Math.abs((await crest(page)).x - moved.x) < 1, "the drag ends with the button");
  await page.getByRole("button", { name: "Fit" }).click();
  const fitted = await crest(page);
  assert.ok(Math.abs(fitted.x - before.x) < 1 && Math.abs(fitted.width - before.width) < 1);
  noError(page);
});

test("saved under a new path; a file that is there is not overwritten unasked", async () => {
  const site = server.copyOf("01-gravity-dam");
  const page = await openSite(server, site);
  await page.locator("#field-crest-piers").fill("3");
  await page.locator("#field-crest-piers").press("Enter");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("not saved"));
  const fresh = join(server.folder, "second.toml");
  const save = async (path) => {
    await page.getByRole("button", { name: "Save as" }).click();
    await page.getByLabel(/Path of the site file/).fill(path);
    await page.locator("dialog").getByRole("button", { name: "Save", exact: true }).click();
  };
  await save(fresh);
  await page.waitForSelector("dialog", { state: "detached" });
  assert.match(readFileSync(fresh, "utf8"), /piers = 3/);
  assert.match(readFileSync(site, "utf8"), /piers = 2/, "the first file stays as it was");
  assert.equal(await page.textContent("h1.file"), "second.toml");
  const other = server.copyOf("02-small-dam");
  const text = readFileSync(other, "utf8");
  await save(other);
  await page.locator("dialog .problem").waitFor();
  assert.equal(readFileSync(other, "utf8"), text);
  await page.locator("dialog").getByRole("button", { name: "Cancel" }).click();
  noError(page, ["409"]);
});

test("the figures come as drawings", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const downloads = [];
  page.on("download", (download) => downloads.push(download));
  await page.getByRole("button", { name: "Figures" }).click();
  for (let i = 0; i < 100 && downloads.length < 4; ++i) await page.waitForTimeout(50);
  const names = downloads.map((one) => one.suggestedFilename()).sort();
  assert.ok(names.includes("long-section.svg") && names.includes("tailwater.svg"), names.join());
  for (const one of downloads) assert.match(readFileSync(await one.path(), "utf8"), /^(<\?xml[^>]*>\s*)?<svg[^>]+xmlns=/);
  noError(page);
});

test("a table dropped on the page designs anew", async () => {
  const page = await openSite(server, "05-gated-dam");
  await page.getByRole("tab", { name: "Tables" }).click();
  await page.locator("#table-name").selectOption("check-inflow.csv");
  const before = await page.evaluate(() => document.querySelector(".slide input").max);
  const rows = await page.inputValue("#table-text");
  const higher = rows.split("\n").map((row) => row.split(",").map((cell, i) => (i === 1 && Number(cell) > 0 ? String(Number(cell) * 1.1) : cell)).join(",")).join("\n");
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], "flood.csv", { type: "text/csv" }));
    const target = document.querySelector(".drop");
    for (const kind of ["dragover", "drop"]) target.dispatchEvent(new DragEvent(kind, { dataTransfer: data, bubbles: true, cancelable: true }));
  }, higher);
  await until(page, (old) => Number(document.querySelector(".slide input").max) > 1.02 * Number(old), before);
  assert.equal((await page.inputValue("#table-text")).trim(), higher.trim());
  await page.getByRole("button", { name: "Undo" }).click();
  await until(page, (old) => document.querySelector(".slide input").max === old, before);
  noError(page);
});

test("undo reaches back beyond a reload of the page", async () => {
  const page = await openSite(server, "01-gravity-dam");
  for (const piers of ["3", "4"]) {
    // The answer writes the field once more: the next number is typed after it.
    const designed = page.waitForResponse((answer) => answer.url().endsWith("/design"));
    await page.locator("#field-crest-piers").fill(piers);
    await page.locator("#field-crest-piers").press("Enter");
    await designed;
    await page.waitForTimeout(100);
    await until(page, (value) => document.querySelector("#field-crest-piers")?.value === value && document.querySelector(".foot").textContent.includes("not saved"), piers);
  }
  await page.waitForTimeout(300);
  await page.reload();
  await drawn(page);
  assert.equal(await page.inputValue("#field-crest-piers"), "4");
  for (const piers of ["3", "2"]) {
    await page.getByRole("button", { name: "Undo" }).click();
    await until(page, (value) => document.querySelector("#field-crest-piers")?.value === value, piers);
  }
  assert.ok(await page.getByRole("button", { name: "Undo" }).isDisabled());
  noError(page);
});

test("a finding is accepted with a name and a reason, in the site file", async () => {
  const site = server.copyOf("01-gravity-dam");
  const page = await openSite(server, site);
  const head = page.locator(".finding-head", { hasText: "drowns the jump" });
  await head.click();
  await page.getByRole("button", { name: "Accept with a reason" }).click();
  await page.locator(".accept").getByRole("button", { name: "Accept", exact: true }).click();
  assert.equal(await page.locator(".accepted").count(), 0, "neither name nor reason may be missing");
  await page.getByLabel("Your name").fill("E. Ngata");
  await page.getByLabel("Why it may stand").fill('Rare floods; the "bed" is rock.');
  await noViolation(page, "acceptance");
  await page.locator(".accept").getByRole("button", { name: "Accept", exact: true }).click();
  await page.locator(".accepted", { hasText: "Accepted by E. Ngata." }).waitFor();
  assert.ok(await page.locator(".finding.caution", { hasText: "drowns the jump" }).count(), "the verdict stays");
  await page.keyboard.press("Control+s");
  await until(page, () => document.querySelector(".chip")?.textContent.includes("✓"));
  const text = readFileSync(site, "utf8");
  assert.match(text, /\[\[accepted\]\]/);
  assert.match(text, /finding = "tailwater\.drowned"/);
  assert.match(text, /by = "E\. Ngata"/);
  assert.ok(existsSync(site) && text.includes('Rare floods; the \\"bed\\" is rock.'));
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Report" }).click()]);
  assert.match(readFileSync(await download.path(), "utf8"), /Accepted by E\. Ngata:/);
  noError(page);
});

test("by keyboard alone from a finding to its step, to an earlier step, to the input, and back", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const tabTo = async (wanted) => {
    for (let i = 0; i < 200; ++i) {
      await page.keyboard.press("Tab");
      if (await page.evaluate((words) => document.activeElement.matches("a, button") && document.activeElement.textContent.includes(words), wanted)) return;
    }
    assert.fail(`Tab never reaches ${wanted}`);
  };
  await tabTo("requirements that are met");
  await page.keyboard.press("Enter");
  await tabTo("Head on the crest over its design head");
  const finding = await focused(page);
  await page.keyboard.press("Enter");
  await tabTo("Show the working");
  await page.keyboard.press("Enter");
  await until(page, () => document.activeElement.dataset.method === "crest.head_ratio.definition");
  assert.equal(await page.locator(".aimed").count(), 1);
  assert.match(await page.textContent(".behind"), /Head on the crest over its design head/);
  await noViolation(page, "a step of the workings");
  await tabTo("input crest.design_head");
  await page.keyboard.press("Enter");
  await focusedId(page, "field-crest-design_head");
  assert.ok(await page.locator("#field-crest-design_head").isVisible());
  await noViolation(page, "the form, come from a step");
  await page.locator("#field-crest-design_head").fill("6.4");
  await page.keyboard.press("Enter");
  await until(page, () => document.querySelector(".aimed[data-method='crest.head_ratio.definition']")?.textContent.includes("6.4"));
  await page.waitForTimeout(100);
  assert.equal((await focused(page)).id, "field-crest-design_head", "new workings leave the focus where it is");
  await page.keyboard.press("Escape");
  assert.equal((await focused(page)).text, "input crest.design_head");
  while ((await focused(page)).text !== "Back") await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Enter");
  await focusedId(page, finding.id);
  assert.equal(await page.getAttribute(`[id="${finding.id}"]`, "aria-expanded"), "true");
  noError(page);
});

test("from the stress in the bars to the heads behind it, and to an input of a section that the file does not have yet", async () => {
  const page = await openSite(server, "01-gravity-dam");
  await page.locator(".finding-head", { hasText: "Stress in the anchor bars" }).click();
  await page.getByRole("button", { name: "Show the working" }).click();
  await until(page, () => document.activeElement.dataset.method === "slab.net_pressure.anchored");
  const panel = await page.locator("#panel-body").boundingBox();
  const step = await page.locator(".aimed").boundingBox();
  assert.ok(step.y >= panel.y && step.y < panel.y + 200, "the step stands at the top of the panel");
  assert.equal(await page.evaluate(() => document.scrollingElement.scrollTop), 0, "only the panel scrolls");
  await page.locator(".aimed a.from", { hasText: "step" }).first().click();
  await until(page, () => document.activeElement.dataset.method === "slab.uplift_head.drains");
  await page.locator(".aimed a.from", { hasText: "slab.drain_efficiency" }).click();
  await focusedId(page, "field-slab-drain_efficiency");
  await page.locator("#field-slab-drain_efficiency").fill("0.25");
  await page.keyboard.press("Enter");
  await until(page, () => document.querySelector(".aimed[data-method='slab.uplift_head.drains']")?.textContent.includes("1−0.25"));
  await page.getByRole("button", { name: "Back to step" }).click();
  await until(page, () => document.activeElement.matches(".aimed a.from") && document.activeElement.textContent.includes("slab.drain_efficiency"));
  await page.getByRole("tab", { name: "Text" }).click();
  assert.match(await page.inputValue(".editor textarea"), /\[slab\]\s+drain_efficiency = 0\.25/);
  noError(page);
});

test("a basin held again before the first answer came is asked for; an edit gives it back; Escape takes back one thing", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const slow = async (route) => {
    await page.waitForTimeout(250);
    await route.continue();
  };
  const verdict = () => page.textContent(".verdict b");
  const first = await verdict();
  const changes = (old) => until(page, (was) => document.querySelector(".verdict b").textContent !== was, old);
  await page.route("**/design", slow);
  await page.getByRole("slider", { name: "Apron level" }).focus();
  for (const key of ["PageUp", "Escape", "PageUp"]) await page.keyboard.press(key);
  await changes(first);
  await page.unroute("**/design", slow);

  await page.getByRole("tab", { name: "Text" }).click();
  const editPiers = async (piers) => {
    await page.locator("#field-crest-piers").fill(piers);
    await page.locator("#field-crest-piers").press("Enter");
  };
  await editPiers("3");
  await page.waitForSelector(".ask", { state: "detached" });
  await page.getByRole("button", { name: "Undo" }).click();
  await until(page, (was) => document.querySelector(".verdict b").textContent === was, first);

  await page.getByRole("tab", { name: "Findings" }).click();
  await page.locator(".finding-head", { hasText: "Apron level that tailwater asks for" }).or(page.getByRole("button", { name: "requirements that are met" })).first().click();
  await page.locator(".finding-head", { hasText: "Allowance for degradation of the river bed" }).click();
  await page.getByRole("slider", { name: "Apron level" }).press("PageDown");
  await changes(first);
  await page.getByRole("button", { name: "Go to the input" }).click();
  await focusedId(page, "field-river-bed_degradation");
  await page.keyboard.press("Escape");
  assert.equal((await focused(page)).text, "Go to the input");
  assert.equal(await page.locator(".ask").count(), 1, "the basin is still held");
  await page.keyboard.press("Escape");
  await page.waitForSelector(".ask", { state: "detached" });
  noError(page);
});

test("workings follow a basin that is moved, one question at a time, to its last place", async () => {
  const page = await openSite(server, "01-gravity-dam");
  await page.getByRole("tab", { name: "Working" }).click();
  await page.waitForSelector(".working h3");
  let [open, most, last] = [0, 0, null];
  await page.route("**/working", async (route) => {
    most = Math.max(most, ++open);
    last = route.request().postDataJSON().apron_level;
    await page.waitForTimeout(120);
    await route.continue();
    --open;
  });
  const handle = page.getByRole("slider", { name: "Apron level" });
  await handle.focus();
  for (let i = 0; i < 8; ++i) {
    await page.keyboard.press("ArrowUp");
    await page.waitForTimeout(40);
  }
  const place = Number(await handle.getAttribute("aria-valuenow"));
  for (let i = 0; i < 100 && !(last === place && open === 0); ++i) await page.waitForTimeout(50);
  assert.equal(last, place);
  assert.equal(most, 1);
  noError(page);
});

test("a finding without a step leads to its chapter and to the input that it judges; whole numbers are whole", async () => {
  const page = await openSite(server, "05-gated-dam");
  const head = page.locator(".finding-head", { hasText: "Openings of the gates that lack their tailwater" });
  assert.equal(await head.locator(".value").textContent(), "3");
  await page.locator(".finding-head", { hasText: "Neighbouring gates open alike" }).click();
  await page.getByRole("button", { name: "Show the working" }).click();
  await page.locator(".behind", { hasText: "No step of its own" }).waitFor();
  await until(page, () => document.activeElement.matches("h3.aimed"));
  await page.getByRole("button", { name: "Back", exact: true }).click();
  await page.getByRole("button", { name: "Go to the input" }).click();
  await until(page, () => document.activeElement.closest('[data-path="gates.patterns"]') !== null);
  noError(page);
});

test("the report is read in a tab of its own, in its own style, and a finding leads to its step there too", async () => {
  const page = await openSite(server, "01-gravity-dam");
  const [report] = await Promise.all([page.waitForEvent("popup"), page.getByRole("link", { name: "Read it" }).click()]);
  report.setDefaultTimeout(15000);
  await report.waitForSelector("#findings");
  const width = await report.evaluate(() => document.body.getBoundingClientRect().width);
  assert.ok(width > 300 && width < 1000, `a page of paper, not the whole window: ${width}`);
  const link = report.locator("table.findings a[href^='#step-']").first();
  const goal = (await link.getAttribute("href")).slice(1);
  await link.click();
  const box = await report.locator(`[id="${goal}"]`).boundingBox();
  assert.ok(box && box.y > -5 && box.y < 400, JSON.stringify(box));
  const input = report.locator(".step a[href='#input-crest.design_head']").first();
  await input.click();
  assert.match(await report.locator("tr", { has: report.locator("[id='input-crest.design_head']") }).textContent(), /6\.5 m/);
  noError(page);
});
