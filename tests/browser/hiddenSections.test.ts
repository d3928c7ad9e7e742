/** What the pane’s sections read, share and do beside the page, and that they do nothing while hidden: counted in a browser. */
import path from "node:path";
import { build } from "esbuild";
import type { Page } from "playwright-core";
import { afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const site = "https://pane.test/";
async function bundled(file: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [path.resolve(file)],
    ...{ bundle: true, write: false, format: "esm", jsx: "automatic", target: "es2022" },
    define: { "process.env.NODE_ENV": '"production"' },
  });
  return outputFiles[0]?.text ?? "";
}

const section = (page: Page, name: string) =>
  page.getByRole("navigation", { name: "Sections" }).getByRole("button", { name, exact: true }).click();
const checked = (page: Page, words: string) => page.getByText(words).first().waitFor();
/** What was read since this was asked last. */
const reads = (page: Page) => page.evaluate(() => window.reads.splice(0));
/** Those of cells. */
const tablesIn = (read: readonly string[]) => read.filter((what) => what.startsWith("table "));
/** Types the wrist of the second figure, which is about 24 mm. */
const type = (page: Page, text: string) =>
  page.evaluate((typed) => window.typeReading(2, 8, typed), text).then(() => twoFrames(page));

/** Until React has drawn what followed, and what that began has begun: frames alone can pass before its turn comes. */
async function twoFrames(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => requestIdleCallback(resolve)));
      }),
  );
}

/** Until no worker is at work and none follows. */
async function allIsWorkedOut(page: Page): Promise<void> {
  for (let quiet = 0; quiet < 3; quiet++) {
    await twoFrames(page);
    if (page.workers().length === 0) continue;
    quiet = -1;
    await expect.poll(() => page.workers().length, { timeout: 60_000 }).toBe(0);
  }
}

describe("sections of the pane", () => {
  let script: string;
  let workerScript: string;
  let visitor: Visitor;
  /** How many workers were begun. */
  let workers: number;

  beforeAll(async () => {
    script = await bundled("tests/browser/pane/countingPane.tsx");
    workerScript = await bundled("taskpane/work/jobWorker.ts");
  });

  beforeEach(async () => {
    workers = 0;
    visitor = await newVisitor({ width: 320, height: 800 });
    await visitor.context.route(`${site}**`, async (route) => {
      const { pathname } = new URL(route.request().url());
      if (pathname.endsWith("/jobWorker.ts")) {
        workers++;
        await route.fulfill({ contentType: "text/javascript", body: workerScript });
      } else if (pathname === "/pane.js") {
        await route.fulfill({ contentType: "text/javascript", body: script });
      } else if (pathname === "/") {
        const body = '<!doctype html><div id="pane"></div><script type="module" src="/pane.js"></script>';
        await route.fulfill({ contentType: "text/html", body });
      } else {
        await route.fulfill({ status: 404, body: "" });
      }
    });
  });

  afterEach(() => visitor.close());

  async function openPane(figures: number): Promise<Page> {
    const page = await visitor.context.newPage();
    await page.goto(`${site}?figures=${String(figures)}`);
    return page;
  }

  it("reads nothing for a section that is hidden, and reads once it is shown again, if the workbook has changed", async () => {
    const page = await openPane(40);
    await checked(page, "Nothing looks wrong.");
    await section(page, "Groups");
    await page.getByRole("region", { name: "Groups" }).getByText("Figure 1").first().waitFor();
    await section(page, "Functions");
    await twoFrames(page);
    await reads(page);
    await type(page, "240");
    expect(await reads(page)).toEqual([]);

    await section(page, "Check");
    await checked(page, "1 thing deserves a look");
    expect(await reads(page)).toEqual(["tables", "sheets", "table Figures"]);

    await section(page, "Functions");
    await section(page, "Check");
    await twoFrames(page);
    // Whether there is another table is asked whenever a section is opened; cells are not read for it.
    expect(await reads(page)).toEqual(["tables", "sheets"]);
    expect(workers).toBe(0);
  });

  it("reads the workbook once for all sections, and once more after an edit", async () => {
    const page = await openPane(40);
    await checked(page, "Nothing looks wrong.");
    const opened = ["Import", "Groups", "Fit", "Grade"];
    for (const name of opened) {
      await section(page, name);
      await page
        .getByRole("region", { name, exact: true })
        .getByRole("heading", { name, exact: true })
        .waitFor();
      await twoFrames(page);
    }
    await page.getByRole("region", { name: "Grade" }).getByText("How the pieces change").waitFor();
    expect(tablesIn(await reads(page))).toEqual(["table Figures"]);

    await type(page, "240");
    for (const name of [...opened, "Check"]) {
      await section(page, name);
      await twoFrames(page);
    }
    await checked(page, "1 thing deserves a look");
    expect(tablesIn(await reads(page))).toEqual(["table Figures"]);
  });

  it("shows what was typed last, however late an earlier reading comes", async () => {
    const page = await openPane(40);
    await checked(page, "Nothing looks wrong.");
    const letGo = await page.evaluateHandle(() => window.holdNextReading());
    const hasRead = (times: number) => page.waitForFunction((many) => window.reads.length >= many, 3 * times);
    await type(page, "240");
    // This is the reading that is held.
    await hasRead(2);
    await type(page, "24");
    await hasRead(3);
    await checked(page, "Nothing looks wrong.");
    await letGo.evaluate((go) => go());
    await twoFrames(page);
    expect(await page.getByText("1 thing deserves a look").count()).toBe(0);
    const read = Array.from({ length: 3 }, () => ["tables", "sheets", "table Figures"]).flat();
    expect((await reads(page)).toSorted()).toEqual(read.toSorted());
  });

  it("finds the answers to a question as they were, after another was asked", async () => {
    const page = await openPane(400);
    await section(page, "Groups");
    const groups = page.getByRole("region", { name: "Groups" });
    const ask = (name: RegExp) => groups.getByRole("button", { name }).click();
    await groups.getByText("Group 1", { exact: true }).waitFor();
    await allIsWorkedOut(page);
    const before = workers;
    await ask(/only shares loose/i);
    await ask(/who shares a body/i);
    await groups.getByText("Group 1", { exact: true }).waitFor();
    await allIsWorkedOut(page);
    expect(workers).toBe(before);
  });

  it("checks a large chart in a worker, once for each change, and not while the section is hidden", async () => {
    const page = await openPane(400);
    await checked(page, "Nothing looks wrong.");
    expect(workers).toBe(1);
    await section(page, "Functions");
    await type(page, "240");
    expect(workers).toBe(1);
    await section(page, "Check");
    await checked(page, "1 thing deserves a look");
    expect(workers).toBe(2);
    await section(page, "Functions");
    await section(page, "Check");
    await twoFrames(page);
    expect(workers).toBe(2);
  });
});
