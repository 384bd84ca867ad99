import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { canonicalize, type ImportMapping, issueDocument } from "@roundbook/schemas";
import { createNewId } from "../../../server/new-id.ts";
import { openStore } from "../../../server/store/open-store.ts";
import { sha256 } from "../../../server/store/sha256.ts";
import { addPerson } from "../../../server/usecases/add-person.ts";
import { addPlace } from "../../../server/usecases/add-place.ts";
import { appendEntries } from "../../../server/usecases/append-entries.ts";
import { createContext } from "../../../server/usecases/context.ts";
import { createEstate } from "../../../server/usecases/create-estate.ts";
import { importFile } from "../../../server/usecases/import-file.ts";
import { checklistWith } from "../filling/points.ts";

const POINTS = 6;
const IN_A_ROOM = 25;
const ROOMS_IN_A_BUILDING = 8;
const DAY_MS = 86_400_000;

export const SIGN_IN = { signIn: "bench", password: "bench-on-the-round" };
export const SITE = "Bench Site";

const iso = (at: number): string => new Date(at).toISOString().slice(0, 10);

const NAMES = ["Fire door", "Water outlet, hot", "Emergency light", "Extinguisher, foam 6 l"];

/** What the register of an old estate says of asset `at`, and what was found there last. */
const register = (count: number): string => {
  const lines = ["number,what,site,building,room"];
  for (let at = 0; at < count; at += 1) {
    const room = Math.floor(at / IN_A_ROOM);
    const building = Math.floor(room / ROOMS_IN_A_BUILDING);
    const what = `"${NAMES[at % NAMES.length]}, no. ${at + 1} on the plan"`;
    lines.push(
      `${at + 1},${what},${SITE},Building ${building + 1},Room ${building + 1}.${(room % ROOMS_IN_A_BUILDING) + 1}`,
    );
  }
  return `${lines.join("\n")}\n`;
};

const results = (count: number, names: readonly string[], now: number): string => {
  const lines = [`key,number,date,${names.join(",")}`];
  for (let at = 0; at < count; at += 1) {
    const answers = names.map((_, point) =>
      point % 2 === 0 ? String(30 + ((at + point) % 25)) : (at + point) % 50 === 0 ? "N" : "Y",
    );
    lines.push(
      `k${at + 1},${at + 1},${iso(now - (190 + (at % 60)) * DAY_MS)},${answers.join(",")}`,
    );
  }
  return `${lines.join("\n")}\n`;
};

/** A data folder with one site whose every asset is due, as old papers brought it in. */
export async function fillFolder(folder: string, count: number): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const store = await openStore({ url: pathToFileURL(join(folder, "roundbook.db")).href });
  const clock = Date.now;
  const ctx = createContext({ store, clock, newId: createNewId(clock) });
  try {
    await createEstate(ctx, { name: "Bench Estate" });
    const { id: owner } = await addPerson(ctx, null, {
      name: "Ona Owner",
      role: "owner",
      ...SIGN_IN,
    });
    const session = { person: owner, role: "owner" } as const;
    const { id: site } = await addPlace(ctx, session, {
      parent: null,
      level: "site",
      code: "1",
      name: SITE,
      zone: "Europe/London",
    });
    const document = issueDocument(checklistWith(POINTS));
    const hash = Buffer.from(sha256(Buffer.from(canonicalize(document)))).toString("hex");
    const checklist = { id: ctx.newId(), issue: 1, hash };
    const interval = ctx.newId();
    const made = {
      asset: null,
      author: owner,
      civilDate: iso(clock()),
      happenedAt: new Date(clock()).toISOString(),
    };
    const rule = { kind: "from-last-done", every: "P6M", late: "P14D" } as const;
    const definition = {
      title: "Half-yearly",
      assetType: "bench",
      checklist: checklist.id,
      rule,
    };
    await appendEntries(ctx, {
      entries: [
        {
          ...made,
          kind: "checklist-issued",
          body: { checklist, document: document as unknown as Record<string, unknown> },
        },
        {
          ...made,
          kind: "asset-type-issued",
          body: {
            assetType: "bench",
            version: 1,
            title: "Bench",
            particulars: {},
            checklists: [checklist.id],
          },
        },
        { ...made, kind: "interval-set", body: { interval, definition } },
      ],
    });
    const bring = async (mapping: ImportMapping, text: string) => {
      const path = join(folder, "import.csv");
      writeFileSync(path, text);
      const report = await importFile(ctx, session, { path, mapping, trial: false });
      if (report.badRows > 0 || report.newEntries < count)
        throw new Error(`the bench's own file is bad: ${JSON.stringify(report).slice(0, 500)}`);
    };
    await bring(
      {
        kind: "register",
        source: "bench register",
        asset: {
          number: "number",
          assetType: "bench",
          description: "what",
          place: ["site", "building", "room"],
        },
      },
      register(count),
    );
    const names = Object.keys(document.properties);
    await bring(
      {
        kind: "results",
        source: "bench results",
        key: "key",
        checklist: checklist.id,
        asset: { number: "number", assetType: "bench" },
        date: { column: "date", format: "YYYY-MM-DD" },
        answers: Object.fromEntries(
          names.map((name, at) => [
            name,
            at % 2 === 0 ? { column: name } : { column: name, words: { Y: "ok", N: "not-ok" } },
          ]),
        ),
      },
      results(count, names, clock()),
    );
    return site;
  } finally {
    await store.close();
  }
}
