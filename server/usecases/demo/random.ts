/** A small seeded generator (mulberry32): the same seed tells the same invented past. */
export interface Random {
  /** In [0, 1). */
  next(): number;
  /** Whole, both ends included. */
  whole(from: number, to: number): number;
  /** Rounded to `decimals`, both ends included. */
  reading(from: number, to: number, decimals: number): number;
}

export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    whole: (from, to) => from + Math.floor(next() * (to - from + 1)),
    reading: (from, to, decimals) => Number((from + next() * (to - from)).toFixed(decimals)),
  };
}
