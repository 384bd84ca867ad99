import type { Entry, SignedEntry } from "@roundbook/schemas";
import { expect, it } from "vitest";
import { commitText } from "./commit-text.ts";
import { readAsset } from "./read-assets.ts";
import { readDue } from "./read-due.ts";
import { readHistory } from "./read-history.ts";
import { sealEntries } from "./seal-entries.ts";
import { GOOD, type TestEstate, testEstate } from "./testing/estate.ts";

async function withDoor() {
  const estate = await testEstate();
  const asset = estate.newId();
  const seal = async (...signed: SignedEntry[]) => sealEntries(estate.ctx, estate.session, signed);
  await seal(estate.signed(estate.registered(asset, "4033", "2026-10-01")));
  return { ...estate, asset, seal };
}

it("an inspection is sealed, judged again, and moves its due date at once", async () => {
  const { ctx, asset, seal, signed, inspection, reported } = await withDoor();
  expect((await readAsset(ctx, asset))?.due[0]?.status).toBe("never-done");
  const [outcome] = await seal(signed(await inspection(asset, GOOD)));
  expect(outcome).toMatchObject({
    outcome: "sealed",
    leaf: { flags: [], judgement: { overall: "pass" } },
  });
  const found = await readAsset(ctx, "number:4033");
  expect(found?.due[0]).toMatchObject({
    due: "2027-04-13",
    lastVerdict: "pass",
    status: "not-yet",
  });
  expect(reported).toEqual([]);
});

it("the same entry again is answered as sealed before, with the same leaf", async () => {
  const { asset, seal, signed, inspection } = await withDoor();
  const one = signed(await inspection(asset, GOOD));
  const [first] = await seal(one);
  const [again] = await seal(one);
  expect(again).toEqual({ ...first, outcome: "already" });
});

it("an id with other content is refused, and what was sealed stands", async () => {
  const { ctx, asset, seal, signed, inspection } = await withDoor();
  const entry = await inspection(asset, GOOD);
  await seal(signed(entry));
  const [again] = await seal(signed({ ...entry, civilDate: "2026-10-12" }));
  expect(again).toMatchObject({
    outcome: "refused",
    problems: [{ code: "id-sealed-with-other-content", pointer: "/entry/id" }],
  });
  expect((await readHistory(ctx, asset)).rows).toHaveLength(2);
});

type Change = (signed: SignedEntry, estate: TestEstate) => SignedEntry;
const changed = (signed: SignedEntry, entry: Partial<Entry>): SignedEntry => ({
  ...signed,
  entry: { ...signed.entry, ...entry } as Entry,
});

const keyed = (entry: Entry, change: Partial<Entry>): Entry =>
  ({
    ...entry,
    body: { ...entry.body, fromPaper: { keyedAt: "2026-10-13T08:00:00Z" } },
    ...change,
  }) as Entry;

it("a sheet keyed from paper counts from the day it was done, with the day it was keyed beside it", async () => {
  const { ctx, asset, seal, signed, inspection } = await withDoor();
  const done = await inspection(asset, GOOD, "2026-10-01");
  const [outcome] = await seal(signed(keyed(done, { happenedAt: null })));
  expect(outcome).toMatchObject({ outcome: "sealed" });
  const [row] = (await readDue(ctx, {})).rows;
  expect(row).toMatchObject({ lastDone: "2026-10-01", due: "2027-04-01" });
  const { rows } = await readHistory(ctx, asset);
  expect(rows.find(({ entry }) => entry.kind === "inspection")?.entry).toMatchObject({
    civilDate: "2026-10-01",
    body: { fromPaper: { keyedAt: "2026-10-13T08:00:00Z" } },
  });
});

it.each<[string, string, Change]>([
  ["altered after signing", "hash-differs", (s) => changed(s, { civilDate: "2026-10-12" })],
  ["signed by nobody", "signature-wrong", (s) => ({ ...s, signature: "A".repeat(86) })],
  [
    "under another person's name",
    "author-not-of-device",
    (s, { signed, newId }) => signed({ ...s.entry, author: newId() }),
  ],
  [
    "from a device that never enrolled",
    "device-not-enrolled",
    (s, { signed, newId }) => signed({ ...s.entry, device: newId() }),
  ],
  [
    "dated on a day that no month has",
    "no-such-date",
    (s, { signed }) => signed({ ...s.entry, civilDate: "2026-02-30" } as Entry),
  ],
  [
    "keyed from paper with a time of day",
    "paper-has-no-instant",
    (s, { signed }) => signed(keyed(s.entry, { happenedAt: "2026-10-13T08:00:00Z" })),
  ],
  [
    "done on paper after it was keyed in",
    "done-after-keyed",
    (s, { signed }) => signed(keyed(s.entry, { happenedAt: null, civilDate: "2026-10-20" })),
  ],
  [
    "of a kind the desk makes",
    "not-made-by-devices",
    (s, { signed }) =>
      signed({ ...s.entry, kind: "estate-named", body: { name: "Mine" } } as Entry),
  ],
  [
    "with a text that is not the one it commits to",
    "content-not-named",
    (s) => ({ ...s, contents: [commitText("other").content] }),
  ],
])("an entry %s is refused", async (_, code, change) => {
  const estate = await withDoor();
  const one = estate.signed(await estate.inspection(estate.asset, GOOD));
  const [outcome] = await estate.seal(change(one, estate));
  expect(outcome).toMatchObject({ outcome: "refused", problems: [{ code }] });
  expect((await readHistory(estate.ctx, estate.asset)).rows).toHaveLength(1);
});

it("answers that do not fit their points are refused with their places", async () => {
  const { asset, seal, signed, inspection } = await withDoor();
  const [outcome] = await seal(signed(await inspection(asset, { closes: true, gap: GOOD.gap })));
  expect(outcome).toMatchObject({
    outcome: "refused",
    problems: [{ pointer: "/entry/body/answers/closes" }],
  });
});

it("an asset or a checklist unknown here may come again later; the neighbours are sealed", async () => {
  const { asset, seal, signed, inspection, newId } = await withDoor();
  const elsewhere = await inspection(newId(), GOOD);
  const unissued = await inspection(asset, GOOD);
  const body = { ...unissued.body, checklist: { id: newId(), issue: 1, hash: "0".repeat(64) } };
  const outcomes = await seal(
    signed(elsewhere),
    signed({ ...unissued, body } as Entry),
    signed(await inspection(asset, GOOD)),
  );
  expect(outcomes.map(({ outcome }) => outcome)).toEqual(["retry-later", "retry-later", "sealed"]);
});

it("a device's own judgement is never replaced: a difference is flagged", async () => {
  const { ctx, asset, seal, signed, inspection } = await withDoor();
  const entry = await inspection(asset, { ...GOOD, gap: { value: 9, unit: "mm" } });
  const claim = { ...entry.body, judgement: { overall: "pass" } };
  const [outcome] = await seal(signed({ ...entry, body: claim } as Entry));
  expect(outcome).toMatchObject({
    leaf: { flags: ["judgement-differs"], judgement: { overall: "fail" } },
  });
  const [latest] = (await readHistory(ctx, asset)).rows;
  expect(latest?.entry.body).toMatchObject({ judgement: { overall: "pass" } });
});

it("what must be mended is sealed and flagged: a clash of numbers, a clock ahead, a retired asset", async () => {
  const { asset, seal, signed, registered, inspection, entry, newId } = await withDoor();
  const [clash] = await seal(signed(registered(newId(), "4033")));
  const [ahead] = await seal(
    signed({ ...(await inspection(asset, GOOD)), happenedAt: "2026-10-13T09:46:00Z" }),
  );
  await seal(signed(entry("status-changed", asset, { status: "retired" })));
  const [retired] = await seal(signed(await inspection(asset, GOOD)));
  expect([clash, ahead, retired]).toMatchObject([
    { leaf: { flags: ["duplicate-number"] } },
    { leaf: { flags: ["clock-differs"] } },
    { leaf: { flags: ["asset-retired"] } },
  ]);
});

it("personal text stands beside the log and is shown with its entry", async () => {
  const { ctx, asset, seal, signed, inspection } = await withDoor();
  const { commitment, content } = commitText("Hinge is worn");
  const one = await inspection(asset, { ...GOOD, remarks: commitment });
  expect((await seal(signed(one)))[0]).toMatchObject({ outcome: "refused" });
  expect((await seal(signed(one, [content])))[0]).toMatchObject({ outcome: "sealed" });
  const [latest] = (await readHistory(ctx, asset)).rows;
  expect(latest?.contents).toEqual({ [content.commit]: "Hinge is worn" });
  expect(latest?.authorName).toBe("Dag Ruskeen");
  expect(JSON.stringify(latest?.entry)).not.toContain("Hinge");
});
