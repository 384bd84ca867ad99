import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { relative } from "node:path";
import { verifyConsistency, verifyInclusion } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { filesBelow, realData } from "./folder.ts";

// Inclusion and consistency proofs, right and deliberately wrong: transparency-dev/merkle, Apache-2.0.
const folder = realData("merkle-testdata", "testdata");
const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest();
const bytes = (base64: string | null) => new Uint8Array(Buffer.from(base64 ?? "", "base64"));

interface Common {
  readonly proof: readonly string[] | null;
  readonly wantErr: boolean;
}
interface InclusionCase extends Common {
  readonly leafIdx: number;
  readonly treeSize: number;
  readonly root: string | null;
  readonly leafHash: string | null;
}
interface ConsistencyCase extends Common {
  readonly size1: number;
  readonly size2: number;
  readonly root1: string | null;
  readonly root2: string | null;
}

const casesOf = <T extends Common>(part: string): readonly (readonly [string, T])[] => {
  const root = realData("merkle-testdata", "testdata", part);
  return filesBelow(root, ".json").map((file) => [
    relative(root ?? "", file),
    JSON.parse(readFileSync(file, "utf8")) as T,
  ]);
};
const wrongly = <T extends Common>(
  cases: readonly (readonly [string, T])[],
  verify: (one: T, proof: readonly Uint8Array[]) => boolean,
): string[] =>
  cases
    .filter(([, one]) => verify(one, (one.proof ?? []).map(bytes)) === one.wantErr)
    .map(([name]) => name);

describe.skipIf(folder === null)("published proofs of RFC 6962 and 9162", () => {
  test("every inclusion proof is taken or refused as published", () => {
    const cases = casesOf<InclusionCase>("inclusion");
    expect(cases.length).toBeGreaterThan(90);
    expect(
      wrongly(cases, (one, proof) =>
        verifyInclusion(
          {
            index: one.leafIdx,
            size: one.treeSize,
            leaf: bytes(one.leafHash),
            root: bytes(one.root),
            proof,
          },
          sha256,
        ),
      ),
    ).toEqual([]);
  });

  test("every consistency proof is taken or refused as published", () => {
    const cases = casesOf<ConsistencyCase>("consistency");
    expect(cases.length).toBeGreaterThan(90);
    expect(
      wrongly(cases, ({ size1, size2, root1, root2 }, proof) =>
        verifyConsistency(
          { size1, size2, root1: bytes(root1), root2: bytes(root2), proof },
          sha256,
        ),
      ),
    ).toEqual([]);
  });
});
