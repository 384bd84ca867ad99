import {
  type AssetTypeBody,
  type AssetTypeRow,
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

/** What it says, whatever its version. */
const said = ({
  title,
  particulars,
  checklists,
}: Omit<AssetTypeRow, "assetType" | "version">): string =>
  canonicalize({ title, particulars, checklists });

async function fitToIssue(ctx: Context, name: string, given: AssetTypeBody): Promise<void> {
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
}

/**
 * Issues the next version of an asset type; what is already so stays at its version.
 * @param over the version that was read (0: there was none): another meanwhile is refused with it.
 * Without it, as from the command line, it follows whatever is there.
 */
export async function putAssetType(
  ctx: Context,
  by: Session,
  name: string,
  given: AssetTypeBody,
  over?: number,
): Promise<{ version: number }> {
  await fitToIssue(ctx, name, given);
  const { title, checklists } = given;
  const particulars = numberParticulars(given.particulars);
  const types = await readAssetTypes(ctx);
  const current = types.find((row) => row.assetType === name);
  if (current && said(current) === said({ title, particulars, checklists }))
    return { version: current.version };
  const newest = current?.version ?? 0;
  if (over !== undefined && over !== newest) {
    const code = over === 0 ? "asset-type-exists" : "asset-type-changed-meanwhile";
    throw new Refusal("conflict", code, [], { current: current ?? null });
  }
  const version = newest + 1;
  await appendNow(ctx, by, {
    kind: "asset-type-issued",
    asset: null,
    body: { assetType: name, version, title, particulars, checklists },
  });
  return { version };
}
