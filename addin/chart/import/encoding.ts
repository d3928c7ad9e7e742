export const encodings = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;

/** How the bytes of a text file stand for letters. */
export type Encoding = (typeof encodings)[number];

/** Names that a person may have met, for a list to choose from. */
export const encodingNames: Readonly<Record<Encoding, string>> = {
  "utf-8": "Unicode (UTF-8)",
  "utf-16le": "Unicode (UTF-16)",
  "utf-16be": "Unicode (UTF-16, high byte first)",
  "windows-1252": "Western European (Windows-1252)",
};

/** Bytes looked at to tell the encoding; a chart says enough in its first rows. */
const sampleSize = 1 << 16;

/**
 * The encoding of a text file: by its byte order mark; else UTF-16 by the zero bytes that it puts beside plain
 * letters; else UTF-8 when every byte sequence is valid; else Windows-1252, where any byte is a letter.
 */
export function detectEncoding(bytes: Uint8Array): Encoding {
  if (startsWith(bytes, [0xef, 0xbb, 0xbf])) return "utf-8";
  if (startsWith(bytes, [0xff, 0xfe])) return "utf-16le";
  if (startsWith(bytes, [0xfe, 0xff])) return "utf-16be";
  return utf16WithoutMark(bytes) ?? (isUtf8(bytes) ? "utf-8" : "windows-1252");
}

/** Bytes → text, without the byte order mark. Bytes that the encoding does not know become “�”. */
export function decodeText(bytes: Uint8Array, encoding: Encoding): string {
  const text = new TextDecoder(encoding).decode(bytes);
  return encoding === "windows-1252" ? text.replace(/[\u0080-\u009f]/g, windowsLetter) : text;
}

export function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, i) => bytes[i] === byte);
}

/** Plain letters, digits and commas have a zero byte on one side in UTF-16: left of them or right of them. */
function utf16WithoutMark(bytes: Uint8Array): Encoding | undefined {
  const length = Math.min(bytes.length, sampleSize) & ~1;
  if (length === 0) return undefined;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let i = 0; i < length; i += 2) {
    if (bytes[i] === 0) evenZeros++;
    if (bytes[i + 1] === 0) oddZeros++;
  }
  const half = length / 2;
  if (oddZeros > half / 2 && evenZeros < half / 20) return "utf-16le";
  if (evenZeros > half / 2 && oddZeros < half / 20) return "utf-16be";
  return undefined;
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/**
 * Bytes 0x80 to 0x9F of Windows-1252, after the WHATWG Encoding Standard (index windows-1252). Some decoders
 * leave them as control characters; this puts the letters in.
 */
const windowsLetters = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

function windowsLetter(control: string): string {
  return windowsLetters[control.charCodeAt(0) - 0x80] ?? control;
}
