import { equalBytes } from "./bytes.ts";
import type { Digest, SyncDigest } from "./hashing.ts";
import { type Hashing, nodeInput, runAsync, runSync } from "./merkle.ts";

type Hash = Uint8Array;

/** Numbers stay below 2^53 and are halved by division: bit operators stop at 32. */
const half = (value: number): number => Math.floor(value / 2);
const isOdd = (value: number): boolean => value % 2 === 1;
const isCount = (value: number): boolean => Number.isSafeInteger(value) && value >= 0;

/** The largest power of two below `size`, for sizes above 1. */
function split(size: number): number {
  let power = 1;
  while (power * 2 < size) power *= 2;
  return power;
}

function subtreeRoot(
  leaves: readonly Hash[],
  start: number,
  end: number,
  digest: SyncDigest,
): Hash {
  const only = leaves[start];
  if (only === undefined) throw new RangeError(`no leaf ${start}`);
  if (end - start === 1) return only;
  const middle = start + split(end - start);
  return digest(
    nodeInput(subtreeRoot(leaves, start, middle, digest), subtreeRoot(leaves, middle, end, digest)),
  );
}

/** The root of a tree by its leaf hashes, from the definition in RFC 9162 §2.1.1. */
export const rootOfLeaves = (leaves: readonly Hash[], digest: SyncDigest): Hash =>
  leaves.length === 0 ? digest(new Uint8Array()) : subtreeRoot(leaves, 0, leaves.length, digest);

/**
 * Proof that leaf `index` is in the tree of these leaf hashes (RFC 9162 §2.1.3.1).
 * @throws RangeError when there is no such leaf.
 */
export function inclusionProof(
  leaves: readonly Hash[],
  index: number,
  digest: SyncDigest,
): readonly Hash[] {
  if (!isCount(index) || index >= leaves.length) throw new RangeError(`no leaf ${index}`);
  const path: Hash[] = [];
  let [start, end] = [0, leaves.length];
  while (end - start > 1) {
    const middle = start + split(end - start);
    if (index < middle) {
      path.push(subtreeRoot(leaves, middle, end, digest));
      end = middle;
    } else {
      path.push(subtreeRoot(leaves, start, middle, digest));
      start = middle;
    }
  }
  return path.reverse();
}

/**
 * Proof that the first `size` of these leaf hashes made an earlier state of the same tree
 * (RFC 9162 §2.1.4.1). @throws RangeError when `size` is not 1 to the number of leaves.
 */
export function consistencyProof(
  leaves: readonly Hash[],
  size: number,
  digest: SyncDigest,
): readonly Hash[] {
  if (!isCount(size) || size < 1 || size > leaves.length)
    throw new RangeError(`no earlier tree of ${size}`);
  const path: Hash[] = [];
  let [start, end, whole] = [0, leaves.length, true];
  while (end !== size) {
    const middle = start + split(end - start);
    if (size <= middle) {
      path.push(subtreeRoot(leaves, middle, end, digest));
      end = middle;
    } else {
      path.push(subtreeRoot(leaves, start, middle, digest));
      start = middle;
      whole = false;
    }
  }
  if (!whole) path.push(subtreeRoot(leaves, start, end, digest));
  return path.reverse();
}

export interface Inclusion {
  readonly index: number;
  readonly size: number;
  readonly leaf: Hash;
  readonly proof: readonly Hash[];
  readonly root: Hash;
}

/** RFC 9162 §2.1.3.2. */
function* inclusionHolds({ index, size, leaf, proof, root }: Inclusion): Hashing<boolean> {
  if (!isCount(index) || !isCount(size) || index >= size) return false;
  // No digest is empty: nothing would be shown to be in nothing.
  if (leaf.length === 0 || root.length === 0) return false;
  let [node, last, hash] = [index, size - 1, leaf];
  for (const other of proof) {
    if (last === 0) return false;
    if (isOdd(node) || node === last) {
      hash = yield nodeInput(other, hash);
      while (!isOdd(node) && node !== 0) [node, last] = [half(node), half(last)];
    } else {
      hash = yield nodeInput(hash, other);
    }
    [node, last] = [half(node), half(last)];
  }
  return last === 0 && equalBytes(hash, root);
}

export interface Consistency {
  readonly size1: number;
  readonly size2: number;
  readonly root1: Hash;
  readonly root2: Hash;
  readonly proof: readonly Hash[];
}

/** RFC 9162 §2.1.4.2. An empty first tree proves nothing, so it is refused. */
function* consistencyHolds(claim: Consistency): Hashing<boolean> {
  const { size1, size2, root1, root2, proof } = claim;
  if (!isCount(size1) || !isCount(size2) || size1 < 1 || size1 > size2) return false;
  if (size1 === size2) return proof.length === 0 && equalBytes(root1, root2);
  let [node, last] = [size1 - 1, size2 - 1];
  while (isOdd(node)) [node, last] = [half(node), half(last)];
  // A first tree that is a perfect subtree of the second is its own first node.
  const [first, ...rest] = node === 0 ? [root1, ...proof] : proof;
  if (first === undefined || proof.length === 0) return false;
  let [old, now] = [first, first];
  for (const other of rest) {
    if (last === 0) return false;
    if (isOdd(node) || node === last) {
      old = yield nodeInput(other, old);
      now = yield nodeInput(other, now);
      while (!isOdd(node) && node !== 0) [node, last] = [half(node), half(last)];
    } else {
      now = yield nodeInput(now, other);
    }
    [node, last] = [half(node), half(last)];
  }
  return last === 0 && equalBytes(old, root1) && equalBytes(now, root2);
}

export const verifyInclusion = (claim: Inclusion, digest: SyncDigest): boolean =>
  runSync(inclusionHolds(claim), digest);
export const verifyInclusionAsync = (claim: Inclusion, digest: Digest): Promise<boolean> =>
  runAsync(inclusionHolds(claim), digest);
export const verifyConsistency = (claim: Consistency, digest: SyncDigest): boolean =>
  runSync(consistencyHolds(claim), digest);
export const verifyConsistencyAsync = (claim: Consistency, digest: Digest): Promise<boolean> =>
  runAsync(consistencyHolds(claim), digest);
