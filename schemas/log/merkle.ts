import type { Digest, SyncDigest } from "./hashing.ts";

/**
 * Hashing left to whoever drives: yields bytes, takes their digest. So one text of each algorithm
 * serves the server's synchronous digest and a browser's asynchronous one.
 */
export type Hashing<T> = Generator<Uint8Array<ArrayBuffer>, T, Uint8Array>;

export function runSync<T>(hashing: Hashing<T>, digest: SyncDigest): T {
  let step = hashing.next();
  while (!step.done) step = hashing.next(digest(step.value));
  return step.value;
}

export async function runAsync<T>(hashing: Hashing<T>, digest: Digest): Promise<T> {
  let step = hashing.next();
  while (!step.done) step = hashing.next(await digest(step.value));
  return step.value;
}

const prefixed = (prefix: number, ...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const out = new Uint8Array(parts.reduce((length, part) => length + part.length, 1));
  out[0] = prefix;
  let offset = 1;
  for (const part of parts) {
    out.set(part, offset);
    offset += part.length;
  }
  return out;
};

/** The bytes whose digest is a leaf: 0x00 before the data (RFC 9162 §2.1.1). */
export const leafInput = (data: Uint8Array): Uint8Array<ArrayBuffer> => prefixed(0, data);
/** The bytes whose digest is an inner node: 0x01 before both children (RFC 9162 §2.1.1). */
export const nodeInput = (left: Uint8Array, right: Uint8Array): Uint8Array<ArrayBuffer> =>
  prefixed(1, left, right);

/** The leaf hash of an entry's `leafBytes`. */
export const hashLeaf = (data: Uint8Array, digest: SyncDigest): Uint8Array =>
  digest(leafInput(data));

/** A perfect subtree of 2^level leaves. */
export interface FrontierNode {
  readonly level: number;
  readonly hash: Uint8Array;
}
/** The perfect subtrees of a tree from left to right, levels falling: all that appending needs. */
export type Frontier = readonly FrontierNode[];
export const EMPTY_FRONTIER: Frontier = [];

export const treeSize = (frontier: Frontier): number =>
  frontier.reduce((size, node) => size + 2 ** node.level, 0);

/** Appends a leaf hash: a new frontier, at most one hash a level. */
export function appendLeaf(frontier: Frontier, leafHash: Uint8Array, digest: SyncDigest): Frontier {
  const nodes = [...frontier];
  let node: FrontierNode = { level: 0, hash: leafHash };
  for (let last = nodes.at(-1); last?.level === node.level; last = nodes.at(-1)) {
    nodes.pop();
    node = { level: node.level + 1, hash: digest(nodeInput(last.hash, node.hash)) };
  }
  nodes.push(node);
  return nodes;
}

/** The tree's root hash (RFC 9162 §2.1.1); of the empty tree, the digest of nothing. */
export function rootOf(frontier: Frontier, digest: SyncDigest): Uint8Array {
  const last = frontier.at(-1);
  if (last === undefined) return digest(new Uint8Array());
  return frontier
    .slice(0, -1)
    .reduceRight((right, node) => digest(nodeInput(node.hash, right)), last.hash);
}
