import { join } from "node:path";
import { expect, it } from "vitest";
import { createNewId } from "../new-id.ts";
import { openStore } from "../store/open-store.ts";
import { tempFolder } from "../store/testing/temp-store.ts";
import { addPlace } from "./add-place.ts";
import { atOnce } from "./at-once.ts";
import { createContext, type Session } from "./context.ts";
import { createEstate } from "./create-estate.ts";
import { LADDER } from "./demo/checklists/ladder.ts";
import { issueChecklist } from "./issue-checklist.ts";
import { readIssues } from "./read-checklists.ts";
import { readPlaces } from "./read-register.ts";

const clock = () => Date.parse("2026-10-13T09:40:00.000Z");
const newId = createNewId(clock);
const by: Session = { person: newId(), role: "manager" };

/** Two programs on one database, as the server and the command line are. */
async function twoPrograms() {
  const url = `file:${join(tempFolder(), "estate.db")}`;
  const open = async () => createContext({ store: await openStore({ url }), clock, newId });
  const [one, other] = [await open(), await open()];
  await createEstate(one, { name: "Vennasay Harbour Trust" });
  return { one, other };
}

it("of two who issue a checklist at the same moment one is the next issue after the other", async () => {
  const { one, other } = await twoPrograms();
  const checklist = newId();
  const issue = (ctx: typeof one, title: string) =>
    atOnce(ctx, (within) =>
      issueChecklist(within, by, { checklist, document: { ...LADDER, title } }),
    );
  const issued = await Promise.all([issue(one, "A"), issue(other, "B"), issue(one, "C")]);
  expect(issued.map((row) => row.issue).toSorted()).toEqual([1, 2, 3]);
  const rows = await readIssues(one, checklist);
  expect(rows.map(({ hash }) => hash).toSorted()).toEqual(
    issued.map(({ hash }) => hash).toSorted(),
  );
  await Promise.all([one.store.close(), other.store.close()]);
});

it("of two who take the same code at the same moment one is told that it is taken", async () => {
  const { one, other } = await twoPrograms();
  const site = { parent: null, level: "site", code: "1", name: "Ferry Hall", zone: "UTC" } as const;
  const add = (ctx: typeof one) => atOnce(ctx, (within) => addPlace(within, by, site));
  const added = await Promise.allSettled([add(one), add(other)]);
  expect(added.map(({ status }) => status).toSorted()).toEqual(["fulfilled", "rejected"]);
  expect(await readPlaces(one)).toHaveLength(1);
  await Promise.all([one.store.close(), other.store.close()]);
});
