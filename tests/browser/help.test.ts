import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { Page } from "playwright-core";
import { descriptors } from "../../functions/all.ts";
import { faults } from "./faults.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

describe("the help pages, 320 px wide", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 600 });
    page = await visitor.context.newPage();
    await page.goto(`${inject("address")}help/index.html`);
  });

  afterAll(() => visitor.close());

  const standsOut = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

  it("lead from the list of all functions to one, and back, by keyboard", async () => {
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.waitForURL("**/help/length.html");
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("FIT.LENGTH");
    await page.getByRole("link", { name: "All functions" }).click();
    await page.waitForURL("**/help/index.html");
  });

  it.each(["light", "dark"] as const)(
    "have the stylesheet and no fault that axe finds (%s)",
    async (scheme) => {
      await page.emulateMedia({ colorScheme: scheme });
      const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      expect(await ground()).toBe(scheme === "dark" ? "rgb(31, 33, 36)" : "rgb(251, 249, 244)");
      for (const name of ["index", "bases", "easecheck"]) {
        await page.goto(`${inject("address")}help/${name}.html`);
        expect(await faults(page, "html")).toEqual([]);
      }
    },
  );

  it("nothing stands out at the side, on any of them", async () => {
    for (const name of ["index", ...descriptors.map((descriptor) => descriptor.name.toLowerCase())]) {
      await page.goto(`${inject("address")}help/${name}.html`);
      expect([name, await standsOut()]).toEqual([name, 0]);
    }
  });

  it("print black on white, with whole tables", async () => {
    await page.emulateMedia({ media: "print" });
    await page.goto(`${inject("address")}help/resize.html`);
    const looks = await page.evaluate(() => ({
      text: getComputedStyle(document.body).color,
      tables: [...document.querySelectorAll(".wide")].map((each) => getComputedStyle(each).overflowX),
    }));
    expect(looks).toEqual({ text: "rgb(0, 0, 0)", tables: ["visible"] });
  });
});
