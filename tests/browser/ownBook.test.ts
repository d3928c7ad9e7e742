import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, ready } from "./page.ts";

/**
 * Twelve invented figures of four bodies, three each, as a list comes from a notebook: a title, blank rows, inches as
 * fractions and with a mark of their own, millimetres among them, an average at the end. Within a body readings differ by
 * less than a millimetre; between bodies by centimetres.
 */
const notebook = [
  "My small people\t\t\t\t",
  "\t\t\t\t",
  "Name\tBust (in)\tWaist (in)\tHips (in)\tNotes",
  "Orla\t7 1/8\t5 1/4\t7 5/8\tthe first",
  'Orsin\t7 1/8"\t5 1/4\t7 5/8\t',
  "Orwen\t181 mm\t5 1/4\t7 5/8\t",
  "Brack\t5\t4\t5 1/2\t",
  "Brunt\t5\t4\t5 1/2\t",
  "Brisk\t127 mm\t4\t5 1/2\t",
  "\t\t\t\t",
  "Culver\t9 1/2\t7 1/4\t10\t",
  "Cadder\t9 1/2\t7 1/4\t10\t",
  "Calder\t9 1/2\t7 1/4\t10\t",
  "Dorrit\t12\t9 1/8\t12 3/4\t",
  "Dunmow\t12\t9 1/8\t12 3/4\t",
  "Dansel\t12\t9 1/8\t12 3/4\t",
].join("\n");

describe("a book of one’s own, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;
  let presses = 0;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  const press = async (name: string | RegExp): Promise<void> => {
    presses++;
    await page.getByRole("button", { name }).first().click();
  };
  const home = async (): Promise<void> => {
    presses++;
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
  };
  const facts = (): ReturnType<Page["locator"]> =>
    page.getByRole("list", { name: "What this workbook says" });

  it("says of the demo that it is one, and what comes next", async () => {
    await page.getByText("This is the demo").waitFor();
    await facts().getByText("37 figures, 26 measures").waitFor();
    await page.getByRole("region", { name: "Next" }).getByText("deserve a second look").waitFor();
  });

  it("begins empty, in the unit that was chosen, with nothing of the demo", async () => {
    await press("New book");
    await page.getByLabel("Name", { exact: true }).fill("Small people");
    await page.getByLabel("You measure in").selectOption("inches");
    await press("Begin this book");
    await page.getByText("headings and no figures yet").waitFor();
    await ready(page);
    const { sheets } = await handsOn(page).saved();
    const cells = sheets.find(({ name }) => name === "Figures")?.cells.flat() ?? [];
    expect(cells.map((cell) => cell?.value)).toContain("Bust (in)");
    expect(JSON.stringify(sheets)).not.toContain("Ardwen");
  });

  it("goes from a notebook’s list to the groups", async () => {
    await press("Import a list");
    await page.getByLabel("Or paste rows, headings first").fill(notebook);
    await press("Read the pasted rows");
    await press("Import 12 figures");
    const done = page.getByText("The table Figures holds the figures now.");
    await done.waitFor();
    await page.getByRole("tab", { name: "Figures", exact: true, selected: true }).waitFor();
    await home();
    await done.waitFor({ state: "detached" });
    // Of the 26 columns of a new book those that hold a reading.
    await facts().getByText("12 figures, 3 measures").waitFor();
    await facts().getByText("4 bodies").waitFor();
    await facts().getByText("12 figures share with another; none is alone.").waitFor();
  });

  it("goes on to the first verdicts", async () => {
    const hands = handsOn(page);
    const { sheets } = await hands.saved();
    const table = sheets.find(({ name }) => name === "Patterns")?.tables?.[0];
    const row = String((table?.row ?? 0) + 2);
    for (const [column, text] of [
      ["A", "S1"],
      ["B", "Shift for Orla"],
      ["C", "dress"],
      ["D", "Orla"],
      ["H", "full length"],
    ] as const)
      await hands.typeInto(`Patterns!${column}${row}`, text);
    await facts().getByText("1 pattern on 12 figures").waitFor();
    // The other bodies are centimetres smaller or larger.
    await facts().getByText("Can be worn 3 times, 9 times not.").waitFor();
    expect(presses).toBe(6);
  });

  it("finds a figure by a part of its name, with who shares its body", async () => {
    await page.getByLabel("Find a figure").fill("orsi");
    await page
      .getByRole("region", { name: "Orsin" })
      .getByText("Shares its body with Orla, Orwen.")
      .waitFor();
    await page.getByRole("button", { name: "Show it in the chart" }).click();
    await page.getByRole("tab", { name: "Figures", exact: true, selected: true }).waitFor();
  });

  it("uses a chart that stands on a sheet of an opened workbook, moves nothing, and takes it back", async () => {
    const cells = [
      [{ value: "Figures of the autumn" }],
      [],
      [undefined, ...["Name", "Bust (mm)", "Waist (mm)"].map((value) => ({ value }))],
      [undefined, ...["Fenwick", 180, 140].map((value) => ({ value }))],
      [undefined, ...["Farrow", 230, 180].map((value) => ({ value }))],
      [undefined, ...["Average", 205, 160].map((value) => ({ value }))],
    ];
    const hands = handsOn(page);
    await hands.open({ sheets: [{ name: "List", cells }] });
    await page.getByText("2 figures and 2 measures, in B3:D5.").waitFor();
    await page.getByRole("button", { name: "Use it as my chart" }).click();
    await facts().getByText("2 figures, 2 measures").waitFor();
    await facts().getByText("Every figure has a body of its own.").waitFor();
    const used = await hands.saved();
    expect(used.sheets[0]?.tables).toMatchObject([
      { name: "Figures", row: 2, column: 1, rows: 3, columns: 3 },
    ]);
    expect(used.sheets[0]?.cells[5]?.[1]?.value).toBe("Average");
    await page.getByRole("button", { name: "Undo: Use the sheet “List” as your chart" }).click();
    await page.getByText("2 figures and 2 measures, in B3:D5.").waitFor();
  });

  it("uses a chart with its units in a row below the headings, saying beforehand what it writes there", async () => {
    const row = (...values: readonly (string | number | undefined)[]) => values.map((value) => ({ value }));
    const cells = [
      row(undefined, undefined, undefined, "Around"),
      row(undefined, "Name", "Maker", "Bust", "Waist", "Hips", "Price"),
      row(undefined, undefined, undefined, "in", "in", "cm", "€"),
      row(undefined, "Mirabel", "Old Mill", "7 1/8", "5 1/4", "19,4", 210),
      row(undefined, "Mirette", "Old Mill", 7.125, 5.25, 19.4, 210),
      [],
      row(undefined, "Tansy", "Quayside", "5", "3 7/8", "13,6 cm", 140),
      row(undefined, "Average", undefined, 6.4, 4.8, 17.5),
    ];
    const hands = handsOn(page);
    await hands.open({ sheets: [{ name: "Dolls", cells }] });
    await page.getByText("3 figures and 3 measures, in B3:G7.").waitFor();
    await page.getByText(/they are written into B3:G3, as “Name”, “Maker”, “Bust \(in\)”/).waitFor();
    await page.getByRole("button", { name: "Use it as my chart" }).click();
    await facts().getByText("3 figures, 3 measures").waitFor();
    await page.getByRole("tab", { name: "Dolls", exact: true, selected: true }).waitFor();
    // Of two figures with the same readings, in inches and centimetres as the headings say now.
    await facts().getByText("2 bodies").waitFor();
    const used = await hands.saved();
    expect(used.sheets[0]?.cells[2]?.map((cell) => cell?.value)).toEqual([
      ...[undefined, "Name", "Maker", "Bust (in)", "Waist (in)", "Hips (cm)", "Price (€)"],
    ]);
    expect(used.sheets[0]?.cells[1]?.[3]?.value).toBe("Bust");
    await page.getByRole("button", { name: "Undo: Use the sheet “Dolls” as your chart" }).click();
    await page.getByText("3 figures and 3 measures, in B3:G7.").waitFor();
    expect((await hands.saved()).sheets[0]?.cells[2]?.[3]?.value).toBe("in");
  });

  it("says of headings in a language that it does not read, and lets each measure be chosen", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    await page
      .getByLabel("Or paste rows, headings first")
      .fill("Nom\tTour de poitrine (cm)\tTour de taille (cm)\nAmélie\t18,2\t13,4\nÉlodie\t18,1\t13,4\n");
    await press("Read the pasted rows");
    await page
      .getByText("Measure Book does not know “Tour de poitrine (cm)” and “Tour de taille (cm)”.")
      .waitFor();
    await page.getByLabel("What “Tour de poitrine (cm)” is").selectOption({ label: "Bust girth" });
    await page.getByLabel("What “Tour de taille (cm)” is").selectOption({ label: "Waist girth" });
    await page.getByText("2 measures recognised").waitFor();
    await press("Import 2 figures");
    await home();
    await facts().getByText("2 figures, 2 measures").waitFor();
  });
});

describe("measuring a figure, with keys alone", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 760 });
    page = await visitor.open(inject("address"));
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await page.getByLabel("Sections").getByRole("button", { name: "Measure" }).click();
  });

  afterAll(() => visitor.close());

  it("takes readings in any writing, asks about one that cannot be right, and writes them as one step", async () => {
    const readings: Readonly<Record<string, readonly string[]>> = {
      Bust: ["18.2 cm"],
      // In inches by mistake: asked about, then typed once more.
      Waist: ["5.25", "134"],
      Hip: ["7 5/8 in"],
    };
    await page.getByLabel("Which figure?").fill("Newcomb");
    await page.getByText("A new figure. It gets a row of its own.").waitFor();
    await page.getByLabel("The tape says").focus();
    const measure = page.getByRole("heading", { level: 2 });
    const asked: string[] = [];
    for (let step = 1; ; step++) {
      if ((await page.getByText("That was the last measure.").count()) > 0) break;
      await page.getByText(`${String(step)} of 26`).waitFor();
      for (const text of readings[await measure.first().innerText()] ?? [""]) {
        await page.keyboard.press("Control+A");
        await page.keyboard.type(text);
        await page.keyboard.press("Enter");
        await page
          .getByText(new RegExp(`^(${String(step + 1)} of 26|That was the last measure.*|≈ .*)$`))
          .first()
          .waitFor();
        const doubts = page.getByRole("alert");
        if ((await doubts.count()) > 0) asked.push(await doubts.innerText());
      }
    }
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatch(/far from the other figures/);
    await page.getByRole("button", { name: "Write 3 readings" }).click();
    await page.getByText("3 readings of Newcomb stand in the chart now").waitFor();
    const { sheets } = await handsOn(page).saved();
    const rows = sheets
      .find(({ name }) => name === "Figures")
      ?.cells.map((row) => row.map((cell) => cell?.value));
    const headings = rows?.find((row) => row[0] === "Figure") ?? [];
    const newcomb = rows?.find((row) => row[0] === "Newcomb") ?? [];
    const at = (heading: string) => newcomb[headings.indexOf(heading)];
    expect([at("Bust (mm)"), at("Waist (mm)"), at("Hip (mm)")]).toEqual([182, 134, 193.675]);
  });

  it("finds the figure measured among the bodies and verdicts, and takes it back as one step", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
    await page.getByText("38 figures, 26 measures").waitFor();
    await page.getByLabel("Find a figure").fill("Newcomb");
    const card = page.getByRole("region", { name: "Newcomb" });
    await card.getByText("3 of 26 measures taken").waitFor();
    await card.getByText("Of your patterns:").waitFor();
    await page.getByRole("button", { name: "Undo: Write 3 readings of Newcomb" }).click();
    await page.getByText("37 figures, 26 measures").waitFor();
  });
});
