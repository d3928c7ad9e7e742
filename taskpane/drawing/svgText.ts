import { InputError } from "../../addin/measures/inputError.ts";
import { paneTheme } from "../ui/theme.ts";

/** What is read off the drawing on screen and written into the file, so that it needs no style sheet. */
const written = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-opacity",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "opacity",
  "font-size",
  "font-weight",
  "font-style",
  "text-anchor",
  "dominant-baseline",
  "paint-order",
  "text-decoration-line",
] as const;

/** Their values when nothing is said: left out of the file. */
const unsaid: readonly string[] = ["normal", "none 0px", "auto", "butt", "miter", "400", "start"];

const face = "Arial, Helvetica, sans-serif";
/** Room around, for labels that stand out. */
const margin = 8;
const space = "http://www.w3.org/2000/svg";

export interface SvgFile {
  readonly text: string;
  /** In CSS pixels. */
  readonly width: number;
  readonly height: number;
}

/**
 * A drawing on screen as the text of a file of its own: in the light colours on white ground, whatever the pane is shown
 * in, with plain values in the place of style sheets and variables.
 */
export function svgText(drawing: SVGSVGElement, title: string, description: string): SvgFile {
  const { width, height } = drawing.getBoundingClientRect();
  if (width === 0 || height === 0)
    throw new InputError("The drawing is not in sight. Open its section, then save it again.");
  const copy = shownInLight(drawing, { width, height }, (shown) => writtenOut(shown));
  const full = { width: width + 2 * margin, height: height + 2 * margin };
  copy.setAttribute("width", String(full.width));
  copy.setAttribute("height", String(full.height));
  const [x = 0, y = 0, boxWidth = width, boxHeight = height] = (drawing.getAttribute("viewBox") ?? "")
    .split(/[\s,]+/)
    .filter((part) => part !== "")
    .map(Number);
  const across = (margin * boxWidth) / width;
  const along = (margin * boxHeight) / height;
  const box = [x - across, y - along, boxWidth + 2 * across, boxHeight + 2 * along];
  copy.setAttribute("viewBox", box.join(" "));
  copy.setAttribute("font-family", face);
  copy.prepend(ofWords("title", title), ofWords("desc", description), ground(box));
  return {
    text: `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`,
    ...full,
  };
}

/** The drawing, put aside for a moment under the variables of the light theme. */
function shownInLight(
  drawing: SVGSVGElement,
  { width, height }: { readonly width: number; readonly height: number },
  read: (shown: SVGSVGElement) => SVGSVGElement,
): SVGSVGElement {
  const aside = document.createElement("div");
  aside.setAttribute("aria-hidden", "true");
  for (const [name, value] of Object.entries(paneTheme("light"))) {
    aside.style.setProperty(`--${name}`, String(value));
  }
  Object.assign(aside.style, {
    position: "absolute",
    left: "-99999px",
    width: `${String(width)}px`,
    height: `${String(height)}px`,
    forcedColorAdjust: "none",
  });
  const shown = drawing.cloneNode(true);
  if (!(shown instanceof SVGSVGElement)) throw new Error("A copy of a drawing is no drawing.");
  aside.append(shown);
  document.body.append(aside);
  try {
    return read(shown);
  } finally {
    aside.remove();
  }
}

/** A copy in which every element says its own colours, lines and letters. */
function writtenOut(shown: SVGSVGElement): SVGSVGElement {
  const copy = document.createElementNS(space, "svg");
  for (const child of shown.children) {
    const made = elementOf(child);
    if (made) copy.append(made);
  }
  return copy;
}

function elementOf(shown: Element): Element | undefined {
  const { tagName } = shown;
  const style = getComputedStyle(shown);
  if (tagName === "title" || tagName === "desc" || style.display === "none") return undefined;
  const made = document.createElementNS(space, tagName);
  for (const { name, value } of shown.attributes) {
    if (!/^(class|style|id|role|tabindex|aria-.*|data-.*)$/u.test(name)) made.setAttribute(name, value);
  }
  for (const name of written) {
    const value = style.getPropertyValue(name);
    const isText = /^(font|text|dominant)/u.test(name);
    if (value === "" || unsaid.includes(value) || (isText && !/^t(ext|span)$/u.test(tagName))) continue;
    made.setAttribute(name, plainColour(value));
  }
  for (const child of shown.childNodes) {
    const copy =
      child instanceof Element ? elementOf(child) : document.createTextNode(child.textContent ?? "");
    if (copy) made.append(copy);
  }
  return made;
}

function ground([x = 0, y = 0, width = 0, height = 0]: readonly number[]): Element {
  const made = document.createElementNS(space, "rect");
  for (const [name, value] of Object.entries({ x, y, width, height, fill: "#FFFFFF" })) {
    made.setAttribute(name, String(value));
  }
  return made;
}

function ofWords(tag: "title" | "desc", words: string): Element {
  const made = document.createElementNS(space, tag);
  made.textContent = words;
  return made;
}

/**
 * A colour that drawing programs and printers know too.
 *
 * @example
 * plainColour("rgb(31, 95, 168)"); // "#1F5FA8"
 */
export function plainColour(value: string): string {
  const parts = /^rgb\((\d+), (\d+), (\d+)\)$/u.exec(value);
  if (!parts) return value;
  return `#${parts
    .slice(1)
    .map((part) => Number(part).toString(16).padStart(2, "0"))
    .join("")
    .toUpperCase()}`;
}
