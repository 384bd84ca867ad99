import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { tempFolder } from "../../store/testing/temp-store.ts";
import { importFile } from "../import-file.ts";
import { readLog } from "../read-history.ts";
import { MANAGER, outletEstate } from "../testing/outlet.ts";

test("rows that compare with the time before are judged in turn, also within one file", async () => {
  const { ctx, estate, ref } = await outletEstate();
  const path = join(tempFolder(), "flow.csv");
  writeFileSync(path, "no,date,flow\n1,01/02/2024,6\n1,01/03/2024,6.5\n1,01/04/2024,9\n");
  const report = await importFile(ctx, MANAGER(estate), {
    path,
    trial: false,
    mapping: {
      kind: "results",
      source: "old papers",
      checklist: ref.id,
      asset: { number: "no" },
      date: { column: "date", format: "DD/MM/YYYY" },
      answers: {
        flow: { column: "flow" },
        "valve@hot": { column: "no", words: { "1": "ok" } },
        "valve@cold": { column: "no", words: { "1": "ok" } },
      },
    },
  });
  expect(report).toMatchObject({ newEntries: 3, badRows: 0 });
  const verdicts: unknown[] = [];
  for await (const { entry, leaf } of readLog(ctx))
    if (entry.kind === "inspection") verdicts.push(leaf.judgement?.points.flow?.verdict);
  expect(verdicts.slice(1)).toEqual(["pass", "fail"]);
});
