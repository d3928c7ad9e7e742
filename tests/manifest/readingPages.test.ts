import { describe, expect, it } from "vitest";
import { commands } from "../../manifest/commands.ts";
import { helpPages, readingPages } from "../../manifest/manifest.ts";

const home = "https://example.org/fit/";
const pages = readingPages(home);
const plain = (html: string) => html.replaceAll(/<[^>]+>/g, "").replaceAll(/\s+/g, " ");

describe("pages to read beside the help", () => {
  const files = Object.keys(pages);

  it("are those that the manifests name", () => {
    expect(files).toEqual(["add-to-excel.html", "privacy.html", "terms.html"]);
  });

  it.each(files)("%s links only to built files, places on itself, and Microsoft", (file) => {
    const built = new Set([...files, ...Object.keys(helpPages()), "index.html", "manifest.xml"]);
    const links = [...(pages[file] ?? "").matchAll(/<a href="([^"]+)"/g)].map(([, link]) => link ?? "");
    expect(links.length).toBeGreaterThan(3);
    for (const link of links) {
      if (link.startsWith("#")) expect(pages[file]).toContain(`id="${link.slice(1)}"`);
      else if (link.startsWith("https:"))
        expect(link).toMatch(/^https:\/\/(www\.office|admin\.microsoft)\.com\/$/);
      else expect(built).toContain(link);
    }
  });

  it("leads to Excel on the web, on a Mac and on Windows, and through the admin centre, and says what should be seen", () => {
    const text = plain(pages["add-to-excel.html"] ?? "");
    // Microsoft, “Sideload Office Add-ins to Office on the web”: Home, Add-ins, More Settings, Upload My Add-in.
    expect(text).toMatch(/Home, then Add-ins, then More Settings.*Upload My Add-in.*Browse/);
    // “Sideload Office Add-ins on Mac”: the folder wef below Excel’s documents.
    expect(text).toMatch(/~\/Library\/Containers\/com\.microsoft\.Excel\/Data\/Documents.*wef/);
    // “Sideload Office Add-ins from a network share”: Trust Center, Trusted Add-in Catalogs, Catalog Url, Show in Menu.
    expect(text).toMatch(/Trust Center Settings, Trusted Add-in Catalogs.*Catalog Url.*Show in Menu/);
    // “Activate add-ins with events”, deployment: Settings, Integrated apps, Upload custom apps.
    expect(text).toMatch(/Settings, then Integrated apps, then Upload custom apps/);
    expect(text).toContain(`${home}manifest.xml`);
    for (const { label } of commands) expect(text).toContain(label);
  });

  it("says of a copy for this computer that it works only while it is served", () => {
    const served = "stays open";
    expect(plain(readingPages("https://localhost:3000/")["add-to-excel.html"] ?? "")).toContain(served);
    expect(plain(pages["add-to-excel.html"] ?? "")).not.toContain(served);
  });
});
