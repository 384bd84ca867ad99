import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toHex, utf8 } from "./bytes.ts";
import type { SyncDigest } from "./hashing.ts";
import { appendLeaf, EMPTY_FRONTIER, type Frontier, rootOf, treeSize } from "./merkle.ts";
import {
  consistencyProof,
  inclusionProof,
  rootOfLeaves,
  verifyConsistency,
  verifyConsistencyAsync,
  verifyInclusion,
  verifyInclusionAsync,
} from "./proofs.ts";

/** A digest that hides nothing, so that a root spells its tree: no two trees share one. */
const spell: SyncDigest = (bytes) => utf8(`(${toHex(bytes)})`);
const leavesOf = (size: number) => Array.from({ length: size }, (_, n) => Uint8Array.of(n));

/** The definition in RFC 9162 §2.1.1, word for word. */
const naive = (leaves: readonly Uint8Array[]): string => {
  const [only] = leaves;
  if (leaves.length === 1 && only !== undefined) return toHex(only);
  let k = 1;
  while (k * 2 < leaves.length) k *= 2;
  const text = `01${naive(leaves.slice(0, k))}${naive(leaves.slice(k))}`;
  return toHex(utf8(`(${text})`));
};

const grown = (leaves: readonly Uint8Array[]): Frontier =>
  leaves.reduce<Frontier>((tree, leaf) => appendLeaf(tree, leaf, spell), EMPTY_FRONTIER);

// A spelt root doubles with every level, so trees stay small.
const SIZES = Array.from({ length: 17 }, (_, n) => n + 1);

describe("the tree of RFC 9162", () => {
  test.each(SIZES)("%d leaves appended one by one give the root of the definition", (size) => {
    const leaves = leavesOf(size);
    const tree = grown(leaves);
    expect(toHex(rootOf(tree, spell))).toBe(naive(leaves));
    expect(toHex(rootOfLeaves(leaves, spell))).toBe(naive(leaves));
    expect(treeSize(tree)).toBe(size);
    expect(tree.length).toBeLessThanOrEqual(Math.ceil(Math.log2(size + 1)));
  });

  test("the empty tree is the digest of nothing", () => {
    expect(rootOf(EMPTY_FRONTIER, spell)).toEqual(spell(new Uint8Array()));
    expect(rootOfLeaves([], spell)).toEqual(spell(new Uint8Array()));
  });

  test("every leaf of every tree is proven in, and in no other place", () => {
    const wrong: string[] = [];
    for (const size of SIZES) {
      const leaves = leavesOf(size);
      const root = rootOfLeaves(leaves, spell);
      for (const [index, leaf] of leaves.entries()) {
        const proof = inclusionProof(leaves, index, spell);
        for (let claimed = 0; claimed < size; claimed++) {
          const holds = verifyInclusion({ index: claimed, size, leaf, proof, root }, spell);
          if (holds !== (claimed === index)) wrong.push(`${index} as ${claimed} of ${size}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  test("every earlier tree is proven to be a beginning, and no other is", () => {
    const wrong: string[] = [];
    for (const size2 of SIZES) {
      const leaves = leavesOf(size2);
      const root2 = rootOfLeaves(leaves, spell);
      for (let size1 = 1; size1 <= size2; size1++) {
        const proof = consistencyProof(leaves, size1, spell);
        const root1 = rootOfLeaves(leaves.slice(0, size1), spell);
        const other = rootOfLeaves([...leaves.slice(1, size1), Uint8Array.of(99)], spell);
        const claim = { size1, size2, root1, root2, proof };
        if (!verifyConsistency(claim, spell)) wrong.push(`${size1} of ${size2}`);
        if (verifyConsistency({ ...claim, root1: other }, spell)) wrong.push(`other of ${size1}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test("a browser's asynchronous digest comes to the same", async () => {
    const later = async (bytes: Uint8Array<ArrayBuffer>) => spell(bytes);
    const leaves = leavesOf(7);
    const root = rootOfLeaves(leaves, spell);
    const proof = inclusionProof(leaves, 5, spell);
    const leaf = Uint8Array.of(5);
    expect(await verifyInclusionAsync({ index: 5, size: 7, leaf, proof, root }, later)).toBe(true);
    expect(await verifyInclusionAsync({ index: 4, size: 7, leaf, proof, root }, later)).toBe(false);
    const claim = {
      size1: 3,
      size2: 7,
      root1: rootOfLeaves(leaves.slice(0, 3), spell),
      root2: root,
      proof: consistencyProof(leaves, 3, spell),
    };
    expect(await verifyConsistencyAsync(claim, later)).toBe(true);
  });

  test("a proof of nonsense is refused and never loops", () => {
    const number = fc.oneof(fc.integer(), fc.double(), fc.constantFrom(2 ** 53, Number.NaN));
    const hash = fc.uint8Array({ minLength: 1, maxLength: 2 });
    fc.assert(
      fc.property(number, number, fc.array(hash, { maxLength: 6 }), (index, size, proof) => {
        const leaf = Uint8Array.of(1);
        const root = Uint8Array.of(2, 2, 2);
        expect(verifyInclusion({ index, size, leaf, proof, root }, spell)).toBe(false);
      }),
    );
  });

  test("there is no proof for a leaf or a tree that is not there", () => {
    expect(() => inclusionProof(leavesOf(2), 2, spell)).toThrow(RangeError);
    expect(() => consistencyProof(leavesOf(2), 0, spell)).toThrow(RangeError);
    expect(() => consistencyProof(leavesOf(2), 3, spell)).toThrow(RangeError);
  });
});
