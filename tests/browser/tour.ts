import type { Locator, Page } from "playwright-core";

/** One state of the pane: what is asked of a section of the demo, and its answer in sight. */
export interface Stop {
  /** Also the name of its picture. */
  readonly name: string;
  readonly section: string;
  /** The sheet that stands beside it where there is room. */
  readonly sheet: string;
  /** From the section as it is, whatever was asked before. Resolves once the answer is there. */
  readonly ask: (page: Page) => Promise<unknown>;
}

const press = (within: Page | Locator, name: string): Promise<void> =>
  within.getByRole("button", { name, exact: true }).filter({ visible: true }).click();

const seen = (page: Page, text: string | RegExp): Promise<void> =>
  page.locator(".pane").getByText(text).filter({ visible: true }).first().waitFor();

const groupView = (view: string, drawn: RegExp) => async (page: Page) => {
  await press(page, "Who shares a body?");
  await press(page, view);
  await page.getByRole("img", { name: drawn }).first().waitFor();
};

/** Everything that the sections answer, in the order of the work. */
export const tour: readonly Stop[] = [
  { name: "home", section: "Home", sheet: "Start", ask: (page) => seen(page, /deserve a second look/) },
  {
    name: "home-figure",
    section: "Home",
    sheet: "Figures",
    ask: async (page) => {
      await page.getByLabel("Find a figure").fill("Pellory");
      await page.getByRole("region", { name: "Pellory" }).getByText("Of your patterns:").waitFor();
    },
  },
  {
    name: "import",
    section: "Import",
    sheet: "Figures",
    ask: async (page) => {
      await page
        .getByLabel("Or paste rows, headings first")
        .fill("Name\tBust (in)\tWaist\tHair\nQuillon\t7 1/8\t5 1/4\twig\nQuellan\t84/88\t5\twig\n");
      await press(page, "Read the pasted rows");
      await seen(page, /84\/88/);
    },
  },
  {
    name: "import-patterns",
    section: "Import",
    sheet: "Patterns",
    ask: async (page) => {
      const another = page.getByRole("button", { name: "Choose another" });
      if (await another.isVisible()) await another.click();
      await page
        .getByLabel("Or paste rows, headings first")
        .fill(
          "Name\tWhat is it\tFor\tFastening\tZip length\tWaist\n\t\t\t\tcm\tcm\nRose\tpencil skirt\tArdwen\tzip at the back\t4\t13.8\nOdd\tthingamajig\tArdwin\tnone\t\t\n",
        );
      await press(page, "Read the pasted rows");
      await seen(page, "◆ 2 to choose");
    },
  },
  {
    name: "measure",
    section: "Measure",
    sheet: "Figures",
    ask: async (page) => {
      await page.getByLabel("Which figure?").fill("Bryndle");
      await page.getByRole("img").filter({ visible: true }).first().waitFor();
    },
  },
  {
    name: "check",
    section: "Check",
    sheet: "Figures",
    ask: (page) => page.locator("[data-flag]").first().waitFor(),
  },
  {
    name: "groups",
    section: "Groups",
    sheet: "Groups",
    ask: async (page) => {
      await press(page, "Who shares a body?");
      await press(page, "As cards");
      await seen(page, /bodies|groups/);
    },
  },
  { name: "groups-tree", section: "Groups", sheet: "Tree", ask: groupView("As a tree", /join/i) },
  { name: "groups-map", section: "Groups", sheet: "Closest", ask: groupView("As a map", /Map of/) },
  {
    name: "groups-loose",
    section: "Groups",
    sheet: "Loose clothes",
    ask: (page) => press(page, "Who only shares loose clothes?"),
  },
  {
    name: "groups-models",
    section: "Groups",
    sheet: "House models",
    ask: async (page) => {
      await press(page, "Which figures should I keep as house models?");
      await seen(page, /✓ Proved:/);
    },
  },
  {
    name: "groups-next",
    section: "Groups",
    sheet: "Measure next",
    ask: (page) => press(page, "What should I measure next?"),
  },
  { name: "fit", section: "Fit", sheet: "Wearers", ask: (page) => press(page, "Which figures wear this?") },
  {
    name: "fit-figure",
    section: "Fit",
    sheet: "Wardrobe",
    ask: (page) => press(page, "What can this figure wear?"),
  },
  {
    name: "fit-why",
    section: "Fit",
    sheet: "Why",
    ask: async (page) => {
      await press(page, "Why not?");
      await page.getByLabel("Figure", { exact: true }).filter({ visible: true }).selectOption("Pellory");
      await page.getByRole("img").filter({ visible: true }).first().waitFor();
    },
  },
  {
    name: "fit-change",
    section: "Fit",
    sheet: "Why",
    ask: (page) => press(page.getByLabel("Questions about fit"), "What do I change?"),
  },
  {
    name: "fit-all",
    section: "Fit",
    sheet: "Match",
    ask: async (page) => {
      await press(page, "All patterns on all figures");
      await page.getByRole("grid").filter({ visible: true }).first().waitFor();
    },
  },
  {
    name: "grade",
    section: "Grade",
    sheet: "Grade",
    ask: async (page) => {
      await page.getByLabel("To be worn by (target figure)").selectOption("Isolmay");
      await page
        .getByRole("img", { name: /Bodice front/ })
        .first()
        .waitFor();
    },
  },
  {
    name: "publish",
    section: "Publish",
    sheet: "Listing",
    ask: (page) => page.getByRole("button", { name: "Save page" }).waitFor(),
  },
  { name: "functions", section: "Functions", sheet: "Small sums", ask: (page) => seen(page, "APART") },
];

/** Opens a section by its name among the sections. */
export async function openSection(page: Page, section: string): Promise<void> {
  await page.getByLabel("Sections").getByRole("button", { name: section, exact: true }).click();
  await page
    .locator(".pane")
    .getByRole("heading", { name: section, level: 1, exact: true })
    .filter({ visible: true })
    .waitFor();
}

/** Goes to a stop of the tour, whatever was shown before. */
export async function goToStop(page: Page, stop: Stop): Promise<void> {
  await openSection(page, stop.section);
  await stop.ask(page);
}

/** The part of the pane that shows a section. */
export function shownSection(page: Page, section: string): Locator {
  return page.locator(`#section-${section.toLowerCase()}`);
}
