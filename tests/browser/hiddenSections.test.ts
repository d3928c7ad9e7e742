/** What the pane’s sections do beside the page, and that they do nothing while they are hidden: counted in a browser. */
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
const reads = (page: Page) => page.evaluate(() => window.reads);
/** Types the wrist of the second figure, which is about 24 mm. */
const type = (page: Page, text: string) =>
  page.evaluate((typed) => window.typeReading(2, 8, typed), text).then(() => twoFrames(page));

/** Until React has drawn what followed, and what that began has begun. */
async function twoFrames(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
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
    const before = await reads(page);
    await type(page, "240");
    expect(await reads(page)).toBe(before);

    await section(page, "Check");
    await checked(page, "1 thing deserves a look");
    const after = await reads(page);
    expect(after).toBeGreaterThan(before);

    await section(page, "Functions");
    await section(page, "Check");
    await twoFrames(page);
    expect(await reads(page)).toBe(after);
    expect(workers).toBe(0);
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
