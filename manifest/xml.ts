/** Text made safe for XML content and attribute values. */
export function escapeXml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&apos;");
}

/** `<name attribute="value">children</name>`, one element a line, children further in. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string>> = {},
  children: string | readonly string[] = [],
): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(value)}"`);
  const start = `<${name}${written.join("")}`;
  if (typeof children === "string") return `${start}>${escapeXml(children)}</${name}>`;
  if (children.length === 0) return `${start} />`;
  return [`${start}>`, ...children.map(indented), `</${name}>`].join("\n");
}

function indented(lines: string): string {
  return lines.replaceAll(/^/gm, "  ");
}
