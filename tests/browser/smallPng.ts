import { deflateSync } from "node:zlib";
import type { BrowserContext } from "playwright-core";
import { crc32 } from "../../addin/workbook/crc32.ts";

/**
 * The same picture with a palette of 64 colours, a third as large: what is shown here is letters and plain grounds. The colours
 * that are seen most are kept; each other one becomes the nearest of them.
 */
export async function smallPng(context: BrowserContext, png: Buffer): Promise<Buffer> {
  const { width, height, pixels } = await pixelsOf(context, png);
  const counts = new Map<number, number>();
  for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
  const palette = [...counts]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 64)
    .map(([pixel]) => pixel);
  const places = new Map(palette.map((pixel, place) => [pixel, place]));
  const lines = Buffer.alloc((width + 1) * height);
  pixels.forEach((pixel, i) => {
    const place = places.get(pixel) ?? nearest(palette, pixel);
    places.set(pixel, place);
    // Each line begins with its filter, which is none.
    lines[i + Math.floor(i / width) + 1] = place;
  });
  return encoded(width, height, palette, lines);
}

/** The colours of a picture as `0xRRGGBB`, line by line; a browser reads it. */
async function pixelsOf(
  context: BrowserContext,
  png: Buffer,
): Promise<{ readonly width: number; readonly height: number; readonly pixels: readonly number[] }> {
  const page = await context.newPage();
  const read = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const pen = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d");
    if (!pen) throw new Error("The browser cannot read the picture.");
    pen.drawImage(bitmap, 0, 0);
    const { data, width, height } = pen.getImageData(0, 0, bitmap.width, bitmap.height);
    const pixels = Array.from(
      { length: width * height },
      (_, i) => ((data[i * 4] ?? 0) << 16) | ((data[i * 4 + 1] ?? 0) << 8) | (data[i * 4 + 2] ?? 0),
    );
    return { width, height, pixels };
  }, png.toString("base64"));
  await page.close();
  return read;
}

function nearest(palette: readonly number[], pixel: number): number {
  let [best, least] = [0, Infinity];
  palette.forEach((colour, place) => {
    const off = [16, 8, 0].reduce(
      (sum, bits) => sum + (((colour >> bits) & 255) - ((pixel >> bits) & 255)) ** 2,
      0,
    );
    if (off < least) [best, least] = [place, off];
  });
  return best;
}

/** W3C, Portable Network Graphics (third edition), 11.2: header, palette, image data, end. */
function encoded(width: number, height: number, palette: readonly number[], lines: Buffer): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  // Eight bits a pixel, colours by palette.
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk(
      "PLTE",
      Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255])),
    ),
    chunk("IDAT", deflateSync(lines, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}
