/** An opening tag, by its place in the text. */
export interface XmlTag {
  /** Without a namespace prefix. */
  readonly name: string;
  /** Place of `<` and of the letter after `>`. */
  readonly start: number;
  readonly end: number;
  /** True for `<c/>`. */
  readonly isEmpty: boolean;
}

/**
 * Goes through the opening tags of an XML text from the first to the last, and builds nothing.
 *
 * @returns how deep elements lie within one another at most
 * @throws {Error} where a tag has no end, or a document type is declared: parts of a workbook have none, and its
 * entities could grow without end (ISO/IEC 29500-2, “XML usage”)
 */
export function eachTag(xml: string, see: (tag: XmlTag) => void): number {
  let depth = 0;
  let deepest = 0;
  for (let start = xml.indexOf("<"); start >= 0;) {
    const next = xml.charAt(start + 1);
    let end: number;
    if (next === "!" || next === "?") end = endOfOther(xml, start);
    else if (next === "/") {
      end = found(xml.indexOf(">", start)) + 1;
      depth--;
    } else {
      end = endOfTag(xml, start);
      const isEmpty = xml.charAt(end - 2) === "/";
      if (!isEmpty) deepest = Math.max(deepest, ++depth);
      see({ name: nameAt(xml, start + 1), start, end, isEmpty });
    }
    start = xml.indexOf("<", end);
  }
  return deepest;
}

/** The value of an attribute of a tag, its entities as they stand; `undefined` when it has none. */
export function attributeOf(xml: string, { start, end }: XmlTag, name: string): string | undefined {
  const value = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(xml.slice(start, end));
  return value?.[1] ?? value?.[2];
}

const others = [
  ["<!--", "-->"],
  ["<![CDATA[", "]]>"],
  ["<?", "?>"],
] as const;

/** Comments, CDATA and processing instructions hold no tags. */
function endOfOther(xml: string, start: number): number {
  const other = others.find(([opening]) => xml.startsWith(opening, start));
  if (!other) throw new Error("A document type is declared.");
  const [opening, closing] = other;
  return found(xml.indexOf(closing, start + opening.length)) + closing.length;
}

/** Values of attributes may hold `>`. */
function endOfTag(xml: string, start: number): number {
  for (let at = start + 1; at < xml.length; at++) {
    const letter = xml.charAt(at);
    if (letter === ">") return at + 1;
    if (letter === '"' || letter === "'") at = found(xml.indexOf(letter, at + 1));
  }
  throw new Error("A tag has no end.");
}

function found(at: number): number {
  if (at < 0) throw new Error("A tag has no end.");
  return at;
}

function nameAt(xml: string, start: number): string {
  let end = start;
  let from = start;
  for (; end < xml.length; end++) {
    const code = xml.charCodeAt(end);
    if (code <= 32 || code === 62 || code === 47) break;
    if (code === 58) from = end + 1;
  }
  return xml.slice(from, end);
}
