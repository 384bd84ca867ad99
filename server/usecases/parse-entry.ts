import {
  at,
  BODY_SCHEMAS,
  ENTRY_KINDS,
  ENTRY_SCHEMA,
  type Entry,
  type EntryKind,
  type Problem,
  parseCivilDate,
  problem,
  type Result,
} from "@roundbook/schemas";
import { compileSchema } from "@roundbook/schemas/validate";

const parseHead = compileSchema<Entry>(ENTRY_SCHEMA);
// Weighed with its head.
const bodies = new Map(
  ENTRY_KINDS.map((kind: EntryKind) => [kind, compileSchema<unknown>(BODY_SCHEMAS[kind], null)]),
);

/** Days and instants that match their pattern and that no calendar has. */
function badDates(entry: Entry): readonly Problem[] {
  const found: Problem[] = [];
  const civil = (pointer: string, date: string | undefined) => {
    if (date !== undefined && parseCivilDate(date) === undefined)
      found.push(problem(pointer, "no-such-date", { date }));
  };
  civil("/civilDate", entry.civilDate);
  if (entry.kind === "brought-forward") civil("/body/doneOn", entry.body.doneOn);
  if (entry.kind === "defect-step") civil("/body/until", entry.body.until);
  if (entry.kind === "result-received") civil("/body/reportedOn", entry.body.reportedOn);
  const { happenedAt } = entry;
  // The engine's own parser takes 30 February for 1 March.
  if (happenedAt !== null) {
    civil("/happenedAt", happenedAt.slice(0, 10));
    if (Number.isNaN(Date.parse(happenedAt)))
      found.push(problem("/happenedAt", "no-such-date", { date: happenedAt }));
  }
  return found;
}

const DAY_MS = 86_400_000;
/** The most that a zone is ahead of UTC. */
const EAST_MS = 14 * 3_600_000;

/** A sheet keyed in afterwards has a day and no instant, and was done before it was keyed. */
function badPaper(entry: Entry): readonly Problem[] {
  if (entry.kind !== "inspection" || entry.body.fromPaper === undefined) return [];
  const { keyedAt } = entry.body.fromPaper;
  const keyed = Date.parse(keyedAt);
  const pointer = "/body/fromPaper/keyedAt";
  if (Number.isNaN(keyed)) return [problem(pointer, "no-such-date", { date: keyedAt })];
  const day = parseCivilDate(entry.civilDate);
  const last = Math.floor((keyed + EAST_MS) / DAY_MS);
  return [
    ...(entry.happenedAt === null ? [] : [problem("/happenedAt", "paper-has-no-instant")]),
    ...(day !== undefined && day > last
      ? [problem("/civilDate", "done-after-keyed", { date: entry.civilDate, keyed: keyedAt })]
      : []),
  ];
}

/** Takes any value for an entry, or tells what keeps it from being one; pointers into the entry. */
export function parseEntry(value: unknown): Result<Entry> {
  const head = parseHead(value);
  if (!head.ok) return head;
  const entry = head.value;
  const body = bodies.get(entry.kind)?.(entry.body);
  if (body && !body.ok) {
    const problems = body.problems.map((one) => ({
      ...one,
      pointer: at("", "body") + one.pointer,
    }));
    return { ok: false, problems };
  }
  const problems = [...badDates(entry), ...badPaper(entry)];
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: entry };
}
