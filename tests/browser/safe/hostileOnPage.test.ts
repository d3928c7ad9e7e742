import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { hostileFiles } from "../../workbook/xlsx/hostile/hostileFiles.ts";
import type { Visitor } from "../page.ts";
import { newVisitor, openFile } from "../page.ts";

/** Long enough for what is stopped after its limit, and for a busy computer. */
const longest = 100_000;

describe("hostile files opened on the page", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  it.each(hostileFiles.filter(({ onPage }) => onPage))(
    "$name",
    { timeout: 2 * longest },
    async ({ make, refused }) => {
      await openFile(page, "hostile.xlsx", make());
      const said = page.getByText(
        refused ? /“hostile\.xlsx” was not opened; your workbook is as it was\./ : "“hostile.xlsx” is open.",
      );
      await said.first().waitFor({ timeout: longest });
      if (refused) expect(await said.first().innerText()).toMatch(refused);
      // The page answers still, in its sheet and its pane.
      await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click({ timeout: longest });
      await page.getByLabel("Sections").getByRole("button", { name: "Check" }).click({ timeout: longest });
      expect(await page.evaluate(() => document.querySelectorAll("canvas").length)).toBeGreaterThan(0);
      const close = page.getByRole("button", { name: "Close", exact: true });
      while ((await close.count()) > 0) await close.first().click({ timeout: longest });
    },
  );

  it("a file that takes long can be stopped, and opened afterwards", { timeout: 2 * longest }, async () => {
    const { bytes } = await writeXlsx({ sheets: [{ name: "Slow", cells: [[{ value: "at last" }]] }] });
    // What reads the file does not come before it is let through.
    let isHeld = true;
    const held: (() => void)[] = [];
    await page.route("**/*.js", async (route) => {
      if (isHeld) await new Promise<void>((go) => held.push(go));
      await route.continue().catch(() => undefined);
    });
    await openFile(page, "slow.xlsx", bytes);
    await page.getByRole("button", { name: "Stop", exact: true }).click();
    const said = page.getByText(/“slow\.xlsx” was not opened; your workbook is as it was\. You stopped it\./);
    await said.first().waitFor();
    isHeld = false;
    for (const go of held) go();
    await openFile(page, "slow.xlsx", bytes);
    await page.getByText("“slow.xlsx” is open.").waitFor();
    await page.unroute("**/*.js");
  });
});
