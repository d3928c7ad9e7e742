import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { questionWords } from "../../taskpane/fit/questions.ts";
import { groupQuestionWords } from "../../taskpane/groups/questions.ts";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

describe("figures and bodies, from anywhere in the pane at 320 px", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 760 });
    page = await visitor.open(inject("address"));
    await page.getByRole("button", { name: "Pane", exact: true }).click();
  });

  afterAll(() => visitor.close());

  const open = (section: string) =>
    page.getByLabel("Sections").getByRole("button", { name: section }).click();
  const ask = (section: string, question: string) =>
    page
      .locator(`#section-${section}`)
      .getByRole("navigation", { name: /^Question/ })
      .getByRole("button", { name: question, exact: true })
      .click();
  const card = (name: string) => page.getByRole("region", { name, exact: true });
  const standsOut = () =>
    page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

  it("a figure’s card has its readings, what it can wear and how it looks, found by a few letters", async () => {
    await page.getByLabel("Find a figure").focus();
    await page.keyboard.type("ardw");
    await card("Ardwen").getByText("Of your patterns:").waitFor();
    // What was typed goes on being typed.
    await page.keyboard.type("e");
    expect(await page.getByLabel("Find a figure").inputValue()).toBe("ardwe");
    await card("Ardwen")
      .locator("summary")
      .filter({ hasText: /^Readings/ })
      .press("Enter");
    await card("Ardwen")
      .getByRole("group", { name: "Readings of Ardwen" })
      .getByRole("rowheader", { name: "Bust", exact: true })
      .waitFor();
    await card("Ardwen")
      .locator("summary")
      .filter({ hasText: /^What it can wear/ })
      .press("Enter");
    await card("Ardwen")
      .getByRole("list", { name: "What Ardwen can wear" })
      .getByText("D-1 Reed dress")
      .waitFor();
    await card("Ardwen").getByRole("img", { name: "Ardwen" }).waitFor();
  });

  it("puts any other figure beside it: what they share, each measure, and the way from one to the other", async () => {
    await page.getByLabel("Compare Ardwen with").selectOption("Isolmay");
    const table = card("Ardwen").getByRole("group", { name: "Measure by measure" });
    const hip = table
      .getByRole("row")
      .filter({ has: page.getByRole("rowheader", { name: "Hip", exact: true }) });
    await hip.waitFor();
    expect(await hip.innerText()).toMatch(/✕/);
    await card("Ardwen").getByRole("heading", { name: "From Ardwen to Isolmay" }).waitFor();
    await card("Ardwen")
      .getByText(/Print at [\d.]+ % in width and [\d.]+ % in height, then take in Hip by/)
      .waitFor();
    expect(await faults(page)).toEqual([]);
    expect(await standsOut()).toBeLessThanOrEqual(0);
  });

  it("is reached from Fit and from Groups, and takes the keyboard", async () => {
    await open("Fit");
    await ask("fit", questionWords.wardrobe);
    await page
      .locator("#section-fit")
      .getByLabel("Figure", { exact: true })
      .selectOption({ label: "Gwendry" });
    await page.locator("#section-fit").getByRole("button", { name: "Open its card" }).press("Enter");
    await card("Gwendry").waitFor();
    await page.waitForFunction(() => document.activeElement?.getAttribute("aria-label") === "Gwendry");
    await open("Groups");
    await ask("groups", groupQuestionWords.loose);
    await page
      .locator("#section-groups")
      .getByLabel("Figure", { exact: true })
      .selectOption({ label: "Tansel" });
    await page.locator("#section-groups").getByRole("button", { name: "Open its card" }).press("Enter");
    await card("Tansel").waitFor();
  });

  it("says of all pairs in a word what they have in common, of figures and of bodies, and opens two", async () => {
    await open("Groups");
    await ask("groups", groupQuestionWords.pairs);
    // 37 figures make 37 · 36 / 2 pairs.
    await page.getByText(/^666 pairs: \d+ same body/).waitFor();
    await page.getByLabel("Pairs of").selectOption({ value: "bodies" });
    const says = page.getByText(/^\d+ pairs: /);
    await says.filter({ hasNotText: "same body" }).waitFor();
    await page.getByLabel("Pairs of").selectOption({ value: "figures" });
    const first = page.getByRole("list", { name: "Pairs: same body" }).getByRole("button").first();
    const [one = "", other = ""] = ((await first.innerText()).split("\n")[0] ?? "").split(" – ");
    await first.click();
    const section = page.locator("#section-groups");
    expect(await section.getByLabel("Figure", { exact: true }).locator("option:checked").innerText()).toBe(
      one,
    );
    expect(await section.getByLabel("Beside").locator("option:checked").innerText()).toBe(other);
    await section.getByRole("listitem").filter({ hasText: /^Body/ }).getByText("yes").waitFor();
    expect(await standsOut()).toBeLessThanOrEqual(0);
  });

  it("writes all pairs to a sheet with a row and a column for each, and takes it back", async () => {
    await ask("groups", groupQuestionWords.pairs);
    await page.getByRole("button", { name: "Write to a sheet" }).click();
    await page.getByRole("button", { name: "Write it" }).click();
    // The sheet is shown, where there is room for one.
    await page.getByRole("tab", { name: "All pairs", exact: true, selected: true }).waitFor();
    const { sheets } = await handsOn(page).saved();
    const cells = sheets.find(({ name }) => name === "All pairs")?.cells.slice(3) ?? [];
    expect(cells).toHaveLength(38);
    expect(cells[1]?.[1]?.value).toBeUndefined();
    expect(cells[1]?.[2]?.value).toBe(cells[2]?.[1]?.value);
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await page.getByText("are on the sheet “All pairs”").waitFor();
    await page.getByRole("button", { name: /^Undo: Write/ }).click();
    await page.getByText("Nothing to undo").waitFor();
  });

  it("shows bodies with their figures in the place of figures, where a pattern’s wearers are listed", async () => {
    await open("Fit");
    await ask("fit", questionWords.wearers);
    await page.getByText(/^37 figures: /).waitFor();
    await page.getByRole("switch", { name: "Bodies in place of figures" }).press("Space");
    const bodies = page.getByRole("list", { name: "Bodies, best first" });
    await bodies.getByRole("button").first().waitFor();
    const says = await page.getByText(/^\d+ bodies: /).innerText();
    await open("Home");
    await page.getByText(`${String(Number.parseInt(says, 10))} bodies`, { exact: true }).waitFor();
    expect(await faults(page)).toEqual([]);
  });
});
