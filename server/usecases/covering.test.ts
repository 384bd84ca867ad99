import { createHash } from "node:crypto";
import { type Checklist, canonicalize, issueDocument } from "@roundbook/schemas";
import { expect, it } from "vitest";
import { appendEntries } from "./append-entries.ts";
import { judgeFor } from "./judge-for.ts";
import { readAsset } from "./read-assets.ts";
import { readHistory } from "./read-history.ts";
import { rebuild } from "./rebuild.ts";
import { sealEntries } from "./seal-entries.ts";
import { setInterval } from "./set-interval.ts";
import { testEstate } from "./testing/estate.ts";

const look = (block?: string) => ({
  $ref: "#/$defs/check",
  title: "Sound?",
  limits: [{ accept: ["ok"] }],
  ask: { mandatory: true },
  grade: { means: "observation" },
  ...(block === undefined ? {} : { block }),
});
const document = (title: string, properties: object): Checklist =>
  issueDocument({
    $schema: "https://json-schema.org/draft/2020-12/schema",
    dialect: "urn:roundbook:checklist:1",
    title,
    type: "object",
    properties,
    additionalProperties: false,
  } as Checklist);
const MONTHLY = document("Look", { hinge: look("door_look") });
const YEARLY = document("Survey", { hinge: look("door_look"), frame: look() });

async function covering() {
  const estate = await testEstate();
  const { ctx, ids, newId, session } = estate;
  const refs = [MONTHLY, YEARLY].map((doc) => ({
    id: newId(),
    issue: 1,
    hash: createHash("sha256").update(canonicalize(doc)).digest("hex"),
  }));
  await appendEntries(ctx, {
    entries: [MONTHLY, YEARLY].map((doc, index) => ({
      kind: "checklist-issued",
      asset: null,
      author: ids.person,
      civilDate: "2026-01-01",
      happenedAt: null,
      body: { checklist: refs[index] as never, document: doc as never },
    })),
  });
  const [look, survey] = refs;
  if (look === undefined || survey === undefined) throw new Error("two checklists");
  const type = { assetType: "door" };
  const shorter = await setInterval(ctx, session, {
    ...type,
    title: "Monthly look",
    checklist: look.id,
    rule: { kind: "each-period", period: "month" },
  });
  const longer = await setInterval(ctx, session, {
    ...type,
    title: "Yearly survey",
    checklist: survey.id,
    rule: { kind: "from-last-done", every: "P1Y" },
    covers: [shorter.id],
  });
  const done = async (asset: string, ref: typeof look, answers: object, day: string) => {
    const judge = await judgeFor(ctx, ctx.store.db, ref.hash);
    const judgement = judge.judge({ particulars: {}, answers: answers as never });
    const body = { checklist: ref, particulars: {}, answers, judgement };
    return estate.entry("inspection", asset, body, day);
  };
  return { ...estate, look, survey, shorter, longer, done };
}

it("a longer check stands for a shorter one inside its window, and its entry says so", async () => {
  const { ctx, session, signed, newId, registered, done, look, survey, ...estate } =
    await covering();
  const asset = newId();
  const entries = [
    registered(asset, "D-1", "2026-01-05"),
    await done(asset, look, { hinge: "ok" }, "2026-07-10"),
    await done(asset, survey, { hinge: "ok", frame: "ok" }, "2026-08-20"),
  ];
  const outcomes = await sealEntries(
    ctx,
    session,
    entries.map((one) => signed(one)),
  );
  expect(outcomes.map(({ outcome }) => outcome)).toEqual(["sealed", "sealed", "sealed"]);
  const windowOf = async (interval: string) =>
    (await readAsset(ctx, asset))?.due.find((row) => row.interval === interval);
  // The survey of August is the look of August.
  expect(await windowOf(estate.shorter.id)).toMatchObject({
    earliest: "2026-09-01",
    latest: "2026-09-30",
    lastDone: "2026-08-20",
  });
  const history = await readHistory(ctx, asset, {});
  expect(history.rows.map(({ covered }) => covered)).toEqual([
    ["Monthly look"],
    undefined,
    undefined,
  ]);

  // Never the reverse: a look is no survey.
  await sealEntries(ctx, session, [signed(await done(asset, look, { hinge: "ok" }, "2026-10-01"))]);
  expect(await windowOf(estate.longer.id)).toMatchObject({ lastDone: "2026-08-20" });

  const before = await readAsset(ctx, asset);
  await rebuild(ctx);
  expect(await readAsset(ctx, asset)).toEqual(before);
});

it("a change of what is covered reaches the shorter check's dates, and ending it takes them back", async () => {
  const { ctx, session, signed, newId, registered, done, look, survey, shorter, longer } =
    await covering();
  const asset = newId();
  const entries = [
    registered(asset, "D-1", "2026-01-05"),
    await done(asset, look, { hinge: "ok" }, "2026-07-10"),
    await done(asset, survey, { hinge: "ok", frame: "ok" }, "2026-08-20"),
  ];
  await sealEntries(
    ctx,
    session,
    entries.map((one) => signed(one)),
  );
  const lastDone = async () =>
    (await readAsset(ctx, asset))?.due.find((row) => row.interval === shorter.id)?.lastDone;
  expect(await lastDone()).toBe("2026-08-20");
  const definition = {
    title: "Yearly survey",
    assetType: "door",
    checklist: survey.id,
    rule: { kind: "from-last-done", every: "P1Y" } as const,
  };
  await setInterval(ctx, session, definition, longer.id);
  expect(await lastDone()).toBe("2026-07-10");
  await setInterval(ctx, session, { ...definition, covers: [shorter.id] }, longer.id);
  expect(await lastDone()).toBe("2026-08-20");
});
