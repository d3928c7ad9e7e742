import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import { functionsJson } from "../../functions/metadata.ts";
import { addresses } from "../../manifest/addIn.ts";
import { questions } from "../../functions/questions.ts";
import { helpPages } from "../../manifest/pages/helpPages.ts";
import { readingPages } from "../../manifest/pages/readingPages.ts";

const pages = helpPages();
const base = "https://example.test/measure/";

describe("help pages", () => {
  it("each function’s helpUrl is a page that is built", () => {
    const { functions } = functionsJson(addresses(base).help);
    expect(functions.map(({ helpUrl }) => helpUrl.replace(base, ""))).toEqual(
      Object.keys(pages).filter((file) => file !== "help/index.html"),
    );
  });

  it("every link leads to a page or a place that is there", () => {
    for (const [file, html] of Object.entries(pages)) {
      for (const [, href = ""] of html.matchAll(/href="([^"]+)"/g)) {
        const [name = "", place] = new URL(href, new URL(file, base)).href.replace(base, "").split("#");
        const others = Object.keys(readingPages(base));
        expect([...Object.keys(pages), ...others, "pages.css", "icons/icon-32.png"]).toContain(name);
        if (place !== undefined) expect(pages[name]).toContain(`id="${place}"`);
      }
    }
  });

  it.each(descriptors)("$name tells what to give, with examples and what goes wrong", (descriptor) => {
    const html = pages[`help/${descriptor.name.toLowerCase()}.html`] ?? "";
    const text = plainText(html);
    for (const said of [
      descriptor.summary,
      ...descriptor.parameters.flatMap(({ name, help, standsFor = "" }) => [name, help, standsFor]),
      ...descriptor.parameters.flatMap(({ choices }) => choices?.values.map(({ word }) => word) ?? []),
      ...descriptor.examples.map(({ formula }) => `=${formula}`),
      ...descriptor.failures.map(({ when }) => when),
    ]) {
      expect(text).toContain(said.replaceAll(/\s+/g, " "));
    }
  });

  it("have one heading, nothing that runs, and names for what scrolls", () => {
    for (const html of Object.values(pages)) {
      expect(html.match(/<h1>/g)).toHaveLength(1);
      expect(html).not.toMatch(/<script|<style|\sstyle=|\son[a-z]+=/i);
      for (const [region] of html.matchAll(/<div class="wide"[^>]*>/g)) {
        expect(region).toMatch(/role="region" tabindex="0" aria-label="[^"]+"/);
      }
    }
  });

  it("the list has every function under one question", () => {
    expect(questions.flatMap(({ names }) => names).sort()).toEqual(
      descriptors.map(({ name }) => name).sort(),
    );
  });
});

function plainText(html: string): string {
  return html
    .replaceAll(/<[^>]+>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&")
    .replaceAll(/\s+/g, " ");
}
