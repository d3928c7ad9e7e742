import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { workbookFiles } from "../../addin/standalone/workbooks/workbooks.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { descriptors } from "../../functions/all.ts";
import { runBare } from "../functions/loadFunctions.ts";
import { newVisitor } from "./page.ts";

describe("npm run build", () => {
  const dist = mkdtempSync(path.join(os.tmpdir(), "measure-book-dist-"));
  const read = (name: string): string => readFileSync(path.join(dist, name), "utf8");

  beforeAll(async () => {
    await promisify(execFile)(process.execPath, [
      "node_modules/webpack/bin/webpack.js",
      "--mode=production",
      `--output-path=${dist}`,
    ]);
  });

  afterAll(() => {
    rmSync(dist, { recursive: true, force: true });
  });

  it("writes a functions.js that answers every function by itself", () => {
    const registered = runBare(read("functions.js"));
    expect([...registered.keys()].sort()).toEqual(descriptors.map(({ name }) => name).sort());
    for (const { name, examples } of descriptors) {
      const given = (examples[0]?.values ?? []).map((value) => value ?? null);
      const answer = registered.get(name)?.(...given);
      // The script has arrays of its own realm, so compare what they hold.
      expect(asTable(JSON.parse(JSON.stringify(answer))), name).toEqual(closeTo(asTable(examples[0]?.gives)));
    }
  });

  it("describes the same functions to Excel", () => {
    const { functions } = JSON.parse(read("functions.json")) as { functions: { id: string }[] };
    expect(functions.map(({ id }) => id).sort()).toEqual(descriptors.map(({ name }) => name).sort());
  });

  it("writes every page and icon that the manifest names", () => {
    const named = [...read("manifest.xml").matchAll(/https:\/\/localhost:3000\/([\w./-]+)/g)].map(
      ([, name]) => name ?? "",
    );
    expect(named).toEqual(expect.arrayContaining(["taskpane.html", "functions.json"]));
    expect(named.filter((name) => !existsSync(path.join(dist, name)))).toEqual([]);
  });

  it("holds the workbooks that are handed out, each readable", async () => {
    const names = workbookFiles().map(({ name }) => name);
    expect(names).toHaveLength(5);
    for (const name of names) {
      const { sheets, leftOut } = await readXlsx(readFileSync(path.join(dist, "workbooks", name)));
      expect(sheets[0]?.name, name).toBe("Start");
      expect(leftOut).toEqual([]);
    }
  });

  it("has a pane page that says where it is when it is opened outside Excel", async () => {
    const server = createServer((request, response) => {
      const name = path.basename(new URL(request.url ?? "/", "http://localhost").pathname);
      const type = name.endsWith(".html") ? "text/html" : "text/javascript";
      response.setHeader("content-type", `${type}; charset=utf-8`);
      response.end(existsSync(path.join(dist, name)) ? read(name) : "");
    });
    await new Promise<void>((resolve) => server.listen(0, "localhost", resolve));
    const { port } = server.address() as AddressInfo;
    const visitor = await newVisitor({ width: 320, height: 600 });
    try {
      // Office.js with all that it loads, as the npm package has it, in place of the one on Microsoft’s network.
      await visitor.context.route(/^https:/, (route) => {
        const [, name] = /\/lib\/1\/hosted\/(.+)$/.exec(new URL(route.request().url()).pathname) ?? [];
        const place = path.join("node_modules/@microsoft/office-js/dist", name ?? "");
        return name !== undefined && existsSync(place) ? route.fulfill({ path: place }) : route.abort();
      });
      const page = await visitor.context.newPage();
      await page.goto(`http://localhost:${String(port)}/taskpane.html`);
      await page.getByText("It works inside Excel only.").waitFor();
      expect(await page.getByRole("link").getAttribute("href")).toBe("index.html");
    } finally {
      await visitor.close();
      server.close();
    }
  });
});

function asTable(value: unknown): unknown {
  return Array.isArray(value) ? value : [[value]];
}

/** The same value, with its numbers to within the three decimals that examples are written in. */
function closeTo(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(closeTo);
  // Vitest types its asymmetric matchers loosely.
  return typeof value === "number" ? (expect.closeTo(value, 3) as unknown) : value;
}
