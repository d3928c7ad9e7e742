import { build } from "esbuild";
import type { Page } from "playwright-core";
import type { Visitor } from "../page.ts";
import type { StandInSettings } from "./office.ts";

const folder = "tests/browser/excel";

export interface ExcelPageOptions {
  /** TypeScript file whose bundle is served in place of Office.js; it calls `standInForOffice`. */
  readonly script?: string;
  readonly settings?: StandInSettings;
  /** An empty page to open it in, where something has to be prepared before. */
  readonly page?: Page;
}

/**
 * Opens the built pane page as Excel loads it, with a script of our own in the place of Office.js and nothing else
 * from the network. In the page, `standIn` and `excelDouble` say what was asked of the stand-ins.
 *
 * @param address where the built pages are served: `inject("address")`
 */
export async function openExcelPage(
  visitor: Visitor,
  address: string,
  options: ExcelPageOptions = {},
): Promise<Page> {
  const { script = `${folder}/demo.ts`, settings = {} } = options;
  const page = options.page ?? (await visitor.context.newPage());
  await page.addInitScript((given) => {
    window.standInSettings = given;
  }, settings);
  const body = await bundled(script);
  await page.route(/^https:/, (route) =>
    new URL(route.request().url()).pathname.endsWith("/office.js")
      ? route.fulfill({ body, contentType: "text/javascript" })
      : route.abort(),
  );
  await page.goto(`${address}taskpane.html`, { waitUntil: "load" });
  return page;
}

/** A TypeScript file with all that it imports, as one script for the page. */
async function bundled(script: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [script],
    bundle: true,
    format: "iife",
    target: "es2022",
    write: false,
  });
  return outputFiles[0]?.text ?? "";
}
