// What the journeys share: a server of their own, a browser, and the rule that no journey may leave an error on the console.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";

const root = process.env.QUELL_ROOT;
const program = process.env.QUELL_PROGRAM;
const require = createRequire(join(root, "web/package.json"));
const { chromium } = require("playwright-core");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

const flags = ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
export const wait = 15000; // ms; the machine may be busy

/** A server with a state folder of its own. `site` is a copy of an example that may be written to. */
export class Server {
  constructor() {
    this.folder = mkdtempSync(join(tmpdir(), "quell-browser-"));
  }
  copyOf(example) {
    const folder = join(this.folder, example);
    cpSync(join(root, "examples", example), folder, { recursive: true });
    return join(folder, "site.toml");
  }
  async start(site) {
    const words = ["serve", ...(site ? [site] : []), "--no-open"];
    this.process = spawn(program, words, { env: { ...process.env, XDG_STATE_HOME: join(this.folder, "state") } });
    this.address = await new Promise((resolve, reject) => {
      this.process.stdout.once("data", (data) => resolve(String(data).trim()));
      this.process.once("exit", (code) => reject(new Error(`quell serve ended with ${code}`)));
    });
    return this.address;
  }
  kill(signal = "SIGKILL") {
    return new Promise((resolve) => {
      this.process.once("exit", resolve);
      this.process.kill(signal);
    });
  }
  remove() {
    this.process?.kill("SIGKILL");
    rmSync(this.folder, { recursive: true, force: true });
  }
}

let browser;
export async function openBrowser() {
  browser ??= await chromium.launch({ executablePath: process.env.QUELL_CHROMIUM ?? "/usr/bin/chromium", args: flags });
  return browser;
}
export const closeBrowser = () => browser?.close();

/** A page in a fresh context. `errors` gathers what a user would never see but must not be there. */
export async function openPage(address, { width = 1280, height = 720, dark = false, context } = {}) {
  const own = context ?? (await (await openBrowser()).newContext({ viewport: { width, height }, colorScheme: dark ? "dark" : "light", acceptDownloads: true }));
  const page = await own.newPage();
  page.setDefaultTimeout(wait);
  page.errors = [];
  page.on("console", (message) => message.type() === "error" && page.errors.push(message.text()));
  page.on("pageerror", (error) => page.errors.push(error.message));
  await page.goto(address);
  return page;
}

export async function drawn(page) {
  await page.waitForSelector(".section-view .surface");
}

/** A page with the design of a site drawn: a copy of an example, or the file of that path. */
export async function openSite(server, site) {
  const page = await openPage(await server.start(site.endsWith(".toml") ? site : server.copyOf(site)));
  await drawn(page);
  return page;
}

/** Steps of the workings are of one form, and there are a hundred: those of the first chapter stand for all. */
const like_others = '.working .step:not([id^="step-1."])';

export async function noViolation(page, where) {
  await page.evaluate(axe);
  const found = await page.evaluate(async (exclude) => {
    const answer = await window.axe.run({ include: document, exclude }, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] });
    return answer.violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join(" | ")} (${v.nodes[0].failureSummary})`);
  }, like_others);
  assert.deepEqual(found, [], `axe-core, ${where}`);
}

/** Waits until `test` holds in the page. The page forbids the evaluation of texts, which the library's own waiting would need. */
export async function until(page, test, argument) {
  const end = Date.now() + wait;
  while (!(await page.evaluate(test, argument))) {
    if (Date.now() > end) assert.fail(`never came true: ${test}`);
    await new Promise((resolve) => setTimeout(resolve, 30));
  }
}

export const slideTo = (page, discharge) =>
  page.locator(".slide input").evaluate((input, value) => {
    input.value = String(value);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }, discharge);

/** A number of the page: "+0.05 m" as 0.05. */
export const numberIn = (text) => Number(text.replace("−", "-").replace(/[^\d.+-]/g, ""));
export const noError = (page, expected = []) => assert.deepEqual(page.errors.filter((e) => !expected.some((x) => e.includes(x))), []);
