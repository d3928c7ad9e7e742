import type { Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { faults } from "./faults.ts";
import { focused, keyTo } from "./keys.ts";
import type { Visitor } from "./page.ts";
import { chooseFile, newVisitor } from "./page.ts";

const regionOfFocus = (page: Page): Promise<string | null | undefined> =>
  page.evaluate(() => document.activeElement?.closest("[data-region]")?.getAttribute("data-region"));

const cells = "Cells of the sheet";
const spoken = (page: Page, text: string | RegExp) => page.locator(".spoken").getByText(text).waitFor();

describe("the page without a mouse", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  it("begins with a link that skips to the sheet, where the selected cell is spoken", async () => {
    await page.keyboard.press("Tab");
    expect(await focused(page)).toBe("Skip to the sheet");
    await page.keyboard.press("Enter");
    expect(await focused(page)).toBe(cells);
    await page.keyboard.press("ArrowDown");
    await spoken(page, /^A2: The maker/);
    await page.keyboard.press("ArrowRight");
    await spoken(page, "B2: empty");
  });

  it("speaks what is wrong in a cell", async () => {
    await page.keyboard.type('=FIT.LENGTH("about ten")');
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowUp");
    await spoken(page, /^B2: #VALUE!, .*about ten/);
    await page.keyboard.press("Delete");
  });

  it("stays in the cells with Tab, and leaves them with Escape and Tab, both ways", async () => {
    await page.keyboard.press("Tab");
    expect(await focused(page)).toBe(cells);
    await page.keyboard.press("Escape");
    await spoken(page, "Tab leaves the sheet now.");
    await page.keyboard.press("Tab");
    expect(await regionOfFocus(page)).toBe("pane");
    await page.keyboard.press("Shift+Tab");
    expect(await focused(page)).toBe(cells);
    await page.keyboard.press("Escape");
    await page.keyboard.press("Shift+Tab");
    expect(await focused(page)).not.toBe(cells);
    expect(await regionOfFocus(page)).toBe("sheet");
  });

  it("keeps Escape for the cell while something is typed into it", async () => {
    await page.keyboard.press("F6");
    await page.keyboard.press("Shift+F6");
    if ((await focused(page)) !== cells) await keyTo(page, cells);
    await page.keyboard.type("half");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Tab");
    expect(await focused(page)).toBe(cells);
  });

  it("goes round sheet, pane and top bar with F6, back with Shift+F6, each where one was", async () => {
    await page.keyboard.press("F6");
    expect(await regionOfFocus(page)).toBe("pane");
    await keyTo(page, "Check");
    const ring: (string | null | undefined)[] = [];
    for (const key of ["F6", "F6", "F6", "Shift+F6", "Shift+F6", "Shift+F6"]) {
      await page.keyboard.press(key);
      ring.push(await regionOfFocus(page));
    }
    expect(ring).toEqual(["top", "sheet", "pane", "sheet", "top", "pane"]);
    expect(await focused(page)).toBe("Check");
  });

  it("reaches every button of the grid by name", async () => {
    await page.keyboard.press("F6");
    const names: string[] = [];
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press("Tab");
      if ((await focused(page)) === cells) break;
      names.push(await focused(page));
    }
    expect(names).toEqual(
      expect.arrayContaining(["Bold", "Font", "Font size", "Go to cell or name", "Add a sheet"]),
    );
    expect(names.filter((name) => name.trim() === "")).toEqual([]);
    // What is closed lies out of sight.
    expect(names).not.toContain("Close sidebar");
  });

  it("goes from a CSV file to groups", async () => {
    await page.keyboard.press("F6");
    await keyTo(page, "Import", "Shift+Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "Import", level: 1 }).waitFor();
    await keyTo(page, "Choose a file");
    const figures = "Name,Bust (mm),Waist (mm),Hips (mm)\nQuillon,201,150,210\nQuellan,201,150,210\n";
    await chooseFile(page, "figures.csv", Buffer.from(figures), () => page.keyboard.press("Enter"));
    // One more press must not import what nobody has looked at.
    await expect.poll(() => focused(page)).toMatch(/^figures\.csv/);
    await keyTo(page, "Choose another");
    // It says how many once the list is read.
    await page.getByRole("button", { name: "Import 2 figures" }).waitFor();
    await keyTo(page, "Import 2 figures", "Shift+Tab");
    await page.keyboard.press("Enter");
    await expect.poll(() => focused(page)).toMatch(/Done\. .*The table Figures holds the figures now/s);
    await keyTo(page, "Groups", "Shift+Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "Groups", level: 1 }).waitFor();
    await page.getByText("Quellan").first().waitFor();
    await keyTo(page, "As a tree");
    await page.keyboard.press("Enter");
    await page.getByRole("img", { name: /join/i }).getByText("Quellan").waitFor();
  });

  // WCAG 2.2, 2.4.11 Focus Not Obscured (Minimum): what has the keyboard is not hidden whole by what the author shows.
  it("shows what it goes back to, below the title that stays", async () => {
    const met: string[] = [];
    for (let i = 0; i < 30; i++) {
      await page.keyboard.press("Shift+Tab");
      const [name = "", isHidden] = await page.evaluate(() => {
        const element = document.activeElement;
        const head = element?.closest("[role=region]")?.querySelector("header");
        if (!element || !head || head.contains(element)) return [];
        const { top, bottom } = element.getBoundingClientRect();
        return [element.textContent, Math.min(bottom, top + 24) <= head.getBoundingClientRect().bottom + 1];
      });
      if (isHidden === undefined) break;
      met.push(`${name}${isHidden === true ? " – hidden" : ""}`);
    }
    expect(met.length).toBeGreaterThan(2);
    expect(met.filter((each) => each.endsWith("hidden"))).toEqual([]);
  });
});

describe.each(["light", "dark"] as const)("axe, %s", (colorScheme) => {
  it("finds no fault in pane, grid and whole page, and none while a cell is typed into", async () => {
    const visitor = await newVisitor();
    try {
      const page = await visitor.context.newPage();
      await page.emulateMedia({ colorScheme });
      await page.goto(inject("address"));
      await page.locator("html[data-ready='true']").waitFor({ timeout: 90_000 });
      for (const part of [".pane", ".grid", "html"]) expect(await faults(page, part), part).toEqual([]);
      await page.keyboard.press("Tab");
      await page.keyboard.press("Enter");
      const hint = page.locator("[data-u-comp=rect-popup]");
      for (const [typed, hinted] of [
        ["=SU", "Adds its arguments"],
        ["M(1", "[Number 2,...]"],
      ] as const) {
        await page.keyboard.type(typed);
        await hint.getByText(hinted).waitFor();
        // What fades in has its colour at the end.
        await page.evaluate(() => Promise.all(document.getAnimations().map((each) => each.finished)));
        for (const part of [".grid", "html"])
          expect(await faults(page, part), `${part}, ${typed}`).toEqual([]);
      }
    } finally {
      await visitor.close();
    }
  });
});

/** Controls smaller than 24 by 24 pixels; links and fields within a sentence, and what lies behind a label, do not count. */
const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        "button, [role=button], [role=tab], select, textarea, summary, input",
      ),
    ]
      .filter((element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
      .filter((element) => !element.closest("[aria-hidden=true]"))
      .flatMap((element) => {
        const own = element.getBoundingClientRect();
        const label = (element as HTMLInputElement).labels?.[0]?.getBoundingClientRect();
        const width = Math.max(own.width, label?.width ?? 0);
        const height = Math.max(own.height, label?.height ?? 0);
        // What has no size is not there yet; half a pixel is lost to rounding.
        return own.height === 0 || (width >= 23.5 && height >= 23.5)
          ? []
          : [
              `${element.getAttribute("aria-label") ?? element.innerText}: ${String(width)} × ${String(height)}`,
            ];
      }),
  );

/** Texts of the page in letters below 13 pixels; drawings and the grid’s own are left to them. */
const tooFine = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>(".top *, .notices *, .pane *, .shelf *")]
      .filter((element) => !element.closest("svg") && element.checkVisibility({ visibilityProperty: true }))
      .filter((element) =>
        [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()),
      )
      .filter((element) => parseFloat(getComputedStyle(element).fontSize) < 13)
      .map((element) => element.innerText),
  );

// WCAG 2.2: 2.5.8 Target Size (24 by 24 CSS pixels), 1.4.4 Resize Text (200 %).
describe("eyes and fingers", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  beforeEach(() => page.setViewportSize({ width: 1280, height: 800 }));

  const section = async (name: string): Promise<void> => {
    await page.getByLabel("Sections").getByRole("button", { name, exact: true }).click();
    await page.getByRole("heading", { name, level: 1 }).last().waitFor();
  };

  it("have the names of sheets whole", async () => {
    const tabs = page.locator(".place [role='tab']");
    await tabs.first().waitFor();
    const cut = await tabs.evaluateAll((all) =>
      all
        .filter((tab) => tab.clientWidth < (tab.firstElementChild?.scrollWidth ?? 0))
        .map((tab) => tab.textContent),
    );
    expect(await tabs.count()).toBeGreaterThan(20);
    expect(cut).toEqual([]);
  });

  it("have most of the window for sheet and pane when everything is twice as large", async () => {
    // A window of 1280 by 800 pixels shows this many at 200 %.
    await page.setViewportSize({ width: 640, height: 400 });
    // What is as wide as its place learns of another width when it is laid out.
    await expect
      .poll(() =>
        page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      )
      .toBeLessThanOrEqual(0);
    const height = (part: string) =>
      page.locator(part).evaluate((element) => {
        element.scrollIntoView();
        const { top, bottom } = element.getBoundingClientRect();
        return Math.min(bottom, innerHeight) - Math.max(top, 0);
      });
    await expect.poll(() => height(".place")).toBeGreaterThanOrEqual(0.75 * 400);
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await expect.poll(() => height("#section-home")).toBeGreaterThanOrEqual(0.5 * 400);
  });

  it("have targets of 24 pixels or more, and hints in letters of 13 or more", async () => {
    for (const name of ["Home", "Import", "Measure", "Check", "Groups", "Fit", "Grade", "Functions"]) {
      await section(name);
      expect(await tooSmall(page), name).toEqual([]);
      expect(await tooFine(page), name).toEqual([]);
    }
    await page.getByRole("button", { name: "Books", exact: true }).click();
    expect(await tooSmall(page), "Books").toEqual([]);
    expect(await tooFine(page), "Books").toEqual([]);
    await page.getByRole("button", { name: "Books", exact: true }).click();
  });

  it("tell lines and words of drawings from the ground in forced colours", async () => {
    await page.emulateMedia({ forcedColors: "active", colorScheme: "dark" });
    await section("Groups");
    await page.getByRole("button", { name: "As a tree" }).click();
    const drawing = page.getByRole("img", { name: /join/i });
    await drawing.waitFor();
    const readContrasts = (svg: HTMLElement | SVGElement): number[] => {
      const light = (colour: string): number | undefined => {
        const parts = /^rgb\((\d+), (\d+), (\d+)\)$/.exec(colour);
        if (!parts) return undefined;
        const [r = 0, g = 0, b = 0] = parts.slice(1).map((part) => {
          const c = Number(part) / 255;
          return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      // Relative luminance and contrast as WCAG 2.2 defines them.
      let ground: Element | null = svg;
      let under: number | undefined;
      while (ground && under === undefined) {
        under = light(getComputedStyle(ground).backgroundColor);
        ground = ground.parentElement;
      }
      return [...svg.querySelectorAll("path, line, text")].flatMap((mark) => {
        const style = getComputedStyle(mark);
        const own = light(mark.tagName === "text" ? style.fill : style.stroke);
        if (own === undefined || under === undefined) return [];
        return [(Math.max(own, under) + 0.05) / (Math.min(own, under) + 0.05)];
      });
    };
    // The pane follows the colours when it hears of them.
    await expect
      .poll(() => drawing.evaluate(readContrasts))
      .toSatisfy((contrasts: number[]) => contrasts.length > 20 && Math.min(...contrasts) >= 3);
  });
});
