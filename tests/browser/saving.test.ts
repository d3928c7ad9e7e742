import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { drawingAddress } from "../../taskpane/saving/drawingLink.ts";
import { openExcelPage } from "./excel/excelPage.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const address = inject("address");

/**
 * Microsoft, “Browsers and webview controls used by Office Add-ins”: downloads of blobs are not supported by every
 * webview; the way round is a page that is opened with `Office.context.ui.openBrowserWindow`.
 */
describe("saving a drawing from the pane in Excel", () => {
  let visitor: Visitor;
  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    await visitor.context.grantPermissions(["clipboard-read", "clipboard-write"]);
  });
  afterAll(() => visitor.close());

  async function openGrade(page: Page): Promise<void> {
    await page.getByRole("button", { name: "Grade", exact: true }).click();
    await page.getByRole("button", { name: "Save the pieces true to size" }).waitFor();
  }

  it("opens a page in the user’s browser on a Mac, where the drawing arrives whole and is saved", async () => {
    const page = await openExcelPage(visitor, address, { settings: { platform: "Mac" } });
    await openGrade(page);
    await page.getByRole("button", { name: "Save the pieces true to size" }).click();
    const box = page.getByRole("region", { name: /^Save grade-.*\.svg$/ });
    const shown = await box.getByRole("textbox", { name: "The drawing as text" }).inputValue();
    expect(shown).toMatch(/<svg[^]*<\/svg>\s*$/);
    // Nothing is said to be done: nothing was seen to be.
    expect(await page.getByText("✓ Done.").count()).toBe(0);
    await box.getByRole("button", { name: "Open it in your browser" }).click();
    const opened = () => page.evaluate(() => window.standIn.windows);
    await expect.poll(opened).toHaveLength(1);
    const windows = await opened();

    const own = await visitor.context.newPage();
    await own.goto(windows[0] ?? "");
    await own.getByRole("img").waitFor();
    const [svg] = await Promise.all([
      own.waitForEvent("download"),
      own.getByRole("link", { name: "Save as drawing (SVG)" }).click(),
    ]);
    expect(svg.suggestedFilename()).toMatch(/^grade-.*\.svg$/);
    expect(readFileSync(await svg.path(), "utf8")).toBe(shown);
    const [png] = await Promise.all([
      own.waitForEvent("download"),
      own.getByRole("link", { name: "Save as picture (PNG)" }).click(),
    ]);
    // PNG specification, section 5.2: the signature.
    expect(
      readFileSync(await png.path())
        .subarray(0, 4)
        .toString("latin1"),
    ).toBe("\x89PNG");
    await own.close();
    await page.close();
  });

  it("gives the drawing as text to copy, and takes that text on the page in the browser", async () => {
    const page = await openExcelPage(visitor, address, { settings: { platform: "Mac" } });
    await openGrade(page);
    await page.getByRole("button", { name: "Save as SVG" }).first().click();
    await page.getByRole("button", { name: "Copy the drawing as text" }).click();
    await page.getByText("The drawing is copied as text.").waitFor();
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    await page.goto(`${address}save.html`);
    await page.getByLabel("The drawing as text").fill(copied);
    await page.getByRole("button", { name: "Show the drawing" }).click();
    await page.getByRole("link", { name: "Save as picture (PNG)" }).waitFor();
    await page.close();
  });

  it("offers a link on the web, where OpenBrowserWindowApi is not supported, and the picture itself", async () => {
    const page = await openExcelPage(visitor, address, { settings: { platform: "OfficeOnline" } });
    await openGrade(page);
    await page.getByRole("button", { name: "Save as picture" }).first().click();
    const box = page.getByRole("region", { name: /^Save .*\.png$/ });
    const link = box.getByRole("link", { name: "Open it in your browser" });
    expect(await link.getAttribute("href")).toMatch(/\/save\.html#[\w-]+$/);
    expect(await link.getAttribute("target")).toBe("_blank");
    // None before it is loaded.
    const width = () => box.getByRole("img").evaluate((image) => (image as HTMLImageElement).naturalWidth);
    await expect.poll(width).toBeGreaterThan(200);
    await page.close();
  });

  it("says when a link was cut off, and opens nothing that could run or fetch", async () => {
    const page = await visitor.context.newPage();
    const whole = await drawingAddress(
      { name: "a", svg: '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0"/></svg>' },
      address,
    );
    await page.goto(whole.slice(0, -9));
    await page.getByText("The drawing did not arrive whole.").waitFor();
    await page.close();
    const bad = [
      '<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>',
      '<svg xmlns="http://www.w3.org/2000/svg" onload="1"></svg>',
      '<svg xmlns="http://www.w3.org/2000/svg"><image href="https://example.org/a.png"/></svg>',
      '<svg xmlns="http://www.w3.org/2000/svg"><path fill="url(https://example.org/a)"/></svg>',
    ];
    for (const svg of bad) {
      const opened = await visitor.context.newPage();
      await opened.goto(await drawingAddress({ name: "a", svg }, address));
      await opened.getByText("so it is not from Measure Book").waitFor();
      expect(await opened.getByRole("link").count()).toBe(0);
      await opened.close();
    }
  });
});
