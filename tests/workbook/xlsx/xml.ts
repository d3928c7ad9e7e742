import { strFromU8, unzipSync } from "fflate";

/** An element of a part; text between elements is joined. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

/** Every part of a workbook file, as text by name. */
export function partsOf(bytes: Uint8Array): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));
}

/**
 * Reads XML of the plain kind that workbook files hold.
 *
 * @throws {Error} when it is not well-formed
 */
export function parse(xml: string): Element {
  const root = { name: "", attributes: {}, children: [] as Element[], text: "" };
  const open = [root];
  const token = /<\?[^>]*\?>|<(\/?)([\w:.-]+)((?:\s+[\w:.-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/gy;
  let end = 0;
  for (const match of xml.matchAll(token)) {
    end = match.index + match[0].length;
    const [, closing, name, attributes = "", empty, text] = match;
    const inner = open.at(-1);
    if (!inner) break;
    if (text !== undefined) inner.text += decoded(text);
    else if (name === undefined) continue;
    else if (closing) {
      if (inner.name !== name || open.length === 1) throw new Error(`</${name}> closes <${inner.name}>`);
      open.pop();
    } else {
      const element = { name, attributes: attributesOf(attributes), children: [] as Element[], text: "" };
      inner.children.push(element);
      if (!empty) open.push(element);
    }
  }
  const [top, ...others] = root.children;
  if (end !== xml.length || open.length > 1 || !top || others.length > 0)
    throw new Error(`not well-formed at ${String(end)}`);
  return top;
}

/** All elements of a name, at any depth, in order. */
export function all(element: Element, name: string): readonly Element[] {
  return element.children.flatMap((child) => [...(child.name === name ? [child] : []), ...all(child, name)]);
}

function attributesOf(text: string): Record<string, string> {
  const pairs = [...text.matchAll(/([\w:.-]+)="([^"]*)"/g)].map(
    ([, name = "", value = ""]) => [name, decoded(value)] as const,
  );
  const names = new Set(pairs.map(([name]) => name));
  if (names.size < pairs.length) throw new Error(`an attribute stands twice: ${text}`);
  return Object.fromEntries(pairs);
}

function decoded(text: string): string {
  return text.replace(/&([^;]*);/g, (_, name: string) => {
    const known: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
    const character = name.startsWith("#") ? String.fromCharCode(Number(name.slice(1))) : known[name];
    if (character === undefined) throw new Error(`&${name}; is not known`);
    return character;
  });
}
