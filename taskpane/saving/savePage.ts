import { failureText } from "../shell/notice.ts";
import { svgPicture } from "../drawing/svgPicture.ts";
import { drawingOfAddress } from "./drawingLink.ts";
import type { SentDrawing } from "./drawingLink.ts";
import { requirePlainDrawing } from "./plainDrawing.ts";

// The page that is opened in the user’s own browser, where downloads arrive. It asks nothing of Office.

function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`The page has no ${id}.`);
  return found;
}

const says = part("says", HTMLParagraphElement);
const arrived = part("arrived", HTMLDivElement);
const image = part("drawing", HTMLImageElement);
const svgLink = part("svg", HTMLAnchorElement);
const pngLink = part("png", HTMLAnchorElement);
const pasted = part("text", HTMLTextAreaElement);

async function show({ name, svg }: SentDrawing): Promise<void> {
  try {
    requirePlainDrawing(svg);
    image.src = offer(svgLink, new Blob([svg], { type: "image/svg+xml" }), `${name}.svg`);
    image.alt = name;
    arrived.hidden = false;
    says.textContent = "Here it is. Save it as a drawing, which stays sharp at any size, or as a picture.";
    await image.decode();
    const size = { width: image.naturalWidth, height: image.naturalHeight };
    offer(pngLink, await svgPicture({ text: svg, ...size }), `${name}.png`);
    pngLink.hidden = false;
  } catch (error) {
    says.textContent = failureText(error);
  }
}

/** Lets a link save a file; returns the address of the file within this page. */
function offer(link: HTMLAnchorElement, file: Blob, name: string): string {
  link.href = URL.createObjectURL(file);
  // No folders and no hidden files, whatever a link says.
  link.download = name.replaceAll(/[^\p{L}\p{N} ._-]+/gu, "-").replace(/^\.+/, "");
  return link.href;
}

part("take", HTMLButtonElement).addEventListener("click", () => {
  void show({ name: "drawing", svg: pasted.value.trim() });
});

const sent = await drawingOfAddress(window.location.hash);
if (sent) {
  part("paste", HTMLDivElement).hidden = true;
  await show(sent);
} else {
  says.textContent =
    window.location.hash.length > 1
      ? "The drawing did not arrive whole. In Excel, choose “Copy the drawing as text”, and paste it here."
      : "In Excel, choose “Copy the drawing as text”, and paste it here.";
}
