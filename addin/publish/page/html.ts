/** HTML that is complete: every text in it is escaped. Only this file makes it from text. */
export interface Html {
  readonly html: string;
}

type Content = Html | string | number | false | undefined | readonly Content[];

const escapes: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** A text as it stands in HTML, in elements and in quoted attributes. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/gu, (character) => escapes[character] ?? "").replace(notText, "\ufffd");
}

/** Control characters that HTML allows nowhere (WHATWG HTML, “Preprocessing the input stream”), and halves of pairs. */
const notText = /(?![\t\n\r])\p{Cc}|[\ufdd0-\ufdef\ufffe\uffff]|\p{Surrogate}/gu;

/** HTML with contents put in: texts escaped, lists one after the other, nothing for what is false or undefined; without the indents. */
export function markup(parts: TemplateStringsArray, ...contents: readonly Content[]): Html {
  return { html: parts.map((part, i) => part.replace(/\n\s*/gu, "\n") + textOf(contents[i])).join("") };
}

/** A name of somebody else’s: its direction does not turn the words around it (HTML, element bdi). */
export function name(text: string): Html {
  return markup`<bdi>${text}</bdi>`;
}

/** JSON for a data block: no character in it can end the block (WHATWG HTML, “Restrictions for contents of script elements”). */
export function dataBlock(value: unknown): Html {
  return { html: JSON.stringify(value).replace(/[<>&\u2028\u2029]/gu, unicodeEscape) };
}

function unicodeEscape(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}

/** A text of ours that stands in HTML as it is, such as a style sheet. */
export function asIs(text: string): Html {
  return { html: text };
}

function textOf(content: Content): string {
  if (content === undefined || content === false) return "";
  if (typeof content === "string") return escaped(content);
  if (typeof content === "number") return String(content);
  if (isList(content)) return content.map(textOf).join("");
  return content.html;
}

function isList(content: Html | readonly Content[]): content is readonly Content[] {
  return Array.isArray(content);
}
