const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/**
 * Checksum of a text’s UTF-8 bytes, as eight hexadecimal digits. It finds damage, not tampering.
 * Source: CRC-32 of ISO/IEC/IEEE 8802-3 (reflected polynomial EDB88320).
 *
 * @example crc32("123456789") → "cbf43926"
 */
export function crc32(text: string): string {
  let c = 0xffffffff;
  for (const byte of new TextEncoder().encode(text)) c = (table[(c ^ byte) & 0xff] ?? 0) ^ (c >>> 8);
  return ((c ^ 0xffffffff) >>> 0).toString(16).padStart(8, "0");
}
