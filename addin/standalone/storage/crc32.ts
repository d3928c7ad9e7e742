import { crc32 as ofBytes } from "../../workbook/crc32.ts";

/**
 * Checksum of a text’s UTF-8 bytes, as eight hexadecimal digits.
 *
 * @example crc32("123456789") → "cbf43926"
 */
export function crc32(text: string): string {
  return ofBytes(new TextEncoder().encode(text)).toString(16).padStart(8, "0");
}
