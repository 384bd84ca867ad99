import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { PUBLISHED } from "../../schemas/testing/published/index.ts";
import { realDataPath } from "./folder.ts";

/** A collection of published figures beside the open data; read in place. */
const FOLDER = realDataPath("..", "checkvalues");

interface Entry {
  readonly id: string;
  readonly section?: string | null;
  readonly year?: number | null;
  readonly marker: string;
}

/** By file: how many entries stand in it, and how many of them the engine is held against. */
const FILES = {
  "01-electrical.json": { all: 109, engine: 107 },
  "02-ladders.json": { all: 21, engine: 20 },
  "03-fire-doors.json": { all: 25, engine: 23 },
  "04-water.json": { all: 39, engine: 37 },
  "05-other-assets.json": { all: 80, engine: 70 },
  "08-conformity-units.json": { all: 41, engine: 27 },
} as const;

const entriesOf = (file: string): readonly Entry[] =>
  (JSON.parse(readFileSync(join(FOLDER, file), "utf8")) as { entries: readonly Entry[] }).entries;
const ours = new Map(PUBLISHED.map((fact) => [fact.id, fact]));

test("no published figure stands twice among ours, and what is not used says why", () => {
  expect(ours.size).toBe(PUBLISHED.length);
  const silent = PUBLISHED.filter(({ used, reason }) => (used === "engine") === Boolean(reason));
  expect(silent).toEqual([]);
});

describe.skipIf(!existsSync(FOLDER))("the collection of published figures", () => {
  test.each(Object.entries(FILES))(
    "%s: every entry is among ours, and so many are used",
    (file, counts) => {
      const entries = entriesOf(file);
      const missing = entries.filter(({ id }) => !ours.has(id)).map(({ id }) => id);
      expect(missing).toEqual([]);
      const used = entries.filter(({ id }) => ours.get(id)?.used === "engine");
      expect({ all: entries.length, engine: used.length }).toEqual(counts);
    },
  );

  // "-" stands for no section.
  test.each(Object.keys(FILES))("%s: marker, year and section are carried along", (file) => {
    const told = (entry: Entry) => [
      entry.id,
      entry.marker,
      entry.year ?? null,
      entry.section === "-" ? null : (entry.section ?? null),
    ];
    const known = entriesOf(file).filter(({ id }) => ours.has(id));
    expect(known.map(({ id }) => told(ours.get(id) as Entry))).toEqual(known.map(told));
  });

  test("nothing of ours is unknown to the collection", () => {
    const known = new Set(
      Object.keys(FILES).flatMap((file) => entriesOf(file).map(({ id }) => id)),
    );
    expect(PUBLISHED.filter(({ id }) => !known.has(id))).toEqual([]);
  });

  test("how well the figures are known, by marker", () => {
    const entries = Object.keys(FILES).flatMap(entriesOf);
    const counts: Record<string, string> = {};
    for (const marker of ["R", "S", "M", "C"]) {
      const marked = entries.filter((entry) => entry.marker === marker);
      const used = marked.filter(({ id }) => ours.get(id)?.used === "engine");
      counts[marker] = `${used.length} of ${marked.length}`;
    }
    expect(counts).toMatchInlineSnapshot(`
      {
        "C": "24 of 27",
        "M": "87 of 93",
        "R": "50 of 61",
        "S": "123 of 134",
      }
    `);
  });
});
