import { mkdir } from "node:fs/promises";
import type { Page } from "playwright-core";
import { ensureBrowser } from "../programs.mjs";
import { newVisitor } from "./page.ts";
import { startPage } from "./startPage.ts";

/** `npm run screenshots`: takes the pictures of the README from the page that `npm start` serves. */
const folder = "manifest/screenshots";

await ensureBrowser();
await mkdir(folder, { recursive: true });
const { address, stop } = await startPage();
const visitor = await newVisitor({ width: 1280, height: 800 });
try {
  const page = await visitor.open(address);
  await open(page, "Check");
  await page.locator("[data-flag]").first().waitFor();
  await shoot(page, "figures", "Figures");
  await open(page, "Groups");
  await page.getByRole("button", { name: "As a tree" }).click();
  await page.getByRole("img", { name: /join/i }).scrollIntoViewIfNeeded();
  await shoot(page, "groups", "Groups");
  await open(page, "Fit");
  await page.getByRole("button", { name: /^Which figures wear this/ }).waitFor();
  await shoot(page, "fit", "Match");
  await open(page, "Grade");
  await page.getByLabel("To be worn by (target figure)").selectOption("Isolmay");
  await page.getByRole("img", { name: /Bodice front/ }).scrollIntoViewIfNeeded();
  await shoot(page, "grade", "Grade");
} finally {
  await visitor.close();
  stop();
}

async function open(page: Page, section: string): Promise<void> {
  await page.getByLabel("Sections").getByRole("button", { name: section, exact: true }).click();
}

async function shoot(page: Page, name: string, sheet: string): Promise<void> {
  await page.locator(".place").getByText(sheet, { exact: true }).last().click();
  // The grid draws on a canvas, which no locator can wait for: two frames later it stands.
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
  await page.screenshot({ path: `${folder}/${name}.png` });
  console.log(`${folder}/${name}.png`);
}
