import { entryBytes, type SignedEntry, toHex } from "@roundbook/schemas";
import type { DeviceDatabase, Draft, EvidenceRow, OutboxRow } from "./database.ts";

const KIND = "roundbook-unsent";
const VERSION = 2;
/** A day of photos fits many times. */
const LARGEST = 512_000_000;

interface FilePhoto {
  readonly sha256: string;
  readonly mime: string;
  readonly takenAt: number;
  readonly base64: string;
}

/** A multiple of three, so that the pieces join; few enough to be arguments of one call. */
const PIECE = 24_576;

async function base64(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = "";
  for (let at = 0; at < bytes.length; at += PIECE)
    text += btoa(String.fromCharCode(...bytes.subarray(at, at + PIECE)));
  return text;
}

const filePhoto = async ({ sha256, blob, takenAt }: EvidenceRow): Promise<FilePhoto> => ({
  sha256,
  mime: blob.type,
  takenAt,
  base64: await base64(blob),
});

/**
 * Drafts, waiting entries and unsent photos as one JSON file, whatever the browser does with its own
 * store. `also`: a draft that could not be kept there.
 */
export async function writeUnsent(
  database: DeviceDatabase,
  now: number,
  also?: Draft,
): Promise<Blob> {
  const outbox = await database.getAll("outbox");
  const kept = await database.getAll("drafts");
  const drafts = also === undefined ? kept : [...kept.filter(({ key }) => key !== also.key), also];
  const head = JSON.stringify({
    kind: KIND,
    version: VERSION,
    savedAt: new Date(now).toISOString(),
    outbox,
    drafts,
  });
  // Photo by photo: all of them as one text would need the memory of them all.
  const parts: (string | Blob)[] = [head.slice(0, -1), ',"photos":['];
  let first = true;
  for (const key of await database.getAllKeys("evidence")) {
    const row = await database.get("evidence", key);
    if (row === undefined || row.sent) continue;
    parts.push(new Blob([first ? "" : ",", JSON.stringify(await filePhoto(row))]));
    first = false;
  }
  parts.push("]}\n");
  return new Blob(parts, { type: "application/json" });
}

export type FaultCode =
  | "not-unsent-work"
  | "file-too-large"
  | "photo-altered"
  | "entry-altered"
  | "entry-differs-here"
  | "draft-differs-here"
  | "draft-not-whole";

/** What is not sound in a file, by its JSON Pointer. */
export interface Fault {
  readonly pointer: string;
  readonly code: FaultCode;
}

/** What came of reading a file: how much was new here, how much was here already, what is wrong. */
export interface Restored {
  readonly entries: number;
  readonly drafts: number;
  readonly photos: number;
  readonly known: number;
  readonly faults: readonly Fault[];
}

const sha256 = async (bytes: Uint8Array): Promise<string> =>
  toHex(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes as BufferSource)));

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const listIn = (file: Record<string, unknown>, name: string): readonly unknown[] =>
  Array.isArray(file[name]) ? (file[name] as unknown[]) : [];

/** Whether an entry still is what its device signed. */
async function isWhole(row: unknown): Promise<boolean> {
  if (!isRecord(row) || !isRecord(row.signed)) return false;
  const { entry, hash, signature } = row.signed;
  if (!isRecord(entry) || typeof hash !== "string" || typeof signature !== "string") return false;
  if (typeof row.id !== "string" || row.id !== entry.id || !isRecord(row.summary)) return false;
  try {
    return (await sha256(entryBytes(entry as never as SignedEntry["entry"]))) === hash;
  } catch {
    return false;
  }
}

const isDraft = (draft: unknown): draft is Draft =>
  isRecord(draft) &&
  typeof draft.key === "string" &&
  typeof draft.asset === "string" &&
  typeof draft.checklistHash === "string" &&
  draft.key === `${draft.asset}:${draft.checklistHash}` &&
  typeof draft.changedAt === "number" &&
  isRecord(draft.answers) &&
  isRecord(draft.evidence) &&
  Array.isArray(draft.declared);

const isSameDraft = (a: Draft, b: Draft): boolean =>
  a.person === b.person && a.startedAt === b.startedAt;

async function photoOf(photo: unknown): Promise<EvidenceRow | undefined> {
  if (!isRecord(photo) || typeof photo.base64 !== "string") return undefined;
  try {
    const bytes = Uint8Array.from(atob(photo.base64), (one) => one.charCodeAt(0));
    if ((await sha256(bytes)) !== photo.sha256) return undefined;
    const type = typeof photo.mime === "string" ? photo.mime : "image/jpeg";
    const takenAt = typeof photo.takenAt === "number" ? photo.takenAt : 0;
    return {
      sha256: photo.sha256 as string,
      blob: new Blob([bytes], { type }),
      sent: false,
      takenAt,
    };
  } catch {
    return undefined;
  }
}

async function parsed(file: Blob): Promise<Record<string, unknown> | FaultCode> {
  if (file.size > LARGEST) return "file-too-large";
  try {
    const value: unknown = JSON.parse(await file.text());
    if (isRecord(value) && value.kind === KIND) return value;
  } catch {
    // Told with what is no file of ours at all.
  }
  return "not-unsent-work";
}

/**
 * Takes up unsent work from a file that `writeUnsent` made, here or on another device: entries stay
 * signed by who wrote them. What is here already stays as it is; of two states of one draft the one
 * changed last is kept. Whatever is not sound is told by its place in the file and left out.
 */
export async function readUnsent(database: DeviceDatabase, file: Blob): Promise<Restored> {
  const said = await parsed(file);
  const count = { entries: 0, drafts: 0, photos: 0, known: 0 };
  if (typeof said === "string") return { ...count, faults: [{ pointer: "", code: said }] };
  const faults: Fault[] = [];
  const fault = (pointer: string, code: FaultCode) => faults.push({ pointer, code });
  // Photos first: an entry is never here without those that came with it.
  for (const [at, one] of listIn(said, "photos").entries()) {
    const photo = await photoOf(one);
    if (photo === undefined) fault(`/photos/${at}`, "photo-altered");
    else if (await database.getKey("evidence", photo.sha256)) count.known += 1;
    else {
      await database.put("evidence", photo);
      count.photos += 1;
    }
  }
  for (const [at, one] of listIn(said, "outbox").entries()) {
    if (!(await isWhole(one))) {
      fault(`/outbox/${at}`, "entry-altered");
      continue;
    }
    const row = one as OutboxRow;
    const transaction = database.transaction(["outbox", "sent"], "readwrite", {
      durability: "strict",
    });
    const here = await transaction.objectStore("outbox").get(row.id);
    const sent = await transaction.objectStore("sent").getKey(row.id);
    if (here !== undefined && here.signed.hash !== row.signed.hash)
      fault(`/outbox/${at}`, "entry-differs-here");
    else if (here !== undefined || sent !== undefined) count.known += 1;
    else {
      const state = row.state === "refused" ? "refused" : "waiting";
      const draft = isDraft(row.draft) ? row.draft : null;
      await transaction.objectStore("outbox").add({ ...row, state, draft });
      count.entries += 1;
    }
    await transaction.done;
  }
  for (const [at, draft] of listIn(said, "drafts").entries()) {
    if (!isDraft(draft)) {
      fault(`/drafts/${at}`, "draft-not-whole");
      continue;
    }
    const here = await database.get("drafts", draft.key);
    // Begun apart, neither holds what the other has: nobody but a person throws one away.
    if (here !== undefined && !isSameDraft(here, draft))
      fault(`/drafts/${at}`, "draft-differs-here");
    else if (here !== undefined && here.changedAt >= draft.changedAt) count.known += 1;
    else {
      await database.put("drafts", draft);
      count.drafts += 1;
    }
  }
  return { ...count, faults };
}
