import type { DefinedInterval, IntervalDefinition, RuleContext } from "@roundbook/schemas";
import type { Context } from "./context.ts";
import { readChecklists, readNewestIssue } from "./read-checklists.ts";
import { readAssetTypes, readIntervals } from "./read-register.ts";

/** What a rule is checked against: the type's particulars and the checklists it reads. */
export async function ruleContext(
  ctx: Context,
  { assetType, checklist, rule }: Pick<IntervalDefinition, "assetType" | "checklist" | "rule">,
): Promise<RuleContext> {
  const type = (await readAssetTypes(ctx)).find((row) => row.assetType === assetType);
  const own = await readNewestIssue(ctx, checklist);
  const other = rule.kind === "on-usage" ? rule.checklist : undefined;
  const metered =
    other === undefined || other === checklist ? null : await readNewestIssue(ctx, other);
  return {
    ...(type === undefined ? {} : { particulars: type.particulars }),
    ...(own === null ? {} : { checklist: { id: own.id, document: own.document } }),
    ...(metered === null ? {} : { metered: { id: metered.id, document: metered.document } }),
  };
}

/** Every interval with the newest issue of its checklist, as covering looks at them. */
export async function readDefined(ctx: Context): Promise<DefinedInterval[]> {
  const rows = await readIntervals(ctx);
  const used = new Set(rows.map(({ definition }) => definition.checklist));
  const documents = new Map(
    (await readChecklists(ctx, used)).map(({ id, document }) => [id, document]),
  );
  return rows.flatMap(({ id, definition, progress }) => {
    const said = progress?.definition ?? definition;
    const document = documents.get(said.checklist);
    return document === undefined ? [] : [{ id, definition: said, document }];
  });
}
