import { mkdir, writeFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { ensureBrowser } from "../programs.mjs";
import { takeBuyersPictures } from "./buyersPictures.ts";
import { newVisitor, ready } from "./page.ts";
import { smallPng } from "./smallPng.ts";
import { startPage } from "./startPage.ts";
import { goToStop, tour } from "./tour.ts";

/**
 * `npm run screenshots`: takes the pictures of the repository from the page that `npm start` serves. Those of the README show sheet
 * and pane; in `sections/` is every answer of the pane at 320 and at 1280 pixels, some of them in the dark.
 */
const folder = "manifest/screenshots";

/** Pictures of the README by the stop of the tour that they show. */
const ofReadme: Readonly<Record<string, string>> = {
  check: "figures",
  "groups-tree": "groups",
  "fit-all": "fit",
  grade: "grade",
};

const views = [
  { width: 1280, height: 720, colorScheme: "light" },
  { width: 320, height: 800, colorScheme: "light" },
  { width: 320, height: 800, colorScheme: "dark" },
] as const;
const inTheDark = ["home", "check", "groups-tree", "fit-why", "fit-all", "grade"];

await ensureBrowser();
await mkdir(`${folder}/sections`, { recursive: true });
const { address, stop } = await startPage();
try {
  for (const { colorScheme, ...size } of views) {
    const visitor = await newVisitor(size);
    try {
      const page = await visitor.context.newPage();
      await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
      await page.goto(address);
      await ready(page);
      const isNarrow = size.width < 700;
      if (isNarrow) await page.getByRole("button", { name: "Pane", exact: true }).click();
      for (const seen of tour) {
        if (colorScheme === "dark" && !inTheDark.includes(seen.name)) continue;
        await goToStop(page, seen);
        if (!isNarrow) await goToSheet(page, seen.sheet);
        const picture = await smallPng(visitor.context, await shoot(page));
        await page.bringToFront();
        const dark = colorScheme === "dark" ? "-dark" : "";
        await keep(`sections/${seen.name}-${String(size.width)}${dark}.png`, picture);
        const readme = ofReadme[seen.name];
        if (!isNarrow && readme !== undefined) await keep(`${readme}.png`, picture);
      }
    } finally {
      await visitor.close();
    }
  }
  await takeBuyersPictures(address, keep);
} finally {
  stop();
}

/** By its address: a tab that is clicked without the arrows beside the tabs is out of sight afterwards. */
async function goToSheet(page: Page, sheet: string): Promise<void> {
  const box = page.getByLabel("Go to cell or name");
  await box.fill(`'${sheet}'!A1`);
  await box.press("Enter");
  await page.getByRole("tab", { name: sheet, exact: true, selected: true }).waitFor();
}

async function shoot(page: Page): Promise<Buffer> {
  // The grid draws on a canvas, which no locator can wait for: two frames later it stands. What fades in has its colour at the end.
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
  await page.evaluate(() => {
    for (const moving of document.getAnimations())
      if (moving.effect?.getComputedTiming().endTime !== Infinity) moving.finish();
  });
  return page.screenshot();
}

async function keep(name: string, picture: Buffer): Promise<void> {
  await writeFile(`${folder}/${name}`, picture);
  console.log(`${folder}/${name}: ${String(Math.ceil(picture.length / 1000))} kB`);
}
