import type { AddressInfo } from "node:net";
import type { Role } from "@roundbook/schemas";
import { SMTPServer } from "smtp-server";
import { afterEach, expect, it } from "vitest";
import { smtpTransport, type Transport } from "../mail/transport.ts";
import { mails } from "../store/schema/mails.ts";
import type { Context } from "./context.ts";
import { readDigest, setDigest } from "./digest-setting.ts";
import { digestText } from "./digest-text.ts";
import { sendMails, writeDigests } from "./mail-digests.ts";
import { sealEntries } from "./seal-entries.ts";
import { setKeeper } from "./set-keeper.ts";
import { GOOD, type TestEstate, testEstate } from "./testing/estate.ts";

interface Received {
  readonly to: string;
  readonly data: string;
}

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

/** A real receiver on the loopback; `answer` may refuse with a reply code. */
async function receiver(port = 0, answer: () => number | undefined = () => undefined) {
  const received: Received[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    onRcptTo(_address, _session, done) {
      const code = answer();
      if (code === undefined) return done();
      done(Object.assign(new Error("not now"), { responseCode: code }));
    },
    onData(stream, session, done) {
      const chunks: Buffer[] = [];
      stream.on("data", (chunk: Buffer) => chunks.push(chunk));
      stream.on("end", () => {
        const to = session.envelope.rcptTo.map(({ address }) => address).join(",");
        received.push({ to, data: Buffer.concat(chunks).toString() });
        done();
      });
    },
  });
  await new Promise<void>((resolve) => server.listen(port, "127.0.0.1", resolve));
  closing.push(() => new Promise((resolve) => server.close(() => resolve())));
  return { received, port: (server.server.address() as AddressInfo).port };
}

const transportTo = (port: number): Transport => {
  const transport = smtpTransport(`smtp://127.0.0.1:${port}`, "roundbook@example.org");
  closing.push(async () => transport.close());
  return transport;
};

/** 13 October 2026 is a Tuesday; the clock of the test estate shows 09:40 UTC. */
async function wanted() {
  const estate = await testEstate();
  const { ctx, ids, session, signed, registered, newId } = estate;
  await sealEntries(ctx, session, [signed(registered(newId(), "D-7", "2026-01-05"))]);
  await setKeeper(ctx, session, ids.site, ids.person);
  await setDigest(ctx, session, { address: "dag@example.org", weekdays: [2] });
  return estate;
}
const stored = ({ ctx }: { ctx: Context }) => ctx.store.db.select().from(mails);
const settingOf = ({ ctx, session }: TestEstate) => readDigest(ctx, session, true);
const HOUR = 3_600_000;

it("a digest is written once a day from six in the morning at the estate, on the days asked for", async () => {
  const estate = await wanted();
  const { ctx, clock } = estate;
  clock.now = Date.parse("2026-10-13T04:59:00Z");
  expect(await writeDigests(ctx)).toBe(0);
  // Six in London, where it is still summer time.
  clock.now = Date.parse("2026-10-13T05:00:00Z");
  expect(await writeDigests(ctx)).toBe(1);
  expect(await writeDigests(ctx)).toBe(0);
  clock.now += 24 * HOUR;
  expect(await writeDigests(ctx)).toBe(0);
  expect(await stored(estate)).toHaveLength(1);
});

it("it arrives, with what is due at the places its reader keeps, and never a second time", async () => {
  const estate = await wanted();
  const { received, port } = await receiver();
  const transport = transportTo(port);
  await writeDigests(estate.ctx, "https://book.example.org/");
  expect(await sendMails(estate.ctx, transport)).toBe(1);
  expect(await sendMails(estate.ctx, transport)).toBe(0);
  expect(received.map(({ to }) => to)).toEqual(["dag@example.org"]);
  const text = received[0]?.data.replaceAll("=\r\n", "") ?? "";
  expect(text).toMatch(/^Subject: Roundbook, 2026-10-13: what is due\r$/m);
  expect(text).toContain("text/plain");
  expect(text).toContain("Never done");
  expect(text).toContain("D-7 Door to ice store, Half-yearly");
  expect(text).toContain("https://book.example.org/");
  expect((await settingOf(estate)).last).toMatchObject({
    day: "2026-10-13",
    waits: false,
    error: null,
  });
});

it("what is refused for now is kept and tried again, with growing pauses", async () => {
  const estate = await wanted();
  const { ctx, clock } = estate;
  let refuse = true;
  const { received, port } = await receiver(0, () => (refuse ? 451 : undefined));
  const transport = transportTo(port);
  await writeDigests(ctx);
  expect(await sendMails(ctx, transport)).toBe(0);
  expect((await settingOf(estate)).last).toMatchObject({
    waits: true,
    error: expect.stringMatching(/451|not now/),
  });
  clock.now += 59_000;
  await sendMails(ctx, transport);
  expect((await stored(estate))[0]?.attempts).toBe(1);
  clock.now += 2000;
  await sendMails(ctx, transport);
  clock.now += 2 * 60_000;
  await sendMails(ctx, transport);
  expect((await stored(estate))[0]?.attempts).toBe(2);
  refuse = false;
  clock.now += HOUR;
  expect(await sendMails(ctx, transport)).toBe(1);
  expect(received).toHaveLength(1);
});

it("a receiver that is down loses nothing, nor does another start of the server", async () => {
  const estate = await wanted();
  const { ctx, clock } = estate;
  const gone = await receiver();
  await closing.pop()?.();
  await writeDigests(ctx);
  expect(await sendMails(ctx, transportTo(gone.port))).toBe(0);
  expect((await settingOf(estate)).last).toMatchObject({ waits: true });
  // A server that starts anew knows only what is stored.
  clock.now += HOUR;
  const { received } = await receiver(gone.port);
  expect(await sendMails(ctx, transportTo(gone.port))).toBe(1);
  expect(received).toHaveLength(1);
});

it("what is refused for good is kept as failed, and so is what could not be sent for three days", async () => {
  const estate = await wanted();
  const { ctx, clock } = estate;
  let code = 550;
  const { received, port } = await receiver(0, () => code);
  const transport = transportTo(port);
  await writeDigests(ctx);
  await sendMails(ctx, transport);
  expect((await settingOf(estate)).last).toMatchObject({ waits: false, sentAt: null });
  expect((await settingOf(estate)).last?.error).toBeTruthy();

  code = 451;
  clock.now += 7 * 24 * HOUR;
  await writeDigests(ctx);
  for (let hours = 0; hours < 80; hours += 5) {
    await sendMails(ctx, transport);
    clock.now += 5 * HOUR;
  }
  expect((await stored(estate)).map(({ nextAt, sentAt }) => [nextAt, sentAt])).toEqual([
    [null, null],
    [null, null],
  ]);
  expect(received).toEqual([]);
});

it.each([
  "a@example.org\r\nBcc: b@example.org",
  "a@example.org, b@example.org",
  "Dag <dag@example.org>",
  "dag",
])("%j is no address, and refused at its place", async (address) => {
  const { ctx, session } = await testEstate();
  await expect(setDigest(ctx, session, { address, weekdays: [1] })).rejects.toMatchObject({
    problems: [{ pointer: "/address", code: "not-an-address" }],
  });
});

it("each role is told of what was never done, of what is overdue and of what nobody keeps", async () => {
  const { ctx, ids, session, signed, registered, inspection, newId } = await testEstate();
  const [never, over, soon] = [newId(), newId(), newId()];
  const entries = [
    registered(never, "D-1", "2026-01-05"),
    registered(over, "D-2", "2026-01-05"),
    registered(soon, "D-3", "2026-01-05"),
    await inspection(over, GOOD, "2026-02-01"),
    await inspection(soon, GOOD, "2026-04-18"),
  ];
  await sealEntries(
    ctx,
    session,
    entries.map((one) => signed(one)),
  );
  const told = async (role: Role) =>
    (await digestText(ctx, { person: ids.person, role }, undefined)).text;
  const desk = await told("manager");
  expect(desk).toContain("1 Ferry Hall: 1 overdue, 1 never done, 1 due by 2026-10-20");
  expect(desk).toMatch(/Overdue\n- D-2 /);
  expect(desk).toMatch(/Never done\n- D-1 /);
  expect(desk).toMatch(/nobody keeps the place\n- D-3 /);
  expect(await told("auditor")).toContain("1 never done");
  expect(await told("inspector")).toContain("Nothing is due at your places");
  await setKeeper(ctx, session, ids.site, ids.person);
  const round = await told("inspector");
  expect(round).toMatch(/Overdue\n- D-2 /);
  expect(round).toMatch(/Never done\n- D-1 /);
  expect(round).toMatch(/Due by 2026-10-20\n- D-3 /);
});
