const longest = 40;

/** A text as messages quote it: in quotation marks, cut short when it is long. */
export function quote(text: string): string {
  const characters = [...text.replace(/\s+/g, " ").trim()];
  return characters.length > longest
    ? `“${characters.slice(0, longest).join("")}…”`
    : `“${characters.join("")}”`;
}
