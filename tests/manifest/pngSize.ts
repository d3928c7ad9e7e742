import { readFileSync } from "node:fs";

/** Width and height in the header of a PNG file (PNG specification, chunk IHDR). */
export function pngSize(file: string): { width: number; height: number } {
  const bytes = readFileSync(file);
  if (bytes.subarray(0, 8).toString("latin1") !== "\x89PNG\r\n\x1a\n")
    throw new Error(`${file} is not a PNG`);
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}
