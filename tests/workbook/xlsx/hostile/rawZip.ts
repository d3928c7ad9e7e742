import { deflateRawSync } from "node:zlib";
import { crc32 } from "../../../../addin/workbook/crc32.ts";

/** A part of a ZIP as it is written, true or not. */
export interface RawPart {
  readonly name: string;
  /** Deflated. */
  readonly packed: Uint8Array;
  /** Bytes when expanded, as the ZIP states it. */
  readonly size: number;
  readonly checksum: number;
  /** Take the bytes of the part before instead of writing `packed`. */
  readonly overlapsBefore?: boolean;
}

export function rawPart(name: string, text: string | Uint8Array): RawPart {
  const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
  return { name, packed: deflateRawSync(bytes), size: bytes.length, checksum: crc32(bytes) };
}

/**
 * A ZIP written byte by byte, so that it can state what is not so.
 * Source: PKWARE, “.ZIP File Format Specification” (APPNOTE), 4.3.7, 4.3.12 and 4.3.16.
 */
export function rawZip(parts: readonly RawPart[]): Uint8Array {
  const pieces: Uint8Array[] = [];
  const entries: Uint8Array[] = [];
  let length = 0;
  let before = 0;
  for (const part of parts) {
    const name = new TextEncoder().encode(part.name);
    const offset = part.overlapsBefore ? before : length;
    if (!part.overlapsBefore) {
      const local = new DataView(new ArrayBuffer(30));
      local.setUint32(0, 0x04034b50, true);
      about(local, 4, part, name.length);
      const piece = [new Uint8Array(local.buffer), name, part.packed];
      pieces.push(...piece);
      length += piece.reduce((sum, { byteLength }) => sum + byteLength, 0);
    }
    before = offset;
    const entry = new DataView(new ArrayBuffer(46));
    entry.setUint32(0, 0x02014b50, true);
    entry.setUint16(4, 20, true);
    about(entry, 6, part, name.length);
    entry.setUint32(42, offset, true);
    entries.push(new Uint8Array(entry.buffer), name);
  }
  const end = new DataView(new ArrayBuffer(22));
  end.setUint32(0, 0x06054b50, true);
  end.setUint16(8, parts.length, true);
  end.setUint16(10, parts.length, true);
  end.setUint32(
    12,
    entries.reduce((sum, { byteLength }) => sum + byteLength, 0),
    true,
  );
  end.setUint32(16, length, true);
  return Buffer.concat([...pieces, ...entries, new Uint8Array(end.buffer)]);
}

/** What the header of a part and its entry in the list share. */
function about(view: DataView, at: number, { packed, size, checksum }: RawPart, nameLength: number): void {
  view.setUint16(at, 20, true);
  view.setUint16(at + 4, 8, true);
  view.setUint32(at + 10, checksum, true);
  view.setUint32(at + 14, packed.length, true);
  view.setUint32(at + 18, size, true);
  view.setUint16(at + 22, nameLength, true);
}
