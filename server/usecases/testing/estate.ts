import { createHash, generateKeyPairSync, sign } from "node:crypto";
import { join } from "node:path";
import {
  type Checklist,
  canonicalize,
  type Entry,
  type EntryKind,
  entryBytes,
  issueDocument,
  type SignedEntry,
} from "@roundbook/schemas";
import { createNewId } from "../../new-id.ts";
import { tempFolder, tempStore } from "../../store/testing/temp-store.ts";
import { appendEntries, type Made } from "../append-entries.ts";
import { commitText } from "../commit-text.ts";
import { type Context, createContext, type Session } from "../context.ts";
import { createEstate } from "../create-estate.ts";
import { judgeFor } from "../judge-for.ts";

/** A cold-store door checked by eye and by its gap: 2 to 4 mm. */
const DOOR: Checklist = issueDocument({
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Fire door",
  type: "object",
  properties: {
    closes: {
      $ref: "#/$defs/check",
      title: "Closes by itself?",
      limits: [{ accept: ["ok"] }],
      ask: { mandatory: true },
      grade: { means: "by-a-date", within: "P7D" },
    },
    gap: {
      $ref: "#/$defs/reading",
      title: "Gap",
      quantity: { unit: "mm" },
      limits: [{ min: 2, max: 4 }],
      ask: { mandatory: true },
    },
    remarks: { $ref: "#/$defs/text", title: "Remarks" },
  },
  additionalProperties: false,
} as Checklist);

export const NOW = Date.parse("2026-10-13T09:40:00.000Z");

const made = (kind: EntryKind, author: string, body: object): Made =>
  ({ kind, asset: null, author, civilDate: "2026-10-01", happenedAt: null, body }) as Made;

/** An estate with one site, one type, one issued checklist, one interval and one enrolled device. */
export async function testEstate() {
  const store = await tempStore(`file:${join(tempFolder(), "estate.db")}`);
  const clock = { now: NOW };
  const newId = createNewId(() => clock.now);
  const reported: unknown[] = [];
  const report = (error: unknown) => void reported.push(error);
  const ctx = createContext({ store, clock: () => clock.now, newId, report });
  await createEstate(ctx, { name: "Vennasay Harbour Trust" });
  const ids = {
    person: newId(),
    device: newId(),
    site: newId(),
    checklist: newId(),
    interval: newId(),
  };
  const ref = {
    id: ids.checklist,
    issue: 1,
    hash: createHash("sha256").update(canonicalize(DOOR)).digest("hex"),
  };
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const { x = "", y = "" } = publicKey.export({ format: "jwk" });
  const point = [Buffer.of(4), Buffer.from(x, "base64url"), Buffer.from(y, "base64url")];
  const key = Buffer.concat(point).toString("base64url");
  const name = commitText("Dag Ruskeen");
  const { person, device, site, interval } = ids;
  const rule = { kind: "from-last-done", every: "P6M", early: "P14D", late: "P14D" } as const;
  await appendEntries(ctx, {
    contents: [name.content],
    entries: [
      made("person-added", person, { person, role: "inspector", name: name.commitment }),
      made("device-enrolled", person, { device, person, key }),
      made("place-added", person, {
        place: site,
        parent: null,
        level: "site",
        code: "1",
        name: "Ferry Hall",
        zone: "Europe/London",
      }),
      made("checklist-issued", person, { checklist: ref, document: DOOR as never }),
      made("asset-type-issued", person, {
        assetType: "door",
        version: 1,
        title: "Fire door",
        particulars: {},
        checklists: [ref.id],
      }),
      made("interval-set", person, {
        interval,
        definition: { title: "Half-yearly", assetType: "door", checklist: ref.id, rule },
      }),
    ],
  });
  const session: Session = { person, role: "inspector" };

  const entry = (kind: EntryKind, asset: string, body: object, day = "2026-10-13"): Entry =>
    ({
      id: newId(),
      kind,
      asset,
      author: person,
      device,
      happenedAt: `${day}T08:00:00Z`,
      civilDate: day,
      body,
    }) as Entry;
  const signed = (one: Entry, contents: SignedEntry["contents"] = []): SignedEntry => {
    const hash = createHash("sha256").update(entryBytes(one)).digest();
    const signature = sign("sha256", hash, { key: privateKey, dsaEncoding: "ieee-p1363" });
    return {
      entry: one,
      hash: hash.toString("hex"),
      signature: signature.toString("base64url"),
      contents,
    };
  };
  const registered = (asset: string, number: string, day?: string) =>
    entry(
      "registered",
      asset,
      { number, assetType: "door", description: "Door to ice store", place: site, particulars: {} },
      day,
    );
  const inspection = async (asset: string, answers: Record<string, unknown>, day?: string) => {
    const judge = await judgeFor(ctx, ctx.store.db, ref.hash);
    const judgement = judge.judge({ particulars: {}, answers: answers as never });
    const body = { checklist: ref, particulars: {}, answers, judgement } as never;
    return entry("inspection", asset, body, day);
  };
  return {
    ctx: ctx as Context,
    clock,
    ids,
    ref,
    session,
    reported,
    newId,
    entry,
    signed,
    registered,
    inspection,
  };
}

export type TestEstate = Awaited<ReturnType<typeof testEstate>>;
export const GOOD = { closes: "ok", gap: { value: 3, unit: "mm" } };
export const BAD = { closes: "not-ok", gap: { value: 3, unit: "mm" } };
