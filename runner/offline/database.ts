import type {
  Answers,
  ChecklistRow,
  EntryKind,
  Evidence,
  HistoryEntry,
  Problem,
  SignedEntry,
  SiteBundle,
} from "@roundbook/schemas";
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Wait } from "../form/index.ts";

export interface PaperDraft {
  /** ISO date. */
  readonly doneOn: string;
  readonly doneBy: string;
  /** SHA-256 of photos of the sheet. */
  readonly sheet: readonly string[];
}

/** An inspection under way: saved as each answer is given, so that a killed tab reopens where it was. */
export interface Draft {
  /** `draftKey(asset, checklist hash)` */
  readonly key: string;
  readonly asset: string;
  readonly site: string;
  readonly checklistHash: string;
  readonly person: string;
  readonly startedAt: number;
  readonly changedAt: number;
  readonly answers: Answers;
  readonly evidence: Evidence;
  readonly declared: readonly string[];
  readonly cautionsAt: number | null;
  /** Of a sheet on paper that is keyed in: `doneOn` is empty until it is said. */
  readonly paper?: PaperDraft;
  /** Waits that were started; drafts kept by an older app have none. */
  readonly waits?: Readonly<Record<string, Wait>>;
}

/** What the device shows of an entry without opening it. */
export interface EntrySummary {
  readonly number: string;
  readonly description: string;
  readonly words: string;
  readonly overall: string | null;
}

/**
 * `waiting`: not acknowledged yet, for whatever reason. `later`: the server does not know its
 * checklist or asset yet and asks for it again. `refused`: a person must look.
 * None of them is ever dropped by the app.
 */
export type OutboxState = "waiting" | "later" | "refused";

export interface OutboxRow {
  readonly id: string;
  readonly signed: SignedEntry;
  readonly person: string;
  readonly state: OutboxState;
  readonly problems: readonly Problem[];
  readonly madeAt: number;
  readonly summary: EntrySummary;
  /** The draft it was made from, so that it can be taken back while it waits. */
  readonly draft: Draft | null;
}

export interface SentRow {
  readonly id: string;
  readonly kind: EntryKind;
  readonly asset: string | null;
  /** Stable id of the checklist, for inspections and attempts. */
  readonly checklist: string | null;
  /** A complete, evaluated inspection: it moves the due date once the site is read again. */
  readonly counts: boolean;
  /** Civil date of the entry: a sheet keyed in today was done before. Rows of an older app have none. */
  readonly doneOn?: string;
  readonly seq: number;
  readonly sentAt: number;
  readonly summary: EntrySummary;
}

/** A photo: content-addressed, never overwritten, kept until the server has acknowledged its hash. */
export interface EvidenceRow {
  readonly sha256: string;
  readonly blob: Blob;
  readonly sent: boolean;
  readonly takenAt: number;
}

export interface KeyRow {
  readonly person: string;
  readonly device: string;
  readonly keys: CryptoKeyPair;
  readonly enrolled: boolean;
}

/** An entry about an asset of a kept site, to be read without a network. */
export interface PastRow {
  /** Of the entry. */
  readonly id: string;
  readonly asset: string;
  readonly row: HistoryEntry;
}

/** How far into the log the history of a site is kept. */
export interface PastOf {
  readonly site: string;
  readonly upTo: number;
  /** The first civil date that is kept. */
  readonly from: string;
}

export interface BundleRow {
  readonly site: string;
  readonly bundle: SiteBundle;
  readonly fetchedAt: number;
}

export interface DeviceSchema extends DBSchema {
  bundles: { key: string; value: BundleRow };
  checklists: { key: string; value: ChecklistRow };
  drafts: { key: string; value: Draft };
  outbox: { key: string; value: OutboxRow };
  sent: { key: string; value: SentRow; indexes: { sentAt: number } };
  evidence: { key: string; value: EvidenceRow };
  keys: { key: string; value: KeyRow };
  settings: { key: string; value: unknown };
  past: { key: string; value: PastRow; indexes: { asset: string } };
  pastOf: { key: string; value: PastOf };
}

export type DeviceDatabase = IDBPDatabase<DeviceSchema>;

/** Opens (and on first use makes) what this device keeps. Closes itself when a newer app needs to upgrade it. */
export const openDevice = (name = "roundbook"): Promise<DeviceDatabase> => {
  const opening: Promise<DeviceDatabase> = openDB<DeviceSchema>(name, 2, {
    upgrade(database, before) {
      if (before < 2) {
        database.createObjectStore("past", { keyPath: "id" }).createIndex("asset", "asset");
        database.createObjectStore("pastOf", { keyPath: "site" });
      }
      if (before >= 1) return;
      database.createObjectStore("bundles", { keyPath: "site" });
      database.createObjectStore("checklists", { keyPath: "hash" });
      database.createObjectStore("drafts", { keyPath: "key" });
      database.createObjectStore("outbox", { keyPath: "id" });
      database.createObjectStore("sent", { keyPath: "id" }).createIndex("sentAt", "sentAt");
      database.createObjectStore("evidence", { keyPath: "sha256" });
      database.createObjectStore("keys", { keyPath: "person" });
      database.createObjectStore("settings");
    },
    blocking() {
      void opening.then((database) => database.close());
    },
  });
  return opening;
};
