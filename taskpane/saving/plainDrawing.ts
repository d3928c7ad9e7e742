import { InputError } from "../../addin/measures/inputError.ts";

/** Elements of a drawing of ours; none of them runs or fetches anything. */
const known = new Set(
  "svg g path rect circle ellipse line polyline polygon text tspan title desc defs clipPath pattern marker".split(
    " ",
  ),
);

/**
 * Makes sure that a text is a drawing and nothing else: it may come from a link that somebody else made.
 *
 * @throws {InputError} when it is no SVG, or holds anything that could run or fetch something
 */
export function requirePlainDrawing(text: string): void {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  if (documentElement.tagName !== "svg" || documentElement.querySelector("parsererror"))
    throw new InputError(
      "This is not a whole drawing. In Excel, choose “Copy the drawing as text” again, and paste all of it.",
    );
  for (const element of [documentElement, ...documentElement.querySelectorAll("*")]) {
    const attributes = [...element.attributes];
    const isPlain =
      known.has(element.tagName) &&
      attributes.every(
        ({ name, value }) => !/^on|href$/i.test(name) && !/url\((?!['"]?#)|@import/i.test(value),
      );
    if (!isPlain)
      throw new InputError(
        "This drawing holds more than lines and letters, so it is not from Measure Book. It is not opened here.",
      );
  }
}
