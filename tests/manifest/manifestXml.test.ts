import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { OfficeAddinManifest } from "office-addin-manifest";
import { afterAll, describe, expect, it } from "vitest";
import { addIn } from "../../manifest/addIn.ts";
import { commands } from "../../manifest/commands.ts";
import { manifestXml } from "../../manifest/manifest.ts";
import { element } from "../../manifest/xml.ts";
import { pngSize } from "./pngSize.ts";

const base = "https://localhost:3000/";
const xml = manifestXml(base);
const folder = mkdtempSync(path.join(tmpdir(), "measure-book-manifest-"));
afterAll(() => rmSync(folder, { recursive: true }));

function allOf(pattern: RegExp): string[] {
  return [...xml.matchAll(pattern)].map((match) => match[1] ?? "");
}

describe("XML manifest", () => {
  it("is well-formed, and says name, version and id to Microsoft’s manifest reader", async () => {
    const file = path.join(folder, "manifest.xml");
    writeFileSync(file, xml);
    await expect(OfficeAddinManifest.readManifestFile(file)).resolves.toMatchObject({
      id: addIn.id,
      version: "0.1.0.0",
      displayName: "Measure Book",
      defaultLocale: "en-GB",
      officeAppType: "TaskPaneApp",
      permissions: "ReadWriteDocument",
      hosts: ["Workbook"],
    });
  });

  it("has a GUID that never changes", () => {
    expect(addIn.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(addIn.id).toBe("92fd357c-d47e-487a-8a37-6f374fcd7f2c");
  });

  it("follows the version of the package", () => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
    expect(addIn.version).toBe(version);
  });

  it("declares every resource that it uses, once, with an id of at most 32 characters", () => {
    const declared = allOf(/ id="([^"]+)" DefaultValue=/g);
    expect(new Set(declared).size).toBe(declared.length);
    expect(declared.every((id) => id.length <= 32)).toBe(true);
    expect(new Set(allOf(/resid="([^"]+)"/g))).toEqual(new Set(declared));
  });

  it("names one page everywhere: runtime, worksheet functions, function file and pane", () => {
    const [runtime] = allOf(/<Runtime resid="([^"]+)" lifetime="long"/g);
    expect(allOf(/<Runtime /g)).toHaveLength(1);
    expect(allOf(/<FunctionFile resid="([^"]+)"/g)).toEqual([runtime]);
    expect(allOf(/<Page>\s*<SourceLocation resid="([^"]+)"/g)).toEqual([runtime]);
    expect(allOf(/"ShowTaskpane">\s*<SourceLocation resid="([^"]+)"/g)).toEqual([runtime]);
    expect(xml).toContain(`id="${runtime ?? ""}" DefaultValue="${base}taskpane.html"`);
  });

  // Microsoft, “Configure your Office Add-in to use a shared runtime”, good practice: with a long lifetime, no action
  // has a TaskpaneId below it, since a shared runtime supports one pane only.
  it("names no pane of its own for any action", () => {
    expect(xml.toLowerCase()).not.toContain("taskpaneid");
  });

  // Microsoft, “Action element”: FunctionName must match the id passed to `Office.actions.associate`.
  it("offers its commands on the Home tab, and one in the menu of a cell", () => {
    const part = (pattern: RegExp) => pattern.exec(xml)?.[0] ?? "";
    const names = (text: string) => [...text.matchAll(/<FunctionName>([^<]+)</g)].map(([, name]) => name);
    const ribbon = part(/<OfficeTab id="TabHome">.*?<\/OfficeTab>/s);
    const menu = part(/"ContextMenu">\s*<OfficeMenu id="ContextMenuCell">.*?<\/OfficeMenu>/s);
    expect(names(ribbon)).toEqual(["CheckChart", "NewChart"]);
    expect(ribbon.match(/"ShowTaskpane"/g)).toHaveLength(1);
    expect(names(menu)).toEqual(["ExplainCell"]);
    expect(allOf(/<DesktopFormFactor>(.*?)<\/DesktopFormFactor>/gs)[0]).toContain(menu);
  });

  it("puts the runtimes first under the host", () => {
    expect(xml).toMatch(/<Host xsi:type="Workbook">\s*<Runtimes>/);
  });

  it("asks for the shared runtime and for worksheet functions with error messages", () => {
    expect(xml).toContain('<Set Name="SharedRuntime" MinVersion="1.1" />');
    expect(xml).toContain('<Set Name="CustomFunctionsRuntime" MinVersion="1.3" />');
  });

  it("calls the functions by the namespace FIT", () => {
    expect(xml).toContain('<bt:String id="Functions.Namespace" DefaultValue="FIT" />');
  });

  it("uses https addresses alone", () => {
    const addresses = allOf(/"([a-z]+:\/\/[^"]+)"/g).filter(
      (url) => !/^http:\/\/(schemas|www\.w3)\./.test(url),
    );
    expect(addresses.length).toBeGreaterThan(8);
    expect(addresses.every((url) => url.startsWith(base))).toBe(true);
  });

  it("has every icon that it names, in its size", () => {
    const icons = [...xml.matchAll(/DefaultValue="https:\/\/localhost:3000\/(icons\/[a-z]+-(\d+)\.png)"/g)];
    expect(new Set(icons.map((match) => Number(match[2])))).toEqual(new Set([16, 32, 64, 80]));
    expect(new Set(icons.map((match) => match[1])).size).toBe(4 * commands.length);
    for (const [, file, size] of icons) {
      expect(pngSize(`manifest/${file ?? ""}`)).toEqual({ width: Number(size), height: Number(size) });
    }
  });

  it("keeps the texts within the lengths that Excel shows", () => {
    const strings = (kind: string): string[] => {
      const block = new RegExp(`<bt:${kind}>(.*?)</bt:${kind}>`, "s").exec(xml)?.[1] ?? "";
      return [...block.matchAll(/DefaultValue="([^"]*)"/g)].map((match) => match[1] ?? "");
    };
    expect(strings("ShortStrings")).toHaveLength(3 + commands.length);
    expect(strings("ShortStrings").every((text) => text.length > 0 && text.length <= 125)).toBe(true);
    expect(strings("LongStrings")).toHaveLength(1 + commands.length);
    expect(strings("LongStrings").every((text) => text.length > 0 && text.length <= 250)).toBe(true);
  });

  it("has every text in the same languages", () => {
    const languages = [...xml.matchAll(/<bt:String [^>]*?(?:\/>|>(.*?)<\/bt:String>)/gs)].map((match) =>
      [...(match[1] ?? "").matchAll(/Locale="([^"]+)"/g)].map((locale) => locale[1]).sort(),
    );
    expect(languages).toHaveLength(4 + 2 * commands.length);
    for (const list of languages) expect(list).toEqual(languages[0]);
    expect(allOf(/<DefaultLocale>([^<]+)</g)).toEqual(["en-GB"]);
  });

  it("takes an address with or without the last slash, in a folder too", () => {
    expect(manifestXml("https://example.org/fit")).toContain('"https://example.org/fit/taskpane.html"');
    expect(manifestXml("https://example.org/fit/")).toContain("<AppDomain>https://example.org</AppDomain>");
  });

  it.each(["http://localhost:3000/", "localhost", ""])("refuses %j as an address", (address) => {
    expect(() => manifestXml(address)).toThrow(/https:\/\//);
  });
});

describe("element", () => {
  it("makes text and attributes safe", () => {
    expect(element("a", { b: `<"&'>` }, "x < y & z")).toBe(
      '<a b="&lt;&quot;&amp;&apos;&gt;">x &lt; y &amp; z</a>',
    );
  });

  it("indents children, however deep", () => {
    expect(element("a", {}, [element("b", {}, [element("c")])])).toBe("<a>\n  <b>\n    <c />\n  </b>\n</a>");
  });
});
