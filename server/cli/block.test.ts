import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { tempFolder } from "../store/testing/temp-store.ts";
import { LADDER } from "../usecases/demo/checklists/ladder.ts";
import { commandLineOf } from "./testing/run.ts";

test("a block is kept once under a revision, and what includes it is issued standing alone", async () => {
  const folder = tempFolder();
  const run = commandLineOf(join(folder, "data"));
  const file = (name: string, value: object) => {
    writeFileSync(join(folder, name), JSON.stringify(value));
    return join(folder, name);
  };
  const points = { tags: { $ref: "#/$defs/text", title: "Which tags?" } };
  const block = { dialect: "urn:roundbook:block:1", name: "tags", title: "Tags", points };
  const kept = await run(["block", file("block.json", block), "--json"]);
  expect([kept.status, kept.out.map((line) => JSON.parse(line)), kept.err]).toEqual([
    0,
    [{ name: "tags", revision: 1, usedBy: [] }],
    [],
  ]);
  const again = await run(["block", join(folder, "block.json")]);
  expect([again.status, again.err[0]]).toEqual([2, expect.stringContaining("of this name")]);
  const next = await run(["block", join(folder, "block.json"), "--revision", "1"]);
  expect([next.status, next.out]).toEqual([0, ["block tags, revision 2, used by 0"]]);
  const bent = await run(["block", file("bent.json", { ...block, points: 3 })]);
  expect([bent.status, bent.err[0]]).toEqual([2, expect.stringContaining("points")]);

  const drafted = file("draft.json", { ...LADDER, include: [{ block: "tags" }] });
  const issued = await run(["issue", drafted, "--json"]);
  expect([issued.status, issued.err]).toEqual([0, []]);
  const log = (await run(["export", "--json"])).out.join("\n");
  expect(log).toContain('"block":"tags"');
  expect(log).not.toContain('"include"');
});
