const longest = 40;

/** A text as messages quote it: in quotation marks, cut short when it is long. */
export function quote(text: string): string {
  return `“${cutShort(text)}”`;
}

/** A text on one line, cut short when it is long. */
export function cutShort(text: string): string {
  // A long text is cut before it is taken apart, which keeps huge ones fast.
  const characters = [
    ...text
      .slice(0, 20 * longest)
      .replace(/\s+/g, " ")
      .trim(),
  ];
  return characters.length > longest ? `${characters.slice(0, longest).join("")}…` : characters.join("");
}

/**
 * The first of a list of names that fit into a message, and how many more there are; at least one is shown.
 *
 * @example someOf(["Bust", "Waist", "Hip", "Height"], 12) // "Bust, Waist and 2 more"
 */
export function someOf(names: readonly string[], room = 70): string {
  const shown: string[] = [];
  let taken = 0;
  for (const name of names) {
    taken += name.length + 2;
    if (shown.length > 0 && taken > room) break;
    shown.push(name);
  }
  const more = names.length - shown.length;
  return `${shown.join(", ")}${more > 0 ? ` and ${String(more)} more` : ""}`;
}
