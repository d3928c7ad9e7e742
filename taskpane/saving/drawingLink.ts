/** A drawing on its way to the page that saves it. */
export interface SentDrawing {
  /** Name of the file without its ending. */
  readonly name: string;
  /** The drawing as the text of an SVG file. */
  readonly svg: string;
}

/**
 * The address of the page that saves a drawing in the user’s own browser. The drawing travels behind the #, which browsers
 * keep to themselves (RFC 9110, section 4.2.5: the fragment is not sent), deflated and as base64url (RFC 4648, section 5).
 *
 * @param page address of the pane’s page
 */
export async function drawingAddress(drawing: SentDrawing, page: string): Promise<string> {
  const { deflateSync, strToU8 } = await import("fflate");
  const packed = deflateSync(strToU8(JSON.stringify(drawing)), { level: 9 });
  const text = btoa(Array.from(packed, (byte) => String.fromCharCode(byte)).join(""));
  const address = new URL("save.html", page);
  address.hash = text.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
  return address.href;
}

/** What stands behind the # of an address; `undefined` where that is no whole drawing. */
export async function drawingOfAddress(hash: string): Promise<SentDrawing | undefined> {
  if (hash.length < 2) return undefined;
  const { inflateSync, strFromU8 } = await import("fflate");
  try {
    const text = atob(hash.slice(1).replaceAll("-", "+").replaceAll("_", "/"));
    const packed = Uint8Array.from(text, (character) => character.charCodeAt(0));
    const sent: unknown = JSON.parse(strFromU8(inflateSync(packed)));
    return isDrawing(sent) ? sent : undefined;
  } catch {
    return undefined;
  }
}

function isDrawing(sent: unknown): sent is SentDrawing {
  if (typeof sent !== "object" || sent === null) return false;
  const { name, svg } = sent as Partial<Record<keyof SentDrawing, unknown>>;
  return typeof name === "string" && typeof svg === "string";
}
