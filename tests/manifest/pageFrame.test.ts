import { describe, expect, it } from "vitest";
import { escapeHtml, htmlTable, pageFrame, paragraphs } from "../../manifest/pages/pageFrame.ts";

describe("the frame of the pages to read", () => {
  const page = pageFrame({ title: "Seams & <hems>", body: "<p>Text</p>", up: "../" });

  it("shows its title as text, in the heading and in the window", () => {
    expect(page).toContain("<h1>Seams &amp; &lt;hems&gt;</h1>");
    expect(page).toContain("<title>Seams &amp; &lt;hems&gt; – Measure Book</title>");
  });

  it("has no script and no style of its own, and allows none", () => {
    expect(page).not.toMatch(/<script|<style|\sstyle=|\son[a-z]+=/i);
    expect(page).toMatch(/Content-Security-Policy" content="default-src 'none'; style-src 'self'/);
  });

  it("reaches the built files from its folder", () => {
    expect(page).toContain('<link rel="stylesheet" href="../pages.css">');
    expect(pageFrame({ title: "T", body: "" })).toContain('<link rel="stylesheet" href="pages.css">');
  });
});

describe("what stands in the pages", () => {
  it("is shown as text", () => {
    expect(escapeHtml(`<b title="x">Tom & 'Jerry'`)).toBe(
      "&lt;b title=&quot;x&quot;&gt;Tom &amp; &apos;Jerry&apos;",
    );
    expect(paragraphs("One < two.\n\nThree.")).toBe("<p>One &lt; two.</p>\n<p>Three.</p>");
    expect(
      htmlTable("Chart", [
        ["Figure", "Bust"],
        ["<i>", 135],
      ]),
    ).toContain('<tr><td>&lt;i&gt;</td><td class="number">135</td></tr>');
  });
});
