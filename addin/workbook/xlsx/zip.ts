import { Inflate } from "fflate";
import { crc32 } from "../crc32.ts";

/** A part of a ZIP, not yet expanded. */
export interface ZipPart {
  readonly name: string;
  /** Bytes when expanded, as the ZIP states it. */
  readonly size: number;
  /** The part as it is stored. */
  readonly stored: Uint8Array;
  readonly isDeflated: boolean;
  readonly checksum: number;
}

// Source: PKWARE, “.ZIP File Format Specification” (APPNOTE), 4.3.7, 4.3.12, 4.3.14 to 4.3.16 and 4.5.3.
const endSignature = 0x06054b50;
const end64Signature = 0x06064b50;
const locatorSignature = 0x07064b50;
const entrySignature = 0x02014b50;
const localSignature = 0x04034b50;
const longestComment = 65_535;
const in64 = 0xffffffff;

/**
 * Lists the parts of a ZIP by the list at its end, and expands nothing.
 *
 * @param most stop after so many parts
 * @throws {Error} where the list or a part does not lie within the bytes, is stored twice, or is stored in another way
 * than as it is or deflated
 */
export function zipParts(bytes: Uint8Array, most: number): readonly ZipPart[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { count, start } = listOfParts(view);
  const parts: ZipPart[] = [];
  let stored = 0;
  for (let at = start; parts.length < Math.min(count, most);) {
    demand(view.getUint32(at, true) === entrySignature, "no entry");
    const next =
      at + 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    const part = partAt(bytes, view, at);
    parts.push(part);
    stored += part.stored.length;
    // Parts that lie over one another expand the same bytes again and again.
    demand(stored <= bytes.length, "parts overlap");
    at = next;
  }
  return parts;
}

/**
 * @throws {Error} where the part does not expand to exactly the bytes that the ZIP states. No more than those are
 * ever held.
 */
export function expanded({ stored, size, isDeflated, checksum }: ZipPart): Uint8Array {
  const bytes = isDeflated ? inflated(stored, size) : stored;
  demand(bytes.length === size && crc32(bytes) === checksum, "damaged part");
  return bytes;
}

/** Bytes of stored data expanded at once: they become at most a thousand times as many. */
const piece = 1 << 15;

function inflated(stored: Uint8Array, size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let length = 0;
  const inflate = new Inflate((chunk) => {
    demand(length + chunk.length <= size, "longer than stated");
    bytes.set(chunk, length);
    length += chunk.length;
  });
  for (let at = 0; at < stored.length; at += piece)
    inflate.push(stored.subarray(at, at + piece), at + piece >= stored.length);
  demand(length === size, "shorter than stated");
  return bytes;
}

function listOfParts(view: DataView): { readonly count: number; readonly start: number } {
  const last = view.byteLength - 22;
  for (let at = last; at >= Math.max(0, last - longestComment); at--) {
    if (view.getUint32(at, true) !== endSignature) continue;
    const count = view.getUint16(at + 10, true);
    const start = view.getUint32(at + 16, true);
    const is64 = at >= 20 && view.getUint32(at - 20, true) === locatorSignature;
    return is64 ? listOf64(view, long(view, at - 12)) : { count, start };
  }
  throw new Error("no list of parts");
}

function listOf64(view: DataView, at: number): { readonly count: number; readonly start: number } {
  demand(view.getUint32(at, true) === end64Signature, "no list of parts");
  return { count: long(view, at + 32), start: long(view, at + 48) };
}

function partAt(bytes: Uint8Array, view: DataView, at: number): ZipPart {
  const method = view.getUint16(at + 10, true);
  demand(method === 0 || method === 8, "packed in an unknown way");
  const nameEnd = at + 46 + view.getUint16(at + 28, true);
  const more = longSizes(view, nameEnd, view.getUint16(at + 30, true));
  const [size, packed, offset] = [24, 20, 42].map((field) => {
    const value = view.getUint32(at + field, true);
    return value === in64 ? (more.shift() ?? NaN) : value;
  }) as [number, number, number];
  demand(view.getUint32(offset, true) === localSignature, "no part");
  const start = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  demand(start + packed <= bytes.length, "cut short");
  const name = lettersOf(bytes, at + 46, nameEnd);
  const nameOfPart = lettersOf(bytes, offset + 30, offset + 30 + view.getUint16(offset + 26, true));
  demand(name === nameOfPart, "two names");
  return {
    name,
    size,
    stored: bytes.subarray(start, start + packed),
    isDeflated: method === 8,
    checksum: view.getUint32(at + 16, true),
  };
}

function lettersOf(bytes: Uint8Array, start: number, end: number): string {
  return new TextDecoder().decode(bytes.subarray(start, end));
}

/** Sizes and places too large for four bytes, in their order. */
function longSizes(view: DataView, start: number, length: number): number[] {
  for (let at = start; at + 4 <= start + length; at += 4 + view.getUint16(at + 2, true)) {
    if (view.getUint16(at, true) !== 1) continue;
    const count = Math.floor(view.getUint16(at + 2, true) / 8);
    return Array.from({ length: count }, (_, i) => long(view, at + 4 + i * 8));
  }
  return [];
}

function long(view: DataView, at: number): number {
  return Number(view.getBigUint64(at, true));
}

function demand(holds: boolean, otherwise: string): void {
  if (!holds) throw new Error(otherwise);
}
