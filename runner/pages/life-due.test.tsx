import type { AssetRow, DueRow, SiteBundle } from "@roundbook/schemas";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { dayOf } from "./due-of.tsx";
import { LifeDue } from "./life-due.tsx";

const due = {
  interval: "yearly",
  intervalTitle: "Every year",
  asset: "asset",
  checklist: "outlet",
  earliest: "2026-11-01",
  due: "2026-11-25",
  latest: "2026-12-25",
  lastDone: null,
  why: { code: "never-done", params: { date: "2026-11-01" } },
} as unknown as DueRow;

const drawn = (awaited: boolean) =>
  renderToStaticMarkup(
    <LifeDue
      asset={{ id: "asset" } as AssetRow}
      due={[due]}
      bundle={
        {
          checklists: [],
          assetTypes: [],
          lastResults: [
            {
              asset: "asset",
              checklist: "outlet",
              entry: "entry",
              on: "2026-11-25",
              overall: "undecided",
              readings: {},
              ...(awaited ? { awaited } : {}),
            },
          ],
        } as unknown as SiteBundle
      }
      today={dayOf("2026-11-25")}
      onFollow={() => undefined}
    />,
  );

it("what is written and waits for a result is not called never done", () => {
  expect(drawn(true)).toContain("result awaited.");
  expect(drawn(true)).toContain("Written 25\u00a0November");
  expect(drawn(true)).not.toContain("Never done");
  expect(drawn(false)).toContain("Never done");
});
