import {
  type AssetTypeBody,
  at,
  canonicalize,
  numberParticulars,
  type Problem,
  problem,
} from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { patterns } from "./engines.ts";
import { readNewestIssue } from "./read-checklists.ts";
import { readAssetTypes } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** Patterns that cannot be run in linear time: no asset could be checked against them. */
const patternProblems = ({ particulars }: AssetTypeBody): readonly Problem[] =>
  Object.entries(particulars).flatMap(([name, { pattern }]) => {
    const found = pattern === undefined ? null : patterns.compile(pattern);
    if (found === null || found.ok) return [];
    const pointer = at("/particulars", name, "pattern");
    return found.problems.map((one) => ({ ...one, pointer }));
  });

/** Issues the next version of an asset type; what is already so stays at its version. */
export async function putAssetType(
  ctx: Context,
  by: Session,
  name: string,
  given: AssetTypeBody,
): Promise<{ version: number }> {
  if (given.assetType !== name)
    throw new Refusal("invalid", "name-differs", [
      problem("/assetType", "name-differs", { expected: name, found: given.assetType }),
    ]);
  const found = await Promise.all(given.checklists.map((id) => readNewestIssue(ctx, id)));
  const unknown = found.flatMap((row, index) =>
    row ? [] : [problem(at("/checklists", index), "unknown-checklist")],
  );
  const wrong = [...unknown, ...patternProblems(given)];
  if (wrong.length > 0) throw new Refusal("invalid", "asset-type-not-right", wrong);
  const present = (await readAssetTypes(ctx)).find((row) => row.assetType === name);
  const { title, checklists } = given;
  const particulars = numberParticulars(given.particulars);
  const same = (row: { title: string; particulars: unknown; checklists: readonly string[] }) =>
    canonicalize({ title: row.title, particulars: row.particulars, checklists: row.checklists });
  if (present && same(present) === same({ title, particulars, checklists }))
    return { version: present.version };
  const version = (present?.version ?? 0) + 1;
  await appendNow(ctx, by, {
    kind: "asset-type-issued",
    asset: null,
    body: { assetType: name, version, title, particulars, checklists },
  });
  return { version };
}
