import { workOutNext } from "../../store/projections/work-out.ts";
import { windows } from "../../store/schema/due.ts";
import { appendEntries } from "../append-entries.ts";
import { type TestEstate, testEstate } from "./estate.ts";

/** More assets than one transaction works out. */
export const ASSETS = 2100;

/** The test estate with that many doors, never inspected. */
export async function manyDoors() {
  const estate = await testEstate();
  const { ctx, ids: known, newId } = estate;
  const ids = Array.from({ length: ASSETS }, () => newId());
  await appendEntries(ctx, {
    entries: ids.map((asset, at) => ({
      kind: "registered",
      asset,
      author: known.person,
      civilDate: "2026-01-05",
      happenedAt: null,
      body: {
        number: `D-${at}`,
        assetType: "door",
        description: "Door to ice store",
        place: known.site,
        particulars: {},
      },
    })),
  });
  return { ...estate, assets: ids };
}

export const everyMonths = ({ ref }: TestEstate, months: number) => ({
  title: `Every ${months} months`,
  assetType: "door",
  checklist: ref.id,
  rule: { kind: "from-last-done", every: `P${months}M`, first: `P${months}M` } as const,
});

/** Every window but for its place in the table. */
export const dump = async ({ ctx }: Pick<TestEstate, "ctx">): Promise<string[]> => {
  const rows = await ctx.store.db.select().from(windows);
  return rows.map((row) => JSON.stringify({ ...row, id: 0 })).sort();
};

/** One batch of the background. */
export const step = ({ ctx }: TestEstate, assets = 500) =>
  ctx.store.write((tx) => workOutNext(tx, { assets, rows: 500 }));
