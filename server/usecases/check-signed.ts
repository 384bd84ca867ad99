import {
  at,
  DEVICE_KINDS,
  type Entry,
  type Problem,
  problem,
  type SignedEntry,
} from "@roundbook/schemas";
import { commitOf } from "./commit-text.ts";
import { commitmentsIn } from "./commitments-in.ts";
import { parseEntry } from "./parse-entry.ts";
import { sealable } from "./prepare-entry.ts";

export type CheckedForm =
  | { readonly ok: true; readonly entry: Entry; readonly canonical: string; readonly hash: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const KINDS: ReadonlySet<string> = new Set(DEVICE_KINDS);

function contentProblems({ contents }: SignedEntry, entry: Entry): readonly Problem[] {
  const named = new Set(commitmentsIn(entry.body));
  const brought = new Set(contents.map(({ commit }) => commit));
  const missing = [...named].filter((commit) => !brought.has(commit));
  return [
    ...missing.map((commit) => problem("/contents", "content-missing", { commit })),
    ...contents.flatMap(({ commit, salt, text }, position) => {
      const place = at("", "contents", position);
      if (!named.has(commit)) return [problem(place, "content-not-named", { commit })];
      if (commitOf(salt, text) !== commit) return [problem(place, "content-altered", { commit })];
      return [];
    }),
  ];
}

/**
 * What can be told of a signed entry from itself alone: its form, its hash, its texts. Pointers go
 * into the signed entry as it was sent.
 */
export function checkSigned(signed: SignedEntry): CheckedForm {
  const parsed = parseEntry(signed.entry);
  if (!parsed.ok) {
    const problems = parsed.problems.map((one) => ({ ...one, pointer: `/entry${one.pointer}` }));
    return { ok: false, problems };
  }
  const entry = parsed.value;
  if (!KINDS.has(entry.kind))
    return {
      ok: false,
      problems: [problem("/entry/kind", "not-made-by-devices", { kind: entry.kind })],
    };
  if (entry.asset === null)
    return { ok: false, problems: [problem("/entry/asset", "asset-missing")] };
  const sealing = sealable(entry);
  if (sealing.hash !== signed.hash)
    return { ok: false, problems: [problem("/hash", "hash-differs", { computed: sealing.hash })] };
  const problems = contentProblems(signed, entry);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, entry, ...sealing };
}
