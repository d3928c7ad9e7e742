/** A set of items from 0 as bits, 32 a word. */
export type Bits = Uint32Array;

export function emptyBits(size: number): Bits {
  return new Uint32Array((size + 31) >>> 5);
}

export function addBit(bits: Bits, item: number): void {
  bits[item >>> 5]! |= 1 << (item & 31);
}

export function removeBit(bits: Bits, item: number): void {
  bits[item >>> 5]! &= ~(1 << (item & 31));
}

export function hasBit(bits: Bits, item: number): boolean {
  return (bits[item >>> 5]! & (1 << (item & 31))) !== 0;
}

export function bitsOf(size: number, items: Iterable<number>): Bits {
  const bits = emptyBits(size);
  for (const item of items) addBit(bits, item);
  return bits;
}

/** The items, lowest first. */
export function itemsOf(bits: Bits): readonly number[] {
  const items: number[] = [];
  for (let word = 0; word < bits.length; word++) {
    for (let rest = bits[word]!; rest !== 0; rest &= rest - 1) items.push(word * 32 + lowestBit(rest));
  }
  return items;
}

/** The lowest item; −1 when there is none. */
export function firstItem(bits: Bits): number {
  for (let word = 0; word < bits.length; word++) {
    if (bits[word] !== 0) return word * 32 + lowestBit(bits[word]!);
  }
  return -1;
}

export function countBits(bits: Bits): number {
  let count = 0;
  for (const word of bits) count += ones(word);
  return count;
}

/** How many items two sets have in common. */
export function countCommon(a: Bits, b: Bits): number {
  let count = 0;
  for (let word = 0; word < a.length; word++) count += ones(a[word]! & b[word]!);
  return count;
}

/** The items that two sets have in common. */
export function common(a: Bits, b: Bits): Bits {
  const both = new Uint32Array(a.length);
  for (let word = 0; word < a.length; word++) both[word] = a[word]! & b[word]!;
  return both;
}

function lowestBit(word: number): number {
  return 31 - Math.clz32(word & -word);
}

/** The number of ones in a word, by adding neighbouring bits, then pairs, then fours. */
function ones(word: number): number {
  let sum = word - ((word >>> 1) & 0x55555555);
  sum = (sum & 0x33333333) + ((sum >>> 2) & 0x33333333);
  return (((sum + (sum >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
