import type {
  DueCounts,
  DueRow,
  IntervalDates,
  IntervalEffect,
  IntervalRow,
  Page,
  PlaceRow,
  Plan,
} from "@roundbook/schemas";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { beginDemo, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginDemo(server);
}, 30_000);
afterAll(() => server.close());

const read = async <T>(path: string): Promise<T> => {
  const reply = await server.call("GET", path, { as: owner });
  expect(reply.status, path).toBe(200);
  return (await reply.json()) as T;
};
const send = async <T>(method: string, path: string, body: unknown): Promise<T> => {
  const reply = await server.call(method, path, { as: owner, body });
  expect(reply.status, `${path} ${await reply.clone().text()}`).toBeLessThan(300);
  return (reply.status === 204 ? undefined : await reply.json()) as T;
};
const intervalOf = async (title: string): Promise<IntervalRow> => {
  const { rows } = await read<{ rows: IntervalRow[] }>("/api/intervals");
  const found = rows.find(({ definition }) => definition.title === title);
  if (found === undefined) throw new Error(`no interval ${title}`);
  return found;
};
const LADDERS = "Ladder, formal inspection";

describe("an interval before it is in force", () => {
  it("shows the next ten dates of a real asset, each with its reason", async () => {
    const { definition } = await intervalOf(LADDERS);
    const { asset } = await read<{ asset: { id: string } }>("/api/assets/number:4012");
    const told = await send<IntervalDates>("POST", "/api/intervals/dates", {
      definition: { ...definition, rule: { kind: "from-last-done", every: "P3M" } },
      asset: asset.id,
    });
    expect(told.asset?.number).toBe("4012");
    expect(told.dates).toHaveLength(10);
    expect(told.dates.map(({ due }) => due)).toEqual(told.dates.map(({ due }) => due).toSorted());
    expect(told.dates.every(({ why }) => why.code === "from-last-done")).toBe(true);
  });

  it("tells how many assets it would make overdue, and writes nothing", async () => {
    const { id: interval, definition } = await intervalOf(LADDERS);
    const before = await read<Page<DueRow>>("/api/due?limit=200");
    const same = await send<IntervalEffect>("POST", "/api/intervals/effect", {
      definition,
      interval,
    });
    expect(same).toMatchObject({ assets: 6, sooner: 0, later: 0, minutesAMonth: 0 });
    expect(same.overdueThen).toBe(same.overdueNow);
    const monthly = await send<IntervalEffect>("POST", "/api/intervals/effect", {
      definition: { ...definition, rule: { kind: "from-last-done", every: "P1M" } },
      interval,
    });
    expect(monthly.sooner).toBe(6);
    expect(monthly.overdueThen).toBeGreaterThan(same.overdueNow);
    expect(monthly.examples).toContain("4012");
    // 5 of 6 more checks a month and ladder, 5 minutes each.
    expect(monthly.minutesAMonth).toBe(25);
    expect(await read<Page<DueRow>>("/api/due?limit=200")).toEqual(before);
  });

  it("says at its place what is wrong with it", async () => {
    const { definition } = await intervalOf(LADDERS);
    const rule = { kind: "recurrence", rrule: "FREQ=HOURLY", start: "2026-10-01" };
    for (const path of ["/api/intervals/dates", "/api/intervals/effect", "/api/intervals"]) {
      const reply = await server.call("POST", path, {
        as: owner,
        body:
          path === "/api/intervals"
            ? { ...definition, rule }
            : { definition: { ...definition, rule } },
      });
      expect(reply.status).toBe(422);
      const { problems } = (await reply.json()) as {
        problems: { pointer: string; code: string }[];
      };
      expect(problems).toMatchObject([{ pointer: "/rule/rrule", code: "rrule-sub-daily" }]);
    }
  });

  it("refuses a meter nobody reads, and covers that run in a circle", async () => {
    const { id, definition } = await intervalOf(LADDERS);
    const problemsOf = async (body: object) => {
      const reply = await server.call("POST", "/api/intervals", { as: owner, body });
      expect(reply.status).toBe(422);
      return ((await reply.json()) as { problems: { pointer: string; code: string }[] }).problems;
    };
    const usage = { kind: "on-usage", point: "hours", every: 100, unit: "h" };
    expect(await problemsOf({ ...definition, rule: usage })).toMatchObject([
      { pointer: "/rule/point", code: "usage-unknown-point" },
    ]);
    const itself = await server.call("PUT", `/api/intervals/${id}`, {
      as: owner,
      body: { ...definition, covers: [id] },
    });
    expect(((await itself.json()) as { problems: object[] }).problems).toMatchObject([
      { pointer: "/covers/0", code: "covers-itself" },
    ]);
  });

  it("may be kept as a draft; another's draft in between is refused and both are kept", async () => {
    const id = "018f5d2c-0000-7000-8000-00000000000a";
    const path = `/api/interval-drafts/${id}`;
    await send("PUT", path, { revision: null, definition: { title: "Ladder, monthly look" } });
    await send("PUT", path, { revision: 1, definition: { title: "Second" } });
    const late = await server.call("PUT", path, {
      as: owner,
      body: { revision: 1, definition: { title: "Late" } },
    });
    expect(late.status).toBe(409);
    expect(await late.json()).toMatchObject({
      code: "interval-draft-changed-meanwhile",
      current: { revision: 2, definition: { title: "Second" } },
    });
    const { rows } = await read<{ rows: object[] }>("/api/interval-drafts");
    expect(rows).toMatchObject([{ id, revision: 2 }]);
    await send("DELETE", path, undefined);
    expect((await read<{ rows: object[] }>("/api/interval-drafts")).rows).toEqual([]);
  });
});

describe("what is coming", () => {
  it("sums 53 weeks in checks and minutes, what is overdue apart", async () => {
    const plan = await read<Plan>("/api/plan");
    expect(plan.weeks).toHaveLength(53);
    expect(plan.weeks[0]?.week).toBe("2026-10-12");
    expect(plan.overdue.checks).toBeGreaterThanOrEqual(3);
    const checks = plan.weeks.reduce((sum, week) => sum + week.checks, 0);
    // Monthly, weekly, quarterly, half-yearly and yearly checks of the demo estate.
    expect(checks).toBeGreaterThan(300);
    for (const week of plan.weeks) expect(week.minutes === 0).toBe(week.checks === 0);
  });

  it("of one site holds its own checks alone", async () => {
    const { rows } = await read<{ rows: PlaceRow[] }>("/api/places");
    const sites = rows.filter(({ level }) => level === "site");
    const total = async (query: string) =>
      (await read<Plan>(`/api/plan${query}`)).weeks.reduce((sum, week) => sum + week.checks, 0);
    const each = await Promise.all(sites.map(({ id }) => total(`?site=${id}`)));
    expect(each.reduce((sum, one) => sum + one)).toBe(await total(""));
  });
});

const STATUSES = [
  "not-yet",
  "early",
  "due",
  "late-window",
  "overdue",
  "never-done",
  "undecided",
  "excused",
  "blocked",
] as const;

describe("the due list", () => {
  it.each(["2026-10-13", "2026-12-15", "2027-03-31", "2027-04-01", "2027-06-01"])(
    "on %s holds every row under its own status and no other, closures included",
    async (on) => {
      const of = async (query: string) =>
        (await read<Page<DueRow>>(`/api/due?limit=200&on=${on}${query}`)).rows;
      const whole = await of("");
      const keys = (rows: readonly DueRow[]) =>
        rows.map(({ asset, interval }) => `${asset} ${interval}`).toSorted();
      for (const status of STATUSES)
        expect(keys(await of(`&status=${status}`)), status).toEqual(
          keys(whole.filter((row) => row.status === status)),
        );
      const counts = await read<DueCounts>(`/api/due/count?on=${on}`);
      const count = (...asked: readonly string[]) =>
        whole.filter(({ status }) => asked.includes(status)).length;
      expect(counts.overdue.count).toBe(count("overdue"));
      expect(counts.blocked.count).toBe(count("blocked"));
      expect(counts.excused.count).toBe(count("excused"));
      expect(counts.due.count).toBe(count("due", "late-window", "never-done"));
    },
  );

  it("is filtered by type and place, and its counts add up", async () => {
    const { rows } = await read<{ rows: PlaceRow[] }>("/api/places");
    const site = rows.find(({ code }) => code === "7");
    const room = rows.find(({ code }) => code === "7.1");
    const of = async (query: string) =>
      (await read<Page<DueRow>>(`/api/due?limit=200&${query}`)).rows;
    const doors = await of(`place=${site?.id}&assetType=fire_door`);
    expect(doors.map(({ number }) => number).toSorted()).toEqual(["7051", "7052", "7053", "7054"]);
    const inRoom = await of(`place=${room?.id}&assetType=fire_door`);
    expect(inRoom.map(({ number }) => number).toSorted()).toEqual(["7051", "7052"]);
    const counts = await read<DueCounts>(`/api/due/count?place=${site?.id}`);
    expect(counts.all).toEqual({ count: (await of(`place=${site?.id}`)).length, more: false });
  });
});
