import type { AssetRow, CivilDate, DueRow, DueStatus, SiteBundle } from "@roundbook/schemas";
import type { WalkStroke } from "../form/index.ts";
import type { Draft, OutboxRow, SentRow } from "../offline/database.ts";
import { checklistOf, entryCounts } from "../offline/outbox.ts";
import { dayOf, isDated, standingOn } from "./due-of.tsx";

export type RoundState = "done" | "not-completed" | "unfinished" | "to-do";

export interface RoundRow {
  readonly key: string;
  readonly asset: AssetRow;
  readonly due: DueRow;
  readonly state: RoundState;
  /** How it stands on the day of the round. */
  readonly status: DueStatus;
}

export interface RoundPlace {
  readonly place: string;
  readonly name: string;
  readonly rows: readonly RoundRow[];
}

export interface Round {
  readonly places: readonly RoundPlace[];
  readonly all: readonly RoundRow[];
  /** Windows that open within the coming days. */
  readonly coming: readonly RoundRow[];
  /** Not expected while the place is closed: neither due nor done. */
  readonly excused: readonly RoundRow[];
  /** The first day on which something becomes due after today, when nothing is due now. */
  readonly nextDay: CivilDate | null;
}

export interface Kept {
  readonly bundle: SiteBundle;
  readonly outbox: readonly OutboxRow[];
  readonly sent: readonly SentRow[];
  readonly drafts: readonly Draft[];
}

const COMING_DAYS = 7;
const pair = (asset: string | null, checklist: string | null): string => `${asset}:${checklist}`;

interface Today {
  readonly done: ReadonlySet<string>;
  readonly attempted: ReadonlySet<string>;
}

/** What was done or attempted today, whether the server knows of it yet or not. */
const doneToday = ({ bundle, outbox, sent }: Kept, today: CivilDate): Today => {
  const done = new Set<string>();
  const attempted = new Set<string>();
  // The last result may be an incomplete one: only what moved the due date is done.
  for (const row of bundle.due)
    if (row.lastDone !== null && dayOf(row.lastDone) === today)
      done.add(pair(row.asset, row.checklist));
  for (const row of sent) {
    if (row.doneOn !== undefined && dayOf(row.doneOn) !== today) continue;
    const key = pair(row.asset, row.checklist);
    if (row.kind === "not-completed") attempted.add(key);
    if (row.counts) done.add(key);
  }
  for (const { signed } of outbox) {
    const { entry } = signed;
    if (dayOf(entry.civilDate) !== today) continue;
    const key = pair(entry.asset, checklistOf(entry));
    if (entry.kind === "not-completed") attempted.add(key);
    if (entryCounts(entry)) done.add(key);
  }
  return { done, attempted };
};

const byWalk = (bundle: SiteBundle) => {
  const orders = new Map(bundle.places.map(({ id, order }) => [id, order]));
  const order = (row: RoundRow) => orders.get(row.asset.place) ?? -1;
  const numbers = new Intl.Collator("en", { numeric: true });
  return (a: RoundRow, b: RoundRow): number =>
    order(a) - order(b) ||
    (a.asset.place < b.asset.place ? -1 : a.asset.place > b.asset.place ? 1 : 0) ||
    a.asset.order - b.asset.order ||
    numbers.compare(a.asset.number, b.asset.number) ||
    (a.key < b.key ? -1 : 1);
};

/** What stops use or cannot be told is asked for now, whenever its window opens. */
const isOpen = ({ status, due }: RoundRow, today: CivilDate): boolean =>
  status === "blocked" || status === "undecided" || dayOf(due.earliest) <= today;

/** What is still to be done on this round. */
export const toGoOf = (round: Round): readonly RoundRow[] =>
  round.all.filter(({ state }) => state === "to-do" || state === "unfinished");

export const isOver = ({ status, due }: RoundRow, today: CivilDate): boolean =>
  status !== "undecided" && dayOf(due.latest) < today;

/** The round of one site on a day: what is due, in walking order, with what is already done. */
export const roundOf = (kept: Kept, today: CivilDate): Round => {
  const { bundle, drafts } = kept;
  const { done, attempted } = doneToday(kept, today);
  const assets = new Map(bundle.assets.map((asset) => [asset.id, asset]));
  const issues = new Map(bundle.checklists.map((row) => [row.hash, row.id]));
  const begun = new Set(
    drafts.map((draft) => pair(draft.asset, issues.get(draft.checklistHash) ?? null)),
  );
  const rows: RoundRow[] = bundle.due.flatMap((due) => {
    const asset = assets.get(due.asset);
    // What waits for an event has no date: it stands on the page of its asset alone.
    if (!asset || asset.status === "retired" || !isDated(due)) return [];
    const key = pair(due.asset, due.checklist);
    const state: RoundState = done.has(key)
      ? "done"
      : begun.has(key)
        ? "unfinished"
        : attempted.has(key)
          ? "not-completed"
          : "to-do";
    const status = standingOn(due, today);
    return [{ key: `${key}:${due.interval}`, asset, due, state, status }];
  });
  const asked = rows.filter((row) => row.status !== "excused" || row.state !== "to-do");
  const open = (row: RoundRow) => row.state !== "to-do" || isOpen(row, today);
  const all = asked.filter(open).sort(byWalk(bundle));
  const later = asked.filter((row) => !open(row));
  const coming = later
    .filter((row) => dayOf(row.due.earliest) <= today + COMING_DAYS)
    .sort((a, b) => (a.due.earliest < b.due.earliest ? -1 : 1));
  const days = later.map((row) => dayOf(row.due.earliest));
  return {
    places: groupByPlace(all),
    all,
    coming,
    excused: rows.filter((row) => !asked.includes(row)).sort(byWalk(bundle)),
    nextDay: days.length > 0 ? (Math.min(...days) as CivilDate) : null,
  };
};

const groupByPlace = (rows: readonly RoundRow[]): RoundPlace[] => {
  const places: { place: string; name: string; rows: RoundRow[] }[] = [];
  for (const row of rows) {
    const last = places.at(-1);
    if (last?.place === row.asset.place) last.rows.push(row);
    else places.push({ place: row.asset.place, name: row.asset.path.at(-1) ?? "", rows: [row] });
  }
  return places;
};

/** A stroke an asset in walking order; the first that is still to do is where the walker stands. */
export const strokesOf = (round: Round, today: CivilDate): WalkStroke[] => {
  const [here] = toGoOf(round);
  return round.all.map((row) => {
    if (row.state === "done") return "done";
    if (row.state === "not-completed") return "not-completed";
    if (row === here) return "here";
    return isOver(row, today) ? "over" : "to-come";
  });
};

/** Six lines of strokes: more would push the first row off the screen. */
const MOST_STROKES = 138;
const A_LINE = 23;

/** The part of a long walk that is drawn: the lines around where the walker stands. */
export const walkPart = (
  strokes: readonly WalkStroke[],
): { readonly from: number; readonly strokes: readonly WalkStroke[] } => {
  if (strokes.length <= MOST_STROKES) return { from: 0, strokes };
  const here = Math.max(strokes.indexOf("here"), 0);
  const first = (Math.floor(here / A_LINE) - 1) * A_LINE;
  const last = Math.floor((strokes.length - MOST_STROKES) / A_LINE + 1) * A_LINE;
  const from = Math.max(0, Math.min(first, last));
  return { from, strokes: strokes.slice(from, from + MOST_STROKES) };
};
