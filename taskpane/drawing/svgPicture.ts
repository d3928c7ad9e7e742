import { InputError } from "../../addin/measures/inputError.ts";
import type { SvgFile } from "./svgText.ts";

/** Dots to a CSS pixel: sharp enough for a page or a print. */
const fineness = 2;
/** Browsers refuse larger pictures. */
const mostDots = 8192;

/**
 * A drawing as a PNG picture, at twice its size on screen.
 *
 * @throws {InputError} when the browser cannot make the picture
 */
export async function svgPicture({ text, width, height }: SvgFile): Promise<Blob> {
  const scale = Math.min(fineness, mostDots / Math.max(width, height));
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  try {
    await image.decode();
    canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  } catch {
    throw new InputError("This browser could not draw the picture. Save it as SVG instead.");
  }
  const picture = await new Promise<Blob | null>((resolve) => {
    canvas.toBlob(resolve, "image/png");
  });
  if (picture) return picture;
  throw new InputError("This browser could not make the picture. Save it as SVG instead.");
}
