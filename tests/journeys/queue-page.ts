import {
  type AssetRow,
  type ChecklistRow,
  compileJudge,
  type Evidence,
  type SiteBundle,
} from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { civilDateIn } from "../../runner/offline/civil-today.ts";
import { type DeviceDatabase, type Draft, openDevice } from "../../runner/offline/database.ts";
import { deviceKey } from "../../runner/offline/device-key.ts";
import { saveDraft } from "../../runner/offline/drafts.ts";
import { keepPhoto } from "../../runner/offline/evidence.ts";
import { makeEntry } from "../../runner/offline/make-entry.ts";
import { finish } from "../../runner/offline/outbox.ts";
import { loadSettings } from "../../runner/offline/settings.ts";
import { inspectionBody } from "../../runner/pages/write-inspection.ts";

/** What is queued, as the test counts it: entries by id with their hash, photos by theirs. */
export interface Queued {
  readonly author: string;
  readonly entries: Readonly<Record<string, string>>;
  readonly photos: readonly string[];
}

declare global {
  interface Window {
    queueEntries(count: number, withPhotos: boolean): Promise<Queued>;
    /** Ids that wait, and those that the server has acknowledged. */
    queueState(): Promise<{ waiting: string[]; refused: string[]; sent: string[] }>;
    unsentPhotos(): Promise<number>;
    /** Whether the history of a site has been brought here as far as the site itself. */
    pastKept(): Promise<boolean>;
    /**
     * Saves a draft over and over, and finishes every tenth, until the page ends. Each save that
     * the device has acknowledged is told: the name of the draft and how many times it was saved.
     */
    saveForEver(round: string, told: (line: string) => Promise<void>): Promise<void>;
    /** What the device kept of a round: saves of its draft, and the entries that it finished. */
    savedOf(round: string): Promise<{ saves: number; finished: number; broken: number }>;
  }
}

/** A picture that no other is like. */
async function picture(at: number): Promise<Blob> {
  const canvas = new OffscreenCanvas(48, 36);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("no canvas");
  context.fillStyle = `rgb(${(at * 7) % 256} ${(at * 13) % 256} ${(at * 29) % 256})`;
  context.fillRect(0, 0, 48, 36);
  context.fillStyle = "white";
  context.font = "20px sans-serif";
  context.fillText(String(at), 2, 24);
  return canvas.convertToBlob({ type: "image/png" });
}

/** Answers as a caretaker would give them, point by point, as far as they need no number. */
const answersOf = (issue: ChecklistRow) =>
  Object.fromEntries(
    Object.entries(issue.document.properties).flatMap(([name, point]) =>
      point.$ref === "#/$defs/check" ? [[name, "ok"] as const] : [],
    ),
  );

interface Queue {
  readonly database: DeviceDatabase;
  readonly bundle: SiteBundle;
  readonly person: string;
  readonly clockOffset: number;
}

async function openQueue(): Promise<Queue> {
  const database = await openDevice();
  const [kept] = await database.getAll("bundles");
  const { session, clockOffset } = await loadSettings(database);
  const person = session?.reply.person?.id;
  if (!kept || !person) throw new Error("no site is kept here");
  return { database, bundle: kept.bundle, person, clockOffset };
}

const issueFor = (bundle: SiteBundle, asset: AssetRow): ChecklistRow | undefined => {
  const type = bundle.assetTypes.find((one) => one.assetType === asset.assetType);
  return bundle.checklists.find(({ id }) => type?.checklists.includes(id));
};

window.queueEntries = async (count, withPhotos) => {
  const { database, bundle, person, clockOffset } = await openQueue();
  const entries: Record<string, string> = {};
  const photos: string[] = [];
  const fillable = bundle.assets.flatMap((asset) => {
    const issue = issueFor(bundle, asset);
    return issue ? [{ asset, issue }] : [];
  });
  for (let at = 0; at < count; at += 1) {
    const { asset, issue } = fillable[at % fillable.length] as (typeof fillable)[number];
    const now = Date.now();
    const answers = answersOf(issue);
    const [point = ""] = Object.keys(answers);
    let evidence: Evidence = {};
    if (withPhotos) {
      const sha256 = await keepPhoto(database, await picture(at), now);
      photos.push(sha256);
      evidence = { [point]: [{ kind: "photo", sha256 }] };
    }
    const judgement = compileJudge(issue.document, createFormulaEngine()).judge({
      particulars: asset.particulars,
      answers,
      evidence,
    });
    const finished = { answers, evidence, declared: [], judgement, waits: {} };
    const when = { startedAt: now, cautionsAt: null };
    const { body, contents } = await inspectionBody({ asset, issue }, finished, when, now);
    const signed = await makeEntry(
      await deviceKey(database, person),
      { kind: "inspection", body },
      {
        asset: asset.id,
        contents,
        now,
        civilDate: civilDateIn(bundle.site.zone, now + clockOffset),
      },
    );
    await finish(database, {
      id: signed.entry.id,
      signed,
      person,
      state: "waiting",
      problems: [],
      madeAt: now,
      summary: {
        number: asset.number,
        description: asset.description,
        words: issue.document.title,
        overall: judgement.overall,
      },
      draft: null,
    });
    entries[signed.entry.id] = signed.hash;
  }
  database.close();
  return { author: person, entries, photos };
};

const draftOf = (queue: Queue, round: string, saves: number): Draft => ({
  key: `${round}:draft`,
  asset: round,
  site: queue.bundle.site.id,
  checklistHash: "draft",
  person: queue.person,
  startedAt: 0,
  changedAt: saves,
  answers: Object.fromEntries(
    Array.from({ length: 60 }, (_, at) => [`p${at}`, { value: saves, unit: "mm" }]),
  ),
  evidence: {},
  declared: [],
  cautionsAt: null,
});

window.saveForEver = async (round, told) => {
  const queue = await openQueue();
  const { database, bundle, person } = queue;
  const [asset] = bundle.assets;
  if (!asset) throw new Error("the site is empty");
  const key = await deviceKey(database, person);
  for (let saves = 1; ; saves += 1) {
    const draft = draftOf(queue, round, saves);
    await saveDraft(database, draft);
    await told(`saved ${saves}`);
    if (saves % 10 > 0) continue;
    const signed = await makeEntry(
      key,
      { kind: "correction", body: { corrects: `${round}-${saves}` } as never },
      { asset: asset.id, contents: [], now: Date.now(), civilDate: "2026-10-13" },
    );
    const summary = { number: "", description: "", words: "", overall: null };
    const row = { id: signed.entry.id, signed, person, state: "refused" as const };
    await finish(database, { ...row, problems: [], madeAt: saves, summary, draft });
    await told(`finished ${saves / 10}`);
  }
};

window.savedOf = async (round) => {
  const database = await openDevice();
  const draft = await database.get("drafts", `${round}:draft`);
  const rows = (await database.getAll("outbox")).filter((row) => row.draft?.asset === round);
  database.close();
  const answers = Object.values(draft?.answers ?? {});
  const torn = answers.some((answer) => (answer as { value: number }).value !== draft?.changedAt);
  return {
    // A draft that became an entry is in the outbox and nowhere else.
    saves: Math.max(draft?.changedAt ?? 0, ...rows.map(({ madeAt }) => madeAt), 0),
    finished: rows.length,
    broken: (torn ? 1 : 0) + rows.filter(({ signed }) => signed.signature.length < 80).length,
  };
};

window.queueState = async () => {
  const database = await openDevice();
  const outbox = await database.getAll("outbox");
  const sent = await database.getAllKeys("sent");
  database.close();
  const of = (refused: boolean) =>
    outbox.filter(({ state }) => (state === "refused") === refused).map(({ id }) => id);
  return { waiting: of(false), refused: of(true), sent };
};

window.unsentPhotos = async () => {
  const database = await openDevice();
  const rows = await database.getAll("evidence");
  database.close();
  return rows.filter(({ sent }) => !sent).length;
};

window.pastKept = async () => {
  const database = await openDevice();
  const [site] = await database.getAll("bundles");
  const past = site && (await database.get("pastOf", site.site));
  database.close();
  return past !== undefined && past.upTo >= (site?.bundle.cursor ?? 0);
};
