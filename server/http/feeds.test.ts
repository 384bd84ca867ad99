import type { DueRow, FeedMade, FeedRow, Page, PersonRow, PlaceRow } from "@roundbook/schemas";
import { parseICS, type VEvent } from "node-ical";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { beginDemo, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginDemo(server);
}, 30_000);
afterAll(() => server.close());

const read = async <T>(path: string): Promise<T> =>
  (await (await server.call("GET", path, { as: owner })).json()) as T;
const make = async (scope: object): Promise<FeedMade> => {
  const reply = await server.call("POST", "/api/feeds", { as: owner, body: scope });
  expect(reply.status).toBe(201);
  return (await reply.json()) as FeedMade;
};
const siteOf = async (code: string): Promise<string> => {
  const { rows } = await read<{ rows: PlaceRow[] }>("/api/places");
  return rows.find((place) => place.code === code)?.id ?? "";
};
/** As a calendar program asks: without a cookie. */
const fetchFeed = (path: string, headers: Record<string, string> = {}) =>
  server.app.request(path, { headers });
const eventsOf = (text: string): VEvent[] =>
  Object.values(parseICS(text)).filter((one): one is VEvent => one?.type === "VEVENT");
const civil = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part) => String(part).padStart(2, "0"))
    .join("-");
const textOf = (value: unknown): string =>
  typeof value === "object" && value !== null && "val" in value ? String(value.val) : String(value);

describe("a calendar address", () => {
  it("opens in another program's parser: every check of the site on its due day", async () => {
    const site = await siteOf("4");
    const { path } = await make({ site });
    expect(path).toMatch(/^\/feeds\/[A-Za-z0-9_-]{43}\.ics$/);
    const reply = await fetchFeed(path);
    expect(reply.status).toBe(200);
    expect(reply.headers.get("content-type")).toBe("text/calendar; charset=utf-8");
    const events = eventsOf(await reply.text());
    const due = (await read<Page<DueRow>>(`/api/due?site=${site}&limit=200`)).rows.filter(
      (row) => row.due <= "2027-10-14",
    );
    expect(due.length).toBeGreaterThan(20);
    const expected = due.map(
      (row) =>
        `${row.due} ${row.latest < "2026-10-13" ? "Overdue. " : ""}${row.intervalTitle}: ${row.number} ${row.description}`,
    );
    expect(expected.filter((one) => one.includes("Overdue")).length).toBeGreaterThan(0);
    const found = events.map((event) => `${civil(event.start)} ${textOf(event.summary)}`);
    expect(found.toSorted()).toEqual(expected.toSorted());
    for (const event of events) {
      expect(event.datetype).toBe("date");
      expect(Math.round((Number(event.end) - Number(event.start)) / 3_600_000)).toBeOneOf([
        23, 24, 25,
      ]);
    }
  });

  it("has lines of at most 75 octets that end as RFC 5545 §3.1 asks, whatever the text", async () => {
    for (const code of ["1", "4", "5", "8"]) {
      const { path } = await make({ site: await siteOf(code) });
      const lines = (await (await fetchFeed(path)).text()).split("\r\n");
      expect(Math.max(...lines.map((line) => Buffer.byteLength(line))), code).toBeLessThanOrEqual(
        75,
      );
    }
    const { path } = await make({ site: await siteOf("7") });
    const text = await (await fetchFeed(path)).text();
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text).toMatch(/END:VCALENDAR\r\n$/);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    const lines = text.split("\r\n").map((line) => Buffer.byteLength(line));
    expect(Math.max(...lines)).toBeLessThanOrEqual(75);
    // The apostrophe of the cottages takes three octets, and a comma is escaped.
    expect(text.replaceAll("\r\n ", "")).toContain("Lightkeepers’ Cottages\\, ");
  });

  it("keeps the same event for a check when its date moves", async () => {
    const site = await siteOf("1");
    const { path } = await make({ site });
    const uids = async () =>
      new Map(
        eventsOf(await (await fetchFeed(path)).text()).map((event) => [
          textOf(event.summary),
          `${event.uid}`,
        ]),
      );
    const before = await uids();
    const calendar = { weekdays: [{ weekday: 2, reason: "Tuesday" }] };
    const set = await server.call("PUT", `/api/sites/${site}/calendar`, {
      as: owner,
      body: calendar,
    });
    expect(set.status).toBe(204);
    const after = await uids();
    expect(after.size).toBe(before.size);
    for (const [summary, uid] of after) expect(uid).toBe(before.get(summary));
  });

  it("names no person and says nothing of what was found", async () => {
    const { rows } = await read<{ rows: PersonRow[] }>("/api/people");
    const { path } = await make({ person: rows.find(({ name }) => name === "Isel Fairbrook")?.id });
    const text = (await (await fetchFeed(path)).text()).replaceAll("\r\n ", "");
    expect(eventsOf(text).length).toBeGreaterThan(10);
    for (const { name, id } of rows) {
      for (const part of name.split(" ")) expect(text).not.toContain(part);
      expect(text).not.toContain(id);
    }
    expect(text).not.toMatch(/pass|fail|advisory|ATTENDEE|ORGANIZER/i);
  });

  it("keeps back why one asset has a rule of its own", async () => {
    const site = await siteOf("4");
    const { rows } = await read<Page<DueRow>>(`/api/due?site=${site}&q=4013`);
    const put = await server.call(
      "PUT",
      `/api/assets/${rows[0]?.asset}/overrides/${rows[0]?.interval}`,
      {
        as: owner,
        body: { rule: { kind: "from-last-done", every: "P5M" }, reason: "Zebedee asked" },
      },
    );
    expect(put.status).toBe(204);
    const { path } = await make({ site });
    const text = (await (await fetchFeed(path)).text()).replaceAll("\r\n ", "");
    expect(text).toContain("4013");
    expect(text).not.toContain("Zebedee");
  });

  it("keeps back why a site is closed", async () => {
    const site = await siteOf("4");
    const set = await server.call("PUT", `/api/sites/${site}/calendar`, {
      as: owner,
      body: {
        closures: [{ from: "2026-10-01", to: "2027-06-30", reason: "Zebedee in hospital" }],
      },
    });
    expect(set.status).toBe(204);
    const { path } = await make({ site });
    const text = (await (await fetchFeed(path)).text()).replaceAll("\r\n ", "");
    expect(text).toContain("rolled back");
    expect(text).not.toContain("Zebedee");
  });

  it("of a person holds the places they keep, and no other", async () => {
    const { rows } = await read<{ rows: PersonRow[] }>("/api/people");
    const { path } = await make({ person: rows.find(({ name }) => name === "Isel Fairbrook")?.id });
    const places = new Set(
      eventsOf(await (await fetchFeed(path)).text()).map(
        (event) => textOf(event.location).split(", ")[0],
      ),
    );
    expect([...places].toSorted()).toEqual(["Bunkhouse", "Lightkeepers’ Cottages"]);
  });

  it("is not sent again while nothing changed", async () => {
    const { path } = await make({ site: await siteOf("8") });
    const etag = (await fetchFeed(path)).headers.get("etag") ?? "";
    server.now += 60_000;
    expect((await fetchFeed(path, { "if-none-match": etag })).status).toBe(304);
    expect((await fetchFeed(path, { "if-none-match": '"other"' })).status).toBe(200);
  });

  it("leads nowhere once it is revoked, as a wrong one does", async () => {
    const { id, path } = await make({ site: await siteOf("4") });
    expect((await fetchFeed(path)).status).toBe(200);
    expect((await server.call("DELETE", `/api/feeds/${id}`, { as: owner })).status).toBe(204);
    const [revoked, wrong] = [
      await fetchFeed(path),
      await fetchFeed(`/feeds/${"A".repeat(43)}.ics`),
    ];
    expect([revoked.status, wrong.status]).toEqual([404, 404]);
    expect(await revoked.json()).toEqual(await wrong.json());
    const { rows } = await read<{ rows: FeedRow[] }>("/api/feeds");
    expect(rows.find((row) => row.id === id)?.revokedAt).not.toBeNull();
    expect(JSON.stringify(rows)).not.toContain(path.slice(7, -4));
  });

  it("is made only for a site or a person that there is", async () => {
    for (const scope of [
      { site: owner.slice(0, 0) },
      { site: "018f5d2c-0000-7000-8000-000000000001" },
    ])
      expect((await server.call("POST", "/api/feeds", { as: owner, body: scope })).status).toBe(
        422,
      );
  });
});
