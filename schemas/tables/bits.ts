/** A set of small whole numbers, 32 to a word; sets that are compared have the same length. */
export type Bits = Uint32Array;

export const noBits = (size: number): Bits => new Uint32Array(Math.max(1, Math.ceil(size / 32)));

export const addBit = (bits: Bits, bit: number): void => {
  const word = bit >>> 5;
  bits[word] = (bits[word] ?? 0) | (1 << (bit & 31));
};

export const hasBit = (bits: Bits, bit: number): boolean =>
  ((bits[bit >>> 5] ?? 0) & (1 << (bit & 31))) !== 0;

/** Members in rising order. */
export const bitsOf = (bits: Bits): readonly number[] => {
  const members: number[] = [];
  bits.forEach((word, index) => {
    for (let rest = word; rest !== 0; rest &= rest - 1)
      members.push(index * 32 + 31 - Math.clz32(rest & -rest));
  });
  return members;
};

export const bitsFrom = (members: readonly number[], size: number): Bits => {
  const bits = noBits(size);
  for (const member of members) addBit(bits, member);
  return bits;
};

const ones = (word: number): number => {
  let n = word - ((word >>> 1) & 0x5555_5555);
  n = (n & 0x3333_3333) + ((n >>> 2) & 0x3333_3333);
  return Math.imul((n + (n >>> 4)) & 0x0f0f_0f0f, 0x0101_0101) >>> 24;
};

/** The least member of `a` that is in `b`, or that is not; -1 where there is none. */
export const firstWhere = (a: Bits, b: Bits, isIn: boolean): number => {
  for (let word = 0; word < a.length; word += 1) {
    const both = (a[word] ?? 0) & (isIn ? (b[word] ?? 0) : ~(b[word] ?? 0));
    if (both !== 0) return word * 32 + 31 - Math.clz32(both & -both);
  }
  return -1;
};

/** How many members two sets share. */
export const countShared = (a: Bits, b: Bits): number => {
  let count = 0;
  for (let word = 0; word < a.length; word += 1) count += ones((a[word] ?? 0) & (b[word] ?? 0));
  return count;
};

export const shared = (a: Bits, b: Bits): Bits => a.map((word, index) => word & (b[index] ?? 0));
export const joined = (a: Bits, b: Bits): Bits => a.map((word, index) => word | (b[index] ?? 0));
