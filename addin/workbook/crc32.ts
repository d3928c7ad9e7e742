const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/**
 * Checksum of bytes. It finds damage, not tampering.
 * Source: CRC-32 of ISO/IEC/IEEE 8802-3 (reflected polynomial EDB88320).
 *
 * @example crc32(new TextEncoder().encode("123456789")) → 0xcbf43926
 */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = (table[(c ^ byte) & 0xff] ?? 0) ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
