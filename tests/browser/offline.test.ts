import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import sirv from "sirv";
import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import { headersFor } from "../../manifest/policy.mjs";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, ready } from "./page.ts";
import { builtFolder } from "./startPage.ts";

/** A web server of the built page, as `npm start` has it, that can be stopped and can come to serve another build. */
class Host {
  readonly folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-host-"));
  #server: Server | undefined;

  constructor() {
    cpSync(builtFolder(), this.folder, { recursive: true });
  }

  /** @returns the address of the page */
  async start(port = 0): Promise<string> {
    const files = sirv(this.folder, { dev: true, etag: true });
    const server = createServer((request, response) => {
      for (const [name, value] of Object.entries(headersFor(request.url ?? "/")))
        response.setHeader(name, value);
      files(request, response, () => {
        response.statusCode = 404;
        response.end();
      });
    });
    await new Promise<void>((resolve) => server.listen(port, "localhost", resolve));
    this.#server = server;
    return `http://localhost:${String((server.address() as AddressInfo).port)}/`;
  }

  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = undefined;
    if (!server) return;
    await new Promise((resolve) => {
      server.close(resolve);
      server.closeAllConnections();
    });
  }

  /** The same page as another build would have it: its script has another name, wherever that is written. */
  becomeNewer(): string {
    const names = readdirSync(this.folder);
    const before = names.find((name) => name.startsWith("standalone.")) ?? "";
    const after = "standalone.0123456789abcdef0123.js";
    renameSync(path.join(this.folder, before), path.join(this.folder, after));
    for (const name of ["index.html", "offline.js"]) {
      const file = path.join(this.folder, name);
      const text = readFileSync(file, "utf8");
      const version = /"version":"[0-9a-f]{20}"/;
      writeFileSync(
        file,
        text.replaceAll(before, after).replace(version, '"version":"abcdefabcdefabcdefab"'),
      );
    }
    return after;
  }

  async remove(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Resolves when the browser keeps all of the page. */
function isKept(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === "activated") return;
    await new Promise((resolve) => active?.addEventListener("statechange", resolve, { once: true }));
  });
}

const scriptOf = (page: Page) => page.locator("script[src*='standalone.']").getAttribute("src");

describe("the page on a computer without a network", { timeout: 300_000 }, () => {
  let host: Host;
  let visitor: Visitor;
  let address: string;

  beforeEach(async () => {
    host = new Host();
    address = await host.start();
    visitor = await newVisitor(undefined, { keepsPage: true });
  });

  afterEach(async () => {
    await visitor.close();
    await host.remove();
  });

  it("opens again when its server is gone, calculates, opens every section, and asks nothing of anybody", async () => {
    const asked: string[] = [];
    visitor.context.on("request", (request) => asked.push(request.url()));
    const first = await visitor.open(address);
    await isKept(first);
    await handsOn(first).addSheet();
    await handsOn(first).typeInto("A1", '=FIT.LENGTH("5 3/8 in")');
    await expect.poll(() => first.locator(".saved").textContent()).toMatch(/^Kept in this browser/);
    await first.close();
    await host.stop();
    await expect(fetch(address)).rejects.toThrow();

    const page = await visitor.open(address);
    const hands = handsOn(page);
    // 5 3/8 in × 25.4 mm: the international inch (NIST Special Publication 811, appendix B).
    const lastSheet = async () => (await hands.saved()).sheets.at(-1)?.cells.map((row) => row[0]?.value);
    await expect.poll(lastSheet).toEqual([136.525]);
    const sheet = (await hands.saved()).sheets.at(-1)?.name ?? "";
    await hands.typeInto(`${sheet}!A2`, '=FIT.LENGTH("1 in")');
    await expect.poll(lastSheet, { timeout: 30_000 }).toEqual([136.525, 25.4]);
    for (const section of ["Check", "Groups", "Fit", "Grade", "Functions"]) {
      await page.getByLabel("Sections").getByRole("button", { name: section, exact: true }).click();
      await page.getByRole("heading", { name: section, exact: true }).waitFor();
    }
    expect(asked.filter((url) => !url.startsWith(address) && !/^(data|blob):/.test(url))).toEqual([]);
  });

  it("offers a newer version where it stays open, and takes it when asked, with nothing lost", async () => {
    const page = await visitor.open(address);
    await isKept(page);
    const before = await scriptOf(page);
    const after = host.becomeNewer();
    await page.evaluate(async () => {
      await (await navigator.serviceWorker.ready).update();
    });
    const offer = page.getByText("A new version of Measure Book is ready");
    await offer.waitFor({ timeout: 60_000 });
    // Nothing is forced: the page is the one that it was, and goes on working.
    expect(await scriptOf(page)).toBe(before);
    const hands = handsOn(page);
    await hands.typeInto("Figures!A60", "written before the new version");
    await page.getByRole("button", { name: "Use it now" }).click();
    await page.locator(`script[src='${after}']`).waitFor({ state: "attached" });
    await ready(page);
    const figures = (await handsOn(page).saved()).sheets.find(({ name }) => name === "Figures");
    expect(figures?.cells[59]?.[0]?.value).toBe("written before the new version");
    expect(await page.getByText("A new version of Measure Book is ready").count()).toBe(0);
  });

  it("is the newer one at once when it is opened anew, though an older one is kept", async () => {
    const first = await visitor.open(address);
    await isKept(first);
    await first.close();
    const after = host.becomeNewer();
    const page = await visitor.open(address);
    expect(await scriptOf(page)).toBe(after);
  });

  it("keeps away from the pane that Excel shows", async () => {
    const first = await visitor.open(address);
    await isKept(first);
    await host.stop();
    const pane = await visitor.context.newPage();
    await expect(pane.goto(`${address}taskpane.html`)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
  });
});

describe("the page as an app", () => {
  // W3C, “Web Application Manifest”: members name, icons, start_url, display. web.dev, “What does it take to be
  // installable?”: icons of 192 and 512 pixels.
  it("names itself, with icons that are there in the sizes it states", async () => {
    const address = inject("address");
    const page = await (await fetch(address)).text();
    const link = /<link rel="manifest" href="([^"]+)"/.exec(page)?.[1] ?? "";
    const answer = await fetch(address + link);
    expect(answer.headers.get("content-type")).toMatch(/^application\/manifest\+json/);
    const app = (await answer.json()) as { start_url: string; icons: { src: string; sizes: string }[] };
    expect(app).toMatchObject({ name: "Measure Book", display: "standalone", start_url: "./" });
    expect(app.icons.map(({ sizes }) => sizes)).toEqual(["192x192", "512x512"]);
    for (const { src, sizes } of app.icons) {
      const bytes = new DataView(await (await fetch(address + src)).arrayBuffer());
      // W3C, “PNG”, 11.2.1: width and height stand at bytes 16 and 20.
      expect(`${String(bytes.getUint32(16))}x${String(bytes.getUint32(20))}`).toBe(sizes);
    }
  });
});
