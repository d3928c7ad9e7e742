import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import type { Page } from "playwright-core";
import { faults } from "../faults.ts";
import { handsOn } from "../hands.ts";
import type { Visitor } from "../page.ts";
import { newVisitor } from "../page.ts";

describe("an address in a cell", () => {
  let visitor: Visitor;
  let page: Page;
  beforeEach(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });
  afterEach(() => visitor.close());

  it("opens after it was shown in full and agreed to, and not before", async () => {
    const hands = handsOn(page);
    const address = `${inject("address")}help/?of=a+cell`;
    await hands.addSheet();
    await hands.typeInto("A1", address);
    await hands.goTo("A1");
    const before = visitor.context.pages().length;
    const ask = page.getByRole("button", { name: "Open it …" });
    await ask.click();
    const dialog = page.getByRole("dialog", { name: "Open this address?" });
    await dialog.getByText(address, { exact: true }).waitFor();
    expect(await faults(page, ".cell-address")).toEqual([]);
    await dialog.getByRole("button", { name: "Cancel" }).click();
    await dialog.waitFor({ state: "hidden" });
    expect(visitor.context.pages()).toHaveLength(before);
    await ask.click();
    const [opened] = await Promise.all([
      visitor.context.waitForEvent("page"),
      dialog.getByRole("button", { name: "Open", exact: true }).click(),
    ]);
    await expect.poll(() => opened.url()).toBe(address);
    expect(await opened.evaluate(() => window.opener)).toBeNull();
  });
});
