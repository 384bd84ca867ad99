import { createHash } from "node:crypto";
import {
  appendLeaf,
  commitBytes,
  EMPTY_FRONTIER,
  type Frontier,
  fromHex,
  hashLeaf,
  rootOf,
  toHex,
  utf8,
} from "@roundbook/schemas";
import { expect, test } from "vitest";

const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest();
const rootOfData = (leaves: readonly string[]): string => {
  let tree: Frontier = EMPTY_FRONTIER;
  for (const leaf of leaves) tree = appendLeaf(tree, hashLeaf(fromHex(leaf), sha256), sha256);
  return toHex(rootOf(tree, sha256));
};

// Published in the tests of transparency-dev/merkle (Apache-2.0), for the hashing of RFC 6962 and 9162.
test("the leaf hash of L123456 is the published one", () => {
  expect(toHex(hashLeaf(utf8("L123456"), sha256))).toBe(
    "395aa064aa4c29f7010acfe3f25db9485bbd4b91897b6ad7ad547639252b4d56",
  );
});

test.each([
  [0, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
  [1, "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d"],
  [2, "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125"],
  [4, "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"],
  [6, "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef"],
])("the root over the first %d test leaves is the published one", (size, root) => {
  const leaves = ["", "00", "10", "2021", "3031", "40414243"];
  expect(rootOfData(leaves.slice(0, size))).toBe(root);
});

test("the digest of a browser gives the same commitment as the server's", async () => {
  const bytes = commitBytes("00112233445566778899aabbccddeeff", "Morwen Tolvane, Ferry Hall ☎");
  const browser = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  expect(toHex(browser)).toBe(toHex(sha256(bytes)));
});
