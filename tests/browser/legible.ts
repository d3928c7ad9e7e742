/*
 * What can make a part of the page hard to read, found where it is shown. The functions run in the page: each is whole in itself.
 */

/**
 * Words that are cut off or lie over others, and parts that reach beyond the column. What scrolls in its own box may be wider than
 * the box; a name that is shortened by an ellipsis on purpose says all of itself in its `title` or in its list of choices.
 *
 * @param within the part that is looked at, as wide as its column
 */
export function hardToRead(within: Element): string[] {
  const found = new Set<string>();
  const column = within.getBoundingClientRect();
  const said = (part: Element): string =>
    `${part.tagName.toLowerCase()} “${(part.getAttribute("aria-label") ?? part.textContent).replace(/\s+/g, " ").trim().slice(0, 60)}”`;
  const above = (part: Element): Element[] => {
    const parts: Element[] = [];
    for (let each: Element | null = part; each && each !== within; each = each.parentElement)
      parts.push(each);
    return parts;
  };
  const isSeen = (part: Element): boolean =>
    part.checkVisibility({ visibilityProperty: true }) &&
    // Heard only, or folded to nothing.
    !above(part).some((each) => {
      const { clipPath, overflow } = getComputedStyle(each);
      return clipPath.startsWith("inset") || (overflow === "hidden" && each.clientWidth === 0);
    });
  /** What cuts a part off: the boxes around it that scroll. */
  const windowOf = (part: Element): DOMRect[] =>
    above(part)
      .slice(1)
      .filter((each) => /auto|scroll/.test(getComputedStyle(each).overflow))
      .map((each) => each.getBoundingClientRect());
  const words: { readonly text: string; readonly box: DOMRect }[] = [];

  for (const part of within.querySelectorAll<HTMLElement | SVGElement>("*")) {
    if (!isSeen(part)) continue;
    const box = part.getBoundingClientRect();
    if (box.width === 0 || box.height === 0) continue;
    const style = getComputedStyle(part);
    const scrolls = windowOf(part).length > 0;
    const drawing = part instanceof SVGElement ? part.ownerSVGElement : null;
    if (!scrolls && (!drawing || part instanceof SVGTextElement)) {
      const beyond = Math.max(box.right - column.right, column.left - box.left);
      if (beyond > 1) found.add(`${String(Math.round(beyond))} px beyond the column: ${said(part)}`);
    }
    if (
      part instanceof HTMLElement &&
      part.textContent.trim() !== "" &&
      !part.matches("input, textarea, select")
    ) {
      const isShortened =
        style.textOverflow === "ellipsis" || style.webkitLineClamp !== "none"
          ? part.closest("[title]")
          : null;
      const cuts = (overflow: string): boolean => /hidden|clip/.test(overflow);
      const isCut =
        (cuts(style.overflowX) && part.scrollWidth > part.clientWidth + 1) ||
        (cuts(style.overflowY) && part.scrollHeight > part.clientHeight + 1);
      const isAroundShortened = part.querySelector("[title], span") !== null && part.matches("[title]");
      if (isCut && !isShortened && !isAroundShortened) found.add(`cut off: ${said(part)}`);
    }
    for (const child of part.childNodes) {
      if (child.nodeType !== Node.TEXT_NODE || child.textContent?.trim() === "") continue;
      if (part.closest("header, select, title, desc, style")) continue;
      if (above(part).some((each) => getComputedStyle(each).position === "sticky")) continue;
      const range = document.createRange();
      range.selectNodeContents(child);
      for (const line of range.getClientRects()) {
        // Letters fill the middle of their line; those of a drawing are as large as the drawing is shown.
        const scale = part instanceof SVGGraphicsElement ? (part.getScreenCTM()?.a ?? 1) : 1;
        const size = parseFloat(style.fontSize) * scale * 0.8;
        let [left, top, right, bottom] = [
          line.left,
          line.top + (line.height - size) / 2,
          line.right,
          line.top + (line.height + size) / 2,
        ];
        for (const seen of windowOf(part)) {
          left = Math.max(left, seen.left);
          top = Math.max(top, seen.top);
          right = Math.min(right, seen.right);
          bottom = Math.min(bottom, seen.bottom);
        }
        if (right - left > 2 && bottom - top > 2)
          words.push({
            text: (child.textContent ?? "").trim().slice(0, 40),
            box: new DOMRect(left, top, right - left, bottom - top),
          });
      }
    }
  }
  words.sort((a, b) => a.box.top - b.box.top);
  for (const [i, one] of words.entries()) {
    for (const other of words.slice(i + 1)) {
      if (other.box.top >= one.box.bottom) break;
      const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const down = Math.min(one.box.bottom, other.box.bottom) - other.box.top;
      if (across > 1.5 && down > 1.5) found.add(`“${one.text}” lies over “${other.text}”`);
    }
  }
  return [...found];
}

/** The size of the smallest letters in the drawings, as they are shown, in CSS pixels; infinite where there are none. */
export function smallestDrawnLetters(within: Element): number {
  const sizes = [...within.querySelectorAll<SVGTextElement>("svg[role=img] text")]
    .filter((text) => text.checkVisibility({ visibilityProperty: true }))
    .map((text) => parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM()?.d ?? 0));
  return Math.min(...sizes);
}

/**
 * Lines and shapes of drawings that are not in the colours which the user has set for everything, or that are in the colour of
 * their ground: browsers put the user’s colours in the place of ours, but not inside drawings (CSS Color Adjustment Module Level 1,
 * forced colours).
 */
export function notInForcedColours(within: Element): string[] {
  const probe = document.body.appendChild(document.createElement("span"));
  const colourOf = (name: string): string => {
    probe.style.color = name;
    return getComputedStyle(probe).color;
  };
  // CSS Color Module Level 4, system colours.
  const names = [
    "Canvas",
    "CanvasText",
    "LinkText",
    "ButtonText",
    "ButtonFace",
    "ButtonBorder",
    "GrayText",
    "Highlight",
    "HighlightText",
  ];
  const system = new Set(names.map(colourOf));
  const ground = colourOf("Canvas");
  probe.remove();
  const isNone = (paint: string): boolean => paint === "none" || /^rgba\(.*, 0\)$|\/ 0\)$/.test(paint);
  const found = new Set<string>();
  for (const part of within.querySelectorAll<SVGElement>(
    "svg :is(path, line, rect, circle, ellipse, polygon, polyline, text)",
  )) {
    if (!part.checkVisibility({ visibilityProperty: true }) || part.closest("clipPath, defs")) continue;
    const { fill, stroke } = getComputedStyle(part);
    const paints = [...(part.matches("line") ? [] : [fill]), stroke].filter((paint) => !isNone(paint));
    const name = `${part.tagName} of “${part.closest("svg")?.textContent.trim().slice(0, 40) ?? ""}”`;
    for (const paint of paints) if (!system.has(paint)) found.add(`${name} is ${paint}`);
    // Letters stand on marks, and signs of controls on these: their ground is another.
    const isOnMark = part.matches("text") || !part.closest("svg[role=img]");
    if (!isOnMark && paints.length > 0 && paints.every((paint) => paint === ground))
      found.add(`${name} is not to be seen`);
  }
  return [...found];
}
