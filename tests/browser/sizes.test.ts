import { gzipSync } from "node:zlib";
import { describe, expect, inject, it } from "vitest";
import { newVisitor, saveXlsx } from "./page.ts";

const address = inject("address");

/** Bytes of a served file as a web server sends it, packed. */
async function packedBytes(url: string): Promise<number> {
  const answer = await fetch(url);
  expect(answer.ok, url).toBe(true);
  return gzipSync(new Uint8Array(await answer.arrayBuffer()), { level: 9 }).length;
}

/** The scripts that a served page names, those that are only to be fetched early left out. */
async function scriptsOf(page: string): Promise<string[]> {
  const html = await (await fetch(address + page)).text();
  return [...html.matchAll(/<script[^>]* src="([^":]+)"/g)].map((found) => address + (found[1] ?? ""));
}

/**
 * What has to be fetched before anything can be seen or calculated. Who exceeds a limit looks first at what came in with the
 * change: a library for one function of it, texts that only a help page shows, a section that is not loaded when it is opened.
 * The aim is 60 kB for the functions, 125 kB for the first scripts and 40 kB for .xlsx; where a limit is above it, the aim is not
 * reached yet.
 */
describe("the built files, packed", () => {
  it.each([
    ["the worksheet functions", () => Promise.resolve([`${address}functions.js`]), 86_000],
    [
      "the first script of the pane in Excel",
      async () => (await scriptsOf("taskpane.html")).filter((url) => /taskpane\.[0-9a-f]+\.js$/.test(url)),
      125_000,
    ],
    ["the first script of the page", () => scriptsOf(""), 125_000],
  ])("%s has at most its size", async (what, named, most) => {
    const urls = await named();
    expect(urls).toHaveLength(1);
    const bytes = await packedBytes(urls[0] ?? "");
    console.log(`${what}: ${String(Math.round(bytes / 100) / 10)} kB`);
    expect(bytes).toBeLessThanOrEqual(most);
  });

  it("what writes .xlsx comes when it is first needed, in at most 40 kB", async () => {
    const visitor = await newVisitor();
    const page = await visitor.open(address);
    // By then the page has fetched what it begins with.
    await page.getByText("deserve a second look").first().waitFor();
    const asked: string[] = [];
    page.on("request", (request) => {
      if (request.url().endsWith(".js")) asked.push(request.url());
    });
    await saveXlsx(page);
    await visitor.close();
    expect(asked.length).toBeGreaterThan(0);
    const bytes = (await Promise.all(asked.map(packedBytes))).reduce((sum, each) => sum + each, 0);
    console.log(`what writes .xlsx: ${String(Math.round(bytes / 100) / 10)} kB`);
    expect(bytes).toBeLessThanOrEqual(40_000);
  });
});
