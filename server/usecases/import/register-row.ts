import { canonicalize, problem, type RegisterMapping } from "@roundbook/schemas";
import type { Made } from "../append-entries.ts";
import { readDate } from "./cell.ts";
import {
  already,
  badRow,
  type Desk,
  fault,
  type KnownAsset,
  type NamedRow,
  type RowOutcome,
} from "./desk.ts";
import { derivedId } from "./identity.ts";
import { newAsset } from "./new-asset.ts";
import type { Fault } from "./tally.ts";

/** A row of a register: one asset with the dates its old papers bring forward. */
export function registerRow(
  desk: Desk<RegisterMapping>,
  row: NamedRow,
  known: readonly KnownAsset[],
): RowOutcome {
  const { number } = row;
  const column = desk.mapping.asset.number;
  const made = newAsset(desk, row);
  const dates = broughtForward(desk, row);
  if ("faults" in made) return badRow(...made.faults, ...dates.faults);
  if (dates.faults.length > 0) return badRow(...dates.faults);
  const [there] = known;
  if (there) {
    const same = known.some((one) => sameAsset(one, made.asset)) && dates.days.length === 0;
    return same
      ? already
      : badRow(fault(column, problem("/asset/number", "number-taken", { number })));
  }
  const forward = dates.days.map(
    ({ checklist, doneOn }): Made => ({
      kind: "brought-forward",
      id: derivedId("brought-forward", desk.mapping.source, row.key, checklist),
      asset: made.asset.id,
      author: desk.by.person,
      civilDate: desk.today,
      happenedAt: null,
      body: {
        checklist,
        doneOn,
        source: { name: desk.mapping.source, key: row.key, content: row.content },
      },
    }),
  );
  const entries = [made.made, ...forward];
  return {
    outcome: "new",
    draft: { entries, contents: [], asset: made.asset, places: made.places },
  };
}

const sameAsset = (a: KnownAsset, b: KnownAsset): boolean =>
  canonicalize({ ...a, id: "" }) === canonicalize({ ...b, id: "" });

function broughtForward({ mapping, today }: Desk<RegisterMapping>, { cell }: NamedRow) {
  const faults: Fault[] = [];
  const days: { checklist: string; doneOn: string }[] = [];
  for (const [index, { checklist, date }] of (mapping.broughtForward ?? []).entries()) {
    const text = cell(date.column);
    if (text === "") continue;
    const day = readDate(text, date.format, today);
    if (day.ok) days.push({ checklist, doneOn: day.value });
    else
      for (const found of day.problems)
        faults.push(fault(date.column, { ...found, pointer: `/broughtForward/${index}/date` }));
  }
  return { faults, days };
}
